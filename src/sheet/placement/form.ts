import type { Span } from '../../brief/span.ts'
import type { Curve2 } from '../../geometry/curve2.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { Dimension } from '../../sizes/dimension.ts'
import type { SheetItem, Tie } from '../sheet.ts'
import type { Block, Justify } from './callout-block.ts'
import type { PlacementFigures } from './figures.ts'
import type { Ground } from './ground.ts'
import type { Ink } from './ink.ts'
import { type Bar, bar, type Shape, type Slab, slab } from './shapes.ts'

/** What every maker of drawn forms works with. */
export interface Desk {
  readonly figures: PlacementFigures
  readonly ink: Ink
  readonly ground: Ground
  /** Directions (of view `owner`) that face another view in projection. */
  readonly facing: readonly (readonly Facing[])[]
}

export interface Facing {
  readonly way: Vec2
  /** Paper distance to the other view's outline. */
  readonly distance: number
}

/** A piece of a size as drawn: what it occupies and what is printed. */
export interface Drawn {
  readonly shapes: readonly Shape[]
  /** Lines other than extension lines; those are drawn from `shapes` once all are known. */
  readonly strokes: readonly { readonly kind: 'dimension' | 'leader'; readonly curve: Curve2 }[]
  readonly texts: readonly Lettered[]
  readonly memo: Memo
}

/** What the search finds out about a piece, once. */
export interface Memo {
  readonly box: Bounds
  /** Cost on the ground; negative: not yet known. */
  ground: number
  /** The cost on the ground is no less, as far as it was looked into. */
  least?: number
  /** Conflict with alternatives of other members of its unit. */
  against?: Map<Alternative, number>
  /** Conflict with other units where they stood last. */
  beside?: Beside
  /** The piece's shapes with its member's fixed ones. */
  whole?: readonly Shape[]
}

/** What a piece costs beside other units, by their numbers: most stand where they stood when it was tried before. */
export class Beside {
  readonly places: (object | undefined)[] = []
  readonly costs: number[] = []
  /** The one that last was too much. */
  worst: number | undefined
}

export interface Bounds {
  x0: number
  y0: number
  x1: number
  y1: number
}

/** A piece whose text, if any, is looked at first: it most often decides that there is no room. */
export function drawn(
  shapes: readonly Shape[],
  strokes: Drawn['strokes'] = [],
  texts: readonly Lettered[] = [],
): Drawn {
  return { shapes, strokes, texts, memo: { box: boundsOf(shapes), ground: -1 } }
}

/** An alternative that is worked out only when the search comes to it: most never are. */
export class Later implements Alternative {
  readonly own: number
  readonly #make: () => Drawn
  #made: Drawn | undefined

  constructor(own: number, make: () => Drawn) {
    this.own = own
    this.#make = make
  }

  get #drawn(): Drawn {
    this.#made ??= this.#make()
    return this.#made
  }

  get shapes(): readonly Shape[] {
    return this.#drawn.shapes
  }

  get strokes(): Drawn['strokes'] {
    return this.#drawn.strokes
  }

  get texts(): readonly Lettered[] {
    return this.#drawn.texts
  }

  get memo(): Memo {
    return this.#drawn.memo
  }
}

/** An alternative of which only what it occupies is kept; what is printed is made when it is asked for. */
export class Outlined implements Alternative {
  readonly own: number
  readonly shapes: readonly Shape[]
  readonly memo: Memo
  readonly #print: () => Pick<Drawn, 'strokes' | 'texts'>

  constructor(own: number, shapes: readonly Shape[], print: () => Pick<Drawn, 'strokes' | 'texts'>) {
    this.own = own
    this.shapes = shapes
    this.memo = { box: boundsOf(shapes), ground: -1 }
    this.#print = print
  }

  get strokes(): Drawn['strokes'] {
    return this.#print().strokes
  }

  get texts(): readonly Lettered[] {
    return this.#print().texts
  }
}

export function boundsOf(shapes: readonly Shape[]): Bounds {
  const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity }
  for (const s of shapes) {
    if (s.x0 < box.x0) box.x0 = s.x0
    if (s.y0 < box.y0) box.y0 = s.y0
    if (s.x1 > box.x1) box.x1 = s.x1
    if (s.y1 > box.y1) box.y1 = s.y1
  }
  return box
}

export interface Lettered {
  readonly block: Block
  readonly centre: Vec2
  /** Degrees. */
  readonly angle: number
  readonly justify: Justify
}

/** One way to finish a member once its place in the row is settled; `own` is its cost by itself. */
export interface Alternative extends Drawn {
  readonly own: number
}

