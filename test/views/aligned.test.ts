import { beforeAll, describe, expect, it } from 'vitest'
import type { Vec2, Vec3 } from '../../src/geometry/vec.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { type Shapes, shapes } from '../../src/kernel/shapes.ts'
import type { Part } from '../../src/part/part.ts'
import { drawViews } from '../../src/views/draw-views.ts'
import { planSection } from '../../src/views/propose/sections.ts'
import type { View } from '../../src/views/view.ts'
import { handMade, roundFeature, section, view } from './parts.ts'
import { toldAll } from './told.ts'

// Aligned sections: ASME Y14.3 and ISO 128-3 (from memory): the cutting plane is bent along the axis to pass through
// features at an angle, which are then turned into the plane of the section. Lines worked by hand.

let kernel: OcctKernel
let make: Shapes
beforeAll(async () => {
  kernel = await openKernel()
  make = shapes(kernel)
})

/** Angle from 3 o'clock, counterclockwise as seen from the left, degrees; depth from the left face, mm. */
interface Drilled {
  readonly id: string
  readonly at: readonly number[]
  readonly deep: number
}

/** Flange ⌀60 × 10 along x about `c` with a bore ⌀20 and holes ⌀6 at radius 20, worked from the left. */
function flange(c: Vec3, ...drilled: readonly Drilled[]): Part {
  const [x, y, z] = c
  // Seen from the left, right is −y.
  const place = (a: number): Vec3 => {
    const t = (a * Math.PI) / 180
    return [x, y - 20 * Math.cos(t), z + 20 * Math.sin(t)]
  }
  const tools = drilled.flatMap(({ at, deep }) =>
    at.map((a) => {
      const p = place(a)
      return make.cylinder([p[0] - 1, p[1], p[2]], [1, 0, 0], 3, deep + 1)
    }),
  )
  const bore = make.cylinder([x - 1, y, z], [1, 0, 0], 10, 30)
  const solid = make.cut(make.cylinder(c, [1, 0, 0], 30, 10), bore, ...tools)
  const floorsAt = (at: number) =>
    kernel
      .body(solid)
      .faces.filter((f) => f.surface.kind === 'plane' && Math.abs(f.surface.axes.origin[0] - at) < 1e-9)
      .map((f) => f.id)
  return handMade(kernel, {
    solid,
    axis: { point: c, direction: [1, 0, 0], lie: 'left-right' },
    features: [
      roundFeature(kernel, solid, 'bore', 'bore', [-1, 0, 0], [[c]]),
      ...drilled.map(({ id, at, deep }) => {
        const pattern = { kind: 'bolt circle', centre: c, radius: 20, normal: [-1, 0, 0] } as const
        const walls = roundFeature(
          kernel,
          solid,
          id,
          'hole',
          [-1, 0, 0],
          at.map((a) => [place(a)]),
          pattern,
        )
        return { ...walls, members: walls.members.map((m) => ({ ...m, faces: [...m.faces, ...floorsAt(x + deep)] })) }
      }),
    ],
  })
}

const both = (text: (z: (n: number) => number) => string) => [text((n) => n), text((n) => -n)]
const ring = [
  'visible line 0,-30 0,30',
  'visible line 10,-30 10,30',
  ...both((z) => `visible line 0,${z(30)} 10,${z(30)}`),
  ...both((z) => `visible line 0,${z(10)} 10,${z(10)}`),
  'centre line 0,0 10,0',
]
const through = (r: number) => [
  `visible line 0,${r - 3} 10,${r - 3}`,
  `visible line 0,${r + 3} 10,${r + 3}`,
  `centre line 0,${r} 10,${r}`,
]
const area = (v: View) =>
  v.hatched.flat(2).reduce((sum, c) => (c.kind === 'line' ? sum + (c.a[0] * c.b[1] - c.b[0] * c.a[1]) / 2 : sum), 0)
/** A view as if the axis stood at the origin. */
const about = (v: View, [u, w]: Vec2) =>
  toldAll(
    v.lines.map((l) =>
      l.curve.kind === 'line'
        ? {
            ...l,
            curve: {
              kind: 'line' as const,
              a: [l.curve.a[0] - u, l.curve.a[1] - w] as Vec2,
              b: [l.curve.b[0] - u, l.curve.b[1] - w] as Vec2,
            },
          }
        : l,
    ),
  )
const cutOf = (part: Part) => drawViews(part, kernel).views.find((v) => v.kind === 'section')!

