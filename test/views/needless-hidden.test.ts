import { beforeAll, describe, expect, it } from 'vitest'
import type { Side, ViewRequest } from '../../src/brief/brief.ts'
import type { Vec3 } from '../../src/geometry/vec.ts'
import type { SolidKey } from '../../src/kernel/kernel.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { type Shapes, shapes } from '../../src/kernel/shapes.ts'
import type { Part, PartFeature } from '../../src/part/part.ts'
import { drawViews } from '../../src/views/draw-views.ts'
import { handMade, roundFeature, section, view } from './parts.ts'
import { toldAll } from './told.ts'

// Hidden lines only where the drawing is not clear without them: ISO 128-3 and ASME Y14.3 (from memory). Which these
// are is common practice, no source; the answers are worked by hand from the numbers of each part.

let kernel: OcctKernel
let make: Shapes
beforeAll(async () => {
  kernel = await openKernel()
  make = shapes(kernel)
})

const hiddenIn = (part: Part, id: string) =>
  toldAll(drawViews(part, kernel).views.find((v) => v.id === id)!.lines).filter((l) => l.startsWith('hidden'))
const asking = (part: Part, ...views: readonly ViewRequest[]): Part => ({ ...part, brief: { ...part.brief, views } })
const cutAs = (as: Side, extent: 'full' | 'half' = 'full'): ViewRequest =>
  ({ ...section('A', extent), as }) as ViewRequest

/** Flange ⌀40 × 8 with a spigot ⌀24 behind it to x = 20; blind bore ⌀10 from the right, 12 deep, flat-bottomed. */
function spigot(): Part {
  const outside = make.turned(
    [0, 0, 0],
    [1, 0, 0],
    [
      [0, 20],
      [8, 20],
      [8, 12],
      [20, 12],
    ],
  )
  const solid = make.cut(outside, make.cylinder([8, 0, 0], [1, 0, 0], 5, 20))
  return handMade(kernel, {
    solid,
    axis: { point: [0, 0, 0], direction: [1, 0, 0], lie: 'left-right' },
    features: [roundFeature(kernel, solid, 'hole', 'hole', [1, 0, 0], [[[0, 0, 0]]])],
  })
}

describe('what is round about an axis that a section holds', () => {
  it('is left out of the circular view, where the outline tells the centre', () => {
    expect(hiddenIn(asking(spigot(), view('front'), view('left')), 'left')).toEqual([
      'hidden circle 0,0 r12',
      'hidden circle 0,0 r5',
    ])
    expect(hiddenIn(asking(spigot(), view('left'), cutAs('front')), 'left')).toEqual([])
    expect(hiddenIn(asking(spigot(), view('left'), cutAs('front', 'half')), 'left')).toEqual([])
  })

  it('is left out of the view from the side as well', () => {
    // The bottom of the bore, x = 8, lies on the flange's edge.
    const bore = ['hidden line 8,-5 20,-5', 'hidden line 8,5 20,5']
    expect(hiddenIn(asking(spigot(), view('front'), view('left')), 'front')).toEqual(bore)
    expect(hiddenIn(asking(spigot(), view('front'), view('left'), cutAs('top')), 'front')).toEqual([])
  })

  it('is left out of the whole length of a bore that a hole crosses', () => {
    // ⌀40 × 30, bore ⌀10 through, hole ⌀4 across it near the left end: the section shows both.
    const outside = make.cylinder([0, 0, 0], [1, 0, 0], 20, 30)
    const bored = make.cut(outside, make.cylinder([-1, 0, 0], [1, 0, 0], 5, 40))
    const solid = make.cut(bored, make.cylinder([8, 0, -30], [0, 0, 1], 2, 60))
    const part = handMade(kernel, { solid, axis: { point: [0, 0, 0], direction: [1, 0, 0], lie: 'left-right' } })
    expect(hiddenIn(asking(part, view('front'), view('top')), 'top')).toEqual([
      'hidden line 0,-5 30,-5',
      'hidden line 0,5 30,5',
    ])
    expect(hiddenIn(asking(part, view('top'), cutAs('front')), 'top')).toEqual([])
  })

  /** Plate 60 × 40 × 10, holes ⌀6 of the given depth along z, from above or below. */
  const drilled = (
    depth: number,
    from: 'top' | 'bottom',
    ...features: readonly (readonly (readonly [number, number])[])[]
  ) => {
    const z = from === 'top' ? 10 - depth : 0
    const tools = features
      .flat()
      .map(([x, y]) => make.cylinder([x, y, z === 0 ? -1 : z], [0, 0, 1], 3, z === 0 ? depth + 1 : depth + 1))
    const solid = make.cut(make.box([0, 0, 0], [60, 40, 10]), ...tools)
    const out: Vec3 = from === 'top' ? [0, 0, 1] : [0, 0, -1]
    return handMade(kernel, {
      solid,
      features: features.map((points, i) =>
        roundFeature(
          kernel,
          solid,
          `hole ${i}`,
          'hole',
          out,
          points.map(([x, y]) => [[x, y, 0] as Vec3]),
          {
            kind: points.length > 1 ? 'row' : 'single',
          },
        ),
      ),
    })
  }
  const sides = (y: number) => [`hidden line ${y + 3},0 ${y + 3},10`, `hidden line ${y - 3},0 ${y - 3},10`]

  it('keeps a hole’s hidden lines without a section: they tell that it goes through', () => {
    expect(hiddenIn(asking(drilled(12, 'top', [[20, 10]]), view('top'), view('right')), 'right')).toEqual(
      sides(10).sort(),
    )
  })

  it('leaves them out where a section shows the depth and a view its place', () => {
    const part = drilled(12, 'top', [[20, 10]])
    expect(hiddenIn(asking(part, view('top'), view('right'), cutAs('front')), 'right')).toEqual([])
    // Nothing but this view tells how far from the front the hole is.
    expect(hiddenIn(asking(part, view('right'), cutAs('front')), 'right')).toEqual(sides(10).sort())
  })

  it('takes one cut hole for its whole pattern, but not for another hole', () => {
    const one = drilled(12, 'top', [
      [20, 10],
      [20, 30],
    ])
    expect(hiddenIn(asking(one, view('top'), view('right'), cutAs('front')), 'right')).toEqual([])
    const two = drilled(
      12,
      'top',
      [
        [20, 10],
        [40, 10],
      ],
      [[30, 30]],
    )
    expect(hiddenIn(asking(two, view('top'), view('right'), cutAs('front')), 'right')).toEqual(sides(30).sort())
  })

  it('keeps the circle of a blind hole from behind: nothing else tells its place', () => {
    const part = drilled(6, 'bottom', [[20, 10]])
    expect(hiddenIn(asking(part, view('top'), cutAs('front')), 'top')).toEqual(['hidden circle 20,10 r3'])
  })
})

