import { tapDrill } from '../../../tolerance/threads/tap-drill.ts'
import { typed } from '../../measure/said.ts'
import { tappedIn } from '../../measure/tapped.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'tap-drill-depth-missing',
  weight: 'look again',
  source: 'ASME Y14.5-2018, 4.6; ISO 6410-1: depth of thread and depth of drill for blind holes (from memory)',
  about:
    'A blind tapped hole has two depths, of the drill and of the full thread. With one of them, the shop guesses the other.',
  reads: 'brief',
  check: ({ brief }) =>
    tappedIn(brief).flatMap(({ hole, thread, pitch }) => {
      if (hole.depth.kind !== 'blind' || hole.threadDepth) return []
      const { size } = hole.depth
      const drill = tapDrill(thread)
      const wide = typed(thread.kind === 'metric' ? drill.diameter : 25.4 * drill.diameter, size.unit)
      const deep = typed(size.mm + 4 * pitch, size.unit)
      return [
        {
          text: `${hole.thread!.text} has one depth: of the thread, or of the drill?`,
          span: size.span,
          expected: `${hole.thread!.text} ↧ ${size.text}, drill ⌀${wide} ↧ ${deep}`,
          mends: [
            { label: `Drill ⌀${wide} ↧ ${deep}`, span: size.span, text: `${size.text}, drill ⌀${wide} ↧ ${deep}` },
          ],
          numbers: [hole.thread!.text, size.text],
        },
      ]
    }),
}
