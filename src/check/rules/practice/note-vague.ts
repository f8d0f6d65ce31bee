import type { BriefRule } from '../../rule.ts'

const vague =
  /\b(as required|if required|where required|if necessary|as necessary|suitabl[ey]|approximately|approx\.?|or similar|or equivalent|good finish|smooth finish|nicely|best practice|TYP(ICAL)?)\b/i

export const rule: BriefRule = {
  name: 'note-vague',
  weight: 'look again',
  source:
    'ASME Y14.5-2018, 4.1: requirements are stated so that there is one reading; number of places instead of TYP (from memory)',
  about: 'A note that leaves the decision to whoever reads it cannot be inspected.',
  reads: 'brief',
  check: ({ brief: { header } }) =>
    header.notes.flatMap(({ text, span }) => {
      const found = vague.exec(text)
      if (!found) return []
      return [
        {
          text: `“${found[0]}” can be read in more than one way.`,
          span,
          expected: /^typ/i.test(found[0]) ? 'the number of places: 4X' : 'what is wanted, so that it can be inspected',
        },
      ]
    }),
}
