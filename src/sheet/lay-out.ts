import type { Brief, Header } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { Span } from '../brief/span.ts'
import type { Box2 } from '../geometry/evaluate.ts'
import { placed as placedCurve } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'
import type { Part } from '../part/part.ts'
import type { Dimension, SizeSet } from '../sizes/dimension.ts'
import type { Format } from '../standards/formats.ts'
import { type PracticeFigures, practiceFigures } from '../standards/practice-figures.ts'
import { isoScales, type Scale } from '../standards/scales.ts'
import type { View, ViewSet } from '../views/view.ts'
import { grownBy } from './arrange/boxes.ts'
import { cellsOf } from './arrange/cells.ts'
import { chooseSheet, type SheetChoice } from './arrange/choose-sheet.ts'
import type { Room } from './arrange/grid.ts'
import { wantedScale } from './arrange/wanted-scale.ts'
import { cuttingPlaneLine } from './cutting-plane-line.ts'
import { border, centringBoxes } from './furniture/border.ts'
import { holeTableBlock } from './furniture/hole-table.ts'
import { type Note, type NotesBlock, notesBlock } from './furniture/notes.ts'
import { stamp, stampShapes } from './furniture/stamp.ts'
import { titleBlock, titleBlockSize } from './furniture/title-block.ts'
import { titleWords } from './furniture/title-words.ts'
import { hatchStyle } from './hatching.ts'
import { lateStamp } from './late-stamp.ts'
import { lettered } from './lettering/capitals.ts'
import { interrupted } from './placement/interrupt.ts'
import { type Placement, placeDimensions } from './placement/place-dimensions.ts'
import { possible } from './requested-format.ts'
import type { PlacedView, Sheet, SheetItem } from './sheet.ts'
import { signMarks } from './sign-marks.ts'
import { withoutSlightSlopes } from './slight-slopes.ts'
import { toPaper, viewItems } from './view-items.ts'
import { labelItems } from './view-label.ts'
import { leastRooms, mainView, tightened, viewMoves, viewRooms } from './view-rooms.ts'

/** How many sheets are tried for one that has room for every size. */
const TRIES = 4

/** Clear of the frame, paper mm. */
const BESIDE_FRAME = 4

/** What a size without a place costs, against the costs of sheets. */
const LEFT_OFF = 1

/**
 * Lays a part out on a sheet: format and scale chosen (or as the brief states), views aligned by projection, sizes
 * placed, border, title block and notes drawn. Pure; the same input gives the same sheet.
 */
export function layOut(
  part: Part,
  views: ViewSet,
  sizes: SizeSet | undefined,
): { readonly sheet: Sheet; readonly marks: readonly Mark[] } {
  const { brief } = part
  const { header } = brief
  const { formats, scales, marks: requestMarks } = possible(header)
  const preliminary = !sizes || sizes.dimensions.length === 0 || !sizes.proof.complete
  const desk: Desk = { part, views, sizes, header, brief, preliminary }
  const { choices, marks: choiceMarks } = choicesFor(desk, formats, scales)
  let best: Drawn | undefined
  let least = Infinity
  let tries = 0
  for (const choice of choices) {
    const drawn = draw(desk, choice)
    const cost = choice.cost + LEFT_OFF * drawn.left
    if (cost < least) {
      best = drawn
      least = cost
    }
    if (drawn.left === 0 || ++tries === TRIES) break
  }
  const { sheet, marks } = best!
  return { sheet, marks: [...requestMarks, ...choiceMarks, ...signMarks(header), ...marks] }
}

interface Desk {
  readonly part: Part
  readonly views: ViewSet
  readonly sizes: SizeSet | undefined
  readonly header: Header
  readonly brief: Brief
  readonly preliminary: boolean
}

function notesOf(desk: Desk): Note[] {
  return [
    ...lettered(desk.header).notes.map((n): Note => ({ text: n.text, span: n.span })),
    ...(desk.sizes?.notes ?? []).map((text): Note => ({ text })),
  ]
}

