import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm } from '../../geometry/vec3.ts'
import type { Dimension, Statement, Stretch } from '../dimension.ts'
import { arcLength } from './arc-length.ts'
import { chamfer } from './chamfer.ts'
import { asFirst, distinct, type Equation, type Plain, single } from './condition.ts'
import { coneDiameters } from './cone-diameter.ts'
import { axisIndex } from './elements.ts'
import { flatsAlike } from './flats.ts'
import type { Expression, Model, PlaneReading, RoundReading, Values } from './model.ts'
import { reached } from './reach.ts'
import { ring } from './ring.ts'
import { tangencies } from './tangency.ts'

/** A statement that nothing on the solid answers to. */
export interface Astray {
  readonly dimension: string
  readonly text: string
}

interface Heard {
  readonly equations: Equation[]
  readonly astray: Astray[]
}

/** The sizes' statements as conditions on the solid's unknowns. Reference sizes state nothing. */
export function equationsOf(
  model: Model,
  dimensions: readonly Pick<Dimension, 'id' | 'states' | 'reference'>[],
): Heard {
  const equations: Equation[] = []
  const astray: Astray[] = []
  for (const dimension of dimensions) {
    if (dimension.reference) continue
    for (const statement of dimension.states ?? []) {
      const said = hear(model, statement)
      if (typeof said === 'string') astray.push({ dimension: dimension.id, text: said })
      else for (const equation of said) equations.push({ ...equation, dimension: dimension.id })
    }
  }
  return { equations, astray }
}

/** One number, and the other places that are said to have it too. */
function distances(model: Model, stretches: readonly Stretch[]): Plain[] | string {
  const result: Plain[] = []
  const seen = new Set<string>()
  let first: Plain | undefined
  for (const { direction, from, to } of stretches) {
    const [a, b] = [reached(model, from, direction), reached(model, to, direction)]
    if (!a) return `no plane, axis or corner stands where the size starts (${from.name})`
    if (!b) return `no plane, axis or corner stands where the size ends (${to.name})`
    if (a.bar !== undefined && b.bar !== undefined) {
      // The same two planes again (slots in a row) are the same distance.
      const key = [a.bar, b.bar].sort((p, q) => p - q).join()
      if (seen.has(key)) continue
      seen.add(key)
    }
    const own = difference(a, b, 'size')
    result.push(first ? asFirst(first, own, false) : own)
    first ??= own
    result.push(...parallelPlanes(model, a, b))
  }
  return result
}

function difference(a: Expression, b: Expression, kind: Equation['kind']): Plain {
  const uses = [...new Set([...a.uses, ...b.uses])]
  const of = (x: Values) => b.of(x) - a.of(x)
  if (a.bar !== undefined && b.bar !== undefined) return { uses, of, kind, pair: [a.bar, b.bar] }
  return { uses, of, kind }
}

