import { rootsBernstein, timesBernstein } from './bernstein.ts'
import { type BezierChain, chainAt, chainForm, intoRange, pieceCount } from './bezier-chain.ts'
import type { Curve2 } from './curve2.ts'
import { chainChain } from './intersect-chains.ts'
import { type Chain2, type Conic2, type Path2, pathAt, pathOf, type Segment2, unitParameter } from './path2.ts'
import { rootsDegree1, rootsDegree2 } from './trig-roots.ts'

/**
 * Where two curves meet: crossings and touchings (to within `tolerance`, mm), as parameters in [0, 1] on each.
 * Curves that run together over a length give the ends of what they share.
 */
export function intersections(a: Curve2, b: Curve2, tolerance: number): { readonly a: number; readonly b: number }[] {
  const p = pathOf(a)
  const q = pathOf(b)
  const flat: number[] = []
  meet(p, q, tolerance, flat)
  const found: { a: number; b: number }[] = []
  for (let i = 0; i < flat.length; i += 2)
    found.push({ a: unitParameter(p, flat[i]!), b: unitParameter(q, flat[i + 1]!) })
  found.sort((x, y) => x.a - y.a || x.b - y.b)
  const tidy: { a: number; b: number }[] = []
  const [u, v] = [
    [0, 0],
    [0, 0],
  ]
  for (const one of found) {
    const same = tidy.some((other) => {
      pathAt(p, naturalParameter(p, one.a), u)
      pathAt(p, naturalParameter(p, other.a), v)
      return (
        Math.hypot(u[0]! - v[0]!, u[1]! - v[1]!) <= 4 * tolerance &&
        (Math.abs(one.b - other.b) < 1e-6 || Math.abs(Math.abs(one.b - other.b) - 1) < 1e-6)
      )
    })
    if (!same) tidy.push(one)
  }
  return tidy
}

function naturalParameter(path: Path2, unit: number): number {
  return path.t0 + unit * (path.t1 - path.t0)
}

/**
 * Pushes pairs (parameter on p, parameter on q) of meeting points into `out`: crossings, touchings, and each end of
 * one that lies on the other. The same point may come more than once.
 */
export function meet(p: Path2, q: Path2, tolerance: number, out: number[]): void {
  if (p.kind === 'segment') {
    if (q.kind === 'segment') segmentSegment(p, q, tolerance, out)
    else if (q.kind === 'conic') segmentConic(p, q, tolerance, out)
    else segmentChain(p, q, tolerance, out)
  } else if (p.kind === 'conic') {
    if (q.kind === 'segment') swapped(segmentConic, q, p, tolerance, out)
    else if (q.kind === 'conic') conicConic(p, q, tolerance, out)
    else conicChain(p, q, tolerance, out)
  } else {
    if (q.kind === 'segment') swapped(segmentChain, q, p, tolerance, out)
    else if (q.kind === 'conic') swapped(conicChain, q, p, tolerance, out)
    else chainChain(p, q, tolerance, out)
  }
}

function swapped<P, Q>(
  f: (p: P, q: Q, tolerance: number, out: number[]) => void,
  p: P,
  q: Q,
  tolerance: number,
  out: number[],
): void {
  const from = out.length
  f(p, q, tolerance, out)
  for (let i = from; i < out.length; i += 2) {
    const t = out[i]!
    out[i] = out[i + 1]!
    out[i + 1] = t
  }
}

function segmentSegment(p: Segment2, q: Segment2, tol: number, out: number[]): void {
  const px = p.bx - p.ax
  const py = p.by - p.ay
  const qx = q.bx - q.ax
  const qy = q.by - q.ay
  const lp = Math.hypot(px, py)
  const lq = Math.hypot(qx, qy)
  if (lp === 0 || lq === 0) return
  const cross = px * qy - py * qx
  const dx = q.ax - p.ax
  const dy = q.ay - p.ay
  const ep = tol / lp
  const eq = tol / lq
  // sideways distances of q's ends from p, and of p's ends from q
  const qa = (px * dy - py * dx) / lp
  const qb = qa + cross / lp
  const pa = (qy * dx - qx * dy) / lq
  const pb = pa - cross / lq
  const before = out.length
  if (Math.abs(qa) <= tol) within((dx * px + dy * py) / (lp * lp), 0, ep, eq, out)
  if (Math.abs(qb) <= tol) within(((dx + qx) * px + (dy + qy) * py) / (lp * lp), 1, ep, eq, out)
  if (Math.abs(pa) <= tol) within(0, -(dx * qx + dy * qy) / (lq * lq), ep, eq, out)
  if (Math.abs(pb) <= tol) within(1, ((px - dx) * qx + (py - dy) * qy) / (lq * lq), ep, eq, out)
  if (out.length > before || cross === 0) return
  const t = (dx * qy - dy * qx) / cross
  const u = (dx * py - dy * px) / cross
  if (t >= 0 && t <= 1 && u >= 0 && u <= 1) out.push(t, u)
}

