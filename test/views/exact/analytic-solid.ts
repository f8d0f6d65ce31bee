import type { Vec3 } from '../../../src/geometry/vec.ts'
import { along, cross, dot, sub, unit } from '../../../src/geometry/vec3.ts'
import type { Frame } from '../../../src/views/view.ts'
import type { Hit, LineOfSight } from './mesh-arbiter.ts'

/** A primitive by its defining numbers. Boxes stand on a corner, frusta on their base centre, along `axes`. */
export type Primitive =
  | { readonly kind: 'box'; readonly at: Vec3; readonly axes: readonly [Vec3, Vec3, Vec3]; readonly size: Vec3 }
  /** Radius r at the base, q at the height h; a cylinder where they are equal. */
  | {
      readonly kind: 'frustum'
      readonly at: Vec3
      readonly axis: Vec3
      readonly r: number
      readonly q: number
      readonly h: number
    }
  | { readonly kind: 'sphere'; readonly at: Vec3; readonly r: number }
  | { readonly kind: 'torus'; readonly at: Vec3; readonly axis: Vec3; readonly major: number; readonly minor: number }

/** Primitives put together or cut away, one after the other. */
export type Recipe = readonly { readonly cut: boolean; readonly primitive: Primitive }[]

/** Stretches of a line within a solid, in order; each end knows its surface. */
interface Crossing {
  readonly s: number
  readonly surface: number
  readonly normal: Vec3
}
type Stretch = readonly [Crossing, Crossing]

/** Shorter stretches and gaps are none, mm: well below the hair by which surfaces of random solids nearly touch. */
const NOTHING = 1e-7

/**
 * A second ray test that shares nothing with the line-work, the kernel's booleans or its triangulation: a line of sight
 * meets each primitive where a polynomial vanishes, and what is left of it within the solid follows from the recipe.
 * Surfaces that coincide bear one number.
 */
export class AnalyticSight implements LineOfSight {
  private readonly recipe: Recipe
  private readonly frame: Frame
  private readonly numbers: number[][] = []

  constructor(recipe: Recipe, frame: Frame) {
    this.recipe = recipe
    this.frame = frame
    const known: number[][] = []
    for (const { primitive } of recipe) {
      this.numbers.push(
        surfacesOf(primitive).map((keys) => {
          const same = known.findIndex(
            (k) => k.length === keys.length && k.every((x, i) => Math.abs(x - keys[i]!) < 1e-7),
          )
          return same >= 0 ? same : known.push(keys) - 1
        }),
      )
    }
  }

  at(x: number, y: number): Hit[] {
    const { right, up, toViewer } = this.frame
    const o = along(along([0, 0, 0], right, x), up, y)
    let inside: Stretch[] = []
    this.recipe.forEach(({ cut, primitive }, i) => {
      const met = crossings(primitive, o, toViewer).map(
        ([a, b]): Stretch => [
          { ...a, surface: this.numbers[i]![a.surface]! },
          { ...b, surface: this.numbers[i]![b.surface]! },
        ],
      )
      inside = cut ? without(inside, met) : together(inside, met)
    })
    return inside
      .flat()
      .map(({ s, surface, normal }) => ({ face: surface, depth: s, facing: Math.abs(dot(normal, toViewer)) }))
      .sort((a, b) => b.depth - a.depth)
  }
}

/** The random primitives lie within this of the origin, mm. */
export const REACH = 30

