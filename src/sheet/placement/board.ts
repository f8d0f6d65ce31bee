import { Candidates, ROUNDING } from './candidates.ts'
import { conflict, conflictInChain, type Rules } from './conflicts.ts'
import {
  type Alternative,
  Beside,
  type Bounds,
  boundsOf,
  type Drawn,
  type Member,
  type Option,
  type Unit,
} from './form.ts'
import type { Ground } from './ground.ts'
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
  /** The same whenever the unit stands at the same place again. */
  readonly place: object
  /** Its unit's number on the board. */
  readonly number: number
  readonly box: Bounds
  /** Cost by itself and on the ground. */
  readonly own: number
  /** Cost against each of the others standing when it was set; those since moved no longer count. */
  readonly against: ReadonlyMap<Stand, number>
}

/** Those that stand already, also by their numbers. */
export interface Others {
  readonly all: readonly Stand[]
  readonly at: (Stand | undefined)[]
}

/** What stands where, and how one more unit is set at its cheapest place given the rest. */
export class Board {
  readonly rules: Rules
  readonly stands = new Map<Unit, Stand>()
  /**
   * Now and then places are passed over at random, to find out what that would make possible: by the number of the option
   * and of the way to finish it, so that how far others were looked into changes nothing.
   */
  skips: (option: number, way: number) => boolean = NEVER
  /** No linear size goes to this side. */
  shunned: string | undefined
  /** Costs that depend on neighbouring views count. */
  biased = false
  /** Place that a unit takes whatever it costs. */
  forced: Stand | undefined
  readonly #ground: Ground
  readonly #candidates = new Map<Unit, Candidates>()

  constructor(ground: Ground, rules: Rules) {
    this.#ground = ground
    this.rules = rules
  }

