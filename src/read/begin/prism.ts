import type { Side } from '../../brief/brief.ts'
import type { Body } from '../../kernel/body.ts'
import { endSides, faceAxes } from '../../part/sides.ts'
import { SAME } from '../recognise/borders.ts'
import type { Recognised } from '../recognise/recognise.ts'
import { angleStatement } from './angle.ts'
import { cutOff } from './cut-off.ts'
import { type Outline, type OutlineSide, turnOf } from './outline.ts'
import { statement, times, type Wording } from './wording.ts'

/** The side a flat or outlined stock shows: top, front or right. */
const SHOWN: readonly [Side, Side, Side] = ['right', 'front', 'top']

/** A stock in a brief's words, with the names that its sides go by. */
export interface StockWords {
  readonly lines: readonly string[]
  /** Statements about what the features leave: edges of a bore. */
  readonly after?: readonly string[]
  /** Faces that the statements account for. */
  readonly faces: ReadonlySet<number>
  /** The name of a face in the brief; undefined for one that has none. */
  readonly nameOf: (face: number) => string | undefined
  /** A better name for the edge between two sides; undefined where there is none. */
  readonly cornerOf?: (sides: readonly string[]) => string | undefined
}

/** `block`, `plate` with its corners' rounds, or `outline`. */
export function prismWords(body: Body, found: Recognised, outline: Outline, words: Wording): StockWords {
  const { axis } = outline
  const extent = ([0, 1, 2] as const).map((k) => body.box.max[k] - body.box.min[k])
  const corners = rectangleCorners(body, outline)
  const nameOf = namesOf(body, outline)
  const block = statement('block', extent.map((mm) => words.length(mm)).join(' × '))
  const angle = angleStatement(body, outline, words)
  if (angle) return { lines: [angle.line], faces: outline.faces, nameOf, cornerOf: angle.cornerOf }
  const off = corners ? undefined : cutOff(body, outline, words)
  if (off) return { lines: [block, ...off], faces: outline.faces, nameOf }
  if (!corners) return { lines: [outlineStatement(outline, extent[axis]!, words)], faces: outline.faces, nameOf }
  const { across, up } = faceAxes(axis)
  const flat = found.flat === axis
  const face = axis === 2 ? '' : `, face ${SHOWN[axis]}`
  const stock = flat
    ? statement('plate', `${[across, up, axis].map((k) => words.length(extent[k]!)).join(' × ')}${face}`)
    : block
  return { lines: [stock, ...cornerStatements(body, outline, corners, words)], faces: outline.faces, nameOf }
}

type Arc = Extract<OutlineSide, { kind: 'arc' }>

/** The rounded corners of an outline that is a rectangle but for them; undefined for any other. */
function rectangleCorners(body: Body, { axis, sides }: Outline): readonly Arc[] | undefined {
  const { across, up } = faceAxes(axis)
  const size = [across, up].map((k) => body.box.max[k] - body.box.min[k])
  const lines = sides.filter((s) => s.kind === 'line')
  const arcs = sides.filter((s): s is Arc => s.kind === 'arc')
  const onBox = lines.every((s) =>
    ([0, 1] as const).some((k) =>
      [0, size[k]!].some((at) => Math.abs(s.from[k] - at) < SAME && Math.abs(s.to[k] - at) < SAME),
    ),
  )
  if (lines.length !== 4 || !onBox || arcs.length > 4) return undefined
  const quarter = (a: Arc) =>
    [0, 1].every((k) => Math.abs(Math.abs(a.to[k as 0 | 1] - a.from[k as 0 | 1]) - a.radius) < SAME)
  const outside = arcs.every((a) => quarter(a) && a.turn === turnOf(sides))
  return outside ? arcs : undefined
}

