import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Header } from '../../src/brief/brief.ts'
import type { Box2 } from '../../src/geometry/evaluate.ts'
import { boxOf as curveBox } from '../../src/geometry/evaluate.ts'
import { layOut } from '../../src/sheet/lay-out.ts'
import { letteringBox } from '../../src/sheet/lettering/lettering.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { formatNamed } from '../../src/standards/formats.ts'
import { ascHeader, blockViews, coverViews, isoHeader, partWith, principal, words } from './fixtures.ts'

const overlap = (a: Box2, b: Box2) =>
  a.min[0] < b.max[0] - 1e-6 && b.min[0] < a.max[0] - 1e-6 && a.min[1] < b.max[1] - 1e-6 && b.min[1] < a.max[1] - 1e-6

/** The title block by its lettering, which must all stand inside it. */
function titleBlockOf(sheet: Sheet): Box2 {
  const boxes = sheet.items.flatMap((i) =>
    i.item === 'text' && i.role === 'title block' ? [letteringBox(i.text, i)] : [],
  )
  const f = formatNamed(sheet.format)!
  const left = Math.min(...boxes.map((b) => b.min[0]))
  const top = Math.max(...boxes.map((b) => b.max[1]))
  return { min: [left, f.margins.bottom], max: [f.width - f.margins.right, top] }
}

const side = fc.double({ min: 4, max: 900, noNaN: true })
const header: fc.Arbitrary<Header> = fc.constantFrom(
  ascHeader,
  isoHeader,
  { ...isoHeader, projection: 'third angle' as const },
  { ...ascHeader, notes: [] },
)

describe('views on the sheet', () => {
  it('never cover one another, the title block, the notes or the stamp, and stay in the frame', () => {
    fc.assert(
      fc.property(header, side, side, side, (h, l, w, t) => {
        const { sheet } = layOut(partWith(h), blockViews(l, w, t), undefined)
        const f = formatNamed(sheet.format)!
        const boxes = sheet.views.map((v) => v.box)
        const texts = sheet.items.flatMap((i) =>
          i.item === 'text' && (i.role === 'note' || i.role === 'stamp') ? [letteringBox(i.text, i)] : [],
        )
        const all = [...boxes, titleBlockOf(sheet), ...texts]
        for (let i = 0; i < boxes.length; i++) {
          for (let k = i + 1; k < all.length; k++) expect(overlap(all[i]!, all[k]!)).toBe(false)
          const b = boxes[i]!
          expect(b.min[0]).toBeGreaterThan(f.margins.left)
          expect(b.min[1]).toBeGreaterThan(f.margins.bottom)
          expect(b.max[0]).toBeLessThan(f.width - f.margins.right)
          expect(b.max[1]).toBeLessThan(f.height - f.margins.top)
        }
      }),
      { numRuns: 120 },
    )
  })

  it('are aligned by projection to the last digit, on the side that the method gives', () => {
    // ISO 5456-2:1996 §5: first angle top view below and right view at left; third angle above and at right.
    fc.assert(
      fc.property(header, side, side, side, (h, l, w, t) => {
        const { sheet } = layOut(partWith(h), blockViews(l, w, t), undefined)
        const view = (id: string) => sheet.views.find((v) => v.id === id)!
        const [front, top, right] = [view('front'), view('top'), view('right')]
        expect(top.origin[0]).toBe(front.origin[0])
        expect(right.origin[1]).toBe(front.origin[1])
        expect(top.scale).toBe(front.scale)
        const third = h.projection === 'third angle'
        expect(top.box.min[1] > front.box.max[1]).toBe(third)
        expect(right.box.min[0] > front.box.max[0]).toBe(third)
        expect(top.box.max[1] < front.box.min[1]).toBe(!third)
        expect(right.box.max[0] < front.box.min[0]).toBe(!third)
      }),
      { numRuns: 60 },
    )
  })

  it('keep their strokes within their outline and the overruns', () => {
    const { sheet } = layOut(partWith(isoHeader), blockViews(120, 40, 30), undefined)
    for (const v of sheet.views) {
      for (const i of sheet.items) {
        if (i.item !== 'stroke' || i.tie?.view !== v.id) continue
        const b = curveBox(i.curve)
        expect(b.min[0]).toBeGreaterThanOrEqual(v.box.min[0] - 3 - 1e-6)
        expect(b.max[1]).toBeLessThanOrEqual(v.box.max[1] + 3 + 1e-6)
      }
    }
  })

  it('come out the same every time', () => {
    const once = () => JSON.stringify(layOut(partWith(ascHeader, 0.4), blockViews(63.5, 50.8, 76.2), undefined))
    expect(once()).toBe(once())
  })
})

