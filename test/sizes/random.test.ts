import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Vec2, Vec3 } from '../../src/geometry/vec.ts'
import type { Body } from '../../src/kernel/body.ts'
import type { Reach, Statement } from '../../src/sizes/dimension.ts'
import { judge } from '../../src/sizes/proof/judge.ts'
import { type Making, modelOf } from '../../src/sizes/proof/model.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { type Hole, type Move, prism, turned } from './bodies.ts'

/*
 * Two independent roads to one verdict over 2,000 random parts: the spanning-tree count with elimination on what is
 * left of it, and the rank of the whole constraint Jacobian from its singular values. The theorem behind the first: an
 * outline on the axes is properly dimensioned if and only if each direction's dimension graph is a tree over all its
 * bars (Suzuki, Ando and Kimura 1990; Yuen, Tan and Yu 1988; from memory).
 */

const NOTHING: Making = { owners: [], together: [], circles: [] }

interface Made {
  readonly body: Body
  /** Places that sizes can reach, by direction. */
  readonly reaches: readonly (readonly Reach[])[]
  readonly others: readonly Statement[]
}

const unit = (k: number): Vec3 => [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]
/** Plan coordinates with height along axis 2: x, y, z as they are. */
const reach = (x: number, y: number, z: number): Reach => ({ at: [x, y, z], name: `${x}, ${y}, ${z}` })

const half = fc.integer({ min: 1, max: 400 }).map((n) => n / 2)
const distinct = (n: number, gap: number) =>
  fc.array(fc.integer({ min: 2, max: 30 }), { minLength: n, maxLength: n }).map((steps) => {
    let at = 0
    return steps.map((s) => (at += s * gap))
  })

/** Staircase outline on the axes with round holes and slots. */
const stairs: fc.Arbitrary<Made> = fc
  .record({
    xs: fc.integer({ min: 1, max: 4 }).chain((n) => distinct(n, 10)),
    ys: distinct(4, 10),
    t: half,
    holes: fc.array(fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }), fc.boolean()), {
      maxLength: 4,
    }),
  })
  .map(({ xs, ys, t, holes }) => {
    const n = xs.length
    const levels = ys.slice(0, n)
    // Up the right side in steps: wide at the foot, narrow at the top.
    const moves: Move[] = []
    for (let i = 0; i < n; i++) {
      const x = xs[n - 1 - i]!
      moves.push({ to: [x, i === 0 ? 0 : levels[i - 1]!] }, { to: [x, levels[i]!] })
    }
    moves.push({ to: [0, levels[n - 1]!] }, { to: [0, 0] })
    const drilled: Hole[] = holes.map(([a, b, slot], i): Hole => {
      const at: Vec2 = [a * 1.7 + 0.13 * i, b * 1.3 + 0.29 * i]
      return slot ? { at, r: 0.31 + i * 0.01, to: [at[0] + 1.9, at[1]] } : { at, r: 0.31 + i * 0.01 }
    })
    const body = prism(2, [0, 0], moves, t, drilled)
    const across: Reach[] = [0, ...xs].map((x) => reach(x, x === 0 ? 1 : 0.5, t / 3))
    const up: Reach[] = [0, ...levels].map((y) => reach(0.123, y, t / 3))
    const others: Statement[] = []
    drilled.forEach((hole) => {
      across.push(reach(hole.at[0], hole.at[1], 0))
      up.push(reach(hole.at[0], hole.at[1], 0))
      if (hole.to) {
        across.push(reach(hole.to[0], hole.to[1], 0))
        // The other side follows: both ends touch both sides.
        up.push(reach(hole.at[0] + 0.9, hole.at[1] + hole.r, 0))
      } else {
        const faces = body.faces.filter((f) => f.surface.kind === 'cylinder' && f.surface.r === hole.r).map((f) => f.id)
        others.push({ kind: 'radius', faces })
      }
    })
    return { body, reaches: [once(across, 0), once(up, 1), [reach(0, 0, 0), reach(0, 0, t)]], others }
  })

/** Four-sided outlines with slopes. */
const slopes: fc.Arbitrary<Made> = fc
  .record({ a: half, b: half, c: half, d: half, t: half, hole: fc.boolean() })
  .map(({ a, b, c, d, t, hole }) => {
    const p: Vec2 = [20 + a, 0]
    const q: Vec2 = [p[0] + 3 + c / 7, 10 + b]
    const r: Vec2 = [2 + d / 9, q[1] + 4 + a / 8]
    const drilled: Hole[] = hole ? [{ at: [8, 6], r: 1.5 }] : []
    const body = prism(2, [0, 0], [{ to: p }, { to: q }, { to: r }, { to: [0, 0] }], t, drilled)
    const corners = [[0, 0], p, q, r].map((v) => reach(v[0]!, v[1]!, 0))
    const others: Statement[] = hole
      ? [{ kind: 'radius', faces: body.faces.filter((f) => f.surface.kind === 'cylinder').map((f) => f.id) }]
      : []
    const extra = hole ? [reach(8, 6, 0)] : []
    // The foot lies on an axis, so its corners share their level.
    return {
      body,
      reaches: [
        [...corners, ...extra],
        [corners[0]!, corners[2]!, corners[3]!, ...extra],
        [reach(0, 0, 0), reach(0, 0, t)],
      ],
      others,
    }
  })

