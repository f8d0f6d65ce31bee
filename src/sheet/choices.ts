import type { Brief, Header } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { Part } from '../part/part.ts'
import type { SizeSet } from '../sizes/dimension.ts'
import type { Format } from '../standards/formats.ts'
import { practiceFigures } from '../standards/practice-figures.ts'
import { isoScales, type Scale } from '../standards/scales.ts'
import type { View, ViewSet } from '../views/view.ts'
import { cellsOf } from './arrange/cells.ts'
import { chooseSheet, type SheetChoice } from './arrange/choose-sheet.ts'
import type { Room } from './arrange/grid.ts'
import { wantedScale } from './arrange/wanted-scale.ts'
import { holeTableBlock } from './furniture/hole-table.ts'
import { type Note, type NotesBlock, notesBlock } from './furniture/notes.ts'
import { partsListBlock } from './furniture/parts-list.ts'
import { stampShapes } from './furniture/stamp.ts'
import { titleBlockSize } from './furniture/title-block.ts'
import { titleWords } from './furniture/title-words.ts'
import { lettered } from './lettering/capitals.ts'
import { possible } from './requested-format.ts'
import { leastRooms, tightened, viewRooms } from './view-rooms.ts'

/** What a sheet is laid out from. */
export interface Desk {
  readonly part: Part
  readonly views: ViewSet
  readonly sizes: SizeSet | undefined
  readonly header: Header
  readonly brief: Brief
  /** Room is kept for the stamp. */
  readonly preliminary: boolean
  /** A phase says that something must change: stamped where room is left, so that a slip in the brief moves nothing. */
  readonly unsound: boolean
}

function notesOf(desk: Desk): Note[] {
  return [
    ...lettered(desk.header).notes.map((n): Note => ({ text: n.text, span: n.span })),
    ...(desk.sizes?.notes ?? []).map((text): Note => ({ text })),
  ]
}

/** Candidates, best first; when what the brief states cannot hold the part, the nearest that can, with a mark. */
export function choicesFor(
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
          what: 'hole table' as const,
          sizes: [holeTableBlock(t, figures)],
          wish: 'upper right' as const,
        })),
        ...(desk.part.items
          ? [
              {
                what: 'parts list' as const,
                sizes: [partsListBlock(desk.part.items, words.items, figures)],
                wish: 'above title block' as const,
              },
            ]
          : []),
        ...(desk.preliminary
          ? [{ what: 'stamp' as const, sizes: stampShapes(words.preliminary), wish: 'above title block' as const }]
          : []),
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
      expected:
        header.scale || header.sheet
          ? 'a larger sheet or a smaller scale'
          : 'a hole table, running sizes, or a detail view for the crowded place',
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
