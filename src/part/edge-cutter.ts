import type { Curve2 } from '../geometry/curve2.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { add, cross, dot, scale, sub, unit } from '../geometry/vec3.ts'
import type { Occt, Shape } from '../kernel/occt.ts'
import { prism } from '../kernel/profile.ts'

/** What a straight cutter takes off along an outside edge of two square faces. */
export interface EdgeCut {
  readonly kind: 'chamfer' | 'round'
  readonly line: readonly [Vec3, Vec3]
  /** Whether the cutter may run out beyond the line's start, its end. */
  readonly free: readonly [boolean, boolean]
  /** How far the sides that bound the edge there lean back, mm a mm of depth: the cutter runs out as far. */
  readonly lean: readonly [number, number]
  /** Outward normals of the two faces. */
  readonly normals: readonly [Vec3, Vec3]
  /** Set-backs on the two faces; a round's radius twice. */
  readonly back: readonly [number, number]
}

const CLEAR = 1

/** The cutter's solid: what lies outside the chamfer or round, and a little beyond the faces. */
export function edgeCutter(oc: Occt, cut: EdgeCut): Shape {
  const [n0, n1] = cut.normals
  // the faces are square: into the material along one face is against the other's normal
  const [right, up] = [scale(n1, -1), scale(n0, -1)]
  const normal = cross(right, up)
  const along = unit(sub(cut.line[1], cut.line[0]))
  const forward = dot(along, normal) > 0
  const [start, end] = forward ? cut.line : [cut.line[1], cut.line[0]]
  const [freeStart, freeEnd] = forward ? cut.free : [cut.free[1], cut.free[0]]
  const [leanStart, leanEnd] = forward ? cut.lean : [cut.lean[1], cut.lean[0]]
  const deep = Math.max(...cut.back)
  const origin = add(start, scale(normal, freeStart ? -CLEAR - deep * leanStart : 0))
  const length = dot(sub(end, origin), normal) + (freeEnd ? CLEAR + deep * leanEnd : 0)
  const outer = cut.kind === 'chamfer' ? chamferSection(cut.back) : roundSection(cut.back[0])
  return prism(oc, { outer, holes: [] }, { origin, right, up }, scale(normal, length))
}

/** Coordinates in from the edge along the two faces. The slope runs on beyond both, so that it meets them cleanly. */
function chamferSection([a, b]: readonly [number, number]): Curve2[] {
  const k = Math.max(0.25, CLEAR / Math.min(a, b))
  const points: Vec2[] = [
    [a * (1 + k), -b * k],
    [-a * k, b * (1 + k)],
    [-a * k, -b * k],
  ]
  return points.map((p, i) => ({ kind: 'line', a: p, b: points[(i + 1) % 3]! }))
}

function roundSection(r: number): Curve2[] {
  const m = CLEAR
  const points: Vec2[] = [
    [r, 0],
    [r, -m],
    [-m, -m],
    [-m, r],
    [0, r],
  ]
  const lines = points.slice(0, -1).map((p, i): Curve2 => ({ kind: 'line', a: p, b: points[i + 1]! }))
  return [...lines, { kind: 'arc', c: [r, r], r, from: Math.PI, sweep: Math.PI / 2 }]
}