const shafts: fc.Arbitrary<Made> = fc
  .record({ steps: fc.array(fc.tuple(half, half, fc.boolean()), { minLength: 1, maxLength: 5 }) })
  .map(({ steps }) => {
    const profile = steps.map(([length, r, taper], i) => {
      const own = r + 5 + i * 0.37
      return taper ? { length, r: own, end: own + 2.5 } : { length, r: own }
    })
    const body = turned(0, profile)
    let h = 0
    const levels = [0, ...profile.map((s) => (h += s.length))]
    const others = profile.flatMap((s): Statement[] => {
      const faces = body.faces.filter(
        (f) => (f.surface.kind === 'cylinder' || f.surface.kind === 'cone') && f.surface.r === s.r,
      )
      const ids = faces.map((f) => f.id)
      if (!s.end) return [{ kind: 'radius', faces: ids }]
      return [
        { kind: 'cone diameter', faces: ids, diameter: 2 * s.r },
        { kind: 'cone diameter', faces: ids, diameter: 2 * s.end },
      ]
    })
    return { body, reaches: [levels.map((x) => reach(x, 0.5, 0)), [], []], others }
  })

function once(list: readonly Reach[], k: number): Reach[] {
  const kept: Reach[] = []
  for (const r of list) if (!kept.some((o) => Math.abs(o.at[k]! - r.at[k]!) < 1e-4)) kept.push(r)
  return kept
}

type Sized = { id: string; states: Statement[]; reference: boolean }

/** A random tree over the places of each direction, each joint one size. */
function tree(made: Made, random: () => number): Sized[] {
  const sizes: Sized[] = made.others.map((s, i) => ({ id: `other ${i}`, states: [s], reference: false }))
  made.reaches.forEach((list, k) => {
    for (let i = 1; i < list.length; i++) {
      const from = list[Math.floor(random() * i)]!
      const state: Statement = { kind: 'distance', direction: unit(k), from, to: list[i]! }
      sizes.push({ id: `${k} ${i}`, states: [state], reference: false })
    }
  })
  return sizes
}

function compare(body: Body, sizes: readonly Sized[]): { missing: number; repeated: number } {
  const verdict = judge(modelOf(body, NOTHING), sizes)
  expect(verdict.astray).toEqual([])
  const other = rankOf(body, NOTHING, sizes)
  expect({ missing: verdict.loose.length, repeated: verdict.repeated.length }).toEqual({
    missing: other.missing,
    repeated: other.repeated,
  })
  return other
}

function numbers(seed: number): () => number {
  let s = seed
  return () => {
    s = (Math.imul(s, 1664525) + 1013904223) >>> 0
    return s / 2 ** 32
  }
}

describe.each([
  ['stairs with holes and slots', stairs, 1000],
  ['outlines with slopes', slopes, 500],
  ['turned profiles with tapers', shafts, 500],
] as const)('%s', (_name, parts, runs) => {
  it(`agree by spanning tree and by Jacobian rank over ${runs} parts`, () => {
    let complete = 0
    fc.assert(
      fc.property(parts, fc.integer({ min: 1, max: 2 ** 31 }), fc.integer({ min: 0, max: 3 }), (made, seed, change) => {
        const random = numbers(seed)
        const sizes = tree(made, random)
        if (change === 1) sizes.splice(Math.floor(random() * sizes.length), 1)
        if (change >= 2) {
          const one = sizes[Math.floor(random() * sizes.length)]!
          sizes.push({ ...one, id: `${one.id} again` })
        }
        if (change === 3) sizes.splice(Math.floor(random() * (sizes.length - 1)), 1)
        const { missing, repeated } = compare(made.body, sizes)
        if (missing === 0 && repeated === 0) complete++
        if (change === 1) expect(missing).toBeGreaterThan(0)
        if (change === 2) expect(repeated).toBeGreaterThan(0)
      }),
      { seed: 20240611, numRuns: runs },
    )
    // The trees themselves are complete, so that a good share of the runs must be.
    expect(complete).toBeGreaterThan(runs / 6)
  })
})
