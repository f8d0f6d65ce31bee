import { beforeAll, describe, expect, it } from 'vitest'
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

  it('strings follow ISO 10303-21: apostrophe doubled, other letters as \\X2\\', () => {
    expect(stepString("d'arc")).toBe("'d''arc'")
    expect(stepString('⌀ø')).toBe("'\\X2\\230000F8\\X0\\'")
  })

  it('refuses what is no STEP file', () => {
    expect(() => kernel.readStep('not a file')).toThrow(/STEP/)
  })
})
