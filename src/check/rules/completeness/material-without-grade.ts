import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'material-without-grade',
  weight: 'look again',
  source: 'common practice, no source',
  about:
    'A material is a grade of a specification. “Steel” alone leaves strength, weldability and price to whoever buys it.',
  reads: 'brief',
  check: ({ brief }) => {
    const { material } = brief.header
    // Every grade and every specification carries a figure.
    if (!material || /\d|\b(pom|ptfe|pvc|pmma|pe-\w+)\b/i.test(material.text)) return []
    return [
      {
        text: `“${material.text}” names no grade and no specification.`,
        span: material.span,
        expected: 'a grade and the specification it is bought to: C45E EN ISO 683-1, 6061-T6 ASTM B308',
      },
    ]
  },
}
