import { describe, expect, it } from 'vitest'
import { compile } from '../../../src/app/compile.ts'
import { type Box2, boxOf, boxOfCurves, pointAt } from '../../../src/geometry/evaluate.ts'
import { openKernel } from '../../../src/kernel/open.ts'
import { auditSizes } from '../../../src/sheet/placement/audit.ts'
import type { Sheet, SheetItem } from '../../../src/sheet/sheet.ts'

const kernel = await openKernel()

const asmePlate = `units     inch
practice  ASME
general   .XX ±.01   .XXX ±.005   angles ±1/2°
plate     4.00 × 3.00 × .50
holes A   top: 4X ⌀.281 THRU
          2 across 3.000 apart, centred; 2 up 2.000 apart, lowest .500 from front
bore      top: ⌀1.000 +.002 -.000 THRU
          centred both ways
notch     top, left: square, .500 ±.005 wide, .25 deep
          centred
datum     A  bottom
datum     B  length
datum     C  front
datum     D  notch
frame     bottom: flatness .005
frame     holes A: position dia .020 MMC A B C
          dia .008 MMC A
frame     bore: perpendicularity dia .002 A
frame     bore: position dia .010 MMC A B C
frame     top: parallelism .010 A
frame     right: profile .010 A C D, all around
texture   top: 63 µin, machined, lay X, ground
texture   right: 125 µin, unmachined
`
const isoPlate = `units     mm
practice  ISO, first angle
general   ISO 2768-m
decimal   comma
plate     100 × 80 × 15
holes A   top: 4X ⌀6,6 THRU
          2 across 80 apart, leftmost 10 from left; 2 up 60 apart, lowest 10 from front
bore      top: ⌀25 H7 THRU
          centred both ways
slot      top: 8 × 20 overall THRU, long way left-right
          20 from right; centred up
datum     A  bottom
datum     B  width
datum     C  left
datum     D  bore
frame     bottom: flatness 0,05
frame     holes A: position dia 0,2 MMC A D
frame     bore: perpendicularity dia 0,02 A
frame     top: parallelism 0,1 A
frame     slot: symmetry 0,1 B
frame     right: perpendicularity 0,1 A C
texture   top: Ra 1,6, machined, lay =, milled
texture   bottom: Rz 6,3
texture   front: Ra 12,5, unmachined
`
const isoShaft = `units     mm
practice  ISO, first angle
general   ISO 2768-m
turned    axis left-right
          left    ⌀20 k6, 30 long
          collar  ⌀36, 8 long
          body    ⌀30 h9, 60 long
          right   ⌀20 k6, 30 long
datum     A  left
datum     B  right
frame     left: cylindricity 0.004
frame     right: coaxiality dia 0.01 A
frame     body: total runout 0.02 A-B
frame     collar left face: circular runout 0.01 A-B
frame     body: straightness dia 0.03
texture   left: Ra 0.8, machined, ground
texture   right: Ra 0.8, machined, ground
texture   collar left face: Ra 1.6
`

function drawn(text: string) {
  const { sheet, part, brief, sizes, marks } = compile(text, kernel)
  if (!sheet || !part || !sizes) throw new Error('no sheet')
  kernel.free(part.solid)
  return { sheet, brief, sizes, marks }
}

const idOf = (item: SheetItem): string | undefined => item.tie?.dimension
const isSign = (id: string | undefined) => id !== undefined && /^(frame|datum|texture) \S+$/.test(id)

/** Bounds of what is boxed or lettered of each sign: whole frames, datum boxes, the lettering of textures. */
function fields(sheet: Sheet): { readonly id: string; readonly box: Box2 }[] {
  const groups = new Map<string, SheetItem[]>()
  for (const item of sheet.items) {
    const id = idOf(item)
    if (isSign(id)) groups.set(id!, [...(groups.get(id!) ?? []), item])
  }
  return [...groups].map(([id, items]) => {
    if (id.startsWith('frame')) {
      const lines = items.flatMap((i) => (i.item === 'stroke' && i.kind === 'symbol' ? [i.curve] : []))
      return { id, box: boxOfCurves(lines) }
    }
    const points = items.flatMap((i) => (i.item === 'text' ? [{ at: i.at, h: i.height, angle: i.angle }] : []))
    const [first] = points
    if (!first) throw new Error(`${id} is not lettered`)
    const { at, h, angle } = first
    // The letter stands in the middle of its box; a texture's value begins at its place.
    const box: Box2 = id.startsWith('datum')
      ? { min: [at[0] - h, at[1] - h / 2], max: [at[0] + h, at[1] + 1.5 * h] }
      : angle === 90
        ? { min: [at[0] - h, at[1]], max: [at[0], at[1] + h] }
        : { min: [at[0], at[1]], max: [at[0] + h, at[1] + h] }
    return { id, box }
  })
}

