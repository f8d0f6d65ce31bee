import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { carriedMarks } from '../../src/app/page/bench/carried-marks.ts'
import { asText, withChecker } from '../../src/app/page/bench/statements.ts'
import { checkedOf } from '../../src/app/page/engine/checked.ts'
import { drawnOf } from '../../src/app/page/engine/drawn.ts'
import type { Drawn } from '../../src/app/page/engine/messages.ts'
import { foldAlike } from '../../src/app/page/margin/fold-alike.ts'
import { sizePlacing, viewPlacing, withPlacing } from '../../src/app/page/sheet/drag.ts'
import { groundOf, itemAt } from '../../src/app/page/sheet/ground.ts'
import { lightOfItem, lightOfWords, tiesOf } from '../../src/app/page/sheet/light.ts'
import { ringsOf } from '../../src/app/page/sheet/pencil.ts'
import { rowStep, viewStep } from '../../src/app/page/sheet/step.ts'
import { isLength, sizesOf, touchable } from '../../src/app/page/sheet/touch.ts'
import { fitted, kept, paperPoint, windowPoint, zoomed } from '../../src/app/page/sheet/viewport.ts'
import { whyIsIt } from '../../src/app/page/sheet/why.ts'
import { firstLines } from '../../src/app/page/starter/first-lines.ts'
import { sketchSizes } from '../../src/app/page/starter/sketch-sizes.ts'
import { type StockName, stockSketches } from '../../src/app/page/starter/sketches.ts'
import { changeSizes, replaceSpan } from '../../src/brief/edit.ts'
import type { Size } from '../../src/brief/size.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'

let kernel: OcctKernel
let bracket: Drawn
const draw = (text: string): Drawn => {
  const drawing = compile(text, kernel)
  const drawn = drawnOf(drawing, 0)
  if (drawing.part) kernel.free(drawing.part.solid)
  return drawn
}
beforeAll(async () => {
  kernel = await openKernel()
  bracket = draw(readFileSync('examples/vent-bracket.brief', 'utf8'))
})

const paper = { width: 420, height: 297 }
const anyView = fc.record({
  scale: fc.double({ min: 0.4, max: 60, noNaN: true }),
  x: fc.integer({ min: -3000, max: 3000 }),
  y: fc.integer({ min: -3000, max: 3000 }),
})

describe('the view of the paper', () => {
  it('keeps the point under the pointer where it is', () => {
    fc.assert(
      fc.property(
        anyView,
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        fc.nat(1280),
        fc.nat(800),
        (view, by, x, y) => {
          const before = paperPoint(view, paper, x, y)
          const after = paperPoint(zoomed(view, by, x, y), paper, x, y)
          expect(after[0]).toBeCloseTo(before[0], 6)
          expect(after[1]).toBeCloseTo(before[1], 6)
        },
      ),
    )
  })

  it('goes from window to paper and back', () => {
    fc.assert(
      fc.property(anyView, fc.nat(1280), fc.nat(800), (view, x, y) => {
        const [u, v] = windowPoint(view, paper, paperPoint(view, paper, x, y))
        expect(u).toBeCloseTo(x, 6)
        expect(v).toBeCloseTo(y, 6)
      }),
    )
  })

  it('shows the whole sheet in what is left free, touching two sides of it', () => {
    const view = fitted(paper, { width: 1280, height: 800 }, { left: 350, right: 20, top: 20, bottom: 110 })
    const [left, top] = windowPoint(view, paper, [0, 297])
    const [right, bottom] = windowPoint(view, paper, [420, 0])
    expect(left).toBeGreaterThanOrEqual(350 - 1e-9)
    expect(right).toBeLessThanOrEqual(1260 + 1e-9)
    expect(top).toBeGreaterThanOrEqual(20 - 1e-9)
    expect(bottom).toBeLessThanOrEqual(690 + 1e-9)
    expect(Math.min(left - 350 + (1260 - right), top - 20 + (690 - bottom))).toBeCloseTo(0, 6)
  })

  it('never loses the paper', () => {
    fc.assert(
      fc.property(anyView, (view) => {
        const window = { width: 1280, height: 800 }
        const held = kept(view, paper, window)
        const [left, top] = windowPoint(held, paper, [0, 297])
        const [right, bottom] = windowPoint(held, paper, [420, 0])
        expect(left).toBeLessThan(1280)
        expect(right).toBeGreaterThan(0)
        expect(top).toBeLessThan(800)
        expect(bottom).toBeGreaterThan(0)
      }),
    )
  })
})

