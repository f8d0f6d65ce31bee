import { auditSizes } from '../../../sheet/placement/audit.ts'
import type { SheetRule } from '../../rule.ts'

export const rule: SheetRule = {
  name: 'sizes-crowded',
  weight: 'look again',
  source: 'ASME Y14.5-2018, 4.5; ISO 129-1:2018, 5: sizes clear of lines and of one another (from memory)',
  about: 'Figures that stand on a line or on each other get misread on the shop floor.',
  reads: 'sheet',
  check: ({ sheet, sizes, brief }) => {
    const { findings } = auditSizes(sheet, brief.header.practice)
    return findings.flatMap((f) => {
      if (f.what !== 'textOnText' && f.what !== 'textOnLine' && f.what !== 'arrowCollisions') return []
      const size = sizes.dimensions.find((d) => f.dimensions.includes(d.id))
      return [
        {
          text:
            f.what === 'arrowCollisions'
              ? 'An arrowhead stands on something else.'
              : `Figures cannot be read here: ${f.text}.`,
          ...(size?.span ? { span: size.span } : {}),
          expected: 'place      another row or view for the size, a larger scale or sheet',
        },
      ]
    })
  },
}
