import { readThread } from '../../../tolerance/threads/read-thread.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'thread-unknown',
  weight: 'must change',
  source: 'ISO 261 and ASME B1.1, diameters and pitches; ISO 965-1, classes',
  about: 'A thread is one that the standards list: for another there is neither tap nor gauge.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      if (f.kind !== 'hole' || !f.thread || /^(G|R|Tr)|NPT/i.test(f.thread.text)) return []
      const { text, span } = f.thread
      const read = readThread(text)
      if (!read.ok) {
        const { problem } = read
        const at = problem.span ? { from: span.from + problem.span.from, to: span.from + problem.span.to } : span
        return [
          {
            text: problem.text,
            span: at,
            ...(problem.expected ? { expected: problem.expected } : {}),
            ...(problem.instead
              ? { mends: [{ label: `Write ${problem.instead}`, span: at, text: problem.instead }] }
              : {}),
          },
        ]
      }
      const external =
        read.value.kind === 'metric' ? read.value.class?.internal === false : read.value.class?.endsWith('A')
      if (!external) return []
      return [
        {
          text: `${text} is the class of a screw, but this is a hole.`,
          span,
          expected: read.value.kind === 'metric' ? 'a class with a capital, such as 6H' : 'a class with B, such as 2B',
        },
      ]
    }),
}
