import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'standard-against-practice',
  weight: 'must change',
  source: 'ASME Y14.5-2018, 4.1; ISO 8015:2011: envelope and independency are opposite defaults (from memory)',
  about: 'A sheet drawn by one practice and called up to the other would be read by the wrong defaults.',
  reads: 'brief',
  check: ({ brief: { header } }) => {
    const { standard, practice } = header
    if (!standard) return []
    const [asme, iso] = [/\bY14\b|\bASME\b/i.test(standard.text), /\bISO\b|\bDIN\b/i.test(standard.text)]
    if (practice === 'ASME' ? !iso || asme : !asme || iso) return []
    return [
      {
        text: `The sheet is drawn by ${practice}, but calls up ${standard.text}.`,
        span: standard.span,
        expected: practice === 'ASME' ? 'ASME Y14.5-2018, or practice ISO' : 'ISO 128, ISO 129-1, or practice ASME',
      },
    ]
  },
}
