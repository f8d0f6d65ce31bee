import { framedSizes } from '../../../sizes/geometric/basic-sizes.ts'
import { sizesOf } from '../../measure/all-sizes.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'basic-without-frame',
  weight: 'must change',
  source:
    'ASME Y14.5-2018, 3.15: a basic dimension is theoretically exact, its tolerance stands in a frame (from memory)',
  about:
    'A basic size has no tolerance of its own. Without a geometric tolerance for what it locates, nothing holds it.',
  reads: 'drawing',
  check: ({ brief, part }) => {
    if (brief.header.notes.some((n) => /\b(position|profile|angularity|true position)\b|[⌖⌓⌒∠]/i.test(n.text)))
      return []
    const framed = new Set(framedSizes(part).map((f) => f.size))
    return sizesOf(brief).flatMap(({ size }) =>
      size.tolerance?.kind === 'basic' && !framed.has(size)
        ? [
            {
              text: `${size.text} is basic, but no geometric tolerance says how well it is to be held.`,
              span: size.span,
              expected: 'a tolerance at the size, or a frame such as: frame holes A: position dia .014 MMC A B C',
            },
          ]
        : [],
    )
  },
}
