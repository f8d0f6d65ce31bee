import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'key-width-untoleranced',
  weight: 'look again',
  source: 'DIN 6885-1: P9 or N9 for the width; ANSI B17.1: +.002 or so (from memory)',
  about: 'The width of a keyseat is a fit with its key; the general tolerance is ten times too coarse for it.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) =>
      f.kind === 'keyseat' && !f.width.tolerance
        ? [
            {
              text: `The keyseat’s width ${f.width.text} has only the general tolerance.`,
              span: f.width.span,
              expected: f.width.unit === 'inch' ? `${f.width.text} +.002 -.000` : `${f.width.text} P9 or N9`,
              numbers: [f.width.text],
            },
          ]
        : [],
    ),
}
