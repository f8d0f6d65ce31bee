import { beforeAll, describe, expect, it } from 'vitest'
import type { Side } from '../../src/brief/brief.ts'
import type { Curve2 } from '../../src/geometry/curve2.ts'
import type { Vec2 } from '../../src/geometry/vec.ts'
import type { SolidKey } from '../../src/kernel/kernel.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { type Shapes, shapes } from '../../src/kernel/shapes.ts'
import type { Part } from '../../src/part/part.ts'
import { drawViews } from '../../src/views/draw-views.ts'
import { exactView } from '../../src/views/exact/exact-view.ts'
import { FRAMES } from '../../src/views/frames.ts'
import { kernelProjector } from '../../src/views/oracle.ts'
import type { Projector } from '../../src/views/projector.ts'
import { handMade, roundFeature, view } from './parts.ts'
import { told, toldAll } from './told.ts'

// Answers worked by hand from descriptive geometry (Monge's two-plane method): each line of the view from the numbers of
// the part. The exact step is told apart from the finished view.

let kernel: OcctKernel
let make: Shapes
beforeAll(async () => {
  kernel = await openKernel()
  make = shapes(kernel)
})

const projectors: readonly (readonly [string, () => Projector])[] = [
  ['the kernel’s hidden-line algorithm', () => kernelProjector(kernel)],
  ['our own', () => (_, body, frame) => exactView(body, frame)],
]

