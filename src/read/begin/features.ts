import type { Side } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { Body } from '../../kernel/body.ts'
import { axisLie, oppositeOf, outwardOf, sideOfDirection } from '../../part/sides.ts'
import type { Group, Groups } from '../part/round-features.ts'
import { axisAlong, offLine, outwardOfPlane, SAME } from '../recognise/borders.ts'
import type { FoundHole } from '../recognise/holes.ts'
import type { Recognised } from '../recognise/recognise.ts'
import type { FoundSlot } from '../recognise/slots.ts'
import { type Ground, placeLine } from './places.ts'
import type { StockWords } from './prism.ts'
import { statement, times, type Wording } from './wording.ts'

/** Statements of the features worked into a stock, and the faces that they account for. */
export interface FeatureWords {
  readonly lines: readonly string[]
  readonly faces: ReadonlySet<number>
}

/** Holes, slots, keyseats, and what breaks the edges of a flat stock. `openSlots`: those that the outline leaves to be cut. */
export function featureWords(
  body: Body,
  found: Recognised,
  groups: Groups,
  stock: StockWords,
  words: Wording,
  openSlots: ReadonlySet<number>,
): FeatureWords {
  const lines: string[] = []
  const faces = new Set<number>()
  const labels = labelsOf(groups)
  const { axis } = found
  const ground: Ground = {
    body,
    words,
    centreName: (centre, outward) => {
      const known = [...groups.bores, ...groups.holes].find(
        (g) =>
          labels.has(g.id) &&
          Math.abs(dot(g.members[0]!.of.outward, outward)) > 1 - 1e-9 &&
          offLine(centre, g.members[0]!.of.line) < SAME,
      )
      return known && `hole ${labels.get(known.id)}`
    },
    onAxis: (at, outward) =>
      axis !== undefined && Math.abs(dot(axis.direction, outward)) > 1 - 1e-9 && offLine(at, axis) < SAME,
  }
  const put = (line: string, of: readonly number[]) => {
    lines.push(line)
    for (const f of of) faces.add(f)
  }
  for (const group of [...groups.bores, ...groups.holes]) {
    const { of } = group.members[0]!
    if (of.faces.every((f) => stock.faces.has(f))) continue
    const bored = axis !== undefined && ground.onAxis(of.mouth, of.outward)
    const plain = of.depth === undefined && !of.counterbore && !of.spotface && !of.countersink
    const entry = entryOf(found, body, stock, { outward: of.outward, faces: of.faces, plain }, bored)
    const line = entry && holeStatement(ground, group, labels.get(group.id), entry)
    if (line)
      put(
        line,
        group.members.flatMap((m) => m.of.faces),
      )
  }
  for (const group of groups.slots) {
    const own = group.members.filter((m) => !m.of.open || openSlots.has(found.slots.indexOf(m.of)))
    if (own.length < group.members.length) continue
    const { of } = group.members[0]!
    const plain = of.depth === undefined
    const entry = entryOf(found, body, stock, { outward: of.outward, faces: of.faces, plain }, false)
    const line = entry && slotStatement(ground, group, entry)
    if (line)
      put(
        line,
        group.members.flatMap((m) => m.of.faces),
      )
  }
  for (const { members } of groups.keyseats)
    for (const { of } of members) {
      const line = keyseatStatement(body, found, of, stock, words)
      if (line) put(line, of.faces)
    }
  return { lines, faces }
}

/** Single holes get a label where a bolt circle may go about them. */
function labelsOf(groups: Groups): ReadonlyMap<string, string> {
  const circles = [...groups.holes].filter((g) => g.pattern.kind === 'bolt circle')
  const singles = [...groups.bores, ...groups.holes].filter((g) => g.members.length === 1)
  const wanted = singles.filter((s) =>
    circles.some((c) => c.pattern.kind === 'bolt circle' && offLine(c.pattern.centre, s.members[0]!.of.line) < SAME),
  )
  return new Map(wanted.slice(0, LETTERS.length).map((g, i) => [g.id, LETTERS[i]!]))
}

const LETTERS = [...'ABCDEFGHJKLMNPRSTUVWY']

interface Entry {
  readonly side: Side
  readonly text: string
}

/**
 * The face that a feature is worked from: the side of the part where it opens, or of two openings the one that has a
 * side's own name.
 */
