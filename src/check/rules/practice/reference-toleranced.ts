import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'reference-toleranced',
  weight: 'must change',
  source: 'ASME Y14.5-2018, 3.50; ISO 129-1:2018: auxiliary dimensions carry no tolerance (from memory)',
  about: 'A size in brackets is for information. Given a tolerance as well, it asks for inspection and denies it.',
  reads: 'drawing',
  check: ({ brief }) =>
    brief.shows.flatMap(({ size }) =>
      size?.tolerance && size.tolerance.kind !== 'reference'
        ? [
            {
              text: `${size.text} is shown for reference, but has a tolerance.`,
              span: size.tolerance.span,
              expected: `(${size.text})`,
            },
          ]
        : [],
    ),
}