function cornerStatements(body: Body, { axis }: Outline, arcs: readonly Arc[], words: Wording): string[] {
  const { across, up } = faceAxes(axis)
  const size = [across, up].map((k) => body.box.max[k] - body.box.min[k])
  const sets = new Map<string, Arc[]>()
  for (const arc of arcs) {
    const key = words.length(arc.radius)
    sets.set(key, [...(sets.get(key) ?? []), arc])
  }
  return [...sets.values()].map((set) => {
    const names = set.map(({ from, to }) => {
      const [u, v] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
      const side = (k: 0 | 1 | 2, at: number, whole: number) => endSides[k]![at * 2 < whole ? 0 : 1]
      return `${side(up, v, size[1]!)} ${side(across, u, size[0]!)} corner`
    })
    const where = set.length === 4 ? 'corners' : names.join(' and ')
    return statement('round', `${where}: ${times(set.length)}R${words.length(set[0]!.radius)}`)
  })
}

function outlineStatement({ axis, sides }: Outline, thickness: number, words: Wording): string {
  const ordered = fromLowCorner(sides)
  const start = ordered[0]!.from
  const moves = ordered.map((side, i): string => {
    const [dx, dy] = [side.to[0] - side.from[0], side.to[1] - side.from[1]]
    const [right, up] = [dx > 0 ? 'right' : 'left', dy > 0 ? 'up' : 'down']
    const way = (d: number) => words.length(Math.abs(d))
    if (side.kind === 'arc') {
      const to = `${signed(side.to[0] - start[0], words)} across, ${signed(side.to[1] - start[1], words)} up`
      return `arc R ${words.length(side.radius)} to ${to}, turning ${side.turn}`
    }
    if (i === ordered.length - 1) return 'close'
    if (Math.abs(dy) < SAME) return `${right} ${way(dx)}`
    if (Math.abs(dx) < SAME) return `${up} ${way(dy)}`
    return `slope ${right} ${way(dx)} ${up} ${way(dy)}`
  })
  if (moves.at(-1) !== 'close') moves.push('close')
  return statement('outline', `${words.length(thickness)} thick, face ${SHOWN[axis]}`, ...inLines(moves))
}

const signed = (mm: number, words: Wording): string => (mm < -SAME ? '-' : '') + words.length(Math.abs(mm))

/** Begins at the corner nearest the low corner from which a straight side leads, as one would walk it. */
function fromLowCorner(sides: readonly OutlineSide[]): OutlineSide[] {
  const rank = sides.map((s, i) => ({ i, at: s.from[0] + 1.001 * s.from[1] + (s.kind === 'arc' ? 1e6 : 0) }))
  const first = rank.reduce((a, b) => (b.at < a.at - SAME ? b : a)).i
  return [...sides.slice(first), ...sides.slice(0, first)]
}

/** Moves on lines of a readable length. */
function inLines(moves: readonly string[]): string[] {
  const lines: string[] = []
  for (const move of moves) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + move.length < 90) lines[lines.length - 1] = `${last}; ${move}`
    else lines.push(move)
  }
  return lines
}

/** Sides of the box by their own names, the others numbered as the brief numbers them. */
function namesOf(body: Body, { axis, sides }: Outline): (face: number) => string | undefined {
  const names = new Map<number, string>()
  const { across, up } = faceAxes(axis)
  let number = 0
  for (const side of fromLowCorner(sides)) {
    let name: string | undefined
    if (side.kind === 'line') {
      for (const [level, space] of [
        [0, across],
        [1, up],
      ] as const) {
        if (Math.abs(side.from[level] - side.to[level]) > SAME) continue
        const [low, high] = endSides[space]!
        if (Math.abs(side.from[level]) < SAME) name = low
        else if (Math.abs(side.from[level] - (body.box.max[space] - body.box.min[space])) < SAME) name = high
      }
    }
    name ??= `side ${++number}`
    for (const face of side.faces) names.set(face, name)
  }
  return (face) => {
    const known = names.get(face)
    if (known !== undefined) return known
    const f = body.faces[face]!
    if (f.surface.kind !== 'plane') return undefined
    return endSides[axis]!.find((_, i) => {
      const at = (i === 0 ? body.box.min : body.box.max)[axis]
      return f.surface.kind === 'plane' && Math.abs(f.surface.axes.origin[axis] - at) < SAME
    })
  }
}