const within = ([x, y]: readonly number[], { min, max }: Box2, margin: number) =>
  x! > min[0] + margin && x! < max[0] - margin && y! > min[1] + margin && y! < max[1] - margin

/** Whatever else is printed within the field of a sign. */
function printedOver(sheet: Sheet): string[] {
  return fields(sheet).flatMap(({ id, box }) =>
    sheet.items.flatMap((item) => {
      if (idOf(item) === id) return []
      if (item.item === 'text') return within(item.at, box, 0.1) ? [`${item.text} in ${id}`] : []
      const curves = item.item === 'stroke' ? [item.curve] : item.item === 'fill' ? item.outline : item.strokes
      const hit = curves.some((c) => {
        const own = boxOf(c)
        if (own.max[0] < box.min[0] || own.min[0] > box.max[0] || own.max[1] < box.min[1] || own.min[1] > box.max[1])
          return false
        return Array.from({ length: 201 }, (_, i) => pointAt(c, i / 200)).some((p) => within(p, box, 0.1))
      })
      return hit ? [`${item.item} ${'kind' in item ? item.kind : ''} of ${idOf(item) ?? 'the view'} in ${id}`] : []
    }),
  )
}

describe.each([
  ['a plate by ASME', asmePlate, 'ASME'],
  ['a plate by ISO', isoPlate, 'ISO'],
  ['a shaft by ISO', isoShaft, 'ISO'],
] as const)('%s', (_, text, practice) => {
  const { sheet, brief, sizes, marks } = drawn(text)

  it('is read, and everything finds its place', () => {
    expect(marks.filter((m) => m.weight === 'must change').map((m) => m.text)).toEqual([])
  })

  it('carries every frame, letter and texture once, each tied to its own statement', () => {
    const { frames = [], datums = [], textures = [] } = brief
    const asked = [
      ...frames.map((f, i) => ({ id: `frame ${i + 1}`, span: f.span })),
      ...datums.map((d) => ({ id: `datum ${d.letter.text}`, span: d.span })),
      ...textures.map((t, i) => ({ id: `texture ${i + 1}`, span: t.span })),
    ]
    for (const { id, span } of asked) {
      const own = sheet.items.filter((i) => idOf(i) === id)
      expect(own.length, id).toBeGreaterThan(0)
      // Leaders are tied to the first sign of a group.
      const lettered = own.filter((i) => i.item === 'text' || i.item === 'glyph')
      for (const item of lettered) expect(item.tie?.span, id).toEqual(span)
    }
    for (const [i, f] of frames.entries()) {
      const symbols = sheet.items.filter(
        (x) => idOf(x) === `frame ${i + 1}` && x.item === 'glyph' && /[⏤⏥○⌭⌒⌓∠⟂∥⌖◎⌯↗⌰]/.test(x.text),
      )
      expect(symbols).toHaveLength(f.frame.stacking === 'segments' ? f.frame.rows.length : 1)
    }
    for (const d of datums) {
      const triangles = sheet.items.filter((x) => idOf(x) === `datum ${d.letter.text}` && x.item === 'fill')
      expect(triangles, d.letter.text).toHaveLength(1)
    }
  })

  it('prints nothing over a frame, a letter or a texture, nor these over anything', () => {
    expect(printedOver(sheet)).toEqual([])
    // The look itself: a line through the first sign is seen.
    const [{ box }] = fields(sheet) as [ReturnType<typeof fields>[number]]
    const through: SheetItem = {
      item: 'stroke',
      kind: 'dimension',
      curve: { kind: 'line', a: box.min, b: box.max },
      width: 0.3,
    }
    expect(printedOver({ ...sheet, items: [...sheet.items, through] })).toHaveLength(1)
    const { findings, extensionCrossings: _, ...counts } = auditSizes(sheet, practice)
    expect(counts, JSON.stringify(findings.slice(0, 4))).toEqual({
      textOnText: 0,
      textOnLine: 0,
      arrowCollisions: 0,
      dimensionLineCrossings: 0,
      rowsTooClose: 0,
      firstRowsTooClose: 0,
      gapsMissing: 0,
      overshootsMissing: 0,
      leadersLevel: 0,
    })
  })

  it('boxes the basic sizes and no others', () => {
    for (const d of sizes.dimensions) {
      const box = sheet.items.filter((i) => idOf(i) === d.id && i.item === 'stroke' && i.kind === 'symbol')
      expect(box.length, d.id).toBe(d.basic ? 4 : 0)
    }
  })
})