/** A member of an option: the fixed part (extension lines) and the ways to finish it, cheapest first. */
export interface Member {
  readonly dimension: Dimension | undefined
  readonly tie: Tie
  readonly fixed: Drawn
  readonly alternatives: readonly Alternative[]
}

/** A place for a whole unit. `own` bounds its cost from below; `members` are made on demand, once. */
export interface Option {
  readonly own: number
  /** Cost of standing away from a neighbouring view; left out of the first pass, so that it agrees with `roomFor`. */
  readonly bias?: number
  /** Side of the view (`above`, `below`, `left`, `right`), for members of one group to stay together. */
  readonly side?: string
  readonly row?: number
  /** A row on the part itself. */
  readonly onPart?: boolean
  /** Members are set against one another already; only other units are looked at. */
  readonly settled?: true
  readonly members: () => readonly Member[]
}

/** Options, ascending by `own`; worked out no further than they are asked for. */
export interface Options {
  /** Undefined past the last. */
  at(index: number): Option | undefined
  /** The option's cost by itself, without making it; `Infinity` past the last. */
  own?(index: number): number
  /** The option costs no less with the ground; looked into no further than to find that it is more than `most`. */
  least?(index: number, most: number): number
}

/** What is placed in one go: a single size, a chain, a set of running sizes, a tag. */
export interface Unit {
  readonly id: string
  readonly dimensions: readonly Dimension[]
  /** Index of its view. */
  readonly owner: number
  /** Order of placing: smaller first. */
  readonly rank: readonly [kind: number, length: number]
  readonly group?: string
  readonly options: Options
  /** The drafter's wish narrowed `options`; these are all there are. */
  readonly unwished?: Options
  /** The drafter asked for a place that the unit does not have. */
  readonly unmet?: true
  /** In words, for marks. */
  readonly name: string
  /** Where the brief asks for it; absent: where its sizes are stated. */
  readonly span?: Span
}

export const nothing = (): Drawn => drawn([])

export function tieOf(d: Dimension): Tie {
  return {
    view: d.view,
    dimension: d.id,
    ...(d.feature === undefined ? {} : { features: [d.feature] }),
    ...(d.span ? { span: d.span } : {}),
  }
}

/** Arrowhead with its tip at `tip`, pointing along the unit vector `way`. */
export function arrow(tip: Vec2, way: Vec2, figures: PlacementFigures, ofLeader = false): Slab {
  const half = figures.arrow.length / 2
  return slab('arrow', [tip[0] - way[0] * half, tip[1] - way[1] * half], way, half, figures.arrow.width / 2, ofLeader)
}

/** Dot in place of two arrowheads where neighbours in a chain are too close: diameter about 1 mm. */
export function endDot(at: Vec2, way: Vec2): Slab {
  return slab('dot', at, way, 0.5, 0.5)
}

export function textSlab(block: Block, centre: Vec2, angle: number, ofLeader = false): Slab {
  const a = (angle * Math.PI) / 180
  return slab('text', centre, [Math.cos(a), Math.sin(a)], block.width / 2, block.height / 2, ofLeader)
}

export function line(role: Bar['role'], a: Vec2, b: Vec2): { readonly shape: Bar; readonly curve: Curve2 } {
  return { shape: bar(role, a, b), curve: { kind: 'line', a, b } }
}

/** Angle in degrees along a direction so that text reads from the bottom or, upright, from the right. */
export function readable(way: Vec2): number {
  let a = (Math.atan2(way[1], way[0]) * 180) / Math.PI
  if (a > 90.001) a -= 180
  if (a <= -89.999) a += 180
  return Math.abs(a) < 1e-9 ? 0 : a
}

/** The filled outline of an arrowhead or dot. */
export function headItem(s: Slab, tie: Tie): SheetItem {
  if (s.role === 'dot') {
    return {
      item: 'fill',
      kind: 'dot',
      outline: [{ kind: 'arc', c: [s.cx, s.cy], r: s.hw, from: 0, sweep: 2 * Math.PI }],
      tie,
    }
  }
  const tip: Vec2 = [s.cx + s.ux * s.hw, s.cy + s.uy * s.hw]
  const left: Vec2 = [s.cx - s.ux * s.hw - s.uy * s.hh, s.cy - s.uy * s.hw + s.ux * s.hh]
  const right: Vec2 = [s.cx - s.ux * s.hw + s.uy * s.hh, s.cy - s.uy * s.hw - s.ux * s.hh]
  return {
    item: 'fill',
    kind: 'arrowhead',
    outline: [
      { kind: 'line', a: tip, b: left },
      { kind: 'line', a: left, b: right },
      { kind: 'line', a: right, b: tip },
    ],
    tie,
  }
}
