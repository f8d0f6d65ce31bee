import { characteristics } from '../../../brief/frame/frame.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'all-around-not-profile',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 11, ISO 1101:2017 clause 8: all around goes with a profile (from memory)',
  about: 'Only a profile can run all around a border; other characteristics hold one feature.',
  reads: 'brief',
  check: ({ brief }) =>
    (brief.frames ?? []).flatMap(({ frame, allAround, of }) =>
      allAround && characteristics[frame.characteristic].family !== 'profile'
        ? [
            {
              text: `${frame.characteristic[0]!.toUpperCase()}${frame.characteristic.slice(1)} of ${of.text} cannot run all around.`,
              span: frame.span,
              expected: 'a profile, or no “all around”',
            },
          ]
        : [],
    ),
}
