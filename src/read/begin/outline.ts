import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import type { Body, BodyFace } from '../../kernel/body.ts'
import { pointOnCurve } from '../../kernel/evaluate3.ts'
import { faceAxes } from '../../part/sides.ts'
import { axisAlong, outwardOfPlane, SAME } from '../recognise/borders.ts'
import type { Recognised } from '../recognise/recognise.ts'

/** A side of an outline in the plane of its face: across and up from the low corner of the part. */
export type OutlineSide =
  | { readonly kind: 'line'; readonly from: Vec2; readonly to: Vec2; readonly faces: readonly number[] }
  | {
      readonly kind: 'arc'
      readonly from: Vec2
      readonly to: Vec2
      readonly radius: number
      readonly turn: 'left' | 'right'
      readonly faces: readonly number[]
    }

/** A closed outline that the solid is as thick as it is along `axis`, before features are worked into it. */
export interface Outline {
  readonly axis: 0 | 1 | 2
  readonly sides: readonly OutlineSide[]
  /** The two ends and all sides. */
  readonly faces: ReadonlySet<number>
  /** Open slots that are features and not part of the outline. */
  readonly openSlots: ReadonlySet<number>
}

interface Wall {
  readonly face: number
  /** A line n · p = d, or an arc by its points. */
  readonly line?: { readonly n: Vec2; readonly d: number }
  readonly arc?: { readonly from: Vec2; readonly to: Vec2; readonly middle: Vec2; readonly radius: number }
}

/**
 * The outline square to an axis, from the border of an end face; where a chamfer or a round breaks the border, from the
 * wall behind it. Undefined where the solid has no one plane face at an end, or its walls do not close an outline.
 */
export function outlineAlong(body: Body, found: Recognised, axis: 0 | 1 | 2): Outline | undefined {
  const ends = [body.box.min[axis], body.box.max[axis]].map((at) =>
    body.faces.filter((f) => {
      const normal = outwardOfPlane(f)
      return (
        normal !== undefined &&
        f.surface.kind === 'plane' &&
        axisAlong(normal) === axis &&
        Math.abs(f.surface.axes.origin[axis] - at) < SAME
      )
    }),
  )
  if (ends.some((e) => e.length !== 1)) return undefined
  const both = ends.map((e) => e[0]!)
  for (const end of both) {
    const made = outlineOf(body, found, axis, end)
    if (made) return { axis, ...made, faces: new Set([...made.faces, ...both.map((f) => f.id)]) }
  }
  return undefined
}

function outlineOf(body: Body, found: Recognised, axis: 0 | 1 | 2, end: BodyFace): Omit<Outline, 'axis'> | undefined {
  const flat = flatten(body, axis)
  const walls = wallsRound(body, found, axis, end, flat)
  if (!walls) return undefined
  // an open slot in a straight side is worked into it afterwards
  const openSlots = new Set<number>()
  let kept: readonly Wall[] = walls
  found.slots.forEach((slot, i) => {
    if (!slot.open || axisAlong(slot.outward) !== axis) return
    const without = merged(kept.filter((w) => !slot.faces.includes(w.face)))
    if (without.length < merged(kept).length - slot.faces.length + 1) {
      kept = without
      openSlots.add(i)
    }
  })
  const round = merged(kept)
  const sides = roundedCorners(body, found, axis, flat, sidesOf(round))
  return sides && { sides, faces: new Set(sides.flatMap((s) => s.faces)), openSlots }
}

/** Across and up of a point from the low corner of the part. */
const flatten = (body: Body, axis: 0 | 1 | 2) => {
  const { across, up } = faceAxes(axis)
  return (p: Vec3): Vec2 => [p[across] - body.box.min[across], p[up] - body.box.min[up]]
}