function entryOf(found: Recognised, body: Body, stock: StockWords, of: Opening, turned: boolean): Entry | undefined {
  if (axisAlong(of.outward) === undefined) return undefined
  const side = sideOfDirection(of.outward)
  if (turned) return { side, text: `${side} face` }
  const opens = (at: Side) =>
    of.faces
      .flatMap((f) => found.beside.get(f) ?? [])
      .map((n) => body.faces[n.face]!)
      .some((f) => {
        const normal = outwardOfPlane(f)
        return (
          normal !== undefined &&
          axisAlong(normal) !== undefined &&
          sideOfDirection(normal) === at &&
          stock.nameOf(f.id) === at
        )
      })
  if (of.plain && !opens(side) && opens(oppositeOf[side])) return { side: oppositeOf[side], text: oppositeOf[side] }
  return { side, text: side }
}

interface Opening {
  readonly outward: Vec3
  readonly faces: readonly number[]
  /** Alike from both sides. */
  readonly plain: boolean
}

function holeStatement(
  ground: Ground,
  { members, pattern }: Group<FoundHole>,
  label: string | undefined,
  where: Entry,
): string | undefined {
  const { words } = ground
  const hole = members[0]!.of
  if (hole.others.length > 0) return undefined
  const onAxis = members.length === 1 && ground.onAxis(hole.mouth, hole.outward)
  const plainBore = onAxis && hole.depth === undefined && !hole.counterbore && !hole.spotface
  if (plainBore) return statement(`bore${label ? ` ${label}` : ''}`, `${where.text}: ${holeCallout(hole, words)}`)
  const keyword = `hole${members.length > 1 ? 's' : ''}${label ? ` ${label}` : ''}`
  const place = placeLine(
    ground,
    where.side,
    members.map((m) => m.of.mouth),
    outwardOf[where.side],
    pattern,
  )
  return statement(keyword, `${where.text}: ${times(members.length)}${holeCallout(hole, words)}`, place)
}

function holeCallout(hole: FoundHole, words: Wording): string {
  const bored = (step: { readonly diameter: number; readonly depth: number }) =>
    `⌀${words.length(step.diameter)} ↧ ${words.length(step.depth)}`
  const { point } = hole
  const parts = [
    `⌀${words.length(hole.diameter)} ${hole.depth === undefined ? 'THRU' : `↧ ${words.length(hole.depth)}`}`,
    ...(point === 180 ? ['flat bottom'] : []),
    ...(point !== undefined && point !== 180 && Math.abs(point - 118) > 1e-6 ? [`point ${words.angle(point)}°`] : []),
    ...(hole.counterbore ? [`⌴ ${bored(hole.counterbore)}`] : []),
    ...(hole.spotface ? [`spotface ${bored(hole.spotface)}`] : []),
    ...(hole.countersink
      ? [`⌵ ⌀${words.length(hole.countersink.diameter)} × ${words.angle(hole.countersink.angle)}°`]
      : []),
  ]
  return parts.join(', ')
}

function slotStatement(ground: Ground, { members, pattern }: Group<FoundSlot>, where: Entry): string | undefined {
  const { words } = ground
  const slot = members[0]!.of
  const k = axisAlong(slot.way)
  if (k === undefined) return undefined
  const size = `${words.length(slot.width)} × ${words.length(slot.length)} overall`
  const depth = slot.depth === undefined ? 'THRU' : `↧ ${words.length(slot.depth)}`
  const way = slot.open ? `open to ${sideOfDirection(slot.way)}` : `long way ${axisLie[k]}`
  const place = placeLine(
    ground,
    where.side,
    members.map((m) => m.of.mouth),
    slot.outward,
    pattern,
    slot.open ? k : undefined,
  )
  const keyword = members.length > 1 ? 'slots' : 'slot'
  return statement(keyword, `${where.text}: ${times(members.length)}${size} ${depth}, ${way}`, place)
}

function keyseatStatement(
  body: Body,
  found: Recognised,
  slot: FoundSlot,
  stock: StockWords,
  words: Wording,
): string | undefined {
  const { axis } = found
  const k = axis && axisAlong(axis.direction)
  if (
    axisAlong(slot.outward) === undefined ||
    k === undefined ||
    slot.depth === undefined ||
    slot.open ||
    axisAlong(slot.way) !== k
  )
    return undefined
  const name = slot.faces
    .flatMap((f) => found.beside.get(f) ?? [])
    .map((n) => stock.nameOf(n.face))
    .find((n) => n !== undefined)
  if (name === undefined) return undefined
  const low = Math.min(...slot.ends.map((e) => e[k])) - slot.width / 2
  const size = `${words.length(slot.width)} wide × ${words.length(slot.depth)} deep × ${words.length(slot.length)} long`
  const [lowSide] = (['left', 'front', 'bottom'] as const).slice(k)
  return statement(
    'keyseat',
    `${name}, ${sideOfDirection(slot.outward)}: ${size}`,
    `${lowSide} end ${words.length(low - body.box.min[k])} from ${lowSide} face`,
  )
}
