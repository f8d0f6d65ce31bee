import { mainSteps } from './steps.ts'

// ISO 286-1 table 1 (IT1 to IT18) and ISO 286-1:1988 annex A table 5 (IT01, IT0), µm, from memory;
// rows in the order of `mainSteps`. The published values are rounded, so the table and not the formula holds.
const upTo500: Readonly<Record<string, string>> = {
  '01': '0.3 0.4 0.4 0.5 0.6 0.6 0.8 1 1.2 2 2.5 3 4',
  '0': '0.5 0.6 0.6 0.8 1 1 1.2 1.5 2 3 4 5 6',
  '1': '0.8 1 1 1.2 1.5 1.5 2 2.5 3.5 4.5 6 7 8',
  '2': '1.2 1.5 1.5 2 2.5 2.5 3 4 5 7 8 9 10',
  '3': '2 2.5 2.5 3 4 4 5 6 8 10 12 13 15',
  '4': '3 4 4 5 6 7 8 10 12 14 16 18 20',
  '5': '4 5 6 8 9 11 13 15 18 20 23 25 27',
  '6': '6 8 9 11 13 16 19 22 25 29 32 36 40',
  '7': '10 12 15 18 21 25 30 35 40 46 52 57 63',
  '8': '14 18 22 27 33 39 46 54 63 72 81 89 97',
  '9': '25 30 36 43 52 62 74 87 100 115 130 140 155',
  '10': '40 48 58 70 84 100 120 140 160 185 210 230 250',
  '11': '60 75 90 110 130 160 190 220 250 290 320 360 400',
  '12': '100 120 150 180 210 250 300 350 400 460 520 570 630',
  '13': '140 180 220 270 330 390 460 540 630 720 810 890 970',
  '14': '250 300 360 430 520 620 740 870 1000 1150 1300 1400 1550',
  '15': '400 480 580 700 840 1000 1200 1400 1600 1850 2100 2300 2500',
  '16': '600 750 900 1100 1300 1600 1900 2200 2500 2900 3200 3600 4000',
  '17': '1000 1200 1500 1800 2100 2500 3000 3500 4000 4600 5200 5700 6300',
  '18': '1400 1800 2200 2700 3300 3900 4600 5400 6300 7200 8100 8900 9700',
}

const over500: Readonly<Record<string, string>> = {
  '1': '9 10 11 13 15 18 22 26',
  '2': '11 13 15 18 21 25 30 36',
  '3': '16 18 21 24 29 35 41 50',
  '4': '22 25 28 33 39 46 55 68',
  '5': '32 36 40 47 55 65 78 96',
  '6': '44 50 56 66 78 92 110 135',
  '7': '70 80 90 105 125 150 175 210',
  '8': '110 125 140 165 195 230 280 330',
  '9': '175 200 230 260 310 370 440 540',
  '10': '280 320 360 420 500 600 700 860',
  '11': '440 500 560 660 780 920 1100 1350',
  '12': '700 800 900 1050 1250 1500 1750 2100',
  '13': '1100 1250 1400 1650 1950 2300 2800 3300',
  '14': '1750 2000 2300 2600 3100 3700 4400 5400',
  '15': '2800 3200 3600 4200 5000 6000 7000 8600',
  '16': '4400 5000 5600 6600 7800 9200 11000 13500',
  '17': '7000 8000 9000 10500 12500 15000 17500 21000',
  '18': '11000 12500 14000 16500 19500 23000 28000 33000',
}

/** Standard tolerance grades in rising order. */
export const grades = Object.keys(upTo500).sort((a, b) => rank(a) - rank(b))

function rank(grade: string): number {
  return grade === '01' ? -1 : Number(grade)
}

const rows = new Map<string, readonly (number | undefined)[]>(
  grades.map((grade) => {
    const large = over500[grade]?.split(' ').map(Number) ?? new Array<undefined>(8).fill(undefined)
    return [grade, [...upTo500[grade]!.split(' ').map(Number), ...large]]
  }),
)

/**
 * Standard tolerance of a grade (`'01'`, `'0'`, `'1'` … `'18'`) in the main size step of a nominal size.
 * @returns µm; undefined where ISO 286-1 gives none (size not in 0 < D ≤ 3150 mm; IT01, IT0 above 500 mm).
 */
export function standardTolerance(grade: string, sizeMm: number): number | undefined {
  const step = mainSteps.find((bound) => sizeMm > 0 && sizeMm <= bound)
  return step === undefined ? undefined : rows.get(grade)?.[mainSteps.indexOf(step)]
}
