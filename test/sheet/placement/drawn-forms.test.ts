import { describe, expect, it } from 'vitest'
import type { Vec2 } from '../../../src/geometry/vec.ts'
import { placeDimensions } from '../../../src/sheet/placement/place-dimensions.ts'
import type { SheetItem } from '../../../src/sheet/sheet.ts'
import { bracket, field, place, plateOfHoles, rect, shaft, size, sizeSet, upward, view } from './fixtures.ts'

type Case = ReturnType<typeof bracket>

function placed(c: Pick<Case, 'views' | 'sizes' | 'practice' | 'width' | 'height'>) {
  return placeDimensions({ ...c, obstacles: [], bounds: field(c.width, c.height) })
}

function heads(items: readonly SheetItem[]): { length: number; width: number }[] {
  return items.flatMap((i) => {
    if (i.item !== 'fill' || i.kind !== 'arrowhead') return []
    const p = i.outline.map((c): Vec2 => (c.kind === 'line' ? c.a : [0, 0]))
    const d = (a: Vec2, b: Vec2) => Math.hypot(a[0] - b[0], a[1] - b[1])
    const [tip, left, right] = [p[0]!, p[1]!, p[2]!]
    const base: Vec2 = [(left[0] + right[0]) / 2, (left[1] + right[1]) / 2]
    return [{ length: d(tip, base), width: d(left, right) }]
  })
}

const texts = (items: readonly SheetItem[]) => items.filter((i) => i.item === 'text')
const strokes = (items: readonly SheetItem[]) => items.filter((i) => i.item === 'stroke')

describe('drawn forms, ASME', () => {
  const cases = [bracket('ASME'), shaft('ASME')]

  it('heads are filled, three times as long as wide (ASME Y14.2-2014 §3, length-to-width 3:1)', () => {
    for (const c of cases) {
      const all = heads(placed(c).items)
      expect(all.length).toBeGreaterThan(10)
      for (const h of all) expect(h.length / h.width).toBeCloseTo(3, 6)
      for (const h of all) expect(h.length).toBeCloseTo(3, 6)
    }
  })

  it('text is 3 mm and all of it reads from the bottom (ASME Y14.2-2014 Table 1; Y14.5-2018 §4.6.5)', () => {
    for (const c of cases) {
      const all = texts(placed(c).items)
      expect(all.length).toBeGreaterThan(8)
      for (const t of all) expect([t.height, t.angle]).toEqual([3, 0])
    }
  })

  it('breaks the dimension line for the text (ASME Y14.5-2018 §4.5.1)', () => {
    const c = bracket('ASME')
    const r = placed(c)
    const id = c.sizes.dimensions.find((d) => d.callout.lines[0]![0] === '60')!.id
    const lines = strokes(r.items).filter((s) => s.kind === 'dimension' && s.tie?.dimension === id)
    expect(lines).toHaveLength(2)
  })

  it('running sizes have no dimension lines and no heads; a zero stands at the origin (ASME Y14.5-2018 §4.8)', () => {
    const c = plateOfHoles(6, 'ASME')
    const running = c.sizes.dimensions.filter((d) => d.measured.kind === 'ordinate')
    const r = placed({ ...c, sizes: sizeSet(running) })
    expect(heads(r.items)).toHaveLength(0)
    expect(strokes(r.items).filter((s) => s.kind !== 'extension')).toHaveLength(0)
    expect(texts(r.items).filter((t) => t.text === '0')).toHaveLength(2)
  })
})

