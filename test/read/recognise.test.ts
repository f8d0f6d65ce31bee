import { afterEach, beforeAll, describe, expect, it } from 'vitest'
import { compileSolid } from '../../src/app/compile-solid.ts'
import type { Vec3 } from '../../src/geometry/vec.ts'
import type { SolidKey } from '../../src/kernel/kernel.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { type Shapes, shapes } from '../../src/kernel/shapes.ts'
import { circlesAmong, patternOf } from '../../src/read/recognise/patterns.ts'
import { recognise } from '../../src/read/recognise/recognise.ts'

// Solids of known construction: every expected number is one that the solid was built with.

let kernel: OcctKernel
let make: Shapes
beforeAll(async () => {
  kernel = await openKernel()
  make = shapes(kernel)
})
const kept: SolidKey[] = []
const keep = (solid: SolidKey) => {
  kept.push(solid)
  return solid
}
afterEach(() => {
  for (const solid of kept.splice(0)) kernel.free(solid)
})

const UP: Vec3 = [0, 0, 1]
const block = (x = 60, y = 40, z = 20) => keep(make.box([0, 0, 0], [x, y, z]))
const drill = (at: Vec3, axis: Vec3, r: number, h: number) => keep(make.cylinder(at, axis, r, h))
const cut = (solid: SolidKey, ...tools: SolidKey[]) => keep(make.cut(solid, ...tools))
const found = (solid: SolidKey) => recognise(kernel.body(solid))
const drawn = (solid: SolidKey, unit: 'inch' | 'mm' = 'mm') => {
  const drawing = compileSolid(kernel.step(solid, { name: 'Part', unit }), kernel)
  if (drawing.part) keep(drawing.part.solid)
  return drawing
}

describe('holes', () => {
  it('tells through, flat-bottomed and drilled blind holes', () => {
    const point = keep(make.cone([45, 20, 8], [0, 0, -1], 4, 0, 4 / Math.tan((59 * Math.PI) / 180)))
    const solid = cut(
      block(),
      drill([10, 10, 0], UP, 3, 20),
      drill([25, 20, 12], UP, 5, 8),
      drill([45, 20, 8], UP, 4, 12),
      point,
    )
    const holes = [...found(solid).holes].sort((a, b) => a.mouth[0] - b.mouth[0])
    expect(holes.map((h) => [h.diameter, h.depth, h.point === undefined ? undefined : Math.round(h.point)])).toEqual([
      [6, undefined, undefined],
      [10, 8, 180],
      [8, 12, 118],
    ])
    expect(holes.map((h) => h.outward)).toEqual([UP, UP, UP])
  })

  it('tells counterbore, spotface and countersink, from whichever side they are worked', () => {
    const sink = keep(make.cone([50, 20, 0], UP, 6, 3, 3))
    const solid = cut(
      block(),
      drill([10, 20, 0], UP, 3, 20),
      drill([10, 20, 14], UP, 6, 6),
      drill([30, 20, 0], UP, 3, 20),
      drill([30, 20, 19], UP, 7, 1),
      drill([50, 20, 0], UP, 3, 20),
      sink,
    )
    const [bored, faced, sunk] = [...found(solid).holes].sort((a, b) => a.mouth[0] - b.mouth[0])
    expect([bored!.counterbore?.diameter, bored!.counterbore?.depth, bored!.spotface]).toEqual([12, 6, undefined])
    expect([faced!.spotface?.diameter, faced!.spotface?.depth, faced!.counterbore]).toEqual([14, 1, undefined])
    expect(sunk!.outward).toEqual([0, 0, -1])
    expect(sunk!.countersink!.diameter).toBeCloseTo(12, 9)
    expect(sunk!.countersink!.angle).toBeCloseTo(90, 9)
  })

  it('takes a bore through two ears as one hole, and two diameters through them as two', () => {
    const ears = cut(block(60, 40, 40), keep(make.box([20, 0, 10], [60, 40, 30])))
    expect(found(cut(ears, drill([45, 20, 0], UP, 5, 40))).holes.length).toBe(1)
    const two = found(cut(ears, drill([45, 20, 0], UP, 5, 10), drill([45, 20, 30], UP, 4, 10))).holes
    expect(two.map((h) => h.diameter).sort()).toEqual([10, 8])
  })

  it('invents none: shafts, closed hollows, rounded pockets and half-round grooves are no holes', () => {
    const hollow = cut(block(), drill([30, 20, 5], UP, 5, 10))
    const boss = keep(make.fuse(block(), drill([30, 20, 20], UP, 8, 10)))
    const groove = cut(block(), drill([0, 20, 20], [1, 0, 0], 5, 60))
    for (const solid of [block(), hollow, boss, groove]) expect(found(solid).holes).toEqual([])
    expect(found(hollow).hollows.length).toBe(1)
    expect(found(boss).bosses.map((b) => [b.radii[0], b.to - b.from])).toEqual([[8, 10]])
  })

  it('finds a cross hole of a shaft, and no hole in the shaft itself', () => {
    const shaft = cut(drill([0, 0, 0], [1, 0, 0], 10, 80), drill([30, 0, -20], UP, 2, 40))
    const { holes, axis } = found(shaft)
    expect(holes.map((h) => h.diameter)).toEqual([4])
    expect(axis!.direction).toEqual([1, 0, 0])
  })

  it('keeps all diameters of a bore with three steps', () => {
    const solid = cut(
      block(),
      drill([30, 20, 0], UP, 3, 20),
      drill([30, 20, 8], UP, 5, 12),
      drill([30, 20, 14], UP, 9, 6),
    )
    const [hole] = found(solid).holes
    expect(hole!.diameter).toBe(6)
    expect(hole!.counterbore!.diameter).toBe(10)
    expect(hole!.others.map((o) => [o.diameter, o.depth])).toEqual([[18, 6]])
  })
})

