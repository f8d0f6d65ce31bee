import { expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { printReport, reportOn } from '../../src/app/report.ts'
import { openKernel } from '../../src/kernel/open.ts'

const kernel = await openKernel()

/** What is said in a note is a size of the drawing like any other: ISO 129-1 `t = 8`, ASME custom `.25 THK` (from memory). */
it.each([
  ['mm', 'ISO', 'ISO 2768-mK', 'plate 60 × 40 × 8', 't = 8', 8, { from: 'general', upper: 0.2, lower: -0.2 }],
  ['inch', 'ASME', '.XX ±.01', 'plate 3.00 × 2.00 × .25', '.25 THK', 6.35, { from: 'general' }],
  ['inch', 'ASME', '.XX ±.01', 'plate 3.00 × 2.00 × 1/4 STK', '1/4 STK', 6.35, { from: 'stock' }],
] as const)(
  'a thickness in a note is among the sizes: %s %s %s %s',
  (units, practice, general, stock, text, mm, from) => {
    const drawing = compile(
      `part Trial piece\nunits ${units}\npractice ${practice}\ngeneral ${general}\n${stock}\n`,
      kernel,
    )
    const report = reportOn(drawing)
    kernel.free(drawing.part!.solid)
    const [noted] = report.sizes.filter((s) => s.text === text)
    expect(noted).toMatchObject({
      value: mm,
      direction: 'up-down',
      view: 'top',
      basic: false,
      reference: false,
      line: 5,
    })
    expect(noted!.tolerance).toMatchObject(from)
    expect(printReport(report)).toContain(`${text}  (top view, line 5)`)
    // and no size is counted that is not in the list
    expect(report.sizes).toHaveLength(report.proof!.sizes)
  },
)
