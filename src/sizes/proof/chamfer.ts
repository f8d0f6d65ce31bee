import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot } from '../../geometry/vec3.ts'
import type { Statement } from '../dimension.ts'
import { asFirst, distinct, type Plain, single } from './condition.ts'
import { cornerOf } from './corner.ts'
import { type Element, SAME } from './elements.ts'
import type { Model, PlaneReading, RoundReading, Values } from './model.ts'
import { reached } from './reach.ts'

/** Legs measured on the two faces beside the chamfer; `angle` replaces the second leg. */
export function chamfer(model: Model, statement: Extract<Statement, { kind: 'chamfer' }>): Plain[] | string {
  const sets: Omit<Plain, 'kind'>[][] = []
  const parallel: Plain[] = []
  for (const face of statement.faces) {
    const element = model.elementOf.get(face)
    const reading = element && model.readings[element.id]
    if (!element || !reading) continue
    const legs = chamferLegs(model, element.id)
    parallel.push(...alongItsEdge(model, reading, legs))
    if (statement.by === 'two legs') {
      if (legs.length < 2) return 'the chamfer has no two faces beside it to carry its legs'
      legs.sort((a, b) => a.length - b.length)
      sets.push(legs.slice(0, 2).map((leg) => leg.equation))
      continue
    }
    const best = [...legs].sort((a, b) => Math.abs(a.length - statement.leg) - Math.abs(b.length - statement.leg))[0]
    if (!best) return 'the chamfer has no face beside it to carry its leg'
    const set = [best.equation]
    if (reading.form === 'cone') set.push(single(reading.half, 'size'))
    else if (reading.form === 'plane' && best.plane) set.push(tilt(model, reading, best.plane))
    sets.push(set)
  }
  if (sets.length === 0) return 'no chamfer stands where the size points'
  return [...sets.flatMap((set, i) => set.map((equation, j) => asFirst(sets[0]![j]!, equation, i === 0))), ...parallel]
}

/** A chamfer that lies square to none of the part's axes runs along the edge between its two faces, as drawn. */
function alongItsEdge(model: Model, own: PlaneReading | RoundReading, legs: readonly Leg[]): Plain[] {
  const [a, b] = legs.flatMap((leg) => leg.plane ?? [])
  if (own.form !== 'plane' || !a || !b) return []
  if (own.normal(model.values).some((c) => Math.abs(c) < 1e-9)) return []
  const uses = distinct([...own.uses, ...a.uses, ...b.uses])
  const of = (x: Values) => model.scale * dot(own.normal(x), cross(a.normal(x), b.normal(x)))
  return [{ uses, of, kind: 'parallel' }]
}

function tilt(model: Model, plane: PlaneReading, against: PlaneReading): Omit<Plain, 'kind'> {
  return {
    uses: distinct([...plane.uses, ...against.uses]),
    of: (x) => model.scale * Math.acos(Math.abs(dot(plane.normal(x), against.normal(x)))),
  }
}

interface Leg {
  readonly length: number
  /** Absent for the leg of a cone that lies on a round. */
  readonly plane?: PlaneReading
  /** It ends at a round or taper. */
  readonly toRound?: boolean
  readonly equation: Omit<Plain, 'kind'>
}

/**
 * A chamfer's legs: for each plane it meets, the distance from that plane to the chamfer's far border, measured square
 * to the plane. For a cone beside a round about one axis also the step from the round to the cone's far circle.
 */
