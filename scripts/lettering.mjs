// Makes the lettering's data files from the Barlow typeface (SIL Open Font License 1.1) as packaged on npm:
//   src/sheet/lettering/metrics-data.ts   widths and kerning, for layout without a font reader
//   src/write/lettering-fonts.ts          the font files themselves, for the PDF and SVG writers
// Run: node scripts/lettering.mjs
import { readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { build } from 'esbuild'
import * as fontkit from 'fontkit'
import { blankFont } from './blank-font.mjs'

const require = createRequire(import.meta.url)
const base64 = (bytes) => Buffer.from(bytes).toString('base64')
const file = (subset, weight) =>
  readFileSync(require.resolve(`@fontsource/barlow/files/barlow-${subset}-${weight}-normal.woff`))
// Even figures; no ligatures: each letter keeps its own place.
const features = { tnum: true, liga: false }

const range = (from, to) => Array.from({ length: to - from + 1 }, (_, i) => from + i)
const ascii = range(0x20, 0x7e)
const wanted = [
  ...ascii,
  ...range(0xa0, 0x17f),
  0x192,
  0x218,
  0x219,
  0x21a,
  0x21b,
  ...range(0x2010, 0x2044),
  0x20ac,
  0x2122,
  0x2212,
]

function measure(font, text) {
  return Math.round((font.layout(text, features).advanceWidth * 1000) / font.unitsPerEm)
}

function metricsOf(weight) {
  const latin = fontkit.create(file('latin', weight))
  const ext = fontkit.create(file('latin-ext', weight))
  const widths = { latin: {}, ext: {} }
  for (const code of wanted) {
    const subset = latin.hasGlyphForCodePoint(code) ? 'latin' : ext.hasGlyphForCodePoint(code) ? 'ext' : undefined
    if (!subset) continue
    const c = String.fromCodePoint(code)
    const w = measure(subset === 'latin' ? latin : ext, c)
    ;(widths[subset][w] ??= []).push(c)
  }
  const kerns = {}
  for (const a of ascii) {
    for (const b of ascii) {
      const [x, y] = [String.fromCodePoint(a), String.fromCodePoint(b)]
      const k = measure(latin, x + y) - measure(latin, x) - measure(latin, y)
      if (k !== 0) (kerns[k] ??= []).push(x + y)
    }
  }
  const joined = (groups) => Object.fromEntries(Object.entries(groups).map(([k, v]) => [k, v.join('')]))
  const em = (n) => Math.round((n * 1000) / latin.unitsPerEm)
  return {
    capHeight: em(latin.capHeight),
    ascent: em(latin.ascent),
    descent: em(latin.descent),
    latin: joined(widths.latin),
    ext: joined(widths.ext),
    kerns: joined(kerns),
  }
}

/** Outlines of the even figures as path data in thousandths of the capital height: `M`, `L`, `Q`, closed contours. */
function figureOutlines() {
  const font = fontkit.create(file('latin', 400))
  const letter = { moveTo: 'M', lineTo: 'L', quadraticCurveTo: 'Q' }
  const unit = 1000 / font.capHeight
  return Object.fromEntries(
    [...'0123456789'].map((c) => [
      c,
      font
        .layout(c, features)
        .glyphs[0].path.commands.filter((k) => k.command !== 'closePath')
        .map((k) => letter[k.command] + k.args.map((n) => Math.round(n * unit)).join(' '))
        .join(''),
    ]),
  )
}

const note =
  '// Made by scripts/lettering.mjs from the Barlow typeface, © 2017 The Barlow Project Authors, SIL Open Font License 1.1.\n'
writeFileSync(
  'src/sheet/lettering/metrics-data.ts',
  `${note}/** Thousandths of the em, figures tabular. Each entry: a width (or kern) and the letters (or pairs) that have it. */
export const regularData = ${JSON.stringify(metricsOf(400), null, 2)}
export const boldData = ${JSON.stringify(metricsOf(600), null, 2)}
/** Outlines of the figures, thousandths of the capital height. */
export const figureOutlines: Readonly<Record<string, string>> = ${JSON.stringify(figureOutlines(), null, 2)}
`,
)

// The capital height is 0.7 em, so a sign's advance in lettering heights is 700 thousandths each.
const built = await build({
  entryPoints: ['src/sheet/lettering/symbols.ts'],
  bundle: true,
  write: false,
  format: 'esm',
  platform: 'neutral',
})
const { drawnSymbols } = await import(`data:text/javascript;base64,${base64(built.outputFiles[0].contents)}`)
const symbols = Object.fromEntries([...drawnSymbols].map(([c, s]) => [c, Math.round(s.advance * 700)]))
// Stacked fractions are drawn too; what a search finds there is about as wide as the fraction.
for (const c of '0123456789/- SF') symbols[c] = 105
writeFileSync(
  'src/write/lettering-fonts.ts',
  `${note}// The symbol font is the project's own and holds blank glyphs: symbols are drawn as strokes, and this font makes them text.
/** Base64 of WOFF files (TrueType for the symbols). */
export const letteringFonts = {
  regular: '${base64(file('latin', 400))}',
  regularExt: '${base64(file('latin-ext', 400))}',
  bold: '${base64(file('latin', 600))}',
  boldExt: '${base64(file('latin-ext', 600))}',
  symbols: '${base64(blankFont('Sheetwright Symbols', symbols))}',
} as const
`,
)
