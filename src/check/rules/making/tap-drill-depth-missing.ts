import { tapDrill } from '../../../tolerance/threads/tap-drill.ts'
import { pointOf, roomAhead } from '../../measure/ahead.ts'
import { holesOf } from '../../measure/cuts.ts'
import { typed } from '../../measure/said.ts'
import { tappedIn } from '../../measure/tapped.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'tap-drill-depth-missing',
  weight: 'look again',
  source: 'ASME Y14.5-2018, 4.6; ISO 6410-1: depth of thread and depth of drill for blind holes (from memory)',
  about:
    'A blind tapped hole has two depths, of the drill and of the full thread. With one of them, the shop guesses the other.',
  reads: 'drawing',
  check: ({ brief, part }) =>
    tappedIn(brief).flatMap(({ hole, thread, pitch }) => {
      if (hole.depth.kind !== 'blind' || hole.threadDepth) return []
      const { size } = hole.depth
      const drill = tapDrill(thread)
      const wide = typed(thread.kind === 'metric' ? drill.diameter : 25.4 * drill.diameter, size.unit)
      const drilled = size.mm + 4 * pitch
      const deep = typed(drilled, size.unit)
      const room = Math.min(
        ...holesOf(part)
          .filter((h) => h.callout === hole)
          .map((h) => roomAhead(part, h) - pointOf(h)),
      )
      const numbers = [hole.thread!.text, size.text]
      if (drilled > room) {
        return [
          {
            text: `${hole.thread!.text} has one depth: of the thread, or of the drill? A drill 4 pitches deeper than ${size.text} breaks through.`,
            span: size.span,
            expected: `THRU up to the open space, another place, or a drill at most ${typed(Math.max(0, room), size.unit)} deep and a thread 3 pitches short of that`,
            numbers,
          },
        ]
      }
      return [
        {
          text: `${hole.thread!.text} has one depth: of the thread, or of the drill?`,
          span: size.span,
          expected: `${hole.thread!.text} ↧ ${size.text}, drill ⌀${wide} ↧ ${deep}`,
          mends: [
            { label: `Drill ⌀${wide} ↧ ${deep}`, span: size.span, text: `${size.text}, drill ⌀${wide} ↧ ${deep}` },
          ],
          numbers,
        },
      ]
    }),
}
