import type { Arc2, Curve2, Line2 } from '../geometry/curve2.ts'
import { derivativeAt, endOf, reversed, startOf } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'
import { signedArea } from '../kernel/profile.ts'
import type { ProfileCurve } from './model.ts'

const NEAR = 1e-7

export const near2 = (a: Vec2, b: Vec2): boolean => Math.abs(a[0] - b[0]) < NEAR && Math.abs(a[1] - b[1]) < NEAR

/** The loop running counter-clockwise. */
export function counterClockwise(loop: readonly ProfileCurve[]): ProfileCurve[] {
  if (signedArea(loop.map((c) => c.curve)) >= 0) return [...loop]
  return loop.map((c) => ({ ...c, curve: reversed(c.curve) })).reverse()
}

/** Closed polygon from points, each side named. */
export function polygon(points: readonly Vec2[], faces: readonly string[]): ProfileCurve[] {
  return points.map((a, i) => ({
    curve: { kind: 'line', a, b: points[(i + 1) % points.length]! },
    face: faces[i]!,
  }))
}

const lengthOfLine = (l: Line2) => Math.hypot(l.b[0] - l.a[0], l.b[1] - l.a[1])
const directionOf = (l: Line2): Vec2 => {
  const n = lengthOfLine(l)
  return [(l.b[0] - l.a[0]) / n, (l.b[1] - l.a[1]) / n]
}
const moved = (p: Vec2, d: Vec2, k: number): Vec2 => [p[0] + k * d[0], p[1] + k * d[1]]

/** Corner work found impossible: how much room there was on the shorter side. */
export interface NoRoom {
  readonly room: number
}

export type CornerResult = { readonly curves: ProfileCurve[]; readonly angle: number } | NoRoom | undefined

interface Corner {
  readonly before: number
  readonly after: number
  readonly a: Line2
  readonly b: Line2
  /** Turn of direction at the corner, radians; positive to the left (outside corner of a counter-clockwise loop). */
  readonly turn: number
}

function cornerAt(loop: readonly ProfileCurve[], at: Vec2): Corner | undefined {
  for (let i = 0; i < loop.length; i++) {
    const j = (i + 1) % loop.length
    const a = loop[i]!.curve
    const b = loop[j]!.curve
    if (a.kind !== 'line' || b.kind !== 'line' || !near2(a.b, at)) continue
    const [p, q] = [directionOf(a), directionOf(b)]
    return { before: i, after: j, a, b, turn: Math.atan2(p[0] * q[1] - p[1] * q[0], p[0] * q[0] + p[1] * q[1]) }
  }
  return undefined
}

/** Whether the corner of two straight sides at the point is an inside one; undefined where there is none. */
export function isInsideCorner(loop: readonly ProfileCurve[], at: Vec2): boolean | undefined {
  const corner = cornerAt(loop, at)
  return corner && corner.turn < 0
}

/**
 * How far the side after an outside corner leans away from square, mm a mm of depth: 0 where it is square or turns back.
 * The corner of a vee's mouth of 90° leans 1.
 */
export function leanAt(loop: readonly ProfileCurve[], at: Vec2): number {
  const turn = cornerAt(loop, at)?.turn ?? 0
  return turn > 0 ? Math.max(0, 1 / Math.tan(turn)) : 0
}

/** Rounds the corner of two straight sides with an arc tangent to both. */
export function roundCorner(loop: readonly ProfileCurve[], at: Vec2, r: number, face: string): CornerResult {
  const corner = cornerAt(loop, at)
  if (!corner) return undefined
  const back = r * Math.tan(Math.abs(corner.turn) / 2)
  const room = Math.min(lengthOfLine(corner.a), lengthOfLine(corner.b))
  if (back > room + NEAR) return { room: room / Math.tan(Math.abs(corner.turn) / 2) }
  const p = moved(at, directionOf(corner.a), -back)
  const q = moved(at, directionOf(corner.b), back)
  const left = Math.sign(corner.turn)
  const d = directionOf(corner.a)
  const c: Vec2 = [p[0] - left * r * d[1], p[1] + left * r * d[0]]
  const arc: Arc2 = { kind: 'arc', c, r, from: Math.atan2(p[1] - c[1], p[0] - c[0]), sweep: corner.turn }
  return { curves: spliced(loop, corner, p, q, [{ curve: arc, face }]), angle: corner.turn }
}

