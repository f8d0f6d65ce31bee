import type { Vec3 } from '../../geometry/vec.ts'
import { along, scale } from '../../geometry/vec3.ts'
import type { Surface3 } from '../../kernel/body.ts'
import { squareTo } from '../../kernel/evaluate3.ts'
import type { Station } from '../../kernel/primitives.ts'
import type { Workshop } from '../workshop.ts'

/** Radii and depths of one hole below the worked face, mm. */
export interface HoleShape {
  readonly r: number
  /** To the full diameter; Infinity for through. */
  readonly depth: number
  /** Height of the drill point below `depth`. */
  readonly point: number
  readonly bore?: { readonly r: number; readonly depth: number }
  readonly sink?: { readonly r: number; readonly depth: number; readonly halfAngle: number }
}

/** One hole of a feature. */
export interface Member {
  /** Centre on the surface that the depths run from. */
  readonly point: Vec3
  /** Material below it. */
  readonly through: number
  /** Where a hole through one wall ends, in the open space behind it. */
  readonly end?: number
}

/** Endings of the names of a hole's faces. */
export const WALLS = ['wall', 'counterbore wall', 'counterbore floor', 'countersink', 'floor', 'drill point']

export function inUnit(mm: number, unit: 'inch' | 'mm'): string {
  return unit === 'inch' ? `${(mm / 25.4).toFixed(3).replace(/^(-?)0\./, '$1.')} in` : `${Number(mm.toFixed(3))} mm`
}

/** Half section of the tool, from a little above the face down; a through hole goes to `end`, else a little beyond. */
export function stationsOf(shape: HoleShape, through: number, end?: number): Station[] {
  const clear = 1 + 0.1 * shape.r
  const top: Station[] = shape.bore
    ? [
        [-clear, shape.bore.r],
        [shape.bore.depth, shape.bore.r],
        [shape.bore.depth, shape.r],
      ]
    : shape.sink
      ? [
          [-clear, shape.sink.r],
          [0, shape.sink.r],
          [shape.sink.depth, shape.r],
        ]
      : [[-clear, shape.r]]
  if (shape.depth === Infinity) return [...top, [end ?? through + clear, shape.r]]
  const bottom: Station[] = [[shape.depth, shape.r]]
  if (shape.point > 0) bottom.push([shape.depth + shape.point, 0])
  return [...top, ...bottom]
}

/** Names the faces that the hole makes; only faces within its own reach take the names. */
export function nameWalls(
  shop: Workshop,
  name: string,
  at: Vec3,
  inward: Vec3,
  shape: HoleShape,
  through: number,
): void {
  const x = squareTo(inward)
  const axes = (depth: number) => ({ origin: along(at, inward, depth), x, y: x, z: inward })
  const wide = Math.max(shape.r, shape.bore?.r ?? 0, shape.sink?.r ?? 0) + 1e-6
  const far = along(at, inward, shape.depth === Infinity ? through : shape.depth + shape.point)
  const within = {
    min: lowest(at, far, -wide),
    max: highest(at, far, wide),
  }
  const put = (what: string, surface: Surface3) => shop.surfaces.push({ name: `${name} ${what}`, surface, within })
  put('wall', { kind: 'cylinder', axes: axes(0), r: shape.r })
  if (shape.bore) {
    put('counterbore wall', { kind: 'cylinder', axes: axes(0), r: shape.bore.r })
    put('counterbore floor', { kind: 'plane', axes: axes(shape.bore.depth) })
  }
  if (shape.sink) {
    const z = scale(inward, -1)
    put('countersink', {
      kind: 'cone',
      axes: { origin: at, x, y: x, z },
      r: shape.sink.r,
      halfAngle: shape.sink.halfAngle,
    })
  }
  if (shape.depth === Infinity) return
  if (shape.point > 0) {
    const z = scale(inward, -1)
    put('drill point', {
      kind: 'cone',
      axes: { origin: along(at, inward, shape.depth), x, y: x, z },
      r: shape.r,
      halfAngle: Math.atan(shape.r / shape.point),
    })
  } else put('floor', { kind: 'plane', axes: axes(shape.depth) })
}

const lowest = (a: Vec3, b: Vec3, by: number): Vec3 => [
  Math.min(a[0], b[0]) + by,
  Math.min(a[1], b[1]) + by,
  Math.min(a[2], b[2]) + by,
]
const highest = (a: Vec3, b: Vec3, by: number): Vec3 => [
  Math.max(a[0], b[0]) + by,
  Math.max(a[1], b[1]) + by,
  Math.max(a[2], b[2]) + by,
]
