import { beforeAll, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { reportOn } from '../../src/app/report.ts'
import { frameConditions } from '../../src/check/measure/frame-conditions.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

function conditions(text: string) {
  const drawing = compile(text, kernel)
  const found = frameConditions({ brief: drawing.brief, part: drawing.part! })
  const report = reportOn(drawing)
  kernel.free(drawing.part!.solid)
  return { found, report, drawing }
}

const plate = (frame: string) => `units inch
practice ASME
general .XX ±.01 .XXX ±.005 angles ±1°
plate 4.00 × 3.00 × .50
holes A top: 4X ⌀.281 +.006 -.001 THRU
  2 across 3.000 apart, leftmost .500 from left; 2 up 2.000 apart, lowest .500 from front
datum A bottom
datum B left
datum C front
frame ${frame}
`

// ASME Y14.5-2018 section 5: the virtual condition of a hole at M is its least size less the tolerance, the bonus what
// the size departs from there; at L it is the largest size plus the tolerance. Figures by these rules, in inches.
it.each([
  ['holes A: position dia .014 MMC A B C', { bonus: 0.007, virtual: 0.28 - 0.014, outer: 0.287 + 0.014 + 0.007 }],
  ['holes A: position dia .014 LMC A B C', { bonus: 0.007, virtual: 0.287 + 0.014, outer: 0.287 + 0.014 }],
  ['holes A: position dia 0 MMC .005 MAX A B C', { bonus: 0.005, virtual: 0.28, outer: 0.287 + 0.005 }],
  ['holes A: position dia .014 A B C', { bonus: 0, virtual: undefined, outer: 0.287 + 0.014 }],
])('%s', (frame, { bonus, virtual, outer }) => {
  const [row] = conditions(plate(frame)).found
  expect(row!.bonus! / 25.4).toBeCloseTo(bonus, 9)
  expect(row!.boundaries!.outer / 25.4).toBeCloseTo(outer, 9)
  if (virtual === undefined) expect(row!.boundaries!.virtualCondition).toBeUndefined()
  else expect(row!.boundaries!.virtualCondition! / 25.4).toBeCloseTo(virtual, 9)
})

it('takes the limits of a fit from ISO 286', () => {
  // ISO 286-2: 20 k6 is +15/+2 µm. A shaft at M: largest size plus the tolerance.
  const { found } = conditions(`units mm
practice ISO
turned axis left-right
  seat ⌀20 k6, 30 long
  body ⌀30, 40 long
datum A body
frame seat: perpendicularity dia 0.01 MMC A
frame seat: cylindricity 0.005
`)
  expect(found[0]!.limits!.max).toBeCloseTo(20.015, 9)
  expect(found[0]!.boundaries!.virtualCondition).toBeCloseTo(20.025, 9)
  expect(found[0]!.bonus).toBeCloseTo(0.013, 9)
  // The form of a surface has no boundary of an axis.
  expect(found[1]!.boundaries).toBeUndefined()
})

it('stands in the report, with its line, beside the datums and the basic sizes', () => {
  const { report } = conditions(plate('holes A: position dia .014 MMC A B C'))
  expect(report.datums.map((d) => [d.letter, d.feature, d.line])).toEqual([
    ['A', 'bottom', 7],
    ['B', 'left', 8],
    ['C', 'front', 9],
  ])
  expect(report.frames).toMatchObject([
    { text: '⌖ ⌀.014 Ⓜ A B C', feature: 'hole A', line: 10, datums: ['A', 'B', 'C'] },
  ])
  // ASME Y14.5-2018 7.4.1: the located sizes are basic, and no general tolerance applies to them; the others keep it.
  const basic = report.sizes.filter((s) => s.basic)
  expect(basic.map((s) => s.text).sort()).toEqual(['.500', '.500', '2.000', '3.000'])
  for (const s of basic) expect(s.tolerance).toEqual({ upper: 0, lower: 0, from: 'none' })
  const length = report.sizes.find((s) => s.text === '4.00')!
  expect(length.tolerance!.upper / 25.4).toBeCloseTo(0.01, 9)
})
