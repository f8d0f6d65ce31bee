// ISO 965-1:2013 tables 1 to 5, µm, from memory; the tests hold them against the formulas of the standard's section on
// tolerances, whose outcomes the standard rounds to the R 40 series of preferred numbers.

const pitches = [
  0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 8,
]

function byPitch(row: string): ReadonlyMap<number, number> {
  return new Map(row.split(' ').flatMap((cell, i) => (cell === '-' ? [] : [[pitches[i]!, Number(cell)] as const])))
}

const playG = byPitch('17 18 18 19 19 20 20 21 22 22 24 26 28 32 34 38 42 48 53 60 63 71 75 80 100')

/** Fundamental deviation by position: upper of a screw (magnitude), lower of a hole. G and g have the same. */
export const positions: Readonly<Record<'G' | 'g' | 'f' | 'e', ReadonlyMap<number, number>>> = {
  G: playG,
  g: playG,
  f: byPitch('- - - 34 34 35 36 36 38 38 38 40 42 45 48 52 58 63 70 75 80 85 90 95 118'),
  e: byPitch('- - - - - - 50 53 56 56 60 60 63 67 71 71 80 85 90 95 100 106 112 118 140'),
}

/** Major diameter of a screw, grade 6. */
const majorSix = byPitch(
  '56 67 75 85 95 100 106 125 140 140 150 180 212 236 265 280 335 375 425 475 500 530 560 600 710',
)
/** Minor diameter of a hole, grade 6. */
const minorSix = byPitch(
  '60 71 85 100 112 125 140 160 180 190 200 236 265 300 335 375 450 500 560 600 670 710 750 800 950',
)

/** Pitch diameter of a screw, grade 6: upper bound of the diameter step, then pitch and tolerance. */
const pitchSix: readonly (readonly [upTo: number, cells: string])[] = [
  [1.4, '.2:48 .25:53 .3:56'],
  [2.8, '.2:50 .25:56 .35:63 .4:67 .45:71'],
  [5.6, '.35:67 .5:75 .6:85 .7:90 .75:90 .8:95'],
  [11.2, '.75:100 1:112 1.25:118 1.5:132'],
  [22.4, '1:118 1.25:132 1.5:140 1.75:150 2:160 2.5:170'],
  [45, '1:125 1.5:150 2:170 3:200 3.5:212 4:224 4.5:236'],
  [90, '1.5:160 2:180 3:212 4:236 5:250 5.5:265 6:280'],
  [180, '2:190 3:224 4:250 6:300 8:335'],
]

// One decade of the R 40 series.
const r40 = [
  100, 106, 112, 118, 125, 132, 140, 150, 160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280, 300, 315, 335, 355,
  375, 400, 425, 450, 475, 500, 530, 560, 600, 630, 670, 710, 750, 800, 850, 900, 950,
]

/** A member of R 40 as the standard prints it: half values below 100 go to the even whole number. */
function printed(index: number): number {
  const decade = Math.floor(index / 40)
  const exact = r40[index - decade * 40]! * 10 ** decade
  const whole = Math.floor(exact)
  if (Math.abs(exact - whole - 0.5) < 1e-9) return whole % 2 === 0 ? whole : whole + 1
  return Math.round(exact)
}

/** Moves a printed tolerance along R 40: eight steps are a factor 1.6, four 1.25, five 1.32. */
function shifted(value: number, steps: number): number {
  for (let index = -40; index < 80; index++) if (printed(index) === value) return printed(index + steps)
  throw new RangeError(`${value} is not in R 40`)
}

// ISO 965-1: grades follow grade 6 by the factors 0.5, 0.63, 0.8, 1, 1.25, 1.6, 2, which are steps of R 40.
const stepsFromSix: Readonly<Record<number, number>> = { 3: -12, 4: -8, 5: -4, 6: 0, 7: 4, 8: 8, 9: 12 }

/** Tolerance of a diameter of a metric thread, µm; undefined where ISO 965-1 gives none. */
export function threadTolerance(
  which: 'screw major' | 'screw pitch' | 'hole minor' | 'hole pitch',
  grade: number,
  diameter: number,
  pitch: number,
): number | undefined {
  const steps = stepsFromSix[grade]
  const six =
    which === 'screw major'
      ? majorSix.get(pitch)
      : which === 'hole minor'
        ? minorSix.get(pitch)
        : pitchOfSix(diameter, pitch)
  if (six === undefined || steps === undefined) return undefined
  // TD2(6) = 1.32 Td2(6): five steps.
  return shifted(six, which === 'hole pitch' ? steps + 5 : steps)
}

function pitchOfSix(diameter: number, pitch: number): number | undefined {
  const row = diameter < 0.99 ? undefined : pitchSix.find(([upTo]) => diameter <= upTo)
  const cell = row?.[1].split(' ').find((each) => Number(each.split(':')[0]) === pitch)
  return cell === undefined ? undefined : Number(cell.split(':')[1])
}
