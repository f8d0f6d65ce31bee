import type { Brief, Header } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { Span } from '../brief/span.ts'
import type { Box2 } from '../geometry/evaluate.ts'
import { placed as placedCurve } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'
import type { Dimension, SizeSet } from '../sizes/dimension.ts'
import { type PracticeFigures, practiceFigures } from '../standards/practice-figures.ts'
import type { View } from '../views/view.ts'
import { grownBy } from './arrange/boxes.ts'
import { cellsOf } from './arrange/cells.ts'
import type { SheetChoice } from './arrange/choose-sheet.ts'
import type { Desk } from './choices.ts'
import { cuttingPlaneLine, edgesOf } from './cutting-plane-line.ts'
import { border, centringBoxes } from './furniture/border.ts'
import { holeTableBlock } from './furniture/hole-table.ts'
import { partsListBlock } from './furniture/parts-list.ts'
import { stamp, stampShapes } from './furniture/stamp.ts'
import { titleBlock } from './furniture/title-block.ts'
import { titleWords } from './furniture/title-words.ts'
import { hatchStyle } from './hatching.ts'
import { lateStamp } from './late-stamp.ts'
import { lettered } from './lettering/capitals.ts'
import { mustChange } from './must-change.ts'
import { interrupted } from './placement/interrupt.ts'
import { type Placement, placeDimensions } from './placement/place-dimensions.ts'
import type { PlacedView, Sheet, SheetItem } from './sheet.ts'
import { withoutSlightSlopes } from './slight-slopes.ts'
import { atPrintedCircles, withThreads } from './tapped-lines.ts'
import { toPaper, viewItems } from './view-items.ts'
import { belowSizes, type LowNote, labelItems } from './view-label.ts'
import { mainView, movesOfNoView, viewMoves } from './view-rooms.ts'

/** Clear of the frame, paper mm. */
const BESIDE_FRAME = 4

export interface Drawn {
  readonly sheet: Sheet
  readonly marks: readonly Mark[]
  /** Sizes and hole tables that found no place. */
  readonly left: number
  /** Chains that found none in one line. */
  readonly broken: number
  /** Nothing is left off and proven, or the sheet says that it is preliminary. */
  readonly honest: boolean
}

