import type { Mark } from '../brief/mark.ts'
import type { Span } from '../brief/span.ts'
import type { Part } from '../part/part.ts'
import type { ViewSet } from '../views/view.ts'
import { type Context, contextOf } from './choose/context.ts'
import { derivedDrafts } from './choose/derive.ts'
import { type Draft, directionWords, settle } from './choose/draft.ts'
import { distinctIds, draftsOf } from './choose/drafts.ts'
import { exactApart } from './choose/exact-apart.ts'
import { withFullRounds } from './choose/full-round.ts'
import { withGroovedTapers } from './choose/grooved-taper.ts'
import { withLinks } from './choose/link.ts'
import { onceEach } from './choose/once.ts'
import { outlineDrafts } from './choose/outline.ts'
import { fromOwnSide } from './choose/own-side.ts'
import { withPlaces } from './choose/placed.ts'
import { withWords } from './choose/said.ts'
import { schemeFeatures, withSchemes } from './choose/scheme.ts'
import { sharedSizes } from './choose/shared.ts'
import { sharedPlaces } from './choose/shared-places.ts'
import { shownDrafts } from './choose/shown.ts'
import { tableSets, withTables } from './choose/table.ts'
import { withWays } from './choose/which-way.ts'
import type { Dimension, NotedSize, Proof, SizeSet } from './dimension.ts'
import { annotate } from './geometric/annotate.ts'
import { tableNotes } from './geometric/table-notes.ts'
import { basicMarks } from './marks/basic-marks.ts'
import { sizeMarks } from './marks/size-marks.ts'
import { type NoteStatement, prove } from './proof/prove.ts'
import { toleranceOf } from './tolerance-of.ts'

/**
 * The sizes of the sheet: the brief's own numbers as chosen, each once and in the view that shows its feature true,
 * with callout, tolerance and the proof that they fix the solid exactly once.
 */
export function chooseSizes(part: Part, views: ViewSet): SizeSet {
  const context = contextOf(part, views)
  const noted = thicknessNotes(context)
  const stated = withGroovedTapers(context, fromOwnSide(context, draftsOf(context)))
  const own = withFullRounds(context, sharedSizes(context, stated, 'diameter'))
  const said = withWords(context, own).filter((d) => !noted.some((n) => n.draft === d.id))
  const tabled = tableSets(context)
  const apart = new Set([...tabled.flatMap((t) => t.features.map((f) => f.id)), ...schemeFeatures(context)])
  const shared = withLinks(
    context,
    outlineDrafts(context, sharedPlaces(context, onceEach(context, said, apart), apart)),
  )
  const { tables, drafts: untabled } = withTables(context, tabled, shared)
  const drafts = withWays(context, withSchemes(context, untabled))
  markUnplaced(context, [
    ...own.filter((d) => noted.some((n) => n.draft === d.id)),
    ...shared.filter((d) => !untabled.includes(d)),
  ])
  const rows = tables.flatMap((t) => t.rows.map((row) => row.states ?? []))
  const given = [...drafts, ...rows.map((states, i) => ({ id: `row ${i}`, states }))]
  const derived = derivedDrafts(context, [...given, ...noted])
  const all = distinctIds(byFeature(context, [...drafts, ...derived, ...shownDrafts(context, [...drafts, ...derived])]))
  const settled: Dimension[] = all.flatMap((draft) => settle(context, draft) ?? [])
  const { dimensions, annotations } = annotate(context, exactApart(context, withPlaces(context, all, settled)))
  const proof = prove(part, dimensions, { tables, views, model: context.model, notes: noted })
  const marks = [...sizeMarks(part), ...basicMarks(part, dimensions), ...context.marks, ...proofMarks(proof, part)]
  return {
    dimensions,
    tables,
    ...(annotations.length > 0 ? { annotations } : {}),
    notes: tableNotes(context, tables),
    ...(noted.length > 0 ? { noted: noted.map((n) => n.size) } : {}),
    proof,
    marks,
  }
}

/** Sizes that stand in a note or a table are held to the same rules as those at the views. */
function markUnplaced(context: Context, drafts: readonly Draft[]): void {
  for (const { size, kind } of drafts)
    if (size && !context.basic.has(size)) context.marks.push(...toleranceOf(size, context.header, kind).marks)
}

/** The stock's sizes and those of a scheme for the whole part first, then each feature's own together, in the order worked. */
function byFeature(context: Context, drafts: readonly Draft[]): Draft[] {
  const order = new Map(context.part.features.map((f, i) => [f.id, i]))
  const turn = (d: Draft) => (d.reference || d.group?.id.startsWith('part/') ? -1 : (order.get(d.feature ?? '') ?? -1))
  return [...drafts].sort((a, b) => turn(a) - turn(b))
}

/** What the proof found, as marks for the check print. */
function proofMarks(proof: Proof, part: Part): Mark[] {
  // a feature that has no place is marked where it stands: what hangs from it is no second cause
  const unplaced = part.marks.flatMap((m) =>
    m.rule === 'not-located' ? (/left-right|front-rear|up-down/.exec(m.text) ?? []) : [],
  )
  const missing = proof.missing.filter((m) => !unplaced.some((way) => m.text.includes(`stands ${way}`)))
  // a depth that is to be THRU is no size
  const asDeep = part.marks.filter((m) => m.rule === 'drill-point-through' && m.weight === 'must change')
  const within = (span: Span | undefined, whole: Span) => span && span.from >= whole.from && span.to <= whole.to
  const named = part.brief.features.filter((f) => asDeep.some((m) => within(m.span, f.span)))
  const repeated = proof.repeated.filter((r) => !named.some((f) => within(r.span, f.span)))
  const source = 'ASME Y14.5-2018 4.1: each size once, and all that are needed (from memory)'
  return [
    ...missing.map((m) => ({
      rule: 'size-missing',
      weight: 'must change' as const,
      text: `${m.text[0]!.toUpperCase()}${m.text.slice(1)}.`,
      ...(m.span ? { span: m.span } : {}),
      ...(m.write ? { expected: m.write } : {}),
      source,
    })),
    ...repeated.map((r) => ({
      rule: r.astray ? 'size-reaches-nothing' : 'size-repeated',
      weight: 'must change' as const,
      text: `${r.text}.`,
      ...(r.span ? { span: r.span } : {}),
      expected: r.astray
        ? 'a face, edge or axis that is there; another statement may have cut it away'
        : 'one of them left out, or as a reference size in brackets',
      source,
    })),
  ]
}

/** A thickness that the sheet gives as a note stands in no view. */
function thicknessNotes(context: Context): (NoteStatement & { draft: string; size: NotedSize })[] {
  if (!context.thicknessNote) return []
  const chosen = context.part.chosen.find((c) => c.kind === 'thickness')
  if (chosen?.kind !== 'thickness') return []
  const [a, b] = [context.data.get(chosen.from), context.data.get(chosen.to)]
  if (!a || !b) return []
  const reach = (d: typeof a) => ({ at: d.point, name: d.name })
  return [
    {
      id: 'thickness note',
      text: context.thicknessNote,
      size: {
        text: context.thicknessNote,
        value: chosen.size.mm,
        tolerance: toleranceOf(chosen.size, context.header).tolerance,
        direction: directionWords(chosen.direction),
        view: context.sights[0]?.view.id ?? '',
        span: chosen.span,
      },
      draft: `${chosen.group ?? 'stock'}/thickness/${chosen.from} to ${chosen.to}`,
      span: chosen.span,
      states: [{ kind: 'distance', direction: chosen.direction, from: reach(a), to: reach(b) }],
    },
  ]
}
