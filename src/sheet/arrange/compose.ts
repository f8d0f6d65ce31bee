import type { Box2 } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { Format } from '../../standards/formats.ts'
import type { View } from '../../views/view.ts'
import { frameOf } from '../furniture/border.ts'
import type { NotesBlock } from '../furniture/notes.ts'
import { stampWishes } from '../furniture/stamp.ts'
import { boxOf, findSpot, findSpotNear, grownBy, heightOf, inside, middleOf, overlap, widthOf } from './boxes.ts'
import type { Cell } from './cells.ts'
import { type GridPlacement, placeGrid, type Room } from './grid.ts'

/** A block that must stand somewhere clear: a hole table, a parts list, the stamp. */
export interface LooseBlock {
  readonly what: 'hole table' | 'parts list' | 'stamp'
  /** Acceptable sizes, best first. */
  readonly sizes: readonly { readonly width: number; readonly height: number }[]
  readonly wish: 'above title block' | 'upper right'
}

export interface Request {
  readonly format: Format
  /** Paper over part. */
  readonly scale: number
  readonly cells: readonly Cell[]
  readonly rooms: ReadonlyMap<string, Room>
  readonly pictorial: View | undefined
  /** Scales the pictorial may take, largest first. */
  readonly pictorialScales: readonly number[]
  readonly title: { readonly width: number; readonly height: number }
  /** The notes set to a given width of each column. */
  notes(width: number, columns: number): NotesBlock | undefined
  readonly loose: readonly LooseBlock[]
}

export interface LooseSpot {
  readonly what: LooseBlock['what']
  readonly box: Box2
  readonly size: number
}

/** Where everything stands on one sheet at one scale, paper mm. */
export interface Composition {
  readonly format: Format
  readonly scale: number
  readonly frame: Box2
  readonly title: Box2
  readonly notes: { readonly box: Box2; readonly block: NotesBlock } | undefined
  readonly grid: GridPlacement
  readonly pictorial: { readonly box: Box2; readonly scale: number } | undefined
  /** Boxes of the loose blocks in order, with the index of the size taken; undefined for one without room. */
  readonly loose: readonly (LooseSpot | undefined)[]
  /** Nothing wished for was left out. */
  readonly whole: boolean
}

/** Least distance between anything and the frame, and between neighbours. */
const CLEAR = 4
/** Room round the pictorial. */
const PICTORIAL_CLEAR = 5
/** Room round the stamp towards the views, where there is as much. */
const STAMP_CLEAR = 6
/** Notes beside the title block need this width; else they stand above it. */
const LEAST_NOTES_WIDTH = 75
const MOST_NOTES_WIDTH = 115
/** Notes away from their corner, against shares of the pictorial's scale. */
const NOTES_MOVED = 0.2

/** Stands everything on the sheet, or undefined where the views do not fit. */
export function compose(request: Request): Composition | undefined {
  const { format } = request
  const frame = frameOf(format)
  const { width, height } = request.title
  const title = boxOf(frame.max[0] - width, frame.min[1], frame.max[0], frame.min[1] + height)
  const field = grownBy(frame, -CLEAR)
  let best: { composition: Composition; worth: number } | undefined
  const notesPlaces = placeNotes(request, frame, title)
  for (const attempt of attempts(request, field, title, notesPlaces)) {
    const { notes } = attempt
    const fixed = [grownBy(title, CLEAR), ...(notes ? [grownBy(notes.box, CLEAR)] : [])]
    const first = placeGrid(
      request.cells,
      request.rooms,
      request.scale,
      attempt.region,
      fixed,
      attempt.lean,
      attempt.reserve,
      attempt.spread,
    )
    if (!first) continue
    const { grid, pictorial } = centred(
      first,
      placePictorial(request, attempt, first, [...fixed, ...first.rooms.values()], field),
      attempt,
      fixed,
      field,
    )
    const rooms = [...grid.rooms.values()]
    const taken = [...fixed, ...rooms, ...(pictorial ? [grownBy(pictorial.box, PICTORIAL_CLEAR)] : [])]
    const loose: (LooseSpot | undefined)[] = []
    for (const block of request.loose) {
      const before = loose.flatMap((l) => (l ? [grownBy(l.box, CLEAR)] : []))
      const far = block.what === 'stamp' ? rooms.map((b) => grownBy(b, STAMP_CLEAR)) : []
      loose.push(
        placeLoose(block, [...taken, ...far, ...before], field, title) ??
          placeLoose(block, [...taken, ...before], field, title),
      )
    }
    const looseStand = loose.every((l) => l)
    const pictorialStands = !request.pictorial || pictorial !== undefined
    const composition: Composition = {
      format,
      scale: request.scale,
      frame,
      title,
      notes,
      grid,
      pictorial,
      loose,
      whole: looseStand && pictorialStands,
    }
    const worth =
      (looseStand ? 4 : 0) +
      (pictorialStands ? 2 : 0) +
      (pictorial ? pictorial.scale / request.scale : 0) -
      (notes === notesPlaces[0] ? 0 : NOTES_MOVED)
    if (!best || worth > best.worth + 1e-9) best = { composition, worth }
    // The first attempt that holds everything at full size is the one a drafter would take.
    const full = !pictorial || pictorial.scale === request.pictorialScales[0]
    if (composition.whole && full && notes === notesPlaces[0]) break
  }
  return best?.composition
}

