import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'units-note',
  weight: 'must change',
  source: 'ASME Y14.5-2018, 4.3: unit of the sizes stated on the drawing (from memory)',
  about: 'A note that gives another unit than the drawing’s own makes every size ambiguous.',
  reads: 'brief',
  check: ({ brief: { header } }) =>
    header.notes.flatMap(({ text, span }) => {
      if (!/\b(all|sizes|dimensions)\b/i.test(text)) return []
      const metric = /\b(dimensions|sizes)\b[^.]*\b(in|are)\b[^.]*\b(mm|millimet)/i.test(text)
      const inch = /\b(dimensions|sizes)\b[^.]*\b(in|are)\b[^.]*\binch/i.test(text)
      if (header.units === 'inch' ? !metric || inch : !inch || metric) return []
      return [
        {
          text: `The note says ${metric ? 'millimetres' : 'inches'}, the drawing is in ${header.units === 'inch' ? 'inches' : 'millimetres'}.`,
          span,
          expected: 'no note: the title block states the unit',
        },
      ]
    }),
}
