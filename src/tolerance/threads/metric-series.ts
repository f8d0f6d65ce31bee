// ISO 261: diameters and pitches of general purpose metric threads, mm, from memory (first, second and third choice).

/** Coarse pitch by diameter. */
export const coarsePitches: ReadonlyMap<number, number> = new Map(
  `1:.25 1.1:.25 1.2:.25 1.4:.3 1.6:.35 1.8:.35 2:.4 2.2:.45 2.5:.45 3:.5 3.5:.6 4:.7 4.5:.75 5:.8 6:1 7:1 8:1.25 9:1.25
   10:1.5 11:1.5 12:1.75 14:2 16:2 18:2.5 20:2.5 22:2.5 24:3 27:3 30:3.5 33:3.5 36:4 39:4 42:4.5 45:4.5 48:5 52:5 56:5.5
   60:5.5 64:6 68:6`
    .split(/\s+/)
    .map((pair) => pair.split(':').map(Number) as [number, number]),
)

const fine: readonly (readonly [diameters: string, pitches: string])[] = [
  ['1 1.1 1.2 1.4 1.6 1.8', '.2'],
  ['2 2.2', '.25'],
  ['2.5 3 3.5', '.35'],
  ['4 4.5 5 5.5', '.5'],
  ['6 7', '.75'],
  ['8 9 11', '1 .75'],
  ['10', '1.25 1 .75'],
  ['12 14', '1.5 1.25 1'],
  ['15 16 17', '1.5 1'],
  ['18 20 22 24 25 27 28', '2 1.5 1'],
  ['26 35 38', '1.5'],
  ['30', '3 2 1.5 1'],
  ['32', '2 1.5'],
  ['33 36 39 40 50', '3 2 1.5'],
  ['42 45 48 52 55 56 58 60 62 64 65 68 75', '4 3 2 1.5'],
  ['70 72 76 80', '6 4 3 2 1.5'],
  ['78 82', '2'],
  ['85 90 95 100 105 110 115 120', '6 4 3 2'],
  ['125 130 140 150', '8 6 4 3 2'],
]

/** Fine pitches by diameter, coarsest first. */
export const finePitches: ReadonlyMap<number, readonly number[]> = new Map(
  fine.flatMap(([diameters, pitches]) =>
    diameters.split(' ').map((text) => [Number(text), pitches.split(' ').map(Number)] as const),
  ),
)

/** Every diameter of ISO 261 that is held here, rising. */
export const metricDiameters: readonly number[] = [...new Set([...coarsePitches.keys(), ...finePitches.keys()])].sort(
  (a, b) => a - b,
)

/** All pitches of a diameter, coarsest first; empty when the diameter is not in ISO 261. */
export function pitchesOf(diameter: number): readonly number[] {
  const coarse = coarsePitches.get(diameter)
  return [...(coarse === undefined ? [] : [coarse]), ...(finePitches.get(diameter) ?? [])]
}
