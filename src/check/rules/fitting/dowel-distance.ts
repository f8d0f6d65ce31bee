import { deviationsOf, ownDeviations, width } from '../../measure/deviation.ts'
import { said } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'dowel-distance',
  weight: 'look again',
  source: 'ASME Y14.5-2018, appendix B; common practice for dowels',
  about: 'Two close-fitting pins go in only if the distance between them is held about as well as the holes.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      if (f.kind !== 'hole' || f.count.value < 2 || f.thread) return []
      const own = ownDeviations(f.diameter)
      if (!own || width(own) > 0.03 || f.placement.kind !== 'runs') return []
      if (
        brief.header.notes.some((n) =>
          /\b(in pairs|together|at assembly|on assembly|transfer|matched|position)\b/i.test(n.text),
        )
      )
        return []
      const pitches = f.placement.runs.flatMap((r) => (r.pitch && r.count.value > 1 ? [r.pitch] : []))
      return pitches.flatMap((pitch) => {
        const d = pitch.tolerance?.kind === 'basic' ? undefined : deviationsOf(pitch, brief.header)
        if (!d || width(d) <= 6 * width(own)) return []
        return [
          {
            text: `⌀${f.diameter.text} is held to ${said(width(own), f.diameter.unit)}, but the distance ${pitch.text} only to ±${said(width(d) / 2, pitch.unit)}: two pins will not go in.`,
            span: pitch.span,
            expected: 'a tolerance at the distance, or a note that both parts are drilled together',
            numbers: [f.diameter.text, pitch.text],
          },
        ]
      })
    }),
}
