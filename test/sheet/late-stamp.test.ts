import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Box2 } from '../../src/geometry/evaluate.ts'
import { boxOf } from '../../src/sheet/arrange/boxes.ts'
import { frameOf } from '../../src/sheet/furniture/border.ts'
import { lateStamp } from '../../src/sheet/late-stamp.ts'
import { formatNamed } from '../../src/standards/formats.ts'

const words = ['PRELIMINARY', 'NOT FOR MANUFACTURE'] as const
const format = formatNamed('A4')!
const frame = frameOf(format)
const title = boxOf(frame.min[0], frame.min[1], frame.max[0], frame.min[1] + 56)
const bare = { frame, title, obstacles: [title], views: [], rooms: [], sizes: [] }

/** Corners of the stamp's frame. */
const boxOfStamp = (items: NonNullable<ReturnType<typeof lateStamp>>): Box2 => {
  const points = items.flatMap((i) => (i.item === 'stroke' && i.curve.kind === 'line' ? [i.curve.a, i.curve.b] : []))
  const xs = points.map((p) => p[0])
  const ys = points.map((p) => p[1])
  return boxOf(Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys))
}

describe('the stamp on a sheet laid out without one', () => {
  it('stands inside the frame, and clear of what is there while there is room', () => {
    const box = fc
      .tuple(fc.double({ min: 20, max: 150, noNaN: true }), fc.double({ min: 70, max: 230, noNaN: true }))
      .map(([x, y]) => boxOf(x, y, x + 40, y + 40))
    fc.assert(
      fc.property(fc.array(box, { maxLength: 4 }), (sizes) => {
        const b = boxOfStamp(lateStamp({ ...bare, sizes }, words)!)
        expect(b.min[0]).toBeGreaterThanOrEqual(frame.min[0])
        expect(b.max[1]).toBeLessThanOrEqual(frame.max[1])
        // Four boxes of 40 mm cannot fill the 180 × 210 mm over the title block.
        for (const t of [...sizes, title]) {
          const apart = b.max[0] <= t.min[0] || b.min[0] >= t.max[0] || b.max[1] <= t.min[1] || b.min[1] >= t.max[1]
          expect(apart).toBe(true)
        }
      }),
      { numRuns: 80 },
    )
  })

  it('is never printed over anything: where everything is taken there is none', () => {
    expect(lateStamp({ ...bare, obstacles: [frame] }, words)).toBeUndefined()
  })
})