/** How far a chamfer is set back along one side of its corner. */
export type BackOf = (face: string, line: Line2) => number

/** Cuts the corner straight, set back along each of its two sides by what `backOf` says of that side. */
export function chamferCorner(loop: readonly ProfileCurve[], at: Vec2, backOf: BackOf, face: string): CornerResult {
  const corner = cornerAt(loop, at)
  if (!corner) return undefined
  const backBefore = backOf(loop[corner.before]!.face, corner.a)
  const backAfter = backOf(loop[corner.after]!.face, corner.b)
  if (backBefore > lengthOfLine(corner.a) + NEAR) return { room: lengthOfLine(corner.a) }
  if (backAfter > lengthOfLine(corner.b) + NEAR) return { room: lengthOfLine(corner.b) }
  const p = moved(at, directionOf(corner.a), -backBefore)
  const q = moved(at, directionOf(corner.b), backAfter)
  return {
    curves: spliced(loop, corner, p, q, [{ curve: { kind: 'line', a: p, b: q }, face }]),
    angle: corner.turn,
  }
}

function spliced(
  loop: readonly ProfileCurve[],
  corner: Corner,
  p: Vec2,
  q: Vec2,
  between: readonly ProfileCurve[],
): ProfileCurve[] {
  const result: ProfileCurve[] = []
  loop.forEach((c, i) => {
    let curve: Curve2 = c.curve
    if (i === corner.before && curve.kind === 'line') curve = { ...curve, b: p }
    if (i === corner.after && curve.kind === 'line') curve = { ...curve, a: q }
    // a side used up to its end vanishes
    if (curve.kind !== 'line' || !near2(curve.a, curve.b)) result.push({ ...c, curve })
    if (i === corner.before) result.push(...between)
  })
  return result
}

/**
 * Replaces the stretch of a straight side between two of its points by a path that starts at the first and ends at
 * the second in the loop's own direction. Undefined where no side of that name holds the whole stretch strictly inside.
 */
export function replaceStretch(
  loop: readonly ProfileCurve[],
  face: string,
  p: Vec2,
  q: Vec2,
  path: (from: Vec2, to: Vec2) => readonly ProfileCurve[],
): ProfileCurve[] | undefined {
  for (let i = 0; i < loop.length; i++) {
    const side = loop[i]!
    const line = side.curve
    if (side.face !== face || line.kind !== 'line') continue
    const s = alongLine(line, p)
    const t = alongLine(line, q)
    const length = lengthOfLine(line)
    if (s === undefined || t === undefined) continue
    if (Math.min(s, t) < NEAR || Math.max(s, t) > length - NEAR) continue
    const [from, to] = s < t ? [p, q] : [q, p]
    return [
      ...loop.slice(0, i),
      { ...side, curve: { kind: 'line', a: line.a, b: from } },
      ...path(from, to),
      { ...side, curve: { kind: 'line', a: to, b: line.b } },
      ...loop.slice(i + 1),
    ]
  }
  return undefined
}

/** Distance along the line where the point lies on it; undefined off it. */
function alongLine(line: Line2, p: Vec2): number | undefined {
  const d = directionOf(line)
  const v: Vec2 = [p[0] - line.a[0], p[1] - line.a[1]]
  if (Math.abs(v[0] * d[1] - v[1] * d[0]) > NEAR) return undefined
  return v[0] * d[0] + v[1] * d[1]
}

/**
 * Takes a rectangle off a square corner: sets the side that comes in back by `backBefore`, the one that goes out by
 * `backAfter`. `faces` names the new sides in loop order.
 */
export function stepCorner(
  loop: readonly ProfileCurve[],
  at: Vec2,
  backOf: (face: string) => number,
  faceParallelTo: (face: string) => string,
): CornerResult {
  const corner = cornerAt(loop, at)
  if (!corner) return undefined
  const [first, second] = [loop[corner.before]!.face, loop[corner.after]!.face]
  // a cut measured from one side sets the other side back
  const backBefore = backOf(second)
  const backAfter = backOf(first)
  if (backBefore >= lengthOfLine(corner.a) - NEAR) return { room: lengthOfLine(corner.a) }
  if (backAfter >= lengthOfLine(corner.b) - NEAR) return { room: lengthOfLine(corner.b) }
  const p = moved(at, directionOf(corner.a), -backBefore)
  const q = moved(at, directionOf(corner.b), backAfter)
  const inner = moved(p, directionOf(corner.b), backAfter)
  return {
    curves: spliced(loop, corner, p, q, [
      { curve: { kind: 'line', a: p, b: inner }, face: faceParallelTo(second) },
      { curve: { kind: 'line', a: inner, b: q }, face: faceParallelTo(first) },
    ]),
    angle: corner.turn,
  }
}

