import { describe, expect, it } from 'vitest'
import { auditSizes } from '../../../src/sheet/placement/audit.ts'
import { interrupted } from '../../../src/sheet/placement/interrupt.ts'
import { placeDimensions } from '../../../src/sheet/placement/place-dimensions.ts'
import { slab } from '../../../src/sheet/placement/shapes.ts'
import type { SheetItem } from '../../../src/sheet/sheet.ts'
import { across, field, place, seg, sheetOf, sizeSet, upward, view } from './fixtures.ts'

/** A shaft of four steps, axis level; its diameters are marked as such. `tail`: that of the last, mm. */
function shaft(tail = 18) {
  const steps = [
    [40, 20],
    [30, 34],
    [60, 26],
    [40, tail],
  ] as const
  const lines = [seg([0, 0], [170, 0], 'centre', 3)]
  const dimensions = [across('front', [0, -10], [170, -9], '170')]
  let x = 0
  let last = 0
  for (const [l, d] of steps) {
    const r = d / 2
    const m = Math.max(last, r)
    lines.push(seg([x, r], [x + l, r]), seg([x, -r], [x + l, -r]), seg([x, -m], [x, m]))
    dimensions.push(
      upward('front', [x, -r], [x, r], `⌀${d}`, { id: x === 130 ? 'tail' : `d${d}`, direction: 'diameter' }),
    )
    dimensions.push(across('front', [x, -r], [x + l, -r], String(l)))
    x += l
    last = r
  }
  lines.push(seg([x, -last], [x, last]))
  return { views: [place(view('front', lines, { min: [0, -17], max: [170, 17] }), [100, 150])], dimensions }
}

describe('diameters of a turned part (common practice, no source: at the step they measure, not in a stack at the end)', () => {
  it.each(['ASME', 'ISO'] as const)('stand at their own step, %s', (practice) => {
    const { views, dimensions } = shaft()
    const r = placeDimensions({
      views,
      sizes: sizeSet(dimensions),
      practice,
      obstacles: [],
      bounds: field(420, 297),
    })
    expect(r.unplaced).toEqual([])
    expect(r.crossings).toBe(0)
    const items = interrupted(sheetOf(views, [], 420, 297).items, r.texts)
    const { findings } = auditSizes({ ...sheetOf(views, r.items, 420, 297), items: [...items, ...r.items] }, practice)
    expect(findings.filter((f) => f.what !== 'extensionCrossings')).toEqual([])
    // Both middle steps have larger neighbours' faces or room of their own: no extension lines run out to an end.
    for (const [id, from, to] of [
      ['d34', 140, 170],
      ['d26', 170, 230],
    ] as const) {
      const own = r.items.filter((i) => i.tie?.dimension === id)
      expect(own.some((i) => i.item === 'stroke' && i.kind === 'extension')).toBe(false)
      const heads = own.flatMap((i) => (i.item === 'fill' && i.outline[0]!.kind === 'line' ? [i.outline[0]!.a[0]] : []))
      expect(heads.length).toBeGreaterThan(0)
      for (const tip of heads) {
        expect(tip).toBeGreaterThan(from)
        expect(tip).toBeLessThan(to)
      }
    }
  })
})

describe('a size across flats as wide as a step at the end (common practice, no source: at the flats)', () => {
  it.each(['ASME', 'ISO'] as const)('stands at the flats, %s', (practice) => {
    const { views, dimensions } = shaft(26)
    const states = [{ kind: 'flats alike' as const, faces: [1, 2], axis: [1, 0, 0] as const, at: [0, 0, 0] as const }]
    const r = placeDimensions({
      views,
      sizes: sizeSet(
        dimensions.map((d) =>
          d.id === 'd26' && d.direction === 'diameter'
            ? { ...d, id: 'flats', direction: 'up-down', states, callout: { lines: [['□26']] } }
            : d,
        ),
      ),
      practice,
      obstacles: [],
      bounds: field(420, 297),
    })
    expect(r.unplaced).toEqual([])
    const own = r.items.filter((i) => i.tie?.dimension === 'flats')
    expect(own.some((i) => i.item === 'stroke' && i.kind === 'extension')).toBe(false)
    const heads = own.flatMap((i) => (i.item === 'fill' && i.outline[0]!.kind === 'line' ? [i.outline[0]!.a] : []))
    // one at each of two flats that face each other: a leader would be of one face
    expect(heads.map(([, y]) => y.toFixed(3))).toEqual(expect.arrayContaining(['137.000', '163.000']))
    for (const [x] of heads) {
      expect(x).toBeGreaterThan(170)
      expect(x).toBeLessThan(230)
    }
  })
})

