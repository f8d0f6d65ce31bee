import { boxOfCurves, placed, pointAt } from '../geometry/evaluate.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { add, cross, dot, negate, scale } from '../geometry/vec3.ts'
import type { HalfSpace } from '../kernel/kernel.ts'
import type { Part } from '../part/part.ts'
import type { CutView } from './cut-view.ts'
import { FRAMES } from './frames.ts'
import { projectPoint } from './project.ts'
import { acrossAxis } from './propose/aligned.ts'
import type { PlannedSection } from './propose/plan.ts'
import type { Frame, Kin, ViewLine } from './view.ts'

/** One half of an aligned section: cut along its own plane, looked at square to it, and turned into the view. */
interface TurnedHalf {
  readonly frame: Frame
  readonly planes: readonly HalfSpace[]
  /** Leaves out the lines along the axis where the halves part: the centre line stands there. */
  readonly withoutDivision: (lines: readonly ViewLine[], tolerance: number) => ViewLine[]
  /** Brings what is drawn of this half to its place in the view; centre lines of the other half go. */
  readonly brought: (cut: CutView) => CutView
}

export function turnedHalves(part: Part, section: PlannedSection): TurnedHalf[] {
  const axis = part.axis!
  const nominal = FRAMES[section.side]
  const first = acrossAxis(axis.direction, section.side)
  return [first, negate(first)].map((from, i): TurnedHalf => {
    const half = section.aligned![i]!
    const frame = turnedFrame(nominal, axis.direction, from, half)
    const centre = projectPoint(section.point, frame)
    const out = projectPoint(half, frame)
    const off = (p: Vec2) => (p[0] - centre[0]) * out[0] + (p[1] - centre[1]) * out[1]
    const place = projectPoint(section.point, nominal)
    const by: Vec2 = [place[0] - centre[0], place[1] - centre[1]]
    return {
      frame,
      planes: [
        { point: section.point, normal: frame.toViewer },
        { point: section.point, normal: negate(half) },
      ],
      withoutDivision: (lines, tolerance) =>
        lines.filter((l) => ![0, 0.5, 1].every((t) => Math.abs(off(pointAt(l.curve, t))) <= tolerance)),
      brought: (cut) => ({
        ...cut,
        lines: cut.lines.flatMap((l) => (l.kind === 'centre' ? onHalf(l, off, cut.tolerance) : [l])).map(movedBy(by)),
        hatched: cut.hatched.map((region) => region.map((loop) => loop.map((c) => placed(c, 1, by)))),
      }),
    }
  })
}

/** Both halves as one view; the second one's faces and edges are numbered on from the first one's. */
export function inOneView(halves: readonly CutView[], frame: Frame): CutView {
  const [a, b] = halves as readonly [CutView, CutView]
  const outlines = [...a.lines, ...b.lines].filter((l) => l.kind === 'visible').map((l) => l.curve)
  return {
    frame,
    lines: [...a.lines, ...b.lines.map((l) => renumbered(l, a.kin))],
    hatched: [...a.hatched, ...b.hatched],
    box: boxOfCurves(outlines),
    tolerance: Math.max(a.tolerance, b.tolerance),
    kin: { faces: [...a.kin.faces, ...b.kin.faces], edges: [...a.kin.edges, ...b.kin.edges] },
  }
}

/** The frame turned about the axis as `from` must be turned to lie along `to`, both unit and square to the axis. */
function turnedFrame(frame: Frame, axis: Vec3, from: Vec3, to: Vec3): Frame {
  const [cos, sin] = [dot(from, to), dot(cross(from, to), axis)]
  const turned = (v: Vec3): Vec3 => {
    const along = scale(axis, dot(v, axis) * (1 - cos))
    return add(add(scale(v, cos), scale(cross(axis, v), sin)), along)
  }
  return { right: turned(frame.right), up: turned(frame.up), toViewer: turned(frame.toViewer) }
}

/** What of a centre line lies on this side of the axis, or along it; its cut end has no overrun. */
function onHalf(line: ViewLine, off: (p: Vec2) => number, tolerance: number): ViewLine[] {
  const { curve } = line
  if (curve.kind !== 'line') return off(pointAt(curve, 0.5)) >= -tolerance ? [line] : []
  const [a, b] = [off(curve.a), off(curve.b)]
  if (a >= -tolerance && b >= -tolerance) return [line]
  if (a <= tolerance && b <= tolerance) return []
  const cut = pointAt(curve, a / (a - b))
  const [start, end] = line.overrun ?? [0, 0]
  return [
    a < 0
      ? { ...line, curve: { kind: 'line', a: cut, b: curve.b }, overrun: [0, end] }
      : { ...line, curve: { kind: 'line', a: curve.a, b: cut }, overrun: [start, 0] },
  ]
}

const movedBy =
  (by: Vec2) =>
  (line: ViewLine): ViewLine => {
    const { cross: crossings, thread } = line
    return {
      ...line,
      curve: placed(line.curve, 1, by),
      ...(crossings ? { cross: crossings.map((p): Vec2 => [p[0] + by[0], p[1] + by[1]]) } : {}),
      ...(thread?.across && thread.axis !== undefined
        ? { thread: { ...thread, axis: thread.axis + by[0] * thread.across[0] + by[1] * thread.across[1] } }
        : {}),
    }
  }

function renumbered(line: ViewLine, first: Kin): ViewLine {
  return {
    ...line,
    sources: line.sources.map((s) => ({
      ...(s.edge === undefined ? {} : { edge: s.edge + first.edges.length }),
      faces: s.faces.map((f) => f + first.faces.length),
    })),
    ...(line.slopes ? { slopes: line.slopes.map((f) => f + first.faces.length) } : {}),
  }
}
