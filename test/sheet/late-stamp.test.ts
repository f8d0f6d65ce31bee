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

  it('stands over the title block where that is free, and else beside it, clear of the views', () => {
    const wide = formatNamed('A3')!
    const frame = frameOf(wide)
    const title = boxOf(frame.max[0] - 180, frame.min[1], frame.max[0], frame.min[1] + 56)
    const onA3 = { frame, title, obstacles: [title], views: [], rooms: [], sizes: [] }
    const free = boxOfStamp(lateStamp(onA3, words)!)
    expect(free.min[1] - title.max[1]).toBeLessThan(6)
    // A size a few millimetres over the title block: common practice, no source, keeps the stamp out of the views.
    const size = boxOf(title.min[0], title.max[1] + 10, title.max[0], title.max[1] + 40)
    const beside = boxOfStamp(lateStamp({ ...onA3, sizes: [size] }, words)!)
    expect(beside.max[0]).toBeLessThan(title.min[0])
    expect(beside.max[1]).toBeLessThan(title.max[1])
    // Over the centring mark, which reaches 5 mm into the drawing space (ISO 5457:1999 §4.3, from memory).
    expect(beside.min[1] - frame.min[1]).toBeGreaterThan(5)
  })

  it('is never printed over anything: where everything is taken there is none', () => {
    expect(lateStamp({ ...bare, obstacles: [frame] }, words)).toBeUndefined()
  })
})
