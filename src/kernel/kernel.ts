import type { Vec3 } from '../geometry/vec.ts'
import type { Body } from './body.ts'

/** Opaque reference to a solid in the kernel's keeping. */
export interface SolidKey {
  readonly key: number
}

/** The side of a plane that is kept: where (p - point)·normal <= 0. */
export interface HalfSpace {
  readonly point: Vec3
  readonly normal: Vec3
}

/** What the rest of the house may ask of the geometry kernel. Building calls live beside it for part/. */
export interface Kernel {
  /** The solid's boundary as plain numbers. */
  readonly body: (solid: SolidKey) => Body
  /** What is left when everything outside all of the half spaces' intersection (or, for `quarter`, outside their union) is taken off. */
  readonly cut: (
    solid: SolidKey,
    planes: readonly HalfSpace[],
    keep: 'intersection' | 'union',
  ) => { readonly solid: SolidKey; readonly body: Body }
  readonly step: (solid: SolidKey, about: { readonly name: string; readonly unit: 'inch' | 'mm' }) => string
  /** Gives the solid back; one that is not in keeping is no error. */
  readonly free: (solid: SolidKey) => void
}
