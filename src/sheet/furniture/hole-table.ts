import type { Vec2 } from '../../geometry/vec.ts'
import type { HoleTable } from '../../sizes/dimension.ts'
import type { PracticeFigures } from '../../standards/practice-figures.ts'
import { type Lettering, lettering, textExtent, textWidth } from '../lettering/lettering.ts'
import type { SheetItem } from '../sheet.ts'

/** A table measured and ready to stand. */
export interface TableBlock {
  readonly width: number
  readonly height: number
  /** Items with the table's lower left corner at the given paper point. */
  at(corner: Vec2): SheetItem[]
}

const HEADINGS = ['HOLE', 'X', 'Y', 'SIZE']
const PAD = 1.5

/** Hole table with letter tags, coordinates from the origin, and the size once a row (ASME Y14.5-2018 Fig. 4-49, from memory). */
export function holeTableBlock(table: HoleTable, figures: PracticeFigures): TableBlock {
  const h = figures.lettering.dimension
  const rows: { readonly cells: readonly (readonly Lettering[])[]; readonly row?: HoleTable['rows'][number] }[] = [
    { cells: HEADINGS.map((t) => [t]) },
    ...table.rows.map((row) => ({ cells: [[row.tag], [row.x], [row.y], row.size.lines], row })),
  ]
  const widths = HEADINGS.map(
    (_, k) => Math.max(...rows.map((r) => Math.max(...r.cells[k]!.map((line) => textWidth(line, h))))) + 2 * PAD,
  )
  const step = h * figures.lettering.lineRatio
  const heights = rows.map((r) => {
    const lines = Math.max(...r.cells.map((c) => c.length))
    const rise = Math.max(...r.cells.flatMap((c) => c.map((line) => textExtent(line, h).below)))
    return 2 * PAD + h + (lines - 1) * step + Math.min(rise, PAD)
  })
  const width = widths.reduce((a, b) => a + b, 0)
  const height = heights.reduce((a, b) => a + b, 0)
  return {
    width,
    height,
    at([x0, y0]) {
      const items: SheetItem[] = []
      const rule = (a: Vec2, b: Vec2, thick = false) =>
        items.push({
          item: 'stroke',
          kind: 'table',
          curve: { kind: 'line', a, b },
          width: thick ? figures.widths.thick : figures.widths.thin,
        })
      let y = y0 + height
      rows.forEach((r, i) => {
        let x = x0
        r.cells.forEach((lines, k) => {
          lines.forEach((line, n) => {
            items.push(
              ...lettering(line, {
                at: [x + PAD, y - PAD - h - n * step],
                height: h,
                role: 'table',
                ...(r.row ? { tie: { view: table.view, features: [r.row.feature] } } : {}),
              }),
            )
          })
          x += widths[k]!
        })
        y -= heights[i]!
        rule([x0, y], [x0 + width, y], i === 0 || i === rows.length - 1)
      })
      rule([x0, y0 + height], [x0 + width, y0 + height], true)
      let x = x0
      for (const [k, w] of [0, ...widths].entries()) {
        x += w
        rule([x, y0], [x, y0 + height], k === 0 || k === widths.length)
      }
      return items
    },
  }
}