describe('what is under the hand', () => {
  it('finds each size by the middle of its figures', () => {
    const ground = groundOf(bracket.sheet!)
    let found = 0
    for (const { id, span } of bracket.dimensions) {
      if (!span) continue
      const touched = touchable(bracket, ground, id)
      expect(touched.length, id).toBeGreaterThan(0)
      expect(touched[0]!.size.span).toEqual(span)
      for (const t of touched) {
        const middle = [(t.box.min[0] + t.box.max[0]) / 2, (t.box.min[1] + t.box.max[1]) / 2] as const
        const item = itemAt(ground, middle, 1)
        expect(bracket.sheet!.items[item!]!.tie?.dimension).toBe(id)
        found++
      }
    }
    expect(found).toBeGreaterThanOrEqual(bracket.dimensions.filter((d) => d.span).length)
  })

  it('finds a slot’s length beside its width in one callout', () => {
    const note = bracket.dimensions.find((d) => d.id.startsWith('slot') && d.measured.kind === 'leader')!
    const texts = touchable(bracket, groundOf(bracket.sheet!), note.id).map((t) => t.size.text)
    expect(texts).toEqual(['.281', '.88'])
  })

  it('changes every place that one size stands for', () => {
    // Two bearing seats, shown as 2X ⌀; two holes at one height, shown once.
    const seats = draw(`units inch
practice ASME
turned axis left-right
  left ⌀.7503/.7500, 1.38 long
  collar ⌀1.250, .25 long
  right ⌀.7503/.7500, 1.50 long
`)
    const twice = seats.dimensions.find((d) => d.alike)!
    const [seat] = touchable(seats, groundOf(seats.sheet!), twice.id)
    expect(seat!.alike).toHaveLength(1)
    const { text } = seats.brief
    const change = changeSizes(text, [seat!.size as Size, ...seat!.alike], '.8753/.8750')
    expect(change.text).toBe(text.replaceAll('.7503/.7500', '.8753/.8750'))
    expect(draw(change.text).dimensions.filter((d) => d.value === 0.8753 * 25.4 && d.alike)).toHaveLength(1)
    // Refused for one, refused for all.
    expect(changeSizes(text, [seat!.size as Size, ...seat!.alike], 'wide').text).toBe(text)

    const level = draw(`units mm
practice ISO
block 100 × 60 × 20
hole A top: ⌀10 THRU
  20 from left; 15 from front
hole B top: ⌀12 THRU
  70 from left; 15 from front
`)
    const shared = level.dimensions.find((d) => d.alike)!
    const [once] = touchable(level, groundOf(level.sheet!), shared.id)
    expect(changeSizes(level.brief.text, [once!.size as Size, ...once!.alike], '25').text).toBe(
      level.brief.text.replaceAll('15 from front', '25 from front'),
    )
  })

  it('finds nothing on bare paper', () => {
    expect(itemAt(groundOf(bracket.sheet!), [-50, -50], 3)).toBeUndefined()
  })

  it('knows every size of the brief once', () => {
    const sizes = sizesOf(bracket.brief).filter(isLength)
    const text = bracket.brief.text
    for (const s of sizes) expect(text.slice(s.span.from, s.span.to)).toBe(s.text)
    expect(sizes.map((s) => s.text)).toEqual([
      '.188',
      '.19',
      '3.50',
      '2.25',
      '3.00',
      '.281',
      '1.500',
      '1.250',
      '1.50',
      '.281',
      '.88',
      '1.500',
      '1.38',
      '.50',
      '.38',
    ])
  })
})