/** The walls along the outer border of an end face, in its order. */
function wallsRound(
  body: Body,
  found: Recognised,
  axis: 0 | 1 | 2,
  end: BodyFace,
  flat: (p: Vec3) => Vec2,
): Wall[] | undefined {
  const broken = new Set([
    ...found.chamfers.flatMap((c) => c.faces),
    ...found.blends.flatMap((b) => b.places.flatMap((p) => p.faces)),
  ])
  const loop = [...end.loops].sort((a, b) => reach(body, b, flat) - reach(body, a, flat))[0]
  if (!loop || loop.length < 2) return undefined
  const walls: Wall[] = []
  for (const use of loop) {
    const edge = body.edges[use.edge]!
    const beside = edge.faces.find((f) => f !== undefined && f !== end.id)
    if (beside === undefined) return undefined
    const wall = wallOf(body, beside, axis, flat, edge.curve.kind === 'circle' ? use : undefined)
    if (wall) {
      walls.push(wall)
      continue
    }
    if (!broken.has(beside)) return undefined
    const behind = [...new Set((found.beside.get(beside) ?? []).map((n) => n.face))]
      .filter((f) => f !== end.id && !broken.has(f))
      .flatMap((f) => wallOf(body, f, axis, flat) ?? [])
      .filter((w) => w.line !== undefined)
    // a broken edge has one wall behind it; its ends may touch others
    const own = behind.find((w) => isBehind(body, use, flat, w))
    if (!own) return undefined
    walls.push(own)
  }
  return walls
}

const reach = (body: Body, loop: BodyFace['loops'][number], flat: (p: Vec3) => Vec2): number => {
  const points = loop.flatMap((u) => [0, 0.5, 1].map((t) => flat(pointOnCurve(body.edges[u.edge]!.curve, t))))
  const span = (k: 0 | 1) => Math.max(...points.map((p) => p[k])) - Math.min(...points.map((p) => p[k]))
  return span(0) + span(1)
}

/** A wall runs along a border when both ends of the border are equally far from it. */
function isBehind(body: Body, use: { readonly edge: number }, flat: (p: Vec3) => Vec2, wall: Wall): boolean {
  const { curve } = body.edges[use.edge]!
  const [a, b] = [0, 1].map((t) => flat(pointOnCurve(curve, t)))
  const { n, d } = wall.line!
  const off = (p: Vec2) => n[0] * p[0] + n[1] * p[1] - d
  return Math.abs(off(a!) - off(b!)) < SAME
}

function wallOf(
  body: Body,
  id: number,
  axis: 0 | 1 | 2,
  flat: (p: Vec3) => Vec2,
  along?: { readonly edge: number; readonly forward: boolean },
): Wall | undefined {
  const face = body.faces[id]!
  const { surface } = face
  if (surface.kind === 'plane') {
    const normal = outwardOfPlane(face)!
    if (Math.abs(normal[axis]) > 1e-9) return undefined
    const { across, up } = faceAxes(axis)
    const n: Vec2 = [normal[across], normal[up]]
    const p = flat(surface.axes.origin)
    return { face: id, line: { n, d: n[0] * p[0] + n[1] * p[1] } }
  }
  if (surface.kind !== 'cylinder' || axisAlong(surface.axes.z) !== axis || !along) return undefined
  const { curve } = body.edges[along.edge]!
  const [from, middle, to] = (along.forward ? [0, 0.5, 1] : [1, 0.5, 0]).map((t) => flat(pointOnCurve(curve, t)))
  return { face: id, arc: { from: from!, to: to!, middle: middle!, radius: surface.r } }
}

