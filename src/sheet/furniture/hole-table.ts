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
/** The column of sizes. */
const SIZE = 3
const PAD = 1.5

/** Rise over the first base line, and depth of all lines below it, mm. */
function extentOf(lines: readonly Lettering[], h: number, step: number): { above: number; below: number } {
  const [first, last] = [lines[0], lines.at(-1)]
  if (!first || !last) return { above: 0, below: 0 }
  return { above: textExtent(first, h).above, below: (lines.length - 1) * step + textExtent(last, h).below }
}

/**
 * Hole table with letter tags, coordinates from the origin, and the size once for holes alike that follow one another
 * (ASME Y14.5-2018 Fig. 4-49, from memory). Rows are as high as their lettering, stacked tolerances included.
 */
export function holeTableBlock(table: HoleTable, figures: PracticeFigures): TableBlock {
  const h = figures.lettering.dimension
  const rows: {
    readonly cells: readonly (readonly Lettering[])[]
    readonly row?: HoleTable['rows'][number]
    /** The size is the row's before. */
    readonly ditto: boolean
  }[] = [
    { cells: HEADINGS.map((t) => [t]), ditto: false },
    ...table.rows.map((row, i) => {
      const ditto = i > 0 && JSON.stringify(table.rows[i - 1]!.size) === JSON.stringify(row.size)
      return { cells: [[row.tag], [row.x], [row.y], ditto ? [] : row.size.lines], row, ditto }
    }),
  ]
  const widths = HEADINGS.map(
    (_, k) => Math.max(...rows.flatMap((r) => r.cells[k]!.map((line) => textWidth(line, h)))) + 2 * PAD,
  )
  const step = h * figures.lettering.lineRatio
  const sized = rows.map((r) => r.cells.map((lines) => extentOf(lines, h, step)))
  const rises = sized.map((cells) => Math.max(...cells.map((c) => c.above)))
  // A size that holds for several rows may stand past its own.
  const heights = sized.map((cells, i) => {
    const own = rows[i + 1]?.ditto ? cells.slice(0, SIZE) : cells
    return 2 * PAD + rises[i]! + Math.max(...own.map((c) => c.below))
  })
  for (const [i, r] of rows.entries()) {
    if (r.ditto || !rows[i + 1]?.ditto) continue
    let last = i + 1
    while (rows[last + 1]?.ditto) last++
    const wanted = 2 * PAD + rises[i]! + sized[i]![SIZE]!.below
    const there = heights.slice(i, last + 1).reduce((a, b) => a + b, 0)
    heights[last]! += Math.max(0, wanted - there)
  }
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
                at: [x + PAD, y - PAD - rises[i]! - n * step],
                height: h,
                role: 'table',
                ...(r.row ? { tie: { view: table.view, features: [r.row.feature] } } : {}),
              }),
            )
          })
          x += widths[k]!
        })
        y -= heights[i]!
        const right = rows[i + 1]?.ditto ? x0 + width - widths[SIZE]! : x0 + width
        rule([x0, y], [right, y], i === 0 || i === rows.length - 1)
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
