import { CLEAR } from './clearances.ts'
import { type Bar, entersSlab, meet, near, type Shape, type Slab, slabsMeet, TOUCH } from './shapes.ts'
import { WEIGHTS } from './weights.ts'

/** Furthest distance (mm) at which two shapes still have something to do with each other. */
const INFLUENCE = 10.2

/** A line within this of a leader's head seems to be what it points at, mm. */
const BESIDE_HEAD = 1.4

export interface Rules {
  /** Least distance between parallel dimension lines. */
  readonly leastPitch: number
  readonly pitch: number
}

/** Cost between the shapes of two different sizes; `Infinity` where they cannot both stand. */
export function conflict(a: readonly Shape[], b: readonly Shape[], rules: Rules): number {
  let sum = 0
  for (const s of a) {
    for (const t of b) {
      if (!near(s, t, INFLUENCE)) continue
      if (s.shape === 'bar' && t.shape === 'bar' && !near(s, t, 0.7) && !sideBySide(s, t)) continue
      sum += shapeConflict(s, t, rules)
      if (sum === Infinity) return sum
    }
  }
  return sum
}

/**
 * Cost between neighbours in one chain: the head that serves both is each one's own, and stands as near to its text as
 * heads do.
 */
export function conflictInChain(a: readonly Shape[], b: readonly Shape[], rules: Rules): number {
  const apart = (from: readonly Shape[]) => (s: Shape) => s.shape === 'bar' || !from.some((t) => sameHead(s, t))
  return conflict(a.filter(apart(b)), b.filter(apart(a)), rules)
}

function sameHead(s: Slab, t: Shape): boolean {
  return t.shape === 'slab' && t.role === s.role && s.role !== 'text' && servesBoth(s, t)
}

/** One head serves two sizes that meet at an extension line. */
function servesBoth(a: Slab, b: Slab): boolean {
  return Math.hypot(a.cx - b.cx, a.cy - b.cy) < 0.05 && (a.role === 'dot' || a.ux * b.ux + a.uy * b.uy > 0.99)
}

/** Parallel to within a degree; others matter only where they cross. */
function sideBySide(a: Bar, b: Bar): boolean {
  const ux = a.bx - a.ax
  const uy = a.by - a.ay
  const vx = b.bx - b.ax
  const vy = b.by - b.ay
  const det = ux * vy - uy * vx
  return det * det < 4e-4 * (ux * ux + uy * uy) * (vx * vx + vy * vy)
}

function shapeConflict(s: Shape, t: Shape, rules: Rules): number {
  if (s.shape === 'slab') return t.shape === 'slab' ? slabConflict(s, t, rules) : mixedConflict(s, t)
  return t.shape === 'slab' ? mixedConflict(t, s) : barConflict(s, t, rules)
}

function slabConflict(a: Slab, b: Slab, rules: Rules): number {
  if (a.role === 'text' && b.role === 'text') {
    if (slabsMeet(a, b, CLEAR.text)) return Infinity
    const turned = Math.abs(a.ux * b.uy - a.uy * b.ux)
    if (turned > 0.01) return 0
    const dx = Math.abs((b.cx - a.cx) * a.ux + (b.cy - a.cy) * a.uy)
    const dy = Math.abs((b.cy - a.cy) * a.ux - (b.cx - a.cx) * a.uy)
    // Side by side on one level they must not read as one number.
    if (dy < a.hh && dx < a.hw + b.hw + 2 * Math.min(a.hh, b.hh)) return WEIGHTS.textsInLine
    return dy > a.hh && dy < rules.pitch + 0.5 && dx < 0.8 * (a.hw + b.hw) ? WEIGHTS.notStaggered : 0
  }
  if (a.role === 'text' || b.role === 'text') return slabsMeet(a, b, CLEAR.arrow) ? Infinity : 0
  if (servesBoth(a, b)) return a.role === b.role ? 0 : Infinity
  if (a.role !== b.role) return slabsMeet(a, b, -0.55) ? Infinity : 0
  return slabsMeet(a, b, -0.1) ? Infinity : 0
}

