import { describe, expect, it } from 'vitest'
import { characteristics } from '../../src/brief/frame/frame.ts'
import { boxOfCurves } from '../../src/geometry/evaluate.ts'
import { datumBoxArt, hangingDatum, standingDatum, triangle } from '../../src/sheet/signs/datum-art.ts'
import { frameArt } from '../../src/sheet/signs/frame-art.ts'
import { textureArt } from '../../src/sheet/signs/texture-art.ts'
import type { Sign } from '../../src/sizes/annotation.ts'

// Proportions of ISO 7083 and of ASME Y14.5-2018 Appendix C, in lettering heights, from memory: rows and least
// compartments 2h, datum boxes 2h; texture symbol legs at 60° (ISO 21920-1, from memory).
const h = 3.5
const span = { from: 0, to: 1 }
type Frame = Extract<Sign, { kind: 'frame' }>
const frame = (...rows: Frame['rows'][number][]): Frame => ({
  kind: 'frame',
  id: 'frame 1',
  rows,
  allAround: false,
  span,
})
const datum = (letter: string) => ({ kind: 'datum' as const, id: `datum ${letter}`, letter, span })

describe('a tolerance frame', () => {
  it.each(Object.values(characteristics).map((c) => [c.symbol] as const))('keeps %s clear of its lines', (symbol) => {
    const art = frameArt(frame({ symbol, cells: ['0.1', 'A'] }), h)
    expect(art.height).toBe(2 * h)
    const box = boxOfCurves(art.glyphs[0]!.strokes)
    expect(box.min[1]).toBeGreaterThanOrEqual(0.2 * h)
    expect(box.max[1]).toBeLessThanOrEqual(1.8 * h)
    expect((box.min[1] + box.max[1]) / 2).toBeCloseTo(h, 9)
    // The first upright line after the left edge closes the symbol's compartment.
    const uprights = art.strokes.flatMap((c) => (c.kind === 'line' && c.a[0] === c.b[0] && c.a[0] > 0 ? [c.a[0]] : []))
    const first = Math.min(...uprights)
    expect(first).toBeGreaterThanOrEqual(2 * h)
    expect(box.min[0]).toBeGreaterThan(0.2 * h)
    expect(box.max[0]).toBeLessThan(first - 0.2 * h)
    expect((box.min[0] + box.max[0]) / 2).toBeCloseTo(first / 2, 9)
  })

  it('has compartments of 2h at the least, and wider ones for long words', () => {
    const art = frameArt(frame({ symbol: '⌖', cells: ['⌀0.014 Ⓜ', 'A', 'B-C'] }), h)
    const xs = [...new Set(art.strokes.flatMap((c) => (c.kind === 'line' && c.a[0] === c.b[0] ? [c.a[0]] : [])))].sort(
      (a, b) => a - b,
    )
    const widths = xs.slice(1).map((x, i) => x - xs[i]!)
    expect(widths).toHaveLength(4)
    for (const w of widths) expect(w).toBeGreaterThanOrEqual(2 * h - 1e-9)
    expect(widths[1]!).toBeGreaterThan(4 * h)
    expect(widths[2]!).toBeCloseTo(2 * h, 9)
  })

  it('draws the symbol of a composite once, in the middle of its rows, and that of single rows in each', () => {
    const composite = frameArt(frame({ symbol: '⌖', cells: ['⌀.02', 'A', 'B'] }, { cells: ['⌀.01', 'A'] }), h)
    expect(composite.glyphs).toHaveLength(1)
    const box = boxOfCurves(composite.glyphs[0]!.strokes)
    expect((box.min[1] + box.max[1]) / 2).toBeCloseTo(2 * h, 9)
    // Datum A of both rows stands in one column.
    const a = composite.texts.filter((t) => t.text === 'A')
    expect(a).toHaveLength(2)
    expect(a[0]!.at[0]).toBeCloseTo(a[1]!.at[0], 9)
    const single = frameArt(frame({ symbol: '⌖', cells: ['⌀.02', 'A'] }, { symbol: '⌖', cells: ['⌀.01', 'A'] }), h)
    expect(single.glyphs).toHaveLength(2)
  })
})

