import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { beginBrief } from '../../src/app/begin.ts'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { shapes } from '../../src/kernel/shapes.ts'
import { buildPart } from '../../src/part/build.ts'
import { writeStep } from '../../src/write/step.ts'
import { EXAMPLES, examplePart } from './known-holes.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

/** Builds a brief without a mark and gives its solid. */
function built(text: string) {
  const brief = readBrief(text)
  const part = buildPart(brief, kernel)
  expect([...brief.marks, ...part.marks].map((m) => m.text)).toEqual([])
  return part
}

describe.each(EXAMPLES)('a brief begun from %s as a STEP file', (name) => {
  // The kernel's boolean operations judge: two solids are the same when their common part is each of them.
  it('builds the same solid again, without a mark', () => {
    const part = examplePart(name, kernel)
    const before = kernel.kept()
    const begun = beginBrief(writeStep(part, kernel), `${name}.step`, kernel)
    expect(kernel.kept()).toBe(before)
    expect(begun.sentence).toMatch(/^It builds the model again/)
    const again = built(begun.text!)
    const low = (body: typeof part.body) => body.box.min
    const by = [0, 1, 2].map((k) => low(part.body)[k]! - low(again.body)[k]!) as [number, number, number]
    const make = shapes(kernel)
    const moved = make.translate(again.solid, by)
    const common = make.common(moved, part.solid)
    const shared = kernel.properties(common).volume
    expect(Math.abs(shared / part.properties.volume - 1)).toBeLessThan(1e-6)
    expect(Math.abs(shared / again.properties.volume - 1)).toBeLessThan(1e-6)
    for (const solid of [common, moved, again.solid, part.solid]) kernel.free(solid)
  })
})

describe('a brief begun from a model', () => {
  // The public translator round-robin part "as1" (source: test/data/README.md).
  const as1 = readFileSync(new URL('../data/as1-oc-214.stp', import.meta.url), 'utf8')
  it.each(['plate', 'l-bracket', 'rod', 'nut', 'bolt'])('builds the %s of a public file again', (name) => {
    const begun = beginBrief(as1, 'as1-oc-214.stp', kernel, name)
    expect(begun.same, begun.sentence).toBe(true)
    kernel.free(built(begun.text!).solid)
  })

  it('asks which one where a file holds several', () => {
    const begun = beginBrief(as1, 'as1-oc-214.stp', kernel)
    expect(begun.text).toBeUndefined()
    expect(begun.marks.map((m) => m.text)).toEqual([
      'as1 holds 5 parts, and a brief is for one: nut, rod, bolt, l-bracket, plate.',
    ])
  })

  it('says in the words of drafters what a bracket is made from', () => {
    const part = examplePart('vent-bracket', kernel)
    const { text } = beginBrief(writeStep(part, kernel), 'vent-bracket.step', kernel)
    kernel.free(part.solid)
    expect(text).toContain(
      `angle     formed, .188 thick, inside R .19
          upright 3.50 high, at rear; base 2.25 toward front; length 3.00
holes     rear: 4X ⌀.281 THRU
          2 across 1.50 apart, centred; 2 up 1.25 apart, lowest 1.50 from bottom
`,
    )
  })

  it('is as a tidy brief would be, but for its comments', () => {
    const part = examplePart('clevis', kernel)
    const { text } = beginBrief(writeStep(part, kernel), 'clevis.step', kernel)
    kernel.free(part.solid)
    const plain = text!.replace(/^#.*\n|^\n/gm, '')
    expect(printBrief(readBrief(plain)).replace(/^\n/gm, '')).toBe(plain)
  })

  it('says how much is missing, and where, of a shape that no statement describes', () => {
    const make = shapes(kernel)
    const [block, ball] = [make.box([0, 0, 0], [60, 40, 20]), make.sphere([20, 10, 20], 8)]
    const dimpled = make.cut(block, ball)
    const begun = beginBrief(kernel.step(dimpled, { name: 'Dimpled', unit: 'mm' }), 'dimpled.step', kernel)
    for (const solid of [block, ball, dimpled]) kernel.free(solid)
    expect(begun.same).toBe(false)
    // half a sphere of R8 in 60 × 40 × 20: 2/3 π 8³ / (48000 − 2/3 π 8³) = 2.285 %
    expect(begun.sentence).toBe(
      'It does not build the whole model yet: its volume is 2.29 % too large, and 1 face is in no statement.',
    )
    expect(begun.text).toContain('# Not said yet: a sphere face about 20 from left, 10 from front, 20 from bottom.')
    kernel.free(built(begun.text!).solid)
  })

  it('leaves nothing in the kernel of a file that holds no solid', () => {
    const before = kernel.kept()
    const begun = beginBrief('ISO-10303-21;\nHEADER;\nENDSEC;\nDATA;\nENDSEC;\nEND-ISO-10303-21;\n', 'x.step', kernel)
    expect(begun.text).toBeUndefined()
    expect(begun.marks.map((m) => m.rule)).toEqual(['no-solid'])
    expect(kernel.kept()).toBe(before)
  })
})
