import type { Vec3 } from '../geometry/vec.ts'
import type { Axes3, Body, BodyEdge, BodyFace, Curve3, Surface3 } from './body.ts'
import { type Box3, boxOfCurve3, unionOfBoxes } from './box3.ts'
import type { SolidProperties } from './properties.ts'

/** A rigid motion: where a point at (x, y, z) comes to is move + x·columns[0] + y·columns[1] + z·columns[2]. */
export interface Placement {
  readonly move: Vec3
  readonly columns: readonly [Vec3, Vec3, Vec3]
}

/** A body in its place. */
export interface PlacedMember {
  readonly body: Body
  readonly at: Placement
  /** Bounds of the body's faces in place. Asked for where the body is turned off the axes and faces bulge beyond their edges. */
  readonly box: () => Box3
}

/**
 * The bodies of an assembly in their places, as one. Each distinct body is read once, however often it is there. Faces
 * and edges are numbered on from body to body.
 */
export function placedBody(members: readonly PlacedMember[]): Body {
  const faces: BodyFace[] = []
  const edges: BodyEdge[] = []
  const boxes: Box3[] = []
  for (const { body, at, box } of members) {
    const [f, e] = [faces.length, edges.length]
    for (const face of body.faces) {
      faces.push({
        ...face,
        id: face.id + f,
        surface: placedSurface(face.surface, at),
        loops: face.loops.map((loop) => loop.map((use) => ({ ...use, edge: use.edge + e }))),
      })
    }
    for (const edge of body.edges) {
      const [a, b] = edge.faces
      edges.push({
        ...edge,
        id: edge.id + e,
        curve: placedCurve(edge.curve, at),
        faces: b === undefined ? [a + f] : [a + f, b + f],
      })
    }
    if (alongAxes(at)) boxes.push(placedBox(body.box, at))
    else if (body.faces.some(({ surface }) => BULGING.has(surface.kind))) boxes.push(box())
    else for (const { curve } of edges.slice(e)) boxes.push(boxOfCurve3(curve))
  }
  return { faces, edges, box: unionOfBoxes(boxes) }
}

/** Planes, cylinders and cones reach furthest on their borders. */
const BULGING: ReadonlySet<Surface3['kind']> = new Set(['sphere', 'torus', 'spline'])

/** Whether axes come to lie along axes. */
const alongAxes = ({ columns }: Placement): boolean =>
  columns.every((c) => c.filter((x) => Math.abs(x) > 1e-12).length === 1)

function placedBox({ min, max }: Box3, at: Placement): Box3 {
  const [a, b] = [placedPoint(min, at), placedPoint(max, at)]
  const pick = (one: (x: number, y: number) => number): Vec3 => [one(a[0], b[0]), one(a[1], b[1]), one(a[2], b[2])]
  return { min: pick(Math.min), max: pick(Math.max) }
}

/** Volumes and surfaces added up; the centre of gravity is their weighted mean. */
export function placedProperties(
  members: readonly { readonly properties: SolidProperties; readonly at: Placement }[],
): SolidProperties {
  let [volume, area] = [0, 0]
  const moment: [number, number, number] = [0, 0, 0]
  for (const { properties, at } of members) {
    volume += properties.volume
    area += properties.area
    const c = placedPoint(properties.centroid, at)
    for (const k of [0, 1, 2] as const) moment[k] += properties.volume * c[k]
  }
  return { volume, area, centroid: [moment[0] / volume, moment[1] / volume, moment[2] / volume] }
}

function placedDirection(d: Vec3, { columns: [x, y, z] }: Placement): Vec3 {
  return [
    d[0] * x[0] + d[1] * y[0] + d[2] * z[0],
    d[0] * x[1] + d[1] * y[1] + d[2] * z[1],
    d[0] * x[2] + d[1] * y[2] + d[2] * z[2],
  ]
}

function placedPoint(p: Vec3, at: Placement): Vec3 {
  const d = placedDirection(p, at)
  return [d[0] + at.move[0], d[1] + at.move[1], d[2] + at.move[2]]
}

const placedAxes = ({ origin, x, y, z }: Axes3, at: Placement): Axes3 => ({
  origin: placedPoint(origin, at),
  x: placedDirection(x, at),
  y: placedDirection(y, at),
  z: placedDirection(z, at),
})

function placedCurve(c: Curve3, at: Placement): Curve3 {
  if (c.kind === 'line') return { ...c, a: placedPoint(c.a, at), b: placedPoint(c.b, at) }
  if (c.kind === 'spline') return { ...c, poles: c.poles.map((p) => placedPoint(p, at)) }
  return { ...c, axes: placedAxes(c.axes, at) }
}

function placedSurface(s: Surface3, at: Placement): Surface3 {
  if (s.kind === 'spline') return { ...s, poles: s.poles.map((row) => row.map((p) => placedPoint(p, at))) }
  return { ...s, axes: placedAxes(s.axes, at) }
}
