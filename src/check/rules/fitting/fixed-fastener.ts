import type { HoleFeature } from '../../../brief/brief.ts'
import { nominalSize } from '../../../brief/thread.ts'
import { fixedTolerance, zoneOfPlusMinus } from '../../../tolerance/fasteners/fastener-formulas.ts'
import { deviationsOf, width } from '../../measure/deviation.ts'
import { said } from '../../measure/said.ts'
import { clearancesOf, screwOfThread } from '../../measure/screw.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'fixed-fastener',
  weight: 'look again',
  source: 'ASME Y14.5-2018, appendix B, fixed fasteners: H = F + T1 + T2 (from memory)',
  about:
    'Tapped holes hold their screws where they stand: the two parts share the clearance H − F. A pattern that alone may stray by more than the usual clearance hole has to spare will not bolt up.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      if (f.kind !== 'hole' || !f.thread || f.count.value < 2) return []
      const nominal = nominalSize(f.thread, brief.header.units)
      const screw = nominal && screwOfThread(f.thread.text)
      const wide = screw && clearancesOf(screw)[1]
      const strays = pitches(f).flatMap((size) => {
        if (isFramed(brief, f)) return []
        const d = deviationsOf(size, brief.header)
        return d ? [width(d) / 2] : []
      })
      if (!nominal || !screw || !wide || strays.length === 0) return []
      // Between neighbours the tolerance of a distance falls on two holes: each may stray by half of it.
      const zone = zoneOfPlusMinus((strays[0] ?? 0) / 2, (strays[1] ?? 0) / 2)
      const hole = wide.min * (screw.unit === 'inch' ? 25.4 : 1)
      const room = fixedTolerance(hole, screw.mm)
      if (zone <= room + 1e-9) return []
      const unit = brief.header.units
      return [
        {
          text: `The tapped holes may stray within ⌀${said(zone, unit)}; the usual clearance hole for ${screw.name} leaves ${said(room, unit)} for both parts together.`,
          span: f.thread.span,
          expected: 'closer tolerances at the distances, or a position frame with a projected zone',
          numbers: [f.thread.text, ...pitches(f).map((s) => s.text)],
        },
      ]
    }),
}

/** The distances that hold the holes of a pattern to one another, one a direction. */
const pitches = ({ placement }: HoleFeature) =>
  placement.kind === 'runs' ? placement.runs.flatMap((r) => (r.pitch ? [r.pitch] : [])) : []

/** Held in position by a frame, its zone speaks and not the distances. */
function isFramed({ frames = [] }: Parameters<BriefRule['check']>[0]['brief'], { label }: HoleFeature): boolean {
  return frames.some(
    (f) => f.frame.characteristic === 'position' && label !== undefined && f.of.text.endsWith(label.text),
  )
}
