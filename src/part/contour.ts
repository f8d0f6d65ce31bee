import type { Side } from '../brief/brief.ts'
import type { Vec2 } from '../geometry/vec.ts'
import type { Contour, ContourCorner, ContourPiece, ProfileCurve } from './model.ts'
import { type BackOf, chamferCorner, counterClockwise, roundCorner } from './profile-edit.ts'
import { endSides } from './sides.ts'
import type { Workshop } from './workshop.ts'

/** A stretch of the half section on which outside and inside are each one straight piece. */
interface Stretch {
  readonly a: number
  readonly b: number
  readonly outer: ContourPiece
  readonly inner: ContourPiece | undefined
}

/** Heights at which the turned part begins and ends. */
export function limitsOf(contour: Contour): readonly [number, number] {
  return [contour.outer[0]!.h0, contour.outer[contour.outer.length - 1]!.h1]
}

/** Radius of a piece at a height within it, mm. */
export function radiusAt(piece: ContourPiece, h: number): number {
  if (piece.r0 === piece.r1 || !Number.isFinite(piece.h0) || !Number.isFinite(piece.h1)) return piece.r0
  return piece.r0 + ((h - piece.h0) / (piece.h1 - piece.h0)) * (piece.r1 - piece.r0)
}

/** Radius of the inside at a height, and what made it; undefined where the part is solid. */
export function boreRadiusAt(contour: Contour, h: number): { readonly r: number; readonly name: string } | undefined {
  const here = contour.bores.filter((b) => b.h0 < h && h < b.h1).map((b) => ({ r: radiusAt(b, h), name: b.name }))
  return here.sort((a, b) => b.r - a.r)[0]
}

/** Where the inside reaches the outside: the name of the piece at fault. */
export function contourFault(contour: Contour): { readonly inner: string; readonly outer: string } | undefined {
  for (const s of stretches(contour)) {
    if (!s.inner) continue
    for (const h of [s.a, s.b]) {
      if (radiusAt(s.inner, h) > radiusAt(s.outer, h) - 1e-7) return { inner: s.inner.name, outer: s.outer.name }
    }
  }
  return undefined
}

/**
 * Closed half section in [height, radius], each side named by the face it turns into; sides on the axis have the
 * name ''. Corner work is not in it yet.
 */
export function halfSection(contour: Contour): ProfileCurve[] {
  const all = stretches(contour)
  const [low, high] = endSides[contour.axis]!
  const side: ProfileCurve[] = []
  let at: Vec2 | undefined
  const to = (p: Vec2, face: string) => {
    if (at && Math.hypot(p[0] - at[0], p[1] - at[1]) > 1e-9) {
      const last = side[side.length - 1]
      // one face split by a stretch that begins elsewhere goes on as one side
      if (last && last.face === face && last.curve.kind === 'line' && collinear(last.curve.a, at, p)) {
        side[side.length - 1] = { face, curve: { ...last.curve, b: p } }
      } else side.push({ face, curve: { kind: 'line', a: at, b: p } })
      at = p
    }
    at ??= p
  }
  all.forEach((s, i) => {
    const before = all[i - 1]
    to([s.a, radiusAt(s.outer, s.a)], before ? outerPlane(contour, before.outer, s.outer, s.a, low, high) : '')
    to([s.b, radiusAt(s.outer, s.b)], s.outer.name)
  })
  const last = all[all.length - 1]!
  const first = all[0]!
  to([last.b, last.inner ? radiusAt(last.inner, last.b) : 0], planeAt(contour, last.b, true) ?? `${high} face`)
  for (let i = all.length - 1; i >= 0; i--) {
    const s = all[i]!
    const after = all[i + 1]
    const start: Vec2 = [s.b, s.inner ? radiusAt(s.inner, s.b) : 0]
    if (after) to(start, innerPlane(after.inner, s.inner, after.a, low, high))
    to([s.a, s.inner ? radiusAt(s.inner, s.a) : 0], s.inner?.name ?? '')
  }
  to([first.a, radiusAt(first.outer, first.a)], planeAt(contour, first.a, false) ?? `${low} face`)
  return side
}

function collinear(a: Vec2, b: Vec2, c: Vec2): boolean {
  return Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) < 1e-9
}

/** Name of the flat face where the outside jumps. */
function outerPlane(
  contour: Contour,
  before: ContourPiece,
  after: ContourPiece,
  at: number,
  low: Side,
  high: Side,
): string {
  const falls = radiusAt(before, at) >= radiusAt(after, at)
  // a step goes on behind a groove: it does not begin there
  const named = planeAt(contour, at, falls)
  // a groove that begins at a shoulder has the shoulder for its side
  if (!named && contour.grooves.includes(after)) return `${after.name} ${low} side`
  if (!named && contour.grooves.includes(before)) return `${before.name} ${high} side`
  return named ?? (falls ? `${before.name} ${high} face` : `${after.name} ${low} face`)
}

function planeAt(contour: Contour, h: number, up: boolean): string | undefined {
  return contour.planes.find((p) => p.up === up && Math.abs(p.h - h) < 1e-9)?.name
}