/** Keeps a meeting whose parameters lie in [0, 1] but for the tolerances. */
function within(t: number, u: number, ep: number, eq: number, out: number[]): void {
  if (t >= -ep && t <= 1 + ep && u >= -eq && u <= 1 + eq) out.push(clamp(t, 0, 1), clamp(u, 0, 1))
}

function segmentConic(p: Segment2, q: Conic2, tol: number, out: number[]): void {
  const px = p.bx - p.ax
  const py = p.by - p.ay
  const lp = Math.hypot(px, py)
  if (lp === 0) return
  const nx = -py / lp
  const ny = px / lp
  const two = rootsDegree1(q.ux * nx + q.uy * ny, q.vx * nx + q.vy * ny, (p.ax - q.cx) * nx + (p.ay - q.cy) * ny, tol)
  const radius = Math.hypot(q.ux, q.uy) + Math.hypot(q.vx, q.vy)
  const ep = tol / lp
  if (two) {
    for (const angle of two) {
      const u = intoRange(angle, q.t0, q.t1, tol / radius)
      if (Number.isNaN(u)) continue
      const c = Math.cos(u)
      const s = Math.sin(u)
      const t = ((q.cx + q.ux * c + q.vx * s - p.ax) * px + (q.cy + q.uy * c + q.vy * s - p.ay) * py) / (lp * lp)
      if (t >= -ep && t <= 1 + ep) out.push(clamp(t, 0, 1), u)
    }
  }
  endsOn(p, q, tol, out)
  conicEndsOnSegment(q, p, tol, out)
}

/** Ends of a segment that lie on a conic. */
function endsOn(p: Segment2, q: Conic2, tol: number, out: number[]): void {
  const a = angleOn(q, p.ax, p.ay, tol)
  if (!Number.isNaN(a)) out.push(0, a)
  const b = angleOn(q, p.bx, p.by, tol)
  if (!Number.isNaN(b)) out.push(1, b)
}

function conicEndsOnSegment(q: Conic2, p: Segment2, tol: number, out: number[]): void {
  if (q.t1 - q.t0 >= 2 * Math.PI - 1e-12) return
  for (const u of [q.t0, q.t1]) {
    const x = q.cx + q.ux * Math.cos(u) + q.vx * Math.sin(u)
    const y = q.cy + q.uy * Math.cos(u) + q.vy * Math.sin(u)
    const t = placeOnSegment(p, x, y, tol)
    if (!Number.isNaN(t)) out.push(t, u)
  }
}

function placeOnSegment(p: Segment2, x: number, y: number, tol: number): number {
  const px = p.bx - p.ax
  const py = p.by - p.ay
  const l2 = px * px + py * py
  const t = clamp(((x - p.ax) * px + (y - p.ay) * py) / l2, 0, 1)
  return Math.hypot(p.ax + t * px - x, p.ay + t * py - y) <= tol ? t : Number.NaN
}

/** Angle of the conic's point at (x, y) when that point lies on the arc to within the tolerance; otherwise NaN. */
function angleOn(q: Conic2, x: number, y: number, tol: number): number {
  const det = q.ux * q.vy - q.uy * q.vx
  if (det === 0) return Number.NaN
  const dx = x - q.cx
  const dy = y - q.cy
  const c = (dx * q.vy - dy * q.vx) / det
  const s = (q.ux * dy - q.uy * dx) / det
  const f = 0.5 * (c * c + s * s - 1)
  // gradient of f in x, y
  const gx = (c * q.vy - s * q.uy) / det
  const gy = (-c * q.vx + s * q.ux) / det
  if (Math.abs(f) > tol * Math.hypot(gx, gy)) return Number.NaN
  return intoRange(Math.atan2(s, c), q.t0, q.t1, tol / Math.max(Math.hypot(q.ux, q.uy), Math.hypot(q.vx, q.vy)))
}