/** Candidates, best first; when what the brief states cannot hold the part, the nearest that can, with a mark. */
function choicesFor(
  desk: Desk,
  formats: readonly Format[],
  scales: readonly Scale[],
): { choices: Iterable<SheetChoice>; marks: readonly Mark[] } {
  const { header, views, sizes } = desk
  const cells = cellsOf(views.views, header.projection)
  const pictorial = views.views.find((v) => v.kind === 'pictorial')
  const rooms = new Map<string, ReadonlyMap<string, Room>>()
  const words = titleWords(header.practice)
  const notes = notesOf(desk)
  const blocks = new Map<string, NotesBlock | undefined>()
  const common = (format: Format, scale: Scale, known: ReadonlyMap<string, Room>) => ({
    format,
    scale: scale.paper / scale.part,
    cells,
    rooms: known,
    title: titleBlockSize(header.practice),
    pictorial,
    pictorialScales: pictorialScales(views.views, scale.paper / scale.part),
    notes: (width: number) => {
      const figures = practiceFigures(header.practice, format.name)
      const key = `${width} ${figures.lettering.note}`
      if (!blocks.has(key)) blocks.set(key, notesBlock(words.notes, notes, width, figures))
      return blocks.get(key)
    },
  })
  const tried = (candidates: readonly Format[], series: readonly Scale[]) =>
    begun(
      chooseSheet({
        formats: candidates,
        scales: series,
        wanted: wantedScale(views.views),
        bare: (format, scale) => {
          const figures = practiceFigures(header.practice, format.name)
          return {
            ...common(format, scale, leastRooms(views, scale.paper / scale.part, header.practice, figures)),
            pictorial: undefined,
            loose: [],
          }
        },
        request: (format, scale) => sized(format, scale, (room) => room),
        tight: (format, scale) => sized(format, scale, tightened),
      }),
    )
  const sized = (format: Format, scale: Scale, take: (room: Room) => Room) => {
    const figures = practiceFigures(header.practice, format.name)
    const value = scale.paper / scale.part
    const key = `${value} ${figures.lettering.dimension}`
    const known = rooms.get(key) ?? viewRooms(views, sizes, value, header.practice, figures, format.name)
    rooms.set(key, known)
    return {
      ...common(format, scale, new Map([...known].map(([id, room]) => [id, take(room)]))),
      loose: [
        ...(sizes?.tables ?? []).map((t) => ({
          sizes: [holeTableBlock(t, figures)],
          wish: 'upper right' as const,
        })),
        ...(desk.preliminary ? [{ sizes: stampShapes(words.preliminary), wish: 'above title block' as const }] : []),
      ],
    }
  }
  const choices = tried(formats, scales)
  if (choices) return { choices, marks: [] }
  const { sheet: _sheet, scale: _scale, ...open } = header
  const all = possible(open)
  const series = [...all.scales, ...isoScales.filter((s) => s.part > 100)]
  const marks: Mark[] = [
    {
      rule: 'sheet-too-small',
      weight: 'must change',
      text:
        header.scale || header.sheet
          ? 'The views do not fit the sheet and scale that the brief states; another was taken.'
          : 'The views and their sizes do not fit the largest sheet.',
      expected: 'a larger sheet or a smaller scale',
      source: 'common practice, no source',
      ...((header.scale ?? header.sheet) ? { span: (header.scale ?? header.sheet)!.span } : {}),
    },
  ]
  for (const [f, s] of [
    [formats, series],
    [all.formats, scales],
    [all.formats, series],
  ] as const) {
    const found = tried(f, s)
    if (found) return { choices: found, marks }
  }
  // Rooms for sizes alone can outgrow any sheet: then the views stand without them.
  return choicesFor({ ...desk, sizes: undefined, preliminary: true }, all.formats, [...series, { paper: 1, part: 1e6 }])
}

/** The candidates where there is at least one. */
function begun(candidates: Generator<SheetChoice>): Iterable<SheetChoice> | undefined {
  const first = candidates.next()
  if (first.done) return undefined
  return (function* () {
    yield first.value
    yield* candidates
  })()
}

/**
 * The pictorial stands at a round fraction of the views' scale, and no larger than the largest of them: it helps to read
 * the views and must not outshout them.
 */
