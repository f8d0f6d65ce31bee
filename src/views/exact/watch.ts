/** What a caller may want of a drawing at work. Nothing of the result depends on it. */
export interface Watch {
  /** Asked after every `ASK_EVERY` steps of work at the latest; true ends the drawing by `Stopped`. */
  readonly stop?: () => boolean
  /** Told as often: edges and faces done, each counted once when projected and once when what hides them is known. */
  readonly progress?: (done: number, total: number) => void
}

/** A drawing was ended before it was done. */
export class Stopped extends Error {
  override readonly name = 'Stopped'

  constructor() {
    super('the drawing was stopped')
  }
}

/** Steps between two askings. A step is an edge, a face, a crossing of two lines, a line of sight or a cell of a spline. */
export const ASK_EVERY = 64

/** Counts the steps of one drawing and asks its watch. */
export class Watcher {
  private readonly watch: Watch
  private readonly total: number
  private done = 0
  private left = ASK_EVERY

  /** `parts`: edges and faces of the body. */
  constructor(watch: Watch, parts: number) {
    this.watch = watch
    this.total = 2 * parts
  }

  /** A step of work. Throws `Stopped`. */
  step(): void {
    if (--this.left > 0) return
    this.left = ASK_EVERY
    this.watch.progress?.(Math.floor(this.done), this.total)
    if (this.watch.stop?.()) throw new Stopped()
  }

  /** So many edges and faces, or parts of them, are done. */
  advance(parts: number): void {
    this.done = Math.min(this.total, this.done + parts)
  }

  /** All is done. */
  finish(): void {
    this.watch.progress?.(this.total, this.total)
  }
}
