import { describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import type { Curve2 } from '../../src/geometry/curve2.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { withoutSlightSlopes } from '../../src/sheet/slight-slopes.ts'
import { practiceFigures } from '../../src/standards/practice-figures.ts'
import type { View, ViewLine } from '../../src/views/view.ts'

const iso = practiceFigures('ISO', 'A3')
const kernel = await openKernel()

const line = (a: readonly [number, number], b: readonly [number, number], more: Partial<ViewLine> = {}): ViewLine => ({
  curve: { kind: 'line', a, b },
  kind: 'visible',
  sources: [],
  ...more,
})
const circle = (r: number, more: Partial<ViewLine> = {}): ViewLine => ({
  curve: { kind: 'arc', c: [0, 0], r, from: 0, sweep: 2 * Math.PI },
  kind: 'visible',
  sources: [],
  ...more,
})
const view = (lines: ViewLine[]): View => ({
  id: 'front',
  kind: 'principal',
  side: 'front',
  frame: { right: [1, 0, 0], up: [0, 0, 1], toViewer: [0, -1, 0] },
  lines,
  hatched: [],
  cuttingPlanes: [],
  box: { min: [-50, -50], max: [50, 50] },
})
const radii = (v: View) => v.lines.flatMap(({ curve: c }) => (c.kind === 'arc' ? [c.r] : []))

// ISO 128-2:2022 (ISO 128-20:1996 §4.4, from memory): at least 0.7 mm between parallel lines; as much white as a narrow
// line: common practice, no source. ISO 128-3:2022, slight slopes (from memory): only the edge of the smaller dimension
// is drawn.
describe('the two edges of a slight slope', () => {
  it('are both drawn where 0.7 mm stands between them and white is left, and one where not', () => {
    // Wide lines are 0.5 mm, narrow ones 0.25: a chamfer of 1 mm needs 0.75 on paper, one hidden 0.7 of white.
    const end = view([circle(20), circle(10, { slopes: [4] }), circle(11, { slopes: [4] })])
    expect(radii(withoutSlightSlopes(end, 0.7, iso))).toEqual([20, 10])
    expect(radii(withoutSlightSlopes(end, 0.75, iso))).toEqual([20, 10, 11])
    const kind = 'hidden' as const
    const behind = view([circle(20), circle(10, { slopes: [4], kind }), circle(11, { slopes: [4], kind })])
    expect(radii(withoutSlightSlopes(behind, 0.94, iso))).toEqual([20, 10])
    expect(radii(withoutSlightSlopes(behind, 0.95, iso))).toEqual([20, 10, 11])
  })

  it('keep the outline', () => {
    const end = view([circle(10, { slopes: [4] }), circle(9.5, { slopes: [4] })])
    expect(radii(withoutSlightSlopes(end, 1, iso))).toEqual([10])
  })

  it('keep a hidden edge only where no visible one stands so near', () => {
    const side = view([
      line([0, 0], [20, 0], { slopes: [7] }),
      line([1, 0.4], [19, 0.4], { slopes: [7], kind: 'hidden' }),
    ])
    expect(withoutSlightSlopes(side, 1, iso).lines.map((l) => l.kind)).toEqual(['visible'])
  })

  it('are no edges of a groove, a thin wall or two slopes', () => {
    const two = view([line([0, 0], [20, 0], { slopes: [1] }), line([0, 0.4], [20, 0.4], { slopes: [2] })])
    expect(withoutSlightSlopes(two, 1, iso)).toBe(two)
    const wall = view([line([0, 0], [20, 0], { slopes: [1] }), line([0, 0.4], [20, 0.4], { slopes: [1] })])
    expect(withoutSlightSlopes(wall, 1, iso).lines).toHaveLength(2)
  })
})

const ring = (scale: string) => `part      Ring
units     mm
practice  ISO
scale     ${scale}
tube      ⌀62 outside, ⌀45 inside, 12 long, axis left-right
chamfer   bore edges: 2X 0.5 × 45°
`

describe('a ring with 0.5 mm chamfers in its bore', () => {
  const upright = (text: string) => {
    const { sheet, part } = compile(text, kernel)
    if (!sheet || !part) throw new Error('no sheet')
    kernel.free(part.solid)
    const xs = sheet.items.flatMap((i) => {
      if (i.item !== 'stroke' || i.kind !== 'visible' || i.tie?.view === 'pictorial' || i.curve.kind !== 'line')
        return []
      const { a, b } = i.curve as Extract<Curve2, { kind: 'line' }>
      return Math.abs(a[0] - b[0]) < 1e-6 && Math.abs(a[1] - b[1]) > 30 ? [a[0]] : []
    })
    return new Set(xs.map((x) => x.toFixed(3))).size
  }

  it('shows its end faces only at 1:1, and the chamfers’ edges too at 2:1 and 5:1', () => {
    expect(upright(ring('1:1'))).toBe(2)
    expect(upright(ring('2:1'))).toBe(4)
    expect(upright(ring('5:1'))).toBe(4)
  })
})
