import type { Vec3 } from '../geometry/vec.ts'
import { cross, distance, dot, norm, scale, sub } from '../geometry/vec3.ts'
import type { Body, BodyFace, Surface3 } from './body.ts'
import { type Box3, boxOfCurve3, unionOfBoxes } from './box3.ts'

/**
 * A name for whatever faces of a solid lie on a surface. Faces are found again by their geometry, so names survive
 * any order of building, booleans and cuts.
 */
export interface FaceName {
  readonly name: string
  readonly surface: Surface3
  /** Outward normal agrees with the surface's own (false) or is opposite to it (true); absent: either. */
  readonly reversed?: boolean
  /** The face must lie in this box (mm); absent: anywhere on the surface. */
  readonly within?: Box3
}

const NEAR = 1e-6
const ANGLE = 1e-7

/** The body with names on faces, and on edges from the two faces beside them. Earlier names win. */
export function withNames(body: Body, names: readonly FaceName[]): Body {
  if (names.length === 0) return body
  const cells = inCells(names)
  const faces = body.faces.map((face) => {
    const cell = cellOf(face.surface)
    let found: Numbered | undefined
    for (const near of [cell - 1, cell, cell + 1]) {
      for (const n of cells.get(near) ?? []) {
        if ((!found || n.order < found.order) && matches(body, face, n.name)) found = n
      }
    }
    return found ? { ...face, name: found.name.name } : face
  })
  const edges = body.edges.map((edge) => {
    const [f, g] = edge.faces
    const a = faces[f]?.name
    const b = g === undefined ? undefined : faces[g]?.name
    if (!a || !b || a === b) return edge
    return { ...edge, name: a < b ? `${a} / ${b}` : `${b} / ${a}` }
  })
  return { ...body, faces, edges }
}

interface Numbered {
  readonly name: FaceName
  readonly order: number
}

/** Names by a number that equal surfaces share, so that a plate of thousands of holes is not searched face by face. */
function inCells(names: readonly FaceName[]): Map<number, Numbered[]> {
  const cells = new Map<number, Numbered[]>()
  names.forEach((name, order) => {
    const cell = cellOf(name.surface)
    const list = cells.get(cell)
    if (list) list.push({ name, order })
    else cells.set(cell, [{ name, order }])
  })
  return cells
}

const CELL = 0.01
/** A direction that no part's own directions are square to. */
const ODD: Vec3 = [1, Math.SQRT2, Math.PI]

function cellOf(surface: Surface3): number {
  if (surface.kind === 'spline') return 0
  const { origin, z } = surface.axes
  switch (surface.kind) {
    case 'plane': {
      const offset = dot(origin, z)
      return Math.floor((dot(z, ODD) * offset) / CELL)
    }
    case 'cylinder':
    case 'cone':
      return Math.floor(dot(sub(origin, scale(z, dot(origin, z))), ODD) / CELL)
    default:
      return Math.floor(dot(origin, ODD) / CELL)
  }
}

function matches(body: Body, face: BodyFace, name: FaceName): boolean {
  if (!sameSurface(face.surface, name.surface)) return false
  if (name.reversed !== undefined) {
    const opposite =
      face.surface.kind === 'plane' && name.surface.kind === 'plane'
        ? dot(face.surface.axes.z, name.surface.axes.z) < 0
        : false
    if ((face.reversed !== opposite) !== name.reversed) return false
  }
  if (!name.within) return true
  return liesIn(boxOfFaceEdges(body, face), name.within)
}

function boxOfFaceEdges(body: Body, face: BodyFace): Box3 {
  return unionOfBoxes(face.loops.flat().map((use) => boxOfCurve3(body.edges[use.edge]!.curve)))
}

function liesIn(inner: Box3, outer: Box3): boolean {
  return ([0, 1, 2] as const).every((k) => inner.min[k] >= outer.min[k] - NEAR && inner.max[k] <= outer.max[k] + NEAR)
}

/** True when the two describe one and the same unbounded surface, whatever their own axes. */
function sameSurface(a: Surface3, b: Surface3): boolean {
  if (a.kind === 'plane' && b.kind === 'plane') {
    return parallel(a.axes.z, b.axes.z) && Math.abs(dot(sub(b.axes.origin, a.axes.origin), a.axes.z)) < NEAR
  }
  if (a.kind === 'cylinder' && b.kind === 'cylinder') {
    return Math.abs(a.r - b.r) < NEAR && sameLine(a.axes.origin, a.axes.z, b.axes.origin, b.axes.z)
  }
  if (a.kind === 'sphere' && b.kind === 'sphere') {
    return Math.abs(a.r - b.r) < NEAR && distance(a.axes.origin, b.axes.origin) < NEAR
  }
  if (a.kind === 'torus' && b.kind === 'torus') {
    return (
      Math.abs(a.major - b.major) < NEAR &&
      Math.abs(a.minor - b.minor) < NEAR &&
      distance(a.axes.origin, b.axes.origin) < NEAR &&
      parallel(a.axes.z, b.axes.z)
    )
  }
  if (a.kind === 'cone' && b.kind === 'cone') {
    if (Math.abs(a.halfAngle - b.halfAngle) > ANGLE) return false
    if (!sameLine(a.axes.origin, a.axes.z, b.axes.origin, b.axes.z) || dot(a.axes.z, b.axes.z) < 0) return false
    const height = dot(sub(b.axes.origin, a.axes.origin), a.axes.z)
    return Math.abs(a.r + height * Math.tan(a.halfAngle) - b.r) < NEAR
  }
  return false
}

const parallel = (a: Vec3, b: Vec3) => norm(cross(a, b)) < ANGLE

function sameLine(p: Vec3, d: Vec3, q: Vec3, e: Vec3): boolean {
  return parallel(d, e) && norm(cross(sub(q, p), d)) < NEAR
}
