import type { Curve2 } from '../geometry/curve2.ts'
import { derivativeAt, lengthOf, pointAt } from '../geometry/evaluate.ts'
import type { Vec3 } from '../geometry/vec.ts'
import { add, cross, scale } from '../geometry/vec3.ts'
import { inPlane } from '../kernel/profile.ts'
import type { SolidProperties } from '../kernel/properties.ts'
import { cornerWork, halfSection } from './contour.ts'
import type { Contour, Profile, ProfileCurve } from './model.ts'
import { unitAxis } from './sides.ts'
import { Workshop } from './workshop.ts'

/**
 * Volume, surface and centroid of a part that is one profile thickened or turned, by Green's theorem along the
 * profile and, for turned parts, the theorems of Pappus. Undefined where the solid was worked further.
 */
export function profileProperties(shop: Workshop): SolidProperties | undefined {
  const { profile, contour, legs } = shop
  if (shop.steps.length > 0) return undefined
  if (profile && legs && shop.legsWorked()) {
    const pieces = [
      prismProperties(profile, legs.core),
      ...legs.legs.map((l) => prismProperties(l.profile, l.profile.curves)),
    ]
    return together(pieces)
  }
  if (profile) return prismProperties(profile, profile.curves)
  return contour && turnedProperties(shop, contour)
}

/** ∮ over one loop, made positive: what the loop encloses. */
interface Moments {
  readonly area: number
  /** ∬ x dA and ∬ y dA. */
  readonly x: number
  readonly y: number
}

function prismProperties(profile: Profile, curves: readonly ProfileCurve[]): SolidProperties {
  const loops = [curves, ...profile.holes]
  const moments = loops.map((loop) => momentsOf(loop.map((c) => c.curve)))
  const outer = moments[0]!
  const less = (key: keyof Moments) => moments.slice(1).reduce((s, m) => s - m[key], outer[key])
  const [area, x, y] = [less('area'), less('x'), less('y')]
  // a side without a name lies inside the part, against another piece
  const outside = loops.flat().reduce((s, c) => s + (c.face === '' ? 0 : lengthOf(c.curve)), 0)
  const normal = cross(profile.plane.right, profile.plane.up)
  const middle = scale(normal, profile.thickness / 2)
  return {
    volume: area * profile.thickness,
    area: 2 * area + outside * profile.thickness,
    centroid: add(inPlane(profile.plane, [x / area, y / area]), middle),
  }
}

function together(pieces: readonly SolidProperties[]): SolidProperties {
  const volume = pieces.reduce((s, p) => s + p.volume, 0)
  const centroid = pieces.reduce<Vec3>((c, p) => add(c, scale(p.centroid, p.volume / volume)), [0, 0, 0])
  return { volume, area: pieces.reduce((s, p) => s + p.area, 0), centroid }
}

function turnedProperties(shop: Workshop, contour: Contour): SolidProperties {
  // marks of the corner work were made when the solid was built
  const section = cornerWork(new Workshop(shop.brief), contour, halfSection(contour)).map((c) => c.curve)
  // coordinates are height and radius: volume 2π ∬ r dA, surface 2π ∮ r ds, height of the centroid from ∬ h r dA
  const first = around(section, (p, d) => (-(p[1] ** 2) / 2) * d[0])
  const second = around(section, (p, d) => -p[0] * (p[1] ** 2 / 2) * d[0])
  const skin = around(section, (p, d) => p[1] * Math.hypot(d[0], d[1]))
  return {
    volume: 2 * Math.PI * Math.abs(first),
    area: 2 * Math.PI * skin,
    centroid: scale(unitAxis[contour.axis], second / first),
  }
}

function momentsOf(loop: readonly Curve2[]): Moments {
  const area = around(loop, (p, d) => (p[0] * d[1] - p[1] * d[0]) / 2)
  const x = around(loop, (p, d) => (p[0] ** 2 / 2) * d[1])
  const y = around(loop, (p, d) => (-(p[1] ** 2) / 2) * d[0])
  const sign = Math.sign(area)
  return { area: sign * area, x: sign * x, y: sign * y }
}

type Integrand = (p: readonly [number, number], d: readonly [number, number]) => number

/** ∮ f(p, dp/dt) dt around the loop by Gauss-Legendre; exact for lines, to rounding for arcs up to an eighth turn. */
function around(loop: readonly Curve2[], f: Integrand): number {
  let sum = 0
  for (const c of loop) {
    const pieces = c.kind === 'line' ? 1 : Math.max(1, Math.ceil(Math.abs('sweep' in c ? c.sweep : 1) / (Math.PI / 4)))
    for (let i = 0; i < pieces; i++) {
      for (const [x, w] of GAUSS_8) {
        const t = (i + (1 + x) / 2) / pieces
        sum += (w / (2 * pieces)) * f(pointAt(c, t), derivativeAt(c, t))
      }
    }
  }
  return sum
}

/** Nodes and weights of the eight-point Gauss-Legendre rule (Abramowitz and Stegun, table 25.4). */
const GAUSS_8: readonly (readonly [number, number])[] = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975362, 0.1012285362903763],
].flatMap(([x, w]): [number, number][] => [
  [x!, w!],
  [-x!, w!],
])
