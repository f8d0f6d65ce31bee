import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { along, cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { Part } from '../../part/part.ts'
import { projectPoint } from '../project.ts'
import type { Frame, View, ViewLine } from '../view.ts'
import { bareCentre } from './bare-centre.ts'
import { endOnCentreLines, isEndOn } from './end-on.ts'
import { lengthwiseCentreLines, liesInPlane } from './lengthwise.ts'
import { middleLine, middlesOf } from './middle.ts'
import { outlineArcCentres } from './outline-arcs.ts'
import { pocketMiddles } from './pocket-middle.ts'
import { type RoundAxis, type RoundFeature, roundFeatures } from './round-features.ts'
import { withinBox } from './within-box.ts'

export interface CentreLineSettings {
  /** Paper mm past the outline. */
  readonly overrun: number
  readonly tolerance: number
  /** In a section only what the plane cuts or what shows behind it gets centre lines. */
  readonly section?: { readonly point: Vec3; readonly normal: Vec3 }
}

/** Every centre line of a view: round features end-on and lengthwise, and middle lines of what is symmetric. */
export function centreLines(
  part: Part,
  frame: Frame,
  outline: readonly ViewLine[],
  box: View['box'],
  settings: CentreLineSettings,
): ViewLine[] {
  const { overrun, tolerance, section } = settings
  const shown = (axis: RoundAxis) => !section || liesInPlane(axis, section.point, section.normal)
  const behind = (axis: RoundAxis, f: RoundFeature) => section !== undefined && isBehindAtSlant(axis, f, frame, section)
  const features = roundFeatures(part)
  const round = features.flatMap((f) => {
    const endOn = section ? { ...f, members: f.members.flatMap((m) => inSection(m, frame, outline) ?? []) } : f
    const crossed = endOnCentreLines(endOn, frame, overrun).map((l) => withinBox(l, box))
    return [...crossed, ...lengthwiseCentreLines(f, frame, overrun, (a) => shown(a) || behind(a, f))]
  })
  const middles = middlesOf(part).flatMap((m) => middleLine(m, outline, box, frame, overrun, tolerance) ?? [])
  const drawn = [...round, ...middles]
  const pockets = section ? [] : pocketMiddles(part, frame, drawn, overrun)
  const arcs = section ? [] : outlineArcCentres(part, frame, drawn, overrun)
  return [...drawn, ...pockets, ...arcs, ...features.flatMap((f) => bareCentre(f, frame, drawn, overrun))]
}

/** One of a ring of holes that stands behind the cut, neither along the view nor across it. */
function isBehindAtSlant(
  axis: RoundAxis,
  { members }: RoundFeature,
  { toViewer }: Frame,
  { point }: { readonly point: Vec3 },
): boolean {
  const isRing = members.some((m) => m.axes.some((a) => norm(cross(a.direction, axis.direction)) > 1e-9))
  if (!isRing || Math.abs(dot(axis.direction, toViewer)) < 1e-9) return false
  const middle = along(axis.point, axis.direction, (axis.reach[0] + axis.reach[1]) / 2)
  return dot(sub(middle, point), toViewer) < -1e-6
}

type Member = ReturnType<typeof roundFeatures>[number]['members'][number]

/** The member as the section shows it: its axes end-on no wider than what is drawn about them. Undefined: it is not seen. */
function inSection(member: Member, frame: Frame, outline: readonly ViewLine[]): Member | undefined {
  const axes = member.axes.map((a) => {
    if (!isEndOn(a, frame)) return a
    const radius = Math.min(a.radius, drawnAbout(a, frame, outline))
    return radius > 0 ? { ...a, radius } : undefined
  })
  return axes.every((a) => a !== undefined) ? { ...member, axes } : undefined
}

/** Radius of the largest arc of the outline about the axis; 0 where there is none. */
function drawnAbout(axis: RoundAxis, frame: Frame, outline: readonly ViewLine[]): number {
  const c: Vec2 = projectPoint(axis.point, frame)
  const near = 1e-6 * Math.max(1, axis.radius)
  return Math.max(
    0,
    ...outline.flatMap(({ curve }) =>
      curve.kind === 'arc' && Math.hypot(curve.c[0] - c[0], curve.c[1] - c[1]) < near ? [curve.r] : [],
    ),
  )
}