describe.each(projectors)('views by %s', (_, projector) => {
  const finished = (part: Part, side: Side) =>
    toldAll(drawViews({ ...part, brief: { ...part.brief, views: [view(side)] } }, kernel, projector()).views[0]!.lines)

  const exact = (solid: SolidKey, side: Side) =>
    projector()(solid, kernel.body(solid), FRAMES[side])
      .curves.map((c) => `${c.visible ? 'visible' : 'hidden'} ${c.kind} ${told(c.curve)}`)
      .sort()

  const rectangle = (x0: number, y0: number, x1: number, y1: number) => [
    `visible line ${x0},${y0} ${x0},${y1}`,
    `visible line ${x0},${y0} ${x1},${y0}`,
    `visible line ${x0},${y1} ${x1},${y1}`,
    `visible line ${x1},${y0} ${x1},${y1}`,
  ]

  const profile = (
    points: readonly (Vec2 | { readonly arc: Vec2; readonly c: Vec2; readonly turn: 1 | -1 })[],
  ): Curve2[] => {
    const at = (p: (typeof points)[number]): Vec2 => ('arc' in p ? p.arc : p)
    return points.map((p, i): Curve2 => {
      const a = at(points[(i + points.length - 1) % points.length]!)
      const b = at(p)
      if (!('arc' in p)) return { kind: 'line', a, b }
      const from = Math.atan2(a[1] - p.c[1], a[0] - p.c[0])
      let sweep = Math.atan2(b[1] - p.c[1], b[0] - p.c[0]) - from
      if (p.turn > 0 && sweep < 0) sweep += 2 * Math.PI
      if (p.turn < 0 && sweep > 0) sweep -= 2 * Math.PI
      return { kind: 'arc', c: p.c, r: Math.hypot(a[0] - p.c[0], a[1] - p.c[1]), from, sweep }
    })
  }
  /** A profile in y (right) and z (up), run along x. */
  const alongX = (outer: Curve2[], from: number, length: number) =>
    make.prism({ outer, holes: [] }, { origin: [from, 0, 0], right: [0, 1, 0], up: [0, 0, 1] }, [length, 0, 0])

  it('shows a through hole as a circle from above and as two hidden lines about an axis from the front', () => {
    const solid = make.cut(make.box([0, 0, 0], [40, 20, 10]), make.cylinder([12, 8, -1], [0, 0, 1], 3, 12))
    const part = handMade(kernel, {
      solid,
      features: [roundFeature(kernel, solid, 'hole', 'hole', [0, 0, 1], [[[12, 8, 0]]])],
    })
    expect(exact(solid, 'front')).toEqual([
      'hidden silhouette line 15,0 15,10',
      'hidden silhouette line 9,0 9,10',
      'visible edge line 0,0 0,10',
      'visible edge line 0,0 40,0',
      'visible edge line 0,10 40,10',
      'visible edge line 40,0 40,10',
    ])
    expect(finished(part, 'front')).toEqual(
      ['centre line 12,0 12,10', 'hidden line 15,0 15,10', 'hidden line 9,0 9,10', ...rectangle(0, 0, 40, 10)].sort(),
    )
    expect(finished(part, 'top')).toEqual(
      ['centre line 9,8 15,8', 'centre line 12,5 12,11', 'visible circle 12,8 r3', ...rectangle(0, 0, 40, 20)].sort(),
    )
  })

  it('shows nothing of a tangent round from the front, and its arc from the side', () => {
    // Block 40 × 20 × 30 with R5 on the top front edge.
    const outer = profile([[20, 0], [20, 30], [5, 30], { arc: [0, 25], c: [5, 25], turn: 1 }, [0, 0]])
    const solid = alongX(outer, 0, 40)
    const part = handMade(kernel, { solid })
    expect(exact(solid, 'front')).toContain('visible smooth line 0,25 40,25')
    expect(finished(part, 'front')).toEqual(rectangle(0, 0, 40, 30).sort())
    expect(finished(part, 'right')).toEqual(
      [
        'visible line 0,0 20,0',
        'visible line 20,0 20,30',
        'visible line 5,30 20,30',
        'visible arc 5,25 r5 0,25 5,30',
        'visible line 0,0 0,25',
      ].sort(),
    )
  })

  it('draws no line where a cylinder runs tangentially into a plane', () => {
    // Rod end 8 thick: R10 about the axis, shank 20 wide down to z = -30, bore ⌀8.
    const outer: Curve2[] = [
      { kind: 'arc', c: [0, 0], r: 10, from: 0, sweep: Math.PI },
      { kind: 'line', a: [-10, 0], b: [-10, -30] },
      { kind: 'line', a: [-10, -30], b: [10, -30] },
      { kind: 'line', a: [10, -30], b: [10, 0] },
    ]
    const bore: Curve2[] = [{ kind: 'arc', c: [0, 0], r: 4, from: 0, sweep: 2 * Math.PI }]
    const solid = make.prism(
      { outer, holes: [bore] },
      { origin: [0, 0, 0], right: [1, 0, 0], up: [0, 0, 1] },
      [0, 8, 0],
    )
    const part = handMade(kernel, {
      solid,
      features: [roundFeature(kernel, solid, 'bore', 'hole', [0, -1, 0], [[[0, 0, 0]]])],
    })
    expect(finished(part, 'front')).toEqual(
      [
        'visible arc 0,0 r10 -10,0 10,0',
        'visible line -10,-30 -10,0',
        'visible line -10,-30 10,-30',
        'visible line 10,-30 10,0',
        'visible circle 0,0 r4',
        'centre line -4,0 4,0',
        'centre line 0,-4 0,4',
      ].sort(),
    )
    // From the right: the outline of the R10 end closes the top at z = 10; nothing at z = 0 but the bore's axis.
    expect(finished(part, 'right')).toEqual(
      [...rectangle(0, -30, 8, 10), 'hidden line 0,4 8,4', 'hidden line 0,-4 8,-4', 'centre line 0,0 8,0'].sort(),
    )
  })

  it('tells a place once where visible, hidden and centre lines coincide', () => {
    // Block 40 × 30 × 20, step off the top front half (z 10 to 20, y 0 to 15), groove 10 wide from x = 15 across the top
    // rear down to z = 10, hole ⌀4 from the left at y 7, z 10 … 10 deep, so that its axis lies on the step's edge line.
    const solid = make.cut(
      make.box([0, 0, 0], [40, 30, 20]),
      make.box([-1, -1, 10], [41, 15, 21]),
      make.box([15, 14, 10], [25, 31, 21]),
      make.cylinder([-1, 22, 10], [1, 0, 0], 2, 11),
    )
    const part = handMade(kernel, {
      solid,
      features: [roundFeature(kernel, solid, 'hole', 'hole', [-1, 0, 0], [[[0, 22, 10]]])],
    })
    expect(finished(part, 'front')).toEqual(
      [
        'visible line 0,0 40,0',
        'visible line 0,0 0,20',
        'visible line 40,0 40,20',
        // The step's floor, whole: its front edge and the groove's floor are one line; the hole's axis falls on it and
        // shows past the outline only.
        'visible line 0,10 40,10',
        'covered centre line 0,10 10,10',
        'visible line 0,20 15,20',
        'visible line 25,20 40,20',
        'visible line 15,10 15,20',
        'visible line 25,10 25,20',
        // The hole's walls and its flat bottom, behind the step's face and below its floor.
        'hidden line 0,12 10,12',
        'hidden line 0,8 10,8',
        'hidden line 10,8 10,12',
      ].sort(),
    )
  })

  it('shows the circles of an inclined disc as ellipses', () => {
    // Disc ⌀20 × 4, its axis raised 30° from the line of sight toward the viewer and up.
    // Minor half axis 10·cos 30° = 8.660254; the rims' centres are 4·sin 30° = 2 apart on the picture.
    const disc = make.cylinder([0, 0, 0], [0, -1, 0], 10, 4)
    const solid = make.rotate(disc, [0, 0, 0], [1, 0, 0], -30)
    expect(finished(handMade(kernel, { solid }), 'front')).toEqual(
      [
        'visible ellipse 0,2 10×8.660254',
        'visible ellipse 0,0 10×8.660254 -10,0 10,0',
        'hidden ellipse 0,0 10×8.660254 -10,0 10,0',
        'visible line -10,0 -10,2',
        'visible line 10,0 10,2',
      ].sort(),
    )
  })

  it('shows a blind hole with its drill point', () => {
    // ⌀10, 12 deep from the top, 118° point: 5/tan 59° = 3.004303 below, so the tip stands at 30 - 12 - 3.004303.
    const hole = make.cylinder([20, 10, 18], [0, 0, 1], 5, 13)
    const point = make.cone([20, 10, 18], [0, 0, -1], 5, 0, 5 / Math.tan((59 * Math.PI) / 180))
    const solid = make.cut(make.box([0, 0, 0], [40, 20, 30]), hole, point)
    const part = handMade(kernel, {
      solid,
      features: [roundFeature(kernel, solid, 'hole', 'hole', [0, 0, 1], [[[20, 10, 0]]])],
    })
    expect(finished(part, 'front')).toEqual(
      [
        ...rectangle(0, 0, 40, 30),
        'hidden line 15,18 15,30',
        'hidden line 25,18 25,30',
        'hidden line 15,18 25,18',
        'hidden line 15,18 20,14.995697',
        'hidden line 20,14.995697 25,18',
        'centre line 20,14.995697 20,30',
      ].sort(),
    )
    expect(finished(part, 'bottom')).toEqual(
      [
        ...rectangle(0, -20, 40, 0),
        'hidden circle 20,-10 r5',
        'centre line 15,-10 25,-10',
        'centre line 20,-15 20,-5',
      ].sort(),
    )
  })

  it('shows a counterbored hole', () => {
    // ⌀6 through, counterbore ⌀12, 5 deep from the top of a 20 thick block.
    const solid = make.cut(
      make.box([-20, 0, 0], [20, 20, 20]),
      make.cylinder([0, 10, -1], [0, 0, 1], 3, 30),
      make.cylinder([0, 10, 15], [0, 0, 1], 6, 6),
    )
    const part = handMade(kernel, {
      solid,
      features: [roundFeature(kernel, solid, 'hole', 'hole', [0, 0, 1], [[[0, 10, 0]]])],
    })
    expect(finished(part, 'front')).toEqual(
      [
        ...rectangle(-20, 0, 20, 20),
        'hidden line -6,15 -6,20',
        'hidden line 6,15 6,20',
        'hidden line -6,15 6,15',
        'hidden line -3,0 -3,15',
        'hidden line 3,0 3,15',
        'centre line 0,0 0,20',
      ].sort(),
    )
    expect(finished(part, 'top')).toEqual(
      [
        ...rectangle(-20, 0, 20, 20),
        'visible circle 0,10 r6',
        'visible circle 0,10 r3',
        'centre line -6,10 6,10',
        'centre line 0,4 0,16',
      ].sort(),
    )
  })

  it('shows a slot true from above and by its extremes from both sides', () => {
    // Slot 6 wide, 20 overall, long way left-right, centres at x = 13 and 27, y = 10, through a plate 10 thick.
    const slot: Curve2[] = [
      { kind: 'arc', c: [13, 10], r: 3, from: Math.PI / 2, sweep: Math.PI },
      { kind: 'line', a: [13, 7], b: [27, 7] },
      { kind: 'arc', c: [27, 10], r: 3, from: -Math.PI / 2, sweep: Math.PI },
      { kind: 'line', a: [27, 13], b: [13, 13] },
    ]
    const rim: Curve2[] = profile([
      [40, 0],
      [40, 20],
      [0, 20],
      [0, 0],
    ])
    const solid = make.prism(
      { outer: rim, holes: [slot] },
      { origin: [0, 0, 0], right: [1, 0, 0], up: [0, 1, 0] },
      [0, 0, 10],
    )
    const part = handMade(kernel, {
      solid,
      features: [
        roundFeature(
          kernel,
          solid,
          'slot',
          'slot',
          [0, 0, 1],
          [
            [
              [13, 10, 0],
              [27, 10, 0],
            ],
          ],
        ),
      ],
    })
    expect(finished(part, 'top')).toEqual(
      [
        ...rectangle(0, 0, 40, 20),
        'visible arc 13,10 r3 13,7 13,13',
        'visible arc 27,10 r3 27,7 27,13',
        'visible line 13,7 27,7',
        'visible line 13,13 27,13',
        'centre line 10,10 30,10',
        'centre line 13,7 13,13',
        'centre line 27,7 27,13',
      ].sort(),
    )
    expect(finished(part, 'front')).toEqual(
      [
        ...rectangle(0, 0, 40, 10),
        'hidden line 10,0 10,10',
        'hidden line 30,0 30,10',
        'centre line 13,0 13,10',
        'centre line 27,0 27,10',
      ].sort(),
    )
    expect(finished(part, 'right')).toEqual(
      [...rectangle(0, 0, 20, 10), 'hidden line 7,0 7,10', 'hidden line 13,0 13,10', 'centre line 10,0 10,10'].sort(),
    )
  })

  it('shows nothing of a formed bend but the profile', () => {
    // Formed angle 3 thick, inside R3 and heel R6, upright 40 high at the rear of a base 40 deep, 50 long.
    const outer = profile([
      [34, 0],
      { arc: [40, 6], c: [34, 6], turn: 1 },
      [40, 40],
      [37, 40],
      [37, 6],
      { arc: [34, 3], c: [34, 6], turn: -1 },
      [0, 3],
      [0, 0],
    ])
    const solid = alongX(outer, 0, 50)
    const part = handMade(kernel, { solid })
    // The exact step knows the four tangent edges: seen from the front the inside ones are in sight, z 6 above the base.
    expect(exact(solid, 'front').filter((c) => c.includes('smooth'))).toContain('visible smooth line 0,6 50,6')
    expect(finished(part, 'front')).toEqual([...rectangle(0, 0, 50, 40), 'visible line 0,3 50,3'].sort())
    expect(finished(part, 'top')).toEqual([...rectangle(0, 0, 50, 40), 'visible line 0,37 50,37'].sort())
    // From the rear: the heel's outline is the bottom edge; the inside radius hides behind the upright.
    expect(finished(part, 'rear')).toEqual([...rectangle(-50, 0, 0, 40), 'hidden line -50,3 0,3'].sort())
    expect(finished(part, 'right')).toEqual(
      [
        'visible line 0,0 34,0',
        'visible arc 34,6 r6 34,0 40,6',
        'visible line 40,6 40,40',
        'visible line 37,40 40,40',
        'visible line 37,6 37,40',
        'visible arc 34,6 r3 34,3 37,6',
        'visible line 0,3 34,3',
        'visible line 0,0 0,3',
      ].sort(),
    )
  })
})
