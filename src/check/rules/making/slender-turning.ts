import type { DrawingRule } from '../../rule.ts'

/** Length over diameter that a lathe holds between centres without a steady. */
const SLENDER = 15

export const rule: DrawingRule = {
  name: 'slender-turning',
  weight: 'look again',
  source: 'Machinery’s Handbook, turning long work: steady rest beyond about 12 to 15 diameters (from memory)',
  about:
    'A long thin shaft bends away from the tool. It wants a steady, straight stock, and a word about straightness.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    if (!part.axis || (brief.stock?.kind !== 'turned' && brief.stock?.kind !== 'bar')) return []
    const k = part.axis.direction.findIndex((c) => Math.abs(c) > 0.5) as 0 | 1 | 2
    const { min, max } = part.body.box
    const long = max[k] - min[k]
    const wide = max[((k + 1) % 3) as 0 | 1 | 2] - min[((k + 1) % 3) as 0 | 1 | 2]
    if (long <= SLENDER * wide || brief.header.notes.some((n) => /\bstraight/i.test(n.text))) return []
    return [
      {
        text: `The shaft is ${(long / wide).toFixed(0)} diameters long and will bend under the tool.`,
        span: brief.stock.span,
        expected: 'a thicker shaft, or a note on straightness',
        numbers: [(long / wide).toFixed(1)],
      },
    ]
  },
}
