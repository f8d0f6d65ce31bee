import { beforeAll, describe, expect, it } from 'vitest'
import type { Lie } from '../../src/brief/brief.ts'
import type { Size } from '../../src/brief/size.ts'
import type { Vec3 } from '../../src/geometry/vec.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { type Shapes, shapes } from '../../src/kernel/shapes.ts'
import type { Part } from '../../src/part/part.ts'
import { describeViews } from '../../src/views/describe.ts'
import { drawViews } from '../../src/views/draw-views.ts'
import { planSection } from '../../src/views/propose/sections.ts'
import { handMade, roundFeature, section, size, view } from './parts.ts'
import { told, toldAll } from './told.ts'

// Choice of views: ASME Y14.3 and ISO 128-3 (no more views than needed; fewest hidden lines), customs of the trade.

let kernel: OcctKernel
let make: Shapes
beforeAll(async () => {
  kernel = await openKernel()
  make = shapes(kernel)
})

const third = { practice: 'ASME', projection: 'third angle', units: 'inch' } as const
const ids = (part: Part) => drawViews(part, kernel).views.map((v) => v.id)

/** Bush along x: ⌀40 × 8 flange, ⌀24 body to 30, bore ⌀16. */
function bush(holes: readonly Vec3[] = []): Part {
  const outside = make.turned(
    [0, 0, 0],
    [1, 0, 0],
    [
      [0, 20],
      [8, 20],
      [8, 12],
      [30, 12],
    ],
  )
  const tools = holes.map((p) => make.cylinder([p[0] - 1, p[1], p[2]], [1, 0, 0], 2, 20))
  const solid = make.cut(outside, make.cylinder([-1, 0, 0], [1, 0, 0], 8, 40), ...tools)
  const lie: Lie = 'left-right'
  return handMade(kernel, {
    solid,
    axis: { point: [0, 0, 0], direction: [1, 0, 0], lie },
    features: [
      roundFeature(kernel, solid, 'bore', 'bore', [-1, 0, 0], [[[0, 0, 0]]]),
      ...(holes.length > 0
        ? [
            roundFeature(
              kernel,
              solid,
              'holes',
              'hole',
              [-1, 0, 0],
              holes.map((p) => [p]),
              {
                kind: 'bolt circle',
                centre: [0, 0, 0],
                radius: 16,
                normal: [-1, 0, 0],
              },
            ),
          ]
        : []),
    ],
  })
}

