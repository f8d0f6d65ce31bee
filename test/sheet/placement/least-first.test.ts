import fc from 'fast-check'
import { expect, it } from 'vitest'
import { LeastFirst } from '../../../src/sheet/placement/least-first.ts'

// ECMAScript 2023, 23.1.3.30: Array.prototype.sort is stable
it('gives places in the order of a stable sort by cost', () => {
  const cost = fc.oneof(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), fc.integer({ min: -3, max: 3 }))
  fc.assert(
    fc.property(fc.array(cost, { maxLength: 200 }), fc.integer({ min: 1, max: 12 }), (some, times) => {
      // Many equal ones, and more of them than are put in order at a time.
      const all = Array.from({ length: times }, () => some).flat()
      const expected = all.map((_, place) => place).sort((a, b) => all[a]! - all[b]! || 0)
      const order = new LeastFirst(Float64Array.from(all))
      expect(Array.from({ length: all.length + 1 }, (_, rank) => order.at(rank))).toEqual([...expected, undefined])
    }),
  )
})