describe('light', () => {
  it('goes from a hole’s line to all its lines in every view, and to its statement', () => {
    const ties = tiesOf(bracket)
    const items = bracket.sheet!.items
    const index = items.findIndex(
      (i, k) =>
        i.tie?.view === 'front' && i.item === 'stroke' && i.kind === 'visible' && ties.features[k]!.includes('hole 1'),
    )
    const light = lightOfItem(ties, index)
    const views = new Set([...light.items, ...light.beside].map((i) => items[i]!.tie?.view))
    expect([...views].sort()).toEqual(['front', 'pictorial', 'right', 'top'])
    const { statement } = light
    expect(bracket.brief.text.slice(statement!.from, statement!.to)).toMatch(/^holes .*4X/)
  })

  it('goes from words to what they made', () => {
    const ties = tiesOf(bracket)
    const at = bracket.brief.text.indexOf('3.50')
    const light = lightOfWords(ties, { from: at + 1, to: at + 1 })!
    const ids = new Set([...light.items].map((i) => bracket.sheet!.items[i]!.tie?.dimension))
    expect([...ids]).toEqual(['stock/distance/bottom to top'])
    const note = bracket.brief.text.indexOf('Form with')
    const lit = [...lightOfWords(ties, { from: note, to: note })!.items].map((i) => bracket.sheet!.items[i]!)
    expect(lit.some((i) => i.item === 'text' && i.text.startsWith('FORM WITH'))).toBe(true)
  })

  it('names in a reason what stands in the brief or on the sheet', () => {
    const said = (drawn: Drawn) => drawn.sheet!.items.flatMap((_, i) => whyIsIt(drawn, i) ?? []).join('\n')
    const text = bracket.brief.text
    const line = text.slice(0, text.indexOf('holes ')).split('\n').length
    expect(said(bracket)).toContain(`Centre line of the 4 holes ⌀.281 (line ${line}).`)
    expect(said(bracket)).toContain(`The edge where rear meets the wall of one of the 4 holes ⌀.281 (line ${line})`)
    const cover = said(draw(readFileSync('examples/cover.brief', 'utf8')))
    expect(cover).toContain('Centre line of the axis, the bore and the 2 holes B.')
    // Numbers that the program gives are nobody's names.
    for (const words of [said(bracket), cover])
      expect(words).not.toMatch(/\b(?:hole|round|slot|chamfer) (?:[A-Z]\.)?\d/)
  })

  it('takes the lines of a section for what they are of the part', () => {
    const ring = draw(readFileSync('examples/spacer-ring.brief', 'utf8'))
    const section = ring.sheet!.items.flatMap((item, i) => (item.tie?.view?.startsWith('section') ? [i] : []))
    const words = section.map((i) => whyIsIt(ring, i) ?? '')
    // Radii of the ring: a line along the axis at the bore's radius is the bore's outline, not another's.
    const bore = section.find((i) => whyIsIt(ring, i) === 'The outline of bore as seen from here.')!
    const { statement } = lightOfItem(tiesOf(ring), bore)
    expect(ring.brief.text.slice(statement!.from, statement!.to)).toMatch(/^tube/)
    const axis = section.find((i) => whyIsIt(ring, i) === 'Centre line of the axis.')!
    const height = (i: number) => {
      const item = ring.sheet!.items[i]!
      return item.item === 'stroke' && item.curve.kind === 'line' ? item.curve.a[1] : Number.NaN
    }
    const { stock } = ring.brief
    if (stock?.kind !== 'tube' || !stock.inside) throw new Error('the spacer ring is a tube')
    const scale = ring.sheet!.views.find((v) => v.id.startsWith('section'))!.scale
    expect(Math.abs(height(bore) - height(axis))).toBeCloseTo((stock.inside.mm / 2) * scale, 6)
    expect(words.join(' ')).not.toMatch(/unnamed|of [.;]/)
  })

  it('says why each line of each view is there', () => {
    bracket.sheet!.items.forEach((item, i) => {
      if (item.item !== 'stroke' || !item.tie?.sources) return
      expect(whyIsIt(bracket, i)).toMatch(/^[A-Z].*\.$/)
    })
  })
})

