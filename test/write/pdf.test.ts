import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import type { Header } from '../../src/brief/brief.ts'
import { layOut } from '../../src/sheet/lay-out.ts'
import { lettering } from '../../src/sheet/lettering/lettering.ts'
import { drawnSymbols } from '../../src/sheet/lettering/symbols.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { inchFormats, metricFormats } from '../../src/standards/formats.ts'
import type { ViewSet } from '../../src/views/view.ts'
import { writePdf } from '../../src/write/pdf.ts'
import { ascHeader, blockViews, coverViews, isoHeader, partWith, principal, words } from '../sheet/fixtures.ts'

// Independent reader throughout: poppler (pdfinfo, pdftotext, pdffonts, pdftoppm).
const folder = mkdtempSync(join(tmpdir(), 'sheet-'))
afterAll(() => rmSync(folder, { recursive: true }))

async function written(sheet: Sheet, name: string): Promise<string> {
  const file = join(folder, `${name}.pdf`)
  writeFileSync(file, await writePdf(sheet))
  return file
}
const run = (tool: string, ...args: string[]) => execFileSync(tool, args, { encoding: 'utf8' })
const textOf = (file: string) => run('pdftotext', '-layout', file, '-')
const sheetFor = (header: Header, views: ViewSet = blockViews(60, 40, 30)) =>
  layOut(partWith(header, 0.4), views, undefined).sheet