describe('a datum letter', () => {
  it('stands in a box of 2h, wider for two letters', () => {
    expect(datumBoxArt(datum('A'), h)).toMatchObject({ width: 2 * h, height: 2 * h })
    expect(datumBoxArt(datum('WW'), h).width).toBeGreaterThan(2 * h)
  })

  it('has an equilateral triangle whose base lies on the line', () => {
    const corners = triangle([10, 20], [0, 1], h).flatMap((c) => (c.kind === 'line' ? [c.a] : []))
    const sides = corners.map((p, i) => {
      const q = corners[(i + 1) % 3]!
      return Math.hypot(p[0] - q[0], p[1] - q[1])
    })
    for (const s of sides) expect(s).toBeCloseTo(sides[0]!, 9)
    expect(corners.filter((p) => Math.abs(p[1] - 20) < 1e-9)).toHaveLength(2)
  })

  it.each([[[1, 0]], [[0, -1]], [[-0.6, 0.8]]] as const)('touches its box with the line along %s', (way) => {
    const { art, centre } = standingDatum(datum('A'), way, 5, h)
    const stem = art.strokes[0]!
    if (stem.kind !== 'line') throw new Error('the stem is a line')
    const end = stem.b
    const off = Math.max(Math.abs(end[0] - centre[0]), Math.abs(end[1] - centre[1]))
    expect(off).toBeCloseTo(h, 9)
  })

  it('hangs from the upper edge', () => {
    const art = hangingDatum(datum('A'), h, 0)
    const fill = boxOfCurves(art.fills[0]!)
    expect(fill.max[1]).toBeCloseTo(art.height, 9)
  })
})

describe('a texture symbol', () => {
  const texture = (more: Partial<Extract<Sign, { kind: 'texture' }>>) =>
    textureArt({ kind: 'texture', id: 'texture 1', value: 'Ra 0.8', removal: 'any', span, ...more }, h)

  it('has legs at 60° that meet in its point', () => {
    const { strokes, point } = texture({})
    for (const c of strokes.slice(0, 2)) {
      if (c.kind !== 'line') throw new Error('legs are lines')
      const slope = Math.abs((c.b[1] - c.a[1]) / (c.b[0] - c.a[0]))
      expect(Math.atan(slope)).toBeCloseTo(Math.PI / 3, 9)
    }
    expect(point).toBeGreaterThan(0)
  })

  it('has a bar for machining, a circle against it, and neither where the shop may choose', () => {
    const circles = (a: ReturnType<typeof texture>) => a.strokes.filter((c) => c.kind === 'arc').length
    expect([texture({}).strokes.length, circles(texture({}))]).toEqual([3, 0])
    expect([texture({ removal: 'required' }).strokes.length, circles(texture({ removal: 'required' }))]).toEqual([4, 0])
    const none = texture({ removal: 'prohibited' })
    const arc = none.strokes.find((c) => c.kind === 'arc')
    if (arc?.kind !== 'arc') throw new Error('no circle')
    // It touches both legs: their distance from the middle is the radius.
    const gap = Math.abs((arc.c[1] - 0) * Math.cos(Math.PI / 3))
    expect(gap).toBeCloseTo(arc.r, 9)
  })

  it('keeps value and lay clear of the long leg', () => {
    const { texts, point } = texture({ lay: 'X', process: 'ground' })
    for (const t of texts.filter((x) => x.text !== 'ground')) {
      const leg = point + (t.at[1] + h) / Math.tan(Math.PI / 3)
      expect(t.at[0]).toBeGreaterThan(leg + 0.15 * h)
    }
  })
})
