import { screwFor } from '../../measure/screw.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'countersink-angle',
  weight: 'look again',
  source: 'ISO 7721, ISO 10642: 90°; ASME B18.3, B18.6.3: 82° (100° for aircraft) (from memory)',
  about: 'Metric flat heads are 90°, inch ones 82°. The wrong angle holds the head by a ring only.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      // Before a tap a countersink is only the lead.
      if (f.kind !== 'hole' || !f.countersink || f.thread) return []
      const { angle } = f.countersink
      const unit = screwFor(f)?.unit ?? f.diameter.unit
      const usual = unit === 'inch' ? [82, 100] : [90]
      if (usual.includes(angle.value) || angle.tolerance) return []
      return [
        {
          text: `A countersink of ${angle.text}° takes no ${unit === 'inch' ? 'inch' : 'metric'} flat head.`,
          span: angle.span,
          expected: `${usual[0]}°`,
          mends: [{ label: `Write ${usual[0]}`, span: angle.span, text: String(usual[0]) }],
          numbers: [f.diameter.text, angle.text],
        },
      ]
    }),
}