/** Whether the second curve goes on in the direction in which the first ends. */
function goesOnSmoothly(a: Curve2, b: Curve2): boolean {
  const [p, q] = [derivativeAt(a, 1), derivativeAt(b, 0)]
  const size = Math.hypot(...p) * Math.hypot(...q)
  return p[0] * q[0] + p[1] * q[1] > 0 && Math.abs(p[0] * q[1] - p[1] * q[0]) < NEAR * size
}

/** Sharp corners between curves, with the faces that meet there: no edge stands where one goes on smoothly. */
export function cornersOf(
  loop: readonly ProfileCurve[],
): { readonly at: Vec2; readonly faces: readonly [string, string] }[] {
  return loop.flatMap((c, i) => {
    const next = loop[(i + 1) % loop.length]!
    if (goesOnSmoothly(c.curve, next.curve)) return []
    return [{ at: endOf(c.curve), faces: [c.face, next.face] as const }]
  })
}

/** Whether the loop closes and does not cross itself; the index of an offending side otherwise. */
export function loopFault(
  loop: readonly Curve2[],
): { readonly kind: 'open' | 'crossing'; readonly index: number } | undefined {
  for (let i = 0; i < loop.length; i++) {
    if (!near2(endOf(loop[i]!), startOf(loop[(i + 1) % loop.length]!))) return { kind: 'open', index: i }
  }
  for (let i = 0; i < loop.length; i++) {
    for (let j = i + 1; j < loop.length; j++) {
      const neighbours = j === i + 1 || (i === 0 && j === loop.length - 1)
      if (cross2(loop[i]!, loop[j]!, neighbours)) return { kind: 'crossing', index: j }
    }
  }
  return undefined
}

/** Whether two curves meet anywhere but, for neighbours, at their shared ends. */
function cross2(a: Curve2, b: Curve2, neighbours: boolean): boolean {
  return meetings(a, b).some((p) => !(neighbours && isEnd(a, p) && isEnd(b, p)))
}

const isEnd = (c: Curve2, p: Vec2) =>
  Math.hypot(p[0] - startOf(c)[0], p[1] - startOf(c)[1]) < 1e-6 ||
  Math.hypot(p[0] - endOf(c)[0], p[1] - endOf(c)[1]) < 1e-6

function meetings(a: Curve2, b: Curve2): Vec2[] {
  if (a.kind === 'line' && b.kind === 'line') return lineLine(a, b)
  if (a.kind === 'line' && b.kind === 'arc') return lineArc(a, b)
  if (a.kind === 'arc' && b.kind === 'line') return lineArc(b, a)
  if (a.kind === 'arc' && b.kind === 'arc') return arcArc(a, b)
  return []
}

function lineLine(a: Line2, b: Line2): Vec2[] {
  const d = directionOf(a)
  const e = directionOf(b)
  const det = d[0] * e[1] - d[1] * e[0]
  const w: Vec2 = [b.a[0] - a.a[0], b.a[1] - a.a[1]]
  if (Math.abs(det) < 1e-12) {
    if (Math.abs(w[0] * d[1] - w[1] * d[0]) > NEAR) return []
    const s = w[0] * d[0] + w[1] * d[1]
    const t = s + (e[0] * d[0] + e[1] * d[1]) * lengthOfLine(b)
    const lo = Math.max(0, Math.min(s, t))
    const hi = Math.min(lengthOfLine(a), Math.max(s, t))
    if (hi < lo - NEAR) return []
    return hi - lo < NEAR ? [moved(a.a, d, lo)] : [moved(a.a, d, (lo + hi) / 2)]
  }
  const s = (w[0] * e[1] - w[1] * e[0]) / det
  const t = (w[0] * d[1] - w[1] * d[0]) / det
  const on = (v: number, l: Line2) => v > -NEAR && v < lengthOfLine(l) + NEAR
  return on(s, a) && on(t, b) ? [moved(a.a, d, s)] : []
}

