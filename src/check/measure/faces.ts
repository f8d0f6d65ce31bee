import type { Vec3 } from '../../geometry/vec.ts'
import { add, cross, dot, negate, scale, sub } from '../../geometry/vec3.ts'
import type { Body, BodyEdge, BodyFace } from '../../kernel/body.ts'
import { normalOfSurface, pointOnCurve } from '../../kernel/evaluate3.ts'
import { once } from './once.ts'

/** Unit normal out of the material at a point of the face. */
export function outwardAt(face: BodyFace, p: Vec3): Vec3 | undefined {
  const n = normalOfSurface(face.surface, p)
  return n && (face.reversed ? negate(n) : n)
}

/**
 * Angle of the material at an edge in degrees, halfway along it: 90 at the edge of a box, 270 in its inside corner, small
 * at a knife edge. Undefined on seams and on spline surfaces.
 */
export function materialAngle(body: Body, edge: BodyEdge): number | undefined {
  return anglesOf(body)(edge)
}

const anglesOf = once((body: Body) => once((edge: BodyEdge) => angleAt(body, edge)))

function angleAt(body: Body, edge: BodyEdge): number | undefined {
  const [first, second] = edge.faces
  if (second === undefined || edge.seam || first === second) return undefined
  const [a, b] = [body.faces[first]!, body.faces[second]!]
  const p = pointOnCurve(edge.curve, 0.5)
  const [na, nb] = [outwardAt(a, p), outwardAt(b, p)]
  const use = a.loops.flat().find((u) => u.edge === edge.id)
  if (!na || !nb || !use) return undefined
  const ahead = sub(pointOnCurve(edge.curve, 0.5001), pointOnCurve(edge.curve, 0.4999))
  // With the material on the left of the loop, this points into the first face.
  const into = cross(na, use.forward ? ahead : negate(ahead))
  const between = (Math.acos(Math.max(-1, Math.min(1, dot(na, nb)))) * 180) / Math.PI
  return dot(nb, into) < 0 ? 180 - between : 180 + between
}

/** Points along a curve, ends included: the two ends of a line, 25 points of anything else. */
export const samples = once((edge: BodyEdge): readonly Vec3[] => {
  const n = edge.curve.kind === 'line' ? 1 : 24
  return Array.from({ length: n + 1 }, (_, i) => pointOnCurve(edge.curve, i / n))
})

/** The borders of the plane faces in their own planes' coordinates. */
const bordersOf = once((body: Body) =>
  once((face: BodyFace): readonly (readonly (readonly [number, number])[])[] => {
    if (face.surface.kind !== 'plane') return []
    const { origin, x, y } = face.surface.axes
    return face.loops.map((loop) =>
      loop.flatMap((use) => {
        const points = samples(body.edges[use.edge]!)
        const ordered = use.forward ? points : [...points].reverse()
        return ordered.map((q) => [dot(sub(q, origin), x), dot(sub(q, origin), y)] as const)
      }),
    )
  }),
)

/** Whether a point of the face's plane lies inside its border. Planes only. */
export function planeFaceHolds(body: Body, face: BodyFace, p: Vec3): boolean {
  if (face.surface.kind !== 'plane') return false
  const { origin, x, y } = face.surface.axes
  const [u, v] = [dot(sub(p, origin), x), dot(sub(p, origin), y)]
  let inside = false
  for (const loop of bordersOf(body)(face)) {
    let [x0, y0] = loop[loop.length - 1]!
    for (const [x1, y1] of loop) {
      if (y0 > v !== y1 > v && u < ((x1 - x0) * (v - y0)) / (y1 - y0) + x0) inside = !inside
      ;[x0, y0] = [x1, y1]
    }
  }
  return inside
}

/** First plane face that a ray meets, and how far off, mm. */
export function firstHit(
  body: Body,
  from: Vec3,
  ray: Vec3,
): { readonly face: BodyFace; readonly far: number } | undefined {
  let best: { face: BodyFace; far: number } | undefined
  for (const face of body.faces) {
    if (face.surface.kind !== 'plane') continue
    const n = face.surface.axes.z
    const slope = dot(n, ray)
    if (Math.abs(slope) < 1e-9) continue
    const far = dot(sub(face.surface.axes.origin, from), n) / slope
    if (far < 1e-6 || (best && far >= best.far)) continue
    if (planeFaceHolds(body, face, add(from, scale(ray, far)))) best = { face, far }
  }
  return best
}