/** Name of the flat face where the inside jumps: the floor of the larger bore, or a side of a groove in it. */
function innerPlane(
  after: ContourPiece | undefined,
  before: ContourPiece | undefined,
  h: number,
  low: Side,
  high: Side,
): string {
  const radius = (p: ContourPiece | undefined) => (p ? radiusAt(p, h) : 0)
  const larger = radius(after) > radius(before) ? after : before
  if (larger?.groove) return `${larger.name} ${larger === after ? low : high} side`
  return `${larger?.name ?? 'bore'} floor`
}

function stretches(contour: Contour): Stretch[] {
  const [start, end] = limitsOf(contour)
  const pieces = [...contour.outer, ...contour.grooves, ...contour.bores]
  const heights = new Set<number>([start, end])
  for (const p of pieces) for (const h of [p.h0, p.h1]) if (h > start && h < end) heights.add(h)
  for (const family of [[...contour.outer, ...contour.grooves], contour.bores]) {
    for (let i = 0; i < family.length; i++) {
      for (let j = i + 1; j < family.length; j++) {
        const h = crossing(family[i]!, family[j]!)
        if (h !== undefined && h > start && h < end) heights.add(h)
      }
    }
  }
  const sorted = [...heights].sort((a, b) => a - b).filter((h, i, list) => i === 0 || h - list[i - 1]! > 1e-9)
  const result: Stretch[] = []
  for (let i = 0; i + 1 < sorted.length; i++) {
    const [a, b] = [sorted[i]!, sorted[i + 1]!]
    const middle = (a + b) / 2
    const covering = (p: ContourPiece) => p.h0 < middle && p.h1 > middle
    const outside = [...contour.outer, ...contour.grooves].filter(covering)
    const inside = contour.bores.filter(covering)
    const outer = outside.reduce((x, y) => (radiusAt(y, middle) < radiusAt(x, middle) ? y : x))
    const inner = inside.reduce<ContourPiece | undefined>(
      (x, y) => (!x || radiusAt(y, middle) > radiusAt(x, middle) ? y : x),
      undefined,
    )
    result.push({ a, b, outer, inner })
  }
  return result
}

function crossing(p: ContourPiece, q: ContourPiece): number | undefined {
  const lo = Math.max(p.h0, q.h0)
  const hi = Math.min(p.h1, q.h1)
  if (hi <= lo || !Number.isFinite(lo) || !Number.isFinite(hi)) return undefined
  const a = radiusAt(p, lo) - radiusAt(q, lo)
  const b = radiusAt(p, hi) - radiusAt(q, hi)
  return a * b < 0 ? lo + ((hi - lo) * a) / (a - b) : undefined
}

/**
 * Set-backs along the sides of a chamfered corner. The leg lies along the axis, also where the side is a taper; the
 * angle is to the axis, so that along the end face the taper's own rise adds to the set-back or takes from it.
 */
function setBacks(curves: readonly ProfileCurve[], corner: ContourCorner): BackOf | undefined {
  const [axial, radial] = corner.back
  const byWay =
    (along: number, across: number): BackOf =>
    (_, line) =>
      Math.abs(line.a[0] - line.b[0]) > 1e-9 ? along : across
  const beside = curves.flatMap(({ curve }) => {
    if (curve.kind !== 'line') return []
    const [near, far] = [curve.a, curve.b].sort((p, q) => distance2(p, corner.at) - distance2(q, corner.at))
    return distance2(near!, corner.at) < 1e-9 ? [[far![0] - near![0], far![1] - near![1]] as const] : []
  })
  const long = beside.find(([h]) => Math.abs(h) > 1e-9)
  const end = beside.find(([h]) => Math.abs(h) <= 1e-9)
  if (!long || !end) return byWay(axial, radial)
  const rise = long[1] / Math.abs(long[0])
  const along = axial * Math.hypot(1, rise)
  const across = radial + (corner.byAngle ? axial * rise * Math.sign(end[1]) : 0)
  return across > 1e-9 ? byWay(along, across) : undefined
}

const distance2 = (p: Vec2, q: Vec2): number => Math.hypot(p[0] - q[0], p[1] - q[1])

/** The half section with its chamfers, rounds and fillets; work that has no room is marked and left out. */
export function cornerWork(shop: Workshop, contour: Contour, section: readonly ProfileCurve[]): ProfileCurve[] {
  let curves = counterClockwise(section)
  for (const corner of contour.corners) {
    const backs = corner.kind === 'chamfer' ? setBacks(curves, corner) : undefined
    const result =
      corner.kind === 'chamfer'
        ? backs && chamferCorner(curves, corner.at, backs, corner.face)
        : roundCorner(curves, corner.at, corner.back[0], corner.face)
    if (result && 'curves' in result) {
      curves = result.curves
      continue
    }
    const what = result ? 'has no room here' : 'meets no sharp edge here'
    shop.must(
      'radius-too-large',
      corner.span,
      `The ${corner.kind} ${what}; it is left out.`,
      `a smaller ${corner.kind}`,
    )
  }
  return curves
}