/** Corners that are rounded away from this end, where something else broke the border: from the blend between both walls. */
function roundedCorners(
  body: Body,
  found: Recognised,
  axis: 0 | 1 | 2,
  flat: (p: Vec3) => Vec2,
  sides: readonly OutlineSide[] | undefined,
): OutlineSide[] | undefined {
  if (!sides) return undefined
  const places = found.blends.flatMap(({ radius, places }) =>
    places.filter((p) => axisAlong(p.line.direction) === axis).map((p) => ({ ...p, radius })),
  )
  const out = sides.map((s) => ({ ...s }))
  const n = out.length
  const arcs = new Map<number, OutlineSide>()
  for (let i = 0; i < n; i++) {
    const [a, b] = [out[i]!, out[(i + 1) % n]!]
    if (a.kind !== 'line' || b.kind !== 'line') continue
    const blend = places.find((p) => {
      const smooth = p.faces.flatMap((f) => found.beside.get(f) ?? []).filter((m) => m.smooth)
      return [a, b].every((side) => smooth.some((m) => side.faces.includes(m.face)))
    })
    if (!blend) continue
    const { faces, line, radius } = blend
    const centre = flat(line.point.map((c, k) => (k === axis ? body.box.min[axis] : c)) as unknown as Vec3)
    const [from, to] = [foot(a, centre), foot(b, centre)]
    const cross = (a.to[0] - a.from[0]) * (b.to[1] - b.from[1]) - (a.to[1] - a.from[1]) * (b.to[0] - b.from[0])
    out[i] = { ...a, to: from }
    out[(i + 1) % n] = { ...out[(i + 1) % n]!, from: to }
    arcs.set(i, { kind: 'arc', from, to, radius, turn: cross > 0 ? 'left' : 'right', faces })
  }
  return out.flatMap((s, i) => [s, ...(arcs.has(i) ? [arcs.get(i)!] : [])])
}

/** The point of a straight side nearest to another point. */
function foot(side: OutlineSide, p: Vec2): Vec2 {
  const d: Vec2 = [side.to[0] - side.from[0], side.to[1] - side.from[1]]
  const t = ((p[0] - side.from[0]) * d[0] + (p[1] - side.from[1]) * d[1]) / (d[0] * d[0] + d[1] * d[1])
  return [side.from[0] + t * d[0], side.from[1] + t * d[1]]
}

interface MergedWall extends Wall {
  readonly faces: readonly number[]
}

/** Neighbours on one line are one side. */
function merged(walls: readonly Wall[]): MergedWall[] {
  const out: MergedWall[] = []
  const same = (a: Wall, b: Wall) =>
    a.line !== undefined &&
    b.line !== undefined &&
    Math.hypot(a.line.n[0] - b.line.n[0], a.line.n[1] - b.line.n[1]) < 1e-9 &&
    Math.abs(a.line.d - b.line.d) < SAME
  for (const wall of walls) {
    const last = out.at(-1)
    if (last && same(last, wall)) out[out.length - 1] = { ...last, faces: [...last.faces, wall.face] }
    else out.push({ ...wall, faces: [wall.face] })
  }
  const [first, last] = [out[0], out.at(-1)]
  if (out.length > 1 && first && last && same(first, last)) {
    out[0] = { ...first, faces: [...last.faces, ...first.faces] }
    out.pop()
  }
  return out
}

function sidesOf(walls: readonly MergedWall[]): OutlineSide[] | undefined {
  const n = walls.length
  if (n < 2) return undefined
  const corner = (a: MergedWall, b: MergedWall): Vec2 | undefined => {
    if (a.arc) return a.arc.to
    if (b.arc) return b.arc.from
    const [p, q] = [a.line!, b.line!]
    const det = p.n[0] * q.n[1] - p.n[1] * q.n[0]
    if (Math.abs(det) < 1e-9) return undefined
    return [(p.d * q.n[1] - q.d * p.n[1]) / det, (p.n[0] * q.d - q.n[0] * p.d) / det]
  }
  const corners = walls.map((w, i) => corner(walls[(i + n - 1) % n]!, w))
  if (corners.some((c) => c === undefined)) return undefined
  return walls.map((w, i): OutlineSide => {
    const [from, to] = [corners[i]!, corners[(i + 1) % n]!]
    if (!w.arc) return { kind: 'line', from, to, faces: w.faces }
    const { middle, radius } = w.arc
    const bend = (middle[0] - from[0]) * (to[1] - middle[1]) - (middle[1] - from[1]) * (to[0] - middle[0])
    return { kind: 'arc', from, to, radius, turn: bend > 0 ? 'left' : 'right', faces: w.faces }
  })
}

/** Which way an outline goes round. */
export function turnOf(sides: readonly OutlineSide[]): 'left' | 'right' {
  const twice = sides.reduce((sum, { from, to }) => sum + from[0] * to[1] - to[0] * from[1], 0)
  return twice > 0 ? 'left' : 'right'
}
