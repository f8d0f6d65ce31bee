import type { Vec2 } from '../../../src/geometry/vec.ts'
import type { Dimension } from '../../../src/sizes/dimension.ts'
import type { ViewLine } from '../../../src/views/view.ts'
import { across, bore, hole, note, place, polygon, seg, size, sizeSet, upward, view } from './fixtures.ts'

/** Mulberry32. */
export function randomOf(seed: number): () => number {
  let a = seed >>> 0
  return () => {
    a = (a + 0x6d2b79f5) >>> 0
    let t = a
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

/** A made-up part in two views: a plate with steps, a chamfer, rounded corners and holes; sized baseline, chain or running. */
export function randomSheet(seed: number) {
  const random = randomOf(seed)
  const whole = (lo: number, hi: number) => lo + Math.floor(random() * (hi - lo + 1))
  const chance = (p: number) => random() < p
  const practice = chance(0.5) ? ('ASME' as const) : ('ISO' as const)
  const w = whole(30, 150)
  const h = whole(25, 100)
  const depth = whole(6, 40)
  const scale = [0.5, 1, 1, 2][whole(0, 3)]!
  const step = chance(0.5) ? { x: whole(8, Math.floor(w / 2)), y: whole(6, Math.floor(h / 2)) } : undefined
  const chamfer = chance(0.4) ? whole(3, Math.floor(Math.min(w, h) / 5)) : 0
  const round = chance(0.5) ? whole(2, Math.floor(Math.min(w, h) / 5)) : 0
  const points: Vec2[] = [[0, 0]]
  if (step) points.push([w - step.x, 0], [w - step.x, step.y], [w, step.y])
  else points.push([w, 0])
  if (chamfer) points.push([w, h - chamfer], [w - chamfer, h])
  else points.push([w, h])
  const lines: ViewLine[] = []
  if (round) {
    points.push([round, h], [0, h - round])
    const all = polygon(...points)
    lines.push(...all.filter((_, i) => i !== points.length - 2))
    const arc = { kind: 'arc', c: [round, h - round] as Vec2, r: round, from: Math.PI / 2, sweep: Math.PI / 2 } as const
    lines.push({ curve: arc, kind: 'visible', sources: [] })
  } else {
    points.push([0, h])
    lines.push(...polygon(...points))
  }
  const text = (v: number) => String(Math.round(v * 100) / 100)
  const tolerance = () => (chance(0.15) ? [{ stack: ['+0.2', '-0.1'] as [string, string] }] : [])
  const f = 'front'
  const dimensions: Dimension[] = [
    across(f, [0, 0], [w, step ? step.y : 0], [text(w), ...tolerance()]),
    upward(f, [0, 0], [round, h], [text(h), ...tolerance()]),
  ]
  if (step) {
    dimensions.push(across(f, [w - step.x, 0], [w, step.y], text(step.x)))
    dimensions.push(upward(f, [w - step.x, 0], [w, step.y], text(step.y)))
  }
  if (chamfer) {
    const angle = {
      kind: 'angle',
      vertex: [w, h - chamfer],
      from: Math.PI / 2,
      sweep: Math.PI / 4,
      reach: [0, chamfer * Math.SQRT2],
    } as const
    if (chance(0.5)) dimensions.push(size(f, angle, '45°'))
    const target = {
      kind: 'point',
      at: [w - chamfer / 2, h - chamfer / 2],
      normal: [Math.SQRT1_2, Math.SQRT1_2],
    } as const
    dimensions.push(size(f, { kind: 'leader', targets: [target] }, `${text(chamfer)} × 45°`))
  }
  if (round)
    dimensions.push(
      size(
        f,
        { kind: 'radius', centre: [round, h - round], radius: round, from: Math.PI / 2, sweep: Math.PI / 2 },
        `R${round}`,
      ),
    )
  const count = whole(0, 7)
  const scheme = (['baseline', 'chain', 'ordinate', undefined] as const)[whole(0, 3)]
  const centres: Vec2[] = []
  for (let i = 0; i < count * 4 && centres.length < count; i++) {
    const r = whole(2, 6)
    const c: Vec2 = [whole(10, w - 10), whole(10, h - 10)]
    if (step && c[0] > w - step.x - 9 && c[1] < step.y + 9) continue
    if (centres.some((o) => Math.hypot(o[0] - c[0], o[1] - c[1]) < 16)) continue
    centres.push(c)
    lines.push(...hole(c, r))
    const callout = [`⌀${2 * r} THRU`, ...(chance(0.3) ? [`⌴ ⌀${3 * r} ↧ ${r}`] : [])]
    if (chance(0.85))
      dimensions.push(
        note(
          f,
          [c],
          r,
          callout.map((l) => [l]),
        ),
      )
    else dimensions.push(size(f, { kind: 'diameter', centre: c, radius: r }, `⌀${2 * r}`))
  }
  for (const axis of [0, 1] as const) {
    const sorted = [...centres].sort((a, b) => a[axis] - b[axis])
    const group = scheme ? { group: { id: `g${axis}`, scheme } } : {}
    let last: Vec2 = [0, 0]
    for (const c of sorted) {
      if (c[axis] - last[axis] < 0.5) continue
      const make = axis === 0 ? across : upward
      if (scheme === 'ordinate') {
        dimensions.push(
          size(
            f,
            { kind: 'ordinate', datum: [0, 0], point: c, along: axis === 0 ? [1, 0] : [0, 1] },
            text(c[axis]),
            group,
          ),
        )
      } else
        dimensions.push(
          make(f, scheme === 'chain' ? last : [0, 0], c, text(c[axis] - (scheme === 'chain' ? last[axis] : 0)), group),
        )
      last = c
    }
  }
  const gap = 95
  const front = place(view(f, lines, { min: [0, 0], max: [w, h] }), [90, 90], scale)
  const topLines = [...polygon([0, 0], [w, 0], [w, depth], [0, depth])]
  if (step) topLines.push(seg([w - step.x, 0], [w - step.x, depth], 'hidden'))
  for (const c of centres) topLines.push(...bore(c[0], 0, depth, 2))
  const top = place(view('top', topLines, { min: [0, 0], max: [w, depth] }), [90, 90 + h * scale + gap], scale)
  dimensions.push(upward('top', [w, 0], [w, depth], text(depth)))
  if (chance(0.3)) dimensions.push(upward('top', [0, 0], [0, depth], `(${text(depth)})`, { reference: true }))
  return { views: [front, top], sizes: sizeSet(dimensions), practice, width: 841, height: 594 }
}
