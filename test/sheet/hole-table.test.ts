import { expect, it } from 'vitest'
import { holeTableBlock } from '../../src/sheet/furniture/hole-table.ts'
import { letteringBox } from '../../src/sheet/lettering/lettering.ts'
import type { Callout, HoleTable } from '../../src/sizes/dimension.ts'
import { practiceFigures } from '../../src/standards/practice-figures.ts'

const bored: Callout = { lines: [['⌀.344 THRU'], ['⌴ ⌀.562 ↧ .33']] }
const reamed: Callout = { lines: [['⌀.2500 ', { stack: ['+.0005', '-.0000'] }, ' THRU']] }
const row = (tag: string, size: Callout): HoleTable['rows'][number] => {
  return { tag, x: '1.25', y: '5.25', size, at: [0, 0], feature: tag }
}
const rows = [
  ...[1, 2, 3].map((n) => row(`A${n}`, bored)),
  ...[1, 2].map((n) => row(`B${n}`, reamed)),
  row('C1', bored),
]
const table: HoleTable = { view: 'top', origin: [0, 0], rows }

it.each(['ASME', 'ISO'] as const)('rules no line through lettering, and says the size of holes alike once, %s', (p) => {
  // Nothing printed over a size: ASME Y14.5-2018 §4.5, ISO 129-1:2018 §5.
  const items = holeTableBlock(table, practiceFigures(p)).at([10, 20])
  const texts = items.flatMap((i) => (i.item === 'text' ? [letteringBox(i.text, i)] : []))
  const rules = items.flatMap((i) =>
    i.item === 'stroke' && i.kind === 'table' && i.curve.kind === 'line' ? [i.curve] : [],
  )
  expect(rules.length).toBeGreaterThan(8)
  for (const t of texts)
    for (const { a, b } of rules) {
      const apart =
        Math.max(a[0], b[0]) < t.min[0] ||
        Math.min(a[0], b[0]) > t.max[0] ||
        Math.max(a[1], b[1]) < t.min[1] ||
        Math.min(a[1], b[1]) > t.max[1]
      expect(apart, JSON.stringify([t, a, b])).toBe(true)
    }
  const said = (text: string) => items.filter((i) => i.item === 'text' && i.text.includes(text)).length
  expect(said('.344')).toBe(2)
  expect(said('.2500')).toBe(1)
  for (const tag of ['A1', 'A2', 'A3', 'B1', 'B2', 'C1']) expect(said(tag)).toBe(1)
})