describe('sheet and scale', () => {
  const stated = (sheet: string | undefined, scale: readonly [number, number] | undefined): Header => ({
    ...isoHeader,
    ...(sheet ? { sheet: words(sheet) } : {}),
    ...(scale ? { scale: { paper: scale[0], part: scale[1], span: { from: 3, to: 6 } } } : {}),
  })

  it('are those of the brief where they hold the part', () => {
    const { sheet, marks } = layOut(partWith(stated('A2', [1, 2])), blockViews(200, 100, 60), undefined)
    expect([sheet.format, sheet.scale, sheet.views[0]!.scale]).toEqual(['A2', '1:2', 0.5])
    expect(marks).toEqual([])
  })

  it('give way with a mark where the stated ones cannot hold it', () => {
    const { sheet, marks } = layOut(partWith(stated('A4', [1, 1])), blockViews(800, 300, 200), undefined)
    expect(marks.map((m) => [m.rule, m.span])).toEqual([['sheet-too-small', { from: 3, to: 6 }]])
    expect(sheet.format).toBe('A4')
  })

  it('say when there is no such sheet, and when a scale is not a recommended one', () => {
    const unknown = layOut(partWith(stated('A9', undefined)), blockViews(60, 40, 30), undefined)
    expect(unknown.marks.map((m) => m.rule)).toEqual(['unknown-sheet'])
    const odd = layOut(partWith(stated(undefined, [1, 3])), blockViews(60, 40, 30), undefined)
    expect(odd.marks.map((m) => m.rule)).toEqual(['unusual-scale'])
    expect(odd.sheet.scale).toBe('1:3')
  })

  it('reduce large parts, enlarge tiny ones, and keep middling ones at full size', () => {
    const scaleOf = (l: number, w: number, t: number) =>
      layOut(partWith(isoHeader), blockViews(l, w, t), undefined).sheet.views[0]!.scale
    expect(scaleOf(12, 8, 6)).toBeGreaterThan(1)
    expect(scaleOf(100, 60, 40)).toBe(1)
    expect(scaleOf(2500, 1200, 800)).toBeLessThan(1)
  })

  it('hold even what is far larger than any sheet', () => {
    const { sheet } = layOut(partWith(isoHeader), blockViews(3e6, 2e6, 1e6), undefined)
    expect(sheet.views.length).toBeGreaterThan(2)
  })
})

describe('the stamp', () => {
  const stamps = (sheet: Sheet) =>
    sheet.items.flatMap((i) => (i.item === 'text' && i.role === 'stamp' ? [i.text] : [])).join(' ')

  it('stands on a sheet without sizes', () => {
    expect(stamps(layOut(partWith(isoHeader), blockViews(100, 60, 40), undefined).sheet)).toMatch(
      /PRELIMINARY.*NOT FOR MANUFACTURE/,
    )
  })
})

describe('sections', () => {
  it('carry their label under the view in ASME, over it in ISO', () => {
    // ASME Y14.3-2012 §3; ISO 128-3:2022 (ISO 128-44).
    const labelOf = (h: Header, label: string) => {
      const { sheet } = layOut(partWith(h), coverViews(130, 16, 30, label), undefined)
      const item = sheet.items.find((i) => i.item === 'text' && i.text === label)!
      const view = sheet.views.find((v) => v.id.startsWith('section'))!
      return { y: item.item === 'text' ? item.at[1] : 0, view: view.box }
    }
    const under = labelOf(ascHeader, 'SECTION A-A')
    expect(under.y).toBeLessThan(under.view.min[1])
    const over = labelOf(isoHeader, 'A-A')
    expect(over.y).toBeGreaterThan(over.view.max[1])
  })

  it('stand in the place of the view they replace', () => {
    const { sheet } = layOut(partWith(ascHeader), coverViews(130, 16, 30), undefined)
    const [front, section] = sheet.views
    expect(section!.origin[1]).toBe(front!.origin[1])
    expect(section!.box.min[0]).toBeGreaterThan(front!.box.max[0])
  })

  it('point the arrows with the sight: away from the line in ASME, toward it in ISO', () => {
    // ASME Y14.3-2012 §4.2; ISO 128-3:2022: arrows touch the line's ends.
    for (const [h, label, away] of [
      [ascHeader, 'SECTION A-A', true],
      [isoHeader, 'A-A', false],
    ] as const) {
      const { sheet } = layOut(partWith(h), coverViews(130, 16, 30, label), undefined)
      const x = sheet.views.find((v) => v.id === 'front')!.origin[0]
      const heads = sheet.items.filter((i) => i.item === 'fill' && i.kind === 'arrowhead')
      expect(heads).toHaveLength(2)
      for (const i of heads) {
        const tip = i.item === 'fill' && i.outline[0]!.kind === 'line' ? i.outline[0]!.a : ([0, 0] as const)
        const base = i.item === 'fill' && i.outline[0]!.kind === 'line' ? i.outline[0]!.b : ([0, 0] as const)
        // Sight is −u: the tip lies further that way than the barbs.
        expect(tip[0]).toBeLessThan(base[0])
        if (away) expect(tip[0]).toBeLessThan(x - 1)
        else expect(tip[0]).toBeCloseTo(x, 6)
      }
    }
  })
})

it('notes the thickness under a view that stands alone', () => {
  const { sheet } = layOut(
    partWith(isoHeader),
    { views: [principal('front', [0, 0, 120, 60], [])], reasons: [], thicknessNote: '5 THK' },
    undefined,
  )
  const note = sheet.items.find((i) => i.item === 'text' && i.text === '5 THK')
  expect(note?.item === 'text' && note.at[1]).toBeLessThan(sheet.views[0]!.box.min[1])
})
