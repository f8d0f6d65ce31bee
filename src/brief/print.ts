import type { Brief, Comment, Header, PlaceRequest, ViewName, ViewRequest, Words } from './brief.ts'
import { frameText } from './frame/frame.ts'
import { printFeature } from './print-feature.ts'
import { printSize } from './print-size.ts'
import { printStock, wrap } from './print-stock.ts'
import { printAcceptance } from './read-acceptance.ts'
import { printStack } from './read-stack.ts'
import { readNumber } from './read-text.ts'
import { printTexture } from './read-texture.ts'

/** One statement on its way to paper, with the place it was read from, to which comments are tied. */
interface Block {
  readonly at: number
  readonly lines: readonly string[]
  /** A blank line goes before it. */
  readonly opens: boolean
}

const column = 10
const indent = ' '.repeat(column)

/**
 * The brief in canonical form: header in fixed order, keywords in one column, standard notation. Reading it gives the
 * same brief. Statements that could not be read are not in a brief, and so not in its print.
 */
export function printBrief(brief: Brief): string {
  const blocks = [
    ...group(headerBlocks(brief.header)),
    ...group([
      ...(brief.stock ? [block(brief.stock.span.from, printStock(brief.stock))] : []),
      ...brief.features.map((f) => block(f.span.from, printFeature(f))),
    ]),
    ...group(geometricBlocks(brief)),
    ...group(requestBlocks(brief)),
  ]
  return withComments(blocks, brief.comments ?? [])
}

const group = (blocks: readonly Block[]): Block[] => blocks.map((b, i) => (i === 0 ? { ...b, opens: true } : b))

function block(at: number, { keyword, lines }: { keyword: string; lines: readonly string[] }): Block {
  const head = keyword.length < column ? keyword.padEnd(column) : `${keyword} `
  const rows = lines.length > 0 ? lines : ['']
  return { at, lines: rows.map((line, i) => (i === 0 ? head + line : indent + line).trimEnd()), opens: false }
}

// ---------------------------------------------------------------- header

/** Free text, in quotation marks where it would not be read back as it stands. */
function quote(text: string): string {
  return /^"|(?:^|\s)#(?!\d)|^#|^\s|\s$/.test(text) ? inQuotes(text) : text
}

const inQuotes = (text: string) => `"${text.replaceAll('"', '""')}"`

function headerBlocks(h: Header): Block[] {
  const out: Block[] = []
  const put = (at: number, keyword: string, ...lines: string[]) => out.push(block(at, { keyword, lines }))
  const words = (keyword: string, w: Words | undefined) => w && put(w.span.from, keyword, quote(w.text))
  words('part', h.part)
  putNumber(h, put)
  put(h.said?.units?.from ?? -1, 'units', h.units)
  const usual = h.practice === 'ASME' && h.projection === 'third angle'
  put(h.said?.practice?.from ?? -1, 'practice', usual ? h.practice : `${h.practice}, ${h.projection}`)
  if (h.decimalSign) put(h.said?.decimal?.from ?? -1, 'decimal', h.decimalSign === ',' ? 'comma' : 'point')
  words('material', h.material)
  if (h.general.length > 0) put(h.general[0]!.span.from, 'general', h.general.map(printGeneral).join('   '))
  words('coating', h.coating)
  words('texture', h.texture)
  words('edges', h.edgeBreak)
  words('standard', h.standard)
  words('document', h.documentType)
  words('firm', h.firm)
  for (const keyword of ['drawn', 'checked', 'approved'] as const) {
    const s = h[keyword]
    if (!s) continue
    const { text, span } = s.name
    // Without a date, a comma and a digit would be taken for one.
    const name = !s.date && /,[^,]*\d[^,]*$/.test(text) ? inQuotes(text) : quote(text)
    put(span.from, keyword, s.date ? `${name}, ${s.date.text}` : name)
  }
  words('sheet', h.sheet)
  if (h.scale) put(h.scale.span.from, 'scale', `${h.scale.paper}:${h.scale.part}`)
  for (const note of h.notes) words('note', note)
  return out
}

function putNumber(h: Header, put: (at: number, keyword: string, ...lines: string[]) => void): void {
  const { number, revision } = h
  const text = number && quote(number.text)
  // Side by side where they are read back as two.
  if (number && revision && text === number.text && /^\S+$/.test(revision.text)) {
    const together = `${text.padEnd(17)} rev ${revision.text}`
    const span = { from: 0, to: together.length }
    const back = readNumber({
      keyword: { text: '', span },
      lines: [{ text: together, span }],
      lexemes: [],
      stray: false,
      span,
    })
    if (back.number?.text === number.text && back.revision?.text === revision.text) {
      put(Math.min(number.span.from, revision.span.from), 'number', together)
      return
    }
  }
  if (number)
    put(
      number.span.from,
      'number',
      /\srev/i.test(number.text) || /^rev/i.test(number.text) ? inQuotes(number.text) : quote(number.text),
    )
  if (revision) put(revision.span.from, 'revision', quote(revision.text))
}