describe('the program’s own choice', () => {
  it('is one view for a shaft, its axis across the sheet', () => {
    const solid = make.turned(
      [0, 0, 0],
      [1, 0, 0],
      [
        [0, 10],
        [20, 10],
        [20, 15],
        [40, 15],
      ],
    )
    const part = handMade(kernel, { solid, axis: { point: [0, 0, 0], direction: [1, 0, 0], lie: 'left-right' } })
    expect(ids(part)).toEqual(['front', 'pictorial'])
  })

  it('is a longitudinal full section for a plain bush', () => {
    const set = drawViews(bush(), kernel)
    expect(set.views.map((v) => v.id)).toEqual(['section A-A', 'pictorial'])
    expect(set.views[0]!.side).toBe('front')
    expect(set.views[0]!.label).toBeUndefined()
  })

  it('adds the circular view, from the worked face, where holes lie off the axis', () => {
    const set = drawViews(
      bush([
        [0, 0, 16],
        [0, 0, -16],
      ]),
      kernel,
    )
    expect(set.views.map((v) => v.id)).toEqual(['left', 'section A-A', 'pictorial'])
    expect(set.views[0]!.cuttingPlanes).toHaveLength(1)
    expect(set.views[1]!.label).toBe('A-A')
  })

  describe('for a shaft with keyseats', () => {
    // ⌀20 to x = 30, collar ⌀30 to 40, ⌀20 to 90, ⌀12 to 120; keyseats 4 wide from the front.
    const shaft = (...reaches: readonly (readonly [from: number, to: number, depthAt: number])[]) => {
      const blank = make.turned(
        [0, 0, 0],
        [1, 0, 0],
        [
          [0, 10],
          [30, 10],
          [30, 15],
          [40, 15],
          [40, 10],
          [90, 10],
          [90, 6],
          [120, 6],
        ],
      )
      const solid = make.cut(blank, ...reaches.map(([a, b, y]) => make.box([a, -16, -2], [b, y, 2])))
      const body = kernel.body(solid)
      const floors = reaches.map(([a, b, y]) =>
        body.faces.filter((f) =>
          f.loops.flat().every((use) => {
            const c = body.edges[use.edge]!.curve
            return c.kind === 'line' && [c.a, c.b].every((p) => Math.abs(p[1] - y) < 1e-6 && p[0] >= a && p[0] <= b)
          }),
        ),
      )
      return handMade(kernel, {
        solid,
        header: third,
        axis: { point: [0, 0, 0], direction: [1, 0, 0], lie: 'left-right' },
        features: floors.map((faces, i) => ({
          id: `keyseat ${i + 1}`,
          kind: 'keyseat',
          outward: [0, -1, 0],
          members: [
            { id: `keyseat ${i + 1}/1`, axes: [], faces: faces.map((f) => f.id), point: [reaches[i]![0], 0, 0] },
          ],
        })),
      })
    }

    it('adds a section across the axis through the middle of each, marked in the front', () => {
      const { views, reasons } = drawViews(shaft([50, 70, -7], [95, 105, -4]), kernel)
      expect(views.map((v) => v.id)).toEqual(['front', 'section A-A', 'section B-B', 'pictorial'])
      const at = views[0]!.cuttingPlanes.map((p) => [p.letter, p.path[0]![0]])
      expect(at).toEqual([
        ['A', 60],
        ['B', 100],
      ])
      expect(reasons.filter((r) => r.includes('across the axis'))).toHaveLength(2)
    })

    it('sees it from where nothing larger stands behind the cut', () => {
      // Right of the collar: from the left, left of it: from the right; only the ⌀20 cut shows.
      for (const [reach, side] of [
        [[50, 70, -7], 'left'],
        [[5, 25, -7], 'right'],
      ] as const) {
        const cut = drawViews(shaft(reach), kernel).views.find((v) => v.kind === 'section')!
        expect(cut.side).toBe(side)
        const radii = cut.lines.flatMap((l) => (l.kind === 'visible' && l.curve.kind === 'arc' ? [l.curve.r] : []))
        expect(Math.max(...radii)).toBeCloseTo(10, 9)
      }
    })

    it('draws one section for two that lie beside each other', () => {
      expect(ids(shaft([50, 70, -7], [52, 66, -7]))).toEqual(['front', 'section A-A', 'pictorial'])
    })
  })

  it('is one view and a thickness note for a flat part', () => {
    const solid = make.cut(make.box([0, 0, 0], [60, 30, 5]), make.cylinder([20, 15, -1], [0, 0, 1], 4, 10))
    const words = {
      solid,
      features: [roundFeature(kernel, solid, 'hole', 'hole', [0, 0, 1], [[[20, 15, 0]]])],
      flat: { side: 'top', thickness: size('5') },
    } as const
    const iso = drawViews(handMade(kernel, words), kernel)
    expect(iso.views.map((v) => v.id)).toEqual(['top', 'pictorial'])
    expect(iso.thicknessNote).toBe('t = 5')
    const asme = drawViews(
      handMade(kernel, { ...words, header: third, flat: { side: 'top', thickness: size('.188', 'inch') } }),
      kernel,
    )
    expect(asme.thicknessNote).toBe('.188 THK')
  })

  // ASME Y14.5 and ISO 129-1: a tolerance stands with its size (from memory); a note without it would lose it.
  it('shows the edge of a flat part whose thickness has a tolerance of its own', () => {
    const solid = make.cut(make.box([0, 0, 0], [60, 30, 5]), make.cylinder([20, 15, -1], [0, 0, 1], 4, 10))
    const features = [roundFeature(kernel, solid, 'hole', 'hole', [0, 0, 1], [[[20, 15, 0]]])]
    const views = (tolerance: Size['tolerance']) =>
      drawViews(
        handMade(kernel, {
          solid,
          features,
          flat: { side: 'top', thickness: { ...size('5'), ...(tolerance ? { tolerance } : {}) } },
        }),
        kernel,
      )
    const span = { from: 0, to: 0 }
    const close = views({ kind: 'fit', symbol: 'h9', span })
    expect(close.thicknessNote).toBeUndefined()
    expect(close.views.map((v) => v.id)).toEqual(['front', 'top', 'pictorial'])
    expect(views({ kind: 'stock', span }).thicknessNote).toBe('t = 5')
  })

  // Common practice, no source: what is longer than its profile is wide has a length, not a thickness.
  it('shows the length of a bar whose profile is smaller', () => {
    const long = (thickness: number) =>
      drawViews(
        handMade(kernel, {
          solid: make.box([0, 0, 0], [12, thickness, 20]),
          flat: { side: 'front', thickness: size(String(thickness)) },
        }),
        kernel,
      )
    expect(long(12).thicknessNote).toBe('t = 12')
    expect(long(13).thicknessNote).toBeUndefined()
    expect(long(13).views.filter((v) => v.kind === 'principal')).toHaveLength(2)
  })

  it('needs a second view where a flat part is drilled edgewise', () => {
    const solid = make.cut(make.box([0, 0, 0], [60, 30, 12]), make.cylinder([-1, 15, 6], [1, 0, 0], 2, 20))
    const part = handMade(kernel, {
      solid,
      features: [roundFeature(kernel, solid, 'hole', 'hole', [-1, 0, 0], [[[0, 15, 6]]])],
      flat: { side: 'top', thickness: size('12') },
    })
    expect(ids(part).length).toBeGreaterThan(2)
  })

  it('is front, top and right in third angle, front, top and left in first angle, for a bracket', () => {
    const bracket = (header: typeof third | undefined) => {
      const angle = make.fuse(make.box([0, 40, 0], [60, 48, 50]), make.box([0, 0, 0], [60, 48, 8]))
      const solid = make.cut(
        angle,
        make.cylinder([30, 30, 30], [0, 1, 0], 4, 30),
        make.cylinder([30, 20, -1], [0, 0, 1], 3, 20),
      )
      return handMade(kernel, {
        solid,
        stock: { kind: 'angle', uprightAt: 'rear' } as NonNullable<Part['brief']['stock']>,
        features: [
          roundFeature(kernel, solid, 'upright', 'hole', [0, -1, 0], [[[30, 40, 30]]]),
          roundFeature(kernel, solid, 'base', 'hole', [0, 0, 1], [[[30, 20, 0]]]),
        ],
        ...(header ? { header } : {}),
      })
    }
    expect(ids(bracket(third))).toEqual(['front', 'top', 'right', 'pictorial'])
    expect(ids(bracket(undefined))).toEqual(['front', 'top', 'left', 'pictorial'])
  })

  it('takes the side view that hides less', () => {
    // A pocket open to the left only.
    const angle = make.fuse(make.box([0, 40, 0], [60, 48, 50]), make.box([0, 0, 0], [60, 48, 8]))
    const solid = make.cut(
      angle,
      make.box([-1, 10, 3], [10, 20, 6]),
      make.cylinder([30, 20, -1], [0, 0, 1], 3, 20),
      make.cylinder([30, 30, 30], [0, 1, 0], 4, 30),
    )
    const part = handMade(kernel, {
      solid,
      header: third,
      stock: { kind: 'angle', uprightAt: 'rear' } as NonNullable<Part['brief']['stock']>,
      features: [
        roundFeature(kernel, solid, 'base', 'hole', [0, 0, 1], [[[30, 20, 0]]]),
        roundFeature(kernel, solid, 'upright', 'hole', [0, -1, 0], [[[30, 40, 30]]]),
      ],
    })
    const set = drawViews(part, kernel)
    expect(set.views.map((v) => v.id)).toEqual(['front', 'top', 'left', 'pictorial'])
    expect(set.reasons.join(' ')).toContain('Left rather than right: fewer hidden lines.')
  })
})

