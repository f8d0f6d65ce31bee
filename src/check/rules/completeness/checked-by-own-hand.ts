import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'checked-by-own-hand',
  weight: 'look again',
  source: 'common practice, no source',
  about: 'Nobody finds his own mistakes: the checker is another than the one who drew.',
  reads: 'brief',
  check: ({ brief: { header } }) => {
    const { drawn, checked } = header
    if (!drawn || !checked || drawn.name.text.trim().toLowerCase() !== checked.name.text.trim().toLowerCase()) return []
    return [
      {
        text: `${checked.name.text} has checked his or her own drawing.`,
        span: checked.name.span,
        expected: 'the name of somebody else',
      },
    ]
  },
}
