import { readThread } from '../../../tolerance/threads/read-thread.ts'
import { threadsWritten } from '../../measure/outside-threads.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'thread-unknown',
  weight: 'must change',
  source: 'ISO 261 and ASME B1.1, diameters and pitches; ISO 965-1, classes',
  about: 'A thread is one that the standards list: for another there is neither tap nor gauge.',
  reads: 'brief',
  check: ({ brief }) =>
    threadsWritten(brief).flatMap(({ words: { text, span }, outside }) => {
      if (/^(G|R|Tr)|NPT/i.test(text)) return []
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
      const metric = read.value.kind === 'metric'
      const screw =
        read.value.kind === 'metric' ? read.value.class?.internal === false : read.value.class?.endsWith('A')
      const nut = read.value.kind === 'metric' ? read.value.class?.internal === true : read.value.class?.endsWith('B')
      if (outside ? !nut : !screw) return []
      return [
        {
          text: outside
            ? `${text} is the class of a nut, but this is a shaft.`
            : `${text} is the class of a screw, but this is a hole.`,
          span,
          expected: outside
            ? metric
              ? 'a class with a small letter, such as 6g'
              : 'a class with A, such as 2A'
            : metric
              ? 'a class with a capital, such as 6H'
              : 'a class with B, such as 2B',
        },
      ]
    }),
}
