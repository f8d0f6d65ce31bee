import type { CalloutPart } from '../dimension.ts'
import { axisIndex } from '../proof/elements.ts'
import type { Context } from './context.ts'
import { type Draft, directionWords } from './draft.ts'
import { unitOf } from './located.ts'

/**
 * `CENTERED` under a note, or beside a size that runs another way, names its direction where that is not plain: it is
 * where the other direction across the worked face has a number of the feature's own.
 */
export function withWays(context: Context, drafts: readonly Draft[]): Draft[] {
  const { centred, symmetrical } = context.writing.habit
  return drafts.map((draft) => {
    const ways = new Set(draft.states.flatMap((s) => (s.kind === 'centred' ? [directionWords(s.direction)] : [])))
    const [way, more] = [...ways]
    if (way === undefined || more !== undefined || draft.direction === way || isPlain(context, drafts, draft, way))
      return draft
    const said = (word: CalloutPart | undefined) => word === centred || word === symmetrical
    const lines = draft.callout.lines.map((line) => {
      const [word] = line
      if (line.length > 1 || typeof word !== 'string' || !said(word)) return line
      return [`${word} ${word === word.toUpperCase() ? way.toUpperCase() : way}`]
    })
    return { ...draft, callout: { lines } }
  })
}

function isPlain({ features }: Context, drafts: readonly Draft[], draft: Draft, way: string): boolean {
  const feature = features.get(draft.feature ?? '')
  const k = feature && axisIndex(feature.outward)
  if (!feature || k === undefined) return false
  const others = ([0, 1, 2] as const).flatMap((i) => {
    const other = directionWords(unitOf(i))
    return i === k || other === way ? [] : [other]
  })
  const isPlace = (d: Draft) => d.group !== undefined || /\/(?:distance|pitch)\//.test(d.id)
  return others.every((other) => drafts.some((d) => d.feature === feature.id && d.direction === other && isPlace(d)))
}
