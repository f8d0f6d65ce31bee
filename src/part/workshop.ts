import type { Brief, Feature, FlatFeature, Side } from '../brief/brief.ts'
import type { Mark, Weight } from '../brief/mark.ts'
import type { Span } from '../brief/span.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import type { Occt, Shape } from '../kernel/occt.ts'
import type {
  Contour,
  DepthTaken,
  Legs,
  Mouth,
  NamedSurface,
  Profile,
  Relief,
  RoundFace,
  StockEdge,
  WorkFace,
} from './model.ts'
import type { ChosenSize, Datum, ImpliedCondition, PartFeature } from './part.ts'

/** Ids of the finished body's faces that carry any of these names. */
export type FaceIds = (...names: string[]) => number[]

/** One working step on the solid, in the order of the brief. */
export type Step =
  | { readonly kind: 'cut' | 'fuse'; readonly feature: string; readonly span: Span; readonly make: MakeShape }
  | { readonly kind: 'edges'; readonly feature: string; readonly span: Span; readonly work: WorkShape }

export type MakeShape = (oc: Occt) => Shape
/** A new solid from the solid so far; the old one stays the caller's. */
export type WorkShape = (oc: Occt, solid: Shape) => Shape

/** Everything that gathers while a brief is worked into a part. Lives only inside `buildPart`. */
export class Workshop {
  readonly brief: Brief
  readonly marks: Mark[] = []
  readonly faces: WorkFace[] = []
  readonly rounds: RoundFace[] = []
  /** Edges of the stock and of features that have names of their own. */
  readonly edges: StockEdge[] = []
  profile?: Profile
  contour?: Contour
  /** Axis of space that the stock's large face is square to; absent where no face is the largest. */
  largeAxis?: 0 | 1 | 2
  /** Names of the walls that the stock's profile had before anything was worked into it. */
  stockWalls: ReadonlySet<string> = new Set()
  legs?: Legs
  /** Where each move of an outline begins, in its plane: its corners by their numbers. */
  outlineCorners: readonly Vec2[] = []
  readonly data = new Map<string, Datum>()
  readonly surfaces: NamedSurface[] = []
  readonly steps: Step[] = []
  /** Chamfers, rounds and fillets so far; sizes in mm. */
  readonly edgeWork: { readonly id: string; readonly kind: 'chamfer' | 'round' | 'fillet'; readonly size: number }[] =
    []
  /** Ends of edges that were rounded on the solid: work on a further edge there follows the round. */
  readonly roundedEnds = new Set<string>()
  /** Other words for faces; where several share one, the side worked from or the direction decides. */
  readonly aliases = new Map<string, readonly string[]>()
  readonly chosen: ((faces: FaceIds) => ChosenSize | undefined)[] = []
  readonly implied: ImpliedCondition[] = []
  readonly features: ((faces: FaceIds) => PartFeature)[] = []
  /** Members of features so far, to keep to a bound. */
  members = 0
  /** Round cuts so far, to find overlaps. */
  readonly roundCuts: RoundCut[] = []
  /** Pieces taken from and put on the stock, to find the surface that a depth runs from. */
  readonly reliefs: Relief[] = []
  /** Flats on round surfaces so far. */
  readonly flats: FlatWorked[] = []
  /** Depths as they were counted. */
  readonly depths: DepthTaken[] = []
  /** Where holes open into flat faces, and which of these are chamfered. */
  readonly mouths: Mouth[] = []
  readonly mouthWork = new Set<Mouth>()
  /** Ids of holes of a part that is not turned that the brief calls bores. */
  readonly saidBores = new Set<string>()
  private readonly counts = new Map<string, number>()

  constructor(brief: Brief) {
    this.brief = brief
  }

  mark(weight: Weight, rule: string, span: Span, text: string, expected?: string): void {
    this.marks.push({ rule, weight, text, span, ...(expected ? { expected } : {}) })
  }

  /** Whether reading the brief has marked this within the place already. */
  isTold(rule: string, { from, to }: Span): boolean {
    return this.brief.marks.some((m) => m.rule === rule && m.span && m.span.from >= from && m.span.to <= to)
  }

  must(rule: string, span: Span, text: string, expected?: string): void {
    this.mark('must change', rule, span, text, expected)
  }

  /** The feature's name: its label where it has one, else its kind and number. */
  nameOf(word: string, feature: Feature): string {
    const n = (this.counts.get(word) ?? 0) + 1
    this.counts.set(word, n)
    if (!feature.label) return `${word} ${n}`
    const label = feature.label.text.trim()
    return label.toLowerCase().startsWith(word) ? label : `${word} ${label}`
  }

  plane(id: string, point: Vec3, normal: Vec3): string {
    if (!this.data.has(id)) this.data.set(id, { id, kind: 'plane', name: id, point, normal })
    return id
  }

  axis(id: string, point: Vec3, direction: Vec3): string {
    if (!this.data.has(id)) this.data.set(id, { id, kind: 'axis', name: id, point, direction })
    return id
  }

  middle(id: string, point: Vec3, normal: Vec3, between: readonly [string, string]): string {
    if (!this.data.has(id)) this.data.set(id, { id, kind: 'middle', name: id, point, normal, between })
    return id
  }

  choose(size: ChosenSize | ((faces: FaceIds) => ChosenSize | undefined)): void {
    this.chosen.push(typeof size === 'function' ? size : () => size)
  }

  /** The flat profile that a face belongs to, where work on it may still go into the profile. */
  profileOf(face: WorkFace): Profile | undefined {
    if (this.steps.some((s) => s.kind !== 'cut')) return undefined
    if (face.cap) return this.legsWorked() ? undefined : this.profile
    const { legs, profile } = this
    if (!legs || profile?.curves !== legs.whole || profile.holes.length > 0) return undefined
    return legs.legs.find((l) => l.faces.includes(face.name))?.profile
  }

  /** Whether a leg has been worked by itself, so that the whole profile may no longer be. */
  legsWorked(): boolean {
    return this.legs?.legs.some(({ profile }) => profile.holes.length > 0 || profile.curves.length !== 4) ?? false
  }

  imply(kind: ImpliedCondition['kind'], text: string, between: readonly string[]): void {
    this.implied.push({ kind, text, between })
  }
}

/** Flats as worked, to find one that takes away the surface another is given from. */
export interface FlatWorked {
  readonly id: string
  readonly feature: FlatFeature
  readonly round: RoundFace
  readonly side: Side
  readonly from: number
  readonly to: number
}

/** A round cut along a direction: for the search of overlaps. */
export interface RoundCut {
  readonly feature: string
  /** Of the one hole: `hole A.3`. */
  readonly name: string
  readonly axis: 0 | 1 | 2
  readonly point: Vec3
  readonly r: number
  /** Lowest and highest coordinate along the axis that it reaches. */
  readonly low: number
  readonly high: number
}
