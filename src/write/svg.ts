import type { Vec2 } from '../geometry/vec.ts'
import { EM_OVER_CAPITAL, regular } from '../sheet/lettering/metrics.ts'
import type { Sheet, SheetItem, Tie } from '../sheet/sheet.ts'
import { letteringFonts } from './lettering-fonts.ts'
import { num, pathOf } from './path-data.ts'

export interface SvgOptions {
  /** `embedded`: the file looks right alone; `referenced`: the page around it provides the face `Barlow`. */
  readonly fonts?: 'embedded' | 'referenced'
}

/**
 * The sheet as SVG 1.1 in millimetres. Each stroke's class names are its line kind and its view (`visible view-front`);
 * ties to the brief and to dimensions are `data-` attributes. Arcs and ellipses are `A` commands, splines Béziers.
 */
export function writeSvg(sheet: Sheet, options: SvgOptions = {}): string {
  const flip = (p: Vec2): Vec2 => [p[0], sheet.height - p[1]]
  const [w, h] = [num(sheet.width), num(sheet.height)]
  const body = sheet.items.map((item) => itemSvg(item, flip)).join('\n')
  const fonts = options.fonts === 'referenced' ? '' : fontFaces(sheet)
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}">
<title>${escaped(sheet.title)}</title>
<style>${fonts}${STYLE}${sheet.items.some((i) => i.pencil) ? PENCILS : ''}</style>
<rect class="paper" width="${w}" height="${h}"/>
${body}
</svg>
`
}

const STYLE = `
.paper{fill:#fff}
path{fill:none;stroke:#000;stroke-linecap:butt;stroke-linejoin:round}
.visible,.lettering,.symbol{stroke-linecap:round}
.border,.frame,.table{stroke-linecap:square}
path.filled{fill:#000;stroke:none}
text{fill:#000;font-family:Barlow,sans-serif;font-variant-numeric:tabular-nums;font-variant-ligatures:none;white-space:pre}
text.bold{font-weight:600}
text.sign{fill-opacity:0}
`

/** Yellow is laid under the ink. */
const PENCILS = `path.red{stroke:#a51d16}path.blue{stroke:#1f4a8a}path.filled.yellow{fill:#ffe14d}path.filled.red{fill:#a51d16}path.filled.blue{fill:#1f4a8a}
text.red{fill:#a51d16}text.blue{fill:#1f4a8a}
`

function fontFaces(sheet: Sheet): string {
  const used = new Set<keyof typeof letteringFonts>()
  for (const item of sheet.items) {
    if (item.item !== 'text') continue
    for (const c of item.text) {
      const ext = regular.file(c) === 'ext'
      used.add(item.bold ? (ext ? 'boldExt' : 'bold') : ext ? 'regularExt' : 'regular')
    }
  }
  const face = (font: 'regular' | 'regularExt' | 'bold' | 'boldExt', weight: number, range: string) =>
    used.has(font)
      ? `\n@font-face{font-family:Barlow;font-weight:${weight};unicode-range:${range};src:url(data:font/woff;base64,${letteringFonts[font]}) format("woff")}`
      : ''
  const latin = 'U+0-FF,U+131,U+152-153,U+2000-22FF'
  const ext = 'U+100-130,U+132-151,U+154-24F,U+20A0-20AB,U+20AD-20CF'
  return (
    face('regular', 400, latin) + face('regularExt', 400, ext) + face('bold', 600, latin) + face('boldExt', 600, ext)
  )
}

type Flip = (p: Vec2) => Vec2

function itemSvg(item: SheetItem, flip: Flip): string {
  switch (item.item) {
    case 'stroke': {
      const dashes = item.dashes ? ` stroke-dasharray="${item.dashes.map(num).join(' ')}"` : ''
      return `<path class="${classes(item.kind, item)}"${ties(item.tie)} stroke-width="${num(item.width)}"${dashes} d="${pathOf([item.curve], flip)}"/>`
    }
    case 'fill':
      return `<path class="${classes(item.kind, item)} filled"${ties(item.tie)} d="${pathOf(item.outline, flip)}Z"/>`
    case 'text': {
      const [x, y] = flip(item.at)
      const turn = item.angle ? ` rotate(${num(-item.angle)})` : ''
      const narrow = item.stretch && item.stretch !== 1 ? ` scale(${num(item.stretch)} 1)` : ''
      const place =
        turn || narrow ? ` transform="translate(${num(x)} ${num(y)})${turn}${narrow}"` : ` x="${num(x)}" y="${num(y)}"`
      const anchor = item.anchor === 'start' ? '' : ` text-anchor="${item.anchor}"`
      const bold = item.bold ? ' bold' : ''
      return `<text class="${classes(item.role, item)}${bold}"${ties(item.tie)}${place}${anchor} font-size="${num(item.height * EM_OVER_CAPITAL)}">${escaped(item.text)}</text>`
    }
    case 'glyph': {
      const [x, y] = flip(item.at)
      const turn = item.angle ? ` transform="rotate(${num(-item.angle)} ${num(x)} ${num(y)})"` : ''
      return (
        `<path class="${classes('symbol', item)}"${ties(item.tie)} stroke-width="${num(item.width)}" d="${pathOf(item.strokes, flip)}"/>` +
        `<text class="sign"${ties(item.tie)} x="${num(x)}" y="${num(y)}"${turn} font-size="${num(item.height * EM_OVER_CAPITAL)}">${escaped(item.text)}</text>`
      )
    }
  }
}

function classes(kind: string, { tie, pencil }: Pick<SheetItem, 'tie' | 'pencil'>): string {
  const view = tie?.view ? ` view-${slug(tie.view)}` : ''
  return `${slug(kind)}${view}${pencil ? ` ${pencil}` : ''}`
}

function ties(tie: Tie | undefined): string {
  if (!tie) return ''
  const dimension = tie.dimension ? ` data-dimension="${escaped(tie.dimension)}"` : ''
  const span = tie.span ? ` data-span="${tie.span.from}-${tie.span.to}"` : ''
  const features = tie.features?.length ? ` data-features="${escaped(tie.features.join(' '))}"` : ''
  return dimension + span + features
}

/** `section A-A` becomes `section-a-a`. */
function slug(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
}

/** Markup characters escaped; characters that XML 1.0 forbids are left out. */
export function escaped(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
}
