import type { Mark } from '../../brief/mark.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import { plainText } from '../callout/plain-text.ts'
import type { Reach, Stretch } from '../dimension.ts'
import { reached } from '../proof/reach.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'

/**
 * Features in line share one size: where two statements give the same distance between the same planes and axes, the
 * sheet shows it once. Where they give it with different digits, or against what the solid measures, both places are
 * marked.
 */
export function onceEach(context: Context, drafts: readonly Draft[]): Draft[] {
  const kept: Draft[] = []
  const said = new Map<string, Draft>()
  for (const draft of drafts) {
    contradiction(context, draft, drafts)
    const keys = draft.reference ? undefined : keysOf(context, draft)
    const earlier = keys?.map((key) => said.get(key))
    if (!keys || earlier?.some((e) => !e)) {
      for (const key of keys ?? []) if (!said.has(key)) said.set(key, draft)
      kept.push(draft)
      continue
    }
    const first = earlier![0]!
    if (digits(first) !== digits(draft)) {
      context.marks.push(twice(draft, first))
      kept.push(draft)
    }
  }
  return kept
}

const digits = (draft: Draft): string =>
  `${draft.size?.text ?? plainText(draft.callout)} ${JSON.stringify(draft.size?.tolerance ?? '', (k, v: unknown) => (k === 'span' ? undefined : v))}`

function only(draft: Draft): Stretch | undefined {
  const [said, more] = draft.states
  return said?.kind === 'distance' && !more && !said.also ? said : undefined
}

/** One key for each plain thing the size states, by the planes and axes it joins; undefined for anything else. */
function keysOf(context: Context, draft: Draft): string[] | undefined {
  const keys: string[] = []
  for (const said of draft.states) {
    if (said.kind === 'distance' && !said.also) keys.push(bars(context, [said.from, said.to], said.direction))
    else if (said.kind === 'pitch') {
      for (let i = 1; i < said.members.length; i++)
        keys.push(bars(context, said.members.slice(i - 1, i + 1), said.direction))
    } else if (said.kind === 'centred') {
      const ends = [said.first, said.last]
      keys.push(`middle ${bars(context, ends, said.direction)} of ${bars(context, said.between, said.direction)}`)
    } else return undefined
  }
  return keys.length > 0 && keys.every((k) => !k.includes('?')) ? keys : undefined
}

function bars(context: Context, reaches: readonly Reach[], direction: Vec3): string {
  const own = reaches.map((r) => reached(context.model, r, direction)?.bar)
  return own
    .map((bar) => (bar === undefined ? '?' : bar))
    .sort()
    .join()
}

function twice(draft: Draft, earlier: Draft): Mark {
  const text = `${plainText(draft.callout)} and ${plainText(earlier.callout)} are two statements of one distance with different digits or tolerances.`
  return {
    rule: 'same-size-two-ways',
    weight: 'must change',
    text,
    ...(draft.span ? { span: draft.span } : {}),
    expected: earlier.size ? `${earlier.size.text}, as at the other place` : 'one statement only',
    ...(draft.span && earlier.size
      ? { mends: [{ label: 'Write it as at the other place', span: draft.span, text: earlier.size.text }] }
      : {}),
    source: 'ASME Y14.5-2018 4.1(c): each size once (from memory)',
  }
}

/** A number that the solid does not bear out, because other statements fix the same thing otherwise. */
function contradiction(context: Context, draft: Draft, all: readonly Draft[]): void {
  const stretch = only(draft)
  if (!stretch || !draft.size || draft.size.unknown) return
  const actual = Math.abs(dot(stretch.to.at, stretch.direction) - dot(stretch.from.at, stretch.direction))
  if (Math.abs(actual - draft.size.mm) < 1e-4 * Math.max(1, actual)) return
  const near = (r: { at: Stretch['from']['at'] }, s: Stretch) =>
    [s.from, s.to].some((q) => Math.abs(dot(q.at, stretch.direction) - dot(r.at, stretch.direction)) < 1e-5)
  const others = all.filter((d) => {
    const s = only(d)
    return d !== draft && s && Math.abs(dot(s.direction, stretch.direction)) > 0.999 && near(stretch.to, s)
  })
  const unit = draft.size.unit === 'inch' ? 25.4 : 1
  const measured = Math.round((actual / unit) * 1e4) / 1e4
  for (const span of [draft.span, ...others.map((o) => o.span)]) {
    context.marks.push({
      rule: 'sizes-contradict',
      weight: 'must change',
      text: `${plainText(draft.callout)} does not agree with ${others.map((o) => plainText(o.callout)).join(', ') || 'the other statements'}: the part measures ${measured} there.`,
      ...(span ? { span } : {}),
      expected: `${measured}, or a change at the other place`,
      source: 'ASME Y14.5-2018 4.1(c) (from memory)',
    })
  }
}
