import { said, typed } from '../../measure/said.ts'
import { tappedIn } from '../../measure/tapped.ts'
import type { BriefRule } from '../../rule.ts'

/** Pitches of drilled depth below the last full thread. */
const RUNOUT = 3

export const rule: BriefRule = {
  name: 'tap-runout',
  weight: 'must change',
  source:
    'DIN 76-1, short thread run-out of tapped blind holes, about 3 pitches; Machinery’s Handbook, taps (from memory)',
  about: 'A tap has a lead of two to five pitches and needs room for it, and for chips, below the last full thread.',
  reads: 'brief',
  check: ({ brief }) =>
    tappedIn(brief).flatMap(({ hole, pitch }) => {
      if (hole.depth.kind !== 'blind' || !hole.threadDepth) return []
      const room = hole.depth.size.mm - hole.threadDepth.mm
      if (room >= RUNOUT * pitch - 0.05) return []
      const { unit, span } = hole.depth.size
      const write = typed(hole.threadDepth.mm + Math.ceil(10 * RUNOUT * pitch) / 10, unit)
      return [
        {
          text: `${said(room, unit)} below the last thread of ${hole.thread!.text} is ${(room / pitch).toFixed(1)} pitches: the tap strikes the bottom.`,
          span,
          expected: `a drill at least ${RUNOUT} pitches deeper than the thread: ${write}`,
          mends: [{ label: `Drill ${write} deep`, span, text: write }],
          numbers: [hole.thread!.text, hole.threadDepth.text, hole.depth.size.text],
        },
      ]
    }),
}