describe('pencil and places', () => {
  it('rings the lettering that stands for the marked words', () => {
    const at = bracket.brief.text.indexOf('3.50')
    const mark = { rule: 'x', weight: 'must change', text: 'x', span: { from: at, to: at + 4 } } as const
    const ground = groundOf(bracket.sheet!)
    const [ring] = ringsOf(bracket, ground, tiesOf(bracket), [mark])
    const index = bracket.sheet!.items.findIndex((i) => i.item === 'text' && i.tie?.span?.from === at)
    expect(ring?.box).toEqual(ground.boxes[index])
  })

  it('writes a place that the brief can be read with, and once', () => {
    const view = bracket.sheet!.views.find((v) => v.id === 'right')!
    const at = [view.box.min[0] + 10, view.box.min[1] - 19] as const
    const placing = sizePlacing(bracket, 'stock/distance/rear to front', at)!
    expect(placing.statement).toBe('place     2.25 in right view, row 2, below')
    const once = withPlacing(bracket.brief.text, placing)
    expect(withPlacing(once, placing)).toBe(once)
    const after = draw(once)
    expect(after.brief.places).toHaveLength(1)
    expect(after.marks.filter((m) => m.weight === 'must change')).toEqual([])
    const moved = draw(withPlacing(once, viewPlacing(after, 'right', [20.4, 0])))
    expect(moved.brief.places.find((p) => p.kind === 'view')).toMatchObject({ across: { value: 20 }, up: { value: 0 } })
    expect(viewPlacing(moved, 'right', [5, -3]).statement).toBe('place     right view 25 across, -3 up')
    expect(moved.marks.filter((m) => m.weight === 'must change')).toEqual([])
  })

  it('places a section and the pictorial, and both stay through an edit', () => {
    const text = `units mm\npractice ISO, first angle\nblock 80 × 60 × 40\nhole front: ⌀20 THRU\n          centred both ways
views front, top; section A-A as right; pictorial\n`
    const before = draw(text)
    const box = (drawn: Drawn, id: string) => drawn.sheet!.views.find((v) => v.id === id)!.box.min
    const section = viewPlacing(before, 'section A-A', [7.2, 0])
    expect(section.statement).toBe('place     section A-A 7 across, 0 up')
    const pictorial = viewPlacing(before, 'pictorial', [-9, 4])
    const placed = withPlacing(withPlacing(text, section), pictorial)
    const after = draw(placed)
    expect(after.marks.filter((m) => m.weight === 'must change')).toEqual([])
    expect(box(after, 'section A-A')[0] - box(before, 'section A-A')[0]).toBeCloseTo(7, 9)
    expect(box(after, 'pictorial')[0] - box(before, 'pictorial')[0]).toBeCloseTo(-9, 9)
    expect(box(after, 'pictorial')[1] - box(before, 'pictorial')[1]).toBeCloseTo(4, 9)
    expect(viewPlacing(after, 'pictorial', [1, 1]).statement).toBe('place     pictorial -8 across, 5 up')
    const edited = draw(placed.replace('⌀20', '⌀24'))
    expect(box(edited, 'section A-A')).toEqual(box(after, 'section A-A'))
    expect(box(edited, 'pictorial')).toEqual(box(after, 'pictorial'))
    const none = draw(`${text}place section B-B 5 across, 0 up\n`)
    expect(none.marks.find((m) => m.rule === 'view-not-found')?.expected).toContain('section A-A')
  })

  it('steps a size by keys: out, in, past the outline to the other side, and to another view', () => {
    const id = 'stock/distance/rear to front'
    const step = (drawn: Drawn, placing: ReturnType<typeof rowStep>): Drawn => {
      const after = draw(withPlacing(drawn.brief.text, placing!))
      expect(after.marks.filter((m) => m.weight === 'must change')).toEqual([])
      expect(after.brief.places).toHaveLength(1)
      return after
    }
    const size = (drawn: Drawn) => drawn.dimensions.find((d) => d.id === id)!
    const figures = (drawn: Drawn) => {
      const { sheet } = drawn
      const item = sheet!.items.find((i) => i.item === 'text' && i.tie?.dimension === id)
      const { box } = sheet!.views.find((v) => v.id === size(drawn).view)!
      return { at: item?.item === 'text' ? item.at : [0, 0], box }
    }
    const start = step(
      bracket,
      sizePlacing(bracket, id, [figures(bracket).box.min[0], figures(bracket).box.min[1] - 10]),
    )
    expect(size(start).wish).toEqual({ side: 'bottom', row: 1 })
    const out = step(start, rowStep(start, id, 'bottom'))
    expect(size(out).wish).toEqual({ side: 'bottom', row: 2 })
    const back = step(out, rowStep(out, id, 'top'))
    expect(size(back).wish).toEqual({ side: 'bottom', row: 1 })
    const over = step(back, rowStep(back, id, 'top'))
    expect(size(over).wish).toEqual({ side: 'top', row: 1 })
    expect(figures(over).at[1]).toBeGreaterThan(figures(over).box.max[1])
    expect(figures(back).at[1]).toBeLessThan(figures(back).box.min[1])
    expect(rowStep(over, id, 'left')).toBeUndefined()
    // A depth is seen true in the side view and from above.
    expect(size(over).view).toBe('right')
    expect(size(step(over, viewStep(over, id))).view).toBe('top')
  })

  it('names the size where another reads the same', () => {
    const twice = bracket.dimensions.filter(
      (d) => d.span && bracket.brief.text.slice(d.span.from, d.span.to) === '1.500',
    )
    expect(twice).toHaveLength(2)
    const view = bracket.sheet!.views.find((v) => v.id === twice[0]!.view)!
    const placing = sizePlacing(bracket, twice[0]!.id, [view.box.min[0] + 5, view.box.max[1] + 18])!
    const after = draw(withPlacing(bracket.brief.text, placing))
    expect(after.marks.filter((m) => m.weight === 'must change')).toEqual([])
    expect(after.dimensions.filter((d) => d.wish).map((d) => d.id)).toEqual([twice[0]!.id])
  })
})

