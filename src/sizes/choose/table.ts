import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { PartFeature } from '../../part/part.ts'
import { computedText } from '../callout/numbers.ts'
import { plainText } from '../callout/plain-text.ts'
import { fullRoundCallout } from '../callout/shapes.ts'
import type { HoleTable, Reach, Statement } from '../dimension.ts'
import { exactFrom } from '../geometric/exact-from.ts'
import { axisIndex } from '../proof/elements.ts'
import { reached } from '../proof/reach.ts'
import { isBore } from './bore.ts'
import { type Context, mooringOf } from './context.ts'
import type { Draft } from './draft.ts'
import { featureNamed, leftOut, schemeFeatures, unknownName } from './scheme.ts'
import type { Sight } from './sight.ts'
import { isNoted } from './slot.ts'
import { TableLetters } from './table-letters.ts'

/** Holes located by more separate pairs of numbers than this go into a table (common practice, no source). */
const MANY = 12

export interface Tabled {
  readonly tables: readonly HoleTable[]
  /** Sizes that still stand at the views. */
  readonly drafts: readonly Draft[]
}

/** Features of one face that one table gives. */
export interface TableSet {
  readonly features: readonly PartFeature[]
  readonly sight: Sight
  /** Outer faces that the two directions count from. */
  readonly edges: readonly [Reach, Reach]
  /** Whether each counts to the right or up, or back. */
  readonly ways: readonly [1 | -1, 1 | -1]
}

/**
 * Which features go into tables: those asked for, or the holes of a face that has many each located by itself. Holes and
 * slots sized by one note do; a bolt circle stays, for its coordinates would be rounded, and so does a bore. A feature or
 * part with another scheme asked for keeps to that. What was asked for and cannot is said.
 */
export function tableSets(context: Context): TableSet[] {
  const { schemes } = context.part.brief
  const asked = schemes.filter((s) => s.scheme === 'hole table')
  const otherwise = schemes.some((s) => s.scheme !== 'hole table' && !s.of)
  const ownScheme = new Set(schemeFeatures(context))
  const named = new Set<string>()
  for (const request of asked) {
    const feature = request.of && featureNamed(context, request.of.text)
    if (feature) named.add(feature)
    else if (request.of) context.marks.push(unknownName(context, request))
  }
  const whole = asked.some((a) => !a.of)
  const isAsked = (f: PartFeature) => whole || named.has(f.id)
  const span = asked[0]?.span
  const remark = (text: string) => context.marks.push(leftOut(text, span))
  const faces = new Map<string, PartFeature[]>()
  for (const feature of context.part.features) {
    const { kind } = feature.feature ?? {}
    if (ownScheme.has(feature.id) && !named.has(feature.id)) continue
    if (kind === 'hole' && feature.pattern?.kind !== 'bolt circle') {
      if (!named.has(feature.id) && isBore(context, feature, whole)) continue
      const key = feature.outward.map((c) => c.toFixed(6)).join()
      faces.set(key, [...(faces.get(key) ?? []), feature])
      continue
    }
    if (!isAsked(feature)) continue
    if (feature.pattern?.kind === 'bolt circle')
      remark(`${feature.id} keeps its bolt circle: coordinates in a hole table would be rounded.`)
    else if (feature.feature?.kind === 'slot' && isNoted(feature.feature)) {
      const key = feature.outward.map((c) => c.toFixed(6)).join()
      faces.set(key, [...(faces.get(key) ?? []), feature])
    } else if (named.has(feature.id))
      remark(
        `${feature.id} stands at the view: a hole table holds holes, and slots closed at both ends by their overall length.`,
      )
  }
  return [...faces.values()].flatMap((set): TableSet[] => {
    const separate = set.reduce(
      (n, f) => n + (f.pattern?.kind === 'points' || f.pattern?.kind === 'single' ? f.members.length : 1),
      0,
    )
    const listed = whole || (separate > MANY && !otherwise) ? set : set.filter((f) => named.has(f.id))
    const [first] = listed
    if (!first) return []
    let features = listed
    const sight = context.sights.find((s) => dot(s.view.frame.toViewer, first.outward) > 1 - 1e-9)
    if (sight) {
      const { right, up } = sight.view.frame
      const ways = [wayOf(context, features, right), wayOf(context, features, up)] as const
      const edges = [edgeAt(context, right, sight, ways[0]), edgeAt(context, up, sight, ways[1])] as const
      if (edges[0] && edges[1]) {
        const both = [edges[0], edges[1]] as const
        features = listed.filter((f) => {
          const letters = exactElsewhere(context, f, [right, up], both)
          if (letters !== undefined && isAsked(f))
            remark(
              `${f.id} stands at the view: its frame counts from datum ${letters}, and the hole table would count from the edges of the ${sight.view.id} view.`,
            )
          return letters === undefined
        })
        return features.length > 0 ? [{ features, sight, edges: both, ways }] : []
      }
    }
    // A bore on the part's axis needs no coordinates.
    const isPlaced = (f: PartFeature) =>
      context.part.chosen.some((c) => c.group === f.id && (c.kind === 'distance' || c.kind === 'pitch'))
    const misses = features.filter((f) => named.has(f.id) || (isAsked(f) && isPlaced(f)))
    if (misses.length > 0) {
      const names = misses.map((f) => f.id).join(', ')
      remark(
        sight
          ? `${names}: sizes stand at the view, for a hole table counts from straight edges and this face has none both ways.`
          : `${names}: sizes stand at the views, for no view shows the face of the hole table.`,
      )
    }
    return []
  })
}

