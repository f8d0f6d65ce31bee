import type { DatumFeature, FaceTexture, FrameStatement } from './geometric.ts'
import type { Mark } from './mark.ts'
import type { Angle, Count, Num, Size, Unit } from './size.ts'
import type { Span } from './span.ts'
import type { StackStatement } from './stack.ts'
import type { Name, Words } from './words.ts'

/** The part's own sides as seen in the front view, whatever face is worked. */
export type Side = 'left' | 'right' | 'front' | 'rear' | 'top' | 'bottom'
/** A view by what the sheet calls it. A section's letter stands twice: `section A-A`. */
export type ViewName = Side | 'pictorial' | `section ${string}`
export type Practice = 'ASME' | 'ISO'
export type Projection = 'third angle' | 'first angle'
/** The axis along which a bar, tube or turned part lies. */
export type Lie = 'left-right' | 'front-rear' | 'up-down'

export type { Name, Words }

// ---------------------------------------------------------------- header

/** One class of the title block's general tolerances: `.XX ±.01`, `fractions ±1/64`, `angles ±1/2°`, `ISO 2768-mK`. */
export type GeneralTolerance =
  | { readonly kind: 'decimals'; readonly decimals: number; readonly plusMinus: Num; readonly span: Span }
  | { readonly kind: 'fractions' | 'whole' | 'angles'; readonly plusMinus: Num; readonly span: Span }
  | { readonly kind: 'standard'; readonly text: string; readonly span: Span }

export interface Signature {
  readonly name: Words
  /** As typed; never from the clock. */
  readonly date?: Words
}

export interface Header {
  readonly part?: Words
  readonly number?: Words
  readonly revision?: Words
  readonly units: Unit
  readonly practice: Practice
  readonly projection: Projection
  readonly material?: Words
  readonly general: readonly GeneralTolerance[]
  readonly coating?: Words
  /** General surface texture: `Ra 3.2`, `125 µin`. */
  readonly texture?: Words
  readonly notes: readonly Words[]
  readonly drawn?: Signature
  readonly checked?: Signature
  readonly approved?: Signature
  readonly firm?: Words
  readonly documentType?: Words
  readonly edgeBreak?: Words
  readonly standard?: Words
  /** `sheet A3`, `sheet B`; absent: the program chooses. */
  readonly sheet?: Words
  /** `scale 1:2`; absent: the program chooses. */
  readonly scale?: { readonly paper: number; readonly part: number; readonly span: Span }
  /** Where a decimal comma is asked for on an ISO sheet. */
  readonly decimalSign?: '.' | ','
  /** Where the choices above were stated; absent where they were taken from each other. */
  readonly said?: { readonly units?: Span; readonly practice?: Span; readonly decimal?: Span }
}

// ---------------------------------------------------------------- stock

interface StockBase {
  readonly span: Span
}

/** Length runs left-right unless `face` turns the large face elsewhere. */
export interface PlateStock extends StockBase {
  readonly kind: 'plate'
  readonly length: Size
  readonly width: Size
  readonly thickness: Size
  /** The large face seen true: top (lies flat), front or right. Length is left-right (front-rear for `right`). */
  readonly face: Side
}

/** Long (left-right) × wide (front-rear) × high (up-down). */
export interface BlockStock extends StockBase {
  readonly kind: 'block'
  readonly length: Size
  readonly width: Size
  readonly height: Size
}

export interface AngleStock extends StockBase {
  readonly kind: 'angle'
  /** Rolled: sharp heel, toe radius. Formed: heel = inside radius + thickness. Machined: as drawn. Absent: a mark asks. */
  readonly make?: 'rolled' | 'formed' | 'machined'
  readonly thickness: Size
  readonly insideRadius?: Size
  readonly toeRadius?: Size
  readonly uprightHeight: Size
  /** Where the upright stands. The base runs from there toward the opposite side. */
  readonly uprightAt: 'rear' | 'front' | 'left' | 'right'
  readonly baseDepth: Size
  readonly length: Size
}

export interface ChannelStock extends StockBase {
  readonly kind: 'channel' | 'tee'
  /** Channel: web height and flange width; tee: flange width and stem height. Sharp, uniform thickness. */
  readonly height: Size
  readonly width: Size
  readonly thickness: Size
  readonly length: Size
  readonly lie: Lie
}

export interface FlatStock extends StockBase {
  readonly kind: 'flat'
  readonly width: Size
  readonly thickness: Size
  readonly length: Size
  readonly face: Side
}

export interface RoundStock extends StockBase {
  readonly kind: 'bar'
  readonly diameter: Size
  readonly length: Size
  readonly lie: Lie
}

export interface TubeStock extends StockBase {
  readonly kind: 'tube'
  readonly outside: Size
  readonly inside?: Size
  readonly wall?: Size
  readonly length: Size
  readonly lie: Lie
}

