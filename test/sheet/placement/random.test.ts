import { describe, expect, it } from 'vitest'
import { auditSizes } from '../../../src/sheet/placement/audit.ts'
import { placeDimensions } from '../../../src/sheet/placement/place-dimensions.ts'
import { bracket, field, plateOfHoles, shaft, sheetOf } from './fixtures.ts'
import { randomSheet } from './random-sheet.ts'

type Case = Pick<ReturnType<typeof bracket>, 'views' | 'sizes' | 'practice' | 'width' | 'height'>

function place(c: Case) {
  const result = placeDimensions({ ...c, obstacles: [], bounds: field(c.width, c.height) })
  return { result, audit: auditSizes(sheetOf(c.views, result.items, c.width, c.height), c.practice) }
}

/** Faults that no sheet may ever have, however crowded. */
function never(audit: ReturnType<typeof auditSizes>) {
  return {
    textOnText: audit.textOnText,
    textOnLine: audit.textOnLine,
    arrowCollisions: audit.arrowCollisions,
    rowsTooClose: audit.rowsTooClose,
    leadersLevel: audit.leadersLevel,
  }
}
const none = { textOnText: 0, textOnLine: 0, arrowCollisions: 0, rowsTooClose: 0, leadersLevel: 0 }

describe('placement of made-up parts', () => {
  it('prints nothing over anything on 500 random sheets, and crosses few dimension lines', { timeout: 600_000 }, () => {
    let sizes = 0
    let unplaced = 0
    let crossings = 0
    const soft = { gaps: 0, overshoots: 0, firstRows: 0 }
    for (let seed = 0; seed < 500; seed++) {
      const c = randomSheet(seed)
      const { result, audit } = place(c)
      expect({ seed, ...never(audit) }, JSON.stringify(audit.findings.slice(0, 3))).toEqual({ seed, ...none })
      sizes += c.sizes.dimensions.length
      unplaced += result.unplaced.length
      crossings += audit.dimensionLineCrossings
      soft.gaps += audit.gapsMissing
      soft.overshoots += audit.overshootsMissing
      soft.firstRows += audit.firstRowsTooClose
    }
    expect(sizes).toBeGreaterThan(6000)
    // Bounds of what was reached, so that a change for the worse is seen: sizes left off, crossings, spacing.
    expect(unplaced / sizes).toBeLessThan(0.005)
    expect(crossings / sizes).toBeLessThan(0.004)
    expect(soft.gaps + soft.overshoots + soft.firstRows).toBeLessThan(sizes * 0.002)
  })

  it('places the hand-made parts without any fault', () => {
    for (const c of [bracket('ASME'), bracket('ISO'), shaft('ASME'), shaft('ISO'), plateOfHoles(40, 'ISO', true)]) {
      const { result, audit } = place(c)
      expect(result.unplaced).toEqual([])
      expect(audit.findings.filter((f) => f.what !== 'extensionCrossings')).toEqual([])
    }
  })

  it('gives the same sheet for the same sizes', () => {
    for (const seed of [3, 57, 211]) {
      const c = randomSheet(seed)
      expect(place(c).result).toEqual(place(c).result)
    }
  })
})