function printGeneral(g: Header['general'][number]): string {
  switch (g.kind) {
    case 'decimals':
      return `.${'X'.repeat(g.decimals)} ±${g.plusMinus.text}`
    case 'fractions':
    case 'whole':
      return `${g.kind} ±${g.plusMinus.text}`
    case 'angles':
      return `angles ±${g.plusMinus.text}°`
    case 'standard':
      return g.text
  }
}

// ---------------------------------------------------------------- geometric tolerances and textures

function geometricBlocks({ datums = [], frames = [], stacks = [], textures = [] }: Brief): Block[] {
  return [
    ...datums.map((d) => block(d.span.from, { keyword: 'datum', lines: [`${d.letter.text}  ${d.of.text}`] })),
    ...frames.map((f) => {
      const text = `${f.of.text}: ${frameText(f.frame)}${f.allAround ? ', all around' : ''}`
      return block(f.span.from, { keyword: 'frame', lines: text.split('\n') })
    }),
    ...stacks.map((s) => block(s.span.from, { keyword: 'stack', lines: [printStack(s)] })),
    ...textures.map((t) => block(t.span.from, { keyword: 'texture', lines: [printTexture(t)] })),
  ]
}

// ---------------------------------------------------------------- requests

function requestBlocks(brief: Brief): Block[] {
  const out: Block[] = []
  const put = (at: number, keyword: string, ...lines: string[]) => out.push(block(at, { keyword, lines }))
  if (brief.views && brief.views.length > 0)
    put(brief.views[0]!.span.from, 'views', ...wrap(printViews(brief.views), '; '))
  for (const s of brief.schemes) put(s.span.from, 'sizes', `${s.scheme}${s.of ? ` of ${s.of.text}` : ''}`)
  for (const s of brief.shows) put(s.span.from, 'show', `${s.what.text}${s.size ? ` ${printSize(s.size)}` : ''}`)
  for (const place of brief.places) put(place.span.from, 'place', printPlace(place))
  for (const a of brief.acceptances ?? []) put(a.span.from, 'accept', quote(printAcceptance(a)))
  return out
}

/** Plain views that follow each other stand in one phrase. */
function printViews(views: readonly ViewRequest[]): string[] {
  const out: string[] = []
  let plain: string[] = []
  const flush = () => {
    if (plain.length > 0) out.push(plain.join(', '))
    plain = []
  }
  for (const view of views) {
    if (view.kind === 'view') {
      plain.push(view.side)
      continue
    }
    flush()
    if (view.kind !== 'section') out.push(view.kind)
    else {
      const through = view.through ? ` through ${view.through.text}` : ''
      const as = view.as ? ` as ${view.as}` : ''
      out.push(`${view.extent === 'half' ? 'half ' : ''}section ${view.letter}-${view.letter}${through}${as}`)
    }
  }
  flush()
  return out
}

/** `top view`, `section A-A`, `pictorial`. */
const viewWords = (view: ViewName): string => (/^(?:section |pictorial$)/.test(view) ? view : `${view} view`)

function printPlace(place: PlaceRequest): string {
  if (place.kind === 'view') return `${viewWords(place.view)} ${place.across.text} across, ${place.up.text} up`
  const parts = [
    `${place.size.text}${place.view ? ` in ${viewWords(place.view)}` : ''}`,
    ...(place.row ? [`row ${place.row.text}`] : []),
    ...(place.side ? [place.side === 'top' ? 'above' : place.side === 'bottom' ? 'below' : `at ${place.side}`] : []),
  ]
  return parts.join(', ')
}

// ---------------------------------------------------------------- comments

/** Lays the blocks out, each comment above or beside the statement it was read with; none is lost. */
function withComments(blocks: readonly Block[], comments: readonly Comment[]): string {
  const above = new Map<Block, string[]>()
  const beside = new Map<Block, string>()
  const last: string[] = []
  const byPlace = blocks.filter((b) => b.at >= 0).sort((a, b) => a.at - b.at)
  for (const comment of comments) {
    const text = comment.text.trimEnd()
    const owner =
      comment.place === 'end' ? undefined : byPlace.find((b) => b.at >= (comment.of ?? Number.POSITIVE_INFINITY))
    if (!owner) last.push(text)
    else if (comment.place === 'beside' && !beside.has(owner)) beside.set(owner, text)
    else above.set(owner, [...(above.get(owner) ?? []), text])
  }
  const rows: string[] = []
  for (const b of blocks) {
    if (b.opens && rows.length > 0) rows.push('')
    rows.push(...(above.get(b) ?? []))
    const note = beside.get(b)
    const [first, ...rest] = b.lines
    rows.push(note ? `${first}  ${note}` : first!, ...rest)
  }
  if (last.length > 0) rows.push('', ...last)
  return rows.length > 0 ? `${rows.join('\n')}\n` : ''
}
