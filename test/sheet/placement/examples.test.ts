import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { compile } from '../../../src/app/compile.ts'
import { openKernel } from '../../../src/kernel/open.ts'
import { auditSizes } from '../../../src/sheet/placement/audit.ts'

const folder = new URL('../../../examples/', import.meta.url)
const names = readdirSync(folder).filter((f) => f.endsWith('.brief'))
const kernel = await openKernel()

describe('the examples’ sheets under the audit', () => {
  it.each(names)('%s: nothing printed over anything, rows and gaps by the practice', (name) => {
    const drawing = compile(readFileSync(new URL(name, folder), 'utf8'), kernel)
    const { sheet, brief, part } = drawing
    if (!sheet || !part) throw new Error(`${name} gives no sheet`)
    kernel.free(part.solid)
    const a = auditSizes(sheet, brief.header.practice)
    const {
      textOnText,
      textOnLine,
      arrowCollisions,
      rowsTooClose,
      firstRowsTooClose,
      leadersLevel,
      overshootsMissing,
    } = a
    expect(a.dimensionLineCrossings).toBe(0)
    expect(
      { textOnText, textOnLine, arrowCollisions, rowsTooClose, firstRowsTooClose, leadersLevel, overshootsMissing },
      JSON.stringify(a.findings.filter((f) => f.what !== 'extensionCrossings').slice(0, 4)),
    ).toEqual({
      textOnText: 0,
      textOnLine: 0,
      arrowCollisions: 0,
      rowsTooClose: 0,
      firstRowsTooClose: 0,
      leadersLevel: 0,
      overshootsMissing: 0,
    })
  })
})
