import type { FrameStatement } from '../../brief/geometric.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { distance, dot, sub } from '../../geometry/vec3.ts'
import type { BodyFace, Curve3 } from '../../kernel/body.ts'
import type { NamedFeature } from '../../part/named-feature.ts'
import type { ChosenSize, Datum, Part } from '../../part/part.ts'

const NEAR = 1e-6
const EDGE_WORK = ['round', 'fillet', 'chamfer']

type Bounded = Pick<Part, 'body' | 'features' | 'data'>

/**
 * The faces that a profile all around holds: those that stand square to a flat surface along its outer border
 * (ASME Y14.5-2018 clause 11, ISO 1101:2017 clause 8, all around; from memory), beyond a rounded or chamfered rim too.
 * Undefined for other frames, and where the surface is not flat.
 */
export function borderOf(
  part: Bounded,
  { allAround }: FrameStatement,
  { kind, faces, direction }: NamedFeature,
): readonly number[] | undefined {
  if (!allAround || kind !== 'plane') return undefined
  const work = part.features.filter((f) => EDGE_WORK.includes(f.kind))
  const isRim = ({ id, name }: BodyFace) =>
    work.some((f) => name?.startsWith(`${f.id} `) || f.members.some((m) => m.faces.includes(id)))
  const rims = new Set(part.body.faces.filter(isRim).map((f) => f.id))
  const surfaces = new Map(part.body.faces.map((f) => [f.id, f]))
  const stands = (id: number) => standsAlong(surfaces.get(id), direction)
  const edges = new Map(part.body.edges.map((e) => [e.id, e]))
  const outer = part.body.faces
    .filter((f) => faces.includes(f.id))
    .flatMap((f) => longest(f.loops.map((loop) => loop.flatMap(({ edge }) => edges.get(edge) ?? []))))
  const beside = outer.flatMap((e) => e.faces.filter((f): f is number => f !== undefined && !faces.includes(f)))
  const behind = beside
    .filter((f) => !stands(f) && rims.has(f))
    .flatMap((f) => part.body.edges.flatMap((e) => (e.faces.includes(f) ? e.faces : [])))
    .filter((f): f is number => f !== undefined && !faces.includes(f))
  return [...new Set([...beside, ...behind].filter(stands))]
}

/** Whether the number shapes that border: both its ends lie on it, and it is measured in the plane of the surface. */
export function shapesBorder(part: Bounded, border: readonly number[], direction: Vec3, chosen: ChosenSize): boolean {
  const inPlane = (way: Vec3) => Math.abs(dot(way, direction)) < NEAR
  const on = (id: string) => isOn(part, border, direction, id)
  const feature = 'of' in chosen ? part.features.find((f) => f.id === chosen.of) : undefined
  const own = feature?.members.some((m) => m.faces.some((f) => border.includes(f))) ?? false
  switch (chosen.kind) {
    case 'diameter':
    case 'radius':
    case 'chamfer':
      return chosen.faces.length > 0 && chosen.faces.every((f) => border.includes(f))
    case 'distance':
      return inPlane(chosen.direction) && on(chosen.from) && on(chosen.to)
    case 'pitch':
      return inPlane(chosen.direction) && chosen.members.every(on)
    case 'width':
    case 'length':
      return inPlane(chosen.direction) && own
    case 'depth':
      return own && feature !== undefined && inPlane(feature.outward)
    case 'angle':
      return chosen.role === undefined && on(chosen.from) && on(chosen.to)
    default:
      return false
  }
}

/** A plane, an arc's axis or a corner of the border, or the middle between two of its planes. */
function isOn(part: Bounded, border: readonly number[], direction: Vec3, id: string): boolean {
  const walls = part.body.faces.filter((f) => border.includes(f.id))
  if (walls.some((f) => f.name === id)) return true
  const datum = part.data.find((d) => d.id === id)
  if (datum?.kind === 'middle') return datum.between.every((side) => isOn(part, border, direction, side))
  return datum !== undefined && walls.some((wall) => carries(wall, datum, direction))
}

function carries({ id, surface }: BodyFace, datum: Datum, direction: Vec3): boolean {
  if (surface.kind !== 'plane' && surface.kind !== 'cylinder') return false
  const { origin, z } = surface.axes
  const from = sub(datum.point, origin)
  if (datum.kind === 'plane') {
    if (surface.kind === 'plane')
      return Math.abs(Math.abs(dot(z, datum.normal)) - 1) < NEAR && Math.abs(dot(from, z)) < NEAR
    // The limit of a round end: its crown.
    return Math.abs(Math.abs(dot(from, datum.normal)) - surface.r) < NEAR
  }
  if (datum.kind !== 'axis') return false
  if (datum.faces) return datum.faces.includes(id)
  // A corner of the outline lies where its sides meet; a rounded one stands on both planes run on.
  return /^corner \d+$/.test(datum.id) && surface.kind === 'plane' && Math.abs(dot(from, z)) < NEAR
    ? Math.abs(dot(z, direction)) < NEAR
    : false
}

function standsAlong(face: BodyFace | undefined, direction: Vec3): boolean {
  if (face?.surface.kind === 'plane') return Math.abs(dot(face.surface.axes.z, direction)) < NEAR
  return face?.surface.kind === 'cylinder' && Math.abs(dot(face.surface.axes.z, direction)) > 1 - NEAR
}

/** The outer of a flat face's loops: the one that reaches furthest. */
function longest<T extends { readonly curve: Curve3 }>(loops: readonly (readonly T[])[]): readonly T[] {
  const reach = (loop: readonly T[]) => {
    const points = loop.flatMap(({ curve }) => pointsOf(curve))
    return Math.max(0, ...points.map((p) => Math.max(...points.map((q) => distance(p, q)))))
  }
  return loops.length < 2 ? (loops[0] ?? []) : loops.reduce((a, b) => (reach(b) > reach(a) ? b : a))
}

function pointsOf(curve: Curve3): readonly Vec3[] {
  if (curve.kind === 'line') return [curve.a, curve.b]
  if (curve.kind === 'spline') return curve.poles
  const { origin, x, y } = curve.axes
  const [along, across] = curve.kind === 'circle' ? [curve.r, curve.r] : [curve.major, curve.minor]
  return [0, 0.25, 0.5, 0.75, 1].map((t): Vec3 => {
    const angle = curve.from + t * curve.sweep
    const at = (k: 0 | 1 | 2) => origin[k] + along * Math.cos(angle) * x[k] + across * Math.sin(angle) * y[k]
    return [at(0), at(1), at(2)]
  })
}
