import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'mass-unknown',
  weight: 'remark',
  source: 'common practice, no source',
  about: 'Where the words of the material are not known to the program, the drawing goes out without a mass.',
  reads: 'drawing',
  check: ({ part, brief }) =>
    brief.header.material && part.properties.mass === undefined
      ? [
          {
            text: `The density of “${brief.header.material.text}” is not known here; the title block carries no mass.`,
            span: brief.header.material.span,
            expected: 'a material by its usual words: carbon steel, EN-GJL-250, aluminum 6061-T6',
          },
        ]
      : [],
}
