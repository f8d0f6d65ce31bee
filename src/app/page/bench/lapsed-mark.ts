import type { PageMark } from '../engine/messages.ts'
import { lapsedSignatures } from '../shelf/signed-text.ts'

/** A mark at signatures that stand for an older text, with the mend that takes them off; none where they hold. */
export function lapsedMark(text: string, signed: string | undefined): PageMark[] {
  const spans = lapsedSignatures(text, signed)
  if (spans.length === 0) return []
  const span = { from: spans[0]!.from, to: spans.at(-1)!.to }
  // What stands between the signatures stays.
  const kept = spans.reduceRight((rest, s) => rest.slice(0, s.from) + rest.slice(s.to), text.slice(0, span.to))
  return [
    {
      rule: 'signature-lapsed',
      weight: 'look again',
      text: 'The brief was changed since it was signed: the signatures do not hold for this sheet.',
      span,
      expected: 'no signature until the sheet has been checked anew',
      source: 'common practice, no source',
      mends: [{ label: 'take the signatures off', span, text: kept.slice(span.from) }],
    },
  ]
}
