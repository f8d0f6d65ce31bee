import { describe, expect, it } from 'vitest'
import { auditSizes } from '../../../src/sheet/placement/audit.ts'
import { spread } from '../../../src/sheet/placement/ordinate-units.ts'
import { placeDimensions } from '../../../src/sheet/placement/place-dimensions.ts'
import { roomFor } from '../../../src/sheet/placement/room-for.ts'
import type { ViewLine } from '../../../src/views/view.ts'
import {
  across,
  bracket,
  field,
  hole,
  note,
  place,
  plateOfHoles,
  rect,
  seg,
  sheetOf,
  sizeSet,
  upward,
  view,
} from './fixtures.ts'
import { randomOf } from './random-sheet.ts'

const plate = () => place(view('top', rect(0, 0, 80, 40), { min: [0, 0], max: [80, 40] }), [150, 120])
const bounds = { min: [10, 10], max: [410, 287] } as const

describe('placing sizes', () => {
  it('leaves off what has no room, says so, and never prints over anything', () => {
    const c = plateOfHoles(40, 'ASME')
    const views = c.views.map((v) => place(v.view, [60, 60]))
    const box = views[0]!.placed.box
    // A field hardly larger than the plate.
    const tight = { min: [40, 40], max: [box.max[0] + 80, box.max[1] + 80] } as const
    const r = placeDimensions({ ...c, views, obstacles: [], bounds: tight })
    expect(r.unplaced.length).toBeGreaterThan(0)
    const marks = r.marks.filter((m) => m.rule === 'no-room-for-size')
    expect(marks.length).toBeGreaterThan(0)
    for (const m of marks) {
      expect(m.weight).toBe('must change')
      expect(m.expected).toMatch(/detail view/)
    }
    expect(marks.some((m) => /hole table/.test(m.expected ?? ''))).toBe(true)
    const drawn = new Set(r.items.map((i) => i.tie?.dimension))
    for (const id of r.unplaced) expect(drawn.has(id)).toBe(false)
    const audit = auditSizes(sheetOf(views, r.items, 420, 297), 'ASME')
    expect([audit.textOnText, audit.textOnLine, audit.arrowCollisions]).toEqual([0, 0, 0])
  })

  it('finds room for a size with a datum letter over large rounds, which are the edge’s own', () => {
    // Rounded on all four corners: the upright edges are 4 mm, the rounds beside them 8.
    const corner = (x: number, y: number, from: number): ViewLine => ({
      curve: { kind: 'arc', c: [x, y], r: 8, from, sweep: Math.PI / 2 },
      kind: 'visible',
      sources: [],
    })
    const lines = [
      ...[seg([8, 0], [72, 0]), seg([80, 8], [80, 12]), seg([8, 20], [72, 20]), seg([0, 8], [0, 12])],
      ...[corner(72, 12, 0), corner(8, 12, Math.PI / 2), corner(8, 8, Math.PI), corner(72, 8, 1.5 * Math.PI)],
    ]
    const lying = place(view('front', lines, { min: [0, 0], max: [80, 20] }), [150, 120])
    const signs = [{ kind: 'datum' as const, id: 'datum B', letter: 'B', span: { from: 0, to: 1 } }]
    const length = across('front', [0, 10], [80, 10], '80', { signs })
    const r = placeDimensions({ views: [lying], sizes: sizeSet([length]), practice: 'ISO', obstacles: [], bounds })
    expect(r.unplaced).toEqual([])
    expect(r.items.filter((i) => i.tie?.dimension === 'datum B' && i.item === 'fill')).toHaveLength(1)
  })

  it('keeps shoulders off the outline, and leaders off its corners (common practice, no source)', () => {
    for (const practice of ['ASME', 'ISO'] as const) {
      for (let k = 0; k < 24; k++) {
        const c = [6 + 3 * (k % 6), 40 - 7 - 1.3 * k] as const
        const lines = [...rect(0, 0, 80, 40), ...hole([c[0], Math.max(5, c[1])], 2)]
        const views = [place(view('top', lines, { min: [0, 0], max: [80, 40] }), [150, 120])]
        const callout = note('top', [[c[0], Math.max(5, c[1])]], 2, '20X M4')
        const { items } = placeDimensions({ views, sizes: sizeSet([callout]), practice, obstacles: [], bounds })
        const leaders = items.flatMap((i) => (i.item === 'stroke' && i.kind === 'leader' ? [i.curve] : []))
        expect(leaders.length).toBeGreaterThan(1)
        for (const l of leaders) {
          if (l.kind !== 'line') continue
          const level = l.a[1] === l.b[1]
          const beside = Math.max(l.a[0], l.b[0]) > 151 && Math.min(l.a[0], l.b[0]) < 229
          if (level && beside) for (const y of [120, 160]) expect(Math.abs(l.a[1] - y)).toBeGreaterThan(2.5)
          if (level) continue
          const [ux, uy] = [l.b[0] - l.a[0], l.b[1] - l.a[1]]
          for (const [x, y] of [
            [150, 120],
            [230, 120],
            [150, 160],
            [230, 160],
          ] as const) {
            const t = ((x - l.a[0]) * ux + (y - l.a[1]) * uy) / (ux * ux + uy * uy)
            const off = Math.abs((x - l.a[0]) * uy - (y - l.a[1]) * ux) / Math.hypot(ux, uy)
            expect(t > 0 && t < 1 && off < 1, `${practice} ${k}`).toBe(false)
          }
        }
      }
    }
  })

  it('stays within the bounds and off the obstacles', () => {
    const c = bracket('ISO')
    const obstacles = [
      { min: [60, 110], max: [89, 160] },
      { min: [160, 40], max: [216, 130] },
    ] as const
    const r = placeDimensions({ ...c, obstacles, bounds: field(c.width, c.height) })
    for (const i of r.items) {
      if (i.item !== 'stroke' || i.curve.kind !== 'line') continue
      for (const t of [0, 0.25, 0.5, 0.75, 1]) {
        const x = i.curve.a[0] + t * (i.curve.b[0] - i.curve.a[0])
        const y = i.curve.a[1] + t * (i.curve.b[1] - i.curve.a[1])
        for (const o of obstacles) expect(x > o.min[0] && x < o.max[0] && y > o.min[1] && y < o.max[1]).toBe(false)
      }
    }
  })

  it('honours a wish for side and row, by the part’s own sides', () => {
    const level = (wish: object) => {
      const r = placeDimensions({
        views: [plate()],
        sizes: sizeSet([across('top', [0, 0], [80, 0], '80', { id: 'w', wish })]),
        practice: 'ISO',
        obstacles: [],
        bounds,
      })
      const s = r.items.find((i) => i.item === 'stroke' && i.kind === 'dimension')
      return s?.item === 'stroke' && s.curve.kind === 'line' ? s.curve.a[1] : undefined
    }
    // The fixtures' frame looks from the front: up on paper is the part's top. Outline from 120 to 160; rows every 8 mm.
    expect(level({ side: 'top' })).toBe(170)
    expect(level({ side: 'bottom' })).toBe(110)
    expect(level({ side: 'top', row: 3 })).toBe(186)
  })

  it('says where the drafter’s wish cannot be met, and stands the size elsewhere', () => {
    const span = { from: 40, to: 60 }
    const place = (wish: object, room = bounds as { min: readonly [number, number]; max: readonly [number, number] }) =>
      placeDimensions({
        views: [plate()],
        sizes: sizeSet([across('top', [0, 0], [80, 0], '80', { id: 'w', wish })]),
        practice: 'ISO',
        obstacles: [],
        bounds: room,
        wishSpan: () => span,
      })
    // No row 99; and a level size has no place left of its view.
    for (const wish of [{ row: 99 }, { side: 'left' }]) {
      const r = place(wish)
      expect(r.unplaced).toEqual([])
      expect(r.marks.map((m) => [m.rule, m.span])).toEqual([['place-not-met', span]])
    }
    // Row 3 above would be at 186, beyond the field.
    const tight = place({ side: 'top', row: 3 }, { min: [10, 10], max: [410, 180] })
    expect(tight.unplaced).toEqual([])
    expect(tight.marks.map((m) => m.rule)).toEqual(['place-not-met'])
    expect(place({ side: 'top', row: 3 }).marks).toEqual([])
  })

  it('draws the origin of a hole table: a circle at the origin, axes with their letters clear of the outline', () => {
    // ISO 129-1:2018 §9.4 and ASME Y14.5-2018 Fig. 4-49, from memory.
    const row = { tag: 'A1', x: '20', y: '10', size: { lines: [['⌀6']] }, at: [20, 10] as const, feature: 'hole 1' }
    const lines = [...rect(0, 0, 80, 40), ...hole([20, 10], 3)]
    const r = placeDimensions({
      views: [place(view('top', lines, { min: [0, 0], max: [80, 40] }), [150, 120])],
      sizes: sizeSet([], [{ view: 'top', origin: [0, 0], rows: [row] }]),
      practice: 'ISO',
      obstacles: [],
      bounds,
    })
    expect(r.unplaced).toEqual([])
    const circles = r.items.flatMap((i) => (i.item === 'stroke' && i.curve.kind === 'arc' ? [i.curve] : []))
    expect(circles.map((c) => c.c)).toEqual([[150, 120]])
    const at = (t: string) => r.items.flatMap((i) => (i.item === 'text' && i.text === t ? [i.at] : []))[0]!
    // Each letter stands past the origin the way its coordinate grows, off the plate.
    expect(at('X')[0]).toBeGreaterThan(150)
    expect(at('X')[1]).toBeLessThan(120)
    expect(at('Y')[1]).toBeGreaterThan(120)
    expect(at('Y')[0]).toBeLessThan(150)
    const tips = r.items.flatMap((i) => (i.item === 'fill' && i.outline[0]!.kind === 'line' ? [i.outline[0]!.a] : []))
    expect(tips.some((t) => t[0] > 150 && t[1] < 120)).toBe(true)
    expect(tips.some((t) => t[0] < 150 && t[1] > 120)).toBe(true)
  })

  it('says when a size stands in a view that is not on the sheet', () => {
    const r = placeDimensions({
      views: [plate()],
      sizes: sizeSet([upward('left', [0, 0], [0, 40], '40', { span: { from: 3, to: 5 } })]),
      practice: 'ISO',
      obstacles: [],
      bounds,
    })
    expect(r.items).toEqual([])
    expect(r.marks).toMatchObject([{ rule: 'size-without-view', span: { from: 3, to: 5 } }])
  })

  it('ties every item to its size, its feature and its place in the brief', () => {
    const span = { from: 10, to: 14 }
    const lines = [...rect(0, 0, 80, 40), ...hole([40, 20], 5)]
    const r = placeDimensions({
      views: [place(view('top', lines, { min: [0, 0], max: [80, 40] }), [150, 120])],
      sizes: sizeSet([note('top', [[40, 20]], 5, '⌀10', { id: 'h', feature: 'hole 1', span })]),
      practice: 'ASME',
      obstacles: [],
      bounds,
    })
    expect(r.items.length).toBeGreaterThan(3)
    for (const i of r.items) expect(i.tie).toMatchObject({ view: 'top', dimension: 'h', features: ['hole 1'], span })
  })

  it('puts the tags of a hole table beside their holes', () => {
    const c = plateOfHoles(12, 'ISO', true)
    const r = placeDimensions({ ...c, obstacles: [], bounds: field(c.width, c.height) })
    for (const row of c.sizes.tables[0]!.rows) {
      const tag = r.items.find((i) => i.item === 'text' && i.text === row.tag)
      if (tag?.item !== 'text') throw new Error(`no tag ${row.tag}`)
      const d = Math.hypot(tag.at[0] - 120 - row.at[0], tag.at[1] - 120 - row.at[1])
      // Nearest hole is 24 mm away: a tag within 12 mm cannot be taken for its neighbour's.
      expect(d).toBeLessThan(12)
    }
  })
})

