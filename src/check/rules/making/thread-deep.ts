import { said } from '../../measure/said.ts'
import { tappedIn } from '../../measure/tapped.ts'
import type { BriefRule } from '../../rule.ts'

/** Full thread over diameter beyond which more adds no strength. */
const MOST = 3

export const rule: BriefRule = {
  name: 'thread-deep',
  weight: 'look again',
  source: 'Machinery’s Handbook, tapping: thread beyond 2 to 3 diameters adds no strength (from memory)',
  about: 'The first few threads carry the load. A deeper thread costs taps.',
  reads: 'brief',
  check: ({ brief }) =>
    tappedIn(brief).flatMap(({ hole, diameter }) => {
      const size = hole.threadDepth ?? (hole.depth.kind === 'blind' ? hole.depth.size : undefined)
      if (!size || size.mm <= MOST * diameter + 1e-6) return []
      return [
        {
          text: `${hole.thread!.text} is threaded ${(size.mm / diameter).toFixed(1)} diameters deep.`,
          span: size.span,
          expected: `at most ${said(MOST * diameter, size.unit)}`,
          numbers: [hole.thread!.text, size.text],
        },
      ]
    }),
}
