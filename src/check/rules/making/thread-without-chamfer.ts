import type { Brief, EdgeFeature } from '../../../brief/brief.ts'
import { type OutsideThread, outsideThreads, rootOf } from '../../measure/outside-threads.ts'
import { said } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'thread-without-chamfer',
  weight: 'look again',
  source: 'ISO 4753, ends of parts with outside threads: chamfered below the root (from memory)',
  about:
    'An outside thread starts at a chamfer that goes below its root; without one the first thread is a burr, and the nut does not start.',
  reads: 'brief',
  check: ({ brief }) =>
    outsideThreads(brief).flatMap((t) => {
      const { step, words, diameter } = t
      if (brief.header.notes.some((n) => /\bchamfer/i.test(n.text))) return []
      const missing = endsOf(t).find((end) => !chamferAt(brief, t, end))
      if (missing) {
        const write = missing.outer ? `${missing.side} face outer edge` : `${step.name.text} ${missing.side} edge`
        return [
          {
            text: `${words.text} starts at a sharp edge.`,
            span: words.span,
            expected: `chamfer   ${write}: ${said((diameter - rootOf(t)) / 2, brief.header.units).replace(/ .*/, '')} × 45°`,
            numbers: [words.text],
          },
        ]
      }
      return endsOf(t).flatMap((end) => {
        const made = chamferAt(brief, t, end)!
        const deep = (diameter - rootOf(t)) / 2
        // A tenth of the depth left standing is broken by the die.
        if (made.size.mm >= 0.9 * deep - 1e-6) return []
        return [
          {
            text: `The chamfer ${made.size.text} at the start of ${words.text} does not reach below its root, ${said(deep, brief.header.units)} deep.`,
            span: made.size.span,
            expected: `at least ${said(deep, brief.header.units)}`,
            numbers: [words.text, made.size.text],
          },
        ]
      })
    }),
}

interface End {
  /** Side of the step, in the part's own words. */
  readonly side: string
  /** The part's own end. */
  readonly outer: boolean
}

/** Where a nut comes on: the part's ends, and steps down from the thread. */
function endsOf({ before, after, diameter, ends: [low, high] }: OutsideThread): End[] {
  const open = (n: OutsideThread['before']) => n === undefined || n.diameter.mm < diameter - 1e-6
  return [
    ...(open(before) ? [{ side: low, outer: before === undefined }] : []),
    ...(open(after) ? [{ side: high, outer: after === undefined }] : []),
  ]
}

/** The chamfer that the brief's words put at that end. */
function chamferAt({ features }: Brief, { step }: OutsideThread, { side, outer }: End): EdgeFeature | undefined {
  const name = step.name.text.toLowerCase()
  return features.find((f): f is EdgeFeature => {
    if (f.kind !== 'chamfer') return false
    return f.edges.some(({ text }) => {
      const words = text.toLowerCase()
      const here = new RegExp(`\\b${side}\\b`).test(words)
      if (words.includes(name)) return here || !/\b(left|right|bottom|top|front|rear)\b/.test(words)
      return outer && (/^(both )?ends$|^outer edges$/.test(words.trim()) || (here && /face|end|outer/.test(words)))
    })
  })
}
