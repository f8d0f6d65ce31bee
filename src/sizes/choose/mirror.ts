import type { Vec3 } from '../../geometry/vec.ts'
import { dot, scale, sub } from '../../geometry/vec3.ts'
import type { Member } from '../../part/part.ts'
import { withCount } from '../callout/shapes.ts'
import type { Reach, Statement, Stretch } from '../dimension.ts'
import { reached } from '../proof/reach.ts'
import { type Context, type Mooring, mooringOf } from './context.ts'
import type { Draft } from './draft.ts'

interface Mirroring {
  readonly direction: Vec3
  /** Level of the middle along the direction. */
  readonly middle: number
}

/**
 * A mirrored pair is sized once for both sides: `2X .75` from one edge holds from the opposite edge too (repetitive
 * sizes, ASME Y14.5-2018 1.9.5, ISO 129-1, from memory). Undefined: no size of the pair can be said of the other side.
 */
export function withMirrored(
  context: Context,
  drafts: readonly Draft[],
  said: { readonly text: string; readonly between: readonly string[] },
): Draft[] | undefined {
  const direction = directionOf(said.text)
  const [one, other, ...ends] = said.between
  if (!direction || one === undefined || other === undefined) return undefined
  const [a, b] = [mooringOf(context, one, direction), mooringOf(context, other, direction)]
  if (!a || !b || ends.length === 0) return undefined
  // A notch mirrored along its depth has no middle that way: its floors are sized from their own edges.
  const datum = context.data.get(one)
  if (datum?.kind === 'middle' && Math.abs(dot(datum.normal, direction)) < 1e-9)
    return veesInLine(context, drafts, [one, other], datum.normal)
  const mirroring = { direction, middle: (levelOf(a, direction) + levelOf(b, direction)) / 2 }
  const feature = context.part.features.find((f) => f.members.some((m) => owns(m, one)))
  const [own, mate] = [one, other].map((id) => feature?.members.find((m) => owns(m, id)))
  if (!feature || !own || !mate) return undefined
  const at = (member: Member, level: Mooring) => (row: readonly Reach[]) => {
    const ends = row.map(
      (r) => belongs(r, member) || Math.abs(levelOf(r, direction) - levelOf(level, direction)) < NEAR,
    )
    // A width of the member itself says nothing of where it stands.
    return ends.some((e) => e) && !ends.every((e) => e)
  }
  let covered = false
  const result = drafts.map((draft): Draft => {
    const [first, ...more] = draft.states
    const rows = first && draft.feature === feature.id && !draft.reference ? rowsOf(first, direction) : undefined
    if (!rows?.some(at(own, a))) return draft
    if (rows.some(at(mate, b))) {
      covered = true
      return draft
    }
    const others = rows.flatMap((row) => {
      const turned = reflected(context, row, mirroring, { from: own, to: mate })
      return turned ? [turned] : []
    })
    if (others.length < rows.length) return draft
    covered = true
    const all = [...rows, ...others]
    const count = all.reduce((sum, row) => sum + row.length - 1, 0)
    return {
      ...draft,
      callout: withCount(draft.callout, context.writing, count),
      states: [saidOfAll(first!, all, direction), ...more],
    }
  })
  return covered ? result : undefined
}

/**
 * Two vees at opposite edges stand in line, as their common centre line shows; the sides of square notches are in one plane
 * each, which says it already.
 */
function veesInLine(
  context: Context,
  drafts: readonly Draft[],
  pair: readonly [string, string],
  direction: Vec3,
): Draft[] {
  const reaches = pair.map((id) => mooringOf(context, id, direction))
  const [a, b] = reaches
  const notch = context.part.features.find((f) => f.members.some((m) => owns(m, pair[0])))
  const at = drafts.findIndex((d) => d.feature === notch?.id && d.states.some((s) => s.kind === 'equal slopes'))
  if (!a || !b || at < 0) return [...drafts]
  const said: Statement = { kind: 'aligned', direction, reaches: [a, b] }
  return drafts.map((d, i) => (i === at ? { ...d, states: [...d.states, said] } : d))
}

const NEAR = 1e-5

const owns = (member: Member, id: string): boolean =>
  member.id === id || member.axes.includes(id) || id.startsWith(`${member.id} `)

const belongs = (reach: Reach, member: Member): boolean =>
  reach.name.startsWith(`${member.id} `) || (reach.faces ?? []).some((f) => member.faces.includes(f))

/** The places that a distance or a pitch along the direction joins, row by row. */
function rowsOf(said: Statement, direction: Vec3): readonly (readonly Reach[])[] | undefined {
  if (said.kind !== 'distance' && said.kind !== 'pitch') return undefined
  if (Math.abs(dot(said.direction, direction)) < 1 - 1e-9) return undefined
  if (said.kind === 'pitch') return [said.members, ...(said.also ?? [])]
  return [said, ...(said.also ?? [])].map(({ from, to }) => [from, to])
}

function saidOfAll(first: Statement, rows: readonly (readonly Reach[])[], direction: Vec3): Statement {
  const [own, ...also] = rows
  if (first.kind === 'pitch') return { ...first, members: own!, also }
  const stretch = ([from, to]: readonly Reach[]): Stretch => {
    const backward = levelOf(to!, direction) < levelOf(from!, direction)
    return { direction: backward ? scale(direction, -1) : direction, from: from!, to: to! }
  }
  return { kind: 'distance', ...stretch(own!), also: also.map(stretch) }
}

const levelOf = (r: Reach, direction: Vec3): number =>
  r.middle ? (dot(r.middle[0], direction) + dot(r.middle[1], direction)) / 2 : dot(r.at, direction)

/** The same row on the other side of the middle, where something stands at each of its places. */
function reflected(
  context: Context,
  row: readonly Reach[],
  { direction, middle }: Mirroring,
  pair: { readonly from: Member; readonly to: Member },
): readonly Reach[] | undefined {
  const over = (p: Vec3): Vec3 => sub(p, scale(direction, 2 * (dot(p, direction) - middle)))
  const turned = row.map(
    (r): Reach => ({
      at: over(r.at),
      name: `${r.name}, mirrored`,
      ...(r.middle ? { middle: [over(r.middle[0]), over(r.middle[1])] as const } : {}),
      ...(belongs(r, pair.from) ? { faces: pair.to.faces } : {}),
    }),
  )
  return turned.every((r) => reached(context.model, r, direction)) ? turned : undefined
}

function directionOf(text: string): Vec3 | undefined {
  const k = ['left-right', 'front-rear', 'up-down'].findIndex((word) => text.includes(word))
  return k < 0 ? undefined : [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]
}
