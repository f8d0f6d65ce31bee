import { typed } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'pocket-corner-sharp',
  weight: 'must change',
  source: 'common practice, no source',
  about: 'A milling cutter is round: a pocket’s corners have its radius. Square ones are broached or eroded.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      if (f.kind !== 'pocket' || (f.cornerRadius?.mm ?? 0) > 0.05) return []
      const deep = f.depth.kind === 'blind' ? f.depth.size.mm : 0
      const radius = Math.max(1, Math.ceil(Math.max(deep / 8, Math.min(f.across.mm, f.up.mm) / 10)))
      const write = typed(radius, f.across.unit)
      return [
        {
          text: 'The pocket has sharp corners, which no cutter leaves.',
          span: f.cornerRadius?.span ?? f.span,
          expected: `corners R ${write}`,
          numbers: [f.across.text, f.up.text],
        },
      ]
    }),
}