describe('what the brief asks for', () => {
  it('goes before the program’s choice', () => {
    const part = bush()
    const asked = {
      ...part,
      brief: {
        ...part.brief,
        views: [view('front'), view('left'), { kind: 'no pictorial', span: { from: 0, to: 0 } } as const],
      },
    }
    expect(ids(asked)).toEqual(['front', 'left'])
  })
})

describe('sections', () => {
  it('shows the cut in full lines, hatches it, and marks the plane with its sight in the other view', () => {
    const part = bush([
      [0, 0, 16],
      [0, 0, -16],
    ])
    const set = drawViews({ ...part, brief: { ...part.brief, views: [view('left'), section('A')] } }, kernel)
    const cut = set.views.find((v) => v.kind === 'section')!
    expect(cut.side).toBe('front')
    // Worked by hand: profile and bore cut, the two holes ⌀4 on 16 through the flange, rims behind the plane edge-on.
    const both = (text: (z: (n: number) => number) => string) => [text((n) => n), text((n) => -n)]
    expect(toldAll(cut.lines)).toEqual(
      [
        'visible line 0,-20 0,20',
        'visible line 30,-12 30,12',
        'visible line 8,12 8,20',
        'visible line 8,-20 8,-12',
        ...both((z) => `visible line 0,${z(20)} 8,${z(20)}`),
        ...both((z) => `visible line 8,${z(12)} 30,${z(12)}`),
        ...both((z) => `visible line 0,${z(8)} 30,${z(8)}`),
        ...both((z) => `visible line 0,${z(14)} 8,${z(14)}`),
        ...both((z) => `visible line 0,${z(18)} 8,${z(18)}`),
        ...both((z) => `centre line 0,${z(16)} 8,${z(16)}`),
        'centre line 0,0 30,0',
      ].sort(),
    )
    // Area of the cut: two halves of flange and body less the holes, (20 - 8)·8 - 4·8 + (12 - 8)·22 = 152 each.
    const area = cut.hatched
      .flat(2)
      .reduce((sum, c) => (c.kind === 'line' ? sum + (c.a[0] * c.b[1] - c.b[0] * c.a[1]) / 2 : sum), 0)
    expect(Math.abs(area)).toBeCloseTo(2 * 152, 6)
    const [plane] = set.views.find((v) => v.id === 'left')!.cuttingPlanes
    // Seen from the left, y runs to the left: the front viewer looks toward the rear, to the left of that view.
    expect(plane!.letter).toBe('A')
    expect(plane!.sight[0]).toBeCloseTo(-1, 12)
    expect(plane!.path.map((p) => [p[0] + 0, Math.abs(p[1])])).toEqual([
      [0, 20],
      [0, 20],
    ])
  })

  it('leaves no doubled centre line under the cutting-plane line', () => {
    const part = bush([
      [0, 0, 16],
      [0, 0, -16],
    ])
    const set = drawViews({ ...part, brief: { ...part.brief, views: [view('left'), section('A')] } }, kernel)
    const upright = set.views[0]!.lines.filter(
      (l) =>
        l.kind === 'centre' &&
        l.curve.kind === 'line' &&
        Math.abs(l.curve.a[0]) < 1e-9 &&
        Math.abs(l.curve.b[0]) < 1e-9,
    )
    expect(upright).toEqual([])
  })

  it('divides a half section by the centre line alone: outside above, inside below, nothing hidden', () => {
    const part = bush()
    const set = drawViews({ ...part, brief: { ...part.brief, views: [view('left'), section('A', 'half')] } }, kernel)
    const half = set.views.find((v) => v.kind === 'section')!
    expect(toldAll(half.lines)).toEqual(
      [
        // outline, whole
        'visible line 0,-20 0,20',
        'visible line 0,20 8,20',
        'visible line 0,-20 8,-20',
        'visible line 8,12 30,12',
        'visible line 8,-12 30,-12',
        'visible line 30,-12 30,12',
        // the flange's face: outside view above, only beyond the body below
        'visible line 8,0 8,20',
        'visible line 8,-20 8,-12',
        // the bore, below only
        'visible line 0,-8 30,-8',
        'centre line 0,0 30,0',
      ].sort(),
    )
  })
})

