import { describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { openKernel } from '../../src/kernel/open.ts'
import type { SheetItem } from '../../src/sheet/sheet.ts'

/*
 * Tapped holes without a drill in the brief. ISO 6410-1: crest wide, root narrow, end-on three quarters of a circle, their
 * distance not less than twice the wide line (0.5 mm) or 0.7 mm; hatching to the crest. ASME Y14.6, simplified: root
 * dashed. All from memory.
 */

const kernel = await openKernel()
const plate = (practice: string, scale: string, views: string, hole = 'M10 THRU') => `part      Plate
units     mm
practice  ${practice}
scale     ${scale}
block     40 × 30 × 20
hole      top: ${hole}
          centred both ways
views     ${views}
`
type Stroke = Extract<SheetItem, { item: 'stroke' }>
function strokes(practice: string, scale: string, view: string, views = 'front, top', hole?: string): Stroke[] {
  const { sheet, part } = compile(plate(practice, scale, views, hole), kernel)
  kernel.free(part!.solid)
  return sheet!.items.filter((i): i is Stroke => i.item === 'stroke' && i.tie?.view === view)
}
const arcs = (list: Stroke[]) =>
  list.flatMap(({ kind, curve: c }) =>
    c.kind === 'arc' && kind !== 'extension' && kind !== 'leader'
      ? [`${kind} r${c.r.toFixed(2)} ${Math.round((Math.abs(c.sweep) * 180) / Math.PI)}°`]
      : [],
  )
const uprights = (list: Stroke[]) => {
  const lines = list.flatMap(({ kind, curve: c, width }) =>
    c.kind === 'line' && ['visible', 'hidden', 'thread'].includes(kind) && Math.abs(c.a[0] - c.b[0]) < 1e-6
      ? [{ kind, x: c.a[0], width }]
      : [],
  )
  const middle = lines.reduce((sum, l) => sum + l.x, 0) / lines.length
  return [...new Set(lines.map((l) => `${l.kind} ${Math.abs(l.x - middle).toFixed(2)}`))].sort()
}

describe('a tapped hole modelled at its own size', () => {
  it('shows end-on its crest wide within three quarters of a narrow root (ISO)', () => {
    expect(arcs(strokes('ISO', '2:1', 'top')).sort()).toEqual(['thread r10.00 270°', 'visible r8.50 360°'])
  })

  it('keeps crest and root 1 mm apart on paper where they would be nearer', () => {
    // 0.75 mm at 1:1 and 0.375 mm at 1:2 become twice the wide line.
    expect(arcs(strokes('ISO', '1:1', 'top')).sort()).toEqual(['thread r5.00 270°', 'visible r4.00 360°'])
    expect(arcs(strokes('ISO', '1:2', 'top')).sort()).toEqual(['thread r2.50 270°', 'visible r1.50 360°'])
  })

  it('is told from a plain hole however small it is', () => {
    // ISO: crest no smaller than 1.5 wide lines in radius, root 1 mm outside it. ASME gives no figure: 0.75 mm for lines of
    // 0.6 and 0.3 mm, a narrow line's white between them (common practice, no source).
    const circles = (practice: string, hole: string) => arcs(strokes(practice, '1:2', 'top', 'front, top', hole)).sort()
    expect(circles('ISO', 'M4 THRU')).toEqual(['thread r1.75 270°', 'visible r0.75 360°'])
    expect(circles('ASME', 'M10 THRU')).toEqual(['hidden r2.50 360°', 'visible r1.75 360°'])
    expect(circles('ASME', 'M4 THRU')).toEqual(['hidden r1.65 360°', 'visible r0.90 360°'])
  })

  it('shows the root dashed all round (ASME)', () => {
    // 0.75 mm is less than 0.15 of the radius.
    expect(arcs(strokes('ASME', '2:1', 'top')).sort()).toEqual(['hidden r10.00 360°', 'visible r8.50 360°'])
  })

  it('is dashed twice on either side where it is hidden', () => {
    expect(uprights(strokes('ISO', '2:1', 'front'))).toEqual(['hidden 10.00', 'hidden 8.50', 'visible 40.00'])
  })

  it('shows in a section its crest wide, its root narrow, and hatching up to the crest', () => {
    const section = strokes('ISO', '2:1', 'section A-A', 'top; section A-A as front')
    expect(uprights(section)).toEqual(['thread 10.00', 'visible 40.00', 'visible 8.50'])
    const crest = section.flatMap(({ kind, curve: c }) =>
      kind === 'visible' && c.kind === 'line' && Math.abs(c.a[0] - c.b[0]) < 1e-6 ? [c.a[0]] : [],
    )
    const [left, right] = [...new Set(crest.map((x) => Math.round(x * 1000) / 1000))].sort((a, b) => a - b).slice(1, 3)
    const ends = section.flatMap(({ kind, curve: c }) =>
      kind === 'hatching' && c.kind === 'line' ? [c.a[0], c.b[0]] : [],
    )
    expect(ends.some((x) => Math.abs(x - left!) < 1e-2)).toBe(true)
    expect(ends.some((x) => Math.abs(x - right!) < 1e-2)).toBe(true)
    expect(ends.some((x) => x > left! + 1e-2 && x < right! - 1e-2)).toBe(false)
  })

  it.each([
    ['1:1', 'M10 THRU'],
    ['1:2', 'M4 THRU'],
  ])('is pointed at where its root is printed: %s, %s', (scale, hole) => {
    const { sheet, part, sizes } = compile(plate('ISO', scale, 'front, top', hole), kernel)
    kernel.free(part!.solid)
    const note = sizes!.dimensions.find((d) => d.measured.kind === 'leader')!
    const root = sheet!.items.find((i) => i.item === 'stroke' && i.kind === 'thread') as Stroke
    const head = sheet!.items.find((i) => i.item === 'fill' && i.kind === 'arrowhead' && i.tie?.dimension === note.id)
    const c = root.curve
    if (c.kind !== 'arc' || head?.item !== 'fill') throw new Error('no thread or no head')
    const angles = head.outline
      .flatMap((l) => (l.kind === 'line' ? [l.a] : []))
      .filter((p) => Math.abs(Math.hypot(p[0] - c.c[0], p[1] - c.c[1]) - c.r) < 0.01)
      .map((p) => (Math.atan2(p[1] - c.c[1], p[0] - c.c[0]) * 180) / Math.PI)
    expect(angles).toHaveLength(1)
    expect(angles[0]! > 10 && angles[0]! < 100).toBe(false)
  })
})

describe('the drill point of a tapped hole whose drill is not said', () => {
  // A drill has one diameter: its point is as wide as the hole it leaves, which is the crest (8.5 for M10 at 2:1: 0.15 of the
  // radius within, common practice), at the usual 118° (common practice). M10 ↧ 12: apex 4.25 / tan 59° below the wall.
  it.each([
    ['in a section', 'front; section A-A', 'section A-A', 'visible'],
    ['dashed', 'front, top', 'front', 'hidden'],
  ])('starts at the crest: %s', (_, views, view, kind) => {
    const sloping = strokes('ISO', '2:1', view, views, 'M10 ↧ 12').flatMap(({ kind: k, curve: c }) => {
      if (k !== kind || c.kind !== 'line') return []
      const [across, up] = [Math.abs(c.a[0] - c.b[0]), Math.abs(c.a[1] - c.b[1])]
      return across > 1e-6 && up > 1e-6 ? [{ across, up }] : []
    })
    expect(sloping).toHaveLength(2)
    for (const { across, up } of sloping) {
      expect(across).toBeCloseTo(8.5, 6)
      expect(up).toBeCloseTo(8.5 / Math.tan((59 * Math.PI) / 180), 6)
    }
  })
})

describe('a tapped hole modelled as drilled', () => {
  it('keeps its root 1 mm outside the drilled wall end-on and from the side, with the end of the thread across it', () => {
    // M8 in a drill of 6.8: 0.6 mm at 1:1.
    const hole = 'M8 ↧ 12, drill ⌀6.8 ↧ 16, flat bottom'
    expect(arcs(strokes('ISO', '1:1', 'top', 'front, top', hole)).sort()).toEqual([
      'thread r4.40 270°',
      'visible r3.40 360°',
    ])
    const front = strokes('ISO', '1:1', 'front', 'front, top', hole)
    expect(uprights(front)).toEqual(['hidden 3.40', 'hidden 4.40', 'visible 20.00'])
    const level = front.flatMap(({ kind, curve: c }) =>
      kind === 'hidden' && c.kind === 'line' && Math.abs(c.a[1] - c.b[1]) < 1e-6 ? [Math.abs(c.a[0] - c.b[0])] : [],
    )
    expect(level.map((l) => l.toFixed(2)).sort()).toEqual(['6.80', '8.80'])
  })

  it('shows the thread of a pipe, whose designation is no size', () => {
    // Crest 0.85 of the root (common practice): 8.4 / 2 / 0.85 = 4.94.
    const found = arcs(strokes('ASME', '2:1', 'top', 'front, top', '1/8-27 NPT ↧ 10, drill ⌀8.4 ↧ 14'))
    expect(found.sort()).toEqual(['hidden r9.88 360°', 'visible r8.40 360°'])
  })
})
