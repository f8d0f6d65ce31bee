import type { Lie } from '../../brief/brief.ts'
import type { StackStatement } from '../../brief/stack.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { add, cross, dot, negate, norm, scale, sub } from '../../geometry/vec3.ts'
import type { NamedFeature } from '../../part/named-feature.ts'
import type { Part } from '../../part/part.ts'
import type { Reach } from '../../sizes/dimension.ts'

/** Both ends of a stack on the solid and the way from the first to the second. */
export interface Ends {
  readonly from: Reach
  readonly to: Reach
  /** Unit vector; the second end lies this way, or level. */
  readonly direction: Vec3
  /** How far two axes also stand apart across the way, mm. */
  readonly aside: number
}

/** A word for what stops a stack: the sentence, and what to write instead. */
export interface Obstacle {
  readonly text: string
  readonly expected: string
}

/** One place that an end may be: a plane, an axis, or the middle of two planes. */
interface Spot {
  readonly at: Vec3
  /** Its distance is known along these: a plane's normal, or whatever is square to an axis. */
  readonly normal?: Vec3
  readonly axis?: Vec3
  /** Radius of the round, or half the width, for its edge. */
  readonly half?: number
  readonly sides?: readonly [Vec3, Vec3]
  readonly face: number
}

interface Pair {
  readonly a: Spot
  readonly b: Spot
}

const WAYS: Readonly<Record<Lie, Vec3>> = { 'left-right': [1, 0, 0], 'front-rear': [0, 1, 0], 'up-down': [0, 0, 1] }
const isEdge = (name: string) => / edge$/.test(name)

/** Where the stack begins and ends. Of a pattern, the members nearest to each other count. */
export function endsOf(
  part: Part,
  said: StackStatement,
  [from, to]: readonly [NamedFeature, NamedFeature],
): Ends | Obstacle {
  const [starts, stops] = [spotsOf(part, from), spotsOf(part, to)]
  const pairs = starts.flatMap((a) => stops.map((b) => ({ a, b }))).filter(({ a, b }) => a.face !== b.face)
  const first = pairs[0]
  if (!first)
    return { text: `${said.from.text} and ${said.to.text} are one and the same.`, expected: 'two faces or axes' }
  const way = said.along ? WAYS[said.along] : wayOf(first.a, first.b)
  if (!way)
    return {
      text: `${said.from.text} and ${said.to.text} do not say along which way to add up.`,
      expected: 'left-right, front-rear or up-down; the two must face the same way',
    }
  const wrong = [[first.a, said.from.text] as const, [first.b, said.to.text] as const].find(
    ([spot]) => !isAcross(spot, way),
  )
  if (wrong)
    return { text: `${wrong[1]} has no place along that way.`, expected: 'a face square to it, or an axis across it' }
  const all = pairs.map((p) => placedPair(p, said, way))
  // Of a pattern, the member next along the way, and not one that stands level.
  const apart = all.filter((p) => Math.abs(p.gap) > 1e-6)
  const placed = apart.length > 0 ? apart : all
  const near = placed.reduce((best, p) => (Math.abs(p.gap) < Math.abs(best.gap) - 1e-9 ? p : best))
  return { from: near.from, to: near.to, direction: near.gap < -1e-9 ? negate(way) : way, aside: near.aside }
}

/** Where both ends stand and how far apart along the way, signed. */
function placedPair({ a, b }: Pair, said: StackStatement, way: Vec3) {
  const apart = sub(b.at, a.at)
  const gap = dot(apart, way)
  const side = gap < -1e-9 ? -1 : 1
  // A round that holds the other end is met on its far side, as seen from its own axis.
  const holds = (outer: Spot, inner: number) => outer.axis !== undefined && Math.abs(gap) + inner < (outer.half ?? 0)
  const inner = (s: Spot, name: string) => (isEdge(name) ? (s.half ?? 0) : 0)
  const aHolds = isEdge(said.from.text) && holds(a, inner(b, said.to.text))
  const bHolds = isEdge(said.to.text) && holds(b, inner(a, said.from.text))
  const level = Math.abs(gap) < 1e-9
  const from = reachOf(a, said.from.text, scale(way, bHolds && !level ? -side : side))
  const to = reachOf(b, said.to.text, scale(way, bHolds && !level ? -side : aHolds || level ? side : -side))
  const across = sub(apart, scale(way, gap))
  return {
    from,
    to,
    gap: dot(sub(to.at, from.at), way),
    aside: a.axis && b.axis ? Math.hypot(...across.map((v, i) => (Math.abs(a.axis![i]!) > 0.9 ? 0 : v))) : 0,
  }
}

/** As a reach of the proof's; of an edge, the side that looks along `toward`. */
function reachOf(spot: Spot, name: string, toward: Vec3): Reach {
  if (spot.normal && !spot.sides) return { at: spot.at, name, faces: [spot.face] }
  if (isEdge(name) && spot.half !== undefined) {
    const at = add(spot.at, scale(toward, spot.half))
    return { at, name, ...(spot.sides ? {} : { faces: [spot.face] }) }
  }
  return { at: spot.at, name, ...(spot.sides ? { middle: spot.sides } : {}) }
}

function wayOf(a: Spot, b: Spot): Vec3 | undefined {
  if (a.normal && b.normal) return norm(cross(a.normal, b.normal)) < 1e-7 ? a.normal : undefined
  const normal = a.normal ?? b.normal
  if (normal) return normal
  // Two axes: the one way in which they stand apart.
  const apart = sub(b.at, a.at)
  const ways = Object.values(WAYS).filter((w) => Math.abs(dot(apart, w)) > 1e-6 && isAcross(a, w) && isAcross(b, w))
  return ways.length === 1 ? ways[0] : undefined
}

const isAcross = ({ normal, axis }: Spot, way: Vec3): boolean =>
  normal ? norm(cross(normal, way)) < 1e-7 : axis !== undefined && Math.abs(dot(axis, way)) < 1e-7

function spotsOf(part: Part, named: NamedFeature): Spot[] {
  const faces = part.body.faces.filter((f) => named.faces.includes(f.id))
  if (named.kind === 'width') {
    const way = named.direction
    const levels = faces.flatMap((f) => (f.surface.kind === 'plane' ? [f.surface.axes.origin] : []))
    const [low, high] = [Math.min, Math.max].map((pick) => pick(...levels.map((p) => dot(p, way))))
    const [a, b] = [low, high].map((at) => levels.find((p) => Math.abs(dot(p, way) - at!) < 1e-6))
    if (!a || !b) return []
    const half = (high! - low!) / 2
    return [{ at: add(a, scale(way, half)), normal: way, half, sides: [a, b], face: faces[0]!.id }]
  }
  return faces.flatMap((f): Spot[] => {
    const { surface } = f
    if (surface.kind === 'plane') return [{ at: surface.axes.origin, normal: surface.axes.z, face: f.id }]
    if (surface.kind === 'cylinder')
      return [{ at: surface.axes.origin, axis: surface.axes.z, half: surface.r, face: f.id }]
    return surface.kind === 'cone' ? [{ at: surface.axes.origin, axis: surface.axes.z, face: f.id }] : []
  })
}
