import fc from 'fast-check'
import { expect, it } from 'vitest'
import { meet } from '../../../src/sheet/placement/shapes.ts'
import { Squares } from '../../../src/sheet/placement/squares.ts'

// Against trying every piece, one by one.

const coordinate = fc.oneof(fc.integer({ min: -40, max: 40 }), fc.double({ min: -40, max: 40, noNaN: true }))
const piece = fc.tuple(coordinate, coordinate, coordinate, coordinate)

it('looks at every piece that a line crosses, each once', () => {
  fc.assert(
    fc.property(fc.array(piece, { minLength: 1, maxLength: 30 }), piece, (pieces, [ax, ay, bx, by]) => {
      const seen: number[] = []
      new Squares(Float64Array.from(pieces.flat())).along(ax, ay, bx, by, (i) => {
        seen.push(i)
        return false
      })
      expect(new Set(seen).size).toBe(seen.length)
      const crossed = pieces.flatMap(([cx, cy, dx, dy], i) =>
        meet(ax, ay, bx, by, cx, cy, dx, dy).how === 'cross' ? [i] : [],
      )
      expect(seen).toEqual(expect.arrayContaining(crossed))
    }),
    { numRuns: 2000, seed: 7 },
  )
})

it('stops when it has seen enough', () => {
  const squares = new Squares(Float64Array.from([0, 0, 0, 10, 5, 0, 5, 10, 9, 0, 9, 10]))
  let looks = 0
  squares.along(-1, 5, 20, 5, () => ++looks === 2)
  expect(looks).toBe(2)
})
