import { describe, expect, it } from 'vitest'
import type { Vec2 } from '../../../src/geometry/vec.ts'
import { placeDimensions } from '../../../src/sheet/placement/place-dimensions.ts'
import { field, hole, place, rect, seg, sizeSet, view } from './fixtures.ts'

// Common practice, no source: a tag stands nearer to its own hole than to anything else.

describe('a tag of a hole table', () => {
  it('stands nearer to its own hole than to a slot beside it', () => {
    // The tag's first choice, upper right of the hole, would all but touch the slot's lower side.
    const [c, r]: [Vec2, number] = [[20, 20], 3]
    const slot = [
      seg([19, 29.7], [60, 29.7]),
      seg([19, 36], [60, 36]),
      seg([19, 29.7], [19, 36]),
      seg([60, 29.7], [60, 36]),
    ]
    const plate = view('top', [...rect(0, 0, 80, 60), ...slot, ...hole(c, r)], { min: [0, 0], max: [80, 60] })
    const size = { lines: [['⌀6']] }
    const rows = [{ tag: 'A1', x: '20', y: '20', size, at: c, feature: 'hole 1' }]
    const { items } = placeDimensions({
      views: [place(plate, [100, 100])],
      sizes: sizeSet([], [{ view: 'top', origin: [0, 0], rows }]),
      practice: 'ISO',
      obstacles: [],
      bounds: field(297, 210),
    })
    const tag = items.find((i) => i.item === 'text' && i.text === 'A1')
    expect(tag).toBeDefined()
    if (tag?.item !== 'text') return
    // The middle of the lettering, up from its baseline.
    const [x, y] = [tag.at[0] - 100, tag.at[1] - 100 + tag.height / 2]
    expect(tag.anchor).toBe('middle')
    const toSlot = Math.abs(29.7 - y)
    expect(Math.hypot(x - c[0], y - c[1]) - r).toBeLessThan(toSlot)
  })
})
