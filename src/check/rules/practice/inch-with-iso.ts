import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'inch-with-iso',
  weight: 'look again',
  source: 'ISO 129-1:2018: linear sizes in millimetres (from memory)',
  about: 'ISO drawings are in millimetres; an inch sheet by ISO will be read wrongly somewhere.',
  reads: 'brief',
  check: ({ brief: { header } }) =>
    header.practice === 'ISO' && header.units === 'inch'
      ? [
          {
            text: 'The sheet is drawn by ISO, but its sizes are in inches.',
            ...(header.said?.units ? { span: header.said.units } : {}),
            expected: 'units mm, or practice ASME',
          },
        ]
      : [],
}
