import type { Span } from '../../../brief/span.ts'
import type { Keyword } from '../../../brief/vocabulary.ts'
import type { Box2 } from '../../../geometry/evaluate.ts'
import type { Drawn } from '../engine/messages.ts'
import { type Ground, groundOf, union } from '../sheet/ground.ts'
import { lightOfWords, tiesOf } from '../sheet/light.ts'
import { elementOf } from '../sheet/paint.ts'
import { featureSketches, type Sketch, sketchPath, stockSketches } from '../starter/sketches.ts'
import { helpBrief } from './help-brief.ts'

const SVG = 'http://www.w3.org/2000/svg'
const made = new Map<Keyword, Promise<SVGSVGElement>>()

/** The small picture beside the explanation of a statement: a sketch, else its example as the engine draws it. */
export async function pictureFor(keyword: Keyword, draw: (text: string) => Promise<Drawn>): Promise<SVGSVGElement> {
  const sketches: Readonly<Record<string, Sketch>> = { ...stockSketches, ...featureSketches }
  if (Object.hasOwn(sketches, keyword)) return sketched(sketches[keyword]!)
  const old = made.get(keyword)
  if (old) return old
  const { text, span } = helpBrief(keyword)
  const picture = draw(text).then((drawn) => inked(drawn, span))
  made.set(keyword, picture)
  picture.catch(() => made.delete(keyword))
  return picture
}

function sketched(sketch: Sketch): SVGSVGElement {
  const { paths, box } = sketchPath(sketch)
  const svg = emptyPicture([box[0] - 0.3, box[1] - 0.3, box[2] + 0.6, box[3] + 0.6], 'sketch')
  for (const d of paths) {
    const path = document.createElementNS(SVG, 'path')
    path.setAttribute('d', d)
    if (paths.length > 1) path.setAttribute('class', 'opaque')
    svg.append(path)
  }
  return svg
}

/** The part of the example's sheet that the statement speaks of, what it made in the colour of light. */
function inked(drawn: Drawn, span: Span): SVGSVGElement {
  const { sheet } = drawn
  if (!sheet) throw new Error('the example has no sheet')
  const { box, lit } = picturedOf(drawn, span)
  const svg = emptyPicture(
    [box.min[0], sheet.height - box.max[1], box.max[0] - box.min[0], box.max[1] - box.min[1]],
    'inked',
  )
  for (const [i, item] of sheet.items.entries()) {
    const element = elementOf(item, sheet.height)
    if (lit.has(i)) element.classList.add('lit')
    svg.append(element)
  }
  return svg
}

/** Room about what is lit, and the least size of a picture, paper mm. */
const ROOM = 6
const LEAST = [54, 34] as const

/** Room about all views, where their sizes stand, paper mm. */
const ROUND_VIEWS = 20
/** Statements about the sheet as a whole. */
const ABOUT_ALL = /^(?:sheet|scale|practice)\b/

/** What of a sheet is shown for a statement, and which of its items are lit. The views, or the whole sheet, where nothing is its own. */
export function picturedOf(drawn: Drawn, span: Span): { readonly box: Box2; readonly lit: ReadonlySet<number> } {
  const sheet = drawn.sheet!
  const ground = groundOf(sheet)
  const lit = new Set(litBy(drawn, span))
  const pictorial = sheet.views.find((v) => v.id === 'pictorial')
  if (pictorial && [...lit].some((i) => sheet.items[i]!.tie?.view === 'pictorial')) {
    return { box: grown(pictorial.box, ROOM), lit }
  }
  if (lit.size === 0) {
    const whole = ABOUT_ALL.test(drawn.brief.text.slice(span.from, span.to))
    const all: Box2 = { min: [0, 0], max: [sheet.width, sheet.height] }
    return { box: whole ? all : grown(union(sheet.views.map((v) => v.box)), ROUND_VIEWS), lit }
  }
  return { box: wide(grown(oneOf(ground, lit), ROOM)), lit }
}

/** Everything that any word of the statement lights. */
function litBy(drawn: Drawn, { from, to }: Span): number[] {
  const items = drawn.sheet!.items
  const tied = items.flatMap((item, i) => {
    const at = item.tie?.span
    return at && at.from < to && from < at.to ? [i] : []
  })
  if (tied.length > 0) return tied
  const within = (at: Span) => at.from >= from && at.to <= to
  const letters = (drawn.brief.datums ?? []).filter((d) => within(d.span)).map((d) => d.letter.text)
  const placed = new Set(drawn.dimensions.filter((d) => d.wish && drawn.brief.places.length > 0).map((d) => d.id))
  const named = items.flatMap((item, i) => {
    const isLetter = item.item === 'text' && item.role !== 'zone' && letters.includes(item.text)
    return isLetter || placed.has(item.tie?.dimension ?? '') ? [i] : []
  })
  if (named.length > 0) return named
  const asked = (drawn.brief.views ?? []).filter((v) => within(v.span))
  if (asked.length > 0 && asked.every((v) => v.kind === 'pictorial')) {
    return items.flatMap((item, i) => (item.tie?.view === 'pictorial' ? [i] : []))
  }
  const light = lightOfWords(tiesOf(drawn), { from, to: from })
  return light ? [...light.items] : []
}

/** The box of the lit items of one view. */
function oneOf(ground: Ground, lit: ReadonlySet<number>): Box2 {
  const all = [...lit]
  const view = ground.sheet.items[all[0]!]!.tie?.view
  return union(all.filter((i) => ground.sheet.items[i]!.tie?.view === view).map((i) => ground.boxes[i]!))
}

const grown = ({ min, max }: Box2, by: number): Box2 => ({
  min: [min[0] - by, min[1] - by],
  max: [max[0] + by, max[1] + by],
})

function wide({ min, max }: Box2): Box2 {
  const [dx, dy] = [Math.max(0, LEAST[0] - max[0] + min[0]) / 2, Math.max(0, LEAST[1] - max[1] + min[1]) / 2]
  return { min: [min[0] - dx, min[1] - dy], max: [max[0] + dx, max[1] + dy] }
}

function emptyPicture(box: readonly number[], name: string): SVGSVGElement {
  const svg = document.createElementNS(SVG, 'svg')
  svg.setAttribute('viewBox', box.join(' '))
  svg.setAttribute('class', name)
  svg.setAttribute('aria-hidden', 'true')
  return svg
}
