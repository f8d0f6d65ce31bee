import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'flat-bottom',
  weight: 'remark',
  source: 'common practice, no source',
  about: 'A drill leaves a cone. A flat bottom takes a second tool, and for small deep holes there is none.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      if (f.kind !== 'hole' || f.depth.kind !== 'blind' || f.point?.value !== 180) return []
      const ratio = f.depth.size.mm / f.diameter.mm
      if (ratio <= 1 && f.diameter.mm >= 3) return []
      return [
        {
          text: `A flat bottom ${ratio.toFixed(1)} diameters down takes an end mill after the drill. Is it needed?`,
          span: f.point.span,
          expected: 'the drill’s own point',
          weight: ratio > 4 ? ('look again' as const) : ('remark' as const),
          numbers: [f.diameter.text, f.depth.size.text],
        },
      ]
    }),
}
