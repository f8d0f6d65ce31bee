import type { Vec3 } from '../../geometry/vec.ts'
import { add, along, cross, dot, norm, scale, sub } from '../../geometry/vec3.ts'
import type { Body, BodyFace } from '../../kernel/body.ts'
import { type Box3, boxOfCurve3, unionOfBoxes } from '../../kernel/box3.ts'
import { outwardAt, planeFaceHolds } from './faces.ts'

/** Two faces back to back with material between them. */
export interface Wall {
  /** mm */
  readonly thick: number
  readonly faces: readonly [BodyFace, BodyFace]
}

/** Every pair of parallel planes, and of coaxial cylinders, that stand back to back. */
export function wallsOf(body: Body): Wall[] {
  const boxes = new Map<number, Box3>()
  const box = (face: BodyFace) => {
    const known = boxes.get(face.id)
    if (known) return known
    const made = unionOfBoxes(face.loops.flat().map((u) => boxOfCurve3(body.edges[u.edge]!.curve)))
    boxes.set(face.id, made)
    return made
  }
  const walls: Wall[] = []
  for (const [i, a] of body.faces.entries()) {
    for (const b of body.faces.slice(i + 1)) {
      const thick = planes(body, a, b, box) ?? cylinders(body, a, b, box)
      if (thick !== undefined) walls.push({ thick, faces: [a, b] })
    }
  }
  return walls
}

function planes(body: Body, a: BodyFace, b: BodyFace, box: (f: BodyFace) => Box3): number | undefined {
  if (a.surface.kind !== 'plane' || b.surface.kind !== 'plane') return undefined
  const [pa, pb] = [a.surface.axes.origin, b.surface.axes.origin]
  const n = outwardAt(a, pa)!
  if (dot(n, outwardAt(b, pb)!) > -1 + 1e-9) return undefined
  const thick = dot(sub(pa, pb), n)
  if (thick < 1e-6 || !faceEachOther(body, a, b, n, thick, box(a), box(b))) return undefined
  return thick
}

/** Some point of a, moved through the material, lies on b. Looked for at a grid over what both boxes share. */
function faceEachOther(body: Body, a: BodyFace, b: BodyFace, n: Vec3, thick: number, ba: Box3, bb: Box3): boolean {
  const shift = scale(n, -thick)
  const low: number[] = []
  const high: number[] = []
  for (const k of [0, 1, 2] as const) {
    low[k] = Math.max(ba.min[k], bb.min[k] - shift[k])
    high[k] = Math.min(ba.max[k], bb.max[k] - shift[k])
    if (low[k]! > high[k]! + 1e-9) return false
  }
  if (a.surface.kind !== 'plane') return false
  const { origin, z } = a.surface.axes
  const steps = [0.5, 0.2, 0.8, 0.05, 0.95, 0.35, 0.65]
  for (const s of steps) {
    for (const t of steps) {
      for (const u of isAlongAxis(z) ? [0.5] : steps) {
        const f = fractions(z, s, t, u)
        const p: Vec3 = [0, 1, 2].map((k) => low[k]! + (high[k]! - low[k]!) * f[k]!) as unknown as Vec3
        const q = along(p, z, dot(sub(origin, p), z))
        if (planeFaceHolds(body, a, q) && planeFaceHolds(body, b, add(q, shift))) return true
      }
    }
  }
  return false
}

const isAlongAxis = (z: Vec3) => z.some((c) => Math.abs(c) > 1 - 1e-9)

/** Grid fractions by axis: the axis of the normal has none of its own. */
function fractions(z: Vec3, s: number, t: number, u: number): [number, number, number] {
  const k = z.findIndex((c) => Math.abs(c) > 1 - 1e-9)
  if (k === 0) return [u, s, t]
  return k === 1 ? [s, u, t] : [s, t, u]
}

function cylinders(body: Body, a: BodyFace, b: BodyFace, box: (f: BodyFace) => Box3): number | undefined {
  if (a.surface.kind !== 'cylinder' || b.surface.kind !== 'cylinder' || a.reversed === b.reversed) return undefined
  if (!isRound(body, a) || !isRound(body, b)) return undefined
  const [inner, outer] = a.reversed ? [a.surface, b.surface] : [b.surface, a.surface]
  const { z, origin } = outer.axes
  if (norm(cross(z, inner.axes.z)) > 1e-9) return undefined
  const off = norm(cross(sub(inner.axes.origin, origin), z))
  if (outer.r <= inner.r + off) return undefined
  const extent = (f: BodyFace): [number, number] => {
    const { min, max } = box(f)
    const [p, q] = [dot(sub(min, origin), z), dot(sub(max, origin), z)]
    return [Math.min(p, q), Math.max(p, q)]
  }
  if (!isAlongAxis(z)) return undefined
  const [[a0, a1], [b0, b1]] = [extent(a), extent(b)]
  if (Math.min(a1, b1) - Math.max(a0, b0) < 1e-6) return undefined
  return outer.r - inner.r - off
}

/** All the way round, so that the two face each other whatever the way they stand apart. */
function isRound(body: Body, face: BodyFace): boolean {
  return face.loops.flat().some((u) => {
    const { curve, seam } = body.edges[u.edge]!
    return seam || (curve.kind === 'circle' && Math.abs(curve.sweep) > 2 * Math.PI - 1e-6)
  })
}