describe('drawn forms, ISO', () => {
  const cases = [bracket('ISO'), shaft('ISO')]

  it('heads are 30° and ten narrow lines long (ISO 129-1:2018 §5.5, from memory)', () => {
    for (const c of cases) {
      for (const h of heads(placed(c).items)) {
        expect(2 * Math.atan(h.width / 2 / h.length)).toBeCloseTo(Math.PI / 6, 6)
        expect(h.length).toBeCloseTo(2.5, 6)
      }
    }
  })

  it('text is 3.5 mm and reads from the bottom or the right (ISO 3098-1; ISO 129-1:2018 §5.7)', () => {
    for (const c of cases) {
      const all = texts(placed(c).items)
      for (const t of all) {
        expect(t.height).toBe(3.5)
        expect(t.angle > -90 && t.angle <= 90).toBe(true)
      }
      expect(all.some((t) => t.angle === 90)).toBe(true)
    }
  })

  it('keeps the dimension line whole under its text (ISO 129-1:2018 §5.7)', () => {
    const c = bracket('ISO')
    const r = placed(c)
    const id = c.sizes.dimensions.find((d) => d.callout.lines[0]![0] === '60')!.id
    const lines = strokes(r.items).filter((s) => s.kind === 'dimension' && s.tie?.dimension === id)
    expect(lines).toHaveLength(1)
  })

  it('running sizes start at an origin circle of 3 mm and have heads on one line (ISO 129-1:2018 §5.6)', () => {
    const c = plateOfHoles(6, 'ISO')
    const running = c.sizes.dimensions.filter((d) => d.measured.kind === 'ordinate')
    const r = placed({ ...c, sizes: sizeSet(running) })
    const circles = strokes(r.items).flatMap((s) => (s.curve.kind === 'arc' ? [s.curve.r] : []))
    expect(circles).toEqual([1.5, 1.5])
    expect(heads(r.items).length).toBe(running.length)
  })
})

describe('special texts', () => {
  const plate = () => place(view('front', rect(0, 0, 80, 40), { min: [0, 0], max: [80, 40] }), [100, 100])
  const field2 = { min: [10, 10], max: [410, 287] } as const

  it('boxes a basic size and brackets a reference size (ASME Y14.5-2018 §3.3.4, §4.1.4)', () => {
    const r = placeDimensions({
      views: [plate()],
      sizes: sizeSet([
        upward('front', [80, 0], [80, 40], '40', { basic: true, id: 'basic' }),
        upward('front', [0, 0], [0, 40], '40', { reference: true, id: 'ref' }),
      ]),
      practice: 'ASME',
      obstacles: [],
      bounds: field2,
    })
    expect(strokes(r.items).filter((s) => s.kind === 'symbol' && s.tie?.dimension === 'basic')).toHaveLength(4)
    expect(texts(r.items).find((t) => t.tie?.dimension === 'ref')!.text).toBe('(40)')
  })

  it('stands two tolerances one over the other, both within the size (common practice, no source)', () => {
    const r = placeDimensions({
      views: [plate()],
      sizes: sizeSet([upward('front', [80, 0], [80, 40], ['40', { stack: ['+0.2', '-0.1'] }], { id: 's' })]),
      practice: 'ASME',
      obstacles: [],
      bounds: field2,
    })
    const upper = texts(r.items).find((t) => t.text === '+0.2')!
    const lower = texts(r.items).find((t) => t.text === '-0.1')!
    expect(upper.at[1] - lower.at[1]).toBeGreaterThan(3)
    expect(upper.at[0]).toBe(lower.at[0])
  })

  it('aims a leader at an edge from its free side, never level or upright (ASME Y14.5-2018 §4.5.3)', () => {
    const target = { kind: 'point', at: [80, 20], normal: [1, 0] } as const
    const r = placeDimensions({
      views: [plate()],
      sizes: sizeSet([size('front', { kind: 'leader', targets: [target] }, 'GRIND', { id: 'n' })]),
      practice: 'ASME',
      obstacles: [],
      bounds: field2,
    })
    const leader = strokes(r.items).find((s) => s.kind === 'leader')!.curve
    if (leader.kind !== 'line') throw new Error('a leader is straight')
    expect(leader.a).toEqual([180, 120])
    const angle = (Math.atan2(Math.abs(leader.b[1] - leader.a[1]), Math.abs(leader.b[0] - leader.a[0])) * 180) / Math.PI
    expect(leader.b[0]).toBeGreaterThan(leader.a[0])
    expect(angle).toBeGreaterThanOrEqual(15)
    expect(angle).toBeLessThanOrEqual(75)
  })
})
