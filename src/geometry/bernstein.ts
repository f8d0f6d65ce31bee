/** Polynomials in Bernstein form over [0, 1]: products and certain root isolation (variation diminishing). */

const BINOMIALS: number[][] = [[1]]
function binomials(n: number): number[] {
  for (let i = BINOMIALS.length; i <= n; i++) {
    const last = BINOMIALS[i - 1]!
    BINOMIALS.push([1, ...last.slice(1).map((x, j) => x + last[j]!), 1])
  }
  return BINOMIALS[n]!
}

/** Coefficients of the product of two polynomials. */
export function timesBernstein(p: readonly number[], q: readonly number[]): number[] {
  const n = p.length - 1
  const m = q.length - 1
  const bn = binomials(n)
  const bm = binomials(m)
  const out = new Array<number>(n + m + 1).fill(0)
  for (let i = 0; i <= n; i++) for (let j = 0; j <= m; j++) out[i + j]! += bn[i]! * bm[j]! * p[i]! * q[j]!
  const all = binomials(n + m)
  for (let k = 0; k < out.length; k++) out[k]! /= all[k]!
  return out
}

export function valueBernstein(c: readonly number[], t: number): number {
  const d = [...c]
  for (let r = d.length - 1; r > 0; r--) for (let i = 0; i < r; i++) d[i]! += t * (d[i + 1]! - d[i]!)
  return d[0]!
}

/**
 * Roots in [0, 1]. Where the polynomial comes within `slack` of zero without crossing it, the place of its least value
 * is given once. A polynomial that is within `slack` throughout has no isolated roots: nothing is given.
 */
export function rootsBernstein(c: readonly number[], slack: number): number[] {
  if (c.every((x) => Math.abs(x) <= slack)) return []
  const out: number[] = []
  // below rounding there is nothing to isolate: roots of high order would be halved without end
  const still = 1e-15 * c.length * Math.max(...c.map(Math.abs))
  isolate(c, 0, 1, slack, still, out, 0)
  const tidy: number[] = []
  for (const t of out.sort((a, b) => a - b)) if (tidy.length === 0 || t - tidy[tidy.length - 1]! > 1e-9) tidy.push(t)
  return tidy
}

function isolate(
  c: readonly number[],
  a: number,
  b: number,
  slack: number,
  still: number,
  out: number[],
  depth: number,
): void {
  let changes = 0
  let least = Infinity
  let most = 0
  for (let i = 0; i < c.length; i++) {
    if (i > 0 && c[i]! < 0 !== c[i - 1]! < 0) changes++
    const size = Math.abs(c[i]!)
    if (size < least) least = size
    if (size > most) most = size
  }
  if (changes === 0 && least > slack) return
  const n = c.length - 1
  if (changes === 1 && c[0]! < 0 !== c[n]! < 0) {
    out.push(a + (b - a) * crossing(c))
    return
  }
  if (depth > 40 || b - a < 1e-10 || most <= still) {
    out.push(0.5 * (a + b))
    return
  }
  if (changes === 0) {
    // touches within the slack at most: follow the lower half of the hull only while it stays inside the slack
    if (most <= slack) {
      out.push(0.5 * (a + b))
      return
    }
  }
  const left: number[] = []
  const right: number[] = new Array<number>(n + 1)
  const d = [...c]
  left.push(d[0]!)
  right[n] = d[n]!
  for (let r = n; r > 0; r--) {
    for (let i = 0; i < r; i++) d[i] = 0.5 * (d[i]! + d[i + 1]!)
    left.push(d[0]!)
    right[r - 1] = d[r - 1]!
  }
  const mid = 0.5 * (a + b)
  isolate(left, a, mid, slack, still, out, depth + 1)
  isolate(right, mid, b, slack, still, out, depth + 1)
}

/** The one crossing of a polynomial with a single sign change in its coefficients. */
function crossing(c: readonly number[]): number {
  let lo = 0
  let hi = 1
  const rising = c[0]! < 0
  let t = 0.5
  const n = c.length - 1
  const slope = c.slice(1).map((x, i) => n * (x - c[i]!))
  for (let i = 0; i < 80; i++) {
    const v = valueBernstein(c, t)
    if (v === 0) return t
    if (v < 0 === rising) lo = t
    else hi = t
    const d = n > 0 ? valueBernstein(slope, t) : 0
    let next = d === 0 ? Number.NaN : t - v / d
    if (!(next > lo && next < hi)) next = 0.5 * (lo + hi)
    if (Math.abs(next - t) < 1e-16 || next === lo || next === hi) return next
    t = next
  }
  return t
}
