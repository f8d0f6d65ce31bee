import { turnInto } from './trig-roots.ts'

/**
 * A rational B-spline cut into Bézier pieces, in homogeneous coordinates: `size` numbers a pole, the last one the
 * weight. Parameters are those of the spline's knots.
 */
export interface BezierChain {
  readonly degree: number
  readonly size: number
  /** Knots between pieces: one more than there are pieces. */
  readonly breaks: Float64Array
  /** Piece after piece, degree + 1 poles each. */
  readonly poles: Float64Array
}

/** Boehm's knot insertion until every inner knot has full multiplicity. Handles unclamped ends too. */
export function bezierChain(
  degree: number,
  knots: readonly number[],
  poles: readonly (readonly number[])[],
  weights?: readonly number[],
): BezierChain {
  const p = degree
  const dims = poles[0]!.length
  const size = dims + 1
  let points = poles.map((q, i) => {
    const w = weights?.[i] ?? 1
    return [...q.map((x) => x * w), w]
  })
  let u = [...knots]
  const first = u[p]!
  const last = u[points.length]!
  const insert = (at: number) => {
    let k = p
    while (k < points.length - 1 && at >= u[k + 1]!) k++
    const next: number[][] = []
    for (let i = 0; i <= points.length; i++) {
      if (i <= k - p) next.push(points[i]!)
      else if (i > k) next.push(points[i - 1]!)
      else {
        const span = u[i + p]! - u[i]!
        const f = span === 0 ? 0 : (at - u[i]!) / span
        const a = points[i - 1]!
        const b = points[i]!
        next.push(a.map((x, j) => x + f * (b[j]! - x)))
      }
    }
    u = [...u.slice(0, k + 1), at, ...u.slice(k + 1)]
    points = next
  }
  const inner = [...new Set(u.filter((x) => x >= first && x <= last))]
  for (const x of inner) {
    const have = u.filter((k) => k === x).length
    const end = x === first || x === last
    const full = end ? p + 1 : p
    const clamped =
      (x === first && u[0] === x && have >= p + 1) || (x === last && u[u.length - 1] === x && have >= p + 1)
    if (clamped) continue
    for (let i = have; i < (end ? p : full); i++) insert(x)
  }
  const breaks: number[] = []
  const flat: number[] = []
  for (const x of inner) {
    breaks.push(x)
    if (x === last) break
    // the piece starting at x has as its first pole the one ruled by the last copy of x
    const at = u.lastIndexOf(x) - p
    for (let i = 0; i <= p; i++) flat.push(...points[at + i]!)
  }
  return { degree: p, size, breaks: Float64Array.from(breaks), poles: Float64Array.from(flat) }
}

export function pieceCount(chain: BezierChain): number {
  return chain.breaks.length - 1
}

/** Index of the piece that holds t. */
function pieceOf(chain: BezierChain, t: number): number {
  let lo = 0
  let hi = chain.breaks.length - 2
  while (lo < hi) {
    const mid = (lo + hi + 1) >> 1
    if (chain.breaks[mid]! <= t) lo = mid
    else hi = mid - 1
  }
  return lo
}

const work = new Float64Array(4 * 32)

/** Point (size - 1 numbers) into `out`; with `slope`, also the derivative with respect to t. */
export function chainAt(chain: BezierChain, t: number, out: number[], slope?: number[]): void {
  const { degree: p, size, breaks, poles } = chain
  const k = pieceOf(chain, t)
  const span = breaks[k + 1]! - breaks[k]!
  const s = (t - breaks[k]!) / span
  const from = k * (p + 1) * size
  const n = (p + 1) * size
  for (let i = 0; i < n; i++) work[i] = poles[from + i]!
  let dw = 0
  for (let r = p; r > 0; r--) {
    if (r === 1 && slope) {
      for (let j = 0; j < size - 1; j++) slope[j] = (p * (work[size + j]! - work[j]!)) / span
      dw = (p * (work[2 * size - 1]! - work[size - 1]!)) / span
    }
    for (let i = 0; i < r * size; i++) work[i] = work[i]! + s * (work[i + size]! - work[i]!)
  }
  const w = work[size - 1]!
  for (let j = 0; j < size - 1; j++) {
    out[j] = work[j]! / w
    if (slope) slope[j] = (slope[j]! - out[j]! * dw) / w
  }
}

/** Bernstein coefficients, over piece k, of the linear form with the given factors (one per homogeneous coordinate). */
export function chainForm(chain: BezierChain, k: number, factors: readonly number[]): number[] {
  const { degree: p, size, poles } = chain
  const out: number[] = []
  for (let i = 0; i <= p; i++) {
    let sum = 0
    for (let j = 0; j < size; j++) sum += factors[j]! * poles[(k * (p + 1) + i) * size + j]!
    out.push(sum)
  }
  return out
}

/** Brings an angle into a conic's range when it lies in it up to `slack`, clamped; otherwise NaN. */
export function intoRange(angle: number, from: number, to: number, slack: number): number {
  const t = turnInto(angle, from)
  if (t <= to) return t
  if (t <= to + slack) return to
  if (t >= from + 2 * Math.PI - slack) return from
  return Number.NaN
}

/** The stretch of a chain between two parameters, itself a chain with the same parameters. */
export function subChain(chain: BezierChain, t0: number, t1: number): BezierChain {
  const first = chain.breaks[0]!
  const last = chain.breaks[chain.breaks.length - 1]!
  if (t0 <= first && t1 >= last) return chain
  const width = (chain.degree + 1) * chain.size
  const breaks: number[] = []
  const poles: number[] = []
  for (let k = 0; k < pieceCount(chain); k++) {
    const a = chain.breaks[k]!
    const b = chain.breaks[k + 1]!
    const lo = Math.max(a, t0)
    const hi = Math.min(b, t1)
    if (!(hi > lo)) continue
    let piece = Array.from(chain.poles.subarray(k * width, (k + 1) * width))
    if (lo > a) piece = halfPiece(piece, chain.degree, chain.size, (lo - a) / (b - a), true)
    if (hi < b) piece = halfPiece(piece, chain.degree, chain.size, (hi - lo) / (b - lo), false)
    if (breaks.length === 0) breaks.push(lo)
    breaks.push(hi)
    poles.push(...piece)
  }
  return { ...chain, breaks: Float64Array.from(breaks), poles: Float64Array.from(poles) }
}

/** de Casteljau: the part of a Bézier piece before s, or after it. */
function halfPiece(poles: readonly number[], degree: number, size: number, s: number, after: boolean): number[] {
  const d = [...poles]
  const before: number[] = d.slice(0, size)
  for (let r = degree; r > 0; r--) {
    for (let i = 0; i < r * size; i++) d[i] = d[i]! + s * (d[i + size]! - d[i]!)
    before.push(...d.slice(0, size))
    // what stays above index r - 1 are the poles of the later half, already in place
  }
  return after ? d : before
}
