import type { Vec3 } from '../geometry/vec.ts'
import { combine, unified } from './boolean.ts'
import type { SolidKey } from './kernel.ts'
import { guarded } from './occt.ts'
import type { OcctKernel } from './open.ts'
import * as primitives from './primitives.ts'
import { type ProfilePlane, prism, type Region, revolve } from './profile.ts'
import { release } from './scope.ts'

/** Simple solids in the kernel's keeping, for tests and for whoever needs a body without a brief. */
export interface Shapes {
  /** Between two opposite corners. */
  box(min: Vec3, max: Vec3): SolidKey
  /** From the base centre along the unit vector `axis`. */
  cylinder(base: Vec3, axis: Vec3, radius: number, height: number): SolidKey
  /** Frustum; one radius may be 0. */
  cone(base: Vec3, axis: Vec3, radius: number, endRadius: number, height: number): SolidKey
  sphere(centre: Vec3, radius: number): SolidKey
  torus(centre: Vec3, axis: Vec3, major: number, minor: number): SolidKey
  /** Stations [height along the axis, radius], straight between. */
  turned(base: Vec3, axis: Vec3, stations: readonly primitives.Station[]): SolidKey
  prism(region: Region, plane: ProfilePlane, by: Vec3): SolidKey
  revolve(region: Region, plane: ProfilePlane, origin: Vec3, axis: Vec3): SolidKey
  /** All together, coplanar faces merged. */
  fuse(first: SolidKey, ...others: SolidKey[]): SolidKey
  cut(first: SolidKey, ...tools: SolidKey[]): SolidKey
  common(first: SolidKey, ...tools: SolidKey[]): SolidKey
  translate(solid: SolidKey, by: Vec3): SolidKey
  /** Right-handed, degrees. */
  rotate(solid: SolidKey, origin: Vec3, axis: Vec3, degrees: number): SolidKey
  readStep(text: string): SolidKey
}

/** Builders over a kernel. Inputs stay in keeping; nothing is freed but by `kernel.free`. */
export function shapes(kernel: OcctKernel): Shapes {
  const { oc, shapeOf } = kernel
  const make = (doing: string, work: () => ReturnType<typeof shapeOf>) => kernel.keep(guarded(oc, doing, work))
  return {
    box: (min, max) => make('box', () => primitives.box(oc, min, max)),
    cylinder: (base, axis, r, h) => make('cylinder', () => primitives.cylinder(oc, base, axis, r, h)),
    cone: (base, axis, r0, r1, h) => make('cone', () => primitives.cone(oc, base, axis, r0, r1, h)),
    sphere: (centre, r) => make('sphere', () => primitives.sphere(oc, centre, r)),
    torus: (centre, axis, major, minor) => make('torus', () => primitives.torus(oc, centre, axis, major, minor)),
    turned: (base, axis, stations) => make('turned shape', () => primitives.turned(oc, base, axis, stations)),
    prism: (region, plane, by) => make('prism', () => prism(oc, region, plane, by)),
    revolve: (region, plane, origin, axis) => make('revolve', () => revolve(oc, region, plane, origin, axis)),
    fuse: (first, ...others) =>
      make('fuse', () => {
        const raw = combine(oc, 'fuse', shapeOf(first), others.map(shapeOf))
        const merged = unified(oc, raw)
        release(raw)
        return merged
      }),
    cut: (first, ...tools) => make('cut', () => combine(oc, 'cut', shapeOf(first), tools.map(shapeOf))),
    common: (first, ...tools) => make('common', () => combine(oc, 'common', shapeOf(first), tools.map(shapeOf))),
    translate: (solid, by) => make('translate', () => primitives.translated(oc, shapeOf(solid), by)),
    rotate: (solid, origin, axis, degrees) =>
      make('rotate', () => primitives.rotated(oc, shapeOf(solid), origin, axis, degrees)),
    readStep: (text) => kernel.readStep(text),
  }
}
