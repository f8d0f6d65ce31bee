import { describe, expect, it } from 'vitest'
import type { Vec3 } from '../../src/geometry/vec.ts'
import type { Body } from '../../src/kernel/body.ts'
import type { Statement } from '../../src/sizes/dimension.ts'
import { judge } from '../../src/sizes/proof/judge.ts'
import { type Making, modelOf } from '../../src/sizes/proof/model.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { prism, rectangle, turned } from './bodies.ts'

const NOTHING: Making = { owners: [], together: [], circles: [] }
const X: Vec3 = [1, 0, 0]
const Y: Vec3 = [0, 1, 0]
const Z: Vec3 = [0, 0, 1]
const at = (x: number, y: number, z: number) => ({ at: [x, y, z] as Vec3, name: `${x},${y},${z}` })
const size = (id: string, ...states: Statement[]) => ({ id, states, reference: false })
const distance = (id: string, direction: Vec3, a: ReturnType<typeof at>, b: ReturnType<typeof at>) =>
  size(id, { kind: 'distance', direction, from: a, to: b })

type Sized = ReturnType<typeof size>

/** The scheme is complete; without any one size it is not; with any one size twice it says too much. Both roads agree. */
function expectProper(body: Body, sizes: readonly Sized[], making: Making = NOTHING): ReturnType<typeof judge> {
  const model = modelOf(body, making)
  const whole = judge(model, sizes)
  expect({ loose: whole.loose, repeated: whole.repeated, astray: whole.astray }).toEqual({
    loose: [],
    repeated: [],
    astray: [],
  })
  const implied = [...whole.conditions.values()].reduce((a, b) => a + b, 0)
  expect(whole.sizes + implied).toBe(model.freedoms)
  expect(rankOf(body, making, sizes)).toMatchObject({ missing: 0, repeated: 0 })
  sizes.forEach((one, i) => {
    const less = sizes.filter((_, j) => j !== i)
    expect(judge(model, less).loose.length, `without ${one.id}`).toBeGreaterThan(0)
    expect(rankOf(body, making, less).missing, `without ${one.id}`).toBe(judge(model, less).loose.length)
    const more = [...sizes, { ...one, id: `${one.id} again` }]
    expect(judge(model, more).repeated.length, `with ${one.id} twice`).toBeGreaterThan(0)
    expect(rankOf(body, making, more).repeated, `with ${one.id} twice`).toBe(judge(model, more).repeated.length)
  })
  return whole
}