describe('where a section goes', () => {
  // Plate with two holes at y = 10 and one at y = 20.
  const plate = () => {
    const at: readonly Vec3[] = [
      [10, 10, 0],
      [50, 10, 0],
      [30, 20, 0],
    ]
    const drills = at.map((p) => make.cylinder([p[0], p[1], -1], [0, 0, 1], 3, 20))
    const solid = make.cut(make.box([0, 0, 0], [60, 30, 10]), ...drills)
    const hole = (id: string, ...of: readonly Vec3[]) =>
      roundFeature(
        kernel,
        solid,
        id,
        'hole',
        [0, 0, 1],
        of.map((p) => [p]),
      )
    return handMade(kernel, { solid, features: [hole('hole A', at[0]!, at[1]!), hole('hole B', at[2]!)] })
  }
  const request = (more: object = {}) => ({ ...section('A'), ...more }) as Parameters<typeof planSection>[1]

  it('is through most holes, into the place whose plane cuts most, seen edge-on in a view that is drawn', () => {
    const plan = planSection(plate(), request(), ['top'])
    expect(plan).toMatchObject({ side: 'front', parent: 'top' })
    expect(plan.point[1]).toBe(10)
  })

  it('is through what the brief names, in the words of the brief', () => {
    for (const text of ['hole B', 'holes B']) {
      expect(planSection(plate(), request({ through: { text }, as: 'front' }), ['top']).point[1]).toBe(20)
    }
    expect(planSection(bush(), request({ through: { text: 'bores' } }), ['left']).point).toEqual([0, 0, 0])
  })

  it('has no cutting-plane line where no view sees the plane edge-on', () => {
    expect(planSection(plate(), request({ as: 'top' }), []).parent).toBeUndefined()
  })
})

