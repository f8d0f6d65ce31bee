import type { Habit } from './habit.ts'

/**
 * ISO 129-1:2018, from memory: `4×` with a multiplication sign, a hole is through unless a depth is given, max. and min.
 * after the size, equal spacing need not be said where the drawing shows it. C for a chamfer is not ISO.
 */
export const iso: Habit = {
  times: (count) => (count > 1 ? `${count}× ` : ''),
  through: '',
  // common practice, no source
  throughOneWall: (into) => (into ? ` through to ${into}` : ' through one wall'),
  throughBothFlanges: ' through both flanges',
  spotface: '⌴ ',
  max: ' max.',
  min: ' min.',
  // common practice, no source
  acrossFlats: 'A/F',
  centred: 'centred',
  bothWays: 'both ways',
  equallySpaced: '',
  equallySpacedUnseen: 'equally spaced',
  symmetrical: 'symmetrical',
  stock: ' stock',
  point: 'point',
  flatBottom: 'flat bottom',
  drill: 'drill',
  // ISO 129-1:2018, from memory: the sign before the figures
  arc: '⌒',
  by: ' × ',
  zero: '0',
}
