import { readThread } from '../../../tolerance/threads/read-thread.ts'
import { threadsWritten } from '../../measure/outside-threads.ts'
import type { BriefRule } from '../../rule.ts'

const metric = new Set([1, 1.2, 1.6, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 30, 36, 42, 48, 56, 64])
const inch = new Set(['#1', '#3', '#5', '#12', '9/16', '11/16', '13/16', '15/16'])

export const rule: BriefRule = {
  name: 'thread-uncommon',
  weight: 'remark',
  source: 'ISO 261, first choice diameters; ASME B1.1, secondary sizes (from memory)',
  about: 'Second-choice diameters are stocked by few; taps, dies and screws come by order.',
  reads: 'brief',
  check: ({ brief }) =>
    threadsWritten(brief).flatMap(({ words }) => {
      const read = readThread(words.text)
      if (!read.ok) return []
      const { value: thread } = read
      const odd = thread.kind === 'metric' ? !metric.has(thread.diameter) : inch.has(thread.size)
      if (!odd) return []
      return [
        {
          text: `${words.text} is a second-choice thread.`,
          span: words.span,
          expected: 'a first-choice diameter beside it',
          numbers: [words.text],
        },
      ]
    }),
}
