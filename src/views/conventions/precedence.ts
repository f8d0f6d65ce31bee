import type { Curve2 } from '../../geometry/curve2.ts'
import { endOf, startOf } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { LineKind, Source, ViewLine } from '../view.ts'
import { type Carrier, curveOn, type Group, groupedByCarrier, periodOf, reachOf } from './carrier.ts'
import { type Interval, rewound, united, unwound, without } from './intervals.ts'
import { nearest } from './nearest.ts'

/** Order in which one line gives way to another drawn in the same place: ASME Y14.2 / ISO 128-2 (from memory). */
const PRECEDENCE: readonly LineKind[] = [
  'visible',
  'hidden',
  'cutting plane',
  'centre',
  'phantom',
  'thread',
  'intersection',
]

/**
 * Draws every place once. Lines on one carrier (collinear, co-circular …) are taken by precedence: each kind is united
 * with its neighbours into the longest unbroken pieces, and what a higher kind already covers is taken off. Sources of
 * everything joined are kept. Nothing shorter than `tolerance` mm comes out.
 */
export function byPrecedence(lines: readonly ViewLine[], tolerance: number): ViewLine[] {
  return groupedByCarrier(lines, tolerance).flatMap((group) => resolved(group, tolerance))
}

function resolved(group: Group<ViewLine>, tolerance: number): ViewLine[] {
  const { carrier, members } = group
  const period = periodOf(carrier)
  const near = reachOf(carrier, tolerance)
  const flat = (on: Interval) => (period === undefined ? [on] : unwound(on, period))
  const out: ViewLine[] = []
  let taken: Interval[] = []
  if (carrier.kind === 'line') out.push(...stubs(carrier, members, near, tolerance))
  for (const kind of PRECEDENCE) {
    const of = members.filter((m) => m.item.kind === kind)
    if (of.length === 0) continue
    const covered = united(
      of.flatMap((m) => flat(m.on)),
      near,
    )
    const free = without(covered, taken, near)
    const joined = period === undefined ? free : rewound(free, period, near)
    for (const on of joined) {
      const over = of.filter((m) => flat(m.on).some((a) => flat(on).some((b) => overlap(a, b) > near)))
      out.push(
        line(
          kind,
          over.map((m) => m.item),
          curveBetween(carrier, on, over, near),
          tolerance,
        ),
      )
    }
    taken = united([...taken, ...covered], near)
  }
  return out
}

/**
 * A centre line whose end lies on an edge that ends there too still shows past the outline (common practice, no source):
 * the covered stretch stays as a line of which only the overruns are drawn. A cutting-plane line there takes its place.
 */
function stubs(carrier: Carrier, members: Group<ViewLine>['members'], near: number, tolerance: number): ViewLine[] {
  const of = (...kinds: readonly LineKind[]) => members.filter((m) => kinds.includes(m.item.kind))
  const centres = of('centre')
  const on = (items: Group<ViewLine>['members']) =>
    united(
      items.map((m) => m.on),
      near,
    )
  const edges = on(of('visible', 'hidden'))
  const planes = on(of('cutting plane'))
  const isOpen = (at: number) => !planes.some((p) => at >= p.from - near && at <= p.to + near)
  return on(centres).flatMap((c) =>
    edges.flatMap((e): ViewLine[] => {
      const covered = { from: Math.max(c.from, e.from), to: Math.min(c.to, e.to) }
      if (covered.to - covered.from <= near) return []
      const over = centres.filter((m) => overlap(m.on, covered) > near)
      const made = line(
        'centre',
        over.map((m) => m.item),
        curveOn(carrier, covered),
        tolerance,
      )
      const passes = (end: number, edge: number) => Math.abs(end - edge) <= near && isOpen(end)
      const overrun: readonly [number, number] = [
        passes(c.from, e.from) ? (made.overrun?.[0] ?? 0) : 0,
        passes(c.to, e.to) ? (made.overrun?.[1] ?? 0) : 0,
      ]
      return overrun[0] > 0 || overrun[1] > 0 ? [{ ...made, overrun, covered: true }] : []
    }),
  )
}

const overlap = (a: Interval, b: Interval) => Math.min(a.to, b.to) - Math.max(a.from, b.from)

/** Keeps the very curve of a member where nothing was joined or cut, and the very end points of straight members. */
function curveBetween(
  carrier: Carrier,
  on: Interval,
  over: readonly { readonly item: ViewLine; readonly on: Interval }[],
  near: number,
): Curve2 {
  const same = over.find((m) => Math.abs(m.on.from - on.from) <= near && Math.abs(m.on.to - on.to) <= near)
  if (same) return same.item.curve
  const curve = curveOn(carrier, on)
  if (curve.kind !== 'line') return curve
  const ends = over.flatMap((m) => [startOf(m.item.curve), endOf(m.item.curve)])
  const snapped = (p: Vec2) => ends.find((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) <= near) ?? p
  return { kind: 'line', a: snapped(curve.a), b: snapped(curve.b) }
}

function line(kind: LineKind, items: readonly ViewLine[], curve: Curve2, tolerance: number): ViewLine {
  const features = [...new Set(items.flatMap((i) => i.features ?? []))]
  const cross: Vec2[] = []
  for (const p of items.flatMap((i) => i.cross ?? [])) {
    const known = cross.some((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) <= tolerance)
    if (!known && nearest(curve, p).distance <= tolerance) cross.push(p)
  }
  const overrun: readonly [number, number] = [
    overrunAt(items, startOf(curve), tolerance),
    overrunAt(items, endOf(curve), tolerance),
  ]
  const { thread, tapped } = items[0] ?? {}
  const slopes = [...new Set(items.flatMap((i) => i.slopes ?? []))]
  return {
    curve,
    kind,
    sources: distinct(items.flatMap((i) => i.sources)),
    ...(thread && items.every((i) => i.thread) ? { thread } : {}),
    ...(tapped && items.every((i) => i.tapped) ? { tapped } : {}),
    ...(slopes.length > 0 ? { slopes } : {}),
    ...(features.length > 0 ? { features } : {}),
    ...(cross.length > 0 ? { cross } : {}),
    ...(items.some((i) => i.overrun) ? { overrun } : {}),
  }
}

/** The overrun that a member has at this point; a new end where a higher kind cut the line gets none. */
function overrunAt(items: readonly ViewLine[], p: Vec2, tolerance: number): number {
  let most: number | undefined
  for (const item of items) {
    if (!item.overrun) continue
    const at = [startOf(item.curve), endOf(item.curve)] as const
    for (const k of [0, 1] as const) {
      if (Math.hypot(p[0] - at[k][0], p[1] - at[k][1]) > 2 * tolerance) continue
      most = Math.max(most ?? -Infinity, item.overrun[k])
    }
  }
  return most ?? 0
}

export function distinct(sources: readonly Source[]): Source[] {
  const seen = new Set<string>()
  return sources.filter((s) => {
    const key = `${s.edge ?? ''}/${s.faces.join(',')}`
    return seen.has(key) ? false : seen.add(key)
  })
}