function hear(model: Model, statement: Statement): Plain[] | string {
  switch (statement.kind) {
    case 'distance':
      return distances(model, [statement, ...(statement.also ?? [])])
    case 'pitch': {
      const { direction, also = [] } = statement
      const rows = [statement.members, ...also]
      const result: Plain[] = []
      for (const row of rows) {
        const reaches = row.map((m) => reached(model, m, direction))
        const lost = reaches.findIndex((r) => !r)
        if (lost >= 0) return `no axis stands at ${row[lost]!.name}`
        for (let i = 1; i < reaches.length; i++)
          result.push(difference(reaches[i - 1]!, reaches[i]!, result.length === 0 ? 'size' : 'equally spaced'))
      }
      return result
    }
    case 'radius': {
      const radii = roundsOf(model, statement.faces).filter((r) => r.radius >= 0)
      if (radii.length === 0) return 'no round surface stands where the radius or diameter points'
      return alike(distinct(radii.map((r) => r.radius)))
    }
    case 'arc length':
      return arcLength(model, statement.faces)
    case 'full round': {
      const ends = new Set(statement.faces.flatMap((face) => model.elementOf.get(face) ?? []))
      const touching = tangencies(model, ends)
      return touching.length > 0 ? touching : 'no round end stands where the R points'
    }
    case 'cone diameter':
      return coneDiameters(model, statement)
    case 'cone angle': {
      const halves = distinct(roundsOf(model, statement.faces).flatMap((r) => (r.half >= 0 ? [r.half] : [])))
      if (halves.length === 0) return 'no cone stands where the angle points'
      return statement.custom ? halves.map((h) => single(h, 'by custom')) : alike(halves)
    }
    case 'angle':
      return anglesBetween(model, [statement.faces, ...(statement.also ?? [])])
    case 'equal slopes': {
      const [a, b] = statement.faces.map((f) => planeOf(model, f))
      if (!a || !b) return 'the slopes are no planes'
      const { direction } = statement
      const lean = (plane: PlaneReading, x: Values) => Math.abs(dot(plane.normal(x), direction))
      const uses = distinct([...a.uses, ...b.uses])
      return [{ uses, of: (x) => model.scale * (lean(b, x) - lean(a, x)), kind: 'equal' }]
    }
    case 'flats alike':
      return flatsAlike(model, statement)
    case 'ring':
      return ring(model, statement)
    case 'chamfer':
      return chamfer(model, statement)
    case 'bolt circle':
      return boltCircle(model, statement)
    case 'equally spaced':
      return equallySpaced(model, statement)
    case 'polar': {
      const angle = polarAngle(model, statement.centre, statement.axis, statement.member)
      return angle ? [{ ...angle, kind: 'size' }] : 'no axis stands where the angle points'
    }
    case 'aligned': {
      const ends = statement.reaches.map((r) => reached(model, r, statement.direction))
      const [a, b] = ends
      return a && b ? [difference(a, b, 'aligned')] : 'nothing stands where the line is said to run'
    }
    case 'centred': {
      const { direction, first, last, between } = statement
      const ends = [first, last, ...between].map((r) => reached(model, r, direction))
      if (ends.some((e) => !e)) return 'nothing stands where `centred` is said'
      const [p, q, a, b] = ends as [Expression, Expression, Expression, Expression]
      const uses = distinct([...p.uses, ...q.uses, ...a.uses, ...b.uses])
      return [{ uses, of: (x) => (p.of(x) + q.of(x) - a.of(x) - b.of(x)) / 2, kind: 'centred' }]
    }
  }
}

/** One number for the first, and the others said to be as it: `4X`. */
function alike(unknowns: readonly number[]): Plain[] {
  const first = unknowns[0]!
  return unknowns.map((u, i) =>
    i === 0
      ? single(u, 'size')
      : { uses: [first, u], of: (x: Values) => x[u]! - x[first]!, kind: 'equal' as const, pair: [first, u] as const },
  )
}

function roundsOf(model: Model, faces: readonly number[]): RoundReading[] {
  return faces.flatMap((face) => {
    const element = model.elementOf.get(face)
    const reading = element && model.readings[element.id]
    return reading && reading.form !== 'plane' ? [reading] : []
  })
}

function planeOf(model: Model, face: number): PlaneReading | undefined {
  const element = model.elementOf.get(face)
  const reading = element && model.readings[element.id]
  return reading?.form === 'plane' ? reading : undefined
}

/** A width across two planes off the axes says that they are parallel, as drawn. */
function parallelPlanes(model: Model, a: Expression, b: Expression): Plain[] {
  const find = (e: Expression) =>
    model.readings.find(
      (r): r is PlaneReading => r?.form === 'plane' && tilted(model, r) && r.uses.join() === e.uses.join(),
    )
  const [p, q] = [find(a), find(b)]
  if (!p || !q || p === q) return []
  const n = p.normal(model.values)
  // Both planes stand along this axis of the part; the cross product of their normals lies on it.
  const about = ([0, 1, 2] as const).find((i) => Math.abs(n[i]) < 1e-9) ?? 2
  const uses = distinct([...p.uses, ...q.uses])
  return [{ uses, of: (x) => model.scale * cross(p.normal(x), q.normal(x))[about], kind: 'parallel' }]
}