describe('room for sizes', () => {
  it('holds everything that is placed when a view stands alone', () => {
    const c = bracket('ASME')
    for (const { view: v } of c.views) {
      const own = sizeSet(c.sizes.dimensions.filter((d) => d.view === v.id))
      const room = roomFor(own, { views: [v], reasons: [] }, 1, 'ASME')[v.id]!
      const at = place(v, [200, 150])
      const tight = {
        min: [200 + v.box.min[0] - room.left - 0.01, 150 + v.box.min[1] - room.bottom - 0.01],
        max: [200 + v.box.max[0] + room.right + 0.01, 150 + v.box.max[1] + room.top + 0.01],
      } as const
      const r = placeDimensions({ views: [at], sizes: own, practice: 'ASME', obstacles: [], bounds: tight })
      expect(r.unplaced).toEqual([])
    }
  })

  it('asks for the first row and the text beyond it, by hand', () => {
    const v = view('top', rect(0, 0, 80, 40), { min: [0, 0], max: [80, 40] })
    const room = roomFor(sizeSet([across('top', [0, 0], [80, 0], '80')]), { views: [v], reasons: [] }, 1, 'ASME').top!
    // Row at 10 mm, extension lines 3 mm past it; nothing on the other sides.
    expect(room.top).toBeCloseTo(13, 6)
    expect([room.left, room.right, room.bottom]).toEqual([0, 0, 0])
  })
})

