import type { Vec3 } from '../../geometry/vec.ts'
import { cross, distance, dot, norm, sub } from '../../geometry/vec3.ts'
import type { Entity, Records, Value } from './records.ts'

/** What is wrong with a face's records. */
export interface FaceFault {
  /** Said of the face: `its border is open between #20 and #83`. */
  readonly text: string
  /** Nothing can be drawn from them: a kernel would make nothing of the face, or something endless. */
  readonly lost: boolean
}

/** Lengths beyond this, in any unit, are no part's: a digit or an exponent went wrong. */
const FAR = 1e9

/** Ends of two edges nearer than this, in the file's unit, meet. */
const MEET = 1e-3

/** The numbers of a record that must be more than nothing, by place among its values (ISO 10303-42). */
const POSITIVE: Readonly<Record<string, readonly number[]>> = {
  CYLINDRICAL_SURFACE: [2],
  SPHERICAL_SURFACE: [2],
  TOROIDAL_SURFACE: [2, 3],
  CIRCLE: [2],
  ELLIPSE: [2, 3],
}

/** Longer borders are not searched for places where they cross themselves. */
const MOST_EDGES = 200

/** Looks through the records that faces are made of: each is read once, however many faces share it. */
export class FaceFaults {
  private readonly records: Records
  private readonly known = new Map<number, string | undefined>()

  constructor(records: Records) {
    this.records = records
  }

  /** The worst that is wrong with a face; undefined where nothing is. */
  of(face: number): FaceFault | undefined {
    const lost = this.broken(face)
    if (lost !== undefined) return { text: lost, lost: true }
    return this.border(face)
  }

  private entity(id: number | undefined, name: string): Entity | undefined {
    return id === undefined ? undefined : this.records.entities(id).find((e) => e.name === name)
  }

  /** What cannot be used, of a record or of those it is made of. */
  private broken(id: number): string | undefined {
    if (this.known.has(id)) return this.known.get(id)
    this.known.set(id, undefined)
    const fault = this.search(id)
    this.known.set(id, fault)
    return fault
  }

  private search(id: number): string | undefined {
    const entities = this.records.entities(id)
    if (entities.length === 0) return `#${id} is not in the file or cannot be read`
    for (const { name, args } of entities) {
      const own = ownFault(name, args)
      if (own !== undefined) return `#${id} ${name} ${own}`
      // curves in a surface's own plane follow from the others
      const used = name === 'SURFACE_CURVE' || name === 'SEAM_CURVE' ? args.slice(0, 2) : args
      for (const ref of name === 'PCURVE' ? [] : used.flatMap(refsIn)) {
        const fault = this.broken(ref)
        if (fault !== undefined) return fault
      }
    }
    return undefined
  }

  /** A border that is open, holds nothing, or crosses itself. */
  private border(face: number): FaceFault | undefined {
    const own = this.records.entities(face).find((e) => /FACE/.test(e.name))
    const plane = this.entity(refOf(own?.args[2]), 'PLANE')
    for (const bound of refsIn(own?.args[1])) {
      const loop = this.records.entities(bound).flatMap((e) => refOf(e.args[1]) ?? [])[0]
      const edges = refsIn(this.entity(loop, 'EDGE_LOOP')?.args[1]).flatMap((id) => this.edge(id) ?? [])
      if (edges.length === 0) continue
      for (const [i, edge] of edges.entries()) {
        const next = edges[(i + 1) % edges.length]!
        if (distance(edge.to, next.from) > MEET)
          return { text: `its border is open between #${edge.id} and #${next.id}`, lost: false }
      }
      if (!plane) continue
      if (edges.every((e) => edges.some((other) => other !== e && other.curve === e.curve)))
        return { text: `its border #${loop} runs back along itself and holds no area`, lost: true }
      const crossing = this.crossing(edges, plane)
      if (crossing)
        return { text: `its border crosses itself where #${crossing[0].id} meets #${crossing[1].id}`, lost: false }
    }
    return undefined
  }

