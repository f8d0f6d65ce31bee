import type { Practice } from '../../brief/brief.ts'
import type { Mark } from '../../brief/mark.ts'
import type { Span } from '../../brief/span.ts'
import type { Box2 } from '../../geometry/evaluate.ts'
import type { Dimension, SizeSet } from '../../sizes/dimension.ts'
import type { View } from '../../views/view.ts'
import type { PlacedView, SheetItem } from '../sheet.ts'
import { angleUnits } from './angle-units.ts'
import { annotationUnits } from './annotation-units.ts'
import type { Stand } from './board.ts'
import { crossingsOf } from './crossings.ts'
import { placementFigures } from './figures.ts'
import { finished } from './finish.ts'
import type { Desk, Unit } from './form.ts'
import { Ground } from './ground.ts'
import { Ink, type StandingView, standing } from './ink.ts'
import { leaderUnits } from './leader-units.ts'
import { linearUnits, splitChain } from './linear-units.ts'
import { ordinateUnits } from './ordinate-units.ts'
import { originUnits } from './origin-units.ts'
import { Search } from './search.ts'
import type { Slab } from './shapes.ts'
import { facings } from './sides.ts'
import { tagUnits } from './tag-units.ts'

export interface PlacementInput {
  readonly views: readonly { readonly view: View; readonly placed: PlacedView }[]
  readonly sizes: SizeSet
  readonly practice: Practice
  /** Paper mm that sizes stay off: title block, notes, tables, labels of views, section letters. */
  readonly obstacles: readonly Box2[]
  /** Arrows of cutting-plane lines: obstacles that only extension lines may cross, at a cost. */
  readonly passable?: readonly Box2[]
  /** Drawing area, paper mm. */
  readonly bounds: Box2
  /** Where the brief states the place that a size wishes for. */
  readonly wishSpan?: (d: Dimension) => Span | undefined
  /** Sheet format, which decides lettering heights in ISO practice. */
  readonly format?: string
}

export interface Placement {
  readonly items: readonly SheetItem[]
  /** Where texts stand; centre lines are broken there (`interrupted`). */
  readonly texts: readonly Slab[]
  /** Bounds of each size with its lines. */
  readonly taken: readonly Box2[]
  /** Ids of sizes for which there is no room; they are not drawn. */
  readonly unplaced: readonly string[]
  /** Dimension lines crossed by extension lines or leaders of other sizes. */
  readonly crossings: number
  /** Chains whose members found no room in one line and stand in several. */
  readonly broken: number
  readonly marks: readonly Mark[]
}

/** Seed of the search: the same sizes always stand in the same places. */
const SEED = 1729

/** Places and draws the sizes of a sheet. Pure; all in paper mm. */
export function placeDimensions(input: PlacementInput): Placement {
  const views = input.views.map(({ view, placed }) => standing(view, placed))
  const { stands, unplaced, unmet, broken, figures } = arrange(views, input, 1)
  return {
    items: finished(stands, figures),
    texts: stands.flatMap((s) => s.shapes.filter((x): x is Slab => x.shape === 'slab' && x.role === 'text')),
    unplaced: unplaced.flatMap((u) => (u.dimensions.length > 0 ? u.dimensions.map((d) => d.id) : [u.id])),
    taken: stands.map(({ box }) => ({ min: [box.x0, box.y0], max: [box.x1, box.y1] })),
    crossings: crossingsOf(stands),
    broken: broken.length,
    marks: [
      ...strayMarks(input.sizes.dimensions, views),
      ...unplaced.map((u) => crowdedMark(u, views)),
      ...broken.map((u) => brokenMark(u, views)),
      ...unmet.map((u) => unmetMark(u, views, input.wishSpan)),
    ],
  }
}

