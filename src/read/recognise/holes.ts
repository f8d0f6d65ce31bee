import type { Vec3 } from '../../geometry/vec.ts'
import { add, dot, scale } from '../../geometry/vec3.ts'
import type { Body } from '../../kernel/body.ts'
import { axisAlong, type Line3, type Neighbour, opposite, outwardOfPlane, parallel, SAME } from './borders.ts'
import { isRound, type Wall } from './walls.ts'

/** A cylinder or cone of a hole, with the faces it is made of. */
export interface HoleStep {
  readonly faces: readonly number[]
  readonly diameter: number
  /** From the mouth to its floor, mm. */
  readonly depth: number
}

/** A hole as it would be called out, from its mouth. Lengths in mm, angles in degrees. */
export interface FoundHole {
  /** Where the axis leaves the part, and the direction out. */
  readonly mouth: Vec3
  readonly outward: Vec3
  readonly line: Line3
  /** All its faces, floors included. */
  readonly faces: readonly number[]
  readonly diameter: number
  /** Walls of the drilled diameter. */
  readonly walls: readonly number[]
  /** Depth of the full diameter; absent where it goes through. */
  readonly depth?: number
  /** Included angle of a blind hole's end, 180 where flat; absent where its end is of another shape. */
  readonly point?: number
  readonly counterbore?: HoleStep
  readonly spotface?: HoleStep
  readonly countersink?: { readonly faces: readonly number[]; readonly diameter: number; readonly angle: number }
  /** Further diameters that no callout of one line covers. */
  readonly others: readonly HoleStep[]
  /** Cones at the far mouth of a through hole. */
  readonly farCones: readonly (readonly number[])[]
}

interface Chain {
  readonly walls: readonly Wall[]
  readonly lowOpen: boolean
  readonly highOpen: boolean
  readonly floors: readonly number[]
}

/** Counterbores shallower than this share of their diameter are spotfaces (common practice, no source). */
const SPOTFACE = 0.12

/** The holes among the walls: round walls with the material outside that open to at least one side. */
export function holesOf(
  body: Body,
  walls: readonly Wall[],
  beside: ReadonlyMap<number, readonly Neighbour[]>,
): FoundHole[] {
  const inner = walls.filter((w) => w.inside && isRound(w))
  const found: FoundHole[] = []
  for (const set of byLine(inner)) {
    const chains = chainsOf(body, set, beside).filter((c) => c.lowOpen || c.highOpen)
    for (const group of alike(chains)) {
      const hole = holeOf(body, group)
      if (hole) found.push(hole)
    }
  }
  return found
}

function byLine(walls: readonly Wall[]): Wall[][] {
  const sets: Wall[][] = []
  const cells = new Map<string, Wall[][]>()
  for (const wall of walls) {
    const { point, direction } = wall.line
    const key = direction.map((c) => c.toFixed(5)).join()
    const cell = (d: number) =>
      `${key}/${Math.floor((point[0] + Math.SQRT2 * point[1] + Math.PI * point[2]) / 0.01) + d}`
    const near = [-1, 0, 1].flatMap((d) => cells.get(cell(d)) ?? [])
    const home = near.find((set) => {
      const p = set[0]!.line.point
      return [0, 1, 2].every((i) => Math.abs(p[i]! - point[i]!) < SAME)
    })
    if (home) home.push(wall)
    else {
      const set = [wall]
      sets.push(set)
      cells.set(cell(0), [...(cells.get(cell(0)) ?? []), set])
    }
  }
  return sets
}

/** Walls of one line that follow one another without a gap. */
function chainsOf(body: Body, set: readonly Wall[], beside: ReadonlyMap<number, readonly Neighbour[]>): Chain[] {
  const sorted = [...set].sort((a, b) => a.from - b.from || a.to - b.to)
  const runs: Wall[][] = []
  for (const wall of sorted) {
    const run = runs.at(-1)
    const end = run && Math.max(...run.map((w) => w.to))
    if (run && (wall.from <= end! + SAME || touches(run.at(-1)!, wall, beside))) run.push(wall)
    else runs.push([wall])
  }
  return runs.map((run) => {
    const low = endOf(body, run, beside, -1)
    const high = endOf(body, run, beside, 1)
    return {
      walls: run,
      lowOpen: low.open,
      highOpen: high.open,
      floors: [...low.floors, ...high.floors, ...ledges(body, run, beside)],
    }
  })
}