describe('the proof on shapes counted by hand', () => {
  // A box has 6 planes of 3 freedoms less 6 of the whole: 12, of which 3 are sizes (common practice, no source).
  it('finds a box complete with three sizes', () => {
    const body = prism(2, [0, 0], rectangle(60, 40), 10)
    const whole = expectProper(body, [
      distance('length', X, at(0, 0, 0), at(60, 0, 0)),
      distance('width', Y, at(0, 0, 0), at(0, 40, 0)),
      distance('thickness', Z, at(0, 0, 0), at(0, 0, 10)),
    ])
    expect(whole.sizes).toBe(3)
    expect(modelOf(body, NOTHING).freedoms).toBe(12)
    expect(whole.blocks.jacobian).toBe(0)
  })

  it('takes a grid of holes as aligned, and centred only where it is said', () => {
    const holes = [10, 40].flatMap((x) => [10, 30].map((y) => ({ at: [x, y] as const, r: 3 })))
    const body = prism(2, [0, 0], rectangle(50, 40), 10, holes)
    const bores = body.faces.filter((f) => f.surface.kind === 'cylinder').map((f) => f.id)
    const box = [
      distance('length', X, at(0, 0, 0), at(50, 0, 0)),
      distance('width', Y, at(0, 0, 0), at(0, 40, 0)),
      distance('thickness', Z, at(0, 0, 0), at(0, 0, 10)),
    ]
    const pitch: Statement = { kind: 'pitch', direction: X, members: [at(10, 10, 0), at(40, 10, 0)] }
    const centred: Statement = {
      kind: 'centred',
      direction: X,
      first: at(10, 10, 0),
      last: at(40, 10, 0),
      between: [at(0, 0, 0), at(50, 0, 0)],
    }
    const rest = [
      ...box,
      size('bores', { kind: 'radius', faces: bores }),
      distance('up', Y, at(0, 10, 0), at(0, 30, 0)),
      distance('edge', Y, at(0, 0, 0), at(0, 10, 0)),
    ]
    expectProper(body, [...rest, size('pitch', pitch, centred)])
    expectProper(body, [...rest, size('pitch', pitch), distance('edge x', X, at(0, 0, 0), at(10, 0, 0))])
    // Symmetry is not implied: without the word the holes may stand anywhere left-right.
    const silent = judge(modelOf(body, NOTHING), [...rest, size('pitch', pitch)])
    expect(silent.loose).toHaveLength(1)
  })

  it('proves a slot by width, length and place, its ends by tangency alone', () => {
    const body = prism(2, [0, 0], rectangle(80, 40), 8, [{ at: [30, 15], to: [50, 15], r: 5 }])
    const box = [
      distance('length', X, at(0, 0, 0), at(80, 0, 0)),
      distance('width', Y, at(0, 0, 0), at(0, 40, 0)),
      distance('thickness', Z, at(0, 0, 0), at(0, 0, 8)),
    ]
    const place = [
      distance('slot x', X, at(0, 0, 0), at(30, 15, 0)),
      distance('slot y', Y, at(0, 0, 0), at(30, 15, 0)),
      distance('slot width', Y, at(40, 10, 0), at(40, 20, 0)),
    ]
    expectProper(body, [...box, ...place, distance('centres', X, at(30, 15, 0), at(50, 15, 0))])
    expectProper(body, [...box, ...place, distance('overall', X, at(25, 15, 0), at(55, 15, 0))])
    // The ends' radius is half the width already: R with a number is one size too many.
    const ends = body.faces.filter((f) => f.surface.kind === 'cylinder').map((f) => f.id)
    const over = [
      ...box,
      ...place,
      distance('centres', X, at(30, 15, 0), at(50, 15, 0)),
      size('ends', { kind: 'radius', faces: ends }),
    ]
    expect(judge(modelOf(body, NOTHING), over).repeated).toHaveLength(1)
    expect(rankOf(body, NOTHING, over).repeated).toBe(1)
  })

  it('proves a gusset with a slope by its corners or by an angle, by rank', () => {
    const body = prism(
      1,
      [0, 0],
      [{ to: [60, 0] }, { to: [60, 10] }, { to: [10, 50] }, { to: [0, 50] }, { to: [0, 0] }],
      6,
    )
    // Axis 1 up: plan a is z, plan b is x.
    const p = (a: number, b: number, h = 0): ReturnType<typeof at> => at(b, h, a)
    const sizes = [
      distance('a', Z, p(0, 0), p(60, 0)),
      distance('b', X, p(0, 0), p(0, 50)),
      distance('t', Y, p(0, 0), p(0, 0, 6)),
      distance('toe a', X, p(60, 0), p(60, 10)),
      distance('toe b', Z, p(0, 50), p(10, 50)),
    ]
    const whole = expectProper(body, sizes)
    expect(whole.blocks.jacobian).toBeGreaterThan(0)
    const slope = body.faces.findIndex(
      (f) => f.surface.kind === 'plane' && f.surface.axes.z.every((c) => Math.abs(c) < 0.99),
    )
    const side = body.faces.findIndex((f) => f.surface.kind === 'plane' && Math.abs(f.surface.axes.z[0]) > 0.99)
    expectProper(body, [...sizes.slice(0, 4), size('angle', { kind: 'angle', faces: [slope, side] })])
  })

  it('fixes rounded corners by tangency and one radius', () => {
    const r = 8
    const body = prism(
      2,
      [r, 0],
      [
        { to: [60 - r, 0] },
        { to: [60, r], centre: [60 - r, r], left: true },
        { to: [60, 40 - r] },
        { to: [60 - r, 40], centre: [60 - r, 40 - r], left: true },
        { to: [r, 40] },
        { to: [0, 40 - r], centre: [r, 40 - r], left: true },
        { to: [0, r] },
        { to: [r, 0], centre: [r, r], left: true },
      ],
      5,
    )
    const corners = body.faces.filter((f) => f.surface.kind === 'cylinder').map((f) => f.id)
    expectProper(body, [
      distance('length', X, at(0, 0, 0), at(60, 0, 0)),
      distance('width', Y, at(0, 0, 0), at(0, 40, 0)),
      distance('thickness', Z, at(0, 0, 0), at(0, 0, 5)),
      size('R', { kind: 'radius', faces: corners }),
    ])
  })

  it('counts a stepped shaft with a taper and chamfer, its turning about the axis free of meaning', () => {
    const body = turned(0, [
      { length: 2, r: 8, end: 10 },
      { length: 28, r: 10 },
      { length: 6, r: 14 },
      { length: 30, r: 11, end: 9 },
    ])
    const cones = body.faces.filter((f) => f.surface.kind === 'cone').map((f) => f.id)
    const rounds = body.faces.filter((f) => f.surface.kind === 'cylinder').map((f) => f.id)
    const lengths = [
      distance('left', X, at(0, 0, 0), at(30, 0, 0)),
      distance('collar', X, at(30, 0, 0), at(36, 0, 0)),
      distance('right', X, at(36, 0, 0), at(66, 0, 0)),
    ]
    expectProper(body, [
      ...lengths,
      size('d1', { kind: 'radius', faces: [rounds[0]!] }),
      size('d2', { kind: 'radius', faces: [rounds[1]!] }),
      size('chamfer', { kind: 'chamfer', faces: [cones[0]!], by: 'leg and angle', leg: 2 }),
      size('big end', { kind: 'cone diameter', faces: [cones[1]!], diameter: 22 }),
      size('small end', { kind: 'cone diameter', faces: [cones[1]!], diameter: 18 }),
    ])
  })

  it('fixes a bolt circle by its diameter, equal spacing and where the first hole stands', () => {
    const n = 5
    const members = Array.from({ length: n }, (_, i): readonly [number, number] => {
      const t = Math.PI / 2 + (2 * Math.PI * i) / n
      return [30 * Math.cos(t), 30 * Math.sin(t)]
    })
    for (const skew of [0, 0.2]) {
      const turnedMembers = members.map(
        ([x, y]) => [x * Math.cos(skew) - y * Math.sin(skew), x * Math.sin(skew) + y * Math.cos(skew)] as const,
      )
      const disc = prism(
        2,
        [50, 0],
        [
          { to: [-50, 0], centre: [0, 0], left: true },
          { to: [50, 0], centre: [0, 0], left: true },
        ],
        9,
        turnedMembers.map((m) => ({ at: m, r: 4 })),
      )
      const outside = disc.faces.filter((f) => f.surface.kind === 'cylinder' && f.surface.r === 50).map((f) => f.id)
      const bores = disc.faces.filter((f) => f.surface.kind === 'cylinder' && f.surface.r === 4).map((f) => f.id)
      const making: Making = {
        owners: [],
        together: [],
        circles: [
          { id: 'b', centre: [0, 0, 0], normal: Z, members: bores.map((f, i) => ({ id: `b${i}`, faces: [f] })) },
        ],
      }
      const places = turnedMembers.map(([x, y]): Vec3 => [x, y, 0])
      const sizes = [
        distance('thickness', Z, at(0, 0, 0), at(0, 0, 9)),
        size('disc', { kind: 'radius', faces: outside }),
        size('holes', { kind: 'radius', faces: bores }),
        size(
          'circle',
          { kind: 'bolt circle', centre: [0, 0, 0], axis: Z, members: places },
          { kind: 'equally spaced', centre: [0, 0, 0], axis: Z, members: places },
        ),
      ]
      const first: Statement = { kind: 'polar', centre: [0, 0, 0], axis: Z, member: places[0]! }
      if (skew === 0) {
        expectProper(disc, sizes, making)
        // A number for a hole that already stands on the centre line is one too many.
        expect(judge(modelOf(disc, making), [...sizes, size('angle', first)]).repeated).toHaveLength(1)
      } else {
        expect(judge(modelOf(disc, making), sizes).loose).toHaveLength(1)
        expectProper(disc, [...sizes, size('angle', first)], making)
      }
    }
  })

  it('fixes a blind hole by diameter and depth, its point by custom', () => {
    const body = prism(2, [0, 0], rectangle(40, 30), 20, [{ at: [15, 12], r: 4, deep: 12, point: 118 }])
    const bore = body.faces.findIndex((f) => f.surface.kind === 'cylinder')
    const point = body.faces.findIndex((f) => f.surface.kind === 'cone')
    expectProper(body, [
      distance('length', X, at(0, 0, 0), at(40, 0, 0)),
      distance('width', Y, at(0, 0, 0), at(0, 30, 0)),
      distance('height', Z, at(0, 0, 0), at(0, 0, 20)),
      distance('x', X, at(0, 0, 0), at(15, 12, 0)),
      distance('y', Y, at(0, 0, 0), at(15, 12, 0)),
      size('bore', { kind: 'radius', faces: [bore] }),
      size(
        'depth',
        { kind: 'distance', direction: Z, from: at(15, 12, 20), to: at(19, 12, 8) },
        { kind: 'cone angle', faces: [point], custom: true },
      ),
    ])
  })
})
