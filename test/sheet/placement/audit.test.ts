import { describe, expect, it } from 'vitest'
import type { Vec2 } from '../../../src/geometry/vec.ts'
import { type Audit, auditSizes } from '../../../src/sheet/placement/audit.ts'
import type { SheetItem, StrokeKind } from '../../../src/sheet/sheet.ts'
import { sheetOf } from './fixtures.ts'

// The audit must find faults that are drawn on purpose, and nothing on a sound drawing.

const line = (kind: StrokeKind, a: Vec2, b: Vec2, dimension?: string): SheetItem => ({
  item: 'stroke',
  kind,
  curve: { kind: 'line', a, b },
  width: 0.3,
  ...(dimension ? { tie: { dimension } } : {}),
})
const text = (t: string, at: Vec2, dimension: string): SheetItem => ({
  item: 'text',
  role: 'dimension',
  text: t,
  at,
  height: 3,
  anchor: 'middle',
  angle: 0,
  tie: { dimension },
})
function head(tip: Vec2, way: Vec2, dimension: string): SheetItem {
  const at = (s: number, w: number): Vec2 => [tip[0] - way[0] * s - way[1] * w, tip[1] - way[1] * s + way[0] * w]
  const p = [tip, at(3, 0.5), at(3, -0.5)]
  return {
    item: 'fill',
    kind: 'arrowhead',
    outline: p.map((a, i) => ({ kind: 'line', a, b: p[(i + 1) % 3]! })),
    tie: { dimension },
  }
}

/** A plate edge from (50, 50) to (100, 50) with a size 10 mm above it: sound. */
function sound(): SheetItem[] {
  return [
    line('visible', [50, 50], [100, 50]),
    line('visible', [50, 50], [50, 20]),
    line('visible', [100, 50], [100, 20]),
    line('extension', [50, 51.5], [50, 63], 'a'),
    line('extension', [100, 51.5], [100, 63], 'a'),
    line('dimension', [50, 60], [71, 60], 'a'),
    line('dimension', [79, 60], [100, 60], 'a'),
    head([50, 60], [-1, 0], 'a'),
    head([100, 60], [1, 0], 'a'),
    text('50', [75, 58.5], 'a'),
  ]
}

const audit = (...more: SheetItem[]): Audit => auditSizes(sheetOf([], [...sound(), ...more], 200, 200), 'ASME')
const faults = (a: Audit) => a.findings.map((f) => f.what)

describe('the audit of sizes', () => {
  it('finds nothing on a sound drawing', () => {
    expect(audit().findings).toEqual([])
  })
  it('finds text over text', () => {
    expect(audit(text('8', [76, 59], 'b')).textOnText).toBe(1)
  })
  it('finds text on a line of another size and of a view', () => {
    expect(faults(audit(line('leader', [70, 62], [80, 57], 'b')))).toContain('textOnLine')
    expect(audit(line('centre', [75, 40], [75, 70])).textOnLine).toBe(1)
  })
  it('finds text on its own dimension line', () => {
    expect(audit(line('dimension', [70, 60], [80, 60], 'a')).textOnLine).toBe(1)
  })
  it('finds heads over heads, text and outlines', () => {
    // Over the other head and over the line that ends there.
    expect(audit(head([51, 60.2], [-1, 0], 'b')).arrowCollisions).toBe(2)
    expect(audit(head([76, 60], [1, 0], 'b')).arrowCollisions).toBe(1)
    expect(audit(line('visible', [52, 55], [52, 65])).arrowCollisions).toBe(1)
  })
  it('allows two heads tip to tip at a common extension line', () => {
    expect(audit(head([50, 60], [1, 0], 'b')).arrowCollisions).toBe(0)
  })
  it('finds a dimension line crossed by an extension line, a leader, an outline', () => {
    for (const kind of ['extension', 'leader', 'visible'] as const) {
      expect(audit(line(kind, [60, 56], [62, 66], 'b')).dimensionLineCrossings).toBe(1)
    }
  })
  it('finds rows closer than 6 mm and first rows closer than 10 mm (ASME Y14.5-2018 Fig. 4-6)', () => {
    expect(audit(line('dimension', [50, 65.5], [90, 65.5], 'b')).rowsTooClose).toBe(2)
    expect(audit(line('dimension', [50, 66], [90, 66], 'b')).rowsTooClose).toBe(0)
    expect(audit(line('dimension', [60, 59], [70, 59], 'c')).firstRowsTooClose).toBe(1)
  })
  it('finds an extension line that touches the outline or stops at the dimension line', () => {
    expect(audit(line('extension', [80, 50.5], [80, 57], 'b')).gapsMissing).toBe(1)
    const short = [line('extension', [120, 51.5], [120, 60], 'b'), head([120, 60], [1, 0], 'b')]
    expect(audit(...short).overshootsMissing).toBe(1)
  })
  it('finds level leaders', () => {
    expect(audit(line('leader', [120, 80], [130, 80], 'b'), head([120, 80], [-1, 0], 'b')).leadersLevel).toBe(1)
  })
})