describe('the first lines', () => {
  it.each(Object.keys(stockSketches) as StockName[])('of a %s make a sheet in both units', (stock) => {
    for (const unit of ['inch', 'mm'] as const) {
      const sizes = Object.fromEntries(sketchSizes[stock].map((s) => [s.name, s[unit]]))
      const drawn = draw(firstLines({ stock, title: 'Trial', unit, practice: unit === 'mm' ? 'ISO' : 'ASME', sizes }))
      expect(drawn.marks.filter((m) => m.weight === 'must change')).toEqual([])
      expect(drawn.sheet?.views.length).toBeGreaterThan(0)
    }
  })

  it('give a part without a name none: the checker asks for it', () => {
    const sizes = Object.fromEntries(sketchSizes.plate.map((s) => [s.name, s.mm]))
    const text = firstLines({ stock: 'plate', title: ' ', unit: 'mm', practice: 'ISO', sizes })
    expect(text).toMatch(/^units/)
    const drawing = compile(text, kernel)
    const asked = checkedOf(drawing, false).marks.find((m) => m.rule === 'title-missing')
    kernel.free(drawing.part!.solid)
    expect(asked?.mends?.map((m) => m.label)).toEqual(['begin the statement part'])
  })
})

describe('marks', () => {
  const mark = (rule: string, from?: number, to = from) =>
    ({ rule, weight: 'look again', text: rule, ...(from === undefined ? {} : { span: { from, to: to! } }) }) as const

  it('go along with a text that changes elsewhere, and go out where it changes', () => {
    const older = 'plate 80 × 60 × 10\nnote Old\nround R5\n'
    const newer = older.replace('Old', 'Older')
    const at = (text: string, word: string) => text.indexOf(word)
    const carried = carriedMarks(
      [
        mark('before', at(older, '80'), at(older, '80') + 2),
        mark('changed', at(older, 'note'), at(older, 'Old') + 3 + 1),
        mark('behind', at(older, 'R5'), at(older, 'R5') + 2),
        mark('whole'),
      ],
      older,
      newer,
    )
    expect(carried.map((m) => [m.rule, m.span && newer.slice(m.span.from, m.span.to)])).toEqual([
      ['before', '80'],
      ['behind', 'R5'],
      ['whole', undefined],
    ])
  })

  it('fold behind two of their rule, and unfold', () => {
    const marks = ['a', 'b', 'a', 'a', 'a', 'b', 'b'].map((rule) => mark(rule))
    const { folded, alike } = foldAlike(marks, [])
    expect([...folded]).toEqual([3, 4])
    expect([...alike]).toEqual([[2, 2]])
    expect(foldAlike(marks, ['a']).folded.size).toBe(0)
  })

  it('begin the statement that they miss above the stock, so that the mark goes', () => {
    const text = 'part Trial\nunits mm\npractice ISO\n\nplate 80 × 60 × 10\n'
    const drawing = compile(text, kernel)
    if (drawing.part) kernel.free(drawing.part.solid)
    const { marks } = checkedOf(drawing, false)
    const general = marks.find((m) => m.rule === 'general-tolerance-missing')!
    const after = replaceSpan(text, general.mends![0]!.span, general.mends![0]!.text)
    expect(after).toBe(text.replace('ISO\n', 'ISO\ngeneral   ISO 2768-m\n'))
    expect(marks.find((m) => m.rule === 'material-missing')!.mends![0]!.text).toBe('\nmaterial  ')
  })

  it('offer general tolerances that cover the fractions of the brief', () => {
    const text = 'part Trial\nunits inch\npractice ASME\n\nplate 3-1/2 × 2.00 × 3/8\n'
    const found = (brief: string) => {
      const drawing = compile(brief, kernel)
      if (drawing.part) kernel.free(drawing.part.solid)
      return checkedOf(drawing, false).marks
    }
    const { span, text: offered } = found(text).find((m) => m.rule === 'general-tolerance-missing')!.mends![0]!
    expect(offered).toContain('fractions ±1/64')
    const uncovered = (brief: string) => found(brief).filter((m) => /No general tolerance covers/.test(m.text)).length
    expect(uncovered(replaceSpan(text, span, offered))).toBe(0)
    // Without the fractions there is something to say.
    expect(uncovered(replaceSpan(text, span, offered.replace(/fractions \S+/, '')))).toBeGreaterThan(0)
  })

  it('go on with the statement that is begun already, by its mend or by hand', () => {
    for (const begun of ['material  ', 'material', 'Material\t']) {
      const text = `part Trial\nunits mm\npractice ISO\n${begun}\ngeneral\nplate 80 × 60 × 10\n`
      const drawing = compile(text, kernel)
      if (drawing.part) kernel.free(drawing.part.solid)
      const mends = checkedOf(drawing, false).marks.flatMap((m) => m.mends ?? [])
      const mended = (label: string) => {
        const mend = mends.find((m) => m.label.startsWith(label))!
        return replaceSpan(text, mend.span, mend.text)
      }
      expect(mended('go on with the statement material')).toBe(text.replace(begun, 'material  '))
      expect(mended('write general')).toBe(text.replace('\ngeneral\n', '\ngeneral   ISO 2768-m\n'))
    }
  })

  it('offer no mend that has been made, while the checker has yet to come round', () => {
    const older = 'part Trial\nplate 80 × 60 × 10\n'
    const mend = (text: string) => ({ label: text, span: { from: 10, to: 10 }, text })
    const marks = [
      { ...mark('material'), mends: [mend('\nmaterial  ')] },
      { ...mark('number'), mends: [mend('\nnumber    ')] },
    ]
    const newer = replaceSpan(older, { from: 10, to: 10 }, '\nmaterial  St')
    const offered = carriedMarks(marks, older, newer).map((m) => m.mends?.map((x) => x.label))
    expect(offered).toEqual([[], ['\nnumber    ']])
  })

  it('let the checker sign below who drew it, in the place of an earlier signature, else at the end', () => {
    expect(withChecker('drawn A. B, 1\nplate 1\n', 'P. Q', '2024')).toBe(
      'drawn A. B, 1\nchecked   P. Q, 2024\nplate 1\n',
    )
    expect(withChecker('checked X,\n  1\nplate 1\n', 'P. Q', '2024')).toBe('checked   P. Q, 2024\nplate 1\n')
    expect(withChecker('plate 1\n', 'P. Q', '2024')).toBe('plate 1\nchecked   P. Q, 2024\n')
    expect(asText('see note #2')).toBe('"see note #2"')
  })
})