function pictorialScales(views: readonly View[], scale: number): number[] {
  const side = (v: View) => Math.max(v.box.max[0] - v.box.min[0], v.box.max[1] - v.box.min[1])
  const largest = Math.max(...views.filter((v) => v.kind !== 'pictorial').map(side))
  const own = Math.max(...views.filter((v) => v.kind === 'pictorial').map(side))
  const all = [0.75, 0.6, 0.5, 0.4, 0.3, 0.25, 0.2, 0.1]
  const modest = all.filter((f) => f * own <= largest * 0.85)
  return (modest.length > 0 ? modest : all.slice(-1)).map((f) => f * scale)
}

interface Drawn {
  readonly sheet: Sheet
  readonly marks: readonly Mark[]
  /** Sizes that found no place. */
  readonly left: number
}

function draw(desk: Desk, choice: SheetChoice): Drawn {
  const { header, views, sizes, part } = desk
  const { format } = choice
  const figures = practiceFigures(header.practice, format.name)
  const words = titleWords(header.practice)
  const marks: Mark[] = []
  const standing = standingViews(desk, choice)
  const hatch = hatchOf(standing, figures)
  const items: SheetItem[] = [...border(format, figures)]
  const obstacles: Box2[] = [
    choice.title,
    ...centringBoxes(format),
    ...(choice.notes ? [grownBy(choice.notes.box, 2)] : []),
  ]

  const passable: Box2[] = []

  for (const { view, at } of standing) items.push(...viewItems(view, at, figures, hatch))
  const main = mainView(views)
  for (const { view, at } of standing) {
    for (const plane of view.cuttingPlanes) {
      const drawn = cuttingPlaneLine(plane, toPaper(at), at.box, figures, { view: view.id })
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
    if (view.kind === 'pictorial') obstacles.push(grownBy(at.box, 2))
  }

  const tables = (sizes?.tables ?? []).map((t) => holeTableBlock(t, figures))
  for (const [i, spot] of choice.loose.entries()) {
    obstacles.push(grownBy(spot.box, 2))
    const table = tables[i]
    if (table) items.push(...table.at(spot.box.min))
    else items.push(...stamp(stampShapes(words.preliminary)[spot.size]!.lines, spot.box))
  }

  const placement = sizes && placeSizes(desk, sizes, standing, { obstacles, passable }, choice)
  if (placement) {
    items.splice(0, items.length, ...interrupted(items, placement.texts), ...placement.items)
    marks.push(...placement.marks)
    // A size left off makes the sheet preliminary, whatever the proof says of the scheme.
    if (placement.unplaced.length > 0 && !desk.preliminary)
      items.push(
        ...lateStamp(
          {
            frame: choice.frame,
            title: choice.title,
            obstacles: [...obstacles, ...passable],
            views: standing.map(({ at }) => at.box),
            rooms: [...choice.grid.rooms.values()],
            sizes: placement.taken,
          },
          words.preliminary,
        ),
      )
  }

  if (choice.notes) items.push(...choice.notes.block.at(choice.notes.box.min[0], choice.notes.box.max[1]))
  const title = titleBlock(
    {
      header: lettered(header),
      ...(part.properties.mass === undefined ? {} : { mass: part.properties.mass }),
      scale: choice.scaleText,
      format: format.name,
      sheet: 1,
      sheets: 1,
    },
    choice.title,
    figures,
  )
  items.push(...title.items)
  marks.push(...title.marks)
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
    left: placement?.unplaced.length ?? 0,
  }
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
      return [place(view, [box.min[0] - view.box.min[0] * scale, box.min[1] - view.box.min[1] * scale], scale, figures)]
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
  const view = withoutSlightSlopes(drawn, scale, figures)
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
  return placeDimensions({
    views: standing.filter(({ view }) => view.kind !== 'pictorial').map(({ view, at }) => ({ view, placed: at })),
    sizes,
    practice: desk.header.practice,
    ...ground,
    bounds: grownBy(f, -BESIDE_FRAME),
    format: choice.format.name,
    wishSpan: (d) => wishSpan(desk.brief, d),
  })
}
