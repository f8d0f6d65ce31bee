import { type BezierChain, chainAt, pieceCount } from './bezier-chain.ts'
import type { Chain2 } from './path2.ts'

/** A stretch of a chain: its chord, how far the curve may stray from it, and its halves once they are asked for. */
interface Span {
  readonly a: number
  readonly b: number
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  readonly reach: number
  readonly length: number
  left?: Span
  right?: Span
}

/** Spans met once are met again against every other curve. */
const known = new WeakMap<BezierChain, readonly Span[]>()

function spansOf(chain: BezierChain): readonly Span[] {
  let spans = known.get(chain)
  if (!spans) {
    const all: Span[] = []
    for (let k = 0; k < pieceCount(chain); k++) all.push(spanOf(chain, chain.breaks[k]!, chain.breaks[k + 1]!))
    spans = all
    known.set(chain, spans)
  }
  return spans
}

const p = [0, 0]
const q = [0, 0]
const m = [0, 0]
const STRAY = [0.1, 0.25, 0.4, 0.5, 0.6, 0.75, 0.9]

/** The stray is sampled and doubled. */
function spanOf(chain: BezierChain, a: number, b: number): Span {
  chainAt(chain, a, p)
  // just before the end, which may belong to the next piece
  chainAt(chain, b - (b - a) * 1e-12, q)
  const [ax, ay, bx, by] = [p[0]!, p[1]!, q[0]!, q[1]!]
  let reach = 0
  for (const f of STRAY) {
    chainAt(chain, a + f * (b - a), m)
    reach = Math.max(reach, Math.hypot(m[0]! - ax - f * (bx - ax), m[1]! - ay - f * (by - ay)))
  }
  return { a, b, ax, ay, bx, by, reach: 2 * reach, length: Math.hypot(bx - ax, by - ay) }
}

function halves(chain: BezierChain, s: Span): readonly [Span, Span] {
  const mid = 0.5 * (s.a + s.b)
  s.left ??= spanOf(chain, s.a, mid)
  s.right ??= spanOf(chain, mid, s.b)
  return [s.left, s.right]
}

/** Halving both curves until they are nearly straight, then Newton's method on both parameters. */
export function chainChain(c: Chain2, d: Chain2, tol: number, out: number[]): void {
  const from = out.length
  const search: Search = { c: c.chain, d: d.chain, tol, out, left: 4000 }
  for (const a of spansOf(c.chain)) for (const b of spansOf(d.chain)) halve(search, a, b, 0)
  ends(c, d, tol, false, out)
  ends(d, c, tol, true, out)
  // halving meets the same crossing from neighbouring halves
  for (let i = from; i < out.length; i += 2) {
    for (let j = out.length - 2; j > i; j -= 2)
      if (Math.abs(out[i]! - out[j]!) < 1e-9 && Math.abs(out[i + 1]! - out[j + 1]!) < 1e-9) out.splice(j, 2)
  }
}

interface Search {
  readonly c: BezierChain
  readonly d: BezierChain
  readonly tol: number
  readonly out: number[]
  /** Curves that run together would be halved without end. */
  left: number
}

/** Ends of one chain that lie on the other. */
function ends(c: Chain2, d: Chain2, tol: number, flip: boolean, out: number[]): void {
  const at = [0, 0]
  for (const t of [c.t0, c.t1]) {
    chainAt(c.chain, t, at)
    const near = spansOf(d.chain).some(
      (s) =>
        at[0]! >= Math.min(s.ax, s.bx) - s.reach - tol &&
        at[0]! <= Math.max(s.ax, s.bx) + s.reach + tol &&
        at[1]! >= Math.min(s.ay, s.by) - s.reach - tol &&
        at[1]! <= Math.max(s.ay, s.by) + s.reach + tol,
    )
    if (!near) continue
    const u = nearestOnChain(d, at[0]!, at[1]!)
    chainAt(d.chain, u, q)
    if (Math.hypot(q[0]! - at[0]!, q[1]! - at[1]!) > tol) continue
    if (flip) out.push(u, t)
    else out.push(t, u)
  }
}

