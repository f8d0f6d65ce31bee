import { beforeAll, describe, expect, it } from 'vitest'
import type { Body } from '../../src/kernel/body.ts'
import { pointOnCurve } from '../../src/kernel/evaluate3.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { type Shapes, shapes } from '../../src/kernel/shapes.ts'

let kernel: OcctKernel
let make: Shapes
beforeAll(async () => {
  kernel = await openKernel()
  make = shapes(kernel)
})

const Z = [0, 0, 1] as const
const kinds = (body: Body) => body.faces.map((f) => f.surface.kind).sort()

describe('bodies read from the kernel', () => {
  it('reads a box: 6 planes, 12 lines, outward normals, loops head to tail', () => {
    const body = kernel.body(make.box([0, 0, 0], [10, 20, 30]))
    expect(body.faces).toHaveLength(6)
    expect(body.edges).toHaveLength(12)
    expect(body.edges.every((e) => e.curve.kind === 'line' && !e.smooth && !e.seam && e.faces.length === 2)).toBe(true)
    expect(body.box).toEqual({ min: [0, 0, 0], max: [10, 20, 30] })
    for (const face of body.faces) {
      if (face.surface.kind !== 'plane') throw new Error('a box has planes only')
      const { origin, z } = face.surface.axes
      const side = face.reversed ? -1 : 1
      // from the centre, the outward normal points away
      const out = side * (z[0] * (origin[0] - 5) + z[1] * (origin[1] - 10) + z[2] * (origin[2] - 15))
      expect(out).toBeGreaterThan(0)
    }
    expectLoopsClosed(body)
  })

  it('keeps the material on the left of every loop: signed area of each planar face is positive', () => {
    const plate = make.cut(make.box([0, 0, 0], [40, 30, 5]), make.cylinder([20, 15, -1], Z, 6, 7))
    const body = kernel.body(plate)
    for (const face of body.faces) {
      if (face.surface.kind !== 'plane') continue
      const { z } = face.surface.axes
      const side = face.reversed ? -1 : 1
      let twice = 0
      for (const use of face.loops[0]!) {
        const curve = body.edges[use.edge]!.curve
        for (let i = 0; i < 32; i++) {
          const [s, t] = use.forward ? [i / 32, (i + 1) / 32] : [1 - i / 32, 1 - (i + 1) / 32]
          const p = pointOnCurve(curve, s)
          const q = pointOnCurve(curve, t)
          twice +=
            side *
            (z[0] * (p[1] * q[2] - p[2] * q[1]) +
              z[1] * (p[2] * q[0] - p[0] * q[2]) +
              z[2] * (p[0] * q[1] - p[1] * q[0]))
        }
      }
      expect(twice).toBeGreaterThan(0)
    }
    expectLoopsClosed(body)
  })

  it('reads cylinder, cone, sphere and torus with their own numbers', () => {
    const cylinder = kernel.body(make.cylinder([1, 2, 3], Z, 4, 5))
    expect(kinds(cylinder)).toEqual(['cylinder', 'plane', 'plane'])
    const wall = cylinder.faces.find((f) => f.surface.kind === 'cylinder')!
    expect(wall.surface).toMatchObject({ kind: 'cylinder', r: 4 })
    expect(wall.reversed).toBe(false)
    expect(cylinder.edges.filter((e) => e.seam)).toHaveLength(1)
    expect(cylinder.edges.filter((e) => e.curve.kind === 'circle')).toHaveLength(2)
    expect(cylinder.box.min).toEqual([-3, -2, 3])

    const cone = kernel.body(make.cone([0, 0, 0], Z, 5, 2, 3))
    const side = cone.faces.find((f) => f.surface.kind === 'cone')!
    if (side.surface.kind !== 'cone') throw new Error('no cone')
    expect(side.surface.halfAngle).toBeCloseTo(Math.PI / 4, 12)
    expect(side.reversed).toBe(false)
    // radius at the base plane, whatever height the reference circle lies at
    const height = -side.surface.axes.origin[2] * side.surface.axes.z[2]
    expect(side.surface.r + height * Math.tan(side.surface.halfAngle)).toBeCloseTo(5, 12)

    const ball = kernel.body(make.sphere([1, 1, 1], 2))
    expect(ball.faces[0]!.surface).toMatchObject({ kind: 'sphere', r: 2, axes: { origin: [1, 1, 1] } })
    expect(ball.box.max[0]).toBeCloseTo(3, 9)

    const ring = kernel.body(make.torus([0, 0, 7], Z, 20, 5))
    const skin = ring.faces[0]!.surface
    if (skin.kind !== 'torus') throw new Error('no torus')
    expect([skin.major, skin.minor, skin.axes.origin[2]]).toEqual([
      expect.closeTo(20, 12),
      expect.closeTo(5, 12),
      expect.closeTo(7, 12),
    ])
    expect(ring.faces[0]!.reversed).toBe(false)
    expect(ring.box.max[0]).toBeCloseTo(25, 6)
  })

  it('reverses the wall of a hole and the inside of a hollow', () => {
    const plate = kernel.body(make.cut(make.box([0, 0, 0], [40, 30, 5]), make.cylinder([20, 15, -1], Z, 6, 7)))
    const wall = plate.faces.find((f) => f.surface.kind === 'cylinder')!
    expect(wall.reversed).toBe(true)
    const shell = kernel.body(make.cut(make.sphere([0, 0, 0], 5), make.sphere([0, 0, 0], 3)))
    expect(shell.faces.map((f) => f.reversed).sort()).toEqual([false, true])
  })

  it('calls tangent edges smooth and others not', () => {
    // stadium: two lines and two half circles
    const outer = [
      { kind: 'line', a: [-10, -5], b: [10, -5] },
      { kind: 'arc', c: [10, 0], r: 5, from: -Math.PI / 2, sweep: Math.PI },
      { kind: 'line', a: [10, 5], b: [-10, 5] },
      { kind: 'arc', c: [-10, 0], r: 5, from: Math.PI / 2, sweep: Math.PI },
    ] as const
    const plane = { origin: [0, 0, 0], right: [1, 0, 0], up: [0, 1, 0] } as const
    const body = kernel.body(make.prism({ outer, holes: [] }, plane, [0, 0, 3]))
    expect(body.edges.filter((e) => e.smooth)).toHaveLength(4)
    expect(body.edges.filter((e) => e.smooth).every((e) => e.curve.kind === 'line')).toBe(true)
    expect(kinds(body)).toEqual(['cylinder', 'cylinder', 'plane', 'plane', 'plane', 'plane'])
  })

  it('reads an inclined cut through a cylinder as an ellipse', () => {
    const rod = make.cylinder([0, 0, 0], Z, 5, 40)
    const half = Math.SQRT1_2
    const cut = kernel.cut(rod, [{ point: [0, 0, 20], normal: [half, 0, half] }], 'intersection')
    const ellipse = cut.body.edges.find((e) => e.curve.kind === 'ellipse')
    if (ellipse?.curve.kind !== 'ellipse') throw new Error('no ellipse')
    // a plane at 45° cuts a cylinder in an ellipse with half axes r and r·√2
    expect(ellipse.curve.major).toBeCloseTo(5 * Math.SQRT2, 9)
    expect(ellipse.curve.minor).toBeCloseTo(5, 9)
    expect(cut.body.faces.filter((f) => f.cut)).toHaveLength(1)
    // half of the rod by symmetry about the plane through its middle
    expect(Math.abs(kernel.properties(cut.solid).volume / (Math.PI * 25 * 20) - 1)).toBeLessThan(1e-10)
  })
})

describe('sections', () => {
  it('takes a quarter out for a half section', () => {
    const block = make.box([-10, -10, 0], [10, 10, 5])
    const cut = kernel.cut(
      block,
      [
        { point: [0, 0, 0], normal: [0, -1, 0] },
        { point: [0, 0, 0], normal: [1, 0, 0] },
      ],
      'union',
    )
    expect(kernel.properties(cut.solid).volume).toBeCloseTo(2000 * 0.75, 9)
    expect(cut.body.faces.filter((f) => f.cut)).toHaveLength(2)
  })
})

/** Every loop runs head to tail, or is a single closed edge. */
function expectLoopsClosed(body: Body) {
  for (const face of body.faces) {
    for (const loop of face.loops) {
      loop.forEach((use, i) => {
        const next = loop[(i + 1) % loop.length]!
        const end = pointOnCurve(body.edges[use.edge]!.curve, use.forward ? 1 : 0)
        const start = pointOnCurve(body.edges[next.edge]!.curve, next.forward ? 0 : 1)
        expect(Math.hypot(end[0] - start[0], end[1] - start[1], end[2] - start[2])).toBeLessThan(1e-9)
      })
    }
  }
}