/** Decides every place. `effort` scales the rounds of improvement; 0 sets each size once. */
export function arrange(
  views: readonly StandingView[],
  input: Pick<PlacementInput, 'sizes' | 'practice' | 'obstacles' | 'passable' | 'bounds' | 'format'>,
  effort: number,
): {
  stands: readonly Stand[]
  unplaced: readonly Unit[]
  unmet: readonly Unit[]
  broken: readonly Unit[]
  figures: ReturnType<typeof placementFigures>
} {
  const figures = placementFigures(input.practice, input.format)
  const ink = new Ink(views)
  const ground = new Ground(
    ink,
    input.bounds,
    input.obstacles,
    input.passable ?? [],
    figures.first,
    figures.practice.hatching.angle,
  )
  const desk: Desk = { figures, ink, ground, facing: facings(views) }
  let units: Unit[] = views.flatMap(({ view }, owner) => {
    const own = input.sizes.dimensions.filter((d) => d.view === view.id)
    return [
      ...ordinateUnits(desk, owner, own),
      ...linearUnits(desk, owner, own),
      ...angleUnits(desk, owner, own),
      ...leaderUnits(desk, owner, own),
      ...annotationUnits(desk, owner, input.sizes.annotations ?? []),
      ...input.sizes.tables
        .filter((t) => t.view === view.id)
        .flatMap((t) => [...originUnits(desk, owner, t), ...tagUnits(desk, owner, t)]),
    ]
  })
  const search = (list: readonly Unit[]): Search => {
    const s = new Search(ground, { leastPitch: figures.leastPitch, pitch: figures.pitch })
    s.run(list, { rounds: Math.round(effort * (16 + 4 * list.length)), seed: SEED })
    return s
  }
  let result = search(units)
  // A chain without room in one line is set size by size.
  const off = (unit: Unit) => !result.stands.some((s) => s.unit === unit)
  const broken = units.filter((u) => u.dimensions.length > 1 && u.rank[0] === 1 && off(u))
  if (broken.length > 0) {
    units = units.flatMap((u) => (broken.includes(u) ? splitChain(desk, u) : [u]))
    result = search(units)
  }
  // A wish for which there is no room gives way, and is marked.
  const stubborn = units.filter((u) => u.unwished && off(u))
  if (stubborn.length > 0) {
    const open = ({ unwished, ...u }: Unit): Unit => ({ ...u, options: unwished ?? u.options, unmet: true })
    units = units.map((u) => (stubborn.includes(u) ? open(u) : u))
    result = search(units)
  }
  const unmet = units.filter((u) => u.unmet)
  return { stands: result.stands, unplaced: units.filter(off), unmet, broken, figures }
}

function brokenMark(unit: Unit, views: readonly StandingView[]): Mark {
  const span = unit.dimensions.find((d) => d.span)?.span
  return {
    rule: 'chain-broken',
    weight: 'look again',
    text: `The chain of ${unit.dimensions.length} sizes at the ${views[unit.owner]!.view.id} view finds no room in one line and stands in several.`,
    ...(span ? { span } : {}),
    expected: 'a larger scale, or sizes baseline',
    source: 'common practice, no source',
  }
}

function crowdedMark(unit: Unit, views: readonly StandingView[]): Mark {
  const { view } = views[unit.owner]!
  const span = unit.dimensions.find((d) => d.span)?.span ?? unit.span
  const cure =
    unit.dimensions.some((d) => d.measured.kind === 'leader' || d.measured.kind === 'ordinate') ||
    unit.dimensions.length === 0
      ? 'a hole table, or a detail view'
      : 'a detail view, or another view for this size'
  return {
    rule: 'no-room-for-size',
    weight: 'must change',
    text: `No room for ${unit.name} at the ${view.id} view: it is left off rather than printed over something else.`,
    ...(span ? { span } : {}),
    expected: `room for the size: ${cure}`,
    source: 'ASME Y14.5-2018 §4.5 and ISO 129-1:2018 §5 (legibility: nothing printed over a size)',
  }
}

function unmetMark(unit: Unit, views: readonly StandingView[], wishSpan: PlacementInput['wishSpan']): Mark {
  const d = unit.dimensions.find((x) => x.wish)
  const { side, row } = d?.wish ?? {}
  const asked = [side ? `${side} side` : '', row ? `row ${row}` : ''].filter((x) => x).join(', ')
  const span = d && (wishSpan?.(d) ?? d.span)
  return {
    rule: 'place-not-met',
    weight: 'look again',
    text: `${unit.name} cannot stand at the ${views[unit.owner]!.view.id} view’s ${asked}: it has no such place, or the place is taken.`,
    ...(span ? { span } : {}),
    expected: 'another side or row, or the statement left out',
    source: 'common practice, no source',
  }
}

/** Sizes whose view is not on the sheet, or that measure nothing. */
function strayMarks(dimensions: readonly Dimension[], views: readonly StandingView[]): Mark[] {
  return dimensions
    .filter((d) => !views.some((v) => v.view.id === d.view))
    .map((d) => ({
      rule: 'size-without-view',
      weight: 'must change',
      text: `The size ${d.callout.lines
        .flat()
        .filter((p) => typeof p === 'string')
        .join(' ')} stands in the ${d.view} view, which is not on the sheet.`,
      ...(d.span ? { span: d.span } : {}),
      expected: `a view that shows the size`,
      source: 'common practice, no source',
    }))
}
