import type { Span } from '../../brief/span.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import type { Body } from '../../kernel/body.ts'
import type { ChosenSize, Datum, PartFeature } from '../../part/part.ts'
import { axisAlong, SAME } from '../recognise/borders.ts'
import { type FoundPattern, levels } from '../recognise/patterns.ts'
import type { Recognised } from '../recognise/recognise.ts'
import { AXES, type Axis, type Base, type Levels, UNITS } from './data.ts'
import type { Listing } from './listing.ts'

/** A part in the making: what is known of the solid, and what the steps have added so far. */
export interface PartDraft {
  readonly body: Body
  readonly found: Recognised
  readonly listing: Listing
  readonly levels: Levels
  /** Where positions along each axis are counted from. */
  bases: readonly (Base | undefined)[]
  readonly data: Datum[]
  readonly features: PartFeature[]
  readonly chosen: ChosenSize[]
}

/** A place where a span is asked for and the drafter wrote nothing. */
export const NOWHERE: Span = { from: 0, to: 0 }

export interface Placed {
  readonly axis: string
  readonly at: Vec3
}

/** A distance along an axis of the part from its base; none where the two are level. */
export function fromBase(draft: PartDraft, group: string, to: Placed, k: Axis): void {
  const base = draft.bases[k]
  if (!base || base.id === to.axis || Math.abs(to.at[k] - base.at) < SAME) return
  const size = draft.listing.size(`${base.id} to ${to.axis}`, Math.abs(to.at[k] - base.at))
  draft.chosen.push({ kind: 'distance', size, from: base.id, to: to.axis, direction: UNITS[k], span: size.span, group })
}

/** Positions of the members of one feature: pitches, a bolt circle, and the distances that place the first of them. */
export function locate(
  draft: PartDraft,
  group: string,
  members: readonly Placed[],
  outward: Vec3,
  pattern: FoundPattern,
  along: readonly Axis[] = AXES,
): void {
  const normal = axisAlong(outward)
  const [first] = members
  if (normal === undefined || !first) return
  const across = along.filter((k) => k !== normal)
  switch (pattern.kind) {
    case 'bolt circle': {
      if (!pattern.equal) break
      const of = centreOf(draft, group, pattern.centre, outward)
      const size = draft.listing.size(`${group} bolt circle`, 2 * pattern.radius)
      draft.chosen.push({
        kind: 'bolt circle',
        size,
        of,
        members: members.map((m) => m.axis),
        span: size.span,
        group,
      })
      return
    }
    case 'row':
      pitch(draft, group, members, pattern)
      for (const k of across) fromBase(draft, group, first, k)
      return
    case 'grid':
      pitch(draft, group, members, pattern.across)
      pitch(draft, group, members, pattern.up)
      for (const k of across) fromBase(draft, group, first, k)
      return
    default:
  }
  for (const k of across) {
    for (const level of levels(members.map((m) => m.at[k]))) {
      fromBase(draft, group, members.find((m) => Math.abs(m.at[k] - level) < SAME)!, k)
    }
  }
}

function pitch(
  draft: PartDraft,
  group: string,
  members: readonly Placed[],
  run: { readonly direction: Vec3; readonly members: readonly number[]; readonly pitch: number },
): void {
  const size = draft.listing.size(`${group} pitch`, run.pitch)
  const ids = run.members.map((i) => members[i]!.axis)
  draft.chosen.push({ kind: 'pitch', size, members: ids, direction: run.direction, span: size.span, group })
}

/** The axis that stands at a bolt circle's centre; a new one, placed from the bases, where there is none. */
function centreOf(draft: PartDraft, group: string, centre: Vec3, outward: Vec3): string {
  const k = axisAlong(outward)!
  const known = draft.data.find(
    (d) =>
      d.kind === 'axis' &&
      axisAlong(d.direction) === k &&
      AXES.every((i) => i === k || Math.abs(d.point[i] - centre[i]) < SAME),
  )
  if (known) return known.id
  const id = `${group} centre`
  draft.data.push({ id, kind: 'axis', name: id, point: centre, direction: outward })
  for (const i of AXES) if (i !== k) fromBase(draft, group, { axis: id, at: centre }, i)
  return id
}
