import type { Brief } from '../../../brief/brief.ts'
import type { Angle, Size } from '../../../brief/size.ts'
import type { Span } from '../../../brief/span.ts'
import type { Box2 } from '../../../geometry/evaluate.ts'
import type { Vec2 } from '../../../geometry/vec.ts'
import type { Drawn } from '../engine/messages.ts'
import { boxOfText, type Ground, union } from './ground.ts'

/** A size of the sheet that can be changed in place. */
export interface Touched {
  readonly dimension: string
  /** The size or angle of the brief that stands there. */
  readonly size: Size | Angle
  /** Others of the brief that stand there too, as one: they change with it. */
  readonly alike: readonly Size[]
  /** Where its figures stand on the paper, mm. */
  readonly box: Box2
}

/** Every size and angle of the brief, in the order of its text. */
export function sizesOf(brief: Brief): (Size | Angle)[] {
  const found: (Size | Angle)[] = []
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(walk)
    else if (typeof value === 'object' && value !== null) {
      if (isSize(value)) found.push(value)
      for (const inner of Object.values(value)) walk(inner)
    }
  }
  walk(brief.stock)
  walk(brief.features)
  walk(brief.shows)
  return found.sort((a, b) => a.span.from - b.span.from)
}

function isSize(value: object): value is Size | Angle {
  return 'text' in value && 'value' in value && 'form' in value && 'decimals' in value && 'span' in value
}

export const isLength = (size: Size | Angle): size is Size => 'mm' in size

interface Figures {
  readonly text: string
  readonly box: Box2
}

/** Numbers that stand in the lettering of a dimension, each with its place on the paper. */
function figuresOf(ground: Ground, dimension: string): Figures[] {
  const found: Figures[] = []
  ground.sheet.items.forEach((item, i) => {
    if (item.tie?.dimension !== dimension) return
    if (item.item === 'glyph') {
      const fraction = /[\d\s-]*\d\/\d+/.exec(item.text)
      if (fraction) found.push({ text: item.text.trim(), box: ground.boxes[i]! })
    }
    if (item.item !== 'text') return
    // Counts (4X) are no sizes.
    for (const match of item.text.matchAll(/(?<![\d.,])(\d*[.,]?\d+)(?!\d*[X×x](?:\s|$))/g)) {
      const at = match.index + (match[0].length - match[1]!.length)
      const whole = boxOfText(item)
      const before = boxOfText({ ...item, anchor: 'start', text: item.text.slice(0, at) })
      const through = boxOfText({ ...item, anchor: 'start', text: item.text.slice(0, at + match[1]!.length) })
      const share = (b: Box2) => (item.angle === 90 ? b.max[1] - b.min[1] : b.max[0] - b.min[0])
      const [from, to] = at === 0 ? [0, share(through)] : [share(before), share(through)]
      const box: Box2 =
        item.angle === 90
          ? { min: [whole.min[0], whole.min[1] + from], max: [whole.max[0], whole.min[1] + to] }
          : { min: [whole.min[0] + from, whole.min[1]], max: [whole.min[0] + to, whole.max[1]] }
      found.push({ text: match[1]!, box })
    }
  })
  return found
}

/** Digits as they compare between sheet and brief: comma or point, with or without a leading or a trailing zero. */
export const plainDigits = (text: string): string => {
  const digits = text.replace(',', '.').replace(/\s+/g, ' ').trim()
  const number = Number(digits)
  return Number.isFinite(number) && digits !== '' ? String(number) : digits.replace(/^0(?=\.)/, '')
}

const within = (inner: Span, outer: Span): boolean => inner.from >= outer.from && inner.to <= outer.to

/**
 * The sizes that stand in a dimension's lettering: first the one that the dimension states, then others of the same
 * statement whose digits are printed there (a slot's width and length, a counterbore's depth).
 */
export function touchable(drawn: Drawn, ground: Ground, dimension: string): Touched[] {
  const stated = drawn.dimensions.find((d) => d.id === dimension)
  if (!stated?.span) return []
  const { span } = stated
  const sizes = sizesOf(drawn.brief)
  const own = sizes.filter((s) => within(s.span, span) || within(span, s.span))
  const statement =
    drawn.features.find((f) => f.span && within(span, f.span))?.span ??
    (drawn.brief.stock && within(span, drawn.brief.stock.span) ? drawn.brief.stock.span : span)
  const near = sizes.filter((s) => within(s.span, statement) && !own.includes(s))
  const alike = sizes.filter(isLength).filter((s) => (stated.alike ?? []).some((span) => within(s.span, span)))
  const others = (size: Size | Angle) => (own.includes(size) ? alike : [])
  const figures = figuresOf(ground, dimension)
  const found: Touched[] = []
  for (const size of [...own, ...(stated.measured.kind === 'leader' ? near : [])]) {
    const at = figures.find(
      (f) => plainDigits(f.text) === plainDigits(size.text) && !found.some((t) => t.box === f.box),
    )
    if (at) found.push({ dimension, size, alike: others(size), box: at.box })
  }
  if (found.length === 0 && own[0]) {
    const boxes = ground.boxes.filter((_, i) => {
      const item = ground.sheet.items[i]!
      return item.tie?.dimension === dimension && (item.item === 'text' || item.item === 'glyph')
    })
    if (boxes.length > 0) found.push({ dimension, size: own[0], alike, box: union(boxes) })
  }
  return found
}

/** The size of the dimension nearest to the point. */
export function nearestTouched(list: readonly Touched[], point: Vec2): Touched | undefined {
  const far = ({ box }: Touched) =>
    Math.hypot(
      Math.max(box.min[0] - point[0], point[0] - box.max[0], 0),
      Math.max(box.min[1] - point[1], point[1] - box.max[1], 0),
    )
  return [...list].sort((a, b) => far(a) - far(b))[0]
}
