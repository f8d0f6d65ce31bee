import { describe, expect, it } from 'vitest'
import { compile } from '../../../src/app/compile.ts'
import type { Vec2 } from '../../../src/geometry/vec.ts'
import { openKernel } from '../../../src/kernel/open.ts'
import { auditSizes } from '../../../src/sheet/placement/audit.ts'

// Extension lines do not run far over the part where a nearer place is free: a size may then stand within the outline,
// at another of the features it holds for, or on a leader (ASME Y14.5-2018 §4, dimensions within the outline of a view
// where extension lines would be excessively long; ISO 129-1:2018 §5; both from memory). How far is far is ours.

const kernel = await openKernel()

const headed = (practice: string, units: string, rest: string) => `part Near sides
number N-1  rev A
units ${units}
practice ${practice}
material S235JR
general ${units === 'mm' ? 'ISO 2768-mK' : '.XX ±.02 .XXX ±.005 angles ±1/2°'}
${rest}`

function sheetOf(text: string) {
  const { sheet, sizes, part, brief } = compile(text, kernel)
  kernel.free(part!.solid)
  const strokes = sheet!.items.flatMap((i) => (i.item === 'stroke' && i.curve.kind === 'line' ? [i] : []))
  const lines = (id: string, kind: string) =>
    strokes.flatMap((i) => (i.kind === kind && i.tie?.dimension === id && i.curve.kind === 'line' ? [i.curve] : []))
  const saying = (words: string) => sizes!.dimensions.filter((d) => String(d.callout.lines[0]![0]).trim() === words)
  const box = (view: string) => sheet!.views.find((v) => v.id === view)!.box
  /** Longest stretch of the size's extension lines within the outline's bounds of its view, mm. */
  const within = (d: { readonly id: string; readonly view: string }) => {
    const { min, max } = box(d.view)
    const span = (k: 0 | 1, a: Vec2, b: Vec2) =>
      Math.min(max[k], Math.max(a[k], b[k])) - Math.max(min[k], Math.min(a[k], b[k]))
    return lines(d.id, 'extension').map(({ a, b }) => {
      const [x, y] = [span(0, a, b), span(1, a, b)]
      return x < -0.01 || y < -0.01 ? 0 : Math.hypot(Math.max(0, x), Math.max(0, y))
    })
  }
  return { sheet: sheet!, lines, saying, within, audit: auditSizes(sheet!, brief.header.practice) }
}

const keyedDisc = headed(
  'ASME',
  'inch',
  `scale 1:1
disc ⌀6.00 × .375, outer face front
bore front: ⌀1.250 THRU
holes outer face: 24X ⌀.188 THRU
  on ⌀5.250 bolt circle, equal, one at 12 o'clock
holes outer face: 18X ⌀.188 ↧ .250
  on ⌀4.500 bolt circle, equal, one at 12 o'clock
holes outer face: 4X ⌀.218 THRU, ⌵ ⌀.42 × 82°
  on ⌀2.250 bolt circle, equal, astride the vertical centre line
keyseat bore, top: .250 +.002 -.000 wide × 1.360 +.010 -.000 over bore
`,
)

const grooved = headed(
  'ISO, first angle',
  'mm',
  `round bar ⌀20 h9, 100 long, axis up-down
hole outside, from front: ⌀5 THRU
  15 from top face
groove outside: 3 wide, bottom ⌀17
  lower side 60 from bottom face
`,
)

const vees = headed(
  'ISO, first angle',
  'mm',
  `block 80 × 50 × 40
notches front, top: 2X vee, 10 wide, 60°
  20 from left; mirrored left-right
`,
)

describe('a size whose feature lies deep within the view', () => {
  it('stands in a clear place of the part, rather than on lines across all of it: the keyseat of a disc', () => {
    const { saying, within, lines, audit } = sheetOf(keyedDisc)
    const [width] = saying('.250')
    expect(lines(width!.id, 'extension')).toHaveLength(2)
    // A section's plane leaves the near side, where the rim is 44 mm away; to the far side it is 90 mm.
    for (const length of within(width!)) expect(length).toBeLessThan(30)
    expect(audit.dimensionLineCrossings).toBe(0)
  })

  it('at the bottom of a narrow groove is given on a leader, which clears the corners of its mouth', () => {
    const { saying, lines, sheet } = sheetOf(grooved)
    const [floor] = saying('⌀17')
    expect(lines(floor!.id, 'extension')).toEqual([])
    const leader = lines(floor!.id, 'leader').find(({ a, b }) => Math.abs(a[1] - b[1]) > 0.1)!
    const [ux, uy] = [leader.b[0] - leader.a[0], leader.b[1] - leader.a[1]]
    const length = Math.hypot(ux, uy)
    const corners = sheet.items.flatMap((i) =>
      i.item === 'stroke' && i.kind === 'visible' && i.curve.kind === 'line' && i.tie?.view === floor!.view
        ? [i.curve.a, i.curve.b]
        : [],
    )
    for (const [x, y] of corners) {
      const along = ((x - leader.a[0]) * ux + (y - leader.a[1]) * uy) / length
      if (along < 2 || along > length) continue
      expect(Math.abs((x - leader.a[0]) * uy - (y - leader.a[1]) * ux) / length).toBeGreaterThan(1)
    }
  })
})

describe('a size that holds for several features', () => {
  it('stands at that of them where nothing is in the way: the place of a vee whose width and angle fill its mouth', () => {
    const { saying, within, audit } = sheetOf(vees)
    const [place] = saying('2× 20')
    for (const length of within(place!)) expect(length).toBeLessThan(1)
    expect(audit.dimensionLineCrossings).toBe(0)
    expect(audit.extensionCrossings).toBe(0)
  })
})