describe('slots, arcs and slopes', () => {
  const slotted = (x: number, length: number, r: number) => [
    drill([x, 20, 0], UP, r, 20),
    drill([x + length - 2 * r, 20, 0], UP, r, 20),
    keep(make.box([x, 20 - r, 0], [x + length - 2 * r, 20 + r, 20])),
  ]

  it('finds a slot by its width and overall length, and one that runs out of the part', () => {
    const tool = keep(make.fuse(slotted(15, 30, 4)[0]!, ...slotted(15, 30, 4).slice(1)))
    const [slot] = found(cut(block(), tool)).slots
    expect([slot!.width, slot!.open]).toEqual([8, false])
    expect(slot!.length).toBeCloseTo(30, 9)
    const open = cut(block(), drill([20, 20, 0], UP, 4, 20), keep(make.box([0, 16, 0], [20, 24, 20])))
    const [run] = found(open).slots
    expect([run!.width, run!.length, run!.open]).toEqual([8, 24, true])
  })

  it('finds the thickness of a flat part, none of a block', () => {
    expect(found(block(60, 40, 5)).flat).toBe(2)
    expect(found(block(5, 60, 40)).flat).toBe(0)
    expect(found(block(60, 40, 39)).flat).toBeUndefined()
    expect(found(cut(block(60, 40, 5), drill([30, 20, 2], UP, 4, 3))).flat).toBeUndefined()
  })

  it('finds the axis of a disc with flats, none of a square plate with a boss as wide', () => {
    const disc = cut(drill([0, 0, 0], UP, 20, 8), keep(make.box([17, -30, 0], [30, 30, 8])))
    expect(found(disc).axis?.direction).toEqual([0, 0, 1])
    const boss = keep(make.fuse(block(40, 40, 10), drill([20, 20, 10], UP, 20, 10)))
    expect(found(boss).axis).toBeUndefined()
  })
})

