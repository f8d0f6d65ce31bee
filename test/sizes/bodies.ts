import type { Vec2, Vec3 } from '../../src/geometry/vec.ts'
import type { Axes3, Body, BodyEdge, BodyFace, Surface3 } from '../../src/kernel/body.ts'

/** Solids written as plain boundaries, so that the proof is tried on shapes whose freedoms are known by hand. */

/** Turns plan coordinates (a, b, height) into the part's: height along axis k. */
export type Plan = 0 | 1 | 2
const turn = (k: Plan, a: number, b: number, h: number): Vec3 => {
  const v = [0, 0, 0]
  v[k] = h
  v[(k + 1) % 3] = a
  v[(k + 2) % 3] = b
  return v as unknown as Vec3
}

const axes = (k: Plan, a: number, b: number, h: number): Axes3 => ({
  origin: turn(k, a, b, h),
  x: turn(k, 1, 0, 0),
  y: turn(k, 0, 1, 0),
  z: turn(k, 0, 0, 1),
})

export type Move =
  | { readonly to: Vec2 }
  /** Arc about a centre to a point; ccw when `left`. */
  | { readonly to: Vec2; readonly centre: Vec2; readonly left: boolean }

export interface Hole {
  readonly at: Vec2
  readonly r: number
  /** From the top face (height `thickness`); absent: through. */
  readonly deep?: number
  /** Included angle in degrees of a cone at its foot. */
  readonly point?: number
  /** Straight slot: the other end's centre. */
  readonly to?: Vec2
}

interface Making {
  readonly faces: BodyFace[]
  readonly edges: BodyEdge[]
}

const face = (m: Making, surface: Surface3): number => {
  m.faces.push({ id: m.faces.length, surface, reversed: false, loops: [] })
  return m.faces.length - 1
}
const line = (m: Making, a: Vec3, b: Vec3, faces: [number, number], smooth = false) =>
  m.edges.push({ id: m.edges.length, curve: { kind: 'line', a, b }, faces, seam: false, smooth })
const circle = (m: Making, at: Axes3, r: number, faces: [number, number], smooth = false, sweep = 2 * Math.PI) =>
  m.edges.push({
    id: m.edges.length,
    curve: { kind: 'circle', axes: at, r, from: 0, sweep },
    faces,
    seam: false,
    smooth,
  })

/** A closed outline of lines and arcs, thickened, with holes and slots from the top. */
export function prism(
  k: Plan,
  start: Vec2,
  moves: readonly Move[],
  thickness: number,
  holes: readonly Hole[] = [],
): Body {
  const m: Making = { faces: [], edges: [] }
  const top = face(m, { kind: 'plane', axes: axes(k, 0, 0, thickness) })
  const bottom = face(m, { kind: 'plane', axes: axes(k, 0, 0, 0) })
  const walls: { id: number; from: Vec2; to: Vec2; centre?: Vec2 }[] = []
  let at = start
  for (const move of moves) {
    if ('centre' in move) {
      const [c, d] = move.centre
      const id = face(m, { kind: 'cylinder', axes: axes(k, c, d, 0), r: Math.hypot(at[0] - c, at[1] - d) })
      walls.push({ id, from: at, to: move.to, centre: move.centre })
    } else {
      const length = Math.hypot(move.to[0] - at[0], move.to[1] - at[1])
      const along: Vec2 = [(move.to[0] - at[0]) / length, (move.to[1] - at[1]) / length]
      const id = face(m, {
        kind: 'plane',
        axes: {
          origin: turn(k, at[0], at[1], 0),
          x: turn(k, along[0], along[1], 0),
          y: turn(k, 0, 0, -1),
          z: turn(k, along[1], -along[0], 0),
        },
      })
      walls.push({ id, from: at, to: move.to })
    }
    at = move.to
  }
  const tangent = (w: (typeof walls)[number], p: Vec2): Vec2 => {
    const d: Vec2 = w.centre ? [p[1] - w.centre[1], w.centre[0] - p[0]] : [w.to[0] - w.from[0], w.to[1] - w.from[1]]
    const n = Math.hypot(d[0], d[1])
    return [d[0] / n, d[1] / n]
  }
  walls.forEach((w, i) => {
    const next = walls[(i + 1) % walls.length]!
    const [s, t] = [tangent(w, w.to), tangent(next, w.to)]
    const smooth = Math.abs(s[0] * t[1] - s[1] * t[0]) < 1e-9
    line(m, turn(k, w.to[0], w.to[1], 0), turn(k, w.to[0], w.to[1], thickness), [w.id, next.id], smooth)
    for (const [h, cap] of [
      [0, bottom],
      [thickness, top],
    ] as const) {
      if (w.centre) {
        const r = Math.hypot(w.from[0] - w.centre[0], w.from[1] - w.centre[1])
        circle(m, axes(k, w.centre[0], w.centre[1], h), r, [w.id, cap], false, 1)
      } else line(m, turn(k, w.from[0], w.from[1], h), turn(k, w.to[0], w.to[1], h), [w.id, cap])
    }
  })
  for (const hole of holes) {
    const foot = hole.deep === undefined ? 0 : thickness - hole.deep
    const [a, b] = hole.at
    if (hole.to) {
      const [c, d] = hole.to
      const length = Math.hypot(c - a, d - b)
      const u: Vec2 = [(c - a) / length, (d - b) / length]
      const ends = [hole.at, hole.to].map((p) => face(m, { kind: 'cylinder', axes: axes(k, p[0], p[1], 0), r: hole.r }))
      for (const side of [1, -1]) {
        const n: Vec2 = [-u[1] * side, u[0] * side]
        const p: Vec2 = [a + n[0] * hole.r, b + n[1] * hole.r]
        const id = face(m, {
          kind: 'plane',
          axes: {
            origin: turn(k, p[0], p[1], 0),
            x: turn(k, u[0], u[1], 0),
            y: turn(k, 0, 0, 1),
            z: turn(k, n[0], n[1], 0),
          },
        })
        line(m, turn(k, p[0], p[1], 0), turn(k, p[0], p[1], thickness), [id, ends[0]!], true)
        const q: Vec2 = [c + n[0] * hole.r, d + n[1] * hole.r]
        line(m, turn(k, q[0], q[1], 0), turn(k, q[0], q[1], thickness), [id, ends[1]!], true)
      }
      if (hole.deep !== undefined) face(m, { kind: 'plane', axes: axes(k, a, b, foot) })
      continue
    }
    const wall = face(m, { kind: 'cylinder', axes: axes(k, a, b, 0), r: hole.r })
    circle(m, axes(k, a, b, thickness), hole.r, [wall, top])
    if (hole.deep === undefined) circle(m, axes(k, a, b, 0), hole.r, [wall, bottom])
    else if (hole.point) {
      const half = (hole.point * Math.PI) / 360
      const cone = face(m, { kind: 'cone', axes: axes(k, a, b, foot), r: hole.r, halfAngle: half })
      circle(m, axes(k, a, b, foot), hole.r, [wall, cone])
    } else {
      const floor = face(m, { kind: 'plane', axes: axes(k, a, b, foot) })
      circle(m, axes(k, a, b, foot), hole.r, [wall, floor])
    }
  }
  return closed(m)
}

