import { readThread } from '../../../tolerance/threads/read-thread.ts'
import { threadsWritten } from '../../measure/outside-threads.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'thread-class-missing',
  weight: 'look again',
  source:
    'ASME B1.1 section 6 and ASME B1.13M: the class is part of the designation; ISO 965-1 takes 6H and 6g for none (from memory)',
  about:
    'A unified thread is gauged to a class. In ISO practice a metric thread without one is 6H in a hole and 6g on a shaft.',
  reads: 'brief',
  check: ({ brief }) =>
    threadsWritten(brief).flatMap(({ words: { text, span }, outside }) => {
      const read = readThread(text)
      if (!read.ok || read.value.class) return []
      if (read.value.kind === 'metric' && brief.header.practice === 'ISO') return []
      const own = read.value.kind === 'unified' ? (outside ? '-2A' : '-2B') : outside ? ' - 6g' : ' - 6H'
      const write = `${text}${own}`
      const series = read.value.kind === 'metric' || /UN/i.test(text)
      return [
        {
          text: `${text} has no class of thread.`,
          span,
          expected: series ? write : `1/4-20 UNC${own}, with series and class`,
          ...(series ? { mends: [{ label: `Write ${write}`, span, text: write }] } : {}),
        },
      ]
    }),
}
