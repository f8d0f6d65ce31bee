import fc from 'fast-check'
import { expect, it } from 'vitest'
import { leastFirst } from '../../../src/sheet/placement/least-first.ts'

// ECMAScript 2023, 23.1.3.30: Array.prototype.sort is stable
it('puts options in the order of a stable sort by cost', () => {
  const costs = fc.array(fc.oneof(fc.double({ noNaN: true }), fc.integer({ min: -3, max: 3 })), { maxLength: 200 })
  fc.assert(
    fc.property(costs, (all) => {
      const options = all.map((own, place) => ({ own, place }))
      const expected = [...options].sort((a, b) => a.own - b.own || 0).map((o) => o.place)
      expect(leastFirst(options).map((o) => o.place)).toEqual(expected)
    }),
  )
})