  private edge(id: number): LoopEdge | undefined {
    const oriented = this.entity(id, 'ORIENTED_EDGE')
    const curve = refOf(oriented?.args[3])
    const edge = this.entity(curve, 'EDGE_CURVE')
    const [a, b] = [this.vertex(refOf(edge?.args[1])), this.vertex(refOf(edge?.args[2]))]
    if (!oriented || curve === undefined || !a || !b) return undefined
    const straight = this.straight(refOf(edge?.args[3]))
    const ahead = wordOf(oriented.args[4]) !== 'F'
    return { id, curve, straight, from: ahead ? a : b, to: ahead ? b : a }
  }

  private straight(curve: number | undefined): boolean {
    const [own] = this.records.entities(curve ?? 0)
    if (own?.name === 'SURFACE_CURVE' || own?.name === 'SEAM_CURVE') return this.straight(refOf(own.args[1]))
    return own?.name === 'LINE'
  }

  private vertex(id: number | undefined): Vec3 | undefined {
    return this.triple(refOf(this.entity(id, 'VERTEX_POINT')?.args[1]), 'CARTESIAN_POINT')
  }

  private triple(id: number | undefined, name: string): Vec3 | undefined {
    const values = this.entity(id, name)?.args[1]
    return Array.isArray(values) && values.length === 3 ? (values as unknown as Vec3) : undefined
  }

  /** Two straight edges of a plane's border that cross between their ends. */
  private crossing(edges: readonly LoopEdge[], plane: Entity): readonly [LoopEdge, LoopEdge] | undefined {
    const normal = this.triple(refOf(this.entity(refOf(plane.args[1]), 'AXIS2_PLACEMENT_3D')?.args[2]), 'DIRECTION')
    if (!normal || edges.length > MOST_EDGES) return undefined
    const straight = edges.filter((e) => e.straight)
    for (const [i, e] of straight.entries()) {
      for (const f of straight.slice(i + 1)) if (parts(e, f, normal) && parts(f, e, normal)) return [e, f]
    }
    return undefined
  }
}

interface LoopEdge {
  readonly id: number
  /** Its `EDGE_CURVE`. */
  readonly curve: number
  readonly straight: boolean
  readonly from: Vec3
  readonly to: Vec3
}

/** Whether the ends of the second lie on either side of the first, well clear of it. */
function parts(first: LoopEdge, second: LoopEdge, normal: Vec3): boolean {
  const along = sub(first.to, first.from)
  const length = norm(along)
  const side = (p: Vec3) => dot(cross(along, sub(p, first.from)), normal) / length
  const [a, b] = [side(second.from), side(second.to)]
  return (a > MEET && b < -MEET) || (a < -MEET && b > MEET)
}

function ownFault(name: string, args: readonly Value[]): string | undefined {
  const numbers = args
    .flatMap((a) => (Array.isArray(a) ? (a as readonly Value[]) : [a]))
    .filter((a) => typeof a === 'number')
  const wild = numbers.find((n) => !(Math.abs(n) <= FAR))
  if (wild !== undefined) return `has a number that no part has: ${wild}`
  switch (name) {
    case 'CARTESIAN_POINT':
      return numbers.length < 2 ? 'has no coordinates' : undefined
    case 'DIRECTION':
      return numbers.every((n) => n === 0) ? 'points nowhere' : undefined
    case 'EDGE_LOOP':
      return refsIn(args[1]).length === 0 ? 'has no edges' : undefined
    case 'ADVANCED_FACE':
    case 'FACE_SURFACE':
      if (refsIn(args[1]).length === 0) return 'has no border'
      return refOf(args[2]) === undefined ? 'has no surface' : undefined
    default: {
      const at = POSITIVE[name]?.find((i) => !(typeof args[i] === 'number' && args[i] > 0))
      return at === undefined ? undefined : `has a radius of ${typeof args[at] === 'number' ? args[at] : 'nothing'}`
    }
  }
}

const refOf = (value: Value): number | undefined =>
  typeof value === 'object' && 'ref' in value ? value.ref : undefined

const wordOf = (value: Value): string | undefined =>
  typeof value === 'object' && 'word' in value ? value.word : undefined

function refsIn(value: Value): number[] {
  if (Array.isArray(value)) return value.flatMap((v: Value) => refsIn(v))
  const ref = refOf(value)
  return ref === undefined ? [] : [ref]
}
