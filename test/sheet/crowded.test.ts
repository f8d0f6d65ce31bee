import { describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { auditSizes } from '../../src/sheet/placement/audit.ts'
import type { SheetItem } from '../../src/sheet/sheet.ts'

// Legibility: nothing is printed over a size (ASME Y14.5-2018 §4.5, ISO 129-1:2018 §5, from memory).

const kernel = await openKernel()

/** A block with holes of as many sizes, on a sheet far too small for them. */
const crowded = (holes: number) => `part      Crowded block
units     mm
practice  ISO
material  S235JR
general   ISO 2768-m
sheet     A4
scale     1:5
block     200 × 60 × 30
${Array.from({ length: holes }, (_, i) => `hole ${'ABCDEFGHJKLMNPQRSTUVWXYZ'[i]} top: ⌀${(3 + 0.3 * i).toFixed(1)} THRU\n  ${(8 + 7.3 * i).toFixed(1)} from left; ${8 + ((i * 17) % 44)} from front`).join('\n')}
`

const pointsOf = (item: SheetItem) => {
  if (item.item === 'text') return [item.at]
  if (item.item === 'stroke' && item.curve.kind === 'line') return [item.curve.a, item.curve.b]
  return []
}

describe('a part too crowded for its sheet', () => {
  it.each([12, 24])('with %i holes leaves sizes off, says so, proposes a way, and is stamped in the clear', (holes) => {
    const { sheet, sizes, marks, part } = compile(crowded(holes), kernel)
    kernel.free(part!.solid)
    const crowding = marks.filter((m) => m.rule === 'no-room-for-size')
    expect(crowding.length).toBeGreaterThan(0)
    for (const m of crowding) {
      expect(m.weight).toBe('must change')
      expect(m.expected).toMatch(/hole table.*detail view/)
      // On what it was tried, and that the brief itself stands in the way.
      expect(m.text).toContain('Tried: A4 1:5, by the brief’s sheet and scale.')
      expect(m.expected).toMatch(/another scale or a larger sheet$/)
    }
    // Many holes take a table: it is printed, or said to be left off.
    const printed = sheet!.items.some((i) => i.item === 'text' && i.role === 'table') ? 1 : 0
    expect(marks.filter((m) => m.rule === 'no-room-for-table').length + printed).toBe(sizes!.tables.length)
    const a = auditSizes(sheet!, 'ISO')
    expect([a.textOnText, a.textOnLine, a.arrowCollisions, a.rowsTooClose]).toEqual([0, 0, 0, 0])

    const { items } = sheet!
    const words = items.findIndex((i) => i.item === 'text' && i.role === 'stamp')
    const stamp = items[words]
    expect(stamp?.item === 'text' && stamp.text).toContain('PRELIMINARY')
    // Its own four sides stand before its words; the title block's rules are frames too.
    const sides = items.slice(words - 4, words)
    expect(sides.map((i) => i.item === 'stroke' && i.kind)).toEqual(['frame', 'frame', 'frame', 'frame'])
    const frame = sides.flatMap(pointsOf)
    const [x0, x1] = [Math.min(...frame.map((p) => p[0])), Math.max(...frame.map((p) => p[0]))]
    const [y0, y1] = [Math.min(...frame.map((p) => p[1])), Math.max(...frame.map((p) => p[1]))]
    const inside = items
      .filter((i) => i.tie?.dimension !== undefined)
      .flatMap(pointsOf)
      .filter((p) => p[0] > x0 && p[0] < x1 && p[1] > y0 && p[1] < y1)
    expect(inside).toEqual([])
  })
})