it('takes the side view from which a blind hole is worked, though the other hides less', () => {
  // Step 10 × 10 at the left: from the right its edge of 30 mm is hidden; the circle hidden from the left is π·6 = 18.8 mm.
  const solid = make.cut(
    make.box([0, 0, 0], [60, 30, 20]),
    make.box([-1, -1, 10], [11, 32, 11]),
    make.cylinder([61, 15, 5], [-1, 0, 0], 3, 13),
  )
  const hole = roundFeature(kernel, solid, 'hole', 'hole', [1, 0, 0], [[[60, 15, 5]]])
  const part = handMade(kernel, { solid, features: [hole] })
  expect(ids(part)).toEqual(['front', 'right', 'pictorial'])
})

describe('a section asked for alone', () => {
  // Which views are needed beside it, by hand: each feature seen true from its worked side, the plane seen edge-on.
  const block = (more: readonly (readonly [Vec3, Vec3])[]) => {
    const drills = more.map(([p, d]) => make.cylinder([p[0] - d[0], p[1] - d[1], p[2] - d[2]], d, 3, 12))
    const solid = make.cut(make.box([0, 0, 0], [60, 30, 20]), ...drills)
    const features = more.map(([p, d], i) =>
      roundFeature(kernel, solid, `hole ${i + 1}`, 'hole', [-d[0], -d[1], -d[2]], [[p]]),
    )
    return { ...handMade(kernel, { solid, features, views: [section('A')] }) }
  }

  it('leaves the proposed views that are still needed beside it', () => {
    // Two blind holes from the top in the middle plane: the front is cut along both, the top view carries the plane.
    const two = block([
      [
        [15, 15, 20],
        [0, 0, -1],
      ],
      [
        [45, 15, 20],
        [0, 0, -1],
      ],
    ])
    const plain = drawViews({ ...two, brief: { ...two.brief, views: [] } }, kernel)
    expect(plain.views.map((v) => v.id)).toEqual(['front', 'top', 'pictorial'])
    const set = drawViews(two, kernel)
    expect(set.views.map((v) => v.id)).toEqual(['top', 'section A-A', 'pictorial'])
    expect(set.views.flatMap((v) => v.cuttingPlanes.map(() => v.id))).toEqual(['top'])
    expect(set.views[1]!.side).toBe('front')
    // One hole alone is cut as well from the side: the front stays whole.
    const one = block([
      [
        [15, 15, 20],
        [0, 0, -1],
      ],
    ])
    expect(drawViews(one, kernel).views.map((v) => v.id)).toEqual(['front', 'top', 'section A-A', 'pictorial'])
  })

  it('takes the place where it cuts most when every direction has its view, and leaves the view of what it cuts away', () => {
    const three = block([
      [
        [15, 15, 20],
        [0, 0, -1],
      ],
      [
        [45, 15, 20],
        [0, 0, -1],
      ],
      [
        [60, 25, 10],
        [-1, 0, 0],
      ],
    ])
    const set = drawViews(three, kernel)
    // A plane along the front holds two axes, one across it no more than one.
    expect(set.views.map((v) => v.id)).toEqual(['top', 'right', 'section A-A', 'pictorial'])
    expect(set.views.find((v) => v.kind === 'section')!.side).toBe('front')
    expect(set.reasons.join(' ')).toContain('Section A-A as the brief asks, in the place of the front view.')
  })

  it('is alone where the proposal is one view of a part of revolution, beside the end view where holes need it', () => {
    const alone = bush()
    const only = drawViews({ ...alone, brief: { ...alone.brief, views: [section('B')] } }, kernel)
    expect(only.views.map((v) => v.id)).toEqual(['section B-B', 'pictorial'])
    const drilled = bush([[0, 0, 16]])
    const set = drawViews({ ...drilled, brief: { ...drilled.brief, views: [section('B', 'half')] } }, kernel)
    expect(set.views.map((v) => v.id)).toEqual(['left', 'section B-B', 'pictorial'])
    expect(set.views[0]!.cuttingPlanes.map((c) => c.letter)).toEqual(['B'])
  })
})

