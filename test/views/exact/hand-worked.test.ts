import { beforeAll, describe, expect, it } from 'vitest'
import { lengthOf } from '../../../src/geometry/evaluate.ts'
import type { SolidKey } from '../../../src/kernel/kernel.ts'
import { type OcctKernel, openKernel } from '../../../src/kernel/open.ts'
import { type Shapes, shapes } from '../../../src/kernel/shapes.ts'
import { exactView } from '../../../src/views/exact/exact-view.ts'
import type { ExactView, Frame } from '../../../src/views/view.ts'
import { frameAlong, PRINCIPAL } from './random-solids.ts'

// Source of the checks: descriptive geometry worked by hand, formulas beside each.

let kernel: OcctKernel
let make: Shapes
const Z = [0, 0, 1] as const

beforeAll(async () => {
  kernel = await openKernel()
  make = shapes(kernel)
})

const view = (solid: SolidKey, frame: Frame): ExactView => exactView(kernel.body(solid), frame)

const ISO = frameAlong([1, -1, 1])

/** Drawn lengths, smooth edges apart. */
function lengths(v: ExactView) {
  const sum = (visible: boolean) =>
    v.curves.filter((c) => c.kind !== 'smooth' && c.visible === visible).reduce((s, c) => s + lengthOf(c.curve), 0)
  return { visible: sum(true), hidden: sum(false) }
}

const kinds = (v: ExactView, visible: boolean) =>
  v.curves
    .filter((c) => c.visible === visible && c.kind !== 'smooth')
    .map((c) => c.curve.kind)
    .sort()

