import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, scale, sub, unit } from '../../geometry/vec3.ts'
import type { Body, BodyFace, Curve3 } from '../../kernel/body.ts'
import { pointOnCurve } from '../../kernel/evaluate3.ts'

/** Lengths closer than this (mm) are one: files carry their numbers to about 1e-7 of the part. */
export const SAME = 2e-5
/** Directions closer than this (radians) are one. */
const PARALLEL = 1e-6

/** A line in space: its point nearest the origin and its direction, the same for all that lie on it. */
export interface Line3 {
  readonly point: Vec3
  readonly direction: Vec3
}

/** The direction with its first component that counts positive, and exact where it runs along an axis of the part. */
function canonical(direction: Vec3): Vec3 {
  const k = ([0, 1, 2] as const).find((i) => 1 - Math.abs(direction[i]) < 1e-12)
  if (k !== undefined) return [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]
  const u = unit(direction)
  const lead = u.find((c) => Math.abs(c) > PARALLEL) ?? 1
  return lead < 0 ? [-u[0], -u[1], -u[2]] : u
}

/** The other way, without minus noughts. */
export const opposite = (d: Vec3): Vec3 => [0 - d[0], 0 - d[1], 0 - d[2]]

export function lineOf(origin: Vec3, axis: Vec3): Line3 {
  const direction = canonical(axis)
  return { point: sub(origin, scale(direction, dot(origin, direction))), direction }
}

export const parallel = (a: Vec3, b: Vec3): boolean => norm(cross(a, b)) < PARALLEL

export const offLine = (p: Vec3, line: Line3): number => norm(cross(sub(p, line.point), line.direction))

export const sameLine = (a: Line3, b: Line3): boolean =>
  parallel(a.direction, b.direction) && offLine(b.point, a) < SAME

/** Points on a curve: both ends of a line, arcs every 11.25° or closer. */
function pointsOn(curve: Curve3): Vec3[] {
  if (curve.kind === 'line') return [curve.a, curve.b]
  const steps = curve.kind === 'spline' ? 16 : Math.max(4, Math.ceil(Math.abs(curve.sweep) / (Math.PI / 16)))
  return Array.from({ length: steps + 1 }, (_, i) => pointOnCurve(curve, i / steps))
}

/** Points on all borders of a face. */
export const pointsOfFace = (body: Body, face: BodyFace): Vec3[] =>
  face.loops.flat().flatMap((use) => pointsOn(body.edges[use.edge]!.curve))

/** Outward normal of a plane face. */
export function outwardOfPlane(face: BodyFace): Vec3 | undefined {
  if (face.surface.kind !== 'plane') return undefined
  const { z } = face.surface.axes
  return face.reversed ? [-z[0], -z[1], -z[2]] : z
}

/** Which axis of the part a unit vector runs along, in either sense. */
export function axisAlong(direction: Vec3): 0 | 1 | 2 | undefined {
  return ([0, 1, 2] as const).find(
    (k) => Math.hypot(direction[(k + 1) % 3]!, direction[(k + 2) % 3]!) < PARALLEL * norm(direction),
  )
}

/** A face beside another, across the edges that they share. */
export interface Neighbour {
  readonly face: number
  readonly edge: number
  readonly smooth: boolean
}

/** For each face the faces across its edges. */
export function neighboursOf(body: Body): ReadonlyMap<number, readonly Neighbour[]> {
  const map = new Map<number, Neighbour[]>()
  const put = (a: number, face: number, edge: number, smooth: boolean) => {
    const list = map.get(a)
    if (list) list.push({ face, edge, smooth })
    else map.set(a, [{ face, edge, smooth }])
  }
  for (const { id, faces, smooth, seam } of body.edges) {
    const [a, b] = faces
    if (b === undefined || seam || a === b) continue
    put(a, b, id, smooth)
    put(b, a, id, smooth)
  }
  return map
}
