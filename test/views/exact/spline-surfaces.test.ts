import { beforeAll, describe, expect, it } from 'vitest'
import { lengthOf, pointAt } from '../../../src/geometry/evaluate.ts'
import type { Vec3 } from '../../../src/geometry/vec.ts'
import { along, cross, dot, norm, sub } from '../../../src/geometry/vec3.ts'
import { pointOnCurve } from '../../../src/kernel/evaluate3.ts'
import type { SolidKey } from '../../../src/kernel/kernel.ts'
import { type OcctKernel, openKernel } from '../../../src/kernel/open.ts'
import { shapes } from '../../../src/kernel/shapes.ts'
import { exactView } from '../../../src/views/exact/exact-view.ts'
import type { Frame } from '../../../src/views/view.ts'
import { compared, judged, meshOf, sizeOf } from './compared.ts'
import { Sight } from './mesh-arbiter.ts'
import { frameAlong, PRINCIPAL } from './random-solids.ts'
import { extruded, growingRound, loft, type Section } from './spline-solids.ts'

/** How far the triangles of the ray test may lie off the surface, mm: a quarter of what it looks for. */
const SAG = 0.005

let kernel: OcctKernel

beforeAll(async () => {
  kernel = await openKernel()
})

const square = (z: number, r: number, turn: number, x = 0): Section => ({
  corners: [0, 1, 2, 3].map((k): Vec3 => {
    const angle = turn + (k * Math.PI) / 2
    return [x + r * Math.cos(angle), r * Math.sin(angle), z]
  }),
})
const rounds: readonly Section[] = [
  { centre: [0, 0, 0], major: 10, minor: 10 },
  { centre: [4, 1, 15], major: 6, minor: 5 },
  { centre: [0, 0, 30], major: 9, minor: 9 },
]
const solids: Readonly<Record<string, () => SolidKey>> = {
  'a loft through circles and an ellipse': () => loft(kernel, rounds, false),
  'a loft between turned squares, straight': () => loft(kernel, [square(0, 10, 0.2), square(20, 7, 0.9, 2)], true),
  'a loft through turned squares, smooth': () =>
    loft(kernel, [square(0, 10, 0.2), square(12, 6, 0.5), square(25, 8, 0.8, 3)], false),
  'a round of growing radius': () => growingRound(kernel, [20, 30, 15], 3, 8),
  'a bored loft': () => bored(),
}
const bored = () =>
  shapes(kernel).cut(loft(kernel, rounds, false), shapes(kernel).cylinder([-20, 1, 12], [1, 0, 0], 3, 40))
const frames: Readonly<Record<string, Frame>> = {
  front: PRINCIPAL.front,
  top: PRINCIPAL.top,
  right: PRINCIPAL.right,
  isometric: frameAlong([1, -1, 1]),
  odd: frameAlong([0.3, -0.8, 0.45]),
  low: frameAlong([-0.62, 0.33, -0.21]),
}

