import { sizesOf } from '../../measure/all-sizes.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'general-tolerance-missing',
  weight: 'must change',
  source: 'ASME Y14.5-2018, 4.1(a): every size has a tolerance; ISO 8015:2011 (from memory)',
  about: 'Every size has a tolerance, from the title block where none stands beside it.',
  reads: 'brief',
  check: ({ brief }) => {
    if (brief.header.general.length > 0) return []
    const bare = sizesOf(brief).filter(({ size }) => !size.tolerance && !size.unknown)
    if (bare.length === 0) return []
    const fractions = bare.some(({ size }) => size.form === 'fraction') ? 'fractions ±1/64   ' : ''
    const expected =
      brief.header.practice === 'ASME'
        ? `general   ${fractions}.XX ±.01   .XXX ±.005   angles ±1/2°`
        : 'general   ISO 2768-m'
    return [
      {
        text: `${bare.length === 1 ? 'One size has' : `${bare.length} sizes have`} no tolerance, and the title block gives none.`,
        expected,
      },
    ]
  },
}
