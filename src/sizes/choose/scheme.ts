import type { SchemeRequest } from '../../brief/brief.ts'
import type { Span } from '../../brief/span.ts'
import { plainText } from '../callout/plain-text.ts'
import { exactFrom } from '../geometric/exact-from.ts'
import { judge } from '../proof/judge.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'
import { type Link, type Located, locatedSets } from './located.ts'
import { rearranged } from './rearrange.ts'

/**
 * Re-expresses what locates features as the brief's schemes ask: baseline, chain or ordinate, for a feature or the whole
 * part. Everything that a distance, a pitch or the word `centred` places along an axis of the part takes part; what
 * cannot is named in a remark and stands as the brief words it.
 */
export function withSchemes(context: Context, drafts: readonly Draft[]): Draft[] {
  let result = [...drafts]
  for (const task of tasksOf(context)) result = arranged(context, result, task)
  return result
}

interface Task {
  readonly scheme: Exclude<SchemeRequest['scheme'], 'hole table'>
  /** Absent: the whole part. */
  readonly features?: readonly string[]
  readonly span: Span
}

/** Sizes from a datum for several features stand in one set, so that the datum reads 0 once; a chain is of one feature. */
function tasksOf(context: Context): Task[] {
  const tasks: Task[] = []
  for (const request of context.part.brief.schemes) {
    const { scheme, of } = request
    if (scheme === 'hole table') continue
    const feature = of && featureNamed(context, of.text)
    if (of && !feature) context.marks.push(unknownName(context, request))
    else if (feature === undefined) tasks.push({ scheme, span: request.span })
    else {
      const at = scheme === 'chain' ? -1 : tasks.findIndex((t) => t.scheme === scheme && t.features)
      const earlier = tasks[at]
      if (earlier?.features) tasks[at] = { ...earlier, features: [...earlier.features, feature] }
      else tasks.push({ scheme, features: [feature], span: of?.span ?? request.span })
    }
  }
  return tasks
}

/** Features with a scheme to themselves. */
export const schemeFeatures = (context: Context): string[] =>
  context.part.brief.schemes.flatMap(({ scheme, of }) =>
    of && scheme !== 'hole table' ? (featureNamed(context, of.text) ?? []) : [],
  )

export function featureNamed(context: Context, text: string): string | undefined {
  const wanted = text.trim().toLowerCase()
  const singular = wanted.replace(/^(hole|slot|notche?|pocket)s\b/, '$1')
  return context.part.features.find(
    (f) =>
      f.id.toLowerCase() === wanted ||
      f.id.toLowerCase() === singular ||
      f.feature?.label?.text.toLowerCase() === wanted,
  )?.id
}

/** The mark for a scheme of a feature that the part does not have. */
export function unknownName(context: Context, { scheme, of }: SchemeRequest) {
  return {
    rule: 'unknown-name',
    weight: 'must change',
    text: `There is no feature called “${of?.text}” to size by ${scheme}.`,
    ...(of ? { span: of.span } : {}),
    expected: context.part.features.map((f) => f.id).join(', '),
    source: 'common practice, no source',
  } as const
}

/** The remark for what a scheme leaves as the brief words it. */
export function leftOut(text: string, span: Span | undefined) {
  return {
    rule: 'scheme-left-out',
    weight: 'remark',
    text,
    ...(span ? { span } : {}),
    expected: 'nothing, if it may stand so; or places by plain distances from a face',
    source: 'common practice, no source',
  } as const
}

function arranged(context: Context, drafts: readonly Draft[], { scheme, features, span }: Task): Draft[] {
  const remark = (text: string) => context.marks.push(leftOut(text, span))
  const sets = locatedSets(context, drafts, features)
  const circles = circlesOf(context, features)
  for (const circle of circles) remark(`${circle} keeps its bolt circle: sizes by ${scheme} run straight from a face.`)
  let result = [...drafts]
  for (const whole of sets) {
    const { set, exact } = withoutExact(context, whole)
    for (const { feature, letters } of exact)
      remark(
        `The ${whole.way} places of ${feature} stand as the brief words them: its frame counts from datum ${letters}, and sizes by ${scheme} would start at ${whole.datum?.mooring.name}.`,
      )
    if (exact.length > 0 && !set.links.some((l) => l.draft.feature !== undefined)) continue
    const next = rearranged(context, result, scheme, set)
    if (next && !spoils(context, result, next.drafts)) {
      result = [...next.drafts]
      for (const { callout, feature: of } of next.stayed)
        remark(
          `${plainText(callout)}${of ? ` of ${of}` : ''} stands as it is: with a tolerance of its own it is not taken apart into sizes by ${scheme}.`,
        )
    } else remark(reasonAgainst(set, scheme))
  }
  for (const feature of features ?? []) {
    if (circles.includes(feature) || sets.some((s) => s.links.some((l) => l.draft.feature === feature))) continue
    remark(`${feature} has no place that sizes by ${scheme} could give.`)
  }
  return result
}

/** The set without features that a frame places from datums other than the scheme's: their basic sizes start at those. */
function withoutExact(
  context: Context,
  set: Located,
): { readonly set: Located; readonly exact: readonly { readonly feature: string; readonly letters: string }[] } {
  const { datum, links, k } = set
  if (!datum) return { set, exact: [] }
  const isAt = (at: number, levels: readonly number[]) => levels.some((l) => Math.abs(at - l) < 1e-5)
  const stays = (l: Link) => {
    const from = l.draft.feature === undefined ? undefined : exactFrom(context.part, l.draft.feature, k)
    if (!from || isAt(datum.at, from.levels)) return []
    // About the datum's own axis no number is needed.
    return l.stops.every((s) => isAt(s.at, from.levels)) ? [] : [{ feature: l.draft.feature!, letters: from.letters }]
  }
  const exact = links.flatMap(stays)
  return {
    set: { ...set, links: links.filter((l) => stays(l).length === 0) },
    exact: exact.filter((e, i) => i === exact.findIndex((o) => o.feature === e.feature)),
  }
}

function reasonAgainst(set: Located, scheme: string): string {
  const what = [...new Set(set.links.flatMap((l) => l.draft.feature ?? []))].join(', ') || 'the stock'
  return set.datum
    ? `The ${set.way} places of ${what} stand as the brief words them: sizes by ${scheme} would not fix them exactly once.`
    : `The ${set.way} places of ${what} stand as the brief words them: they count from an axis, and sizes by ${scheme} need a face.`
}

/** Features that a bolt circle places. */
function circlesOf(context: Context, features: readonly string[] | undefined): string[] {
  return context.part.features.flatMap((f) =>
    f.pattern?.kind === 'bolt circle' && (features === undefined || features.includes(f.id)) ? [f.id] : [],
  )
}

/** More left open, or said twice, than before. */
function spoils(context: Context, before: readonly Draft[], after: readonly Draft[]): boolean {
  const count = (drafts: readonly Draft[]) => {
    const { loose, repeated, astray } = judge(
      context.model,
      drafts.map((d) => ({ id: d.id, states: d.states, reference: d.reference === true })),
    )
    return { loose: loose.length, spare: repeated.length + astray.length }
  }
  const [old, now] = [count(before), count(after)]
  return now.loose > old.loose || now.spare > old.spare
}
