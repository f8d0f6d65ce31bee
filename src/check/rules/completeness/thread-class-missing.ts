import { readThread } from '../../../tolerance/threads/read-thread.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'thread-class-missing',
  weight: 'look again',
  source:
    'ASME B1.1 section 6 and ASME B1.13M: the class is part of the designation; ISO 965-1 takes 6H for none (from memory)',
  about: 'A unified thread is gauged to a class. In ISO practice a metric thread without one is 6H.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      if (f.kind !== 'hole' || !f.thread) return []
      const read = readThread(f.thread.text)
      if (!read.ok || read.value.class) return []
      if (read.value.kind === 'metric' && brief.header.practice === 'ISO') return []
      const write = read.value.kind === 'unified' ? `${f.thread.text}-2B` : `${f.thread.text} - 6H`
      const series = read.value.kind === 'metric' || /UN/i.test(f.thread.text)
      return [
        {
          text: `${f.thread.text} has no class of thread.`,
          span: f.thread.span,
          expected: series ? write : '1/4-20 UNC-2B, with series and class',
          ...(series ? { mends: [{ label: `Write ${write}`, span: f.thread.span, text: write }] } : {}),
        },
      ]
    }),
}