it('tells counts and lengths of lines by view', () => {
  const solid = make.cut(make.box([0, 0, 0], [60, 30, 5]), make.cylinder([20, 15, -1], [0, 0, 1], 4, 10))
  const part = handMade(kernel, {
    solid,
    features: [roundFeature(kernel, solid, 'hole', 'hole', [0, 0, 1], [[[20, 15, 0]]])],
    views: [view('front')],
  })
  const [front] = describeViews(drawViews(part, kernel))
  expect(front).toEqual({
    id: 'front',
    visible: { count: 4, length: 130 },
    hidden: { count: 2, length: 10 },
    centre: { count: 1, length: 5 },
  })
})

it('draws the pictorial with visible lines only, all three axes equally shortened (ISO 5456-3)', () => {
  const solid = make.box([0, 0, 0], [10, 10, 10])
  const [, pictorial] = drawViews(handMade(kernel, { solid, views: [view('front')] }), kernel).views
  expect(pictorial!.lines).toHaveLength(9)
  const edge = 10 * Math.sqrt(2 / 3)
  for (const l of pictorial!.lines) {
    expect(l.kind).toBe('visible')
    expect(l.curve.kind === 'line' && Math.hypot(l.curve.a[0] - l.curve.b[0], l.curve.a[1] - l.curve.b[1])).toBeCloseTo(
      edge,
      9,
    )
  }
  expect(told(pictorial!.lines[0]!.curve)).toContain('line')
})

describe('theoretical intersections (ISO 128-3)', () => {
  // Block 40 × 20 × 30 whose front face meets a face sloped 45° in a round R8, about an axis along x.
  // Profile in y, z: up the front to z = 30 - 10 - 8·tan 22.5°, round, then 45° back to the top edge.
  const t = 8 * Math.tan(Math.PI / 8)
  const d = t / Math.SQRT2
  const solid = () =>
    make.prism(
      {
        outer: [
          { kind: 'line', a: [10, 0], b: [10, 30] },
          { kind: 'line', a: [10, 30], b: [d, 20 + d] },
          { kind: 'arc', c: [8, 20 - t], r: 8, from: (3 * Math.PI) / 4, sweep: Math.PI / 4 },
          { kind: 'line', a: [0, 20 - t], b: [0, 0] },
          { kind: 'line', a: [0, 0], b: [10, 0] },
        ],
        holes: [],
      },
      { origin: [0, 0, 0], right: [0, 1, 0], up: [0, 0, 1] },
      [40, 0, 0],
    )

  it('stand where a view would say nothing of the rounded edge, where the flat faces would meet', () => {
    const [front] = drawViews(handMade(kernel, { solid: solid(), views: [view('front')] }), kernel).views
    const thin = front!.lines.filter((l) => l.kind === 'intersection')
    // Front face y = 0 and the slope z = 20 + y meet at z = 20.
    expect(toldAll(thin)).toEqual(['intersection line 0,20 40,20'])
    expect(thin[0]!.overrun!.every((o) => o < 0)).toBe(true)
    expect(front!.lines.filter((l) => l.kind === 'visible')).toHaveLength(4)
  })

  it('stay away where the view shows the edge anyway', () => {
    const [right] = drawViews(handMade(kernel, { solid: solid(), views: [view('right')] }), kernel).views
    expect(right!.lines.some((l) => l.kind === 'intersection')).toBe(false)
  })
})
