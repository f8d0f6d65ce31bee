import { Board, leftOff, NEVER, NOBODY, type Stand } from './board.ts'
import { conflict, type Rules } from './conflicts.ts'
import type { Unit } from './form.ts'
import type { Ground } from './ground.ts'
import { mulberry } from './mulberry.ts'
import { near } from './shapes.ts'
import type { PaperSide } from './sides.ts'
import { WEIGHTS } from './weights.ts'

export interface Effort {
  /** Rounds of removing some sizes and setting them anew. */
  readonly rounds: number
  readonly seed: number
}

/** How often all sizes are set anew one by one at the end, as long as that pays. */
const POLISHES = 2

const SIDES: readonly PaperSide[] = ['above', 'right', 'below', 'left']

/** A crossed dimension line or a size left off is worth so many times as many rounds again, */
const GRAVE_ROUNDS = 3
/** or more where the sizes are few: a round with many takes as much longer; */
const GRAVE_WORK = 9000
/** so many at a time, from a start that may be dearer by so much. */
const EXCURSION = 30
const SLACK = 30

/**
 * Places units one after another, each at its cheapest place given the others, then improves: takes a costly size and
 * its neighbours off and sets them again in another order, keeping what is cheaper. Deterministic for a given seed.
 */
export class Search {
  readonly #board: Board
  readonly #ideals = new Map<Unit, Stand>()

  constructor(ground: Ground, rules: Rules) {
    this.#board = new Board(ground, rules)
  }

