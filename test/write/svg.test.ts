import { SaxesParser } from 'saxes'
import { describe, expect, it } from 'vitest'
import { layOut } from '../../src/sheet/lay-out.ts'
import type { Sheet, SheetItem } from '../../src/sheet/sheet.ts'
import { writeSvg } from '../../src/write/svg.ts'
import { ascHeader, blockViews, coverViews, isoHeader, partWith, words } from '../sheet/fixtures.ts'

interface Element {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  text: string
}

/** Parses strictly; throws where the text is not well-formed XML. */
function parse(xml: string): Element[] {
  const elements: Element[] = []
  const open: Element[] = []
  const parser = new SaxesParser()
  parser.on('error', (e) => {
    throw e
  })
  parser.on('opentag', (tag) => {
    const element = { name: tag.name, attributes: tag.attributes as Record<string, string>, text: '' }
    elements.push(element)
    open.push(element)
  })
  parser.on('text', (t) => {
    if (open.length > 0) open[open.length - 1]!.text += t
  })
  parser.on('closetag', () => open.pop())
  parser.write(xml).close()
  return elements
}

const sheetOf = (items: readonly SheetItem[]): Sheet => ({
  format: 'A4',
  width: 210,
  height: 297,
  scale: '1:1',
  items,
  views: [],
  title: 'Test',
  about: {},
})

describe('SVG', () => {
  const { sheet } = layOut(partWith(isoHeader, 1.3), coverViews(130, 16, 30), undefined)
  const elements = parse(writeSvg(sheet))

  it('is well-formed and measured in millimetres', () => {
    const svg = elements[0]!
    expect(svg.name).toBe('svg')
    expect(svg.attributes.width).toBe('420mm')
    expect(svg.attributes.height).toBe('297mm')
    expect(svg.attributes.viewBox).toBe('0 0 420 297')
  })

  it('names the line kind and the view of every stroke', () => {
    const strokes = elements.filter((e) => e.name === 'path')
    expect(strokes.length).toBeGreaterThan(100)
    for (const s of strokes) expect(s.attributes.class).toMatch(/^[a-z-]+( |$)/)
    const has = (c: string) => strokes.filter((s) => s.attributes.class === c).length
    expect(has('visible view-front')).toBe(2)
    expect(has('visible view-section-a-a')).toBe(6)
    expect(has('hatching view-section-a-a')).toBeGreaterThan(10)
    expect(has('cutting-plane view-front')).toBeGreaterThan(2)
    expect(has('centre view-front')).toBe(1)
  })

  it('writes a circle as two exact half turns', () => {
    const xml = writeSvg(
      sheetOf([
        {
          item: 'stroke',
          kind: 'visible',
          curve: { kind: 'arc', c: [50, 100], r: 20, from: 0, sweep: 2 * Math.PI },
          width: 0.5,
        },
      ]),
    )
    const d = parse(xml).find((e) => e.name === 'path')!.attributes.d
    expect(d).toBe('M70 197A20 20 0 0 0 30 197A20 20 0 0 0 70 197')
  })

  it('turns arcs the right way round on paper whose y runs up', () => {
    // A quarter from 3 o'clock counter-clockwise rises: in SVG (y down) that is sweep flag 0 to a smaller y.
    const xml = writeSvg(
      sheetOf([
        {
          item: 'stroke',
          kind: 'visible',
          curve: { kind: 'arc', c: [0, 0], r: 10, from: 0, sweep: Math.PI / 2 },
          width: 0.5,
        },
        {
          item: 'stroke',
          kind: 'visible',
          curve: { kind: 'ellipse', c: [0, 0], major: [10, 0], ratio: -0.5, from: 0, sweep: Math.PI / 2 },
          width: 0.5,
        },
      ]),
    )
    const [arc, ellipse] = parse(xml).filter((e) => e.name === 'path')
    expect(arc!.attributes.d).toBe('M10 297A10 10 0 0 0 0 287')
    expect(ellipse!.attributes.d).toBe('M10 297A10 5 0 0 1 0 302')
  })

  it('shows markup in text as text', () => {
    const title = 'Bracket </svg><script>alert("x")</script> & Co \u0007'
    const laid = layOut(partWith({ ...isoHeader, part: words(title) }), blockViews(60, 40, 30), undefined)
    const found = parse(writeSvg(laid.sheet))
    expect(found.some((e) => e.name === 'script')).toBe(false)
    const shown = found
      .filter((e) => e.name === 'text')
      .map((e) => e.text)
      .join(' ')
    expect(shown).toContain('</svg>')
    expect(found.find((e) => e.name === 'title')!.text).toContain('<script>')
  })

  it('carries its typeface, or leaves it to the page', () => {
    expect(writeSvg(sheet)).toContain('@font-face')
    expect(writeSvg(sheet, { fonts: 'referenced' })).not.toContain('@font-face')
  })

  it('ties sizes and words to the brief', () => {
    const xml = writeSvg(
      sheetOf([
        {
          item: 'text',
          role: 'dimension',
          text: '2.50',
          at: [10, 10],
          height: 3,
          anchor: 'middle',
          angle: 90,
          tie: { view: 'front', dimension: 'base length', span: { from: 12, to: 16 } },
        },
      ]),
    )
    const text = parse(xml).find((e) => e.name === 'text')!
    expect(text.attributes).toMatchObject({
      class: 'dimension view-front',
      'data-dimension': 'base length',
      'data-span': '12-16',
      'text-anchor': 'middle',
      transform: 'translate(10 287) rotate(-90)',
    })
  })

  it('is the same every time', () => {
    const again = layOut(partWith(ascHeader), blockViews(60, 40, 30), undefined).sheet
    expect(writeSvg(again)).toBe(writeSvg(layOut(partWith(ascHeader), blockViews(60, 40, 30), undefined).sheet))
  })
})
