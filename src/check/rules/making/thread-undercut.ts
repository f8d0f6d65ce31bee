import { outsideThreads, shouldersOf } from '../../measure/outside-threads.ts'
import { groovesAt } from '../../measure/relief.ts'
import { typed } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

/** Undercut in pitches: usual width, and depth below the nominal diameter. */
const [WIDE, DEEP] = [2.2, 1.6]

export const rule: BriefRule = {
  name: 'thread-undercut',
  weight: 'must change',
  source: 'DIN 76-1 and ISO 4755, undercuts and run-out of outside threads: about 2 pitches (from memory)',
  about:
    'A die or a threading tool cannot cut a full thread right up to a shoulder: the nut stops short of it. An undercut there, or a note on the run-out, says what is meant.',
  reads: 'brief',
  check: ({ brief }) => {
    const said = /\b(undercut|relief|run-?out|incomplete thread|DIN 76|ISO 4755)/i
    if (brief.header.notes.some((n) => said.test(n.text))) return []
    return outsideThreads(brief).flatMap((t) => {
      const { step, words, before, ends, diameter, pitch } = t
      const bare = shouldersOf(t).find((s) => groovesAt(brief.features, step, [s]).length === 0)
      if (!bare) return []
      const unit = brief.header.units
      const [here, there] = bare === before ? ends : [ends[1], ends[0]]
      const name = step.name.text
      return [
        {
          text: `${words.text} runs right up to the shoulder of ${bare.name.text}: the last ${typed(2 * pitch, unit)} cannot be cut.`,
          span: words.span,
          expected: `groove    ${name}: ${typed(WIDE * pitch, unit)} wide, bottom ⌀${typed(diameter - DEEP * pitch, unit)}; ${here} side at ${bare.name.text} ${there} face`,
          numbers: [words.text],
        },
      ]
    })
  },
}
