import { conflict, type Rules } from './conflicts.ts'
import { type Alternative, type Bounds, boundsOf, type Drawn, type Member, type Option, type Unit } from './form.ts'
import type { Ground } from './ground.ts'
import { mulberry } from './mulberry.ts'
import { near, type Shape } from './shapes.ts'
import { WEIGHTS } from './weights.ts'

/** A member of a unit as decided. */
export interface Settled {
  readonly member: Member
  readonly alternative: Alternative
  readonly shapes: readonly Shape[]
}

/** A unit in its place. */
export interface Stand {
  readonly unit: Unit
  readonly option: Option
  readonly settled: readonly Settled[]
  readonly shapes: readonly Shape[]
  readonly box: Bounds
  /** Cost by itself and on the ground. */
  readonly own: number
  /** Cost against each of the others standing when it was set; those since moved no longer count. */
  readonly against: ReadonlyMap<Stand, number>
}

export interface Effort {
  /** Rounds of removing some sizes and setting them anew. */
  readonly rounds: number
  readonly seed: number
}

/** How often all sizes are set anew one by one at the end, as long as that pays. */
const POLISHES = 2

/** A crossed dimension line or a size left off is worth so many times as many rounds. */
const GRAVE_ROUNDS = 3

/**
 * Places units one after another, each at its cheapest place given the others, then improves: takes a costly size and
 * its neighbours off and sets them again in another order, keeping what is cheaper. Deterministic for a given seed.
 */
export class Search {
  readonly #ground: Ground
  readonly #rules: Rules
  readonly #stands = new Map<Unit, Stand>()
  /** Now and then places are passed over at random, to find out what that would make possible. */
  #skips: () => boolean = () => false
  #biased = false
  /** Place that a unit takes whatever it costs. */
  #forced: Stand | undefined
  readonly #ideals = new Map<Unit, Stand>()

  constructor(ground: Ground, rules: Rules) {
    this.#ground = ground
    this.#rules = rules
  }

