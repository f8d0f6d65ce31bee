import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { compileSolid } from '../../src/app/compile-solid.ts'
import type { Curve2 } from '../../src/geometry/curve2.ts'
import { pointAt } from '../../src/geometry/evaluate.ts'
import type { Vec2 } from '../../src/geometry/vec.ts'
import { boxOfCurve3, unionOfBoxes } from '../../src/kernel/box3.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { shapes } from '../../src/kernel/shapes.ts'
import { freeStepFile, readStepFile, stepPart } from '../../src/read/step-file.ts'

// The public translator round-robin part "as1" (source: test/data/README.md).
const as1 = readFileSync(new URL('../data/as1-oc-214.stp', import.meta.url), 'utf8')

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

describe('an assembly', () => {
  it('has the known 18 solids of as1: plate, two brackets, rod, eight nuts, six bolts', () => {
    const { file, marks } = readStepFile(as1, kernel)
    expect(marks).toEqual([])
    expect(file!.name).toBe('as1')
    expect(file!.unit).toBe('mm')
    expect(file!.placed.length).toBe(18)
    expect(Object.fromEntries(file!.parts.map((p) => [p.name, p.count]))).toEqual({
      plate: 1,
      'l-bracket': 2,
      rod: 1,
      nut: 8,
      bolt: 6,
    })
    freeStepFile(file!, kernel)
  })

  // Closed formulas from the sizes of the parts. The file's own splines stray from true cylinders by some 1e-7. It also
  // carries the volumes that its maker computed (AP214 geometric validation property): right to four figures only, the
  // rod, ⌀10 × 200, is said to have 15 708.374 mm³ and the bolt 3 200.278.
  it('has the volumes of its known parts, and those that the file gives for them', () => {
    const bore = (length: number) => Math.PI * 25 * length
    const exact: Record<string, number> = {
      plate: 180 * 150 * 20 - 6 * bore(20),
      'l-bracket': 10 * (60 + 40) * 100 - 4 * bore(10),
      rod: bore(200),
      nut: 20 * 15 * 3 - bore(3),
      bolt: Math.PI * 7.5 ** 2 * 3 + bore(34),
    }
    const given = [...as1.matchAll(/'volume measure',VOLUME_MEASURE\(\s*([\d.E+-]+)\)/g)].map((m) => Number(m[1]))
    const { file } = readStepFile(as1, kernel)
    for (const part of file!.parts) {
      const volume = kernel.properties(part.solid).volume
      const nearest = Math.min(...given.map((g) => Math.abs(g / volume - 1)))
      expect(nearest, part.name).toBeLessThan(1e-4)
      expect(Math.abs(volume / exact[part.name]! - 1), part.name).toBeLessThan(1e-6)
    }
    freeStepFile(file!, kernel)
  })

  it('keeps nothing in the kernel once freed', () => {
    const before = kernel.kept()
    const { file } = readStepFile(as1, kernel)
    expect(kernel.kept()).toBe(before + 6)
    freeStepFile(file!, kernel)
    const drawing = compileSolid(as1, kernel, { solid: 'rod' })
    kernel.free(drawing.part!.solid)
    compileSolid(as1, kernel, { solid: 'screw' })
    expect(kernel.kept()).toBe(before)
  })

  it('gives a part by its name or by its place, and says what there is otherwise', () => {
    const { file } = readStepFile(as1, kernel)
    const named = stepPart(file!, 'L-Bracket')
    expect(named).toBe(file!.parts.find((p) => p.name === 'l-bracket'))
    const first = stepPart(file!, '1')
    expect(first).toBe(file!.parts[file!.placed[0]!])
    expect(stepPart(file!, '19')).toMatch(/no solid 19 in as1: expected a number from 1 to 18, or one of .*plate/)
    freeStepFile(file!, kernel)
  })
})

