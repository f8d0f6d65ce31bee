import type { Anchor, Mirror, Placement } from './placement.ts'
import type { Lie, Side } from './side.ts'
import type { Angle, Count, Size } from './size.ts'
import type { Span } from './span.ts'
import type { Name, Words } from './words.ts'

interface FeatureBase {
  readonly span: Span
  /** The drafter's own label for later reference, if any: `holes A: …`. */
  readonly label?: Name
  readonly count: Count
}

interface Placed extends FeatureBase {
  readonly face: Name
  /** `from front`: the side the tool comes from, where the face name alone leaves two. */
  readonly from?: Side
  readonly placement: Placement
  readonly mirror?: Mirror
}

/** Through the first wall only: into the open space behind it, by its name where that is said. */
export interface OneWall {
  readonly into?: Name
  readonly span: Span
}

export type Depth =
  | { readonly kind: 'through'; readonly oneWall?: OneWall; readonly span: Span }
  | { readonly kind: 'blind'; readonly size: Size }

export interface HoleFeature extends Placed {
  readonly kind: 'hole'
  readonly diameter: Size
  /** Thread designation as text (`M6`, `1/4-20 UNC-2B`): `diameter` is then the tap drill or the nominal size. */
  readonly thread?: Words
  readonly depth: Depth
  /** Depth of full thread where the drill goes deeper: `M8 ↧ 16, drill ⌀6.8 ↧ 21`; `depth` is then the drill's. */
  readonly threadDepth?: Size
  /** Included drill-point angle of a blind hole; 118° where not said; `flat` is 180. */
  readonly point?: Angle
  readonly counterbore?: { readonly diameter: Size; readonly depth: Size }
  readonly countersink?: { readonly diameter: Size; readonly angle: Angle }
  readonly spotface?: { readonly diameter: Size; readonly depth?: Size }
}

export interface SlotFeature extends Placed {
  readonly kind: 'slot'
  readonly width: Size
  readonly length: Size
  /** Length stated overall or centre to centre. */
  readonly measured: 'overall' | 'centres'
  readonly depth: Depth
  /** Direction of the long way. */
  readonly way: Lie
  /** Open: runs out of the face through this edge; `length` is then edge to end (overall) or edge to centre. */
  readonly openTo?: Name
}

/** Rectangular pocket with corner radius. */
export interface PocketFeature extends Placed {
  readonly kind: 'pocket'
  readonly across: Size
  readonly up: Size
  readonly depth: Depth
  readonly cornerRadius?: Size
}

/** Material off along a whole edge of the face, or off a corner. */
export interface StepFeature extends FeatureBase {
  readonly kind: 'step'
  /** The edge (`top left`) whose material goes. */
  readonly edge: Name
  /** Measured from each of the edge's two faces: `.50 wide from left, .25 down from top`. */
  readonly cuts: readonly { readonly size: Size; readonly from: Name }[]
}

/** A rectangular or V-shaped cut right through from an edge. */
export interface NotchFeature extends FeatureBase {
  readonly kind: 'notch'
  readonly face: Name
  /** The edge of the face it opens to. */
  readonly edge: Name
  readonly shape: 'square' | 'vee'
  readonly width: Size
  /** From the edge inward; a vee may give the angle instead, a square notch what it runs out in. */
  readonly depth?: Size
  /** The round hole that a slit runs out in, in place of a depth. */
  readonly into?: Name
  readonly angle?: Angle
  readonly placement: Placement
  readonly mirror?: Mirror
}

/** Chamfer, round (outside) or fillet (inside) on named edges or corners. */
export interface EdgeFeature extends FeatureBase {
  readonly kind: 'chamfer' | 'round' | 'fillet'
  /** `upright, top corners`; `ends`; `all outside edges of top`. */
  readonly edges: readonly Name[]
  /** Radius, or the chamfer's leg. */
  readonly size: Size
  /** Chamfer angle (45° where two equal legs) or second leg. */
  readonly angle?: Angle
  readonly leg?: Size
}

/** Added material: a round boss or spigot on a face. */
export interface BossFeature extends Placed {
  readonly kind: 'boss'
  readonly diameter: Size
  readonly height: Size
}

/** A groove round a turned surface, or a straight one across a face. */
export interface GrooveFeature extends FeatureBase {
  readonly kind: 'groove'
  readonly face: Name
  readonly width: Size
  /** Bottom diameter of a turned groove. */
  readonly bottom?: Size
  readonly depth?: Size
  readonly anchor: Anchor
}

/**
 * Flats milled on a round surface. One is given from the opposite surface; two, four or six stand evenly about the
 * axis (wrench flats, square, hexagon) and are given across two opposite ones.
 */
export interface FlatFeature extends FeatureBase {
  readonly kind: 'flat-cut'
  readonly face: Name
  /** Side of the first flat. Absent, with more than one: top; front where the axis is upright. */
  readonly side?: Side
  /** Flat to the opposite surface, or across two flats. */
  readonly across: Size
  readonly length?: Size
  readonly anchor?: Anchor
}

/**
 * A keyseat in a round surface: width, depth of cut from the surface, length, ends round or open. One in a bore is
 * straight, may be given over the bore and itself instead of by its depth, and runs through where no length is given.
 */
export interface KeyseatFeature extends FeatureBase {
  readonly kind: 'keyseat'
  readonly face: Name
  readonly side: Side
  readonly width: Size
  readonly depth?: Size
  /** From its bottom to the opposite side of the bore, in place of a depth. */
  readonly over?: Size
  readonly length?: Size
  readonly anchor?: Anchor
}

export type Feature =
  | HoleFeature
  | SlotFeature
  | PocketFeature
  | StepFeature
  | NotchFeature
  | EdgeFeature
  | BossFeature
  | GrooveFeature
  | FlatFeature
  | KeyseatFeature
