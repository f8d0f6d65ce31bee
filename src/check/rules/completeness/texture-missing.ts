import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'texture-missing',
  weight: 'look again',
  source: 'ISO 21920-1:2021, general surface texture near the title block; ASME Y14.36 (from memory)',
  about: 'Without a general surface texture, as sawn and as ground are both to the drawing.',
  reads: 'brief',
  check: ({ brief: { header } }) =>
    header.texture
      ? []
      : [
          {
            text: 'The drawing gives no surface texture.',
            expected: header.units === 'inch' ? 'texture   125 µin' : 'texture   Ra 3.2',
          },
        ],
}
