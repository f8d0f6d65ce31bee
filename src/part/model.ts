import type { Feature, Lie, Side } from '../brief/brief.ts'
import type { Size } from '../brief/size.ts'
import type { Span } from '../brief/span.ts'
import type { Curve2 } from '../geometry/curve2.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import type { Surface3 } from '../kernel/body.ts'
import type { ProfilePlane } from '../kernel/profile.ts'

/** A flat face of the stock that can be worked or measured from. Square to one axis of space. */
export interface WorkFace {
  /** Also the id of its plane datum: `top`, `upright front`. */
  readonly name: string
  readonly side: Side
  /** Coordinate of the plane along its axis. */
  readonly at: number
  /** Flat area in the two coordinates across and up (see `faceAxes`), lower and upper bounds. */
  readonly min: Vec2
  readonly max: Vec2
  /** Circular faces: radius about the middle of the bounds. */
  readonly radius?: number
  /** Material behind the face, straight in, that a through hole goes through. */
  readonly depth: number
  /** Whether the face is an end of the profile that is thickened. */
  readonly cap?: boolean
}

/** A round surface of the stock that can be worked: radius about an axis, over a stretch of it. */
export interface RoundFace {
  readonly name: string
  readonly r: number
  readonly from: number
  readonly to: number
  readonly inside: boolean
}

/** A curve of the profile and the name of the face it makes when thickened. */
export interface ProfileCurve {
  readonly curve: Curve2
  readonly face: string
}

/** The flat profile that is thickened into the stock, as edited so far. */
export interface Profile {
  readonly plane: ProfilePlane
  /** Along right × up. */
  readonly thickness: number
  readonly axis: 0 | 1 | 2
  /** Face names at the plane and at the far end. */
  readonly caps: readonly [string, string]
  curves: ProfileCurve[]
  readonly holes: ProfileCurve[][]
}

/**
 * An angle or the like taken apart at its bends: flat legs that are worked as profiles of their own, and the piece
 * between them. Used instead of the whole profile once a leg has been worked.
 */
export interface Legs {
  readonly core: readonly ProfileCurve[]
  readonly legs: readonly { readonly profile: Profile; readonly faces: readonly string[] }[]
  /** The whole profile's curves when the legs were made: they serve only while it is not edited. */
  readonly whole: readonly ProfileCurve[]
}

/** One piece of an outer or inner contour of a turned part: straight from r0 at h0 to r1 at h1. */
export interface ContourPiece {
  readonly name: string
  readonly h0: number
  readonly h1: number
  readonly r0: number
  readonly r1: number
  /** A groove: its two flat walls are its sides, not a floor. */
  readonly groove?: boolean
}

/** A turned part's half section: heights along the axis, radii from it. */
export interface Contour {
  readonly lie: Lie
  readonly axis: 0 | 1 | 2
  /** Outside of the stock and of coaxial bosses, in order of height, gapless. */
  outer: ContourPiece[]
  /** Grooves: the outside is no larger than these. */
  readonly grooves: ContourPiece[]
  /** Bores: the inside is no smaller than these. `Infinity` heights reach through. */
  readonly bores: ContourPiece[]
  /** Flat faces square to the axis that have names; `up` looks toward greater heights. */
  readonly planes: { readonly name: string; readonly h: number; readonly up: boolean }[]
  /** Corner work on the half section, by the two faces that meet. */
  readonly corners: ContourCorner[]
}

export interface ContourCorner {
  readonly kind: 'chamfer' | 'round' | 'fillet'
  /** Height and radius of the corner. */
  readonly at: Vec2
  /** Chamfer: set-back along the axis and along the radius. Round, fillet: the radius twice. */
  readonly back: readonly [axial: number, radial: number]
  /** The radial set-back follows from a chamfer's angle to the axis. */
  readonly byAngle?: true
  readonly face: string
  readonly span: Span
}

/** A circle or line of the finished stock where two faces meet, to be chamfered or rounded. */
export interface StockEdge {
  readonly faces: readonly [string, string]
  /** Corner of the thickened profile, and of which profile where it is not the stock's own. */
  readonly profileCorner?: Vec2
  readonly profile?: Profile
  /** Circle of a turned part, by height and radius. */
  readonly contourCorner?: Vec2
  /** Straight edge in space. */
  readonly line?: readonly [Vec3, Vec3]
  /** Direction along the edge, for straight edges. */
  readonly axis?: 0 | 1 | 2
  /** Nothing of the part lies beyond the line's start, its end: a cutter may run out there. */
  readonly free?: readonly [boolean, boolean]
  /** How far the side that bounds it there leans back, mm a mm of depth. */
  readonly lean?: readonly [number, number]
  /** The border goes on smoothly beyond an end: work on the edge must follow it. */
  readonly goesOn?: boolean
}

/** A circle in which a hole opens into a flat face. */
export interface Mouth {
  /** Id of the hole's feature, and whether it was said as a bore. */
  readonly hole: string
  readonly isBore: boolean
  readonly at: Vec3
  /** Out of the material. */
  readonly out: Vec3
  readonly r: number
  /** How far this radius goes in, mm. */
  readonly deep: number
  /** The face that the hole was worked from, and whether this is its other end. */
  readonly face: WorkFace
  readonly isFar: boolean
  /** A plain hole runs from the face itself: what lies open there now is found when the edge is worked. */
  readonly isPlain: boolean
}

/** A name for the finished solid's faces by their geometry. */
export interface NamedSurface {
  readonly name: string
  readonly surface: Surface3
  readonly within?: { readonly min: Vec3; readonly max: Vec3 }
}

export interface NumberedFeature {
  readonly feature: Feature
  readonly id: string
}

export interface Thickness {
  readonly side: Side
  readonly thickness: Size
}

/** A straight-sided piece taken from the stock or put on it: the surface lies elsewhere within its border. */
export interface Relief {
  readonly feature: string
  /** Axis of space along which its sides run. */
  readonly axis: 0 | 1 | 2
  /** Closed border in the across and up of that axis. */
  readonly border: readonly Curve2[]
  readonly box: { readonly min: Vec2; readonly max: Vec2 }
  /** Lowest and highest coordinate along the axis. */
  readonly low: number
  readonly high: number
  readonly added: boolean
}

/** What is worked down from a face: points of its border, each with the same room about it (0 but for a circle). */
export interface Footprint {
  readonly points: readonly Vec2[]
  readonly r: number
}

/** A depth as it was counted, to be compared with the finished surface. */
export interface DepthTaken {
  readonly id: string
  readonly span: Span
  readonly face: WorkFace
  readonly footprint: Footprint
  readonly at: number
  /** How many reliefs there were then. */
  readonly after: number
}
