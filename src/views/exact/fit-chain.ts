import type { BezierChain } from '../../geometry/bezier-chain.ts'
import type { Vec3 } from '../../geometry/vec.ts'

const DEGREE = 7

/** Chebyshev-Lobatto places on [0, 1] and the matrix that turns values there into Bernstein coefficients. */
const PLACES = Array.from({ length: DEGREE + 1 }, (_, i) => 0.5 * (1 - Math.cos((Math.PI * i) / DEGREE)))
const TO_BERNSTEIN = inverse(PLACES.map((t) => bernstein(t)))
const TRIALS = Array.from({ length: DEGREE }, (_, i) => 0.5 * (PLACES[i]! + PLACES[i + 1]!))
const AT_TRIALS = TRIALS.map((t) => bernstein(t))

/** Pieces of one curve at most, but for those that its knees part. */
export const MOST_PIECES = 256

/**
 * Polynomial pieces that follow a smooth space curve within `bound` (checked between all places of interpolation; each
 * piece halved until it holds, or until there are `MOST_PIECES`: a curve known worse than `bound` never holds).
 */
export function fitChain(
  at: (t: number) => Vec3,
  t0: number,
  t1: number,
  bound: number,
  /** Places at which the curve is smooth on either side only, in order. */
  knees: readonly number[] = [],
): BezierChain {
  const stops = [t0, ...knees.filter((t) => t > t0 && t < t1), t1]
  let spans: Span[] = []
  for (let k = 1; k < stops.length; k++) {
    const [from, to] = [stops[k - 1]!, stops[k]!]
    const pieces = knees.length > 0 ? 1 : Math.max(1, Math.ceil((to - from) / 0.8))
    for (let i = 0; i < pieces; i++)
      spans.push(
        span(at, from + ((to - from) * i) / pieces, i + 1 === pieces ? to : from + ((to - from) * (i + 1)) / pieces),
      )
  }
  const most = Math.max(MOST_PIECES, 2 * spans.length)
  for (let depth = 0; depth < 20; depth++) {
    const loose = spans.filter((s) => s.off > bound).sort((x, y) => y.off - x.off)
    const halved = new Set(loose.slice(0, most - spans.length))
    if (halved.size === 0) break
    spans = spans.flatMap((s) => {
      if (!halved.has(s)) return [s]
      const mid = 0.5 * (s.a + s.b)
      return [span(at, s.a, mid), span(at, mid, s.b)]
    })
  }
  return {
    degree: DEGREE,
    size: 4,
    breaks: Float64Array.from([t0, ...spans.map((s) => s.b)]),
    poles: Float64Array.from(spans.flatMap((s) => s.poles)),
  }
}

interface Span {
  readonly a: number
  readonly b: number
  /** x, y, z and weight of each pole in turn. */
  readonly poles: readonly number[]
  /** How far it strays from the curve at most, where tried. */
  readonly off: number
}

function span(at: (t: number) => Vec3, a: number, b: number): Span {
  const values = PLACES.map((s) => at(a + s * (b - a)))
  const coefficients = TO_BERNSTEIN.map((row) =>
    [0, 1, 2].map((k) => row.reduce((sum, f, i) => sum + f * values[i]![k]!, 0)),
  )
  // the ends are met exactly, so that pieces join without a gap
  coefficients[0] = [...values[0]!]
  coefficients[DEGREE] = [...values[DEGREE]!]
  const offs = TRIALS.map((s, i) => {
    const p = at(a + s * (b - a))
    const q = [0, 1, 2].map((k) => AT_TRIALS[i]!.reduce((sum, f, j) => sum + f * coefficients[j]![k]!, 0))
    return Math.hypot(p[0] - q[0]!, p[1] - q[1]!, p[2] - q[2]!)
  })
  return { a, b, poles: coefficients.flatMap((c) => [...c, 1]), off: Math.max(...offs) }
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
