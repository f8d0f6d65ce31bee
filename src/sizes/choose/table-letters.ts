/** First letters of the tags of hole tables: the brief's own labels, and free letters for what has none. */
export class TableLetters {
  readonly #labels: ReadonlySet<string>
  readonly #given = new Map<string, string>()
  #next = 0

  /** `labels`: all of the brief, whether or not they stand in a table. */
  constructor(labels: readonly string[]) {
    this.#labels = new Set(labels.filter(isTag).map((label) => label.toUpperCase()))
  }

  /** The stem of a feature's tags: its label where that can be one, else the letter of everything with the same key. */
  of(label: string | undefined, key: string): string {
    // A number follows: after a figure it needs a point between.
    if (label && isTag(label)) return /\d$/.test(label) ? `${label}.` : label
    const known = this.#given.get(key)
    if (known) return known
    let letter = letterOf(this.#next++)
    while (this.#labels.has(letter)) letter = letterOf(this.#next++)
    this.#given.set(key, letter)
    return letter
  }
}

const isTag = (label: string): boolean => /^[A-Za-z]{1,2}\d{0,2}$/.test(label)

/** A, B … Z without I, O and Q, which read as figures (common practice), then AA … */
function letterOf(n: number): string {
  const letters = 'ABCDEFGHJKLMNPRSTUVWXYZ'
  const own = letters[n % letters.length]!
  return n < letters.length ? own : letterOf(Math.floor(n / letters.length) - 1) + own
}
