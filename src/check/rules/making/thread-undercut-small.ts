import { outsideThreads, rootOf, shouldersOf } from '../../measure/outside-threads.ts'
import { groovesAt } from '../../measure/relief.ts'
import { said, typed } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

/** Least width of an undercut in pitches, that of the short form. */
const LEAST = 1.1

export const rule: BriefRule = {
  name: 'thread-undercut-small',
  weight: 'must change',
  source: 'DIN 76-1 and ISO 4755, undercuts of outside threads, short form (from memory)',
  about:
    'The undercut behind an outside thread goes below the thread’s root and is at least a pitch wide, or the tool strikes its wall before it is clear.',
  reads: 'brief',
  check: ({ brief }) =>
    outsideThreads(brief).flatMap((t) => {
      const { step, words, diameter, pitch } = t
      const unit = brief.header.units
      return groovesAt(brief.features, step, shouldersOf(t)).flatMap((groove) => {
        const floor = groove.bottom?.mm ?? (groove.depth ? diameter - 2 * groove.depth.mm : undefined)
        const root = rootOf(t)
        const size = groove.bottom ?? groove.depth
        const shallow =
          floor === undefined || !size || floor <= root + 1e-6
            ? []
            : [
                {
                  text: `The undercut of ${words.text} is ⌀${typed(floor, unit)} at its bottom, above the thread’s root of ⌀${typed(root, unit)}.`,
                  span: size.span,
                  expected: `⌀${typed(diameter - 1.6 * pitch, unit)}`,
                  numbers: [words.text, size.text],
                },
              ]
        const narrow =
          groove.width.mm >= LEAST * pitch - 1e-6
            ? []
            : [
                {
                  text: `The undercut of ${words.text} is ${said(groove.width.mm, unit)} wide, ${(groove.width.mm / pitch).toFixed(1)} pitches.`,
                  span: groove.width.span,
                  expected: `at least ${typed(LEAST * pitch, unit)}, usually ${typed(2.2 * pitch, unit)}`,
                  numbers: [words.text, groove.width.text],
                },
              ]
        return [...shallow, ...narrow]
      })
    }),
}
