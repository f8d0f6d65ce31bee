import type { Angle, Size } from '../../brief/size.ts'
import type { Span } from '../../brief/span.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import type { SizeKind } from '../../tolerance/general/title-block.ts'
import { plainText } from '../callout/plain-text.ts'
import type { Callout, Dimension, Measured, Statement } from '../dimension.ts'
import { axisIndex } from '../proof/elements.ts'
import { angleTolerance, toleranceOf } from '../tolerance-of.ts'
import type { Context } from './context.ts'
import { atHiddenLine } from './hidden.ts'
import type { Sight } from './sight.ts'

/** How a size would stand in one view, and how well. Higher is better; below zero only where nothing else serves. */
export interface Showing {
  readonly score: number
  readonly measured: Measured
  /** One of its ends is not at a visible line. */
  readonly hidden?: true
  /** How it reads there, where that is not the draft's own callout. */
  readonly callout?: Callout
}

/** A size before its view is settled. */
export interface Draft {
  readonly id: string
  readonly callout: Callout
  /** mm or degrees. */
  readonly value: number
  readonly size?: Size
  /** Other sizes of the brief that this one speaks for. */
  readonly alike?: readonly Size[]
  readonly angle?: Angle
  readonly kind?: SizeKind
  /** Shorter leg of an angle, mm. */
  readonly leg?: number
  readonly direction: string
  readonly states: readonly Statement[]
  readonly shows: (sight: Sight) => Showing | undefined
  readonly span?: Span
  readonly feature?: string
  readonly group?: Dimension['group']
  readonly reference?: boolean
  /** Follows from sizes that frames make theoretically exact. */
  readonly basic?: boolean
  readonly derived?: boolean
}

const DIRECTIONS = ['left-right', 'front-rear', 'up-down'] as const

export function directionWords(direction: Vec3): string {
  const k = axisIndex(direction)
  return k === undefined ? 'oblique' : DIRECTIONS[k]
}

/** Views by how well the size stands in them, best first. */
export function showings(draft: Draft, sights: readonly Sight[]): { sight: Sight; showing: Showing }[] {
  return sights
    .flatMap((sight) => {
      const showing = draft.shows(sight)
      return showing ? [{ sight, showing }] : []
    })
    .sort((a, b) => b.showing.score - a.showing.score || a.sight.order - b.sight.order)
}

/** Gives the draft its view, tolerance and marks. Undefined: no view can carry it. */
export function settle(context: Context, draft: Draft): Dimension | undefined {
  const ranked = showings(draft, context.sights)
  const best = ranked[0]
  if (!best) {
    context.marks.push({
      rule: 'no-view-for-size',
      weight: 'must change',
      text: `No view shows where ${plainText(draft.callout)} could stand.`,
      ...(draft.span ? { span: draft.span } : {}),
      expected: 'views with the face seen true, or a section through it',
      source: 'ASME Y14.5-2018 4.1(b), ISO 129-1: sizes stand where the feature shows true (from memory)',
    })
    return undefined
  }
  if (best.showing.score < 0) context.marks.push(atHiddenLine(context, draft, best.sight))
  const { size, angle } = draft
  const framed = draft.basic === true || [size, angle].some((n) => n && context.basic.has(n))
  const judged = draft.reference
    ? undefined
    : framed
      ? { tolerance: { upper: 0, lower: 0, from: 'none' as const }, marks: [] }
      : size
        ? toleranceOf(size, context.header, draft.kind)
        : angle
          ? angleTolerance(angle, context.header, draft.leg ?? 10)
          : undefined
  context.marks.push(...(judged?.marks ?? []))
  const told = (size ?? angle)?.tolerance?.kind
  return {
    id: draft.id,
    view: best.sight.view.id,
    measured: best.showing.measured,
    callout: best.showing.callout ?? draft.callout,
    value: draft.value,
    ...(judged ? { tolerance: judged.tolerance } : {}),
    reference: draft.reference === true || told === 'reference',
    basic: told === 'basic' || framed,
    direction: draft.direction,
    states: draft.states,
    ...(draft.derived ? { derived: true } : {}),
    ...(size?.unknown ? { unknown: true } : {}),
    ...(draft.feature ? { feature: draft.feature } : {}),
    ...(draft.group ? { group: draft.group } : {}),
    ...(draft.span ? { span: draft.span } : {}),
    ...(draft.alike ? { alike: draft.alike.map((s) => s.span) } : {}),
  }
}