/** Numbers that are equal for coincident surfaces: all faces of a primitive, in the order `crossings` counts them. */
function surfacesOf(p: Primitive): number[][] {
  const plane = (n: Vec3, at: Vec3): number[] => {
    const first = n.find((x) => Math.abs(x) > 1e-6)!
    const m = first < 0 ? ([-n[0], -n[1], -n[2]] as const) : n
    return [1, ...m, dot(m, at)]
  }
  const way = (axis: Vec3): Vec3 => {
    const first = axis.find((x) => Math.abs(x) > 1e-6)!
    return first < 0 ? [-axis[0], -axis[1], -axis[2]] : axis
  }
  switch (p.kind) {
    case 'box':
      return p.axes.flatMap((axis, k) => [plane(axis, p.at), plane(axis, along(p.at, axis, p.size[k]!))])
    case 'frustum': {
      const caps = [plane(p.axis, p.at), plane(p.axis, along(p.at, p.axis, p.h))]
      if (p.r === p.q) return [...caps, [2, ...way(p.axis), ...along(p.at, p.axis, -dot(p.at, p.axis)), p.r]]
      const k = (p.q - p.r) / p.h
      // by its apex, the direction it opens to and its slope
      const open: Vec3 = k > 0 ? p.axis : [-p.axis[0], -p.axis[1], -p.axis[2]]
      return [...caps, [3, ...along(p.at, p.axis, -p.r / k), ...open, Math.abs(k)]]
    }
    case 'sphere':
      return [[4, ...p.at, p.r]]
    case 'torus':
      return [[5, ...p.at, ...way(p.axis), p.major, p.minor]]
  }
}

/** Stretches of the line o + s d within a primitive; surfaces numbered within it. */
function crossings(p: Primitive, o: Vec3, d: Vec3): Stretch[] {
  const from = sub(o, p.at)
  if (p.kind === 'box') {
    let whole: Stretch[] = [everywhere()]
    p.axes.forEach((axis, k) => {
      whole = common(whole, slab(dot(from, axis), dot(d, axis), 0, p.size[k]!, axis, 2 * k))
    })
    return whole
  }
  if (p.kind === 'sphere') {
    const roots = realRoots([dot(from, from) - p.r * p.r, 2 * dot(from, d), 1])
    return pairs(roots, (s) => ({ s, surface: 0, normal: unit(along(from, d, s)) }))
  }
  const h0 = dot(from, p.axis)
  const h1 = dot(d, p.axis)
  const across = along(from, p.axis, -h0)
  const way = along(d, p.axis, -h1)
  // squared distance from the axis, in powers of s
  const rho2 = [dot(across, across), 2 * dot(across, way), dot(way, way)]
  if (p.kind === 'torus') {
    const g = [dot(from, from) + p.major * p.major - p.minor * p.minor, 2 * dot(from, d), 1]
    const quartic = times(g, g)
    rho2.forEach((x, i) => {
      quartic[i]! -= 4 * p.major * p.major * x
    })
    return pairs(realRoots(quartic), (s) => {
      const q = along(from, d, s)
      const h = dot(q, p.axis)
      const out = along(q, p.axis, -h)
      return { s, surface: 0, normal: unit(sub(q, along([0, 0, 0], unit(out), p.major))) }
    })
  }
  const k = (p.q - p.r) / p.h
  const radius = [p.r + k * h0, k * h1]
  const f = times(radius, radius).map((x, i) => rho2[i]! - x)
  const normal = (s: number): Crossing => {
    const q = along(from, d, s)
    const out = unit(along(q, p.axis, -dot(q, p.axis)))
    return { s, surface: 2, normal: unit(along(out, p.axis, -k)) }
  }
  const roots = realRoots(f)
  // inside the double cone where f < 0: between the roots, or outside them where the line is steeper than the cone
  const ends = [everywhere()[0], ...roots.map(normal), everywhere()[1]]
  const round: Stretch[] = []
  for (let i = 1; i < ends.length; i++) {
    const [a, b] = [ends[i - 1]!, ends[i]!]
    const mid = Number.isFinite(a.s)
      ? Number.isFinite(b.s)
        ? 0.5 * (a.s + b.s)
        : a.s + 1
      : Number.isFinite(b.s)
        ? b.s - 1
        : 0
    if (valueAt(f, mid) < 0) round.push([a, b])
  }
  return common(round, slab(h0, h1, 0, p.h, p.axis, 0))
}

function everywhere(): Stretch {
  return [
    { s: -Infinity, surface: 0, normal: [0, 0, 0] },
    { s: Infinity, surface: 0, normal: [0, 0, 0] },
  ]
}

function slab(at: number, rate: number, lo: number, hi: number, normal: Vec3, surface: number): Stretch[] {
  if (Math.abs(rate) < 1e-12) return at > lo && at < hi ? [everywhere()] : []
  const a: Crossing = { s: (lo - at) / rate, surface, normal }
  const b: Crossing = { s: (hi - at) / rate, surface: surface + 1, normal }
  return a.s < b.s ? [[a, b]] : [[b, a]]
}

