import type { Habit } from './habit.ts'
import { ABOVE } from './sign-ways.ts'

/**
 * ASME Y14.5-2018, from memory: the number of places as `4X` with a space after (repetitive features), THRU where the
 * depth would otherwise be open, `⌴SF`, drawn as one sign, for a spotface, MAX and MIN after the size, R before a radius. TYP is not used.
 * CENTERED, SYMMETRICAL and EQL SP are words of the trade (EQL SP after ASME Y14.38).
 */
export const asme: Habit = {
  times: (count) => (count > 1 ? `${count}X ` : ''),
  through: ' THRU',
  // common practice, no source
  throughOneWall: (into) => (into ? ` THRU TO ${into.toUpperCase()}` : ' THRU ONE WALL'),
  throughBothFlanges: ' THRU BOTH FLANGES',
  spotface: '⌴SF ',
  max: ' MAX',
  min: ' MIN',
  // common practice, no source
  acrossFlats: 'A/F',
  centred: 'CENTERED',
  bothWays: 'BOTH WAYS',
  equallySpaced: 'EQL SP',
  equallySpacedUnseen: 'EQL SP',
  symmetrical: 'SYMMETRICAL',
  stock: ' STK',
  point: 'POINT',
  flatBottom: 'FLAT BOTTOM',
  drill: 'DRILL',
  // Y14.5-2018 Fig. 4-8, from memory: the sign above the figures
  arc: `⌒${ABOVE}`,
  by: ' × ',
  zero: '0',
}
