import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { printReport, reportOn } from '../../src/app/report.ts'
import { inBriefUnits } from '../../src/app/report-units.ts'
import { openKernel } from '../../src/kernel/open.ts'

const kernel = await openKernel()

function reports(text: string) {
  const drawing = compile(text, kernel)
  const own = reportOn(drawing)
  kernel.free(drawing.part!.solid)
  return { own, out: inBriefUnits(own) }
}

const example = (name: string) => readFileSync(new URL(`../../examples/${name}.brief`, import.meta.url), 'utf8')

// 1 in = 25.4 mm and 1 lb = 0.45359237 kg, exact by the international yard and pound agreement of 1959.
it('gives an inch brief in inches and pounds', () => {
  const { own, out } = reports(
    `${example('vent-bracket')}stack     web: hole A edge to bottom, min .25\n`.replace(
      /^holes +upright/m,
      'holes A upright',
    ),
  )
  expect(out).toMatchObject({ units: 'inch', massUnits: 'lb' })
  // A size of the brief is its own number, whatever the program reckons in.
  const size = out.sizes.find((s) => s.text === '3.50')!
  expect(size.value).toBe(3.5)
  expect(size.tolerance).toMatchObject({ upper: 0.01, lower: -0.01 })
  expect(out.solid!.volume * 25.4 ** 3).toBeCloseTo(own.solid!.volume, 3)
  expect(out.solid!.mass! * 0.45359237).toBeCloseTo(own.solid!.mass!, 8)
  // The sheet itself is paper: ANSI B is 11 × 17 in, given in mm (ASME Y14.1-2020, from memory).
  expect(out.sheet!.width).toBeCloseTo(431.8, 6)
  const [stack] = out.stacks
  if (stack!.nominal === undefined) throw new Error(stack!.problem)
  expect(stack!.nominal * 25.4).toBeCloseTo(own.stacks[0]!.nominal!, 6)
  expect(stack!.wanted).toEqual({ min: 0.25 })
  expect(printReport(own)).toContain(`${out.solid!.overall[0].toFixed(3)} in`)
})

it('leaves angles in degrees, and frames in the units of the brief', () => {
  const { out } = reports(`units inch
practice ASME
general fractions ±1/64 .XX ±.01 .XXX ±.005 angles ±1/2°
block 4.00 × 3.00 × 1.00
notch top, front: vee, .50 wide, 90°
  centred
bore top: ⌀.750 +.002 -.000 THRU
datum A bottom
frame bore: perpendicularity dia .004 MMC A
`)
  const angle = out.sizes.find((s) => s.direction === 'angle')!
  expect(angle.value).toBe(90)
  expect(angle.tolerance).toMatchObject({ upper: 0.5, lower: -0.5 })
  // ASME Y14.5-2018 5.3 (from memory): the bonus is the size tolerance, the virtual condition of a hole its least size
  // less the tolerance.
  expect(out.frames[0]).toMatchObject({ tolerance: 0.004, bonus: 0.002, boundaries: { virtualCondition: 0.746 } })
})

it('gives a millimetre brief in millimetres and kilograms', () => {
  const { own, out } = reports(example('base-plate'))
  expect(out).toEqual({ ...own, massUnits: 'kg' })
})
