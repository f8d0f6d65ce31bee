import { withCount } from '../callout/shapes.ts'
import type { Statement } from '../dimension.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'
import { alike, digitsOf } from './once.ts'
import { showRadius } from './show.ts'

/**
 * Rounds of the stock that have one size with one tolerance show it once, with their count: `2X ⌀.7503/.7500` for two
 * bearing seats, `2X R20` for two arcs of an outline (repetitive sizes, ASME Y14.5-2018 1.9.5, ISO 129-1, from memory).
 * A round with a datum letter or a frame keeps a size to itself, for them to stand at.
 */
export function sharedSizes(context: Context, drafts: readonly Draft[], direction: 'diameter' | 'radius'): Draft[] {
  const kept: Draft[] = []
  const first = new Map<string, number>()
  for (const draft of drafts) {
    const faces = facesOf(draft)
    if (!faces || faces.some((f) => context.signed.has(f)) || !draft.id.startsWith(`stock/${direction}/`)) {
      kept.push(draft)
      continue
    }
    const key = digitsOf(draft)
    const at = first.get(key)
    if (at === undefined) {
      first.set(key, kept.length)
      kept.push(draft)
      continue
    }
    const one = kept[at]!
    const all = [...facesOf(one)!, ...faces]
    const states: Statement[] = [{ kind: 'radius', faces: all }]
    kept[at] = {
      ...one,
      callout: withCount(one.callout, context.writing, countOf(one) + 1),
      states,
      ...alike(one, draft),
      shows: direction === 'radius' ? showRadius(all, one.value) : one.shows,
    }
  }
  return kept
}

function facesOf({ states, size }: Draft): readonly number[] | undefined {
  const [said, more] = states
  return said?.kind === 'radius' && !more && size && !size.unknown ? said.faces : undefined
}

/** Places that the callout counts already. */
function countOf({ callout }: Draft): number {
  const [first] = callout.lines[0] ?? []
  return Number(typeof first === 'string' ? (/^(\d+)[X×] /.exec(first)?.[1] ?? 1) : 1)
}
