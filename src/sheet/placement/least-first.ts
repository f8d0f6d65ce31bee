/** How many costs, about, are put in order at a time. */
const AT_A_TIME = 40
/** So many are put in order one by one. */
const ONE_BY_ONE = 48

/**
 * The places of `costs` (finite) in the order of the costs, least first; equal ones stay in order. A pattern of holes has
 * a hundred thousand options of which the cheapest few thousand are looked at: the costs are parted into ranges, and a
 * range is put in order only when it is reached.
 */
export class LeastFirst {
  readonly #costs: Float64Array
  /** Places by range, in order only up to `#ordered`. */
  readonly #places: Int32Array
  /** Where each range begins among the places. */
  readonly #starts: Int32Array
  #ordered = 0
  #range = 0

  constructor(costs: Float64Array) {
    const n = costs.length
    let [least, most] = [Infinity, -Infinity]
    for (let i = 0; i < n; i++) {
      const c = costs[i]!
      if (c < least) least = c
      if (c > most) most = c
    }
    const many = Math.ceil(n / AT_A_TIME) / (most - least)
    // All but equal costs are one range.
    const [ranges, scale] = most > least && many < Infinity ? [Math.ceil(n / AT_A_TIME), many] : [1, 0]
    const rangeOf = (c: number) => Math.min(ranges - 1, Math.floor((c - least) * scale))
    const starts = new Int32Array(ranges + 1)
    for (let i = 0; i < n; i++) starts[rangeOf(costs[i]!) + 1]!++
    for (let r = 0; r < ranges; r++) starts[r + 1]! += starts[r]!
    const next = starts.slice()
    const places = new Int32Array(n)
    for (let i = 0; i < n; i++) places[next[rangeOf(costs[i]!)]!++] = i
    this.#costs = costs
    this.#places = places
    this.#starts = starts
  }

  /** The place of the `rank`th least cost; undefined past the last. */
  at(rank: number): number | undefined {
    while (rank >= this.#ordered && this.#range < this.#starts.length - 1) this.#orderNext()
    return this.#places[rank]
  }

  /** Few different costs among many: they are sorted, and the places told apart by them. */
  #orderNext(): void {
    const [from, to] = [this.#starts[this.#range]!, this.#starts[this.#range + 1]!]
    this.#range++
    this.#ordered = to
    if (to - from < 2) return
    const costs = this.#costs
    if (to - from <= ONE_BY_ONE) {
      const places = this.#places
      for (let i = from + 1; i < to; i++) {
        const place = places[i]!
        const cost = costs[place]!
        let k = i - 1
        for (; k >= from && costs[places[k]!]! > cost; k--) places[k + 1] = places[k]!
        places[k + 1] = place
      }
      return
    }
    const old = this.#places.slice(from, to)
    const sorted = new Float64Array(old.length)
    for (let i = 0; i < old.length; i++) sorted[i] = costs[old[i]!]!
    sorted.sort()
    let different = 0
    for (let i = 0; i < sorted.length; i++) {
      if (i === 0 || sorted[i] !== sorted[different - 1]) sorted[different++] = sorted[i]!
    }
    const rankOf = (c: number): number => {
      let lo = 0
      let hi = different - 1
      while (lo < hi) {
        const middle = (lo + hi) >> 1
        if (sorted[middle]! < c) lo = middle + 1
        else hi = middle
      }
      return lo
    }
    const ranks = new Int32Array(old.length)
    const next = new Int32Array(different + 1)
    for (let i = 0; i < old.length; i++) {
      ranks[i] = rankOf(costs[old[i]!]!)
      next[ranks[i]! + 1]!++
    }
    for (let r = 0; r < different; r++) next[r + 1]! += next[r]!
    for (let i = 0; i < old.length; i++) this.#places[from + next[ranks[i]!]!++] = old[i]!
  }
}