function touches(a: Wall, b: Wall, beside: ReadonlyMap<number, readonly Neighbour[]>): boolean {
  return a.faces.some((f) => (beside.get(f) ?? []).some((n) => b.faces.includes(n.face)))
}

/** Whether a run of walls opens at its low (−1) or high (1) end, and the floor that closes it where not. */
function endOf(body: Body, run: readonly Wall[], beside: ReadonlyMap<number, readonly Neighbour[]>, side: -1 | 1) {
  const at = side < 0 ? Math.min(...run.map((w) => w.from)) : Math.max(...run.map((w) => w.to))
  const last = run.filter((w) => Math.abs((side < 0 ? w.from : w.to) - at) < SAME)
  const { direction } = run[0]!.line
  const own = new Set(run.flatMap((w) => w.faces))
  const pointed = last.some((w) => w.kind === 'cone' && w.radii[side < 0 ? 0 : 1] < SAME)
  if (pointed || last.some((w) => w.kind === 'sphere')) return { open: false, floors: [] }
  const floors = last
    .flatMap((w) => w.faces)
    .flatMap((f) => beside.get(f) ?? [])
    .filter((n) => !own.has(n.face))
    .filter((n) => {
      const face = body.faces[n.face]!
      const normal = outwardOfPlane(face)
      if (!normal || face.surface.kind !== 'plane') return false
      return dot(normal, direction) * side < -1 + 1e-9 && Math.abs(dot(face.surface.axes.origin, direction) - at) < SAME
    })
    .map((n) => n.face)
  return { open: floors.length === 0, floors: [...new Set(floors)] }
}

/** Plane rings between walls of different diameters: floors of counterbores. */
function ledges(body: Body, run: readonly Wall[], beside: ReadonlyMap<number, readonly Neighbour[]>): number[] {
  const own = new Set(run.flatMap((w) => w.faces))
  const rings = [...own]
    .flatMap((f) => beside.get(f) ?? [])
    .map((n) => n.face)
    .filter((id) => !own.has(id))
    .filter((id) => {
      const normal = outwardOfPlane(body.faces[id]!)
      if (!normal || !parallel(normal, run[0]!.line.direction)) return false
      // all its borders are shared with walls of this run
      return (beside.get(id) ?? []).every((n) => own.has(n.face))
    })
  return [...new Set(rings)]
}

/** Bores of one diameter through several ears are one hole. */
function alike(chains: readonly Chain[]): Chain[][] {
  const groups: Chain[][] = []
  for (const chain of chains) {
    const plain = isPlain(chain)
    const home = groups.find(
      (g) => plain && g.every(isPlain) && Math.abs(g[0]!.walls[0]!.radii[0] - chain.walls[0]!.radii[0]) < SAME,
    )
    if (home) home.push(chain)
    else groups.push([chain])
  }
  return groups
}

const isPlain = (chain: Chain): boolean =>
  chain.lowOpen && chain.highOpen && chain.walls.length === 1 && chain.walls[0]!.kind === 'cylinder'

/** Sides that a drafter looks at first: a through hole is called out from there. */
const FIRST: Vec3 = [1, -2, 3]