function mixedConflict(s: Slab, b: Bar): number {
  if (s.role === 'text') {
    if (!entersSlab(b.ax, b.ay, b.bx, b.by, s, CLEAR.ease)) return 0
    return entersSlab(b.ax, b.ay, b.bx, b.by, s, CLEAR.line) ? Infinity : WEIGHTS.textNearLine
  }
  if (!entersSlab(b.ax, b.ay, b.bx, b.by, s, -0.15)) {
    const beside = s.ofLeader && b.role === 'extension' && entersSlab(b.ax, b.ay, b.bx, b.by, s, BESIDE_HEAD)
    return beside ? WEIGHTS.leaderHeadNearExtension : 0
  }
  const length = Math.hypot(b.bx - b.ax, b.by - b.ay)
  const parallel = Math.abs((b.bx - b.ax) * s.uy - (b.by - b.ay) * s.ux) < 0.02 * length
  // Along the head's own axis lies the next size's line of a chain; the lines themselves are judged there.
  if (parallel && (b.role === 'dimension' || b.role === 'tail')) return 0
  if (b.role !== 'extension') return Infinity
  return s.ofLeader ? WEIGHTS.extensionOverLeaderHead : WEIGHTS.extensionOverArrow
}

function barConflict(a: Bar, b: Bar, rules: Rules): number {
  const p = group(a)
  const q = group(b)
  // A line that ends on another size's dimension line reads as crossing it.
  if (q === 'dimension' && p !== 'dimension') return barConflict(b, a, rules)
  const slack = p === 'leader' || q === 'leader' || (p === 'dimension' && q === 'extension') ? 0.6 : -TOUCH
  let m = meet(a.ax, a.ay, a.bx, a.by, b.ax, b.ay, b.bx, b.by, slack)
  if (m.how === 'apart' && p !== 'dimension' && slack > 0)
    m = meet(b.ax, b.ay, b.bx, b.by, a.ax, a.ay, a.bx, a.by, slack)
  if (m.how === 'apart') return 0
  if (m.how === 'cross') {
    if (p === 'dimension' && q === 'dimension') return Infinity
    if (p === 'leader' && q === 'leader') return Infinity
    if (p === 'extension' && q === 'extension') return WEIGHTS.extensionOverExtension
    if (p !== 'leader' && q !== 'leader') return WEIGHTS.extensionOverDimension
    return p === 'dimension' || q === 'dimension' ? WEIGHTS.leaderOverDimension : WEIGHTS.leaderOverExtension
  }
  if (m.how === 'along') {
    if (p === 'extension' && q === 'extension') return 0
    // The tail behind an outside head may lie on the next size's dimension line.
    if ((a.role === 'tail' || b.role === 'tail') && p === 'dimension' && q === 'dimension') {
      return sharedEnd(a, b) ? 0 : Infinity
    }
    return m.overlap < 0.2 ? 0 : Infinity
  }
  if (p === 'dimension' && q === 'dimension') {
    return m.distance < rules.leastPitch - 0.01 && m.overlap > 0.3 ? Infinity : 0
  }
  if (p === 'extension' && q === 'extension') return m.distance < 1.2 && m.overlap > 2 ? WEIGHTS.tooClose / 2 : 0
  if (p === 'leader' && q === 'leader' && (a.role === 'shoulder' || b.role === 'shoulder')) return 0
  const close = m.distance < 2.5 && m.overlap > 2 ? WEIGHTS.tooClose : 0
  if (p === 'leader' || q === 'leader') {
    const leader = a.role === 'leader' || b.role === 'leader'
    return close + (leader && m.overlap > 3 ? WEIGHTS.parallelLeader : 0)
  }
  return close
}

function group(b: Bar): 'dimension' | 'extension' | 'leader' {
  return b.role === 'extension' ? 'extension' : b.role === 'leader' || b.role === 'shoulder' ? 'leader' : 'dimension'
}

function sharedEnd(a: Bar, b: Bar): boolean {
  const same = (x: number, y: number, u: number, v: number) => Math.hypot(x - u, y - v) < 0.05
  return (
    same(a.ax, a.ay, b.ax, b.ay) ||
    same(a.ax, a.ay, b.bx, b.by) ||
    same(a.bx, a.by, b.ax, b.ay) ||
    same(a.bx, a.by, b.bx, b.by)
  )
}