function lineArc(l: Line2, arc: Arc2): Vec2[] {
  const d = directionOf(l)
  const w: Vec2 = [arc.c[0] - l.a[0], arc.c[1] - l.a[1]]
  const foot = w[0] * d[0] + w[1] * d[1]
  const off = Math.abs(w[0] * d[1] - w[1] * d[0])
  if (off > arc.r + NEAR) return []
  const half = Math.sqrt(Math.max(0, arc.r ** 2 - off ** 2))
  return [foot - half, foot + half]
    .filter((s) => s > -NEAR && s < lengthOfLine(l) + NEAR)
    .map((s) => moved(l.a, d, s))
    .filter((p) => onArc(arc, p))
}

function arcArc(a: Arc2, b: Arc2): Vec2[] {
  const d: Vec2 = [b.c[0] - a.c[0], b.c[1] - a.c[1]]
  const l = Math.hypot(d[0], d[1])
  if (l < NEAR || l > a.r + b.r + NEAR || l < Math.abs(a.r - b.r) - NEAR) return []
  const x = (l * l + a.r ** 2 - b.r ** 2) / (2 * l)
  const y = Math.sqrt(Math.max(0, a.r ** 2 - x * x))
  return [y, -y]
    .map((h): Vec2 => [a.c[0] + (x * d[0] - h * d[1]) / l, a.c[1] + (x * d[1] + h * d[0]) / l])
    .filter((p) => onArc(a, p) && onArc(b, p))
}

function onArc(arc: Arc2, p: Vec2): boolean {
  const angle = Math.atan2(p[1] - arc.c[1], p[0] - arc.c[0])
  const turn = 2 * Math.PI
  let d = (angle - arc.from) * Math.sign(arc.sweep)
  d -= Math.floor(d / turn) * turn
  const slack = 1e-9
  return d <= Math.abs(arc.sweep) + slack || turn - d < slack
}

/** Smallest distance from a point to the loop, and whether the point is inside it. */
export function clearance(loop: readonly Curve2[], p: Vec2): { readonly distance: number; readonly inside: boolean } {
  let distance = Infinity
  let winding = 0
  for (const c of loop) {
    distance = Math.min(distance, distanceTo(c, p))
    winding += turnAround(c, p)
  }
  return { distance, inside: Math.abs(winding) > Math.PI }
}

function distanceTo(c: Curve2, p: Vec2): number {
  if (c.kind === 'line') {
    const d = directionOf(c)
    const s = (p[0] - c.a[0]) * d[0] + (p[1] - c.a[1]) * d[1]
    const q = moved(c.a, d, Math.min(lengthOfLine(c), Math.max(0, s)))
    return Math.hypot(p[0] - q[0], p[1] - q[1])
  }
  if (c.kind === 'arc') {
    const ends = [startOf(c), endOf(c)].map((e) => Math.hypot(p[0] - e[0], p[1] - e[1]))
    const l = Math.hypot(p[0] - c.c[0], p[1] - c.c[1])
    const foot: Vec2 =
      l < NEAR ? startOf(c) : [c.c[0] + ((p[0] - c.c[0]) * c.r) / l, c.c[1] + ((p[1] - c.c[1]) * c.r) / l]
    return onArc(c, foot) ? Math.abs(l - c.r) : Math.min(...ends)
  }
  return Infinity
}

/** Angle by which the direction from p to the curve turns along it. */
function turnAround(c: Curve2, p: Vec2): number {
  const steps = c.kind === 'line' ? 1 : Math.max(4, Math.ceil(Math.abs((c as Arc2).sweep) * 4))
  let sum = 0
  let last = startOf(c)
  for (let i = 1; i <= steps; i++) {
    const next = i === steps ? endOf(c) : pointOnArc(c as Arc2, i / steps)
    const [a, b]: [Vec2, Vec2] = [
      [last[0] - p[0], last[1] - p[1]],
      [next[0] - p[0], next[1] - p[1]],
    ]
    sum += Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1])
    last = next
  }
  return sum
}

const pointOnArc = (c: Arc2, t: number): Vec2 => {
  const a = c.from + t * c.sweep
  return [c.c[0] + c.r * Math.cos(a), c.c[1] + c.r * Math.sin(a)]
}