describe('exact views worked by hand', () => {
  it('draws a box from the front as four lines, and in the isometric view nine visible and three hidden', () => {
    const box = make.box([0, 0, 0], [30, 20, 10])
    const front = view(box, PRINCIPAL.front)
    expect(kinds(front, true)).toEqual(['line', 'line', 'line', 'line'])
    expect(lengths(front)).toEqual({ visible: expect.closeTo(80, 12), hidden: 0 })
    // each edge is foreshortened by √(2/3); three edges of every direction are visible, one hidden
    const iso = lengths(view(box, ISO))
    expect(iso.visible).toBeCloseTo(3 * 60 * Math.sqrt(2 / 3), 10)
    expect(iso.hidden).toBeCloseTo(60 * Math.sqrt(2 / 3), 10)
  })

  it('draws a through hole as one full circle from the top and as two hidden lines from the front', () => {
    const plate = make.cut(make.box([0, 0, 0], [40, 30, 10]), make.cylinder([20, 15, -1], Z, 6, 12))
    const top = view(plate, PRINCIPAL.top)
    const arcs = top.curves.filter((c) => c.curve.kind === 'arc')
    expect(arcs).toHaveLength(1)
    expect(arcs[0]!.curve).toMatchObject({ kind: 'arc', c: [20, 15], r: 6, sweep: 2 * Math.PI })
    expect(arcs[0]!.visible).toBe(true)
    expect(lengths(top).hidden).toBe(0)
    const front = view(plate, PRINCIPAL.front)
    expect(front.curves.filter((c) => !c.visible).map((c) => c.curve)).toHaveLength(2)
    expect(lengths(front)).toEqual({ visible: expect.closeTo(100, 10), hidden: expect.closeTo(20, 10) })
  })

  it('draws a blind hole hidden from below, and its bottom', () => {
    const block = make.cut(make.box([0, 0, 0], [40, 30, 10]), make.cylinder([20, 15, 4], Z, 6, 12))
    expect(lengths(view(block, PRINCIPAL.bottom)).hidden).toBeCloseTo(12 * Math.PI, 10)
    // two walls 6 deep and the bottom 12 wide
    expect(lengths(view(block, PRINCIPAL.front)).hidden).toBeCloseTo(24, 10)
  })

  it('draws a tilted cylinder by two outlines and two ellipses, half of the lower one hidden', () => {
    const v = view(make.cylinder([0, 0, 0], Z, 10, 30), ISO)
    expect(kinds(v, true)).toEqual(['ellipse', 'ellipse', 'line', 'line'])
    expect(kinds(v, false)).toEqual(['ellipse'])
    const ellipses = v.curves.flatMap((c) => (c.curve.kind === 'ellipse' ? [c.curve] : []))
    for (const e of ellipses) {
      expect(Math.hypot(...e.major)).toBeCloseTo(10, 10)
      // minor to major = sine of the angle between the line of sight and the circle's plane: 1/√3
      expect(Math.abs(e.ratio)).toBeCloseTo(1 / Math.sqrt(3), 10)
    }
    const [visible] = v.curves.filter((c) => c.visible && c.curve.kind === 'line')
    expect(lengthOf(visible!.curve)).toBeCloseTo(30 * Math.sqrt(2 / 3), 10)
  })

  it('draws a sphere as its great circle whatever the direction', () => {
    for (const d of [
      [0, 0, 1],
      [1, 2, -3],
    ] as const) {
      const v = view(make.sphere([1, 2, 3], 12), frameAlong(d))
      expect(v.curves).toHaveLength(1)
      expect(v.curves[0]!.curve).toMatchObject({ kind: 'arc', r: expect.closeTo(12, 12), sweep: 2 * Math.PI })
    }
  })

  it('draws the outlines of a cone where the tangent planes pass through the eye', () => {
    // base radius 10, height 30, seen from the side: two generators of √(10² + 30²)
    const side = view(make.cone([0, 0, 0], Z, 10, 0, 30), PRINCIPAL.front)
    expect(lengths(side).visible).toBeCloseTo(20 + 2 * Math.sqrt(1000), 10)
    // steeper than its side (elevation over atan(30/10)): no outline but the base circle
    const steep = view(make.cone([0, 0, 0], Z, 10, 0, 30), frameAlong([0.1, 0, 1]))
    expect(kinds(steep, true)).toEqual(['ellipse'])
  })

  it('draws a torus along its axis as two circles, and square to it as circles and common tangents', () => {
    const torus = make.torus([0, 0, 0], Z, 20, 5)
    expect(kinds(view(torus, PRINCIPAL.top), true)).toEqual(['arc', 'arc'])
    expect(lengths(view(torus, PRINCIPAL.top)).visible).toBeCloseTo(2 * Math.PI * (25 + 15), 9)
    // the outer halves of both end circles are seen, the inner halves lie behind the tube
    const front = lengths(view(torus, PRINCIPAL.front))
    expect(front.visible).toBeCloseTo(2 * 40 + 2 * Math.PI * 5, 9)
    expect(front.hidden).toBeCloseTo(2 * Math.PI * 5, 9)
  })

  it('draws the outline of a tilted torus 5 mm outside the projected middle circle', () => {
    // the outline of a canal surface is the parallel curve of its middle line's projection, here of an ellipse
    const d = frameAlong([0, -0.5, Math.sqrt(0.75)])
    const v = view(make.torus([0, 0, 0], Z, 20, 5), d)
    const outer = v.curves.filter((c) => c.visible)
    const tilt = Math.sqrt(0.75)
    for (const c of outer) {
      if (c.curve.kind !== 'spline') throw new Error('outline of a tilted torus is no spline')
      const far = c.curve.poles[0]!
      // nearest point of the ellipse (20 cos t, 20 tilt sin t), by ternary steps from a dense start
      let least = Infinity
      for (let i = 0; i < 200000; i++) {
        const t = (2 * Math.PI * i) / 200000
        least = Math.min(least, Math.hypot(far[0] - 20 * Math.cos(t), far[1] - 20 * tilt * Math.sin(t)))
      }
      expect(least).toBeCloseTo(5, 6)
    }
  })

  it('leaves out smooth edges and draws the outline where a round runs into an edge-on side', () => {
    // a round of 4 on a block's upper right edge: profile of lines and a quarter arc
    const block = make.prism(
      {
        outer: [
          { kind: 'line', a: [0, 0], b: [20, 0] },
          { kind: 'line', a: [20, 0], b: [20, 6] },
          { kind: 'arc', c: [16, 6], r: 4, from: 0, sweep: Math.PI / 2 },
          { kind: 'line', a: [16, 10], b: [0, 10] },
          { kind: 'line', a: [0, 10], b: [0, 0] },
        ],
        holes: [],
      },
      { origin: [0, 0, 0], right: [1, 0, 0], up: [0, 0, 1] },
      [0, 30, 0],
    )
    const top = view(block, PRINCIPAL.top)
    expect(lengths(top)).toEqual({ visible: expect.closeTo(100, 10), hidden: 0 })
    const smooth = top.curves.filter((c) => c.kind === 'smooth')
    expect(smooth).toHaveLength(1)
    expect(lengthOf(smooth[0]!.curve)).toBeCloseTo(30, 10)
    expect(lengths(view(block, PRINCIPAL.front)).visible).toBeCloseTo(20 + 6 + 2 * Math.PI + 16 + 10, 10)
  })

  it('draws every place once: a visible line covers what lies behind it', () => {
    const stair = make.fuse(make.box([0, 0, 0], [30, 20, 10]), make.box([0, 0, 10], [15, 20, 25]))
    const v = view(stair, PRINCIPAL.front)
    expect(v.curves.every((c) => c.visible)).toBe(true)
    expect(v.curves).toHaveLength(6)
    expect(v.curves.find((c) => c.curve.kind === 'line' && lengthOf(c.curve) === 30)!.sources.length).toBe(2)
  })
})