function chamferLegs(model: Model, element: number): Leg[] {
  const own = model.elements[element]!
  const borders = model.body.edges.filter((e) => e.faces.some((f) => f !== undefined && own.faces.includes(f)))
  const legs: Leg[] = []
  const seen = new Set<number>()
  for (const edge of borders) {
    const otherFace = edge.faces.find((f) => f !== undefined && !own.faces.includes(f))
    const other = otherFace === undefined ? undefined : model.elementOf.get(otherFace)
    const plane = other && model.readings[other.id]
    if (!other || plane?.form !== 'plane' || seen.has(other.id)) continue
    const n = plane.normal(model.values)
    if (edge.curve.kind !== 'line' && edge.curve.kind !== 'circle') continue
    const here = plane.offset(model.values)
    // Far border: the edge of the chamfer parallel to this one and farthest from the plane.
    let far: { edge: (typeof borders)[number]; length: number } | undefined
    for (const candidate of borders) {
      if (candidate === edge || candidate.curve.kind !== edge.curve.kind) continue
      const levels = candidate.curve.kind === 'line' ? [dot(candidate.curve.a, n), dot(candidate.curve.b, n)] : []
      if (candidate.curve.kind === 'circle') levels.push(dot(candidate.curve.axes.origin, n))
      if (levels.length === 0 || Math.max(...levels) - Math.min(...levels) > SAME) continue
      const length = Math.abs(levels[0]! - here)
      if (length < SAME) continue
      // Where a plane ends at the far border too, the border is that of the round the chamfer is worked on.
      const isFarther = !far || length > far.length + SAME
      if (isFarther || (length > far!.length - SAME && isRoundBeside(model, own, candidate)))
        far = { edge: candidate, length }
    }
    if (!far) continue
    const { curve } = far.edge
    const at: Vec3 | undefined =
      curve.kind === 'line' ? middle(curve.a, curve.b) : curve.kind === 'circle' ? rim(curve) : undefined
    if (!at) continue
    const corner = curve.kind === 'circle' ? cornerOf(model, far.edge) : undefined
    const to = corner
      ? { uses: corner.uses, of: (x: Values) => dot(corner.point(x), n) }
      : reached(model, { at, name: 'chamfer', faces: own.faces }, n)
    if (!to) continue
    seen.add(other.id)
    legs.push({
      length: far.length,
      plane,
      toRound: isRoundBeside(model, own, far.edge),
      equation: { uses: distinct([...plane.uses, ...to.uses]), of: (x) => to.of(x) - plane.offset(x) },
    })
  }
  // Round an axis a leg runs to the round or taper beside the chamfer; a wall that ends at that border has none.
  if (model.readings[element]?.form === 'cone' && legs.some((l) => l.toRound))
    legs.splice(0, legs.length, ...legs.filter((l) => l.toRound))
  const [only] = legs
  const cone = model.readings[element]
  if (cone?.form !== 'cone' || !only?.plane || legs.length > 1) return legs
  const radial = radialLeg(model, own, cone, only.plane)
  return radial ? [only, radial] : legs
}

function isRoundBeside(model: Model, own: Element, edge: Model['body']['edges'][number]): boolean {
  const other = edge.faces
    .flatMap((f) => (f === undefined ? [] : (model.elementOf.get(f) ?? [])))
    .find((e) => e !== own)
  const form = other && model.readings[other.id]?.form
  return form === 'cylinder' || form === 'cone'
}

/** From the round or taper beside a cone to the circle in which the cone meets a plane across its axis. */
function radialLeg(model: Model, own: Element, cone: RoundReading, plane: PlaneReading): Leg | undefined {
  const round = model.body.edges
    .filter((e) => e.curve.kind === 'circle' && e.faces.some((f) => f !== undefined && own.faces.includes(f)))
    .flatMap((e) => e.faces.flatMap((f) => (f === undefined ? [] : (model.elementOf.get(f) ?? []))))
    .filter((e) => e !== own)
    .map((e) => model.readings[e.id])
    .find((r): r is RoundReading => r?.form === 'cylinder' || r?.form === 'cone')
  if (!round) return undefined
  const radiusAtPlane = (r: RoundReading, x: Values): number => {
    if (r.form === 'cylinder') return x[r.radius]!
    const u = r.direction(x)
    const along = Math.sign(dot(plane.normal(x), u)) * plane.offset(x) - dot(r.point(x), u)
    return Math.abs(along) * Math.tan(x[r.half]! / model.scale)
  }
  const of = (x: Values) => radiusAtPlane(round, x) - radiusAtPlane(cone, x)
  const uses = distinct([...cone.uses, ...plane.uses, ...round.uses])
  return { length: Math.abs(of(model.values)), equation: { uses, of } }
}

const middle = (a: Vec3, b: Vec3): Vec3 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2]
const rim = (c: { readonly axes: { readonly origin: Vec3; readonly x: Vec3 }; readonly r: number }): Vec3 => [
  c.axes.origin[0] + c.r * c.axes.x[0],
  c.axes.origin[1] + c.r * c.axes.x[1],
  c.axes.origin[2] + c.r * c.axes.x[2],
]
