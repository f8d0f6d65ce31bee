import type { BezierChain } from '../../geometry/bezier-chain.ts'
import type { Vec3 } from '../../geometry/vec.ts'

const DEGREE = 7

/** Chebyshev-Lobatto places on [0, 1] and the matrix that turns values there into Bernstein coefficients. */
const PLACES = Array.from({ length: DEGREE + 1 }, (_, i) => 0.5 * (1 - Math.cos((Math.PI * i) / DEGREE)))
const TO_BERNSTEIN = inverse(PLACES.map((t) => bernstein(t)))
const TRIALS = Array.from({ length: DEGREE }, (_, i) => 0.5 * (PLACES[i]! + PLACES[i + 1]!))
const AT_TRIALS = TRIALS.map((t) => bernstein(t))

/**
 * Polynomial pieces that follow a smooth space curve within `bound` (checked between all places of interpolation; each
 * piece halved until it holds).
 */
export function fitChain(
  at: (t: number) => Vec3,
  t0: number,
  t1: number,
  bound: number,
  /** Places at which the curve is smooth on either side only, in order. */
  knees: readonly number[] = [],
): BezierChain {
  const breaks = [t0]
  const poles: number[] = []
  const follow = (a: number, b: number, depth: number) => {
    const values = PLACES.map((s) => at(a + s * (b - a)))
    const coefficients = TO_BERNSTEIN.map((row) =>
      [0, 1, 2].map((k) => row.reduce((sum, f, i) => sum + f * values[i]![k]!, 0)),
    )
    // the ends are met exactly, so that pieces join without a gap
    coefficients[0] = [...values[0]!]
    coefficients[DEGREE] = [...values[DEGREE]!]
    const fits = TRIALS.every((s, i) => {
      const p = at(a + s * (b - a))
      const q = [0, 1, 2].map((k) => AT_TRIALS[i]!.reduce((sum, f, j) => sum + f * coefficients[j]![k]!, 0))
      return Math.hypot(p[0] - q[0]!, p[1] - q[1]!, p[2] - q[2]!) <= bound
    })
    if (!fits && depth < 20) {
      const mid = 0.5 * (a + b)
      follow(a, mid, depth + 1)
      follow(mid, b, depth + 1)
      return
    }
    breaks.push(b)
    for (const c of coefficients) poles.push(c[0]!, c[1]!, c[2]!, 1)
  }
  const stops = [t0, ...knees.filter((t) => t > t0 && t < t1), t1]
  for (let k = 1; k < stops.length; k++) {
    const [from, to] = [stops[k - 1]!, stops[k]!]
    const pieces = knees.length > 0 ? 1 : Math.max(1, Math.ceil((to - from) / 0.8))
    for (let i = 0; i < pieces; i++)
      follow(from + ((to - from) * i) / pieces, i + 1 === pieces ? to : from + ((to - from) * (i + 1)) / pieces, 0)
  }
  return { degree: DEGREE, size: 4, breaks: Float64Array.from(breaks), poles: Float64Array.from(poles) }
}

function bernstein(t: number): number[] {
  let row = [1]
  for (let n = 1; n <= DEGREE; n++) {
    const next = new Array<number>(n + 1).fill(0)
    for (let i = 0; i < n; i++) {
      next[i]! += (1 - t) * row[i]!
      next[i + 1]! += t * row[i]!
    }
    row = next
  }
  return row
}

/** Gauss-Jordan elimination with row exchange. */
function inverse(m: readonly number[][]): number[][] {
  const n = m.length
  const a = m.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))])
  for (let c = 0; c < n; c++) {
    let best = c
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r]![c]!) > Math.abs(a[best]![c]!)) best = r
    ;[a[c], a[best]] = [a[best]!, a[c]!]
    const f = a[c]![c]!
    a[c] = a[c]!.map((x) => x / f)
    for (let r = 0; r < n; r++) {
      if (r === c) continue
      const g = a[r]![c]!
      a[r] = a[r]!.map((x, j) => x - g * a[c]![j]!)
    }
  }
  return a.map((row) => row.slice(n))
}
