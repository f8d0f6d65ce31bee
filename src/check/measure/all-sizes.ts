import type { Brief, Feature, Stock } from '../../brief/brief.ts'
import type { Angle, Num, Size } from '../../brief/size.ts'

/** A size where the brief states it. */
export interface StatedSize {
  readonly size: Size
  /** Key under which the statement holds it: `diameter`, `thickness`, `pitch`, `distance`. */
  readonly what: string
  readonly in: Stock | Feature
}

export interface StatedAngle {
  readonly angle: Angle
  readonly in: Stock | Feature
}

/** Every length that the stock and the features state, in the order written. */
export function sizesOf(brief: Brief): StatedSize[] {
  return statements(brief).flatMap((s) => {
    const out: StatedSize[] = []
    walk(s, '', (value, what) => {
      if (!isSize(value)) return false
      out.push({ size: value, what, in: s })
      return true
    })
    return out
  })
}

/** Every angle that the features state by number; a chamfer's 45° included. */
export function anglesOf(brief: Brief): StatedAngle[] {
  return statements(brief).flatMap((s) => {
    const out: StatedAngle[] = []
    walk(s, '', (value, what) => {
      if ((what !== 'angle' && what !== 'point') || !isNum(value)) return isSize(value)
      out.push({ angle: value, in: s })
      return true
    })
    return out
  })
}

/** Every number with a place that the brief gives, in the order of its parts: sizes, their tolerances, frames, general ones. */
export function numbersIn(brief: Brief): Num[] {
  const { header, frames, stacks } = brief
  const out: Num[] = []
  for (const part of [header.general, ...statements(brief), frames, stacks])
    walk(part, '', (value) => {
      if (isNum(value)) out.push(value)
      return false
    })
  return out
}

const statements = (brief: Brief) => [...(brief.stock ? [brief.stock] : []), ...brief.features]

/** Visits values from the outside in; `take` returns true where it need not go deeper. */
function walk(value: unknown, what: string, take: (value: unknown, what: string) => boolean): void {
  if (value === null || typeof value !== 'object' || take(value, what)) return
  if (Array.isArray(value)) for (const each of value) walk(each, what, take)
  else for (const [key, inner] of Object.entries(value)) walk(inner, key, take)
}

const isNum = (v: unknown): v is Angle => typeof v === 'object' && v !== null && 'decimals' in v && 'value' in v
const isSize = (v: unknown): v is Size => isNum(v) && 'mm' in v