interface Attempt {
  readonly region: Box2
  readonly lean: readonly [number, number]
  readonly reserve: number
  readonly spread: number
  readonly notes: Composition['notes']
}

function* attempts(
  request: Request,
  field: Box2,
  title: Box2,
  notesPlaces: readonly Composition['notes'][],
): Generator<Attempt> {
  const reserves: number[] = []
  if (request.pictorial && !hasFreeCorner(request.cells)) {
    for (const s of request.pictorialScales) {
      const b = request.pictorial.box
      reserves.push((b.max[0] - b.min[0]) * s + 4 * PICTORIAL_CLEAR)
    }
  }
  const middle = [0.5, 0.5] as const
  for (const notes of notesPlaces) {
    const floor = Math.max(title.max[1], notes && notes.box.min[1] > title.max[1] ? notes.box.max[1] : 0)
    const over = boxOf(field.min[0], floor + CLEAR, field.max[0], field.max[1])
    for (const reserve of [...reserves, 0]) yield { region: over, lean: middle, reserve, spread: 1, notes }
  }
  const beside = boxOf(field.min[0], field.min[1], title.min[0] - CLEAR, field.max[1])
  for (const notes of notesPlaces) {
    for (const spread of [1, 0.5, 0]) {
      for (const lean of LEANS) yield { region: field, lean, reserve: 0, spread, notes }
    }
    yield { region: beside, lean: middle, reserve: 0, spread: 1, notes }
  }
}

/** Where views lean when they share the height with the title block: away from it, no further than they must. */
const LEANS = [0.5, 1].flatMap((up) => [0.5, 0.375, 0.25, 0.125, 0].map((across) => [across, up] as const))

/** Two rows and two columns leave a corner of the grid without a view. */
function hasFreeCorner(cells: readonly Cell[]): boolean {
  const columns = new Set(cells.map((c) => c.column)).size
  const rows = new Set(cells.map((c) => c.row)).size
  return columns > 1 && rows > 1 && cells.length < columns * rows
}

function placePictorial(
  request: Request,
  attempt: Attempt,
  grid: GridPlacement,
  obstacles: readonly Box2[],
  field: Box2,
): { box: Box2; scale: number } | undefined {
  const { pictorial } = request
  if (!pictorial) return undefined
  const { min, max } = pictorial.box
  const wishes = pictorialWishes(request.cells, grid, attempt)
  // Views that lean away from the title block leave white beside them: the pictorial balances it.
  const beside = field.max[0] - grid.extent.max[0]
  if (attempt.lean[0] < 0.5 && beside > (max[0] - min[0]) * request.pictorialScales[0]! + 4 * PICTORIAL_CLEAR) {
    const floor = frameTitleTop(obstacles, field, grid)
    wishes.unshift([grid.extent.max[0] + beside / 2, (floor + field.max[1]) / 2])
  }
  for (const scale of request.pictorialScales) {
    const [w, h] = [(max[0] - min[0]) * scale, (max[1] - min[1]) * scale]
    for (const wish of wishes) {
      const spot = findSpot(w + 2 * PICTORIAL_CLEAR, h + 2 * PICTORIAL_CLEAR, obstacles, field, wish)
      if (spot) return { box: grownBy(spot, -PICTORIAL_CLEAR), scale }
    }
  }
  return undefined
}

/** Views and pictorial moved as one so that together they stand in the middle of their region, where nothing is in the way. */
function centred(
  grid: GridPlacement,
  pictorial: Composition['pictorial'],
  { region, lean }: Attempt,
  fixed: readonly Box2[],
  field: Box2,
): { readonly grid: GridPlacement; readonly pictorial: Composition['pictorial'] } {
  if (!pictorial || lean[0] !== 0.5 || lean[1] !== 0.5) return { grid, pictorial }
  const all = [...grid.rooms.values(), pictorial.box]
  const whole = boxOf(
    Math.min(...all.map((b) => b.min[0])),
    Math.min(...all.map((b) => b.min[1])),
    Math.max(...all.map((b) => b.max[0])),
    Math.max(...all.map((b) => b.max[1])),
  )
  const round = (mm: number) => Math.round(mm * 1000) / 1000
  const [x, y] = middleOf(region)
  const [u, v] = middleOf(whole)
  const by: Vec2 = [round(x - u), round(y - v)]
  const move = (b: Box2): Box2 => boxOf(b.min[0] + by[0], b.min[1] + by[1], b.max[0] + by[0], b.max[1] + by[1])
  const moved = all.map(move)
  if (moved.some((b) => !inside(b, field) || fixed.some((f) => overlap(b, f)))) return { grid, pictorial }
  return { grid: movedGrid(grid, by, move), pictorial: { ...pictorial, box: move(pictorial.box) } }
}

