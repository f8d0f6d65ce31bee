import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'datum-letter-repeated',
  weight: 'must change',
  source: 'ASME Y14.5-2018 6.3.1: each datum feature has its own letter (from memory)',
  about: 'One letter at two features leaves open which of them the frames mean.',
  reads: 'brief',
  check: ({ brief }) => {
    const datums = brief.datums ?? []
    return datums.flatMap(({ letter, of }, i) => {
      const first = datums.findIndex((d) => d.letter.text === letter.text)
      if (first === i) return []
      return [
        {
          text: `Datum ${letter.text} is taken from ${datums[first]!.of.text} already; here it is taken from ${of.text}.`,
          span: letter.span,
          expected: 'another letter',
        },
      ]
    })
  },
}
