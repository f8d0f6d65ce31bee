import type { Brief, Header } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { Part } from '../part/part.ts'
import type { SizeSet } from '../sizes/dimension.ts'
import type { Format } from '../standards/formats.ts'
import { practiceFigures } from '../standards/practice-figures.ts'
import { isoScales, type Scale, scaleText } from '../standards/scales.ts'
import type { View, ViewSet } from '../views/view.ts'
import { cellsOf } from './arrange/cells.ts'
import { chooseSheet, type SheetChoice } from './arrange/choose-sheet.ts'
import { compose } from './arrange/compose.ts'
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
  /** They outgrow the largest sheet. */
  readonly withoutNotes?: boolean
}

const notesLeftOff = (notes: readonly Note[]): Mark => ({
  rule: 'notes-left-off',
  weight: 'must change',
  text: `The ${notes.length} notes do not fit the largest sheet and are left off.`,
  expected: 'fewer notes, or a note that refers to a document with them',
  source: 'common practice, no source',
  ...(notes[0]?.span ? { span: notes[0].span } : {}),
})

function notesOf(desk: Desk): Note[] {
  if (desk.withoutNotes) return []
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
    notes: (width: number, columns: number) => {
      const figures = practiceFigures(header.practice, format.name)
      const key = `${width} ${columns} ${figures.lettering.note}`
      if (!blocks.has(key)) blocks.set(key, notesBlock(words.notes, notes, { width, columns }, figures))
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
  const tight =
    header.scale || header.sheet ? tightViews(desk, formats, scales, (f, k) => sized(f, k, tightened).rooms) : undefined
  const marks: Mark[] = [
    {
      rule: 'sheet-too-small',
      weight: 'must change',
      ...(tight ?? {
        text:
          header.scale || header.sheet
            ? 'The views do not fit the sheet and scale that the brief states.'
            : 'The views and their sizes do not fit the largest sheet.',
        expected:
          header.scale || header.sheet
            ? 'a larger sheet or a smaller scale'
            : 'a hole table, running sizes, or a detail view for the crowded place',
      }),
      source: 'common practice, no source',
      ...((header.scale ?? header.sheet) ? { span: (header.scale ?? header.sheet)!.span } : {}),
    },
  ]
  // Where only the sizes outgrow the sheet, the scale that the brief states is kept, and a larger sheet taken.
  const wider = [
    [formats, series],
    [all.formats, scales],
  ] as const
  for (const [f, s] of [...(tight && header.scale ? [...wider].reverse() : wider), [all.formats, series] as const]) {
    const found = tried(f, s)
    if (found) return { choices: found, marks }
  }
  if (notes.length > 0) {
    const rest = choicesFor({ ...desk, withoutNotes: true, preliminary: true }, formats, scales)
    if (rest.marks.length === 0) return { choices: rest.choices, marks: [notesLeftOff(notes)] }
  }
  // Less than the views by themselves there is not: without this, what cannot stand would be tried for ever.
  if (desk.withoutNotes && !desk.sizes && formats.length === all.formats.length)
    throw new Error('The views by themselves stand on no sheet at any scale.')
  // Rooms for sizes alone can outgrow any sheet: then the views stand without them.
  const bare = { ...desk, sizes: undefined, preliminary: true, withoutNotes: desk.sizes === undefined }
  const rest = choicesFor(bare, all.formats, [...series, { paper: 1, part: 1e6 }])
  return { choices: rest.choices, marks: [...marks, ...rest.marks] }
}

/**
 * What to say where the views alone would stand on a stated sheet at a stated scale, but not with the room of their sizes:
 * which view's sizes take the most. Undefined where the views do not fit by themselves.
 */
function tightViews(
  desk: Desk,
  formats: readonly Format[],
  scales: readonly Scale[],
  roomsOf: (format: Format, scale: Scale) => ReadonlyMap<string, Room>,
): Pick<Mark, 'text' | 'expected'> | undefined {
  const { views, header, sizes } = desk
  const [format, scale] = [formats.at(-1), scales.at(-1)]
  if (!format || !scale || !sizes) return undefined
  const ratio = scale.paper / scale.part
  const alone = compose({
    format,
    scale: ratio,
    cells: cellsOf(views.views, header.projection),
    rooms: leastRooms(views, ratio, header.practice, practiceFigures(header.practice, format.name)),
    pictorial: undefined,
    pictorialScales: [],
    title: titleBlockSize(header.practice),
    notes: () => undefined,
    loose: [],
  })
  if (!alone) return undefined
  const taken = ({ left, right, top, bottom }: Room) => left + right + top + bottom
  const [id, room] = [...roomsOf(format, scale)].reduce((a, b) => (taken(b[1]) > taken(a[1]) ? b : a))
  const own = sizes.dimensions.filter((d) => d.view === id)
  const scheme = own.find((d) => d.group)?.group?.scheme
  const rows = scheme ? `rows of ${SCHEME_WORDS[scheme]}` : 'rows'
  const mm = (x: number) => Math.round(x)
  return {
    text:
      `The views fit sheet ${format.name} at ${scaleText(scale)}, but the sizes do not: the ${rows} of the ${own.length} sizes ` +
      `of the ${id} view take ${mm(room.left + room.right)} mm beside it and ${mm(room.top + room.bottom)} mm above and below.`,
    expected: `a larger sheet${scheme && scheme !== 'ordinate' ? ', or running sizes (sizes ordinate), which stand in one row' : ', or fewer sizes in that view'}`,
  }
}

const SCHEME_WORDS = { baseline: 'baseline sizes', chain: 'chains', ordinate: 'running sizes' } as const

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
