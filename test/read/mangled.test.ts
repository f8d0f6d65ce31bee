import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { compileSolid } from '../../src/app/compile-solid.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { shapes } from '../../src/kernel/shapes.ts'

let kernel: OcctKernel
let text: string
beforeAll(async () => {
  kernel = await openKernel()
  const make = shapes(kernel)
  const solid = make.cut(make.box([0, 0, 0], [40, 30, 10]), make.cylinder([12, 15, 0], [0, 0, 1], 4, 10))
  text = kernel.step(solid, { name: 'Plate', unit: 'mm' })
})

describe('a mangled file', () => {
  // What may happen to a file on its way: characters changed, pieces lost, doubled or cut off.
  it('never throws, and says in a mark what it lost where nothing is drawn', () => {
    const spot = fc.double({ min: 0, max: 1, noNaN: true })
    const change = fc.record({
      at: spot,
      length: fc.integer({ min: 0, max: 200 }),
      put: fc.oneof(
        fc.constantFrom('', ';', "'", '(', ')', '#1', '#99999', '$', '0.', '-1.E5'),
        fc.string({ maxLength: 5 }),
      ),
    })
    let drawn = 0
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (changes) => {
        let mangled = text
        for (const { at, length, put } of changes) {
          const from = Math.floor(at * mangled.length)
          mangled = mangled.slice(0, from) + put + mangled.slice(from + length)
        }
        const drawing = compileSolid(mangled, kernel)
        if (drawing.sheet) drawn++
        else expect(drawing.marks.some((m) => m.weight === 'must change')).toBe(true)
        if (drawing.part) kernel.free(drawing.part.solid)
      }),
      { numRuns: 60, seed: 7 },
    )
    expect(drawn).toBeGreaterThan(0)
  })
})