/** The letters of the datums that a frame places the feature from, where the table counts from other faces. */
function exactElsewhere(
  { part }: Context,
  { id }: PartFeature,
  ways: readonly Vec3[],
  edges: readonly Reach[],
): string | undefined {
  return ways
    .map((direction, j) => {
      const k = axisIndex(direction)
      const from = k === undefined ? undefined : exactFrom(part, id, k)
      const at = edges[j]!.at[k ?? 0]
      return from && !from.levels.some((l) => Math.abs(l - at) < 1e-5) ? from.letters : undefined
    })
    .find((letters) => letters !== undefined)
}

/** The tables, and the sizes that they do not hold. Tags begin with the brief's labels, else with letters that run on from one table to the next. */
export function withTables(context: Context, sets: readonly TableSet[], drafts: readonly Draft[]): Tabled {
  const tables: HoleTable[] = []
  const letters = new TableLetters(context.part.features.flatMap((f) => f.feature?.label?.text ?? []))
  let kept = [...drafts]
  for (const set of sets) {
    const made = tableOf(context, set, kept, letters)
    tables.push(made.table)
    kept = kept.filter((d) => !made.covered.has(d.id))
  }
  return { tables, drafts: kept }
}

function tableOf(
  context: Context,
  { features, sight, edges, ways }: TableSet,
  drafts: readonly Draft[],
  letters: TableLetters,
): { table: HoleTable; covered: Set<string> } {
  const { min, max } = sight.view.box
  const origin: Vec2 = [ways[0] > 0 ? min[0] : max[0], ways[1] > 0 ? min[1] : max[1]]
  const { right, up } = sight.view.frame
  const covered = new Set<string>()
  const stated = new Set<string>()
  const rows: HoleTable['rows'][number][] = []
  const counts = new Map<string, number>()
  for (const feature of features) {
    const note = drafts.find((d) => d.id === `${feature.id}/note`)
    if (!note) continue
    for (const d of drafts) if (d.feature === feature.id) covered.add(d.id)
    const ends = fullRoundCallout(context.writing, 2 * feature.members.length).lines[0]?.[0]
    const size = {
      lines: note.callout.lines.map((line, i) => {
        if (i === 0) return withoutCount(line)
        return line[0] === ends ? fullRoundCallout(context.writing, 2).lines[0]! : line
      }),
    }
    // A letter without a label is one size on one face.
    const letter = letters.of(feature.feature?.label?.text, `${sight.view.id} ${plainText(size)}`)
    feature.members.forEach((member, i) => {
      const n = (counts.get(letter) ?? 0) + 1
      counts.set(letter, n)
      const at = sight.flat(member.point)
      const states: Statement[] = i === 0 ? note.states.filter((s) => s.kind !== 'equally spaced') : []
      ;[right, up].forEach((direction, j) => {
        if (isCentred(note, direction)) return
        const { middle } = mooringOf(context, `${member.id} axis`, direction) ?? {}
        // its own faces, and not those of what else stands level with it
        const to: Reach = { at: member.point, name: member.id, faces: member.faces, ...(middle ? { middle } : {}) }
        const place = reached(context.model, to, direction)
        const base = reached(context.model, edges[j]!, direction)
        // A hole in line with an earlier one repeats its coordinate in the table; it states it once.
        if (!place || (place.bar !== undefined && place.bar === base?.bar)) return
        const line = String(place.bar ?? `${feature.id} ${j} ${place.of(context.model.values).toFixed(4)}`)
        if (stated.has(line)) return
        stated.add(line)
        states.push({ kind: 'distance', direction, from: edges[j]!, to })
      })
      const place = (j: 0 | 1): string => {
        const direction = j === 0 ? right : up
        const digits =
          typed(drafts, direction, edges[j]!, member.point) ??
          coordinate(context, feature, direction, ways[j] * (at[j] - origin[j]))
        // The word in the note locates it; the digits are for reading only.
        return isCentred(note, direction) ? `(${digits})` : digits
      }
      rows.push({
        tag: `${letter}${n}`,
        x: place(0),
        y: place(1),
        size,
        at,
        feature: feature.id,
        states,
        ...(note.span ? { span: note.span } : {}),
      })
    })
  }
  const back = ways.some((w) => w < 0)
  return { table: { view: sight.view.id, origin, ...(back ? { ways } : {}), rows }, covered }
}

