import type { Side } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { Curve2 } from '../geometry/curve2.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'

/** Orthographic view: u = p·right, v = p·up in part millimetres, the eye far out along `toViewer`. Right-handed. */
export interface Frame {
  readonly right: Vec3
  readonly up: Vec3
  readonly toViewer: Vec3
}

/** Where a line came from on the solid, for picking and for the answer to "why is this line here?". */
export interface Source {
  readonly edge?: number
  readonly faces: readonly number[]
}

/** Exact step: every visible and hidden curve of the solid, whole truth, before any convention. */
export interface ExactCurve {
  readonly curve: Curve2
  readonly visible: boolean
  /** `edge`: sharp edge; `silhouette`: outline of a curved face; `smooth`: tangent edge; `cut`: border of a cut face. */
  readonly kind: 'edge' | 'silhouette' | 'smooth' | 'cut'
  readonly sources: readonly Source[]
}

export interface ExactView {
  readonly frame: Frame
  readonly curves: readonly ExactCurve[]
  /** Visible cut regions of a section, as closed loops (outer first, then holes). */
  readonly cuts: readonly (readonly (readonly Curve2[])[])[]
}

/** Line kinds of ASME Y14.2 / ISO 128-2, in order of precedence. */
export type LineKind =
  | 'visible'
  | 'hidden'
  | 'cutting plane'
  | 'centre'
  | 'phantom'
  | 'thread'
  | 'intersection'
  | 'hatching'

/** A line of the finished view, in part millimetres. */
export interface ViewLine {
  readonly curve: Curve2
  readonly kind: LineKind
  readonly sources: readonly Source[]
  /** Centre lines: the feature ids they belong to. */
  readonly features?: readonly string[]
  /** Chamfers and other slanting faces that the line borders; numbers are good within one view. */
  readonly slopes?: readonly number[]
  /**
   * The wall of a tapped hole modelled at the thread's size. Seen from the side, `inward` leads to the axis; end-on in ISO
   * practice `open` is what of the circle is printed. Of its drill point `about` is the middle of the point's mouth: on
   * paper it narrows with the crest.
   */
  readonly tapped?: {
    readonly r: number
    readonly inward?: Vec2
    readonly about?: Vec2
    readonly open?: { readonly from: number; readonly sweep: number }
  }
  /**
   * A thin line of a thread whose thick line stands at the radius `crest`, the thin one at `root`, mm: on paper they keep
   * the least space. Seen from the side the axis stands at `axis` along the unit direction `across`.
   */
  readonly thread?: { readonly crest: number; readonly root: number; readonly across?: Vec2; readonly axis?: number }
  /** How each end behaves when dashes are fitted. */
  readonly ends?: readonly [LineEnd, LineEnd]
  /** Points where centre lines cross and the practice's dash must fall; whether a short line stays unbroken is decided at scale. */
  readonly cross?: readonly Vec2[]
  /** Paper millimetres by which the line runs past its start and its end; negative where it stays clear of what lies there. */
  readonly overrun?: readonly [number, number]
  /** A centre line that an edge covers from end to end: only its overruns are drawn, a gap clear of the edge. */
  readonly covered?: true
}

/** `corner`: meets other lines and must touch with a dash; `continues`: runs on from a visible line and must leave a gap; `free`: nothing there. */
export type LineEnd = 'corner' | 'continues' | 'free'

/** Which edges and faces of the whole solid those of a solid cut from it are; undefined for what the cut made. */
export interface Kin {
  readonly edges: readonly (number | undefined)[]
  readonly faces: readonly (number | undefined)[]
}

export interface View {
  /** Unique on the sheet: `front`, `top`, `section A-A`, `pictorial`. */
  readonly id: string
  readonly kind: 'principal' | 'section' | 'pictorial'
  /** Side seen, for principal views and for the place a section takes. */
  readonly side?: Side
  readonly frame: Frame
  readonly lines: readonly ViewLine[]
  readonly hatched: readonly (readonly (readonly Curve2[])[])[]
  /** Printed under or over the view: `SECTION A-A`. */
  readonly label?: string
  /** Cutting-plane lines drawn in this view, with letters and arrow direction. */
  readonly cuttingPlanes: readonly CuttingPlane[]
  /** Of a section: its lines' sources are of the cut solid, and this tells what they are of the part. */
  readonly kin?: Kin
  /** Bounds of the outline (visible and hidden), part mm. */
  readonly box: { readonly min: Vec2; readonly max: Vec2 }
}

export interface CuttingPlane {
  readonly letter: string
  /** Corners of the cutting-plane line in this view. */
  readonly path: readonly Vec2[]
  /** Unit direction of sight of the section, in this view. */
  readonly sight: Vec2
  /** That at the far end of a line whose ends are looked at in different directions. */
  readonly farSight?: Vec2
}

/** The chosen views, and why. */
export interface ViewSet {
  readonly views: readonly View[]
  /** Reasons in a drafter's words: why this front, why so many. */
  readonly reasons: readonly string[]
  /** What the choice of views leaves to be said. */
  readonly marks?: readonly Mark[]
  /** Said in the title area instead of a view: `10 THK`. */
  readonly thicknessNote?: string
}