function conicConic(p: Conic2, q: Conic2, tol: number, out: number[]): void {
  // in p's own frame p is the unit circle
  const det = p.ux * p.vy - p.uy * p.vx
  if (det === 0) return
  const toX = (x: number, y: number) => (x * p.vy - y * p.vx) / det
  const toY = (x: number, y: number) => (p.ux * y - p.uy * x) / det
  const cx = toX(q.cx - p.cx, q.cy - p.cy)
  const cy = toY(q.cx - p.cx, q.cy - p.cy)
  const ux = toX(q.ux, q.uy)
  const uy = toY(q.ux, q.uy)
  const vx = toX(q.vx, q.vy)
  const vy = toY(q.vx, q.vy)
  const uu = ux * ux + uy * uy
  const vv = vx * vx + vy * vy
  const radiusP = Math.max(Math.hypot(p.ux, p.uy), Math.hypot(p.vx, p.vy))
  const radiusQ = Math.max(Math.hypot(q.ux, q.uy), Math.hypot(q.vx, q.vy))
  const least = Math.abs(det) / radiusP
  const slack = (2 * tol) / least
  const c0 = cx * cx + cy * cy + 0.5 * (uu + vv) - 1
  const a1 = 2 * (cx * ux + cy * uy)
  const b1 = 2 * (cx * vx + cy * vy)
  const a2 = 0.5 * (uu - vv)
  const b2 = ux * vx + uy * vy
  for (const angle of rootsDegree2(c0, a1, b1, a2, b2, slack)) {
    const u = intoRange(angle, q.t0, q.t1, tol / radiusQ)
    if (Number.isNaN(u)) continue
    const c = Math.cos(u)
    const s = Math.sin(u)
    const t = intoRange(Math.atan2(cy + uy * c + vy * s, cx + ux * c + vx * s), p.t0, p.t1, tol / radiusP)
    if (!Number.isNaN(t)) out.push(t, u)
  }
  conicEndsOnConic(p, q, tol, false, out)
  conicEndsOnConic(q, p, tol, true, out)
}

function conicEndsOnConic(p: Conic2, q: Conic2, tol: number, flip: boolean, out: number[]): void {
  if (p.t1 - p.t0 >= 2 * Math.PI - 1e-12) return
  for (const t of [p.t0, p.t1]) {
    const u = angleOn(
      q,
      p.cx + p.ux * Math.cos(t) + p.vx * Math.sin(t),
      p.cy + p.uy * Math.cos(t) + p.vy * Math.sin(t),
      tol,
    )
    if (Number.isNaN(u)) continue
    if (flip) out.push(u, t)
    else out.push(t, u)
  }
}

function segmentChain(p: Segment2, q: Chain2, tol: number, out: number[]): void {
  const px = p.bx - p.ax
  const py = p.by - p.ay
  const lp = Math.hypot(px, py)
  if (lp === 0) return
  const nx = -py / lp
  const ny = px / lp
  const form = [nx, ny, -(nx * p.ax + ny * p.ay)]
  const at = [0, 0]
  const ep = tol / lp
  for (let k = 0; k < pieceCount(q.chain); k++) {
    for (const s of rootsBernstein(chainForm(q.chain, k, form), 0)) {
      const u = onPiece(q.chain, k, s)
      chainAt(q.chain, u, at)
      const t = ((at[0]! - p.ax) * px + (at[1]! - p.ay) * py) / (lp * lp)
      if (t >= -ep && t <= 1 + ep) out.push(clamp(t, 0, 1), u)
    }
  }
  for (const u of [q.t0, q.t1]) {
    chainAt(q.chain, u, at)
    const t = placeOnSegment(p, at[0]!, at[1]!, tol)
    if (!Number.isNaN(t)) out.push(t, u)
  }
}

function conicChain(p: Conic2, q: Chain2, tol: number, out: number[]): void {
  const det = p.ux * p.vy - p.uy * p.vx
  if (det === 0) return
  const fx = [p.vy / det, -p.vx / det, (p.vx * p.cy - p.vy * p.cx) / det]
  const fy = [-p.uy / det, p.ux / det, (p.uy * p.cx - p.ux * p.cy) / det]
  const radius = Math.max(Math.hypot(p.ux, p.uy), Math.hypot(p.vx, p.vy))
  const at = [0, 0]
  for (let k = 0; k < pieceCount(q.chain); k++) {
    const x = chainForm(q.chain, k, fx)
    const y = chainForm(q.chain, k, fy)
    const w = chainForm(q.chain, k, [0, 0, 1])
    const xx = timesBernstein(x, x)
    const yy = timesBernstein(y, y)
    const ww = timesBernstein(w, w)
    for (const s of rootsBernstein(
      xx.map((v, i) => v + yy[i]! - ww[i]!),
      0,
    )) {
      const u = onPiece(q.chain, k, s)
      chainAt(q.chain, u, at)
      const angle = Math.atan2(fy[0]! * at[0]! + fy[1]! * at[1]! + fy[2]!, fx[0]! * at[0]! + fx[1]! * at[1]! + fx[2]!)
      const t = intoRange(angle, p.t0, p.t1, tol / radius)
      if (!Number.isNaN(t)) out.push(t, u)
    }
  }
  for (const u of [q.t0, q.t1]) {
    chainAt(q.chain, u, at)
    const t = angleOn(p, at[0]!, at[1]!, tol)
    if (!Number.isNaN(t)) out.push(t, u)
  }
}

function onPiece(chain: BezierChain, k: number, s: number): number {
  const a = chain.breaks[k]!
  const b = chain.breaks[k + 1]!
  return s === 1 ? b : a + s * (b - a)
}

function clamp(x: number, lo: number, hi: number): number {
  return x < lo ? lo : Math.min(x, hi)
}