describe('holes that all stand beside the upright plane', () => {
  it.each([[[0, 0, 0] as Vec3], [[2, 5, -7] as Vec3]])(
    'are cut in both halves where they stand opposite each other, the axis at %j',
    (c) => {
      const part = flange(c, { id: 'holes', at: [22.5, 67.5, 202.5, 247.5], deep: 20 })
      const cut = cutOf(part)
      expect(about(cut, [c[0], c[2]])).toEqual([...ring, ...through(20), ...through(-20)].sort())
      // (30 − 10)·10 − 6·10 on either side.
      expect(Math.abs(area(cut))).toBeCloseTo(2 * 140, 6)
    },
  )

  it('are passed by a straight line through the axis, looked at square to it', () => {
    const part = flange([0, 0, 0], { id: 'holes', at: [22.5, 67.5, 202.5, 247.5], deep: 20 })
    const [plane] = drawViews(part, kernel).views.find((v) => v.id === 'left')!.cuttingPlanes
    const t = (67.5 * Math.PI) / 180
    expect(plane!.path).toHaveLength(2)
    expect(plane!.path[0]![0]).toBeCloseTo(30 * Math.cos(t), 9)
    expect(plane!.path[0]![1]).toBeCloseTo(30 * Math.sin(t), 9)
    expect(plane!.path[1]![1]).toBeCloseTo(-30 * Math.sin(t), 9)
    // The section stands for the front view, whose viewer looks to the rear: to the left of the view from the left.
    for (const sight of [plane!.sight, plane!.farSight!]) {
      expect(sight[0]).toBeCloseTo(-Math.sin(t), 9)
      expect(sight[1]).toBeCloseTo(Math.cos(t), 9)
    }
  })
})

describe('a blind hole beside holes that the upright plane cuts', () => {
  const part = () => flange([0, 0, 0], { id: 'holes', at: [90, 210, 330], deep: 20 }, { id: 'pin', at: [300], deep: 5 })
  const blind = [
    'visible line 0,-23 5,-23',
    'visible line 0,-17 5,-17',
    'visible line 5,-23 5,-17',
    'centre line 0,-20 5,-20',
  ]

  it('is turned into the half that can be spared', () => {
    const cut = cutOf(part())
    expect(toldAll(cut.lines)).toEqual([...ring, ...through(20), ...blind].sort())
    expect(Math.abs(area(cut))).toBeCloseTo(140 + 200 - 6 * 5, 6)
  })

  it('bends the cutting-plane line on the axis; each end is looked at square to its part', () => {
    const [plane] = drawViews(part(), kernel).views.find((v) => v.id === 'left')!.cuttingPlanes
    const t = (300 * Math.PI) / 180
    const told = plane!.path.map((p) => p.map((n) => Math.round(n * 1e6) / 1e6 + 0))
    expect(told).toEqual([
      [0, 30],
      [0, 0],
      [15, Math.round(30 * Math.sin(t) * 1e6) / 1e6],
    ])
    expect(plane!.sight[0]).toBeCloseTo(-1, 9)
    expect(plane!.farSight![0]).toBeCloseTo(Math.sin(t), 9)
    expect(plane!.farSight![1]).toBeCloseTo(-Math.cos(t), 9)
  })

  it('is not turned for a plain hole through, whose callout tells all', () => {
    const plain = flange([0, 0, 0], { id: 'holes', at: [90, 270], deep: 20 }, { id: 'pin', at: [0], deep: 20 })
    expect(drawViews(plain, kernel).views.find((v) => v.id === 'left')!.cuttingPlanes[0]!.path).toHaveLength(2)
    expect(toldAll(cutOf(plain).lines)).toEqual([...ring, ...through(20), ...through(-20)].sort())
  })

  it('is gone through where the brief asks for it, whatever else it cuts', () => {
    const plain = flange([0, 0, 0], { id: 'holes', at: [90, 270], deep: 20 }, { id: 'pin', at: [0], deep: 20 })
    const request = { ...section('A'), through: { text: 'pin', span: { from: 0, to: 0 } } }
    const plan = planSection(plain, request as Parameters<typeof planSection>[1], ['left'])
    expect(plan).toMatchObject({ side: 'front', parent: 'left', point: [0, 0, 0] })
    expect(plan.aligned!.map((d) => d.map((n) => Math.round(n * 1e9) / 1e9 + 0))).toEqual([
      [0, 0, 1],
      [0, -1, 0],
    ])
    expect(planSection(plain, section('A') as Parameters<typeof planSection>[1], ['left']).aligned).toBeUndefined()
  })
})

describe('a section asked for beside other views', () => {
  it('is straight where no end view could show a bent plane', () => {
    const part = flange([0, 0, 0], { id: 'holes', at: [45, 225], deep: 20 })
    const asked = { ...part, brief: { ...part.brief, views: [view('top'), section('A')] } }
    const cut = drawViews(asked, kernel).views.find((v) => v.kind === 'section')!
    expect(toldAll(cut.lines).filter((l) => l.startsWith('centre'))).toEqual(['centre line 0,0 10,0'])
  })
})
