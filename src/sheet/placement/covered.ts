import { chequerOf } from './chequer.ts'

/** Side of a square, mm: a third of the lowest text with its clearance. */
const SQUARE = 1.25
/** Drawing accuracy, mm. */
const SAFE = 1e-6

/**
 * Where straight pieces of ink cover the paper, in squares summed up from a corner: whether a rectangle surely holds some
 * of the ink is told by four sums, whatever there is in it.
 */
export class Covered {
  readonly #x: number
  readonly #y: number
  readonly #across: number
  readonly #up: number
  /** Pieces' points left of and below each corner of the squares. */
  readonly #sums: Int32Array

  /** `ends`: a.x, a.y, b.x, b.y of each piece; those that `counts` refuses are left out. */
  constructor(ends: Float64Array, counts: (piece: number) => boolean) {
    const { x, y, across, up } = chequerOf(ends, SQUARE)
    this.#x = x
    this.#y = y
    this.#across = across
    this.#up = up
    const row = this.#across + 1
    const sums = new Int32Array(row * (this.#up + 1))
    for (let k = 0; k < ends.length; k += 4) {
      if (!counts(k / 4)) continue
      const [ax, ay] = [ends[k]!, ends[k + 1]!]
      const [dx, dy] = [ends[k + 2]! - ax, ends[k + 3]! - ay]
      const steps = Math.ceil((2 * Math.max(Math.abs(dx), Math.abs(dy))) / SQUARE)
      for (let i = 0; i <= steps; i++) {
        const t = steps === 0 ? 0 : i / steps
        const column = Math.min(this.#across - 1, Math.floor((ax + t * dx - x) / SQUARE))
        const line = Math.min(this.#up - 1, Math.floor((ay + t * dy - y) / SQUARE))
        sums[(line + 1) * row + column + 1]!++
      }
    }
    for (let line = 1; line <= this.#up; line++) {
      let sum = 0
      for (let column = 1; column <= this.#across; column++) {
        sum += sums[line * row + column]!
        sums[line * row + column] = sum + sums[(line - 1) * row + column]!
      }
    }
    this.#sums = sums
  }

  /** True only where some of the ink lies in the rectangle; false also where it lies near the rectangle's border. */
  surely(x0: number, y0: number, x1: number, y1: number): boolean {
    const left = Math.max(0, Math.ceil((x0 + SAFE - this.#x) / SQUARE))
    const low = Math.max(0, Math.ceil((y0 + SAFE - this.#y) / SQUARE))
    const right = Math.min(this.#across, Math.floor((x1 - SAFE - this.#x) / SQUARE))
    const high = Math.min(this.#up, Math.floor((y1 - SAFE - this.#y) / SQUARE))
    if (right <= left || high <= low) return false
    const row = this.#across + 1
    const s = this.#sums
    return s[high * row + right]! - s[low * row + right]! - s[high * row + left]! + s[low * row + left]! > 0
  }
}
