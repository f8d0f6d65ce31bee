import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { keptOpen } from '../../src/app/kept-open.ts'
import { readBrief } from '../../src/brief/read.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { stepString } from '../../src/kernel/step.ts'
import { buildPart } from '../../src/part/build.ts'
import { writeStep } from '../../src/write/step.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

const briefOf = (unit: string) => `part Clamp “No. 1”; d'arc
number X-1
units ${unit}
drawn I. Vasperg, 2024-02-05
firm Tarnholt Air & Pack Works
plate 4 × 3 × 1
round corners: 4X R.5
hole top: ⌀.5 THRU, ⌵ ⌀.8 × 90°
 centred both ways`

describe('STEP (ISO 10303-21)', () => {
  it.each(['inch', 'mm'])('round trip in %s keeps the volume to 1e-9', (unit) => {
    const part = buildPart(readBrief(briefOf(unit)), kernel)
    const text = writeStep(part, kernel)
    const back = kernel.readStep(text)
    expect(part.properties.volume).toBeGreaterThan(1)
    expect(Math.abs(kernel.properties(back).volume / part.properties.volume - 1)).toBeLessThan(1e-9)
    expect(kernel.body(back).faces.length).toBe(part.body.faces.length)
    expect(text.includes("CONVERSION_BASED_UNIT('INCH'")).toBe(unit === 'inch')
    kernel.free(back)
    kernel.free(part.solid)
  })

  it('is the same to the byte, whatever was written before, and says who and when from the brief', () => {
    const part = buildPart(readBrief(briefOf('mm')), kernel)
    const first = writeStep(part, kernel)
    expect(writeStep(part, kernel)).toBe(first)
    expect(first).toContain("'2024-02-05T00:00:00'")
    expect(first).toContain('I. Vasperg')
    expect(first).toMatch(/PRODUCT\('X-1/)
    kernel.free(part.solid)
  })

  it('says in the header’s description, a list of strings (ISO 10303-21, 8.2.1, from memory), that it is preliminary', () => {
    const description = (text: string) => {
      const drawing = compile(text, kernel)
      const step = writeStep(drawing.part!, kernel, keptOpen(drawing))
      kernel.free(kernel.readStep(step))
      kernel.free(drawing.part!.solid)
      return /FILE_DESCRIPTION\(\((.*?)\),'2;1'\);/s.exec(step)![1]
    }
    // No material, no tolerances, no practice: a checker sends it back.
    expect(description(briefOf('mm'))).toMatch(
      /','PRELIMINARY, NOT FOR MANUFACTURE: \d+ marks? must change(; 1 statement not drawn)?'$/,
    )
    const finished = readFileSync('examples/vent-bracket.brief', 'utf8')
    expect(description(finished)).not.toMatch(/PRELIMINARY/)
    expect(description(`${finished}\nhole rear: ⌀5 THRU\n`)).toMatch(/must change; 1 statement not drawn'$/)
  })

  it('strings follow ISO 10303-21: apostrophe doubled, other letters as \\X2\\', () => {
    expect(stepString("d'arc")).toBe("'d''arc'")
    expect(stepString('⌀ø')).toBe("'\\X2\\230000F8\\X0\\'")
  })

  it('refuses what is no STEP file', () => {
    expect(() => kernel.readStep('not a file')).toThrow(/STEP/)
  })
})
