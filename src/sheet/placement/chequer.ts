/** The paper that straight pieces lie on, parted into squares. */
export interface Chequer {
  /** Lower left corner, mm. */
  readonly x: number
  readonly y: number
  /** Squares in a row, and rows; none where there are no pieces. */
  readonly across: number
  readonly up: number
}

/** `ends`: a.x, a.y, b.x, b.y of each piece; `side` of a square, mm. */
export function chequerOf(ends: Float64Array, side: number): Chequer {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  for (let k = 0; k < ends.length; k += 2) {
    x0 = Math.min(x0, ends[k]!)
    y0 = Math.min(y0, ends[k + 1]!)
    x1 = Math.max(x1, ends[k]!)
    y1 = Math.max(y1, ends[k + 1]!)
  }
  const squares = (length: number) => (ends.length > 0 ? Math.floor(length / side) + 1 : 0)
  return { x: x0, y: y0, across: squares(x1 - x0), up: squares(y1 - y0) }
}
