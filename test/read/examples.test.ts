import { afterEach, beforeAll, describe, expect, it } from 'vitest'
import { compileSolid } from '../../src/app/compile-solid.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { recognise } from '../../src/read/recognise/recognise.ts'
import { freeStepFile, readStepFile } from '../../src/read/step-file.ts'
import { writeStep } from '../../src/write/step.ts'
import { EXAMPLES, examplePart, holeWords, knownHoles } from './known-holes.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})
const kept: { key: number }[] = []
afterEach(() => {
  for (const solid of kept.splice(0)) kernel.free(solid)
})

describe.each(EXAMPLES)('%s, written as STEP and read back', (name) => {
  it('has its volume to 1e-9 and all its holes and slots, none invented', () => {
    const part = examplePart(name, kernel)
    kept.push(part.solid)
    const { file, marks } = readStepFile(writeStep(part, kernel), kernel)
    expect(marks).toEqual([])
    const { solid } = file!.parts[0]!
    expect(file!.placed).toEqual([0])
    expect(file!.unit).toBe(part.brief.header.units)
    expect(Math.abs(kernel.properties(solid).volume / part.properties.volume - 1)).toBeLessThan(1e-9)

    const found = recognise(kernel.body(solid))
    const holes = found.holes.map((h) =>
      holeWords({
        ...h,
        counterbore: h.counterbore,
        countersink: h.countersink,
        point: h.mouth,
        direction: h.outward,
      }),
    )
    expect(holes.sort()).toEqual(knownHoles(part))

    const slots = part.features.flatMap(({ feature, members }) =>
      (feature?.kind === 'slot' || feature?.kind === 'keyseat') && feature.length
        ? members.map(() => `${feature.width.mm.toFixed(4)} × ${feature.length!.mm.toFixed(4)}`)
        : [],
    )
    expect(found.slots.map((s) => `${s.width.toFixed(4)} × ${s.length.toFixed(4)}`).sort()).toEqual(slots.sort())
    freeStepFile(file!, kernel)
  })

  it('is drawn and sized so that its sizes prove complete, without a tolerance made up', () => {
    const part = examplePart(name, kernel)
    kept.push(part.solid)
    const drawing = compileSolid(writeStep(part, kernel), kernel)
    kept.push(drawing.part!.solid)
    expect(drawing.sizes!.proof.sentence).toMatch(/^complete: /)
    expect(drawing.sizes!.proof.repeated).toEqual([])
    expect(drawing.marks.filter((m) => m.weight === 'must change')).toEqual([])
    const measured = drawing.marks.find((m) => m.rule === 'measured-from-solid')!
    expect(measured.text).toMatch(/tolerances are not stated. The sheet stays preliminary until they are/)
    expect(drawing.sheet!.items.some((i) => i.item === 'text' && i.role === 'stamp')).toBe(true)
    const toleranced = drawing.sizes!.dimensions.filter((d) => d.tolerance && d.tolerance.from !== 'none')
    expect(toleranced).toEqual([])
    expect(drawing.brief.header.practice).toBe(part.brief.header.units === 'inch' ? 'ASME' : 'ISO')
    expect(drawing.sheet!.items.length).toBeGreaterThan(20)
  })
})

// Known by the brief: the part of revolution has the axis it was turned about, a flat part its thickness.
describe('the shape as a whole', () => {
  it.each(EXAMPLES)('%s: axis and thickness are those of the brief', (name) => {
    const part = examplePart(name, kernel)
    kept.push(part.solid)
    const { axis, flat } = recognise(kernel.body(part.solid))
    expect(axis !== undefined).toBe(part.axis !== undefined)
    if (axis && part.axis) {
      expect(Math.abs(axis.direction.reduce((sum, c, i) => sum + c * part.axis!.direction[i]!, 0))).toBeCloseTo(1, 12)
    }
    // a flat part without a counterbore: gusset and strap
    expect(flat !== undefined).toBe(['gusset', 'slotted-strap'].includes(name))
  })
})