function halve(search: Search, s: Span, t: Span, depth: number): void {
  const r = s.reach + t.reach + search.tol
  if (Math.min(s.ax, s.bx) - r > Math.max(t.ax, t.bx) || Math.min(t.ax, t.bx) - r > Math.max(s.ax, s.bx)) return
  if (Math.min(s.ay, s.by) - r > Math.max(t.ay, t.by) || Math.min(t.ay, t.by) - r > Math.max(s.ay, s.by)) return
  if (aside(s, t, r) || aside(t, s, r) || search.left-- < 0) return
  const straight = s.reach < 0.02 * s.length && t.reach < 0.02 * t.length
  if (depth > 24 || straight || (s.length < search.tol && t.length < search.tol)) {
    newton(search, s, t)
    return
  }
  if (s.reach * t.length > t.reach * s.length) for (const x of halves(search.c, s)) halve(search, x, t, depth + 1)
  else for (const y of halves(search.d, t)) halve(search, s, y, depth + 1)
}

/** Whether t lies wholly to one side of s's chord line, further than r. */
function aside(s: Span, t: Span, r: number): boolean {
  const dx = s.bx - s.ax
  const dy = s.by - s.ay
  const a = dx * (t.ay - s.ay) - dy * (t.ax - s.ax)
  const b = dx * (t.by - s.ay) - dy * (t.bx - s.ax)
  const far = r * s.length
  return (a > far && b > far) || (a < -far && b < -far)
}

const slopeA = [0, 0]
const slopeB = [0, 0]

function newton({ c, d, tol, out }: Search, s: Span, t: Span): void {
  let x = 0.5 * (s.a + s.b)
  let y = 0.5 * (t.a + t.b)
  for (let i = 0; i < 20; i++) {
    chainAt(c, x, p, slopeA)
    chainAt(d, y, q, slopeB)
    const ex = q[0]! - p[0]!
    const ey = q[1]! - p[1]!
    const det = slopeB[0]! * slopeA[1]! - slopeA[0]! * slopeB[1]!
    if (det === 0) return
    const nx = clamp(x + (slopeB[0]! * ey - ex * slopeB[1]!) / det, s.a, s.b)
    const ny = clamp(y + (slopeA[0]! * ey - slopeA[1]! * ex) / det, t.a, t.b)
    const step = Math.abs(nx - x) / (s.b - s.a) + Math.abs(ny - y) / (t.b - t.a)
    x = nx
    y = ny
    if (step < 1e-13) break
  }
  chainAt(c, x, p)
  chainAt(d, y, q)
  if (Math.hypot(p[0]! - q[0]!, p[1]! - q[1]!) <= tol) out.push(x, y)
}

/** Parameter of the chain's point nearest to (x, y). */
export function nearestOnChain(c: Chain2, x: number, y: number): number {
  const pieces = pieceCount(c.chain)
  const at = [0, 0]
  let best = c.t0
  let least = Infinity
  const steps = Math.max(8, 4 * c.chain.degree)
  const trial = (t: number) => {
    chainAt(c.chain, t, at)
    const d = Math.hypot(at[0]! - x, at[1]! - y)
    if (d < least) {
      least = d
      best = t
    }
  }
  let step = 0
  for (let k = 0; k < pieces; k++) {
    const a = c.chain.breaks[k]!
    const b = c.chain.breaks[k + 1]!
    for (let i = 0; i <= steps; i++) {
      const before = least
      trial(a + ((b - a) * i) / steps)
      if (least < before) step = (b - a) / steps
    }
  }
  const slope = [0, 0]
  let t = best
  for (let i = 0; i < 40; i++) {
    chainAt(c.chain, t, at, slope)
    const l2 = slope[0]! ** 2 + slope[1]! ** 2
    if (l2 === 0) break
    const d = ((x - at[0]!) * slope[0]! + (y - at[1]!) * slope[1]!) / l2
    const next = clamp(t + clamp(d, -step, step), c.t0, c.t1)
    if (next === t) break
    t = next
  }
  trial(t)
  return best
}

function clamp(x: number, lo: number, hi: number): number {
  return x < lo ? lo : Math.min(x, hi)
}