describe('drawing as1', () => {
  it('whole: views, overall sizes, one centre line for each axis, stamped preliminary', () => {
    const { part, views, sizes, sheet, marks } = compileSolid(as1, kernel)
    expect(marks.filter((m) => m.weight === 'must change')).toEqual([])
    expect(marks.find((m) => m.rule === 'assembly')!.text).toMatch(
      /^as1 holds 18 solids: 8 × nut, rod, 6 × bolt, 2 × l-bracket, plate\./,
    )
    expect(views!.views.map((v) => v.id)).toEqual(['front', 'top', 'left', 'pictorial'])
    expect(sizes!.dimensions.map((d) => Math.round(d.value * 1e6) / 1e6)).toEqual([200, 150, 84])
    // six bolts and the rod
    expect(part!.features.length).toBe(7)
    expect(sheet!.items.some((i) => i.item === 'text' && i.role === 'stamp')).toBe(true)
    kernel.free(part!.solid)
  })

  // ISO 7573:2008, from memory: on a drawing the list is read upwards from its headings.
  it('whole: with a parts list of the known 18 solids, read upwards from its headings', () => {
    const { part, sheet } = compileSolid(as1, kernel)
    kernel.free(part!.solid)
    const cells = sheet!.items.flatMap((i) => (i.item === 'text' && i.role === 'table' ? [i] : []))
    const levels = [...new Set(cells.map((c) => c.at[1]))].sort((a, b) => a - b)
    const rows = levels.map((y) =>
      cells
        .filter((c) => c.at[1] === y)
        .sort((a, b) => a.at[0] - b.at[0])
        .map((c) => c.text),
    )
    expect(rows[0]).toEqual(['Item', 'Qty', 'Designation'])
    expect(rows.slice(1).map(([item]) => item)).toEqual(['1', '2', '3', '4', '5'])
    const known = Object.fromEntries(rows.slice(1).map(([, quantity, name]) => [name, Number(quantity)]))
    expect(known).toEqual({ plate: 1, 'l-bracket': 2, rod: 1, nut: 8, bolt: 6 })
  })

  // Sizes known from the closed formulas above; the two sets of three holes of the plate stand on circles of 30.
  it.each([
    ['plate', ['180', '150', '40', '75', '140', '⌀30', '⌀30', '3× ⌀10', '3× ⌀10']],
    ['l-bracket', ['50', '60', '100', '10', '10', '40', '50', '⌀10', '35', '50', '⌀30', '3× ⌀10']],
    ['rod', ['200', '⌀10']],
    ['nut', ['20', '15', '10', '7.5', '⌀10']],
    ['bolt', ['37', '⌀15', '⌀10', '3']],
  ])('%s: sized completely and without a fault', (name, known) => {
    const { part, sizes, sheet, marks } = compileSolid(as1, kernel, { solid: name })
    expect(marks.filter((m) => m.weight === 'must change')).toEqual([])
    expect(sizes!.proof.sentence).toMatch(/^complete/)
    const texts = sizes!.dimensions.map((d) => d.callout.lines.flat().join(' '))
    expect([...texts].sort()).toEqual([...known].sort())
    expect(sheet!.items.length).toBeGreaterThan(20)
    kernel.free(part!.solid)
  })
})

/** Distance of a point from a straight line between its ends. */
function awayFrom(curve: Curve2, [x, y]: Vec2): number {
  const [a, b] = [pointAt(curve, 0), pointAt(curve, 1)]
  const [u, v] = [b[0] - a[0], b[1] - a[1]]
  const t = Math.min(1, Math.max(0, ((x - a[0]) * u + (y - a[1]) * v) / (u * u + v * v)))
  return Math.hypot(x - a[0] - t * u, y - a[1] - t * v)
}

// ISO 6433:2012, from memory: each item of the list once, its leader ending on the outline of the part that it names.
describe('item numbers of as1', () => {
  it('stand each once in one view, in a ring, and point at the part that the parts list says', () => {
    const { part, views, sheet, marks } = compileSolid(as1, kernel)
    const body = kernel.body(part!.solid)
    kernel.free(part!.solid)
    expect(marks.filter((m) => m.rule.startsWith('no-room'))).toEqual([])
    const front = views!.views.find((v) => v.id === 'front')!
    const placed = sheet!.views.find((v) => v.id === 'front')!
    // the longest extent of each part, from the closed formulas above
    const known: Record<string, number> = { plate: 180, 'l-bracket': 100, rod: 200, nut: 20, bolt: 37 }
    part!.items!.forEach((item, i) => {
      const id = `item ${i + 1}`
      const own = sheet!.items.filter((s) => 'tie' in s && s.tie?.dimension === id)
      expect(own.filter((s) => s.item === 'text').map((s) => s.item === 'text' && s.text)).toEqual([String(i + 1)])
      const rings = own.flatMap((s) => (s.item === 'stroke' && s.curve.kind === 'arc' ? [s.curve] : []))
      expect(rings.map((c) => Math.abs(c.sweep))).toEqual([2 * Math.PI])
      const tips = own.flatMap((s) => (s.item === 'fill' ? [pointAt(s.outline[0]!, 0)] : []))
      expect(tips).toHaveLength(1)
      const [x, y] = [0, 1].map((k) => (tips[0]![k]! - placed.origin[k]!) / placed.scale) as [number, number]
      // the nearest visible line is one of a face of this item
      const nearest = front.lines
        .filter((l) => l.kind === 'visible' && l.curve.kind === 'line')
        .map((l) => ({ l, d: awayFrom(l.curve, [x, y]) }))
        .sort((a, b) => a.d - b.d)[0]!
      expect(nearest.d).toBeLessThan(0.5)
      const faces = new Set(item.instances.flat())
      expect(nearest.l.sources.flatMap((s) => s.faces).every((f) => faces.has(f))).toBe(true)
      const edges = body.edges.filter((e) => e.faces.some((f) => f !== undefined && item.instances[0]!.includes(f)))
      const { min, max } = unionOfBoxes(edges.map((e) => boxOfCurve3(e.curve)))
      const extent = max.map((c, k) => Math.round(c - min[k as 0 | 1 | 2]))
      expect(Math.max(...extent), item.name).toBe(known[item.name])
    })
  })
})

