import type { BriefRule } from '../../rule.ts'

/** Depth over width that a slitting saw still cuts straight. */
const SAW = 8

export const rule: BriefRule = {
  name: 'notch-narrow',
  weight: 'look again',
  source: 'common practice, no source',
  about: 'A square notch is milled or sawn from its edge. A deep narrow one needs a large thin saw, which wanders.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      if (f.kind !== 'notch' || f.shape !== 'square' || !f.depth) return []
      const ratio = f.depth.mm / f.width.mm
      if (ratio <= SAW + 1e-6) return []
      return [
        {
          text: `The notch is ${ratio.toFixed(0)} times as deep as it is wide.`,
          span: f.width.span,
          expected: `at most ${SAW} widths deep`,
          numbers: [f.width.text, f.depth.text],
        },
      ]
    }),
}
