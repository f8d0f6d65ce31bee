import { said } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'
import { whatToTighten } from '../../stack/say.ts'
import { isObstacle, stacksOf } from '../../stack/stack-up.ts'

export const rule: DrawingRule = {
  name: 'stack-out-of-limits',
  weight: 'must change',
  source: 'worst case and root-sum-square by the loop of sizes; common practice, no source',
  about:
    'What the brief asks to lie between two faces must keep to its limits, or at least not vanish, with every size anywhere within its own.',
  reads: 'drawing',
  check: (subject) =>
    stacksOf(subject).flatMap(({ said: stated, up }) => {
      if (isObstacle(up))
        return [
          {
            text: `The stack ${stated.name.text} cannot be added up: ${lower(up.text)}`,
            span: stated.span,
            expected: up.expected,
          },
        ]
      const unit = subject.brief.header.units
      const { min, max } = up.method === 'worst case' ? up.result.worstCase : up.result.rootSumSquare
      const { wanted } = up
      const asked = wanted.min !== undefined || wanted.max !== undefined
      const vanishes = !asked && up.result.nominal > 1e-9 && min < -1e-9
      if (asked ? up.keeps : !vanishes) return []
      const limits = [
        ...(wanted.min === undefined ? [] : [`min ${said(wanted.min, unit)}`]),
        ...(wanted.max === undefined ? [] : [`max ${said(wanted.max, unit)}`]),
      ]
      return [
        {
          text: `${stated.name.text} may come out between ${said(min, unit)} and ${said(max, unit)} by ${up.method}${asked ? `; asked is ${limits.join(', ')}` : ': it can vanish'}.`,
          span: stated.span,
          expected: asked ? whatToTighten(unit, up) : 'closer sizes in the loop, or a larger nominal',
          numbers: [...up.links.filter((l) => l.of === 'size').map((l) => l.name), ...limits],
        },
      ]
    }),
}

const lower = (text: string) => text.replace(/^[A-Z](?=[a-z])/, (l) => l.toLowerCase())
