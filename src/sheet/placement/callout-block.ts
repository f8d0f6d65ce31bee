import type { Vec2 } from '../../geometry/vec.ts'
import type { Sign } from '../../sizes/annotation.ts'
import type { Callout, CalloutPart, Dimension } from '../../sizes/dimension.ts'
import { lettering, textExtent } from '../lettering/lettering.ts'
import type { SheetItem, Tie } from '../sheet.ts'
import { type Art, artItems } from '../signs/art.ts'
import { hangingDatum } from '../signs/datum-art.ts'
import { frameArt } from '../signs/frame-art.ts'
import { itemArt } from '../signs/item-art.ts'
import type { PlacementFigures } from './figures.ts'
import { add } from './vec.ts'

/** Sizes on the drawing show fractions over a level bar. */
const STYLE = { fractions: 'stacked' } as const

/** A callout set in lines, measured. Its own axes: x along the lines, y up, (0, 0) in the middle of its bounds. */
export interface Block {
  readonly width: number
  readonly height: number
  /** Mid-height of the capitals of the first and last line above the block's middle. */
  readonly firstMid: number
  readonly lastMid: number
  readonly lines: readonly { readonly parts: readonly CalloutPart[]; readonly width: number; readonly base: number }[]
  /** A basic size: a box round the number in the first line. */
  readonly box?: SizeBox
  /** Signs under the lines, by the level of their lower edges above the block's middle. */
  readonly signs: readonly BlockSign[]
  /** Level at which a leader meets the block's side, where that is not the lettering's own. */
  readonly joint?: number
  /** Stands on the leader's shoulder, whatever the practice. */
  readonly stands?: true
  /** A profile all around: a circle at the leader's elbow. */
  readonly allAround?: true
}

interface SizeBox {
  /** Width of the count before the box (`4X `), and of the box. */
  readonly before: number
  readonly width: number
  readonly below: number
  readonly above: number
}

interface BlockSign {
  readonly art: Art
  readonly base: number
  /** Left edge from the block's middle; absent: as the lines are justified. */
  readonly left?: number
}

/** Clear space between the lines and what hangs under them, in text heights. */
const HANG = 0.45

/** How far the frame of a basic size stands off its text, in text heights. */
const FRAME = 0.5

/** The callout with the frames and the datum letter that stand at it; `signs`: others than the size's own. */
export function calloutBlock(d: Dimension, figures: PlacementFigures, signs = d.signs ?? []): Block {
  return blockOf(d.reference ? bracketed(d.callout) : d.callout, figures, d.basic, signs)
}

export function blockOf(
  callout: Callout,
  figures: PlacementFigures,
  framed = false,
  signs: readonly Sign[] = [],
): Block {
  const h = figures.text
  const box = framed ? sizeBox(callout.lines[0] ?? [], h) : undefined
  const extents = callout.lines.map((parts, i) => {
    const own = textExtent(parts, h, STYLE)
    return box && i === 0 ? { width: box.before + box.width, above: box.above, below: box.below } : own
  })
  const textWidth = Math.max(0, ...extents.map((e) => e.width))
  const space = h * (figures.practice.lettering.lineRatio - 1)
  let y = 0
  const bases: number[] = []
  extents.forEach((e, i) => {
    // Tails alone do not open the lines further; signs, fractions and stacks do.
    const above = i === 0 ? e.above : Math.max(h, e.above)
    if (i > 0) y -= Math.max(space, extents[i - 1]!.below + 0.3 * h)
    bases.push(y - above)
    y -= above
  })
  const lettered = y - (extents.at(-1)?.below ?? 0)
  const arts = artsOf(signs, h, textWidth)
  let bottom = lettered - (arts.length > 0 && bases.length > 0 ? HANG * h : 0)
  const hung = arts.map((art) => {
    bottom -= art.height
    return { art, base: bottom }
  })
  const shift = -bottom / 2
  const frames = hung.filter(({ art }) => art.sign.kind === 'frame' || art.sign.kind === 'item')
  const [top, last] = [frames[0], frames.at(-1)]
  const joint =
    top && last
      ? bases.length === 0 || figures.iso
        ? (top.base + top.art.height + last.base) / 2 + shift
        : undefined
      : hung[0]
        ? hung[0].base + hung[0].art.height + shift
        : // A line under the box would double its lower edge.
          box && figures.iso
          ? (bases[0] ?? 0) + shift + h / 2
          : undefined
  return {
    width: Math.max(textWidth, ...arts.map((a) => a.width)),
    height: -bottom,
    firstMid: (bases[0] ?? 0) + shift + h / 2,
    lastMid: (bases.at(-1) ?? 0) + shift + h / 2,
    lines: callout.lines.map((parts, i) => ({ parts, width: extents[i]!.width, base: bases[i]! + shift })),
    ...(box ? { box } : {}),
    signs: hung.map(({ art, base }) => ({ art, base: base + shift })),
    ...(joint === undefined ? {} : { joint }),
    ...(signs.some((sign) => sign.kind === 'frame' && sign.allAround) ? { allAround: true } : {}),
  }
}