  get stands(): readonly Stand[] {
    return [...this.#stands.values()]
  }

  run(units: readonly Unit[], effort: Effort): void {
    const ordered = [...units].sort(byRank)
    for (const unit of ordered) this.#set(unit)
    this.#biased = true
    const random = mulberry(effort.seed)
    let quiet = 0
    for (let round = 0; round < effort.rounds * GRAVE_ROUNDS; round++) {
      const worst = this.#worst(ordered, random)
      if (!worst) break
      if (this.#again(worst, ordered, random)) quiet = 0
      else quiet++
      // Taste is given up soon, a crossed dimension line or a size left off later.
      const patience = ordered.length + 12
      if ((round >= effort.rounds || quiet > patience) && !ordered.some((u) => this.#grave(u))) break
    }
    if (effort.rounds > 0) this.#polish(ordered)
  }

  /** Sets each size once more where it stands cheapest, now that all others are known. */
  #polish(units: readonly Unit[]): void {
    for (let pass = 0; pass < POLISHES; pass++) {
      const was = this.#total()
      for (const unit of units) {
        const stand = this.#stands.get(unit)
        const before = this.#total()
        this.#stands.delete(unit)
        this.#set(unit)
        if (!stand || this.#total() < before - 1e-6) continue
        this.#stands.delete(unit)
        this.#stands.set(unit, stand)
      }
      if (this.#total() > was - 1e-6) return
    }
  }

  /** Chooses a unit whose place costs more than its best place alone would, at random by that excess. */
  #worst(units: readonly Unit[], random: () => number): Unit | undefined {
    let total = 0
    const excess = units.map((unit) => {
      const e = this.#excess(unit)
      total += e
      return e
    })
    if (total === 0) return undefined
    let pick = random() * total
    for (let i = 0; i < units.length; i++) {
      pick -= excess[i]!
      if (pick <= 0 && excess[i]! > 0) return units[i]
    }
    return undefined
  }

  #grave(unit: Unit): boolean {
    const stand = this.#stands.get(unit)
    // A chain without room in one line is set size by size later.
    if (!stand) return unit.dimensions.length === 1
    for (const [other, c] of stand.against) {
      if (c >= WEIGHTS.extensionOverDimension && this.#stands.get(other.unit) === other) return true
    }
    return false
  }

  #excess(unit: Unit): number {
    const stand = this.#stands.get(unit)
    if (!stand) return leftOff(unit) / 10
    let e = stand.own - (unit.options[0]?.own ?? 0)
    for (const [other, c] of stand.against) if (this.#stands.get(other.unit) === other) e += c
    // Less than this is taste that no rearrangement repays.
    return e < 0.9 ? 0 : e
  }

  /** Takes `unit` and some of those it conflicts with or stands beside off, sets them anew; true when that was cheaper. */
  #again(unit: Unit, units: readonly Unit[], random: () => number): boolean {
    const off = new Set<Unit>([unit])
    const stand = this.#stands.get(unit)
    if (stand) {
      for (const other of this.#stands.values()) {
        if (!stand.against.has(other) && !other.against.has(stand)) continue
        if (off.size < 7 && random() < 0.8) off.add(other.unit)
      }
    }
    // Often everything that stands in the way of its best place is moved; now and then a whole side is stacked anew.
    // One that found no place takes any of its places by force, and what stood there looks for another.
    const cleared =
      !stand && random() < 0.7 ? this.#anyPlace(unit, random) : random() < 0.2 ? this.#ideal(unit) : undefined
    if (cleared) {
      for (const other of this.#stands.values()) {
        if (off.size >= 12 || off.has(other.unit) || !near(cleared.box, other.box, 10.2)) continue
        if (conflict(cleared.shapes, other.shapes, this.#rules) > 0.5) off.add(other.unit)
      }
    } else if (random() < 0.4) {
      const side = random() < 0.5 ? stand?.option.side : unit.options[0]?.side
      for (const other of this.#stands.values()) {
        if (
          other.unit.owner === unit.owner &&
          other.option.side === side &&
          other.unit.rank[0] === 1 &&
          off.size < 12
        ) {
          off.add(other.unit)
        }
      }
    }
    const same = units.filter((u) => u.owner === unit.owner && !off.has(u))
    const wanted = cleared ? 0 : 1 + Math.floor(random() * (stand ? 3 : 5))
    for (let i = 0; i < wanted && same.length > 0; i++) {
      const k = Math.floor(random() * same.length)
      off.add(same[k]!)
      same.splice(k, 1)
    }
    const before = [...off].map((u) => this.#stands.get(u))
    const was = this.#total()
    for (const u of off) this.#stands.delete(u)
    const order = [...off]
    // Mostly by rank (short before long), sometimes with the troubled one first, sometimes shuffled.
    const mood = cleared ? 0.6 : random()
    if (cleared && !stand) this.#forced = cleared
    if (mood < 0.5) order.sort(byRank)
    else if (mood < 0.75) order.sort((a, b) => (a === unit ? -1 : b === unit ? 1 : byRank(a, b)))
    else for (let i = order.length - 1; i > 0; i--) swap(order, i, Math.floor(random() * (i + 1)))
    const share = cleared || random() < 0.5 ? 0 : 0.35
    this.#skips = share === 0 ? () => false : () => random() < share
    for (const u of order) this.#set(u)
    this.#forced = undefined
    this.#skips = () => false
    const now = this.#total()
    if (now < was - 1e-6) return true
    for (const u of off) this.#stands.delete(u)
    // Restored in the order they stood, so that what each is charged against is there.
    for (const s of before) if (s) this.#stands.set(s.unit, s)
    return false
  }

  /** The unit's place if it stood alone. */
  #ideal(unit: Unit): Stand | undefined {
    let ideal = this.#ideals.get(unit)
    if (!ideal) {
      let bound = leftOff(unit)
      for (const option of unit.options) {
        if (option.own >= bound) break
        const tried = this.#try(unit, option, [], option.bias ?? 0, bound)
        if (tried) {
          ideal = tried.stand
          bound = tried.cost
        }
      }
      if (ideal) this.#ideals.set(unit, ideal)
    }
    return ideal
  }

  /** A place that the unit could have if nothing else stood there, at random but rather a cheap one. */
  #anyPlace(unit: Unit, random: () => number): Stand | undefined {
    this.#skips = () => random() < 0.5
    let found: Stand | undefined
    for (const option of unit.options) {
      if (this.#skips()) continue
      found = this.#try(unit, option, [], option.bias ?? 0, leftOff(unit))?.stand
      if (found) break
    }
    this.#skips = () => false
    return found
  }

  /** Total cost, less a constant: that of every size left off. */
  #total(): number {
    let sum = 0
    for (const stand of this.#stands.values()) {
      sum += stand.own - leftOff(stand.unit)
      for (const [other, cost] of stand.against) if (this.#stands.get(other.unit) === other) sum += cost
    }
    return sum
  }

  /** Sets the unit at its cheapest place; leaves it off when there is none. */
  #set(unit: Unit): void {
    const others = [...this.#stands.values()]
    if (
      this.#forced?.unit === unit &&
      !others.some((o) => conflict(this.#forced!.shapes, o.shapes, this.#rules) === Infinity)
    ) {
      this.#stands.set(unit, this.#charged(this.#forced, others))
      return
    }
    const groupCost = new Map<string | undefined, number>()
    let best: Stand | undefined
    let bound = leftOff(unit)
    for (const option of unit.options) {
      if (option.own >= bound) break
      if (this.#skips()) continue
      let base = option.own + (this.#biased ? (option.bias ?? 0) : 0)
      if (unit.group !== undefined && option.side !== undefined) {
        let apart = groupCost.get(option.side)
        if (apart === undefined) {
          apart = others.reduce((n, o) => n + (this.#apart(unit, option, o) ? WEIGHTS.groupApart : 0), 0)
          groupCost.set(option.side, apart)
        }
        base += apart
      }
      if (base >= bound) continue
      const stand = this.#try(unit, option, others, base - option.own, bound)
      if (!stand) continue
      best = stand.stand
      bound = stand.cost
    }
    if (best) this.#stands.set(unit, this.#charged(best, others))
  }

  #apart(unit: Unit, option: Option, other: Stand): boolean {
    return (
      other.unit.group === unit.group &&
      other.unit.owner === unit.owner &&
      other.option.side !== undefined &&
      sameDirection(other.option.side, option.side!) &&
      other.option.side !== option.side
    )
  }

  #try(
    unit: Unit,
    option: Option,
    others: readonly Stand[],
    extra: number,
    bound: number,
  ): { stand: Stand; cost: number } | undefined {
    let own = option.own + (option.bias ?? 0)
    let cost = option.own + extra
    const members = option.members()
    for (const { fixed } of members) {
      const onGround = this.#onGround(fixed, unit)
      own += onGround
      cost += onGround
      if (cost >= bound) return undefined
      cost += this.#pairs(fixed, others, bound - cost)
      if (cost >= bound) return undefined
    }
    const settled = this.#finish(unit, option, members, others, bound - cost)
    if (!settled) return undefined
    for (const s of settled.list) own += s.alternative.own + this.#onGround(s.alternative, unit)
    cost += settled.cost
    const shapes = settled.list.flatMap((s) => s.shapes)
    return { stand: { unit, option, settled: settled.list, shapes, box: boundsOf(shapes), own, against: NONE }, cost }
  }

  /**
   * Chooses a way to finish each member, one after the other, the cheapest that goes with those before; where a later
   * one then finds none, an earlier one takes its next.
   */
  #finish(
    unit: Unit,
    option: Option,
    members: readonly Member[],
    others: readonly Stand[],
    bound: number,
  ): { list: readonly Settled[]; cost: number } | undefined {
    if (members.length === 0) return undefined
    // What each member's ways cost apart from the other members; found once, as far as needed.
    const costs: number[][] = members.map(() => [])
    const costOf = (i: number, k: number): number => {
      let c = costs[i]![k]
      if (c === undefined) {
        const way = members[i]!.alternatives[k]!
        c = way.own + this.#onGround(way, unit)
        if (c < bound) c += this.#pairs(way, others, bound - c)
        costs[i]![k] = c
      }
      return c
    }
    const ways = (i: number, least: number, before: readonly Settled[]): [cost: number, settled: Settled][] => {
      const member = members[i]!
      const found: [number, Settled][] = []
      const single = members.length === 1
      for (let k = 0; k < member.alternatives.length; k++) {
        const alternative = member.alternatives[k]!
        if (alternative.own >= least) break
        if (this.#skips()) continue
        let c = costOf(i, k)
        if (c >= least) continue
        const shapes = this.#shapes(member, alternative)
        if (!option.settled) {
          for (const s of before) {
            c += this.#between(alternative, shapes, s)
            if (c >= least) break
          }
          if (c >= least) continue
        }
        found.push([c, { member, alternative, shapes }])
        if (single) least = c
      }
      return found.sort((a, b) => a[0] - b[0])
    }
    let trials = 40
    const settle = (
      i: number,
      spent: number,
      before: readonly Settled[],
    ): { list: readonly Settled[]; cost: number } | undefined => {
      if (i === members.length) return { list: before, cost: spent }
      for (const [c, settled] of ways(i, bound - spent, before)) {
        const done = settle(i + 1, spent + c, [...before, settled])
        if (done || --trials < 0) return done
      }
      return undefined
    }
    return settle(0, 0, [])
  }

  /** Conflict of two members of one unit; found once, for chains try the same pairs over and over. */
  #between(alternative: Alternative, shapes: readonly Shape[], other: Settled): number {
    alternative.memo.against ??= new Map()
    const known = alternative.memo.against.get(other.alternative)
    if (known !== undefined) return known
    const c = conflict(shapes, other.shapes, this.#rules)
    alternative.memo.against.set(other.alternative, c)
    return c
  }

  #shapes(member: Member, alternative: Alternative): readonly Shape[] {
    const { memo, shapes } = alternative
    memo.whole ??= member.fixed.shapes.length > 0 ? [...member.fixed.shapes, ...shapes] : shapes
    return memo.whole
  }

  #onGround(piece: Drawn, unit: Unit): number {
    const { memo } = piece
    if (memo.ground < 0) memo.ground = this.#ground.cost(piece.shapes, unit.owner, unit.rank[0] === 4)
    return memo.ground
  }

  #pairs(piece: Drawn, others: readonly Stand[], bound: number): number {
    const { shapes, memo } = piece
    if (shapes.length === 0) return 0
    let sum = 0
    for (const other of others) {
      if (!near(memo.box, other.box, 10.2)) continue
      sum += conflict(shapes, other.shapes, this.#rules)
      if (sum >= bound) return sum
    }
    return sum
  }

  /** The stand with its cost against each of the others. */
  #charged(stand: Stand, others: readonly Stand[]): Stand {
    const against = new Map<Stand, number>()
    for (const other of others) {
      let c = near(stand.box, other.box, 10.2) ? conflict(stand.shapes, other.shapes, this.#rules) : 0
      if (
        stand.option.side !== undefined &&
        stand.unit.group !== undefined &&
        this.#apart(stand.unit, stand.option, other)
      ) {
        c += WEIGHTS.groupApart
      }
      if (c > 0) against.set(other, c)
    }
    return { ...stand, against }
  }
}

function leftOff(unit: Unit): number {
  return WEIGHTS.unplaced * Math.max(1, unit.dimensions.length)
}

const NONE: ReadonlyMap<Stand, number> = new Map()

function sameDirection(a: string, b: string): boolean {
  const upright = (s: string) => s === 'above' || s === 'below'
  return upright(a) === upright(b)
}

/** Running sets, then linear sizes short before long, angles, leaders wide before narrow, tags. */
function byRank(a: Unit, b: Unit): number {
  return a.rank[0] - b.rank[0] || a.rank[1] - b.rank[1] || a.owner - b.owner || (a.id < b.id ? -1 : 1)
}

function swap<T>(list: T[], i: number, k: number): void {
  const t = list[i]!
  list[i] = list[k]!
  list[k] = t
}