describe('PDF', () => {
  it.each([...inchFormats, ...metricFormats].map((f) => [f.name, f] as const))(
    'of sheet %s has its exact size',
    async (name, f) => {
      const header = inchFormats.includes(f) ? ascHeader : isoHeader
      const file = await written(sheetFor({ ...header, sheet: words(name) }), `size-${name}`)
      const [, w, h] = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(run('pdfinfo', file))!
      // pdfinfo prints six figures; a point is 25.4/72 mm.
      expect((Number(w) * 25.4) / 72).toBeCloseTo(f.width, 2)
      expect((Number(h) * 25.4) / 72).toBeCloseTo(f.height, 2)
    },
  )

  it('can be searched for every word of the title block and the notes', async () => {
    const text = textOf(await written(sheetFor(ascHeader), 'search'))
    for (const w of [
      'VENT MOTOR BRACKET',
      'GH-214',
      'ASTM A36',
      'ASTM B633',
      'CALDER FORGE & FAN WORKS',
      'M. HARROW',
      '2024-03-11',
      'REMOVE ALL BURRS.',
      'ASME Y14.5-2018',
      'DO NOT SCALE DRAWING',
      '±1/64',
      'PRELIMINARY – NOT FOR MANUFACTURE',
    ]) {
      expect(text).toContain(w)
    }
  })

  it('keeps to each practice: no words of one on the sheet of the other', async () => {
    const iso = textOf(await written(sheetFor(isoHeader), 'iso'))
    for (const w of ['Legal owner', 'Identification number', 'Created by', 'Dimensions in millimetres', '1/1']) {
      expect(iso).toContain(w)
    }
    for (const w of ['DWG NO', 'UNLESS OTHERWISE', 'INCHES', '1 OF 1']) expect(iso).not.toContain(w)
    const asme = textOf(await written(sheetFor(ascHeader), 'asme'))
    for (const w of ['Legal owner', 'Identification number', 'Created by', 'millimetres']) expect(asme).not.toContain(w)
  })

  it('finds drawn signs and stacked fractions as text', async () => {
    const signs = [...drawnSymbols.keys()]
    const items = [
      ...lettering('4X ⌀.281 THRU ⌴ ⌀.50 ↧ .19', { at: [20, 200], height: 3.5, role: 'dimension' }),
      ...lettering('1-3/8 STK', { at: [20, 180], height: 3.5, role: 'dimension', fractions: 'stacked' }),
      ...signs.flatMap((s, i) => lettering(`${s} 5`, { at: [20, 160 - 4 * i], height: 3.5, role: 'dimension' })),
      ...lettering('6X ⌀12', { at: [150, 100], height: 3.5, role: 'dimension', angle: 90 }),
    ]
    const sheet = { format: 'A4', width: 210, height: 297, scale: '1:1', items, views: [], title: 'Signs', about: {} }
    const text = textOf(await written(sheet, 'signs')).replace(/ +/g, ' ')
    expect(text).toContain('4X ⌀.281 THRU ⌴ ⌀.50 ↧ .19')
    expect(text).toMatch(/1-3\/8 ?STK/)
    for (const s of signs) expect(text).toMatch(new RegExp(`${s} ?5`))
    expect(text).toContain('6X ⌀12')
  })

  it('embeds every font', async () => {
    const lines = run('pdffonts', await written(sheetFor({ ...isoHeader, firm: words('Kovač & Søn') }), 'fonts'))
      .trim()
      .split('\n')
      .slice(2)
    expect(lines.length).toBeGreaterThan(1)
    for (const line of lines) expect(line).toMatch(/\s+yes\s+(yes|no)\s+yes\s+\d+\s+\d+$/)
  })

  it('shows markup in the title as text', async () => {
    const file = await written(sheetFor({ ...isoHeader, part: words('Plate <b>(x)\\) & %') }), 'markup')
    expect(textOf(file)).toContain('Plate <b>(x)\\) & %')
    expect(run('pdfinfo', file)).toContain('Title:           Plate <b>(x)\\) & %')
  })

  it('takes its date from the brief, never from the clock, and is the same every time', async () => {
    const one = await writePdf(sheetFor(ascHeader))
    await new Promise((resolve) => setTimeout(resolve, 1100))
    const two = await writePdf(sheetFor(ascHeader))
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true)
    expect(run('pdfinfo', '-isodates', await written(sheetFor(ascHeader), 'date'))).toContain('2024-03-11T00:00:00')
  })

  it('measures right on the page at the stated scale', async () => {
    // A plate 100 mm long at 1:2 is 50 mm between the middles of its end lines; 600 dots an inch.
    const header = { ...isoHeader, sheet: words('A3'), scale: { paper: 1, part: 2, span: { from: 0, to: 1 } } }
    const sheet = sheetFor(header, { views: [principal('front', [0, 0, 100, 40], [])], reasons: [] })
    const file = await written(sheet, 'scale')
    const dpi = 600
    const { box } = sheet.views[0]!
    const px = (mm: number) => (mm * dpi) / 25.4
    const [x0, y] = [Math.floor(px(box.min[0] - 5)), Math.round(px(297 - (box.min[1] + box.max[1]) / 2))]
    const width = Math.ceil(px(box.max[0] - box.min[0] + 10))
    const out = join(folder, 'row')
    const crop = ['-x', x0, '-y', y, '-W', width, '-H', 1].map(String)
    run('pdftoppm', '-r', String(dpi), '-gray', ...crop, '-singlefile', file, out)
    const row = [...readFileSync(`${out}.pgm`).subarray(-width)]
    const middle = (from: number, to: number) => {
      let [sum, weight] = [0, 0]
      for (let i = from; i < to; i++) {
        sum += (i + 0.5) * (255 - row[i]!)
        weight += 255 - row[i]!
      }
      // A visible line of group 0.5 prints 0.5 mm of black.
      expect((weight / 255) * (25.4 / dpi)).toBeCloseTo(0.5, 1)
      return sum / weight
    }
    const half = Math.floor(width / 2)
    const length = ((middle(half, width) - middle(0, half)) * 25.4) / dpi
    expect(Math.abs(length - 50)).toBeLessThan(0.02)
  })

  it('draws sections with hatching that a reader sees', async () => {
    const sheet = sheetFor(ascHeader, coverViews(130, 16, 30, 'SECTION A-A'))
    expect(textOf(await written(sheet, 'section'))).toContain('SECTION A-A')
  })
})