describe('the floor of a groove as large as another step', () => {
  // Steps ⌀25 and ⌀24 with a groove 2 wide, ⌀24, in the first (each size at the feature it measures: ASME Y14.5 4.1, from memory).
  const upper: [number, number][] = [
    [0, 12.5],
    [28, 12.5],
    [28, 12],
    [30, 12],
    [30, 12.5],
    [40, 12.5],
    [40, 18],
    [48, 18],
    [48, 12],
    [90, 12],
  ]
  const lines = [seg([0, 0], [90, 0], 'centre', 3), seg([0, -12.5], [0, 12.5]), seg([90, -12], [90, 12])]
  for (const [i, [x, y]] of upper.slice(1).entries()) {
    const [x0, y0] = upper[i]!
    lines.push(seg([x0, y0], [x, y]), seg([x0, -y0], [x, -y]))
  }
  const shaftWithGroove = place(view('front', lines, { min: [0, -18], max: [90, 18] }), [150, 150])

  it.each(['ASME', 'ISO'] as const)('is sized at the groove, %s', (practice) => {
    const more = { direction: 'diameter' }
    const floor = upward('front', [28, -12], [28, 12], '⌀24', { ...more, id: 'floor' })
    const seat = upward('front', [60, -12], [60, 12], '⌀24 h6', { ...more, id: 'seat' })
    const r = placeDimensions({
      views: [shaftWithGroove],
      sizes: sizeSet([floor, seat]),
      practice,
      obstacles: [],
      bounds: field(420, 297),
    })
    expect(r.unplaced).toEqual([])
    const tips = (id: string) =>
      r.items.flatMap((i) =>
        i.tie?.dimension === id && i.item === 'fill' && i.outline[0]!.kind === 'line' ? [i.outline[0]!.a[0]] : [],
      )
    for (const x of tips('floor')) expect(x > 150 + 28 && x < 150 + 30, `${x}`).toBe(true)
    for (const x of tips('seat')) expect(x, `${x}`).toBeGreaterThan(150 + 48)
  })
})

describe('centre lines under text', () => {
  const line = (dashes?: readonly number[]): SheetItem => ({
    item: 'stroke',
    kind: 'centre',
    curve: { kind: 'line', a: [0, 0], b: [60, 0] },
    width: 0.3,
    ...(dashes ? { dashes } : {}),
  })
  const text = slab('text', [30, 0], [1, 0], 4, 2)
  const drawn = (items: readonly SheetItem[]) =>
    items.flatMap((i) => {
      if (i.item !== 'stroke' || i.curve.kind !== 'line') return []
      let at = i.curve.a[0]
      const all = i.dashes ?? [i.curve.b[0] - i.curve.a[0]]
      return all.flatMap((d, k) => {
        const run = [at, at + d]
        at += d
        return k % 2 === 0 ? [run] : []
      })
    })

  it('keep their dashes elsewhere and leave the text clear', () => {
    // Dashes 20, gap 5, dot 2, gap 5, dash 28: the text takes 26 to 34 with clear space.
    const was = [
      [0, 20],
      [25, 27],
      [32, 60],
    ]
    const runs = drawn(interrupted([line([20, 5, 2, 5, 28])], [text]))
    for (const [from, to] of runs) {
      expect(to! <= 26 || from! >= 34).toBe(true)
      expect(was.some(([a, b]) => from! >= a! - 1e-9 && to! <= b! + 1e-9)).toBe(true)
    }
    expect(runs[0]).toEqual([0, 20])
    expect(runs.at(-1)![1]).toBeCloseTo(60, 9)
  })

  it('stay as they are where no text stands, and other lines always', () => {
    const far = slab('text', [30, 20], [1, 0], 4, 2)
    expect(interrupted([line()], [far])).toEqual([line()])
    const visible = { ...line(), kind: 'visible' } as SheetItem
    expect(interrupted([visible], [text])).toEqual([visible])
  })
})
