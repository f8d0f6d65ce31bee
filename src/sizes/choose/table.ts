import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { PartFeature } from '../../part/part.ts'
import { computedText } from '../callout/numbers.ts'
import { plainText } from '../callout/plain-text.ts'
import type { HoleTable, Reach, Statement } from '../dimension.ts'
import { axisIndex } from '../proof/elements.ts'
import { reached } from '../proof/reach.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'
import { featureNamed } from './scheme.ts'
import type { Sight } from './sight.ts'

/** Holes located by more separate pairs of numbers than this go into a table (common practice, no source). */
const MANY = 12

export interface Tabled {
  readonly tables: readonly HoleTable[]
  /** Sizes that still stand at the views. */
  readonly drafts: readonly Draft[]
}

/** Hole tables where asked for, or where one face has many holes each located by itself. */
export function withTables(context: Context, drafts: readonly Draft[]): Tabled {
  const asked = context.part.brief.schemes.filter((s) => s.scheme === 'hole table')
  const holes = context.part.features.filter((f) => f.feature?.kind === 'hole')
  const faces = new Map<string, PartFeature[]>()
  for (const hole of holes) {
    const key = hole.outward.map((c) => c.toFixed(6)).join()
    faces.set(key, [...(faces.get(key) ?? []), hole])
  }
  const tables: HoleTable[] = []
  let kept = [...drafts]
  for (const set of faces.values()) {
    const separate = set.reduce(
      (n, f) => n + (f.pattern?.kind === 'points' || f.pattern?.kind === 'single' ? f.members.length : 1),
      0,
    )
    const named = asked.filter((a) => a.of).flatMap((a) => featureNamed(context, a.of!.text) ?? [])
    const whole = asked.some((a) => !a.of) || separate > MANY
    const chosen = whole ? set : set.filter((f) => named.includes(f.id))
    if (chosen.length === 0) continue
    const made = tableOf(context, chosen, kept)
    if (!made) continue
    tables.push(made.table)
    kept = kept.filter((d) => !made.covered.has(d.id))
  }
  return { tables, drafts: kept }
}

function tableOf(
  context: Context,
  set: readonly PartFeature[],
  drafts: readonly Draft[],
): { table: HoleTable; covered: Set<string> } | undefined {
  const { outward } = set[0]!
  const sight = context.sights.find((s) => dot(s.view.frame.toViewer, outward) > 1 - 1e-9)
  if (!sight) return undefined
  const origin: Vec2 = sight.view.box.min
  const { right, up } = sight.view.frame
  const edges = [edgeAt(context, right, sight), edgeAt(context, up, sight)] as const
  if (!edges[0] || !edges[1]) return undefined
  const covered = new Set<string>()
  const stated = new Set<number>()
  const rows: HoleTable['rows'][number][] = []
  const letters = new Map<string, string>()
  const counts = new Map<string, number>()
  for (const feature of set) {
    const note = drafts.find((d) => d.id === `${feature.id}/note`)
    if (!note) continue
    for (const d of drafts) if (d.feature === feature.id) covered.add(d.id)
    const size = { lines: note.callout.lines.map((line, i) => (i === 0 ? withoutCount(line) : line)) }
    const key = plainText(size)
    if (!letters.has(key)) letters.set(key, letterOf(letters.size))
    const letter = letters.get(key)!
    feature.members.forEach((member, i) => {
      const n = (counts.get(letter) ?? 0) + 1
      counts.set(letter, n)
      const at = sight.flat(member.point)
      const states: Statement[] = i === 0 ? note.states.filter((s) => s.kind !== 'equally spaced') : []
      ;[right, up].forEach((direction, j) => {
        if (isCentred(note, direction)) return
        const to: Reach = { at: member.point, name: member.id }
        const bar = reached(context.model, to, direction)?.bar
        // A hole in line with an earlier one repeats its coordinate in the table; it states it once.
        if (bar === undefined || stated.has(bar)) return
        const from = edges[j]!
        const base = reached(context.model, from, direction)?.bar
        if (base === bar) return
        stated.add(bar)
        states.push({ kind: 'distance', direction, from, to })
      })
      const place = (j: 0 | 1): string => {
        const direction = j === 0 ? right : up
        const digits =
          typed(drafts, direction, edges[j]!, member.point) ?? computedText(at[j] - origin[j], context.writing)
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
  return { table: { view: sight.view.id, origin, rows }, covered }
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

/** A, B … Z without I, O and Q, which read as figures (common practice), then AA … */
function letterOf(n: number): string {
  const letters = 'ABCDEFGHJKLMNPRSTUVWXYZ'
  const own = letters[n % letters.length]!
  return n < letters.length ? own : letterOf(Math.floor(n / letters.length) - 1) + own
}

function withoutCount(line: Draft['callout']['lines'][number]): Draft['callout']['lines'][number] {
  const [first, ...rest] = line
  return typeof first === 'string' ? [first.replace(/^\d+[X×] /, ''), ...rest] : line
}

/** The part's outer plane on the low side of a direction, from which the table counts. */
function edgeAt(context: Context, direction: Vec3, sight: Sight): Reach | undefined {
  const k = axisIndex(direction)
  if (k === undefined) return undefined
  const { min, max } = context.part.body.box
  const at = direction[k] > 0 ? min : max
  const plane = context.model.elements.find(
    (e) => e.surface.kind === 'plane' && e.along === k && Math.abs(e.surface.axes.origin[k] - at[k]) < 1e-5,
  )
  return plane ? { at, name: `edge of the ${sight.view.id} view` } : undefined
}
