import type { Unit } from '../../brief/size.ts'

/** The words and signs of one practice. Each practice's file names the clause behind each habit. */
export interface Habit {
  /** `4X ` or `4× `; nothing for one. */
  readonly times: (count: number) => string
  /** Said after a through hole's diameter; empty where a hole without depth is through. */
  readonly through: string
  /** The same through the first wall only, into what is named behind it. */
  readonly throughOneWall: (into: string | undefined) => string
  /** The same through both flanges of a channel, by axes counted once. */
  readonly throughBothFlanges: string
  /** Before a spotface's diameter. */
  readonly spotface: string
  readonly max: string
  readonly min: string
  readonly centred: string
  /** After `centred` where one note carries both directions. */
  readonly bothWays: string
  /** Said under a hole callout whose holes stand equally spaced on a circle; empty where the drawing shows it. */
  readonly equallySpaced: string
  /** The same where no view shows the circle. */
  readonly equallySpacedUnseen: string
  /** Said of pairs about the part's middle that no size of each side shows. */
  readonly symmetrical: string
  /** After the size across two opposite flats. */
  readonly acrossFlats: string
  readonly stock: string
  readonly point: string
  readonly flatBottom: string
  readonly drill: string
  /** Before the length along an arc; the lettering may draw it above the figures. */
  readonly arc: string
  /** Between a chamfer's leg and its angle, a slot's width and length. */
  readonly by: string
  /** A zero deviation in millimetres is `0` alone, without sign (both practices). */
  readonly zero: string
}

/** What a number needs to know to be written on this sheet. */
export interface SheetWriting {
  readonly habit: Habit
  readonly unit: Unit
  readonly sign: '.' | ','
}
