/**
 * Real roots of trigonometric polynomials of degree 1 and 2: every intersection of a conic arc with a line, a plane
 * or another conic is one of these.
 */

const TURN = 2 * Math.PI

/** Angle brought into [from, from + 2π). */
export function turnInto(angle: number, from: number): number {
  const d = angle - from
  const r = from + (d - TURN * Math.floor(d / TURN))
  return r >= from + TURN ? from : r
}

/**
 * Solutions of a cos t + b sin t = c as [t1, t2] (equal at a tangency), or undefined.
 * `slack` is the amount by which |c| may exceed the amplitude and still count as touching.
 */
export function rootsDegree1(a: number, b: number, c: number, slack = 0): readonly [number, number] | undefined {
  const amplitude = Math.hypot(a, b)
  if (amplitude === 0 || Math.abs(c) > amplitude + slack) return undefined
  const peak = Math.atan2(b, a)
  // acos loses half its digits near ±1; atan2 of the two legs keeps them
  const rest = (amplitude - c) * (amplitude + c)
  const half = Math.atan2(Math.sqrt(Math.max(rest, 0)), c)
  return [peak - half, peak + half]
}

/**
 * All real roots in [0, 2π) of c0 + a1 cos t + b1 sin t + a2 cos 2t + b2 sin 2t.
 * A local extremum whose value is within `slack` of zero counts as a (double) root.
 */
export function rootsDegree2(c0: number, a1: number, b1: number, a2: number, b2: number, slack: number): number[] {
  const top = Math.hypot(a2, b2)
  const whole = Math.abs(c0) + Math.hypot(a1, b1) + top
  if (whole <= slack) return []
  if (top <= 1e-14 * whole) {
    const two = rootsDegree1(a1, b1, -c0, slack)
    if (!two) return []
    const [p, q] = [turnInto(two[0], 0), turnInto(two[1], 0)]
    return p === q ? [p] : [p, q]
  }
  // The extrema of f split the turn into at most four monotone stretches; they are roots of the same kind of
  // polynomial, isolated as the eigenangles of its self-reciprocal quartic in z = e^{it}.
  const f = (t: number) => {
    const s = Math.sin(t)
    const c = Math.cos(t)
    return c0 + a1 * c + b1 * s + a2 * (c * c - s * s) + 2 * b2 * s * c
  }
  const df = (t: number) => {
    const s = Math.sin(t)
    const c = Math.cos(t)
    return -a1 * s + b1 * c - 4 * a2 * s * c + 2 * b2 * (c * c - s * s)
  }
  const stops = stationary(a1, b1, a2, b2)
  const heights = stops.map(f)
  const roots: number[] = []
  for (let i = 0; i < stops.length; i++) {
    const lo = stops[i]!
    const hi = i + 1 < stops.length ? stops[i + 1]! : stops[0]! + TURN
    const flo = heights[i]!
    const fhi = heights[(i + 1) % stops.length]!
    if (Math.abs(flo) <= slack) roots.push(turnInto(lo, 0))
    if (flo < 0 !== fhi < 0 && Math.abs(flo) > slack && Math.abs(fhi) > slack)
      roots.push(turnInto(bracketed(f, df, lo, hi, flo), 0))
    else if (flo < 0 !== fhi < 0) {
      // one end counts as a double root already; the crossing itself is within its slack unless well inside
      const t = bracketed(f, df, lo, hi, flo)
      if (Math.abs(t - lo) > 1e-4 && Math.abs(t - hi) > 1e-4) roots.push(turnInto(t, 0))
    }
  }
  roots.sort((p, q) => p - q)
  return roots.filter((t, i) => i === 0 || t - roots[i - 1]! > 1e-9)
}

/** Angles in order over one turn at which the derivative of a degree-2 trigonometric polynomial changes sign. */
function stationary(a1: number, b1: number, a2: number, b2: number): number[] {
  const g = (t: number) => {
    const s = Math.sin(t)
    const c = Math.cos(t)
    return -a1 * s + b1 * c - 4 * a2 * s * c + 2 * b2 * (c * c - s * s)
  }
  const dg = (t: number) => {
    const s = Math.sin(t)
    const c = Math.cos(t)
    return -a1 * c - b1 * s - 4 * a2 * (c * c - s * s) - 8 * b2 * s * c
  }
  // g = A(t) + B(t), degrees 1 and 2 with 2 and 4 zeros: between neighbouring zeros of either part g changes sign at
  // most a few times, and sixteen steps a turn beside those zeros separate them all.
  const marks: number[] = []
  const peak1 = Math.atan2(b1, a1)
  const peak2 = Math.atan2(b2, a2) / 2
  for (let k = 0; k < 4; k++) marks.push(turnInto(peak1 + (k * Math.PI) / 2, 0))
  for (let k = 0; k < 8; k++) marks.push(turnInto(peak2 + (k * Math.PI) / 4, 0))
  for (let k = 0; k < 16; k++) marks.push(((k + 0.37) * Math.PI) / 8)
  marks.sort((p, q) => p - q)
  const out: number[] = []
  // one value a mark: a turn further on rounding may give the other sign, and a zero there would be lost
  const values = marks.map(g)
  for (let i = 0; i < marks.length; i++) {
    const lo = marks[i]!
    const hi = i + 1 < marks.length ? marks[i + 1]! : marks[0]! + TURN
    const glo = values[i]!
    const ghi = values[(i + 1) % marks.length]!
    if (glo === 0) out.push(lo)
    else if (ghi !== 0 && glo < 0 !== ghi < 0) out.push(turnInto(bracketed(g, dg, lo, hi, glo), 0))
  }
  return out.sort((p, q) => p - q)
}

/** Root between lo and hi, where f changes sign: Newton's step kept inside a shrinking bracket. */
function bracketed(f: (t: number) => number, df: (t: number) => number, lo: number, hi: number, flo: number): number {
  let a = lo
  let b = hi
  const rising = flo < 0
  let t = 0.5 * (a + b)
  for (let i = 0; i < 80; i++) {
    const v = f(t)
    if (v === 0) return t
    if (v < 0 === rising) a = t
    else b = t
    const d = df(t)
    let next = d === 0 ? Number.NaN : t - v / d
    if (!(next > a && next < b)) next = 0.5 * (a + b)
    if (Math.abs(next - t) <= 4e-16 * Math.max(1, Math.abs(t)) || next === a || next === b) return next
    t = next
  }
  return t
}