/** Draws one arrangement: views, furniture, and the sizes where they find room. */
export function draw(desk: Desk, choice: SheetChoice): Drawn {
  const { header, views, sizes, part } = desk
  const { format } = choice
  const figures = practiceFigures(header.practice, format.name)
  const words = titleWords(header.practice)
  const marks: Mark[] = movesOfNoView(desk.brief.places, views)
  const standing = standingViews(desk, choice)
  const hatch = hatchOf(standing, figures)
  const items: SheetItem[] = [...border(format, figures)]
  const obstacles: Box2[] = [
    choice.title,
    ...centringBoxes(format),
    ...(choice.notes ? [grownBy(choice.notes.box, 2)] : []),
  ]

  const passable: Box2[] = []
  let low: { readonly note: LowNote; readonly view: Box2 } | undefined

  for (const { view, at } of standing) items.push(...viewItems(view, at, figures, hatch))
  const main = mainView(views)
  for (const { view, at } of standing) {
    for (const plane of view.cuttingPlanes) {
      const drawn = cuttingPlaneLine(plane, toPaper(at), at.box, figures, { view: view.id }, edgesOf(view, toPaper(at)))
      items.push(...drawn.items)
      obstacles.push(...drawn.taken)
      passable.push(...drawn.arrows)
    }
    const label = labelItems(
      view,
      at,
      choice.grid,
      view.id === main?.id ? views.thicknessNote : undefined,
      header,
      figures,
    )
    items.push(...label.items)
    obstacles.push(...label.taken)
    if (label.note) low = { note: label.note, view: at.box }
    if (view.kind === 'pictorial') obstacles.push(grownBy(at.box, 2))
  }

  const loose = choice.loose.filter((spot) => spot !== undefined)
  for (const spot of loose) obstacles.push(grownBy(spot.box, 2))
  const tables = sizes?.tables ?? []
  const tableSpots = choice.loose
    .slice(0, tables.length)
    .map((spot) => (spot?.what === 'hole table' ? spot : undefined))
  let tablesLeft = 0
  for (const [i, table] of tables.entries()) {
    const spot = tableSpots[i]
    if (spot) items.push(...holeTableBlock(table, figures).at(spot.box.min))
    else {
      tablesLeft++
      marks.push(noRoomForTable(table.view))
    }
  }
  if (part.items) {
    const spot = loose.find((s) => s.what === 'parts list')
    if (spot) items.push(...partsListBlock(part.items, words.items, figures).at(spot.box.min))
    else marks.push(NO_ROOM_FOR_PARTS)
  }
  const kept = loose.find((spot) => spot.what === 'stamp')
  if (kept) items.push(...stamp(stampShapes(words.preliminary)[kept.size]!.lines, kept.box))

  const placeWith = (more: readonly Box2[]) =>
    sizes && placeSizes(desk, sizes, standing, { obstacles: [...obstacles, ...more], passable }, choice)
  let placement = placeWith([])
  if (low) {
    const others = [...obstacles, ...passable, ...standing.map(({ at }) => at.box)]
    let note = belowSizes(low.note, low.view, placement?.taken ?? [], others, grownBy(choice.frame, -BESIDE_FRAME))
    if (!note) {
      note = low.note.at(0)
      placement = placeWith([note.taken])
    }
    obstacles.push(note.taken)
    items.push(...note.items)
  }
  const left = (placement?.unplaced.length ?? 0) + tablesLeft
  const titleOf = (signed: Header) =>
    titleBlock(
      {
        header: lettered(signed),
        ...(part.properties.mass === undefined ? {} : { mass: part.properties.mass }),
        scale: choice.scaleText,
        format: format.name,
        sheet: 1,
        sheets: 1,
      },
      choice.title,
      figures,
    )
  let title = titleOf(header)
  marks.push(...title.marks, ...(placement?.marks ?? []))
  let honest = kept !== undefined || (left === 0 && !desk.preliminary && !desk.unsound && !mustChange(marks))
  // Who checked or approved it did not sign what must change.
  if ((kept || !honest) && (header.checked || header.approved)) title = titleOf(withoutChecks(header))
  if (placement) {
    items.splice(0, items.length, ...interrupted(items, placement.texts), ...placement.items)
  }
  // A size left off makes the sheet preliminary, whatever the proof says of the scheme.
  if (!honest) {
    const late = lateStamp(
      {
        frame: choice.frame,
        title: choice.title,
        obstacles: [...obstacles, ...passable],
        views: standing.map(({ at }) => at.box),
        rooms: [...choice.grid.rooms.values()],
        sizes: placement?.taken ?? [],
      },
      words.preliminary,
    )
    items.push(...(late ?? []))
    honest = late !== undefined
  }

  if (choice.notes) items.push(...choice.notes.block.at(choice.notes.box.min[0], choice.notes.box.max[1]))
  items.push(...title.items)
  if (views.views.some((v) => v.kind === 'pictorial') && !choice.pictorial) {
    marks.push({
      rule: 'pictorial-left-out',
      weight: 'remark',
      text: 'The pictorial finds no room on this sheet and is left out.',
      expected: 'a larger sheet or a smaller scale',
    })
  }
  const { number, revision, firm, drawn } = header
  return {
    sheet: {
      format: format.name,
      width: format.width,
      height: format.height,
      scale: choice.scaleText,
      items,
      views: standing.map(({ at }) => at),
      title: header.part?.text ?? header.number?.text ?? '',
      about: {
        ...(number ? { number: number.text } : {}),
        ...(revision ? { revision: revision.text } : {}),
        ...(firm ? { firm: firm.text } : {}),
        ...(drawn ? { author: drawn.name.text } : {}),
        ...(drawn?.date ? { date: drawn.date.text } : {}),
      },
    },
    marks,
    left,
    broken: placement?.broken ?? 0,
    honest,
  }
}

