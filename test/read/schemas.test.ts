import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { compileSolid } from '../../src/app/compile-solid.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { shapes } from '../../src/kernel/shapes.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})
afterAll(() => {
  kernel.oc.Interface_Static.SetCVal('write.step.schema', 'AP214IS')
})

// Names of the schemas: ISO 10303-203:1994, ISO 10303-214:2001, ISO 10303-242:2014.
const SCHEMAS = [
  ['AP203', 'CONFIG_CONTROL_DESIGN'],
  ['AP214IS', 'AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'],
  ['AP242DIS', 'AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF'],
] as const

/** A plate of 4 × 3 × 1 inches with a hole ⌀1, written by the kernel in a schema and a unit. */
function plate(schema: string, unit: 'inch' | 'mm'): string {
  const make = shapes(kernel)
  const [box, cylinder] = [
    make.box([0, 0, 0], [101.6, 76.2, 25.4]),
    make.cylinder([25.4, 38.1, 0], [0, 0, 1], 12.7, 25.4),
  ]
  const solid = make.cut(box, cylinder)
  kernel.step(solid, { name: 'Plate', unit })
  kernel.oc.Interface_Static.SetCVal('write.step.schema', schema)
  const text = kernel.step(solid, { name: 'Plate', unit })
  for (const key of [box, cylinder, solid]) kernel.free(key)
  return text
}

function read(text: string) {
  const drawing = compileSolid(text, kernel)
  const { volume } = kernel.properties(drawing.part!.solid)
  kernel.free(drawing.part!.solid)
  const texts = drawing.sizes!.dimensions.map((d) => d.callout.lines.flat().join(' ')).sort()
  return { ...drawing, volume, texts }
}

// 1 inch is 25.4 mm exactly (international yard and pound agreement, 1959); volume by the closed formula.
const INCHES = 4 * 3 * 1 - Math.PI * 0.25

describe.each(SCHEMAS)('%s', (schema, name) => {
  it.each(['mm', 'inch'] as const)('written in %s is read whole: name, unit, volume, hole and sizes', (unit) => {
    const text = plate(schema, unit)
    expect(text).toContain(name)
    expect(text.includes('CONVERSION_BASED_UNIT')).toBe(unit === 'inch')
    const { part, brief, views, marks, volume, texts } = read(text)
    expect(marks.filter((m) => m.weight === 'must change')).toEqual([])
    expect(brief.header.part!.text).toBe('Plate')
    expect(brief.header.units).toBe(unit)
    expect(Math.abs(volume / (INCHES * 25.4 ** 3) - 1)).toBeLessThan(1e-9)
    expect(part!.features.filter((f) => f.kind === 'hole')).toHaveLength(1)
    // the thickness stands under the view
    expect(views!.thicknessNote).toMatch(unit === 'inch' ? /1\.00/ : /25\.4/)
    expect(texts).toEqual(
      unit === 'inch'
        ? ['1.00', '1.50', '3.00', '4.00', '⌀1.00 THRU'].sort()
        : ['101.6', '25.4', '38.1', '76.2', '⌀25.4'].sort(),
    )
  })

  // The same numbers said to be metres: 101.6 m long.
  it('in metres is a thousand times as long as in millimetres', () => {
    const text = plate(schema, 'mm')
    const metres = text.replace(/SI_UNIT\(\.MILLI\.,\.METRE\.\)/, 'SI_UNIT($,.METRE.)')
    expect(metres).not.toBe(text)
    const { volume, brief } = read(metres)
    expect(Math.abs(volume / (INCHES * 25.4 ** 3 * 1e9) - 1)).toBeLessThan(1e-9)
    expect(brief.header.units).toBe('mm')
  })
})
