import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { compile } from '../../../src/app/compile.ts'
import { pointAt } from '../../../src/geometry/evaluate.ts'
import type { Vec2 } from '../../../src/geometry/vec.ts'
import { openKernel } from '../../../src/kernel/open.ts'
import type { SheetItem } from '../../../src/sheet/sheet.ts'

// A leader’s arrowhead ends on a line (ISO 128-2 §Leader lines; ASME Y14.2 §Leader lines; both from memory).

const folder = new URL('../../../examples/', import.meta.url)
const names = readdirSync(folder).filter((f) => f.endsWith('.brief'))
const kernel = await openKernel()

const drawn: ReadonlySet<string> = new Set([
  'visible',
  'hidden',
  'centre',
  'thread',
  'extension',
  'dimension',
  'phantom',
])

/** Distance from a point to the drawn curve, mm, along chords finer than the width of a line. */
function distance([x, y]: Vec2, item: SheetItem & { item: 'stroke' }): number {
  const n = item.curve.kind === 'line' ? 1 : 180
  let least = Infinity
  for (let i = 0; i < n; i++) {
    const [a, b] = [pointAt(item.curve, i / n), pointAt(item.curve, (i + 1) / n)]
    const [ux, uy] = [b[0] - a[0], b[1] - a[1]]
    const t = Math.max(0, Math.min(1, ((x - a[0]) * ux + (y - a[1]) * uy) / (ux * ux + uy * uy || 1)))
    least = Math.min(least, Math.hypot(a[0] + t * ux - x, a[1] + t * uy - y))
  }
  return least
}

describe('the leaders of the examples', () => {
  it.each(names)('%s: each ends on a line that is printed', (name) => {
    const { sheet, part } = compile(readFileSync(new URL(name, folder), 'utf8'), kernel)
    kernel.free(part!.solid)
    const strokes = sheet!.items.filter((i) => i.item === 'stroke' && drawn.has(i.kind))
    const leaders = sheet!.items.filter((i) => i.item === 'stroke' && i.kind === 'leader')
    const heads = sheet!.items.flatMap((i) => {
      if (i.item !== 'fill' || i.kind !== 'arrowhead') return []
      const tip = pointAt(i.outline[0]!, 0)
      const own = leaders.filter((l) => l.item === 'stroke' && l.tie?.dimension === i.tie?.dimension)
      const onLeader = own.some((l) => l.item === 'stroke' && distance(tip, l) < 0.05)
      return onLeader ? [{ tip, id: i.tie?.dimension }] : []
    })
    for (const { tip, id } of heads) {
      const off = Math.min(...strokes.map((s) => (s.item === 'stroke' ? distance(tip, s) : Infinity)))
      expect(off, id).toBeLessThan(0.1)
    }
  })
})
