import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import { bracketed } from '../callout/shapes.ts'
import type { Reach, Statement } from '../dimension.ts'
import { axisIndex, SAME } from '../proof/elements.ts'
import { type RoundEnd, roundEnds } from '../proof/full-round.ts'
import { judge } from '../proof/judge.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'
import { isCentred } from './located.ts'
import { alike } from './once.ts'
import { withoutWord } from './rearrange.ts'

/**
 * A link: two round ends with holes about their centres. The distance between the holes is that of the ends too, and with
 * their R it gives the length: the overall size stands in brackets, and the outline's own number for the same centres is
 * left out (common practice, no source). An overall size with a tolerance of its own is meant to stand.
 */
export function withLinks(context: Context, drafts: readonly Draft[]): Draft[] {
  const ends = roundEnds(context.part)
  if (ends.length < 2) return [...drafts]
  let result = [...drafts]
  for (const apart of drafts) {
    const next = linked(context, result, apart, ends)
    if (next && judged(context, next) <= judged(context, result)) result = next
  }
  return result
}

/** What is left open or said twice. */
function judged(context: Context, drafts: readonly Draft[]): number {
  const plain = drafts.map((d) => ({ id: d.id, states: d.states, reference: d.reference === true }))
  const { loose, repeated, astray } = judge(context.model, plain)
  return loose.length + repeated.length + astray.length
}

function linked(
  context: Context,
  drafts: readonly Draft[],
  apart: Draft,
  ends: readonly RoundEnd[],
): Draft[] | undefined {
  const row = rowOf(apart)
  const k = row && axisIndex(row.direction)
  if (!row || k === undefined) return undefined
  const own = row.members.map((m) => ends.find((e) => isAbout(e, m.at) && Math.abs(e.axes.z[k]) < 1e-9))
  const [p, q] = own
  if (!p || !q || p === q) return undefined
  const on = [p, q].map(
    (end, i): Statement => ({
      kind: 'aligned',
      direction: row.direction,
      reaches: [row.members[i]!, { at: end.axes.origin, name: 'centre of the round end', faces: end.faces }],
    }),
  )
  const level = (end: RoundEnd) => dot(end.axes.origin, row.direction)
  const [low, high] = level(p) < level(q) ? [p, q] : [q, p]
  const centres: [number, number] = [level(low), level(high)]
  const crowns: [number, number] = [centres[0] - low.r, centres[1] + high.r]
  const length = drafts.find(
    (d) => d !== apart && isStock(d) && (joins(d, row.direction, crowns) || joins(d, row.direction, centres)),
  )
  if (!length) return undefined
  return drafts.flatMap((d): Draft[] => {
    if (d.id === apart.id) {
      const plain = d.states.some((s) => isCentred(s, k)) ? withoutWord(context, d, { k }) : d
      if (!joins(length, row.direction, centres)) return [{ ...plain, states: [...plain.states, ...on] }]
      const states = [...plain.states, ...on, ...length.states.slice(1)]
      return [{ ...plain, states, ...alike(d, length) }]
    }
    // from its own end a hole stands as far as the end's R
    const isRadius = !d.size?.tolerance && [0, 1].some((i) => joins(d, row.direction, [crowns[i]!, centres[i]!]))
    if (d !== length) return isRadius ? [] : [d]
    return joins(d, row.direction, crowns) ? [{ ...d, reference: true, callout: bracketed(d.callout) }] : []
  })
}

/** The two axes of a feature, or of two, whose distance is this size and nothing else of it. */
function rowOf(draft: Draft): { readonly direction: Vec3; readonly members: readonly [Reach, Reach] } | undefined {
  const [said] = draft.states
  if (!draft.feature || draft.reference) return undefined
  if (said?.kind === 'pitch' && !said.also && said.members.length === 2)
    return { direction: said.direction, members: [said.members[0]!, said.members[1]!] }
  if (said?.kind === 'distance' && !said.also && 'axis' in said.from && 'axis' in said.to)
    return { direction: said.direction, members: [said.from, said.to] }
  return undefined
}

/** A size of the stock that a tolerance of its own does not hold. */
const isStock = (d: Draft): boolean => !d.feature && !d.reference && d.size !== undefined && !d.size.tolerance

function joins(d: Draft, direction: Vec3, levels: readonly [number, number]): boolean {
  const [said, ...more] = d.states
  if (said?.kind !== 'distance' || said.also || more.some((s) => s.kind !== 'aligned')) return false
  if (Math.abs(dot(said.direction, direction)) < 1 - 1e-9) return false
  const sorted = (ends: readonly number[]) => [...ends].sort((a, b) => a - b)
  const own = sorted([said.from, said.to].map((r) => dot(r.at, direction)))
  return sorted(levels).every((at, i) => Math.abs(at - own[i]!) < SAME)
}

const isAbout = (end: RoundEnd, at: Vec3): boolean => norm(cross(sub(at, end.axes.origin), end.axes.z)) < SAME