describe('patterns', () => {
  const at = (...points: readonly (readonly [number, number])[]): Vec3[] => points.map(([x, y]) => [x, y, 5])
  const round = (n: number, r: number, from = 0, cx = 0, cy = 0): Vec3[] =>
    Array.from({ length: n }, (_, i) => {
      const a = from + (2 * Math.PI * i) / n
      return [cx + r * Math.cos(a), cy + r * Math.sin(a), 5]
    })
  const kind = (points: readonly Vec3[]) => patternOf(points, UP, [])

  it('tells row, grid, bolt circle and loose points', () => {
    expect(kind(at([0, 0]))).toEqual({ kind: 'single' })
    expect(kind(at([0, 0], [10, 0], [20, 0]))).toMatchObject({ kind: 'row', pitch: 10 })
    expect(kind(at([0, 0], [10, 0], [25, 0]))).toEqual({ kind: 'points' })
    expect(kind(at([0, 0], [10, 0], [0, 8], [10, 8], [0, 16], [10, 16]))).toMatchObject({
      kind: 'grid',
      across: { pitch: 10 },
      up: { pitch: 8 },
    })
    expect(kind(round(5, 20))).toMatchObject({ kind: 'bolt circle', equal: true })
    expect(kind(round(4, 20, Math.PI / 4))).toMatchObject({ kind: 'grid' })
    expect(kind(at([0, 0], [10, 3]))).toEqual({ kind: 'points' })
  })

  it('takes circles out of a set that is no pattern as a whole', () => {
    const points = [...round(3, 15, Math.PI, 40, 75), ...round(3, 15, 0, 140, 75), [90, 20, 5] as Vec3]
    expect(circlesAmong(points, UP)).toEqual([[0, 1, 2], [3, 4, 5], [6]])
    expect(circlesAmong(at([0, 0], [10, 0], [0, 10], [10, 10], [30, 3]), UP)).toEqual([[0, 1, 2, 3, 4]])
  })
})

describe('sizes of a read solid', () => {
  it('are measured from the left, front and bottom, with the digits that they have', () => {
    const solid = cut(block(60, 40, 12.345), drill([10.5, 8, 0], UP, 3, 20))
    const { sizes, marks } = drawn(solid)
    expect(sizes!.proof.complete).toBe(true)
    const text = (id: string) =>
      sizes!.dimensions
        .find((d) => d.id === id)
        ?.callout.lines.flat()
        .join('')
    expect(text('hole 1/distance/left to hole 1 axis')).toBe('10.5')
    expect(text('hole 1/distance/front to hole 1 axis')).toBe('8')
    expect(marks.map((m) => m.rule)).not.toContain('uneven-measures')
  })

  it('say so where a length is no round number', () => {
    const { marks, sizes } = drawn(block(60, 40 / 3, 20))
    expect(sizes!.dimensions.map((d) => d.callout.lines.flat().join(''))).toContain('13.333')
    expect(marks.find((m) => m.rule === 'uneven-measures')!.text).toMatch(/^One size/)
  })

  it('of an inch file are in inches by ASME, with metric holes said in millimetres', () => {
    const solid = cut(block(50.8, 25.4, 6.35), drill([25.4, 12.7, 0], UP, 3.3, 20))
    const { sizes, brief } = drawn(solid, 'inch')
    const texts = sizes!.dimensions.map((d) => d.callout.lines.flat().join(''))
    expect(brief.header.practice).toBe('ASME')
    expect(texts).toContain('2.00')
    expect(texts).toContain('⌀6.6 mm THRU')
  })

  it('of a part off the axes are left out, and the sheet stays preliminary', () => {
    const tilted = keep(make.rotate(cut(block(), drill([30, 20, 0], UP, 4, 20)), [0, 0, 0], [1, 1, 0], 25))
    const { sheet, sizes } = drawn(tilted)
    expect(sizes!.proof.complete).toBe(false)
    expect(sheet!.items.some((i) => i.item === 'text' && i.role === 'stamp')).toBe(true)
  })
})
