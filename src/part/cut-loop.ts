import type { Span } from '../brief/span.ts'
import { pointAt } from '../geometry/evaluate.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { add, cross, scale } from '../geometry/vec3.ts'
import type { Surface3 } from '../kernel/body.ts'
import { inPlane, prism } from '../kernel/profile.ts'
import { meetsLoops } from './fit.ts'
import type { ProfileCurve, WorkFace } from './model.ts'
import { profilePlane } from './prism-stock.ts'
import { addRelief } from './relief.ts'
import { axisOf, outwardOf } from './sides.ts'
import type { Workshop } from './workshop.ts'

/** A closed loop, in the across and up of a flat face, that is cut straight in. */
export interface LoopCut {
  readonly feature: string
  readonly span: Span
  readonly face: WorkFace
  readonly loop: readonly ProfileCurve[]
  /** Depth from the face, mm; Infinity: through. */
  readonly depth: number
  readonly floor: string
  /** The loop is known to lie clear inside the face; otherwise it is cut from the solid. */
  readonly clear: boolean
}

/** Cuts the loop: in the flat profile where it goes through the thickness, else from the solid. Names its faces. */
export function cutLoop(shop: Workshop, cut: LoopCut): void {
  const { face, loop, depth } = cut
  const through = depth === Infinity
  const axis = axisOf[face.side]
  const out = outwardOf[face.side][axis]
  // a little beyond the faces, so that nothing is left standing
  const heights: [number, number] = [face.at + out, face.at - out * (through ? face.depth + 1 : depth)]
  addRelief(
    shop,
    cut.feature,
    axis,
    loop.map((c) => c.curve),
    heights,
  )
  const profile = through && cut.clear ? shop.profileOf(face) : undefined
  if (profile && !meetsLoops(profile, samplesOf(loop))) {
    profile.holes.push([...loop])
    return
  }
  const [a, b] = heights
  const span: [number, number] = [Math.min(a, b), Math.max(a, b)]
  const plane = profilePlane(axis, span)
  const normal = cross(plane.right, plane.up)
  const outer = loop.map((c) => c.curve)
  shop.steps.push({
    kind: 'cut',
    feature: cut.feature,
    span: cut.span,
    make: (oc) => prism(oc, { outer, holes: [] }, plane, scale(normal, span[1] - span[0])),
  })
  nameLoop(shop, cut, span)
}

export function samplesOf(loop: readonly ProfileCurve[]): Vec2[] {
  return loop.flatMap(({ curve }) => (curve.kind === 'line' ? [0] : [0, 0.25, 0.5, 0.75]).map((t) => pointAt(curve, t)))
}

/** Names for the walls and the floor, kept to the loop's own reach. */
function nameLoop(shop: Workshop, cut: LoopCut, span: readonly [number, number]): void {
  const axis = axisOf[cut.face.side]
  const plane = profilePlane(axis, span)
  const normal = cross(plane.right, plane.up)
  const corners = samplesOf(cut.loop).flatMap((p): Vec3[] => {
    const q = inPlane(plane, p)
    return [q, add(q, scale(normal, span[1] - span[0]))]
  })
  const within = {
    min: [0, 1, 2].map((k) => Math.min(...corners.map((c) => c[k]!)) - 1e-6) as unknown as Vec3,
    max: [0, 1, 2].map((k) => Math.max(...corners.map((c) => c[k]!)) + 1e-6) as unknown as Vec3,
  }
  for (const { curve, face } of cut.loop) {
    if (face === '') continue
    if (curve.kind === 'arc') {
      const axes = { origin: inPlane(plane, curve.c), x: plane.right, y: plane.up, z: normal }
      shop.surfaces.push({ name: face, surface: { kind: 'cylinder', axes, r: curve.r }, within })
    } else if (curve.kind === 'line') {
      const [dx, dy] = [curve.b[0] - curve.a[0], curve.b[1] - curve.a[1]]
      const n = Math.hypot(dx, dy)
      const along = add(scale(plane.right, dx / n), scale(plane.up, dy / n))
      const axes = { origin: inPlane(plane, curve.a), x: along, y: normal, z: cross(along, normal) }
      shop.surfaces.push({ name: face, surface: { kind: 'plane', axes }, within })
    }
  }
  if (cut.depth === Infinity) return
  const out = outwardOf[cut.face.side]
  const level = cut.face.at - out[axis] * cut.depth
  const origin: Vec3 = scale(plane.right, 0)
  const at: Vec3 = [axis === 0 ? level : origin[0], axis === 1 ? level : origin[1], axis === 2 ? level : origin[2]]
  const floor: Surface3 = { kind: 'plane', axes: { origin: at, x: plane.right, y: plane.up, z: normal } }
  shop.surfaces.push({ name: cut.floor, surface: floor, within })
}

/** Two parallel sides and half-round ends; `level` 0 lies across, 1 up. Counter-clockwise. */
export function stadium(c: Vec2, level: 0 | 1, half: number, r: number, wall: string, end: string): ProfileCurve[] {
  const q = Math.PI / 2
  if (level === 0) {
    return [
      { curve: { kind: 'line', a: [c[0] - half, c[1] - r], b: [c[0] + half, c[1] - r] }, face: wall },
      { curve: { kind: 'arc', c: [c[0] + half, c[1]], r, from: -q, sweep: 2 * q }, face: end },
      { curve: { kind: 'line', a: [c[0] + half, c[1] + r], b: [c[0] - half, c[1] + r] }, face: wall },
      { curve: { kind: 'arc', c: [c[0] - half, c[1]], r, from: q, sweep: 2 * q }, face: end },
    ]
  }
  return [
    { curve: { kind: 'line', a: [c[0] + r, c[1] - half], b: [c[0] + r, c[1] + half] }, face: wall },
    { curve: { kind: 'arc', c: [c[0], c[1] + half], r, from: 0, sweep: 2 * q }, face: end },
    { curve: { kind: 'line', a: [c[0] - r, c[1] + half], b: [c[0] - r, c[1] - half] }, face: wall },
    { curve: { kind: 'arc', c: [c[0], c[1] - half], r, from: 2 * q, sweep: 2 * q }, face: end },
  ]
}

/** Rectangle about a centre with equal corner radii (0: sharp). Counter-clockwise. */
export function roundedRectangle(
  c: Vec2,
  width: number,
  height: number,
  r: number,
  wall: string,
  corner: string,
): ProfileCurve[] {
  const [x0, x1, y0, y1] = [c[0] - width / 2, c[0] + width / 2, c[1] - height / 2, c[1] + height / 2]
  const q = Math.PI / 2
  const curves: ProfileCurve[] = []
  const line = (a: Vec2, b: Vec2) => {
    if (Math.hypot(b[0] - a[0], b[1] - a[1]) > 1e-9) curves.push({ curve: { kind: 'line', a, b }, face: wall })
  }
  const arc = (at: Vec2, from: number) => {
    if (r > 0) curves.push({ curve: { kind: 'arc', c: at, r, from, sweep: q }, face: corner })
  }
  line([x0 + r, y0], [x1 - r, y0])
  arc([x1 - r, y0 + r], -q)
  line([x1, y0 + r], [x1, y1 - r])
  arc([x1 - r, y1 - r], 0)
  line([x1 - r, y1], [x0 + r, y1])
  arc([x0 + r, y1 - r], q)
  line([x0, y1 - r], [x0, y0 + r])
  arc([x0 + r, y0 + r], 2 * q)
  return curves
}