describe('units', () => {
  // 1 inch is 25.4 mm exactly (international yard and pound agreement, 1959)
  it.each(['inch', 'mm'] as const)('a box written in %s is read in millimetres', (unit) => {
    const box = shapes(kernel).box([0, 0, 0], [25.4, 50.8, 10])
    const { file } = readStepFile(kernel.step(box, { name: 'Box', unit }), kernel)
    expect(file!.unit).toBe(unit)
    expect(file!.name).toBe('Box')
    const { max } = kernel.body(file!.whole).box
    expect(max.map((c) => Math.round(c * 1e9) / 1e9)).toEqual([25.4, 50.8, 10])
    freeStepFile(file!, kernel)
    kernel.free(box)
  })
})

describe('what cannot be read is said plainly', () => {
  const said = (text: string) => {
    const drawing = compileSolid(text, kernel)
    if (drawing.part) kernel.free(drawing.part.solid)
    return { ...drawing, text: drawing.marks.map((m) => m.text).join('\n') }
  }

  it.each([
    ['', 'not-step', /empty; it is no STEP file/],
    ['hello', 'not-step', /begins with “hello”; it is no STEP file/],
    ['PK\u0003\u0004', 'not-step', /begins with “PK··”/],
    ['ISO-10303-21;\nHEADER;\nENDSEC;\nDATA;\nENDSEC;\nEND-ISO-10303-21;\n', 'no-solid', /no data records/],
    [as1.slice(0, 1500), 'step-cut-off', /cut off: it ends in line 34/],
    [as1.replaceAll('MANIFOLD_SOLID_BREP', 'GEOMETRIC_CURVE_SET'), 'no-solid', /no solid: curves only/],
  ])('%#', (text, rule, words) => {
    const { marks, sheet, text: all } = said(text)
    expect(marks.map((m) => m.rule)).toContain(rule)
    expect(all).toMatch(words)
    expect(sheet).toBeUndefined()
  })

  it('a cut-off file is drawn as far as it goes', () => {
    const { marks, sheet, views, sizes, text } = said(as1.slice(0, 200_000))
    expect(text).toMatch(/cut off: it ends in line 3731 of its data/)
    expect(marks[0]!.weight).toBe('must change')
    expect(sheet).toBeDefined()
    expect(views!.views.length).toBeGreaterThan(1)
    expect(sizes!.proof.complete).toBe(false)
  })

  it('a damaged face is named, and the rest drawn', () => {
    const { marks, sheet } = said(as1.replace('#92 = PLANE', '#92 = PLAIN'))
    expect(marks.filter((m) => m.weight === 'must change').map((m) => m.text)).toEqual([
      'nut: 1 face could not be read and is missing from the drawing: #423 ADVANCED_FACE on PLAIN #92.',
    ])
    expect(sheet).toBeDefined()
    const nut = compileSolid(as1.replace("#92 = PLANE('',#93)", "#92 = PLANE('',#999999)"), kernel, { solid: 'nut' })
    expect(nut.marks.map((m) => m.text).join()).toMatch(/#423 ADVANCED_FACE on PLANE #92/)
    expect(nut.part!.body.faces.length).toBe(7)
    expect(nut.sizes!.proof.complete).toBe(false)
    kernel.free(nut.part!.solid)
  })
})
