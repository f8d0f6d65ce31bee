import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'revision-missing',
  weight: 'remark',
  source: 'ASME Y14.35: revision status on every drawing (from memory)',
  about: 'Without a revision letter nobody can tell which print is the newer.',
  reads: 'brief',
  check: ({ brief: { header } }) =>
    header.number && !header.revision
      ? [
          {
            text: `Drawing ${header.number.text} has no revision.`,
            span: header.number.span,
            expected: `${header.number.text}   rev A`,
          },
        ]
      : [],
}
