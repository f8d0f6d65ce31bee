import { readFileSync } from 'node:fs'
// @ts-expect-error: this library comes without types
import * as fontkit from 'fontkit'
import { describe, expect, it } from 'vitest'
import { SIGNS_FONT, signsFont } from '../../scripts/signs-font.ts'
import { drawnSymbols } from '../../src/sheet/lettering/symbols.ts'
import { openDesk } from './desk.ts'
import { FIRST, openPage } from './open-page.ts'

/** Signs that the brief is written with (docs/language.md), beside those that the sheet draws. */
const WRITTEN = ['⌀', '∅', '↧', '⌴', '⌵', '□', '∠', '⟂', '⊥', '◯']

describe('the font of signs', () => {
  const font = fontkit.create(readFileSync(SIGNS_FONT) as never) as unknown as {
    readonly hasGlyphForCodePoint: (code: number) => boolean
    readonly glyphForCodePoint: (code: number) => {
      readonly advanceWidth: number
      readonly bbox: { readonly minX: number; readonly maxX: number; readonly minY: number; readonly maxY: number }
    }
  }

  it('is what the drawn signs give today', () => {
    expect(Buffer.compare(readFileSync(SIGNS_FONT), signsFont())).toBe(0)
  })

  it.each([...new Set([...WRITTEN, ...drawnSymbols.keys()])])(
    'has %s, within a cell of its typed neighbours',
    (char) => {
      const code = char.codePointAt(0)!
      expect(font.hasGlyphForCodePoint(code)).toBe(true)
      const { advanceWidth, bbox } = font.glyphForCodePoint(code)
      // Courier Prime: 1228 of 2048 units to a cell, read from its file.
      expect(advanceWidth / 1000).toBeCloseTo(1228 / 2048, 2)
      expect(bbox.minX).toBeGreaterThanOrEqual(0)
      expect(bbox.maxX).toBeLessThanOrEqual(advanceWidth)
      expect(bbox.maxX - bbox.minX).toBeGreaterThan(200)
    },
  )
})

const desk = openDesk()

it('shows each sign in the brief by its own glyph, in the column of a letter', { timeout: FIRST }, async () => {
  const page = await openPage(desk.browser, desk.served.address)
  const { box, widths } = await page.evaluate(async (signs) => {
    await document.fonts.load("16px 'Drawn signs'", signs.join(''))
    const typed = getComputedStyle(document.querySelector('.cm-scroller')!).fontFamily
    const pen = document.createElement('canvas').getContext('2d')!
    pen.font = `100px ${typed}`
    const wide = (text: string) => pen.measureText(text).width
    return { box: wide('0'), widths: signs.map((s) => [s, wide(s)] as const) }
  }, WRITTEN)
  for (const [sign, width] of widths) expect([sign, Math.abs(width - box) < 0.5]).toEqual([sign, true])
  await page.context().close()
})