/** The box round the number of a line; the count stands before it (ASME Y14.5-2018 Fig. 4-1, from memory). */
function sizeBox(line: readonly CalloutPart[], h: number): SizeBox {
  const { count, rest } = counted(line)
  const own = textExtent(rest, h, STYLE)
  return {
    before: count === '' ? 0 : textExtent([count], h, STYLE).width,
    width: own.width + 2 * FRAME * h,
    above: own.above + FRAME * h,
    below: own.below + FRAME * h,
  }
}

/** A line's `4X ` and what follows it. */
function counted(line: readonly CalloutPart[]): { readonly count: string; readonly rest: readonly CalloutPart[] } {
  const [first, ...more] = line
  const count = typeof first === 'string' ? (/^\d+[X×] /.exec(first)?.[0] ?? '') : ''
  return typeof first === 'string' ? { count, rest: [first.slice(count.length), ...more] } : { count, rest: line }
}

/** Frames under each other, the datum letter hanging from the last, or from a line under the lettering. */
function artsOf(signs: readonly Sign[], h: number, textWidth: number): Art[] {
  const framed = signs.some((sign) => sign.kind === 'frame')
  return signs.flatMap((sign): Art[] => {
    if (sign.kind === 'frame') return [frameArt(sign, h)]
    if (sign.kind === 'item') return [itemArt(sign, h)]
    return sign.kind === 'datum' ? [hangingDatum(sign, h, framed ? 0 : textWidth)] : []
  })
}

/** A block of signs alone that are drawn about its middle. */
export function signBlock(arts: readonly Art[], left = 0, base = 0): Block {
  const signs = arts.map((art) => ({ art, base, left }))
  return { width: 0, height: 0, firstMid: 0, lastMid: 0, lines: [], signs }
}

/** Reference sizes stand in brackets; a callout that already carries them is left alone. */
function bracketed(callout: Callout): Callout {
  const first = callout.lines[0]?.[0]
  if (typeof first === 'string' && first.startsWith('(')) return callout
  const lines = callout.lines.map((l) => [...l])
  lines[0]?.unshift('(')
  lines.at(-1)?.push(')')
  return { lines: lines.map(joined) }
}

/** Neighbouring strings as one, so that they are one run of text. */
function joined(parts: readonly CalloutPart[]): CalloutPart[] {
  const out: CalloutPart[] = []
  for (const part of parts) {
    const last = out.at(-1)
    if (typeof part === 'string' && typeof last === 'string') out[out.length - 1] = last + part
    else out.push(part)
  }
  return out
}

export type Justify = 'start' | 'middle' | 'end'

/** Sheet items of the block with its middle at `centre`, turned by `angle` degrees. */
export function blockItems(
  block: Block,
  centre: Vec2,
  angle: number,
  justify: Justify,
  figures: PlacementFigures,
  tie: Tie,
): SheetItem[] {
  const a = (angle * Math.PI) / 180
  const put = (x: number, y: number): Vec2 =>
    add(centre, [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)])
  const inner = block.width / 2
  const leftOf = (width: number) => (justify === 'start' ? -inner : justify === 'end' ? inner - width : -width / 2)
  const write = (parts: readonly CalloutPart[], at: Vec2, anchor: Justify) =>
    lettering(parts, { ...STYLE, role: 'dimension', at, height: figures.text, anchor, angle, tie })
  const { box } = block
  const items = block.lines.flatMap((line, i): SheetItem[] => {
    if (!box || i > 0) {
      return write(line.parts, put(justify === 'start' ? -inner : justify === 'end' ? inner : 0, line.base), justify)
    }
    const { count, rest } = counted(line.parts)
    const left = leftOf(line.width) + box.before
    const [low, high] = [line.base - box.below, line.base + box.above]
    const corners = [put(left, low), put(left + box.width, low), put(left + box.width, high), put(left, high)]
    return [
      ...(count === '' ? [] : write([count], put(left - box.before, line.base), 'start')),
      ...write(rest, put(left + FRAME * figures.text, line.base), 'start'),
      ...corners.map((p, k): SheetItem => {
        const curve = { kind: 'line' as const, a: p, b: corners[(k + 1) % 4]! }
        return { item: 'stroke', kind: 'symbol', curve, width: figures.line, tie }
      }),
    ]
  })
  for (const { art, base, left } of block.signs) {
    const spare = block.width / 2 - art.width
    const x = left ?? (justify === 'start' ? -block.width / 2 : justify === 'end' ? spare : -art.width / 2)
    items.push(...artItems(art, { at: put(x, base), angle, height: figures.text, line: figures.line, tie }))
  }
  return items
}