const noRoomForTable = (view: string): Mark => ({
  rule: 'no-room-for-table',
  weight: 'must change',
  text: `No room for the hole table of the ${view} view: it is left off rather than printed over something else.`,
  expected: 'a larger sheet or a smaller scale',
  source: 'ISO 129-1:2018 §5 and ASME Y14.5-2018 §4.5 (legibility: nothing printed over a size)',
})

const NO_ROOM_FOR_PARTS: Mark = {
  rule: 'no-room-for-parts-list',
  weight: 'must change',
  text: 'No room for the parts list: it is left off rather than printed over something else.',
  expected: 'a larger sheet or a smaller scale',
  source: 'common practice, no source',
}

/** Where the brief asks for a size's place. */
function wishSpan(brief: Brief, d: Dimension): Span | undefined {
  const asking = brief.places.filter(
    (p) => p.kind === 'size' && p.side === d.wish?.side && p.row?.value === d.wish?.row,
  )
  const text = d.callout.lines
    .flat()
    .filter((p) => typeof p === 'string')
    .join(' ')
  return (asking.find((p) => p.kind === 'size' && text.includes(p.size.text)) ?? asking[0])?.span
}

interface Standing {
  readonly view: View
  readonly at: PlacedView
}

function standingViews(desk: Desk, choice: SheetChoice): Standing[] {
  const moves = viewMoves(desk.brief.places, desk.views)
  const cells = cellsOf(desk.views.views, desk.header.projection)
  const figures = practiceFigures(desk.header.practice, choice.format.name)
  return desk.views.views.flatMap((view): Standing[] => {
    if (view.kind === 'pictorial') {
      if (!choice.pictorial) return []
      const { box, scale } = choice.pictorial
      const [dx, dy] = moves.get(view.id) ?? [0, 0]
      const at: Vec2 = [box.min[0] - view.box.min[0] * scale + dx, box.min[1] - view.box.min[1] * scale + dy]
      return [place(view, at, scale, figures)]
    }
    const [x, y] = choice.grid.origins.get(view.id)!
    // A move takes the views in projection along: across those of the column, up those of the row.
    const own = cells.find((c) => c.view === view)!
    let [dx, dy] = [0, 0]
    for (const c of cells) {
      const move = moves.get(c.view.id)
      if (move && c.column === own.column) dx += move[0]
      if (move && c.row === own.row) dy += move[1]
    }
    return [place(view, [x + dx, y + dy], choice.scale, figures)]
  })
}

function place(drawn: View, origin: Vec2, scale: number, figures: PracticeFigures): Standing {
  const view = withThreads(withoutSlightSlopes(drawn, scale, figures), scale, figures)
  const to = (p: Vec2): Vec2 => [origin[0] + p[0] * scale, origin[1] + p[1] * scale]
  return { view, at: { id: view.id, origin, scale, box: { min: to(view.box.min), max: to(view.box.max) } } }
}

function hatchOf(standing: readonly Standing[], figures: ReturnType<typeof practiceFigures>) {
  const regions = standing.flatMap(({ view, at }) =>
    view.hatched.map((region) => region.map((loop) => loop.map((c) => placedCurve(c, at.scale, at.origin)))),
  )
  return regions.length > 0 ? hatchStyle(regions, figures) : undefined
}

function placeSizes(
  desk: Desk,
  sizes: SizeSet,
  standing: readonly Standing[],
  ground: { readonly obstacles: readonly Box2[]; readonly passable: readonly Box2[] },
  choice: SheetChoice,
): Placement | undefined {
  if (sizes.dimensions.length === 0 && sizes.tables.length === 0) return undefined
  const f = choice.frame
  const viewOf = new Map(standing.map(({ view }) => [view.id, view]))
  return placeDimensions({
    views: standing.filter(({ view }) => view.kind !== 'pictorial').map(({ view, at }) => ({ view, placed: at })),
    sizes: { ...sizes, dimensions: sizes.dimensions.map((d) => atPrintedCircles(d, viewOf.get(d.view))) },
    practice: desk.header.practice,
    ...ground,
    bounds: grownBy(f, -BESIDE_FRAME),
    format: choice.format.name,
    wishSpan: (d) => wishSpan(desk.brief, d),
  })
}

const withoutChecks = ({ checked: _, approved: __, ...rest }: Header): Header => rest
