import type { Option, Options } from './form.ts'

/** Costs that differ by less are not told apart when a search is cut short: they are sums, rounded on the way. */
export const ROUNDING = 1e-6

/**
 * The options of a unit with what has been found out about each: what it costs on the ground at the least, whatever else
 * stands. A pattern of holes has tens of thousands, looked through time and again.
 */
export class Candidates {
  /** Of the unit, on its board. */
  readonly number: number
  readonly #options: Options
  readonly #floors: number[] = []
  /** Costs of the first options by themselves, ascending, as far as they were asked for in turn. */
  readonly #own: number[] = []

  constructor(options: Options, number: number) {
    this.#options = options
    this.number = number
  }

  /** Cost of the option by itself; `Infinity` past the last. */
  own(index: number): number {
    return this.#options.own ? this.#options.own(index) : (this.#options.at(index)?.own ?? Infinity)
  }

  /** The first option from `index` on that may cost less than `bound`; undefined where there is none. */
  next(index: number, bound: number): number | undefined {
    const [owns, floors] = [this.#own, this.#floors]
    for (let i = index; ; i++) {
      let own = owns[i]
      if (own === undefined) {
        own = this.own(i)
        if (i === owns.length) owns.push(own)
      }
      if (own >= bound) return undefined
      if ((floors[i] ?? this.floor(i, bound)) < bound) return i
    }
  }

  /**
   * The option costs no less, on top of what its neighbours make it cost; `Infinity` where it cannot stand. Looked into no
   * further than to find that it is more than `most`.
   */
  floor(index: number, most: number): number {
    let floor = this.#floors[index]
    if (floor === undefined) {
      floor = this.#options.least?.(index, most) ?? this.own(index)
      this.#floors[index] = floor
    }
    return floor
  }

  at(index: number): Option {
    return this.#options.at(index)!
  }

  /** Keeps what an option that was tried is now known to cost on the ground. */
  learn(index: number): void {
    const option = this.at(index)
    const members = option.members()
    let floor = members.length > 0 ? option.own - ROUNDING : Infinity
    for (const { fixed, alternatives } of members) {
      floor += groundOf(fixed.memo)
      const [first, second] = alternatives
      floor += first ? first.own + (second ? 0 : groundOf(first.memo)) : Infinity
    }
    this.#floors[index] = floor
  }
}

const groundOf = ({ ground, least }: { readonly ground: number; readonly least?: number }): number =>
  ground >= 0 ? ground : (least ?? 0)
