import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { Body, BodyFace, Surface3 } from '../../kernel/body.ts'

/** Positions closer than this (mm) are one position: the kernel is exact to about 1e-7. */
export const SAME = 2e-5
/** Directions closer than this (radians) are one direction. */
const PARALLEL = 1e-7

/** 0 left-right, 1 front-rear, 2 up-down. */
export type AxisIndex = 0 | 1 | 2

/** One surface of the solid: all faces that lie on it as one (a bore cut in two by a slot, a top face with a gap). */
export interface Element {
  readonly id: number
  readonly faces: number[]
  readonly surface: Surface3
  /** Index of the part's axis its normal or axis runs along; absent: off the axes. A sphere has none. */
  readonly along: AxisIndex | undefined
}

/** Which of the part's axes a unit vector runs along, in either sense. */
export function axisIndex(direction: Vec3): AxisIndex | undefined {
  for (const k of [0, 1, 2] as const) if (1 - Math.abs(direction[k]) < 1e-12) return k
  for (const k of [0, 1, 2] as const) {
    const rest = Math.hypot(direction[(k + 1) % 3]!, direction[(k + 2) % 3]!)
    if (rest < PARALLEL) return k
  }
  return undefined
}

function sameSurface(a: Surface3, b: Surface3): boolean {
  if (a.kind === 'plane' && b.kind === 'plane') {
    if (norm(cross(a.axes.z, b.axes.z)) > PARALLEL) return false
    return Math.abs(dot(sub(b.axes.origin, a.axes.origin), a.axes.z)) < SAME
  }
  if (a.kind === 'sphere' && b.kind === 'sphere')
    return norm(sub(a.axes.origin, b.axes.origin)) < SAME && Math.abs(a.r - b.r) < SAME
  if (a.kind === 'plane' || b.kind === 'plane' || a.kind === 'spline' || b.kind === 'spline') return false
  if (a.kind !== b.kind) return false
  const apart = sub(b.axes.origin, a.axes.origin)
  if (norm(cross(a.axes.z, b.axes.z)) > PARALLEL || norm(cross(apart, a.axes.z)) > SAME) return false
  if (a.kind === 'cylinder' && b.kind === 'cylinder') return Math.abs(a.r - b.r) < SAME
  if (a.kind === 'cone' && b.kind === 'cone')
    return Math.abs(Math.abs(a.halfAngle) - Math.abs(b.halfAngle)) < PARALLEL && norm(sub(apexOf(a), apexOf(b))) < SAME
  if (a.kind === 'torus' && b.kind === 'torus')
    return norm(apart) < SAME && Math.abs(a.major - b.major) < SAME && Math.abs(a.minor - b.minor) < SAME
  return false
}

/** The cone's point, where its radius is nothing. */
export function apexOf(cone: Extract<Surface3, { kind: 'cone' }>): Vec3 {
  const back = -cone.r / Math.tan(cone.halfAngle)
  const { origin: o, z } = cone.axes
  return [o[0] + back * z[0], o[1] + back * z[1], o[2] + back * z[2]]
}

/**
 * The surfaces to be fixed. Planes in one plane are one element wherever they lie, but for those of `apart`: floors whose
 * depth their own note gives. Round surfaces are one element where their faces touch, or where `together` says that they
 * were made as one (a bore through two ears).
 */
export function elementsOf(
  body: Body,
  together: readonly (readonly number[])[],
  apart: readonly (readonly number[])[] = [],
): Element[] {
  const elements: Element[] = []
  const byFace = new Map<number, Element>()
  const planes = new Map<string, Element[]>()
  const neighbours = new Map<number, Set<number>>()
  const tie = (a: number, b: number) => {
    if (!neighbours.has(a)) neighbours.set(a, new Set())
    neighbours.get(a)!.add(b)
  }
  for (const edge of body.edges) {
    const [a, b] = edge.faces
    if (b !== undefined && a !== b) {
      tie(a, b)
      tie(b, a)
    }
  }
  for (const set of together) for (const a of set) for (const b of set) if (a !== b) tie(a, b)
  const faces = new Map(body.faces.map((face) => [face.id, face]))
  const floors = new Map(apart.flatMap((set, i) => set.map((face) => [face, i] as const)))

  const start = (face: BodyFace): Element => {
    const { surface } = face
    const along = surface.kind === 'spline' || surface.kind === 'sphere' ? undefined : axisIndex(surface.axes.z)
    const element: Element = { id: elements.length, faces: [], surface, along }
    elements.push(element)
    return element
  }
  for (const face of body.faces) {
    if (byFace.has(face.id)) continue
    if (face.surface.kind === 'plane') {
      const { z, origin } = face.surface.axes
      const k = axisIndex(z)
      // The key only sorts candidates; neighbours at a rounding border are looked up too.
      const offset = k === undefined ? 0 : Math.round(origin[k] / SAME)
      const own = floors.get(face.id) ?? ''
      const near = [offset, offset - 1, offset + 1].map((n) => (k === undefined ? `off/${own}` : `${k}/${n}/${own}`))
      let element = near.flatMap((key) => planes.get(key) ?? []).find((e) => sameSurface(e.surface, face.surface))
      if (!element) {
        element = start(face)
        planes.set(near[0]!, [...(planes.get(near[0]!) ?? []), element])
      }
      element.faces.push(face.id)
      byFace.set(face.id, element)
      continue
    }
    const element = start(face)
    const queue = [face.id]
    byFace.set(face.id, element)
    while (queue.length > 0) {
      const id = queue.pop()!
      element.faces.push(id)
      for (const other of neighbours.get(id) ?? []) {
        const next = faces.get(other)
        if (next && !byFace.has(other) && sameSurface(face.surface, next.surface)) {
          byFace.set(other, element)
          queue.push(other)
        }
      }
    }
  }
  return elements
}
