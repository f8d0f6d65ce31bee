import { sizesOf } from '../../measure/all-sizes.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'basic-without-frame',
  weight: 'must change',
  source:
    'ASME Y14.5-2018, 3.15: a basic dimension is theoretically exact, its tolerance stands in a frame (from memory)',
  about:
    'A basic size has no tolerance of its own. Without a geometric tolerance for what it locates, nothing holds it.',
  reads: 'brief',
  check: ({ brief }) => {
    if (brief.header.notes.some((n) => /\b(position|profile|angularity|true position)\b|[⌖⌓⌒∠]/i.test(n.text)))
      return []
    return sizesOf(brief).flatMap(({ size }) =>
      size.tolerance?.kind === 'basic'
        ? [
            {
              text: `${size.text} is basic, but no geometric tolerance says how well it is to be held.`,
              span: size.span,
              expected: 'a tolerance at the size, or a note such as: Holes A position ⌀.014 MMC to A, B, C.',
            },
          ]
        : [],
    )
  },
}