  candidates(unit: Unit): Candidates {
    let known = this.#candidates.get(unit)
    if (!known) {
      known = new Candidates(unit.options, this.#candidates.size)
      this.#candidates.set(unit, known)
    }
    return known
  }

  /** Sets the unit at its cheapest place; leaves it off when there is none. */
  set(unit: Unit): void {
    const all = [...this.stands.values()]
    const others: Others = { all, at: [] }
    for (const stand of all) others.at[stand.number] = stand
    if (
      this.forced?.unit === unit &&
      !all.some((o) => conflict(this.forced!.shapes, o.shapes, this.rules) === Infinity)
    ) {
      this.stands.set(unit, this.charged(this.forced, all))
      return
    }
    const groupCost = new Map<string | undefined, number>()
    let best: Stand | undefined
    let bound = leftOff(unit)
    const candidates = this.candidates(unit)
    for (let i = candidates.next(0, bound); i !== undefined; i = candidates.next(i + 1, bound)) {
      if (this.skips(i, 0)) continue
      const option = candidates.at(i)
      if (option.side === this.shunned && option.side !== undefined && unit.rank[0] === 1) continue
      let base = option.own + (this.biased ? (option.bias ?? 0) : 0)
      if (unit.group !== undefined && option.side !== undefined) {
        let apart = groupCost.get(option.side)
        if (apart === undefined) {
          apart = all.reduce((n, o) => n + (this.#apart(unit, option, o) ? WEIGHTS.groupApart : 0), 0)
          groupCost.set(option.side, apart)
        }
        base += apart
      }
      if (base >= bound) continue
      const stand = this.try(unit, i, others, base - option.own, bound)
      candidates.learn(i)
      if (!stand) continue
      best = stand.stand
      bound = stand.cost
    }
    if (best) this.stands.set(unit, this.charged(best, all))
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

  try(
    unit: Unit,
    index: number,
    others: Others,
    extra: number,
    bound: number,
  ): { stand: Stand; cost: number } | undefined {
    const option = this.candidates(unit).at(index)
    let own = option.own + (option.bias ?? 0)
    let cost = option.own + extra
    const members = option.members()
    if (members.length === 0) return undefined
    for (const { fixed } of members) {
      const onGround = this.#onGround(fixed, unit, bound - cost)
      own += onGround
      cost += onGround
      if (cost >= bound) return undefined
      cost += this.#pairs(fixed, others, bound - cost)
      if (cost >= bound) return undefined
    }
    const settled =
      members.length === 1
        ? this.#finishOne(unit, index, members[0]!, others, bound - cost)
        : this.#finish(unit, index, members, others, bound - cost)
    if (!settled) return undefined
    for (const s of settled.list) own += s.alternative.own + this.#onGround(s.alternative, unit, Infinity)
    cost += settled.cost
    const { list } = settled
    const shapes = list.flatMap((s) => s.shapes)
    const place = list.length === 1 ? list[0]!.alternative.memo : shapes
    const { number } = this.candidates(unit)
    const stand = { unit, option, settled: list, shapes, place, number, box: boundsOf(shapes), own, against: NONE }
    return { stand, cost }
  }

  /** Chooses the cheapest way to finish the only member. */
  #finishOne(
    unit: Unit,
    index: number,
    member: Member,
    others: Others,
    bound: number,
  ): { list: readonly Settled[]; cost: number } | undefined {
    let best: Alternative | undefined
    let least = bound
    const { alternatives } = member
    for (let k = 0; k < alternatives.length; k++) {
      const way = alternatives[k]!
      if (way.own >= least) break
      if (this.skips(index, 1 + k)) continue
      let c = way.own + this.#onGround(way, unit, least - way.own)
      if (c < least) c += this.#pairs(way, others, least - c + ROUNDING)
      if (c >= least) continue
      best = way
      least = c
    }
    return best && { list: [{ member, alternative: best, shapes: this.#shapes(member, best) }], cost: least }
  }

  /**
   * Chooses a way to finish each member, one after the other, the cheapest that goes with those before; where a later
   * one then finds none, an earlier one takes its next.
   */
  #finish(
    unit: Unit,
    index: number,
    members: readonly Member[],
    others: Others,
    bound: number,
  ): { list: readonly Settled[]; cost: number } | undefined {
    const { settled: asSet } = this.candidates(unit).at(index)
    // What each member's ways cost apart from the other members; found once, as far as needed.
    const costs: number[][] = members.map(() => [])
    const costOf = (i: number, k: number): number => {
      let c = costs[i]![k]
      if (c === undefined) {
        const way = members[i]!.alternatives[k]!
        c = way.own + this.#onGround(way, unit, bound - way.own)
        if (c < bound) c += this.#pairs(way, others, bound - c)
        costs[i]![k] = c
      }
      return c
    }
    const ways = (i: number, least: number, before: readonly Settled[]): [cost: number, settled: Settled][] => {
      const member = members[i]!
      const found: [number, Settled][] = []
      for (let k = 0; k < member.alternatives.length; k++) {
        const alternative = member.alternatives[k]!
        if (alternative.own >= least) break
        if (this.skips(index, 1 + k)) continue
        let c = costOf(i, k)
        if (c >= least) continue
        const shapes = this.#shapes(member, alternative)
        if (!asSet) {
          for (const s of before) {
            c += this.#between(alternative, shapes, s)
            if (c >= least) break
          }
          if (c >= least) continue
        }
        found.push([c, { member, alternative, shapes }])
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
    const c = conflictInChain(shapes, other.shapes, this.rules)
    alternative.memo.against.set(other.alternative, c)
    return c
  }

  #shapes(member: Member, alternative: Alternative): readonly Shape[] {
    const { memo, shapes } = alternative
    memo.whole ??= member.fixed.shapes.length > 0 ? [...member.fixed.shapes, ...shapes] : shapes
    return memo.whole
  }

  /** What the piece costs on the ground; where that is more than `most`, no more than it. */
  #onGround(piece: Drawn, unit: Unit, most: number): number {
    const { memo } = piece
    if (memo.ground >= 0) return memo.ground
    const enough = most + ROUNDING
    if (memo.least !== undefined && memo.least > enough) return memo.least
    const cost = this.#ground.cost(piece.shapes, unit.owner, unit.rank[0] === 4, enough)
    if (cost > enough && cost < Infinity) memo.least = cost
    else memo.ground = cost
    return cost
  }

  #pairs(piece: Drawn, others: Others, bound: number): number {
    const { shapes, memo } = piece
    if (shapes.length === 0) return 0
    memo.beside ??= new Beside()
    const { places, costs, worst } = memo.beside
    // What was in the way last time mostly is again.
    if (worst !== undefined && costs[worst]! >= bound && others.at[worst]?.place === places[worst]) return costs[worst]!
    let sum = 0
    for (const other of others.all) {
      const i = other.number
      let c = costs[i]!
      if (places[i] !== other.place) {
        c = near(memo.box, other.box, 10.2) ? conflict(shapes, other.shapes, this.rules) : 0
        places[i] = other.place
        costs[i] = c
      }
      sum += c
      if (sum >= bound) {
        memo.beside.worst = i
        return sum
      }
    }
    return sum
  }

  /** The stand with its cost against each of the others. */
  charged(stand: Stand, others: readonly Stand[]): Stand {
    const against = new Map<Stand, number>()
    for (const other of others) {
      let c = near(stand.box, other.box, 10.2) ? conflict(stand.shapes, other.shapes, this.rules) : 0
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

  /** Total cost, less a constant: that of every size left off. */
  total(): number {
    let sum = 0
    for (const stand of this.stands.values()) {
      sum += stand.own - leftOff(stand.unit)
      for (const [other, cost] of stand.against) if (this.stands.get(other.unit) === other) sum += cost
    }
    return sum
  }
}

export function leftOff(unit: Unit): number {
  return WEIGHTS.unplaced * Math.max(1, unit.dimensions.length)
}

export const NEVER = () => false

/** On a free sheet. */
export const NOBODY: Others = { all: [], at: [] }

const NONE: ReadonlyMap<Stand, number> = new Map()

function sameDirection(a: string, b: string): boolean {
  const upright = (s: string) => s === 'above' || s === 'below'
  return upright(a) === upright(b)
}
