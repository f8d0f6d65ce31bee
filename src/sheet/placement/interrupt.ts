import type { Vec2 } from '../../geometry/vec.ts'
import type { SheetItem } from '../sheet.ts'
import { CLEAR } from './clearances.ts'
import { type Slab, withinSlab } from './shapes.ts'

type Stroke = Extract<SheetItem, { item: 'stroke' }>

/** Centre lines broken where the text of a size stands over them (common practice, no source); all else as it was. */
export function interrupted(items: readonly SheetItem[], texts: readonly Slab[]): SheetItem[] {
  return items.flatMap((item): SheetItem[] => {
    if (item.item !== 'stroke' || item.kind !== 'centre' || item.curve.kind !== 'line') return [item]
    let pieces: Stroke[] = [item]
    for (const text of texts) pieces = pieces.flatMap((p) => without(p, text))
    return pieces
  })
}

function without(stroke: Stroke, text: Slab): Stroke[] {
  if (stroke.curve.kind !== 'line') return [stroke]
  const { a, b } = stroke.curve
  const gap = withinSlab(a[0], a[1], b[0], b[1], text, CLEAR.line)
  if (!gap) return [stroke]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const [from, to] = [gap[0] * length, gap[1] * length]
  const drawn = strokesOf(stroke.dashes ?? [length])
  return [piece(stroke, length, clipped(drawn, 0, from)), piece(stroke, length, clipped(drawn, to, length))].filter(
    (p) => p !== undefined,
  )
}

type Run = readonly [from: number, to: number]

function strokesOf(dashes: readonly number[]): Run[] {
  let at = 0
  const runs: Run[] = []
  dashes.forEach((d, i) => {
    if (i % 2 === 0) runs.push([at, at + d])
    at += d
  })
  return runs
}

/** What is drawn between two places; scraps shorter than 0.3 mm are left out. */
function clipped(runs: readonly Run[], from: number, to: number): Run[] {
  return runs.map(([s, e]): Run => [Math.max(s, from), Math.min(e, to)]).filter(([s, e]) => e - s > 0.3)
}

function piece(stroke: Stroke, length: number, runs: readonly Run[]): Stroke | undefined {
  const first = runs[0]
  const last = runs.at(-1)
  if (!first || !last || stroke.curve.kind !== 'line') return undefined
  const { a, b } = stroke.curve
  const at = (s: number): Vec2 => [a[0] + ((b[0] - a[0]) * s) / length, a[1] + ((b[1] - a[1]) * s) / length]
  const dashes = runs.flatMap(([s, e], i) => (i === 0 ? [e - s] : [s - runs[i - 1]![1], e - s]))
  const { dashes: _old, ...rest } = stroke
  return {
    ...rest,
    curve: { kind: 'line', a: at(first[0]), b: at(last[1]) },
    ...(dashes.length > 1 ? { dashes } : {}),
  }
}
