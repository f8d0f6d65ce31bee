import type { Brief, Feature, Lie, Side } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { Angle, Size } from '../brief/size.ts'
import type { Span } from '../brief/span.ts'
import type { Vec3 } from '../geometry/vec.ts'
import type { Body } from '../kernel/body.ts'
import type { SolidKey } from '../kernel/kernel.ts'
import type { NamedFeatures } from './named-feature.ts'

/** A plane, axis or point of the part that a size can reach, with a drafter's name for it. */
export type Datum =
  | {
      readonly id: string
      readonly kind: 'plane'
      readonly name: string
      readonly point: Vec3
      readonly normal: Vec3
      readonly face?: number
    }
  /** Axis of a round feature or of a pattern's centre. */
  | {
      readonly id: string
      readonly kind: 'axis'
      readonly name: string
      readonly point: Vec3
      readonly direction: Vec3
      readonly faces?: readonly number[]
    }
  /** The part's middle plane in one direction: what `centred` refers to. */
  | {
      readonly id: string
      readonly kind: 'middle'
      readonly name: string
      readonly point: Vec3
      readonly normal: Vec3
      readonly between: readonly [string, string]
    }

/** Which part of a hole callout a diameter, depth or angle belongs to. A spotface counts as a counterbore. */
export type HoleRole = 'hole' | 'counterbore' | 'countersink' | 'drill point'

/** What one number of the brief fixes on the part. The sizes room turns these into dimensions. */
export type ChosenSize =
  /** Distance between two data along `direction` (unit vector). */
  | {
      readonly kind: 'distance'
      readonly size: Size
      readonly from: string
      readonly to: string
      readonly direction: Vec3
      readonly span: Span
      readonly group?: string
    }
  /** Equal steps between neighbours: `count - 1` times the pitch. */
  | {
      readonly kind: 'pitch'
      readonly size: Size
      readonly members: readonly string[]
      readonly direction: Vec3
      readonly span: Span
      readonly group?: string
    }
  | {
      readonly kind: 'diameter' | 'radius'
      readonly size: Size
      readonly of: string
      readonly faces: readonly number[]
      readonly count: number
      readonly span: Span
      readonly group?: string
      readonly role?: HoleRole
    }
  /** A hole, slot or pocket depth along its axis from the worked face. */
  | {
      readonly kind: 'depth'
      readonly size: Size
      readonly of: string
      readonly span: Span
      readonly group?: string
      readonly role?: HoleRole
    }
  | {
      readonly kind: 'angle'
      readonly angle: Angle
      readonly from: string
      readonly to: string
      readonly span: Span
      readonly group?: string
      readonly role?: HoleRole
    }
  | {
      readonly kind: 'bolt circle'
      readonly size: Size
      readonly of: string
      readonly members: readonly string[]
      readonly span: Span
      readonly group?: string
    }
  | {
      readonly kind: 'chamfer'
      readonly size: Size
      readonly angle?: Angle
      readonly leg?: Size
      readonly edges: readonly number[]
      readonly faces: readonly number[]
      readonly count: number
      readonly span: Span
      readonly group?: string
    }
  /** Length along an arc. */
  | {
      readonly kind: 'arc length'
      readonly size: Size
      readonly of: string
      readonly span: Span
      readonly group?: string
    }
  /** Width and length of a slot or pocket, along directions. */
  | {
      readonly kind: 'width' | 'length'
      readonly size: Size
      readonly of: string
      readonly direction: Vec3
      readonly measured?: 'overall' | 'centres'
      readonly span: Span
      readonly group?: string
    }
  | {
      readonly kind: 'thickness'
      readonly size: Size
      readonly from: string
      readonly to: string
      readonly direction: Vec3
      readonly span: Span
      readonly group?: string
    }

/** A condition that holds without a number on the sheet. */
export interface ImpliedCondition {
  readonly kind: 'square' | 'tangent' | 'coaxial' | 'aligned' | 'centred' | 'equally spaced' | 'parallel' | 'equal'
  readonly text: string
  readonly between: readonly string[]
}

/** One member of a feature as worked: a single hole of four, say. */
export interface Member {
  readonly id: string
  /** Axis datum id (holes, slots' centre axes). */
  readonly axes: readonly string[]
  readonly faces: readonly number[]
  readonly point: Vec3
  /** Direction out of the material here, where the members stand round an axis and each has its own. */
  readonly outward?: Vec3
}

/** A feature of the brief as it stands on the solid. */
export interface PartFeature {
  readonly id: string
  /** Absent for features that belong to the stock itself (a turned step, a formed bend). */
  readonly feature?: Feature
  readonly kind: Feature['kind'] | 'step-diameter' | 'bend' | 'bore'
  /** Direction out of the worked face. */
  readonly outward: Vec3
  readonly members: readonly Member[]
  /** Rows and columns as data ids, for centre lines that run on through a pattern; bolt circles. */
  readonly pattern?:
    | { readonly kind: 'single' | 'row' | 'grid' | 'points' }
    | { readonly kind: 'bolt circle'; readonly centre: Vec3; readonly radius: number; readonly normal: Vec3 }
}

export interface MassProperties {
  /** mm³ */
  readonly volume: number
  /** mm² */
  readonly area: number
  /** mm */
  readonly centroid: Vec3
  /** kg; absent where the material's density is not known. */
  readonly mass?: number
  readonly density?: { readonly gPerCm3: number; readonly source: string }
}

/** The brief made solid: geometry, names and what each number fixes. Immutable; the kernel's solid lives behind `solid`. */
export interface Part {
  readonly brief: Brief
  /** Key of the solid in the kernel's keeping, for sections and STEP. */
  readonly solid: SolidKey
  readonly body: Body
  readonly data: readonly Datum[]
  readonly features: readonly PartFeature[]
  readonly chosen: readonly ChosenSize[]
  readonly implied: readonly ImpliedCondition[]
  readonly properties: MassProperties
  /** For parts of revolution: the axis. */
  readonly axis?: { readonly point: Vec3; readonly direction: Vec3; readonly lie: Lie }
  /** Uniform thickness normal to one side, where the part is flat. */
  readonly flat?: { readonly side: Side; readonly thickness: Size }
  /** What the brief's datums, frames and textures name; absent: there are none. */
  readonly named?: NamedFeatures
  /** Of an assembly what it is put together from, in the order of the item numbers. */
  readonly items?: readonly AssemblyItem[]
  readonly marks: readonly Mark[]
}

/** One part of an assembly. */
export interface AssemblyItem {
  readonly name: string
  /** How often it stands in the whole. */
  readonly quantity: number
  /** The body's faces of each one in its place; none where the file does not tell them apart. */
  readonly instances: readonly (readonly number[])[]
}
