import { metricLimits, usualClass } from '../../../tolerance/threads/metric-limits.ts'
import { tapDrill } from '../../../tolerance/threads/tap-drill.ts'
import type { Thread } from '../../../tolerance/threads/thread.ts'
import { unifiedLimits } from '../../../tolerance/threads/unified-limits.ts'
import { typed } from '../../measure/said.ts'
import { tappedIn } from '../../measure/tapped.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'tap-drill',
  weight: 'must change',
  source: 'ASME B1.1 and ISO 965-1, limits of the minor diameter; ISO 2306 and Machinery’s Handbook, tap drills',
  about:
    'The drill before the tap lies within the limits of the thread’s minor diameter: larger strips, smaller breaks the tap.',
  reads: 'brief',
  check: ({ brief }) =>
    tappedIn(brief).flatMap(({ hole, thread }) => {
      if (!hole.threadDepth && hole.depth.kind === 'blind') return []
      // Without a drill of its own the hole carries the thread's nominal size.
      const nominal = thread.kind === 'metric' ? thread.diameter : 25.4 * thread.diameter
      if (Math.abs(hole.diameter.mm - nominal) < 1e-6) return []
      const [min, max] = minor(thread)
      if (hole.diameter.mm > min - 0.06 && hole.diameter.mm < max + 0.03) return []
      const drill = tapDrill(thread)
      const write = typed(thread.kind === 'metric' ? drill.diameter : 25.4 * drill.diameter, hole.diameter.unit)
      return [
        {
          text: `A drill of ⌀${hole.diameter.text} is too ${hole.diameter.mm < min ? 'small' : 'large'} for ${hole.thread!.text}.`,
          span: hole.diameter.span,
          expected: `⌀${write} (${drill.name})`,
          mends: [{ label: `Write ${write}`, span: hole.diameter.span, text: write }],
          numbers: [hole.thread!.text, hole.diameter.text],
        },
      ]
    }),
}

/** Limits of the minor diameter of the nut thread, mm; class 2B or 6H where none is stated. */
function minor(thread: Thread): readonly [number, number] {
  const unit = thread.kind === 'metric' ? 1 : 25.4
  const limits =
    thread.kind === 'metric'
      ? metricLimits(thread, thread.class?.internal ? thread.class : usualClass(thread, 'hole'))
      : unifiedLimits(thread, thread.class?.endsWith('B') ? thread.class : '2B')
  if (limits.ok && limits.value.of === 'hole') return [unit * limits.value.minor.min, unit * limits.value.minor.max]
  const pitch = thread.kind === 'metric' ? thread.pitch : 1 / thread.threadsPerInch
  return [unit * (thread.diameter - 1.0825 * pitch), unit * (thread.diameter - 0.85 * pitch)]
}
