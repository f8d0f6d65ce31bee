import type { Vec2 } from '../../geometry/vec.ts'
import type { Option, Options } from './form.ts'
import { LeastFirst } from './least-first.ts'
import type { PaperSide } from './sides.ts'
import { WEIGHTS } from './weights.ts'

/** One way from a tip, with the lengths to the elbow and the forms that a leader there may take. */
export interface Ray {
  readonly tip: Vec2
  /** From tip to elbow. */
  readonly way: Vec2
  readonly side: PaperSide
  readonly lengths: readonly number[]
  readonly forms: readonly Form[]
}

interface Form {
  /** Cost beside the length's. */
  readonly odd: number
  /** Other end of a diameter's line through the centre, with its own head. */
  readonly far?: Vec2
}

/** Where a leader stands. */
export interface Leader {
  readonly own: number
  readonly tip: Vec2
  readonly way: Vec2
  readonly side: PaperSide
  readonly length: number
  readonly far: Vec2 | undefined
}

function leaderAt(ray: Ray, length: number, { odd, far }: Form): Leader {
  const { tip, way, side } = ray
  return { own: costOf(length, odd, far), tip, way, side, length, far }
}

const costOf = (length: number, odd: number, far: Vec2 | undefined) =>
  WEIGHTS.leaderLength * length + WEIGHTS.longLeader * Math.max(0, length - LONG) + odd + (far ? 0.3 : 0)

/** Leaders are kept short (ASME Y14.5-2018 §4.4.6, ISO 128-2, from memory); the figure is ours, mm. */
const LONG = 30

/** All the leaders, by ray, length and form. */
export function leadersOf(rays: readonly Ray[]): Leader[] {
  return rays.flatMap((ray) => ray.lengths.flatMap((length) => ray.forms.map((form) => leaderAt(ray, length, form))))
}

/**
 * What the leader on a ray costs on the ground at the least, without making it; looked into no further than to find that
 * it is more than `most`; where that is undefined, only whether it can stand at all.
 */
export type GroundCost = (ray: Ray, length: number, most: number | undefined) => number

/** The first few places are made and weighed at once: most often one of them serves. */
const FEW = 200

/** The leaders as options, least first; each is made when it is asked for, once. */
export class LeaderPlaces implements Options {
  readonly #rays: readonly Ray[]
  /** The ray of each leader, and which of its leaders. */
  readonly #ray: Int32Array
  readonly #number: Uint8Array
  readonly #order: LeastFirst
  readonly #costs: Float64Array
  readonly #made: Option[] = []
  readonly #make: (leader: Leader) => Option
  readonly #ground: GroundCost

  constructor(rays: readonly Ray[], make: (leader: Leader) => Option, ground: GroundCost) {
    let count = 0
    for (const { lengths, forms } of rays) count += lengths.length * forms.length
    const costs = new Float64Array(count)
    const ray = new Int32Array(count)
    const number = new Uint8Array(count)
    let i = 0
    for (let r = 0; r < rays.length; r++) {
      const { lengths, forms } = rays[r]!
      let n = 0
      for (const length of lengths) {
        for (const { odd, far } of forms) {
          costs[i] = costOf(length, odd, far)
          ray[i] = r
          number[i++] = n++
        }
      }
    }
    this.#costs = costs
    this.#ground = ground
    this.#rays = rays
    this.#ray = ray
    this.#number = number
    this.#order = new LeastFirst(costs)
    this.#make = make
  }

  own(rank: number): number {
    const place = this.#order.at(rank)
    return place === undefined ? Infinity : this.#costs[place]!
  }

  least(rank: number, most: number): number {
    const place = this.#order.at(rank)!
    const ray = this.#rays[this.#ray[place]!]!
    const length = ray.lengths[Math.floor(this.#number[place]! / ray.forms.length)]!
    const own = this.#costs[place]!
    return own + this.#ground(ray, length, rank < FEW ? undefined : most - own)
  }

  at(rank: number): Option | undefined {
    const known = this.#made[rank]
    if (known) return known
    const place = this.#order.at(rank)
    if (place === undefined) return undefined
    const ray = this.#rays[this.#ray[place]!]!
    const number = this.#number[place]!
    const { lengths, forms } = ray
    const leader = leaderAt(ray, lengths[Math.floor(number / forms.length)]!, forms[number % forms.length]!)
    const option = this.#make(leader)
    this.#made[rank] = option
    return option
  }
}
