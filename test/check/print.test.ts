import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Mark } from '../../src/brief/mark.ts'
import { checkDrawing } from '../../src/check/check-drawing.ts'
import { checkPrint } from '../../src/check/print/check-print.ts'
import { placeOnSheet } from '../../src/check/print/places.ts'
import { openKernel } from '../../src/kernel/open.ts'
import type { Sheet, SheetItem } from '../../src/sheet/sheet.ts'
import { writePdf } from '../../src/write/pdf.ts'
import { writeSvg } from '../../src/write/svg.ts'
import { lazySubject, onHeader } from './subject.ts'

const text = onHeader(
  'iso',
  `no approved
note      Remove burrs as required.
block     80 × 50 × 30
hole      top: ⌀12 THRU
          7 from left; centred up
hole      front: M8 ↧ 16, drill ⌀7.4 ↧ 18
          60 from left; centred up`,
)
let subject: ReturnType<typeof lazySubject>
let marks: Mark[]
let print: Sheet
beforeAll(async () => {
  subject = lazySubject(text, await openKernel())
  marks = checkDrawing(subject)
  print = checkPrint(subject, marks)
})

const pencilled = (colour: string) => print.items.filter((i) => i.pencil === colour)
const balloons = () =>
  print.items.filter(
    (i): i is Extract<SheetItem, { item: 'text' }> => i.item === 'text' && i.role === 'label' && i.pencil !== undefined,
  )

describe('the check print', () => {
  it('keeps the sheet’s own ink whole, and lays yellow beneath it', () => {
    const ink = print.items.filter((i) => subject.sheet.items.includes(i))
    expect(ink).toEqual(subject.sheet.items)
    const first = print.items.indexOf(subject.sheet.items[0]!)
    for (const item of pencilled('yellow')
      .filter((i) => i.item === 'fill')
      .slice(0, -1))
      expect(print.items.indexOf(item)).toBeLessThan(first)
  })

  it('numbers every mark in the list, and once more where it has a place on the sheet', () => {
    const placed = marks.filter((m) => placeOnSheet(m, subject)).length
    expect(placed).toBeGreaterThanOrEqual(3)
    for (const [i] of marks.entries()) {
      const found = balloons().filter((b) => b.text === String(i + 1))
      expect(found).toHaveLength(placeOnSheet(marks[i]!, subject) ? 2 : 1)
      expect(found.some((b) => b.at[0] > subject.sheet.width)).toBe(true)
    }
  })

  it('puts red where it must change or wants a look, blue for remarks', () => {
    for (const [i, mark] of marks.entries())
      for (const b of balloons().filter((x) => x.text === String(i + 1)))
        expect(b.pencil).toBe(mark.weight === 'remark' ? 'blue' : 'red')
  })

  it('leaves out the yellow where a mark stands, and has it under the other sizes', () => {
    const yellow = pencilled('yellow').length
    const sizes = subject.sheet.items.filter((i) => i.item === 'text' && i.role === 'dimension').length
    expect(yellow).toBeGreaterThan(2)
    expect(yellow).toBeLessThan(sizes)
  })

  it('can be read without colour: full, broken and dotted frames; circles for red, squares for blue', () => {
    const rings = print.items.filter((i) => i.item === 'stroke' && i.pencil && i.curve.kind === 'arc')
    expect(rings.map((r) => r.pencil)).toEqual(rings.map(() => 'red'))
    expect(rings).toHaveLength(balloons().filter((b) => b.pencil === 'red').length)
  })

  it('is a page that holds legend, marks and a line for the checker’s signature', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'sheetwright-print-'))
    const file = join(folder, 'print.pdf')
    writeFileSync(file, await writePdf(print))
    const words = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' })
    const size = execFileSync('pdfinfo', [file], { encoding: 'utf8' })
    rmSync(folder, { recursive: true })
    for (const wanted of [
      'CHECK PRINT',
      'red, with a caret: add',
      'stroke and signature',
      'hole-near-edge',
      'tap-drill',
    ])
      expect(words).toContain(wanted)
    expect(words).toContain('Hole 1 leaves 1 mm of material')
    expect(size).toMatch(/Pages:\s+1\n/)
  })

  it('has its colours in SVG only where there are pencils', () => {
    expect(writeSvg(print)).toContain('path.red{')
    expect(writeSvg(subject.sheet)).not.toContain('path.red{')
  })

  it('feeds the list into further columns when it is long', () => {
    const many = Array.from({ length: 60 }, (_, i) => ({ ...marks[i % marks.length]! }))
    const long = checkPrint(subject, many)
    expect(long.width).toBeGreaterThan(print.width + 80)
    for (const item of long.items)
      if (item.item === 'text') {
        expect(item.at[1]).toBeGreaterThan(0)
        expect(item.at[0]).toBeLessThan(long.width)
      }
  })
})