export interface DiscStock extends StockBase {
  readonly kind: 'disc'
  readonly diameter: Size
  readonly thickness: Size
  /** The side the outer (main) face looks to: front by default. */
  readonly face: Side
}

/** A taper by its rate and one diameter: the other follows from the length. */
export interface Taper {
  /** The whole angle of the cone. */
  readonly rate: Angle
  /** Which end the step's diameter is. */
  readonly given: 'large' | 'small'
  /** The end of the axis that it narrows toward; absent: right, rear or top. */
  readonly toward?: Side
}

/** One step of a turned profile. */
export interface TurnedStep {
  readonly name: Name
  /** Of a threaded step its major diameter, from the designation. */
  readonly diameter: Size
  /** Designation of an outside thread over the whole step: `M20 × 1.5 - 6g`, `3/4-16 UNF-2A`. */
  readonly thread?: Words
  /** Diameter at the far end of a taper. */
  readonly endDiameter?: Size
  /** `tapered 1:10`; with an end diameter too, the one says the other again. */
  readonly taper?: Taper
  /** `28 long`: own length; `to 64`: length from the datum face. */
  readonly length: { readonly kind: 'long' | 'to'; readonly size: Size }
  readonly span: Span
}

export interface TurnedStock extends StockBase {
  readonly kind: 'turned'
  readonly lie: Lie
  /** `lengths from collar left face`: the face that `to` lengths count from; absent: the left end. */
  readonly datum?: Name
  /** From left to right. */
  readonly steps: readonly TurnedStep[]
}

/** One move of a closed outline, in the plane of its face: right/left and up/down as drawn. */
export type OutlineMove =
  | { readonly kind: 'by'; readonly way: 'right' | 'left' | 'up' | 'down'; readonly size: Size; readonly span: Span }
  /** Line to a point counted from the start: across (right +), up (+). */
  | { readonly kind: 'to'; readonly across: Size; readonly up: Size; readonly span: Span }
  /** Line by a slope: so far across and so far up, signed by the words. */
  | {
      readonly kind: 'slope'
      readonly across: Size
      readonly acrossWay: 'right' | 'left'
      readonly up: Size
      readonly upWay: 'up' | 'down'
      readonly span: Span
    }
  /** Line by a slope: so far one way, leaning toward the other by an angle from that way, below 90°. */
  | {
      readonly kind: 'lean'
      readonly way: 'right' | 'left' | 'up' | 'down'
      readonly size: Size
      readonly toward: 'right' | 'left' | 'up' | 'down'
      readonly angle: Angle
      readonly span: Span
    }
  /** Arc of the radius to a point counted from the start; turns left (ccw) or right (cw). */
  | {
      readonly kind: 'arc'
      readonly radius: Size
      readonly across: Size
      readonly up: Size
      readonly turn: 'left' | 'right'
      readonly span: Span
    }
  /** Arc that runs on smoothly from the side before, by its radius and its own length. */
  | {
      readonly kind: 'arc by length'
      readonly radius: Size
      readonly length: Size
      readonly turn: 'left' | 'right'
      readonly span: Span
    }
  | { readonly kind: 'close'; readonly span: Span }

export interface OutlineStock extends StockBase {
  readonly kind: 'outline'
  readonly thickness: Size
  readonly face: Side
  readonly moves: readonly OutlineMove[]
}

export type Stock =
  | PlateStock
  | BlockStock
  | AngleStock
  | ChannelStock
  | FlatStock
  | RoundStock
  | TubeStock
  | DiscStock
  | TurnedStock
  | OutlineStock

// ---------------------------------------------------------------- placement

/** `lowest 1.38 from bottom`, `centred`, `centres 1.12 from heel`. */
export interface Anchor {
  /**
   * Which of the run's members the distance reaches; `all`: a single row or hole's own centre(s). Of a notch, groove,
   * keyseat or flat the outer words mean its wall or end on that side (`left end .50 from …`), `all` its middle.
   */
  readonly which: 'lowest' | 'highest' | 'leftmost' | 'rightmost' | 'frontmost' | 'rearmost' | 'all'
  readonly distance: Size
  readonly from: Name
}

/** Members along one direction of the face. */
export interface Run {
  /** `2 across`, `3 up`; 1 when not said. */
  readonly count: Count
  /** As written. Across is left-right (front-rear on left/right faces); up is up-down (front-rear on top/bottom faces). */
  readonly way?: 'across' | 'up'
  /** `1.250 apart`: between neighbours. */
  readonly pitch?: Size
  readonly anchor:
    | { readonly kind: 'centred'; readonly span: Span }
    | ({ readonly kind: 'from'; readonly span: Span } & Anchor)
  readonly span: Span
}

