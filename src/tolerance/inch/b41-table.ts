// ANSI B4.1-1967, sizes up to 19.69 in, thousandths of an inch, from memory. The standard prints limits for each
// class of fit; here they are taken apart into grades and fundamental deviations, which give the same limits.

/** Upper bounds of the size steps, in; "over the one before, to". */
export const inchSteps: readonly number[] = [
  0.12, 0.24, 0.4, 0.71, 1.19, 1.97, 3.15, 4.73, 7.09, 9.85, 12.41, 15.75, 19.69,
]

/** Standard tolerances by grade. */
export const inchGrades: Readonly<Record<number, readonly number[]>> = table({
  4: '.15 .15 .15 .2 .25 .3 .3 .4 .5 .6 .6 .7 .8',
  5: '.2 .2 .25 .3 .4 .4 .5 .6 .7 .8 .9 1 1',
  6: '.25 .3 .4 .4 .5 .6 .7 .9 1 1.2 1.2 1.4 1.6',
  7: '.4 .5 .6 .7 .8 1 1.2 1.4 1.6 1.8 2 2.2 2.5',
  8: '.6 .7 .9 1 1.2 1.6 1.8 2.2 2.5 2.8 3 3.5 4',
  9: '1 1.2 1.4 1.6 2 2.5 3 3.5 4 4.5 5 6 6',
  10: '1.6 1.8 2.2 2.8 3.5 4 4.5 5 6 7 8 9 10',
  11: '2.5 3 3.5 4 5 6 7 9 10 12 12 14 16',
  12: '4 5 6 7 8 10 12 14 16 18 20 22 25',
  13: '6 7 9 10 12 16 18 22 25 28 30 35 40',
})

/**
 * Fundamental deviations: clearance letters by the amount below the basic size, the others by the amount above.
 * Running (R) and locational (L) clearance fits part ways in the largest steps. A dash: not given.
 */
export const inchDeviations: Readonly<Record<string, readonly number[]>> = table({
  gR: '.1 .15 .2 .25 .3 .4 .4 .5 .6 .6 .8 1 1.2',
  fR: '.3 .4 .5 .6 .8 1 1.2 1.4 1.6 2 2.5 3 4',
  eR: '.6 .8 1 1.2 1.6 2 2.5 3 3.5 4 5 6 8',
  dR: '1 1.2 1.6 2 2.5 3 4 5 6 7 8 10 12',
  gL: '.1 .15 .2 .25 .3 .4 .4 .5 .6 .6 .7 .7 .8',
  fL: '.3 .4 .5 .6 .8 1 1.2 1.4 1.6 2 2.2 2.5 2.8',
  eL: '.6 .8 1 1.2 1.6 2 2.5 3 3.5 4 4.5 5 5',
  dL: '1 1.2 1.6 2 2.5 3 4 5 6 7 7 8 9',
  c: '2.5 2.8 3 3.5 4.5 5 6 7 8 10 12 14 16',
  RC9: '4 4.5 5 6 7 8 9 10 12 15 18 22 25',
  LC10: '4 4.5 5 6 7 8 10 11 12 16 20 22 25',
  LC11: '5 6 7 8 10 12 14 16 18 22 28 30 35',
  h: '0 0 0 0 0 0 0 0 0 0 0 0 0',
  k: '- - .1 .1 .1 .1 .1 .1 .1 .2 .2 .2 .2',
  n: '.25 .3 .4 .5 .6 .7 .8 1 1.2 1.4 1.4 1.6 1.8',
  p: '.4 .5 .6 .7 .8 1 1.4 1.6 1.8 2 2.2 2.5 2.8',
  r: '.5 .6 .8 1 1.2 1.4 1.6 2 2.5 3 3.5 4.5 5',
})

/** Half the width of js6 and js7 as printed, which is not always half the grade. */
export const inchJs: Readonly<Record<number, readonly number[]>> = table({
  6: '.12 .15 .2 .2 .25 .3 .3 .4 .5 .6 .6 .7 .8',
  7: '.2 .25 .3 .35 .4 .5 .6 .7 .8 .9 1 1 1.2',
})

/** n5 shaft of LN 1 as printed, lower and upper limit; it strays from n and grade 5 in the middle steps. */
export const ln1 = table({
  lower: '.25 .3 .4 .4 .5 .6 .8 1 1.2 1.4 1.4 1.6 1.8',
  upper: '.45 .5 .65 .8 1 1.1 1.3 1.6 1.9 2.2 2.3 2.6 2.8',
})

/** Force fits have steps of their own. */
export const forceSteps: readonly number[] = [
  0.12, 0.24, 0.4, 0.56, 0.71, 0.95, 1.19, 1.58, 1.97, 2.56, 3.15, 3.94, 4.73, 5.52, 6.3, 7.09, 7.88, 8.86, 9.85, 11.03,
  12.41, 13.98, 15.75, 17.72, 19.69,
]

/** Lower limit of the shaft of FN 1 to FN 5. */
export const forceLower: Readonly<Record<number, readonly number[]>> = table({
  1: '.3 .4 .5 .5 .6 .7 .8 .9 1 1.3 1.4 1.8 2 2.2 2.5 2.8 3 3.5 3.5 4 4 4.5 5 6 6',
  2: '.6 .7 1 1.2 1.2 1.4 1.4 1.8 1.8 2 2.2 2.8 3 3.5 4 4.5 5 5 6 6 7 8 8 9 10',
  3: '- - - - - - 1.6 2 2.2 2.5 3 3.5 4 5 5 6 7 7 8 9 9 10 12 12 14',
  4: '.7 .9 1.2 1.4 1.4 1.6 1.8 2.5 2.8 3.5 4 5 6 7 7 8 9 10 12 12 14 16 18 20 22',
  5: '.9 1.2 1.4 1.6 1.8 2.2 2.5 3 4 5 6 7 8 10 12 12 14 16 16 18 20 22 25 28 30',
})

function table<K extends string | number>(rows: Readonly<Record<K, string>>): Readonly<Record<K, readonly number[]>> {
  return Object.fromEntries(
    Object.entries<string>(rows).map(([key, row]) => [key, row.split(' ').map(cell)]),
  ) as unknown as Record<K, readonly number[]>
}

function cell(text: string): number {
  return text === '-' ? Number.NaN : Number(text)
}
