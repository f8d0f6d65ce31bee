import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'standard-missing',
  weight: 'remark',
  source: 'ASME Y14.5-2018, 1.1.3: the drawing names the standard it is to be read by; ISO 8015:2011 (from memory)',
  about: 'The drawing says by which standard its sizes and tolerances are to be read.',
  reads: 'brief',
  check: ({ brief: { header } }) =>
    header.standard || header.notes.some((n) => /\b(Y14\.5|ISO 8015|ISO 129)/i.test(n.text))
      ? []
      : [
          {
            text: 'The drawing does not say by which standard it is to be read.',
            expected: header.practice === 'ASME' ? 'standard  ASME Y14.5-2018' : 'standard  ISO 128, ISO 129-1',
          },
        ],
}