function holeOf(body: Body, group: readonly Chain[]): FoundHole | undefined {
  const walls = group.flatMap((c) => c.walls)
  const cylinders = walls.filter((w) => w.kind === 'cylinder')
  const [chain] = group
  const { line } = walls[0]!
  const { direction } = line
  if (cylinders.length === 0 || !chain) return undefined
  const least = Math.min(...cylinders.map((w) => w.radii[0]))
  const main = cylinders.filter((w) => w.radii[0] < least + SAME)
  const through = chain.lowOpen && chain.highOpen
  const [low, high] = [Math.min(...walls.map((w) => w.from)), Math.max(...walls.map((w) => w.to))]
  const [mainLow, mainHigh] = [Math.min(...main.map((w) => w.from)), Math.max(...main.map((w) => w.to))]
  const upward = through ? mouthIsHigh(body, walls, mainLow, mainHigh, direction) : chain.highOpen
  const outward: Vec3 = upward ? direction : opposite(direction)
  const level = upward ? high : low
  const down = (at: number) => Math.abs(level - at)
  // from the mouth inward
  const inward = [...walls].sort((a, b) => (upward ? b.to - a.to : a.from - b.from))
  const before = inward.filter(
    (w) => !main.includes(w) && down((w.from + w.to) / 2) < down(upward ? mainHigh : mainLow),
  )
  const after = inward.filter((w) => !main.includes(w) && !before.includes(w))
  const bottomOf = (w: Wall) => (upward ? w.from : w.to)
  const step = (w: Wall): HoleStep => ({ faces: w.faces, diameter: 2 * w.radii[0], depth: down(bottomOf(w)) })
  const wide = before.filter((w) => w.kind === 'cylinder')
  const mouthCone = before[0]?.kind === 'cone' && wide.length === 0 ? before[0] : undefined
  const bores = wide.map(step)
  const called = nameBores(bores)
  const depth = through ? undefined : down(upward ? mainLow : mainHigh)
  const point = through ? undefined : pointOf(after, group)
  return {
    mouth: add(line.point, scale(direction, level)),
    outward,
    line,
    faces: [...walls.flatMap((w) => w.faces), ...group.flatMap((c) => c.floors)],
    diameter: 2 * least,
    walls: main.flatMap((w) => w.faces),
    ...(depth === undefined ? {} : { depth }),
    ...(point === undefined ? {} : { point }),
    ...called.named,
    ...(mouthCone
      ? {
          countersink: {
            faces: mouthCone.faces,
            diameter: 2 * Math.max(...mouthCone.radii),
            angle: 2 * mouthCone.halfAngle!,
          },
        }
      : {}),
    others: [...called.others, ...(through ? after.filter((w) => w.kind === 'cylinder').map(step) : [])],
    farCones: through ? after.filter((w) => w.kind === 'cone').map((w) => w.faces) : [],
  }
}

/** The end with the wider mouth; of two alike the one in an outer face, then the one that a drafter looks at first. */
function mouthIsHigh(body: Body, walls: readonly Wall[], mainLow: number, mainHigh: number, direction: Vec3): boolean {
  const score = (side: readonly Wall[]) => side.reduce((n, w) => n + (w.kind === 'cylinder' ? 10 : 1), 0)
  const above = score(walls.filter((w) => w.from > mainHigh - SAME))
  const below = score(walls.filter((w) => w.to < mainLow + SAME))
  if (above !== below) return above > below
  const k = axisAlong(direction)
  if (k !== undefined) {
    const low = Math.abs(Math.min(...walls.map((w) => w.from)) - body.box.min[k]) < SAME
    const high = Math.abs(Math.max(...walls.map((w) => w.to)) - body.box.max[k]) < SAME
    if (low !== high) return high
  }
  return dot(direction, FIRST) > 0
}

/** The bore next to the drilled diameter is the counterbore, a shallow one alone a spotface, a second one outside it too. */
function nameBores(bores: readonly HoleStep[]) {
  const inner = bores.at(-1)
  if (!inner) return { named: {}, others: [] }
  if (bores.length === 1)
    return inner.depth < SPOTFACE * inner.diameter
      ? { named: { spotface: inner }, others: [] }
      : { named: { counterbore: inner }, others: [] }
  const outer = bores[0]!
  if (bores.length === 2 && outer.depth < SPOTFACE * outer.diameter)
    return { named: { counterbore: inner, spotface: outer }, others: [] }
  return { named: { counterbore: inner }, others: bores.slice(0, -1) }
}

function pointOf(after: readonly Wall[], group: readonly Chain[]): number | undefined {
  const cone = after.find((w) => w.kind === 'cone' && Math.min(...w.radii) < SAME)
  if (cone) return 2 * cone.halfAngle!
  return after.length === 0 && group.some((c) => c.floors.length > 0) ? 180 : undefined
}