export type Placement =
  /** One, row or grid: one or two runs. */
  | { readonly kind: 'runs'; readonly runs: readonly Run[]; readonly span: Span }
  /** `on ⌀100 bolt circle, equal, one at 12 o'clock`. */
  | {
      readonly kind: 'bolt circle'
      readonly diameter: Size
      /** First hole, counter-clockwise from 3 o'clock as seen facing the worked face; from `12 o'clock`, `first at 30°`, `astride`. */
      readonly first: { readonly degrees: number; readonly text: string; readonly span: Span } | undefined
      /** Centre other than the face's own axis. */
      readonly about?: Name
      readonly span: Span
    }
  /** `at 10, 20; 40, 20 from left, bottom`: list of points from two faces. */
  | {
      readonly kind: 'points'
      readonly points: readonly { readonly a: Size; readonly b: Size; readonly span: Span }[]
      readonly fromA: Name
      readonly fromB: Name
      readonly span: Span
    }
  /** On the axis of the face or of another feature. */
  | { readonly kind: 'axis'; readonly of?: Name; readonly span: Span }

/**
 * `mirrored left-right`: the same again on the other side of the part's middle. The feature's count is of all that
 * are made, so the placement holds half of it.
 */
export interface Mirror {
  readonly across: Lie
  readonly span: Span
}

// ---------------------------------------------------------------- features

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
  /** From the edge inward; a vee may give the angle instead. */
  readonly depth?: Size
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

// ---------------------------------------------------------------- requests about the sheet

/** `views front, top; section A-A; pictorial`, or absent: the program proposes. */
export type ViewRequest =
  | { readonly kind: 'view'; readonly side: Side; readonly span: Span }
  | {
      readonly kind: 'section'
      readonly letter: string
      readonly extent: 'full' | 'half'
      /** Cutting plane's place where not through the middle: `through holes`, `through bore`. */
      readonly through?: Name
      /** The view that the section stands in for; absent: chosen. */
      readonly as?: Side
      readonly span: Span
    }
  | { readonly kind: 'pictorial' | 'no pictorial'; readonly span: Span }

/** `show overall (120)`: a reference size asked for. */
export interface ShowRequest {
  readonly what: Name
  readonly size?: Size
  readonly span: Span
}

/** `place 2.50 in top view row 2`, `place section A-A 0 across, -10 up`: the drafter's override of a size's or a view's place. */
export type PlaceRequest =
  | {
      readonly kind: 'size'
      readonly size: Words
      readonly view?: ViewName
      readonly row?: Num
      readonly side?: Side
      readonly span: Span
    }
  | { readonly kind: 'view'; readonly view: ViewName; readonly across: Num; readonly up: Num; readonly span: Span }

/** `sizes baseline`, `sizes chain`, `sizes ordinate`, `hole table`. */
export interface SchemeRequest {
  readonly scheme: 'baseline' | 'chain' | 'ordinate' | 'hole table'
  /** The feature statement it is for; absent: the whole part. */
  readonly of?: Name
  readonly span: Span
}

/** `accept hole-near-edge at hole 1 with 1.2 mm because …`: a mark that stands as it is, and why. */
export interface Acceptance {
  /** The mark's rule. */
  readonly rule: Words
  /** The feature or statement that it is at; absent: wherever the rule speaks. */
  readonly at?: Words
  /** The figures it was accepted with, as typed; with others the mark stands again. */
  readonly numbers?: readonly string[]
  readonly because: Words
  readonly span: Span
}

/** The brief as read. Whatever could not be read is in `marks`; everything else stands. */
export interface Brief {
  readonly text: string
  readonly header: Header
  readonly stock?: Stock
  /** In the order written, which is the order worked. */
  readonly features: readonly Feature[]
  /** Absent: the program proposes the views. */
  readonly views?: readonly ViewRequest[]
  readonly shows: readonly ShowRequest[]
  readonly places: readonly PlaceRequest[]
  readonly schemes: readonly SchemeRequest[]
  /** Absent: none. */
  readonly acceptances?: readonly Acceptance[]
  /** Absent: none. */
  readonly datums?: readonly DatumFeature[]
  /** Absent: none. */
  readonly frames?: readonly FrameStatement[]
  /** What sizes must add up to. Absent: nothing is asked. */
  readonly stacks?: readonly StackStatement[]
  /** Textures of single surfaces; the general one is in the header. Absent: none. */
  readonly textures?: readonly FaceTexture[]
  readonly comments?: readonly Comment[]
  readonly marks: readonly Mark[]
}

/** A comment, from its `#`. */
export interface Comment extends Words {
  /** On lines of its own above a statement (or inside one), beside a statement's first line, or after the last one. */
  readonly place: 'above' | 'beside' | 'end'
  /** Start of the statement it goes with. */
  readonly of?: number
}
