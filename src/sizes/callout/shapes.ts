import type { Angle, Size } from '../../brief/size.ts'
import type { Callout, CalloutPart } from '../dimension.ts'
import type { SheetWriting } from './habit.ts'
import { angleParts, numberText, sizeParts, tidy } from './numbers.ts'
import { type SignWay, wayMarks } from './sign-ways.ts'

const one = (...parts: CalloutPart[]): Callout => ({ lines: [tidy(parts)] })

/** A length alone, with the count in front where it holds at several places. */
export const lengthCallout = (size: Size, writing: SheetWriting, count = 1): Callout =>
  one(writing.habit.times(count), ...sizeParts(size, writing))

/** ⌀; S⌀ on a sphere. */
export const diameterCallout = (size: Size, writing: SheetWriting, count = 1, spherical = false): Callout =>
  one(writing.habit.times(count), ...sizeParts(size, writing, spherical ? 'S⌀' : '⌀'))

/** R; SR on a sphere. */
export const radiusCallout = (size: Size, writing: SheetWriting, count = 1, spherical = false): Callout =>
  one(writing.habit.times(count), ...sizeParts(size, writing, spherical ? 'SR' : 'R'))

/** Length along an arc. */
export const arcLengthCallout = (size: Size, writing: SheetWriting): Callout =>
  one(...sizeParts(size, writing, writing.habit.arc))

/** □ before the size of a square. */
export const squareCallout = (callout: Callout): Callout => ({
  lines: callout.lines.map((line, i) => (i === 0 ? tidy(['□', ...line]) : line)),
})

/** The words after the size across two opposite flats. */
export const acrossFlatsCallout = (callout: Callout, { habit }: SheetWriting): Callout => ({
  lines: callout.lines.map((line, i) => (i === 0 ? tidy([...line, ` ${habit.acrossFlats}`]) : line)),
})

/** Full rounds: the radius follows from the width, so R stands without a value (ASME Y14.5-2018, slotted holes). */
export const fullRoundCallout = (writing: SheetWriting, count: number): Callout => one(writing.habit.times(count), 'R')

/** Slot as a note: width × length overall. */
export const slotCallout = (
  width: Size,
  length: Size,
  writing: SheetWriting,
  count = 1,
  after: readonly CalloutPart[] = [],
): Callout =>
  one(
    writing.habit.times(count),
    ...sizeParts(width, writing),
    writing.habit.by,
    ...sizeParts(length, writing),
    ...after,
  )

/** A depth by itself: `↧ 6`. */
export const depthCallout = (size: Size, writing: SheetWriting, count = 1): Callout =>
  one(writing.habit.times(count), ...sizeParts(size, writing, '↧ '))

/** `.06 × 45°`, or two legs. */
export const chamferCallout = (
  size: Size,
  second: { readonly angle: Angle } | { readonly leg: Size } | undefined,
  writing: SheetWriting,
  count = 1,
): Callout =>
  one(
    writing.habit.times(count),
    ...sizeParts(size, writing),
    writing.habit.by,
    ...(second === undefined
      ? ['45°']
      : 'angle' in second
        ? angleParts(second.angle, writing)
        : sizeParts(second.leg, writing)),
  )

export const angleCallout = (angle: Angle, writing: SheetWriting, count = 1): Callout =>
  one(writing.habit.times(count), ...angleParts(angle, writing))

/**
 * `⌲ 1:10`, `⌳ 1:50`: the sign looks as the taper or slope does in its view (ISO 3040:2016 clause 5, ASME Y14.5-2018
 * Fig. 5-13 and 5-14; from memory).
 */
export const rateCallout = (angle: Angle, writing: SheetWriting, way: SignWay, count = 1): Callout =>
  one(
    writing.habit.times(count),
    `${angle.rate === 'taper' ? '⌲' : '⌳'}${wayMarks[way]} `,
    angle.text
      .split(':')
      .map((n) => numberText(n, writing.unit, writing.sign))
      .join(':'),
  )

/** The callout with this count in front, in place of any it had. */
export const withCount = (callout: Callout, writing: SheetWriting, count: number): Callout => ({
  lines: callout.lines.map((line, i) => {
    if (i > 0) return line
    const [first, ...rest] = line
    const own = typeof first === 'string' ? [first.replace(/^\d+[X×] /, ''), ...rest] : line
    return tidy([writing.habit.times(count), ...own])
  }),
})

/** Words under a callout. */
export const withLine = (callout: Callout, ...words: string[]): Callout => ({
  lines: [...callout.lines, ...words.filter((w) => w !== '').map((w) => [w])],
})

/** Reference sizes stand in brackets (both practices). */
export const bracketed = (callout: Callout): Callout => ({
  lines: callout.lines.map((line, i) =>
    tidy([...(i === 0 ? ['('] : []), ...line, ...(i === callout.lines.length - 1 ? [')'] : [])]),
  ),
})