const tilted = (model: Model, plane: PlaneReading): boolean => axisIndex(plane.normal(model.values)) === undefined

function anglesBetween(model: Model, pairs: readonly (readonly [number, number])[]): Plain[] | string {
  const angles = pairs.flatMap((faces) => {
    const [a, b] = faces.map((f) => planeOf(model, f))
    if (!a || !b) return []
    const of = (x: Values) => {
      const [n, m] = [a.normal(x), b.normal(x)]
      return model.scale * Math.atan2(norm(cross(n, m)), dot(n, m))
    }
    return [{ uses: distinct([...a.uses, ...b.uses]), of }]
  })
  if (angles.length < pairs.length) return 'the angle does not stand between two planes'
  return angles.map((angle, i) => asFirst(angles[0]!, angle, i === 0))
}

type Place = { readonly uses: readonly number[]; readonly of: (x: Values) => readonly [number, number] }

/** Place of an axis across direction k, seen from a centre. */
function placeAbout(model: Model, centre: Vec3, axis: Vec3, member: Vec3): Place | undefined {
  const k = axisIndex(axis)
  if (k === undefined) return undefined
  const [i, j] = [((k + 1) % 3) as 0 | 1 | 2, ((k + 2) % 3) as 0 | 1 | 2]
  const c = [model.level(i, centre[i], centre), model.level(j, centre[j], centre)]
  const m = [model.level(i, member[i], member), model.level(j, member[j], member)]
  const [c0, c1, m0, m1] = [c[0], c[1], m[0], m[1]]
  if (!c0 || !c1 || !m0 || !m1) return undefined
  return {
    uses: distinct([c0, c1, m0, m1].flatMap((e) => e.uses)),
    of: (x) => [m0.of(x) - c0.of(x), m1.of(x) - c1.of(x)],
  }
}

function polarAngle(model: Model, centre: Vec3, axis: Vec3, member: Vec3): Omit<Plain, 'kind'> | undefined {
  const place = placeAbout(model, centre, axis, member)
  if (!place) return undefined
  const [x0, y0] = place.of(model.values)
  const now = Math.atan2(y0, x0)
  return {
    uses: place.uses,
    of: (x) => {
      const [a, b] = place.of(x)
      // Turn from where it stands, so that no branch cut comes near.
      return model.scale * Math.atan2(b * Math.cos(now) - a * Math.sin(now), a * Math.cos(now) + b * Math.sin(now))
    },
  }
}

function boltCircle(model: Model, s: Extract<Statement, { kind: 'bolt circle' }>): Plain[] | string {
  const radii = s.members.flatMap((m) => placeAbout(model, s.centre, s.axis, m) ?? [])
  if (radii.length < s.members.length) return 'no axes stand on the bolt circle'
  const circles = radii.map((p) => ({ uses: p.uses, of: (x: Values) => Math.hypot(...p.of(x)) }))
  return circles.map((circle, i) => asFirst(circles[0]!, circle, i === 0))
}

function equallySpaced(model: Model, s: Extract<Statement, { kind: 'equally spaced' }>): Plain[] | string {
  const angles = s.members.flatMap((m) => polarAngle(model, s.centre, s.axis, m) ?? [])
  if (angles.length < s.members.length) return 'no axes stand on the bolt circle'
  const first = angles[0]!
  return angles.slice(1).map((angle) => ({
    uses: distinct([...first.uses, ...angle.uses]),
    of: (x) => angle.of(x) - first.of(x),
    kind: 'equally spaced',
  }))
}
