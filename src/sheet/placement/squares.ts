import { chequerOf } from './chequer.ts'

/** Side of a square, mm. */
const SIDE = 4

/** Straight pieces by the squares of paper that they may lie in, to be met along a line without looking at all beside it. */
export class Squares {
  readonly #x: number
  readonly #y: number
  readonly #across: number
  readonly #up: number
  /** Where each square's pieces begin among `#pieces`. */
  readonly #starts: Int32Array
  readonly #pieces: Int32Array
  /** The number of the last walk that met the piece. */
  readonly #met: Int32Array
  #walk = 0

  /** `ends`: a.x, a.y, b.x, b.y of each piece. */
  constructor(ends: Float64Array) {
    const { x, y, across, up } = chequerOf(ends, SIDE)
    this.#x = x
    this.#y = y
    this.#across = across
    this.#up = up
    const starts = new Int32Array(this.#across * this.#up + 1)
    const each = (look: (square: number, piece: number) => void) => {
      for (let k = 0; k < ends.length; k += 4)
        this.#squares(ends[k]!, ends[k + 1]!, ends[k + 2]!, ends[k + 3]!, (square) => {
          look(square, k / 4)
          return false
        })
    }
    each((square) => {
      starts[square + 1]!++
    })
    for (let s = 1; s < starts.length; s++) starts[s]! += starts[s - 1]!
    const next = starts.slice()
    const pieces = new Int32Array(starts.at(-1) ?? 0)
    each((square, piece) => {
      pieces[next[square]!++] = piece
    })
    this.#starts = starts
    this.#pieces = pieces
    this.#met = new Int32Array(ends.length / 4)
  }

  /** Looks at every piece that may meet the line, each once, until `look` has seen enough. */
  along(ax: number, ay: number, bx: number, by: number, look: (piece: number) => boolean): void {
    const walk = ++this.#walk
    this.#squares(ax, ay, bx, by, (square) => {
      for (let i = this.#starts[square]!; i < this.#starts[square + 1]!; i++) {
        const piece = this.#pieces[i]!
        if (this.#met[piece] === walk) continue
        this.#met[piece] = walk
        if (look(piece)) return true
      }
      return false
    })
  }

  /** The squares that the line runs through, row by row, and a hair beside it. */
  #squares(ax: number, ay: number, bx: number, by: number, look: (square: number) => boolean): void {
    const [lowX, lowY, highX, highY] = ay <= by ? [ax, ay, bx, by] : [bx, by, ax, ay]
    const slope = highY - lowY > HAIR ? (highX - lowX) / (highY - lowY) : 0
    const first = Math.max(0, Math.floor((lowY - HAIR - this.#y) / SIDE))
    const last = Math.min(this.#up - 1, Math.floor((highY + HAIR - this.#y) / SIDE))
    for (let row = first; row <= last; row++) {
      // Within the row's height, where the line is not level.
      const bottom = this.#y + row * SIDE - HAIR
      const from = slope === 0 ? lowX : lowX + slope * Math.min(highY - lowY, Math.max(0, bottom - lowY))
      const to =
        slope === 0 ? highX : lowX + slope * Math.min(highY - lowY, Math.max(0, bottom + SIDE + 2 * HAIR - lowY))
      const left = Math.max(0, Math.floor((Math.min(from, to) - HAIR - this.#x) / SIDE))
      const right = Math.min(this.#across - 1, Math.floor((Math.max(from, to) + HAIR - this.#x) / SIDE))
      for (let column = left; column <= right; column++) if (look(row * this.#across + column)) return
    }
  }
}

/** Drawing accuracy, mm. */
const HAIR = 1e-3