describe('spreading running sizes', () => {
  it('is the least-squares answer: no single or joint move of neighbours does better', () => {
    const random = randomOf(5)
    const cost = (t: readonly number[], s: readonly number[]) => t.reduce((sum, x, i) => sum + (x - s[i]!) ** 2, 0)
    for (let round = 0; round < 200; round++) {
      const n = 2 + Math.floor(random() * 8)
      const s = Array.from({ length: n }, () => random() * 40).sort((a, b) => a - b)
      const need = Array.from({ length: n - 1 }, () => 2 + random() * 6)
      const t = spread(s, need)
      const allowed = (x: readonly number[]) => need.every((d, i) => x[i + 1]! - x[i]! >= d - 1e-9)
      expect(allowed(t)).toBe(true)
      // The problem is convex: a better point would show in some small feasible move.
      for (let trial = 0; trial < 60; trial++) {
        const [from, to] = [Math.floor(random() * n), Math.floor(random() * n)].sort((a, b) => a - b) as [
          number,
          number,
        ]
        const step = (random() - 0.5) * 0.2
        const moved = t.map((x, i) => (i >= from && i <= to ? x + step : x))
        if (allowed(moved)) expect(cost(moved, s)).toBeGreaterThan(cost(t, s) - 1e-9)
      }
    }
  })
})
