import { anglesOf } from '../../measure/all-sizes.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'angle-tolerance-missing',
  weight: 'look again',
  source: 'ASME Y14.5-2018, 4.1(a) (from memory)',
  about:
    'Where the title block gives classes for decimals only, an angle that is stated by number is left without a tolerance.',
  reads: 'brief',
  check: ({ brief }) => {
    const { general } = brief.header
    if (general.length === 0 || general.some((g) => g.kind === 'angles' || g.kind === 'standard')) return []
    const bare = anglesOf(brief).filter(({ angle, in: of }) => !angle.tolerance && of.kind === 'notch')
    const chamfers = anglesOf(brief).filter(({ angle, in: of }) => !angle.tolerance && of.kind === 'chamfer')
    const first = [...bare, ...chamfers][0]
    if (!first) return []
    return [
      {
        text: `No tolerance covers the angle ${first.angle.text}°.`,
        span: first.angle.span,
        expected: 'angles ±1° among the general tolerances',
      },
    ]
  },
}