  get stands(): readonly Stand[] {
    return [...this.#board.stands.values()]
  }

  run(units: readonly Unit[], effort: Effort): void {
    const ordered = [...units].sort(byRank)
    for (const unit of ordered) this.#board.set(unit)
    this.#board.biased = true
    const random = mulberry(effort.seed)
    this.#improve(ordered, effort.rounds, random)
    const grave = () => ordered.some((u) => this.#grave(u))
    let rounds = effort.rounds > 0 ? Math.max(effort.rounds * GRAVE_ROUNDS, GRAVE_WORK / ordered.length) : 0
    while (rounds > 0 && grave()) {
      const round = Math.min(rounds, EXCURSION)
      rounds -= round
      this.#excursion(ordered, round, random)
    }
    if (effort.rounds > 0) this.#polish(ordered)
  }

  /** Rounds until no more are due, or nothing got better for so long that taste is given up. */
  #improve(units: readonly Unit[], rounds: number, random: () => number): void {
    let quiet = 0
    for (let round = 0; round < rounds && quiet <= units.length + 12; round++) {
      const worst = this.#worst(units, random)
      if (!worst) return
      if (this.#again(worst, units, random)) quiet = 0
      else quiet++
    }
  }

  /** Where nothing near by is better, something worse is tried as a new start; what comes of it is kept where it is better. */
  #excursion(units: readonly Unit[], rounds: number, random: () => number): void {
    const [was, before] = [this.#board.total(), [...this.#board.stands]]
    const worst = this.#worst(units, random)
    if (worst) {
      const against = [...(this.#board.stands.get(worst)?.against.keys() ?? [])].map((s) => s.unit)
      const either = [worst, ...against]
      this.#again(either[Math.floor(random() * either.length)]!, units, random, SLACK)
    }
    this.#improve(units, rounds - 1, random)
    if (this.#board.total() < was - 1e-6) return
    this.#board.stands.clear()
    for (const [unit, stand] of before) this.#board.stands.set(unit, stand)
  }

  /** Sets each size once more where it stands cheapest, now that all others are known. */
  #polish(units: readonly Unit[]): void {
    for (let pass = 0; pass < POLISHES; pass++) {
      const was = this.#board.total()
      for (const unit of units) {
        const stand = this.#board.stands.get(unit)
        const before = this.#board.total()
        this.#board.stands.delete(unit)
        this.#board.set(unit)
        if (!stand || this.#board.total() < before - 1e-6) continue
        this.#board.stands.delete(unit)
        this.#board.stands.set(unit, stand)
      }
      if (this.#board.total() > was - 1e-6) return
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
    const stand = this.#board.stands.get(unit)
    // A chain without room in one line is set size by size later.
    if (!stand) return unit.dimensions.length === 1
    if (stand.option.onPart) return true
    for (const [other, c] of stand.against) {
      if (c >= WEIGHTS.extensionOverDimension && this.#board.stands.get(other.unit) === other) return true
    }
    return false
  }

  #excess(unit: Unit): number {
    const stand = this.#board.stands.get(unit)
    if (!stand) return leftOff(unit) / 10
    let e = stand.own - (unit.options.at(0)?.own ?? 0)
    for (const [other, c] of stand.against) if (this.#board.stands.get(other.unit) === other) e += c
    // Less than this is taste that no rearrangement repays.
    return e < 0.9 ? 0 : e
  }

  /**
   * Takes `unit` and some of those it conflicts with or stands beside off, sets them anew; true when that was cheaper, or
   * dearer by no more than `slack`.
   */
  #again(unit: Unit, units: readonly Unit[], random: () => number, slack = -1e-6): boolean {
    const off = new Set<Unit>([unit])
    const stand = this.#board.stands.get(unit)
    if (stand) {
      for (const other of this.#board.stands.values()) {
        if (!stand.against.has(other) && !other.against.has(stand)) continue
        if (off.size < 7 && random() < 0.8) off.add(other.unit)
      }
    }
    // Often everything that stands in the way of its best place is moved; now and then a whole side is stacked anew.
    // One that found no place takes any of its places by force, and what stood there looks for another.
    const forced = slack > 0 || (!stand && random() < 0.7)
    const cleared = forced ? this.#anyPlace(unit, random) : random() < 0.35 ? this.#ideal(unit) : undefined
    if (cleared) {
      for (const other of this.#board.stands.values()) {
        if (off.size >= 12 || off.has(other.unit) || !near(cleared.box, other.box, 10.2)) continue
        if (conflict(cleared.shapes, other.shapes, this.#board.rules) > 0.5) off.add(other.unit)
      }
    } else if (random() < 0.4) {
      const own = random() < 0.5 ? stand?.option.side : unit.options.at(0)?.side
      const side = random() < 0.5 ? own : SIDES[Math.floor(random() * SIDES.length)]
      // Half of the time the whole side goes over to the other, and what hangs on leaders follows.
      if (random() < 0.5) this.#board.shunned = side
      for (const other of this.#board.stands.values()) {
        if (
          other.unit.owner === unit.owner &&
          (other.unit.rank[0] === 1 ? other.option.side === side : this.#board.shunned !== undefined) &&
          off.size < 12
        ) {
          off.add(other.unit)
        }
      }
    }
    const same = units.filter((u) => u.owner === unit.owner && !off.has(u))
    // Others make room for what was moved.
    const more = cleared && random() < 0.5 ? 0 : 1
    const wanted = more * (1 + Math.floor(random() * (stand || cleared ? 3 : 5)))
    for (let i = 0; i < wanted && same.length > 0; i++) {
      const k = Math.floor(random() * same.length)
      off.add(same[k]!)
      same.splice(k, 1)
    }
    const before = [...off].map((u) => this.#board.stands.get(u))
    const was = this.#board.total()
    for (const u of off) this.#board.stands.delete(u)
    const order = [...off]
    // Mostly by rank (short before long), sometimes with the troubled one first, sometimes shuffled.
    const mood = cleared ? 0.6 : random()
    if (cleared && (forced || !stand)) this.#board.forced = cleared
    if (mood < 0.5) order.sort(byRank)
    else if (mood < 0.75) order.sort((a, b) => (a === unit ? -1 : b === unit ? 1 : byRank(a, b)))
    else for (let i = order.length - 1; i > 0; i--) swap(order, i, Math.floor(random() * (i + 1)))
    const share = cleared || random() < 0.5 ? 0 : 0.35
    this.#board.skips = share === 0 ? NEVER : passing(share, random)
    for (const u of order) this.#board.set(u)
    this.#board.forced = undefined
    this.#board.shunned = undefined
    this.#board.skips = NEVER
    const now = this.#board.total()
    if (now < was + slack) return true
    for (const u of off) this.#board.stands.delete(u)
    // Restored in the order they stood, so that what each is charged against is there.
    for (const s of before) if (s) this.#board.stands.set(s.unit, s)
    return false
  }

  /** The unit's place if it stood alone. */
  #ideal(unit: Unit): Stand | undefined {
    let ideal = this.#ideals.get(unit)
    if (!ideal) {
      let bound = leftOff(unit)
      const candidates = this.#board.candidates(unit)
      for (let i = 0; ; i++) {
        if (candidates.own(i) >= bound) break
        if (candidates.floor(i, bound) >= bound) continue
        const tried = this.#board.try(unit, i, NOBODY, candidates.at(i).bias ?? 0, bound)
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
    const skips = passing(0.5, random)
    this.#board.skips = skips
    let found: Stand | undefined
    const candidates = this.#board.candidates(unit)
    const most = leftOff(unit)
    for (let i = 0; candidates.own(i) < Infinity; i++) {
      if (skips(i, 0) || candidates.floor(i, most) >= most) continue
      found = this.#board.try(unit, i, NOBODY, candidates.at(i).bias ?? 0, most)?.stand
      if (found) break
    }
    this.#board.skips = NEVER
    return found
  }
}

/** Running sets, then linear sizes short before long, angles, leaders wide before narrow, tags. */
function byRank(a: Unit, b: Unit): number {
  return a.rank[0] - b.rank[0] || a.rank[1] - b.rank[1] || a.owner - b.owner || (a.id < b.id ? -1 : 1)
}

/** Passes over about `share` of the places, always the same ones. */
function passing(share: number, random: () => number): (option: number, way: number) => boolean {
  const salt = Math.floor(random() * 0x100000000)
  return (option, way) => scattered(salt ^ (option * 64 + way)) < share
}

/** An even number in [0, 1) from a whole one (the finishing steps of MurmurHash3, 32 bits). */
function scattered(n: number): number {
  let h = n
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return ((h ^ (h >>> 16)) >>> 0) / 0x100000000
}

function swap<T>(list: T[], i: number, k: number): void {
  const t = list[i]!
  list[i] = list[k]!
  list[k] = t
}