export const rectangle = (a: number, b: number): Move[] => [
  { to: [a, 0] },
  { to: [a, b] },
  { to: [0, b] },
  { to: [0, 0] },
]

/** A turned profile: levels along axis k with the radius before and after each; tapers where they differ within a step. */
export function turned(
  k: Plan,
  steps: readonly { readonly length: number; readonly r: number; readonly end?: number }[],
): Body {
  const m: Making = { faces: [], edges: [] }
  let h = 0
  let before: { id: number; r: number } | undefined
  let left = face(m, { kind: 'plane', axes: axes(k, 0, 0, 0) })
  for (const step of steps) {
    const end = step.end ?? step.r
    const id =
      end === step.r
        ? face(m, { kind: 'cylinder', axes: axes(k, 0, 0, 0), r: step.r })
        : face(m, {
            kind: 'cone',
            axes: axes(k, 0, 0, h),
            r: step.r,
            halfAngle: Math.atan((end - step.r) / step.length),
          })
    if (before && before.r === step.r) circle(m, axes(k, 0, 0, h), step.r, [before.id, id])
    else {
      if (before) {
        left = face(m, { kind: 'plane', axes: axes(k, 0, 0, h) })
        circle(m, axes(k, 0, 0, h), before.r, [before.id, left])
      }
      circle(m, axes(k, 0, 0, h), step.r, [id, left])
    }
    h += step.length
    before = { id, r: end }
  }
  const right = face(m, { kind: 'plane', axes: axes(k, 0, 0, h) })
  circle(m, axes(k, 0, 0, h), before!.r, [before!.id, right])
  return closed(m)
}

function closed(m: Making): Body {
  const points = m.edges.flatMap(({ curve }): Vec3[] => {
    if (curve.kind === 'line') return [curve.a, curve.b]
    if (curve.kind !== 'circle') return []
    const { origin: o, x, y } = curve.axes
    return [1, -1].flatMap((s) =>
      [x, y].map((d): Vec3 => [o[0] + s * curve.r * d[0], o[1] + s * curve.r * d[1], o[2] + s * curve.r * d[2]]),
    )
  })
  const end = (f: (...n: number[]) => number) => [0, 1, 2].map((i) => f(...points.map((p) => p[i]!))) as unknown as Vec3
  return { faces: m.faces, edges: m.edges, box: { min: end(Math.min), max: end(Math.max) } }
}
