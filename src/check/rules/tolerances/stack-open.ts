import type { DrawingRule } from '../../rule.ts'
import { isObstacle, stacksOf } from '../../stack/stack-up.ts'

export const rule: DrawingRule = {
  name: 'stack-open',
  weight: 'look again',
  source: 'ASME Y14.5-2018, 4.1 (a): every size has a tolerance (from memory)',
  about:
    'A stack adds up what the sizes of its loop may stray by. A size without a tolerance, such as that of mill stock, would count as exact.',
  reads: 'drawing',
  check: (subject) =>
    stacksOf(subject).flatMap(({ said, up }) => {
      const open = isObstacle(up) ? [] : up.links.filter((l) => l.open)
      if (open.length === 0) return []
      const names = open.map((l) => l.name)
      return [
        {
          text: `No tolerance is known for ${names.join(' and ')}, which ${open.length > 1 ? 'stand' : 'stands'} in the loop of ${said.name.text}.`,
          span: open[0]!.span ?? said.span,
          expected: 'a tolerance at the size, or a general one in the title block',
          numbers: names,
        },
      ]
    }),
}