function pairs(roots: readonly number[], make: (s: number) => Crossing): Stretch[] {
  const out: Stretch[] = []
  for (let i = 0; i + 1 < roots.length; i += 2) out.push([make(roots[i]!), make(roots[i + 1]!)])
  return out
}

function common(a: readonly Stretch[], b: readonly Stretch[]): Stretch[] {
  const out: Stretch[] = []
  for (const x of a)
    for (const y of b) {
      const lo = x[0].s > y[0].s ? x[0] : y[0]
      const hi = x[1].s < y[1].s ? x[1] : y[1]
      if (hi.s - lo.s > NOTHING) out.push([lo, hi])
    }
  return out.sort((x, y) => x[0].s - y[0].s)
}

function together(a: readonly Stretch[], b: readonly Stretch[]): Stretch[] {
  const out: Stretch[] = []
  for (const one of [...a, ...b].sort((x, y) => x[0].s - y[0].s)) {
    const last = out[out.length - 1]
    if (last && one[0].s - last[1].s <= NOTHING) {
      if (one[1].s > last[1].s) out[out.length - 1] = [last[0], one[1]]
    } else out.push(one)
  }
  return out
}

function without(a: readonly Stretch[], b: readonly Stretch[]): Stretch[] {
  let left = [...a]
  for (const [lo, hi] of b)
    left = left.flatMap((x): Stretch[] => {
      if (hi.s <= x[0].s || lo.s >= x[1].s) return [x]
      const rest: Stretch[] = []
      if (lo.s - x[0].s > NOTHING) rest.push([x[0], lo])
      if (x[1].s - hi.s > NOTHING) rest.push([hi, x[1]])
      return rest
    })
  return left
}

function times(a: readonly number[], b: readonly number[]): number[] {
  const out = new Array<number>(a.length + b.length - 1).fill(0)
  a.forEach((x, i) => {
    b.forEach((y, j) => {
      out[i + j]! += x * y
    })
  })
  return out
}

function valueAt(c: readonly number[], s: number): number {
  let v = 0
  for (let i = c.length - 1; i >= 0; i--) v = v * s + c[i]!
  return v
}

/** Real roots of odd multiplicity of a polynomial given from the constant up: halving between the roots of its derivative. */
function realRoots(c: readonly number[]): number[] {
  const top = Math.max(...c.map(Math.abs))
  let n = c.length - 1
  while (n > 0 && Math.abs(c[n]!) <= 1e-14 * top) n--
  if (n === 0) return []
  const own = c.slice(0, n + 1)
  if (n === 1) return [-own[0]! / own[1]!]
  const slope = own.slice(1).map((x, i) => x * (i + 1))
  const bound = 1 + Math.max(...own.slice(0, n).map((x) => Math.abs(x / own[n]!)))
  const stops = [-bound, ...realRoots(slope), bound]
  const out: number[] = []
  for (let i = 1; i < stops.length; i++) {
    let [lo, hi] = [stops[i - 1]!, stops[i]!]
    const below = valueAt(own, lo) < 0
    if (below === valueAt(own, hi) < 0) continue
    for (let k = 0; k < 100; k++) {
      const mid = 0.5 * (lo + hi)
      if (valueAt(own, mid) < 0 === below) lo = mid
      else hi = mid
    }
    out.push(0.5 * (lo + hi))
  }
  return out
}

/** Axes of a box turned about a corner by an angle in degrees, right-handed (Rodrigues' formula). */
export function turnedAxes(axis: Vec3, degrees: number): [Vec3, Vec3, Vec3] {
  const k = unit(axis)
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  const turn = (v: Vec3): Vec3 => {
    const w = cross(k, v)
    const f = dot(k, v) * (1 - c)
    return [v[0] * c + w[0] * s + k[0] * f, v[1] * c + w[1] * s + k[1] * f, v[2] * c + w[2] * s + k[2] * f]
  }
  return [turn([1, 0, 0]), turn([0, 1, 0]), turn([0, 0, 1])]
}
