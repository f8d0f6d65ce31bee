import type { HoleFeature, Placement } from '../../../brief/brief.ts'
import type { Size } from '../../../brief/size.ts'
import { floatingTolerance, zoneOfPlusMinus } from '../../../tolerance/fasteners/fastener-formulas.ts'
import { deviationsOf, width } from '../../measure/deviation.ts'
import { said } from '../../measure/said.ts'
import { screwFor } from '../../measure/screw.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'pattern-clearance',
  weight: 'look again',
  source: 'ASME Y14.5-2018, appendix B, floating fasteners: T = H − F (from memory)',
  about:
    'The holes of a pattern may stray by their clearance, H − F. If the distances may stray by more, some parts will not bolt up.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      if (f.kind !== 'hole' || f.count.value < 2) return []
      const screw = screwFor(f)
      const strays = spread(f, f.placement).map((size) => {
        const d = deviationsOf(size, brief.header)
        return d ? width(d) / 2 : 0
      })
      if (!screw || strays.length === 0) return []
      // Between neighbours the tolerance of a distance falls on two holes: each may stray by half of it.
      const zone = zoneOfPlusMinus((strays[0] ?? 0) / 2, (strays[1] ?? 0) / 2)
      const room = floatingTolerance(f.diameter.mm, screw.mm)
      if (zone <= room + 1e-9) return []
      const unit = f.diameter.unit
      return [
        {
          text: `The holes may stray within ⌀${said(zone, unit)}, but ⌀${f.diameter.text} gives ${screw.name} only ${said(room, unit)}.`,
          span: f.diameter.span,
          expected: 'a closer tolerance at the distances, or a larger hole',
          numbers: [f.diameter.text, ...spread(f, f.placement).map((s) => s.text)],
        },
      ]
    }),
}

/** The sizes that hold the holes of a pattern to one another, one a direction. */
function spread(hole: HoleFeature, placement: Placement): Size[] {
  if (placement.kind === 'runs') return placement.runs.flatMap((r) => (r.pitch ? [r.pitch] : []))
  if (placement.kind === 'points' && hole.count.value > 1)
    return placement.points.slice(0, 1).flatMap((p) => [p.a, p.b])
  return []
}