function movedGrid(grid: GridPlacement, by: Vec2, move: (b: Box2) => Box2): GridPlacement {
  const all = (boxes: ReadonlyMap<string, Box2>) => new Map([...boxes].map(([id, b]) => [id, move(b)]))
  return {
    ...grid,
    origins: new Map([...grid.origins].map(([id, [x, y]]) => [id, [x + by[0], y + by[1]]])),
    outlines: all(grid.outlines),
    rooms: all(grid.rooms),
    extent: move(grid.extent),
  }
}

/** Upper edge of what stands at the bottom beside the views. */
function frameTitleTop(obstacles: readonly Box2[], field: Box2, grid: GridPlacement): number {
  const right = obstacles.filter((o) => o.min[0] >= grid.extent.max[0] - CLEAR || o.max[0] >= field.max[0])
  return Math.max(field.min[1], ...right.filter((o) => o.min[1] <= field.min[1]).map((o) => o.max[1]))
}

/** The middle of the grid's free corner, or the middle of the space beside the views. */
function pictorialWishes(cells: readonly Cell[], grid: GridPlacement, attempt: Attempt): Vec2[] {
  const outline = (c: Cell) => middleOf(grid.outlines.get(c.view.id)!)
  const corners: Vec2[] = []
  for (const column of new Set(cells.map((c) => c.column))) {
    for (const row of new Set(cells.map((c) => c.row))) {
      if (cells.some((c) => c.column === column && c.row === row)) continue
      corners.push([outline(cells.find((c) => c.column === column)!)[0], outline(cells.find((c) => c.row === row)!)[1]])
    }
  }
  // Upper right first: there it is out of the way of the title block.
  corners.sort((a, b) => b[1] - a[1] || b[0] - a[0])
  const level = middleOf(grid.outlines.get(cells[0]!.view.id)!)[1]
  return corners.length > 0 ? corners.slice(0, 1) : [[(grid.extent.max[0] + attempt.region.max[0]) / 2, level]]
}

/**
 * Beside the title block where there is the width for it, or above it; long notes beside it in several columns. None
 * where they would leave the frame: the sheet is too small for them.
 */
function placeNotes(request: Request, frame: Box2, title: Box2): Composition['notes'][] {
  const beside = title.min[0] - frame.min[0] - 2 * CLEAR - 2
  const at = (left: number, bottom: number, width: number, columns = 1): Composition['notes'][] => {
    const block = request.notes(width, columns)
    if (!block) return []
    const box = boxOf(left, bottom, left + block.width, bottom + block.height)
    const stays = box.max[1] <= frame.max[1] - CLEAR && (columns === 1 || block.width <= beside)
    return stays ? [{ box, block }] : []
  }
  if (!request.notes(MOST_NOTES_WIDTH, 1)) return [undefined]
  const above = at(title.min[0] + CLEAR, title.max[1] + CLEAR + 1, widthOf(title) - 2 * CLEAR)
  if (beside < LEAST_NOTES_WIDTH) return above
  const corner = (columns: number) =>
    at(frame.min[0] + CLEAR + 1, frame.min[1] + CLEAR + 1, Math.min(beside, MOST_NOTES_WIDTH), columns)
  const single = [...corner(1), ...above]
  return single.length > 0 ? single : [2, 3, 4].flatMap(corner).slice(0, 1)
}

function placeLoose(block: LooseBlock, obstacles: readonly Box2[], field: Box2, title: Box2): LooseSpot | undefined {
  for (const [size, { width, height }] of block.sizes.entries()) {
    const wish: readonly Vec2[] =
      block.what === 'stamp'
        ? stampWishes(title, block.sizes[size]!)
        : block.wish === 'above title block'
          ? [[title.max[0] - CLEAR - width / 2, title.max[1] + CLEAR + height / 2]]
          : [[field.max[0] - width / 2, field.max[1] - height / 2]]
    const box = findSpotNear(width, height, obstacles, field, wish)
    if (box) return { what: block.what, box, size }
  }
  return undefined
}

/** Share of the drawing area taken by the views with their rooms. */
export function fillOf(c: Composition): number {
  const area = (b: Box2) => widthOf(b) * heightOf(b)
  return area(c.grid.extent) / (area(c.frame) - area(c.title))
}
