import type { Vec2 } from '../../geometry/vec.ts'
import type { Callout, CalloutPart, Dimension } from '../../sizes/dimension.ts'
import { lettering, textExtent } from '../lettering/lettering.ts'
import type { SheetItem, Tie } from '../sheet.ts'
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
  /** Box drawn round a basic size. */
  readonly framed: boolean
}

/** How far the frame of a basic size stands off its text, in text heights. */
const FRAME = 0.5

export function calloutBlock(d: Dimension, figures: PlacementFigures): Block {
  return blockOf(d.reference ? bracketed(d.callout) : d.callout, figures, d.basic)
}

export function blockOf(callout: Callout, figures: PlacementFigures, framed = false): Block {
  const h = figures.text
  const pad = framed ? FRAME * h : 0
  const extents = callout.lines.map((parts) => textExtent(parts, h, STYLE))
  const width = Math.max(0, ...extents.map((e) => e.width))
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
  const bottom = y - (extents.at(-1)?.below ?? 0)
  const shift = -bottom / 2
  return {
    width: width + 2 * pad,
    height: -bottom + 2 * pad,
    firstMid: (bases[0] ?? 0) + shift + h / 2,
    lastMid: (bases.at(-1) ?? 0) + shift + h / 2,
    lines: callout.lines.map((parts, i) => ({ parts, width: extents[i]!.width, base: bases[i]! + shift })),
    framed,
  }
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
  const inner = block.width / 2 - (block.framed ? FRAME * figures.text : 0)
  const items = block.lines.flatMap((line) =>
    lettering(line.parts, {
      ...STYLE,
      role: 'dimension',
      at: put(justify === 'start' ? -inner : justify === 'end' ? inner : 0, line.base),
      height: figures.text,
      anchor: justify,
      angle,
      tie,
    }),
  )
  if (block.framed) {
    const [w, h] = [block.width / 2, block.height / 2]
    const corners = [put(-w, -h), put(w, -h), put(w, h), put(-w, h)]
    corners.forEach((p, i) => {
      const q = corners[(i + 1) % 4]!
      items.push({
        item: 'stroke',
        kind: 'symbol',
        curve: { kind: 'line', a: p, b: q },
        width: figures.line,
        tie,
      })
    })
  }
  return items
}