describe('true spline surfaces', () => {
  it.each(Object.keys(solids))('%s is drawn as the ray test on the triangulation sees it', (name) => {
    const solid = solids[name]!()
    const body = kernel.body(solid)
    expect(body.faces.some((f) => f.surface.kind === 'spline')).toBe(true)
    const mesh = meshOf(kernel, solid, SAG)
    for (const [view, frame] of Object.entries(frames)) {
      const { against, places } = judged(exactView(body, frame), new Sight(mesh, frame))
      expect(places, view).toBeGreaterThan(20)
      expect(against, view).toEqual([])
    }
  })

  it('has the kernel’s covered lengths where no outline of a spline is drawn', () => {
    const solid = growingRound(kernel, [20, 30, 15], 3, 8)
    const body = kernel.body(solid)
    for (const frame of Object.values(frames)) {
      const c = compared(kernel, solid, body, frame, { mesh: () => meshOf(kernel, solid, SAG) })
      expect(c.difference).toBeLessThan(1e-6 * sizeOf(body))
    }
  })

  // A surface straight both ways between four corners is a hyperbolic paraboloid (Hilbert & Cohn-Vossen, Geometry and
  // the Imagination, § 3, from memory). Normal · sight is linear in its parameters, so an outline is the image of a
  // straight line: an arc of a parabola, its length by Simpson's rule of 2000 steps.
  it('outlines hyperbolic paraboloids by arcs of parabolas', () => {
    const body = kernel.body(loft(kernel, [square(0, 10, 0.2), square(20, 7, 0.9, 2)], true))
    for (const frame of [PRINCIPAL.top, PRINCIPAL.front, frames.low!]) {
      const d = frame.toViewer
      let wanted = 0
      for (const { surface } of body.faces) {
        if (surface.kind !== 'spline') continue
        const [[a, b], [c, e]] = surface.poles as unknown as [[Vec3, Vec3], [Vec3, Vec3]]
        const [u, v] = [sub(c, a), sub(b, a)]
        const twist = sub(sub(e, c), sub(b, a))
        // (u + twist t) × (v + twist s) · d over parameters s, t in [0, 1]
        const [k, ks, kt] = [dot(cross(u, v), d), dot(cross(u, twist), d), dot(cross(twist, v), d)]
        const at = (s: number, t: number) => along(along(along(a, u, s), v, t), twist, s * t)
        const ends: [number, number][] = []
        for (const s of [0, 1]) if (kt !== 0) ends.push([s, -(k + ks * s) / kt])
        for (const t of [0, 1]) if (ks !== 0) ends.push([-(k + kt * t) / ks, t])
        const inside = ends.filter(([s, t]) => s > -1e-12 && s < 1 + 1e-12 && t > -1e-12 && t < 1 + 1e-12)
        if (inside.length < 2) continue
        const [from, to] = [inside[0]!, inside[1]!]
        const p = (f: number) => at(from[0] + f * (to[0] - from[0]), from[1] + f * (to[1] - from[1]))
        const speed = (f: number) => {
          const w = sub(p(f + 1e-5), p(f - 1e-5))
          return norm(along(w, d, -dot(w, d))) / 2e-5
        }
        const steps = 2000
        for (let i = 0; i < steps; i++)
          wanted += (speed(i / steps) + 4 * speed((i + 0.5) / steps) + speed((i + 1) / steps)) / (6 * steps)
      }
      const drawn = exactView(body, frame).curves.filter((c) => c.kind === 'silhouette')
      expect(drawn.reduce((sum, c) => sum + lengthOf(c.curve), 0)).toBeCloseTo(wanted, 5)
    }
  })

  // A profile that stands upright for a while, x = 15 from z = 7 to 12: from above that wall is one line across the depth,
  // 20, besides the bounds of 30 by 20. A profile that leans over by 2 there has two outlines, the lower one hidden.
  it('draws the line in which a stretch of a spline surface is seen edge-on', () => {
    const knots = [0, 0, 0, 0, 1, 1, 1, 2, 2, 2, 3, 3, 3, 3]
    const poles = (lean: number): [number, number][] => [
      [30, 5],
      [24, 5],
      [15, 4],
      [15, 7],
      [15, 8.6],
      [15 + lean, 10.4],
      [15 + lean, 12],
      [15 + lean, 15],
      [6, 15],
      [0, 15],
    ]
    const lengths = (lean: number) => {
      const body = extruded(
        [
          [0, 15],
          [0, 0],
          [30, 0],
          [30, 5],
        ],
        { degree: 3, knots, poles: poles(lean) },
        20,
      )
      const view = exactView(body, PRINCIPAL.top)
      const of = (visible: boolean) =>
        view.curves
          .filter((c) => c.visible === visible && c.kind !== 'smooth')
          .reduce((sum, c) => sum + lengthOf(c.curve), 0)
      return { visible: of(true), hidden: of(false) }
    }
    expect(lengths(0)).toEqual({ visible: expect.closeTo(2 * (30 + 20) + 20, 6), hidden: expect.closeTo(0, 6) })
    expect(lengths(2)).toEqual({ visible: expect.closeTo(2 * (30 + 20) + 20, 6), hidden: expect.closeTo(20, 6) })
  })

  // The far rim of the bore is seen through its near rim just where the loft's other side at that place of the view lies
  // within the bore, by the bore's own equation. (The kernel's algorithm hides it all.)
  it('sees the far rim of a bore through the near one', () => {
    const body = kernel.body(bored())
    const loftFace = body.faces.find((f) => f.surface.kind === 'spline')!
    const rims = body.edges.filter((e) => !e.seam && e.faces.includes(loftFace.id) && e.curve.kind === 'spline')
    const view = exactView(body, PRINCIPAL.front)
    const mesh = new Sight(meshOf(kernel, loft(kernel, rounds, false), SAG), PRINCIPAL.front)
    let tried = 0
    for (const rim of rims) {
      for (let i = 1; i < 40; i++) {
        const p = pointOnCurve(rim.curve, i / 40)
        if (p[1] < 1.05 || Math.abs(Math.hypot(p[1] - 1, p[2] - 12) - 3) > 1e-4) continue
        const near = mesh.at(p[0], p[2])[0]!
        const off = Math.hypot(-near.depth - 1, p[2] - 12) - 3
        if (Math.abs(off) < 0.02) continue
        const told = view.curves.filter((c) => c.kind === 'edge' && c.curve.kind === 'spline' && passes(c.curve, p))
        if (told.length !== 1) continue
        tried++
        expect(told[0]!.visible, `${p}`).toBe(off < 0)
      }
    }
    expect(tried).toBeGreaterThan(30)
  })
})

function passes(curve: Parameters<typeof pointAt>[0], p: Vec3): boolean {
  let least = Infinity
  for (let i = 0; i <= 2000; i++) {
    const q = pointAt(curve, i / 2000)
    least = Math.min(least, Math.hypot(q[0] - p[0], q[1] - p[2]))
  }
  return least < 5e-3
}