const isCentred = (note: Draft, direction: Vec3): boolean =>
  note.states.some((s) => s.kind === 'centred' && Math.abs(dot(s.direction, direction)) > 1 - 1e-9)

/** The coordinate as the brief gives it, where it counts from the same edge. */
function typed(drafts: readonly Draft[], direction: Vec3, edge: Reach, to: Vec3): string | undefined {
  const level = (p: Vec3) => dot(p, direction)
  const near = (a: number, b: number) => Math.abs(a - b) < 1e-5
  const found = drafts.find(({ states, reference }) => {
    const [said, more] = states
    if (reference || more || said?.kind !== 'distance' || said.also) return false
    if (Math.abs(dot(said.direction, direction)) < 1 - 1e-9) return false
    const ends = [level(said.from.at), level(said.to.at)]
    return ends.some((e) => near(e, level(edge.at))) && ends.some((e) => near(e, level(to)))
  })
  return found && plainText(found.callout)
}

/** A sum or difference of the brief's sizes, with as many decimals as the finest that places the feature that way. */
function coordinate({ part, writing }: Context, feature: PartFeature, direction: Vec3, mm: number): string {
  const decimals = part.chosen.flatMap((c) =>
    c.group === feature.id &&
    (c.kind === 'distance' || c.kind === 'pitch') &&
    Math.abs(dot(c.direction, direction)) > 1 - 1e-9
      ? [c.size.decimals]
      : [],
  )
  const least = computedText(mm, writing)
  const needed = least.split(writing.sign)[1]?.length ?? 0
  const finest = Math.max(0, ...decimals)
  return finest > needed ? computedText(mm, writing, finest) : least
}

function withoutCount(line: Draft['callout']['lines'][number]): Draft['callout']['lines'][number] {
  const [first, ...rest] = line
  return typeof first === 'string' ? [first.replace(/^\d+[X×] /, ''), ...rest] : line
}

/** 1 where the table counts along the direction from its low side, -1 where most of the brief's sizes count from the other. */
function wayOf(context: Context, features: readonly PartFeature[], direction: Vec3): 1 | -1 {
  const ids = new Set(features.map((f) => f.id))
  const { min, max } = context.part.body.box
  const ends = [dot(min, direction), dot(max, direction)]
  const from = context.part.chosen.flatMap((c) => {
    if (c.kind !== 'distance' || !ids.has(c.group ?? '') || Math.abs(dot(c.direction, direction)) < 1 - 1e-9) return []
    const at = mooringOf(context, c.from, direction)?.at
    return at ? [dot(at, direction)] : []
  })
  const count = (end: number) => from.filter((at) => Math.abs(at - end) < 1e-5).length
  return count(Math.max(...ends)) > count(Math.min(...ends)) ? -1 : 1
}

/** The part's outer plane from which the table counts along a direction. */
function edgeAt(context: Context, direction: Vec3, sight: Sight, way: 1 | -1): Reach | undefined {
  const k = axisIndex(direction)
  if (k === undefined) return undefined
  const { min, max } = context.part.body.box
  const at = direction[k] * way > 0 ? min : max
  const plane = context.model.elements.find(
    (e) => e.surface.kind === 'plane' && e.along === k && Math.abs(e.surface.axes.origin[k] - at[k]) < 1e-5,
  )
  return plane ? { at, name: `edge of the ${sight.view.id} view` } : undefined
}