describe('a pocket that one view shows whole and a section cuts', () => {
  const block = (tool: SolidKey, kind: PartFeature['kind']) => {
    const solid = make.cut(make.box([0, 0, 0], [60, 40, 20]), tool)
    const body = kernel.body(solid)
    const box = body.faces.filter((f) =>
      f.loops.flat().every((use) => {
        const c = body.edges[use.edge]!.curve
        return c.kind === 'line' && [c.a, c.b].every((p) => p[0] >= 10 && p[0] <= 30 && p[1] >= 10 && p[1] <= 24)
      }),
    )
    return handMade(kernel, {
      solid,
      features: [
        {
          id: 'pocket',
          kind,
          outward: [0, 0, 1],
          members: [{ id: 'pocket/1', axes: [], faces: box.map((f) => f.id), point: [20, 17, 20] }],
        },
      ],
    })
  }
  // In y: 10 to 24; floor at z = 12. The upper edge lies on the outline.
  const lines = ['hidden line 10,12 10,20', 'hidden line 10,12 24,12', 'hidden line 24,12 24,20']

  it('is left out of the third view', () => {
    const part = block(make.box([10, 10, 12], [30, 24, 21]), 'pocket')
    expect(part.features[0]!.members[0]!.faces).toHaveLength(5)
    expect(hiddenIn(asking(part, view('top'), view('right')), 'right')).toEqual(lines)
    expect(hiddenIn(asking(part, view('top'), view('right'), cutAs('front')), 'right')).toEqual([])
  })

  it('stays where the section runs beside it', () => {
    const deep = block(make.box([10, 10, 12], [30, 14, 21]), 'pocket')
    expect(hiddenIn(asking(deep, view('top'), view('right'), cutAs('front')), 'right')).toHaveLength(3)
  })

  it('stays where its floor slopes, which one cut does not tell', () => {
    const wedge = make.prism(
      {
        outer: [
          { kind: 'line', a: [10, 21], b: [10, 12] },
          { kind: 'line', a: [10, 12], b: [24, 16] },
          { kind: 'line', a: [24, 16], b: [24, 21] },
          { kind: 'line', a: [24, 21], b: [10, 21] },
        ],
        holes: [],
      },
      { origin: [10, 0, 0], right: [0, 1, 0], up: [0, 0, 1] },
      [20, 0, 0],
    )
    const part = block(wedge, 'pocket')
    expect(hiddenIn(asking(part, view('top'), view('right'), cutAs('front')), 'right')).toHaveLength(3)
  })
})

describe('views from opposite sides', () => {
  // Block 60 × 40 × 20 with a groove across its rear, z 5 to 12, and a hole from the front that ends inside.
  const grooved = () =>
    handMade(kernel, {
      solid: make.cut(
        make.box([0, 0, 0], [60, 40, 20]),
        make.box([10, 34, 5], [30, 41, 12]),
        make.cylinder([45, -1, 10], [0, 1, 0], 4, 20),
      ),
    })

  it('leave out what the other one shows in full lines', () => {
    const part = grooved()
    expect(hiddenIn(asking(part, view('front')), 'front')).toEqual(
      ['hidden line 10,5 10,12', 'hidden line 10,12 30,12', 'hidden line 10,5 30,5', 'hidden line 30,5 30,12'].sort(),
    )
    expect(hiddenIn(asking(part, view('front'), view('rear')), 'front')).toEqual([])
    expect(hiddenIn(asking(part, view('front'), view('rear')), 'rear')).toEqual([])
    expect(hiddenIn(asking(part, view('rear')), 'rear')).toEqual(['hidden circle -45,10 r4'])
  })

  it('keep what neither shows: a chamber inside', () => {
    const part = handMade(kernel, {
      solid: make.cut(make.box([0, 0, 0], [60, 40, 20]), make.box([10, 10, 5], [30, 30, 12])),
    })
    expect(hiddenIn(asking(part, view('front'), view('rear')), 'front')).toHaveLength(4)
  })
})