describe('where signs stand', () => {
  // ISO 1101:2017 clause 6 (from memory): a frame in line with the size holds the axis, one apart from it the surface.
  it('puts the frame of an axis at the size and that of a surface at the surface', () => {
    const { sizes } = drawn(isoShaft)
    const at = (name: string) =>
      sizes.dimensions.find((d) => d.id === `stock/diameter/${name}`)?.signs?.map((s) => s.id) ?? []
    expect(at('left')).toEqual(['datum A'])
    expect(at('right')).toEqual(['frame 2', 'datum B'])
    expect(at('body')).toEqual(['frame 5'])
    expect(sizes.annotations!.map((a) => a.signs[0]!.id).sort()).toEqual([
      'frame 1',
      'frame 3',
      'frame 4',
      'texture 1',
      'texture 2',
      'texture 3',
    ])
  })

  const rows = (scheme: string) => `units     inch
practice  ASME
general   .XX ±.01   .XXX ±.005   angles ±1°
plate     6.00 × 4.00 × .50
holes A   top: 8X ⌀.281 THRU
          4 across 1.500 apart, leftmost .750 from left; 2 up 2.000 apart, lowest 1.000 from front
holes B   top: 2X ⌀.375 THRU
          2 across 3.000 apart, leftmost 1.500 from left; 2.000 from front
sizes     ${scheme}
datum     A  bottom
datum     B  left
datum     C  front
frame     holes A: position dia .020 MMC A B C
`

  // ASME Y14.5-2018 7.4.1 (from memory): what locates a feature held in position is basic, however it is given.
  it('boxes running sizes that follow from basic ones, and no others', () => {
    const { sizes } = drawn(rows('ordinate'))
    const across = sizes.dimensions.filter(
      (d) => d.measured.kind === 'ordinate' && d.direction === 'left-right' && d.value > 0,
    )
    const told = across.map((d) => [Number((d.value / 25.4).toFixed(3)), d.basic])
    expect(told).toEqual(
      expect.arrayContaining([
        [0.75, true],
        [2.25, true],
        [3.75, true],
        [5.25, true],
      ]),
    )
    expect(told).toEqual(
      expect.arrayContaining([
        [1.5, false],
        [4.5, false],
        [6, false],
      ]),
    )
  })

  it('counts the holes at a frame whose size stands in a table, and says that the coordinates are basic', () => {
    const { sizes, sheet } = drawn(rows('hole table'))
    expect(sizes.annotations!.find((a) => a.signs[0]!.id === 'frame 1')!.count).toBe('8X')
    expect(sheet.items.some((i) => i.item === 'text' && i.text === '8X')).toBe(true)
    expect(sizes.notes).toEqual(['X AND Y OF A1, A2, A3, A4, A5, A6, A7, A8 IN THE HOLE TABLE ARE BASIC.'])
  })

  it('gives a seat with a letter a size of its own', () => {
    const { sizes } = drawn(isoShaft)
    expect(sizes.dimensions.filter((d) => d.callout.lines[0]?.join('') === '⌀20 k6')).toHaveLength(2)
    const plain = drawn(isoShaft.replace(/^(datum|frame|texture).*\n/gm, ''))
    expect(plain.sizes.dimensions.filter((d) => /⌀20 k6/.test(d.callout.lines[0]!.join('')))).toHaveLength(1)
  })
})
