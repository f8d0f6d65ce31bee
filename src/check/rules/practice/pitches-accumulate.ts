import { basicSizes } from '../../../sizes/geometric/basic-sizes.ts'
import { deviationsOf, width } from '../../measure/deviation.ts'
import { said } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'

/** Spaces from which a row of equal pitches is worth a thought. */
const MANY = 5

export const rule: DrawingRule = {
  name: 'pitches-accumulate',
  weight: 'look again',
  source: 'ASME Y14.5-2018, 4.4: tolerance accumulation of chain dimensioning (from memory)',
  about: 'A row given by its pitch alone adds up the tolerance of every space. Sizes from one baseline do not.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    if (brief.schemes.some((s) => s.scheme !== 'chain')) return []
    const basic = basicSizes(part)
    return part.chosen.flatMap((c) => {
      // Basic pitches carry no tolerance that could add up.
      if (c.kind !== 'pitch' || basic.has(c.size) || c.members.length - 1 < MANY) return []
      const spaces = c.members.length - 1
      const d = deviationsOf(c.size, brief.header)
      if (!d || spaces * width(d) < 0.5) return []
      return [
        {
          text: `${spaces} spaces of ${c.size.text} add up to ±${said((spaces * width(d)) / 2, c.size.unit)} between the first and the last.`,
          span: c.size.span,
          expected: 'sizes     baseline, or a tolerance at the pitch',
          ...(c.group ? { feature: c.group } : {}),
          numbers: [`${spaces}`, c.size.text],
        },
      ]
    })
  },
}
