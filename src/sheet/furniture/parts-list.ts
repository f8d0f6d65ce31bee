import type { Vec2 } from '../../geometry/vec.ts'
import type { AssemblyItem } from '../../part/part.ts'
import type { PracticeFigures } from '../../standards/practice-figures.ts'
import { capitals } from '../lettering/capitals.ts'
import { textWidth } from '../lettering/lettering.ts'
import type { SheetItem } from '../sheet.ts'
import type { TableBlock } from './hole-table.ts'

const PAD = 1.5

/**
 * Parts list of an assembly: item number, quantity and name. It stands on the title block and is read upwards: headings
 * below, the first item over them (ISO 7573:2008, from memory).
 */
export function partsListBlock(
  parts: readonly AssemblyItem[],
  headings: readonly [string, string, string],
  figures: PracticeFigures,
): TableBlock {
  const h = figures.lettering.dimension
  const lettered = (name: string) => (figures.practice === 'ASME' ? capitals(name) : name)
  const rows = [
    headings,
    ...parts.map(({ name, quantity }, i) => [String(i + 1), String(quantity), lettered(name)] as const),
  ]
  const widths = headings.map((_, k) => Math.max(...rows.map((row) => textWidth(row[k]!, h))) + 2 * PAD)
  const step = h + 2 * PAD
  const width = widths.reduce((a, b) => a + b, 0)
  const height = rows.length * step
  const columns = widths.map((_, k) => widths.slice(0, k).reduce((a, b) => a + b, 0))
  return {
    width,
    height,
    at([x0, y0]) {
      const items: SheetItem[] = []
      const rule = (a: Vec2, b: Vec2, thick: boolean) =>
        items.push({
          item: 'stroke',
          kind: 'table',
          curve: { kind: 'line', a, b },
          width: thick ? figures.widths.thick : figures.widths.thin,
        })
      rows.forEach((row, i) => {
        const y = y0 + i * step
        rule([x0, y], [x0 + width, y], i < 2)
        row.forEach((text, k) => {
          items.push({
            item: 'text',
            role: 'table',
            text,
            at: [x0 + columns[k]! + PAD, y + PAD],
            height: h,
            anchor: 'start',
            angle: 0,
          })
        })
      })
      rule([x0, y0 + height], [x0 + width, y0 + height], true)
      for (const [k, x] of [...columns, width].entries())
        rule([x0 + x, y0], [x0 + x, y0 + height], k === 0 || k === columns.length)
      return items
    },
  }
}
