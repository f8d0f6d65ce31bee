import { deviationsOf, width } from '../../measure/deviation.ts'
import { lengthOf } from '../../measure/frame-conditions.ts'
import { heldFrames } from '../../measure/framed.ts'
import { said as inUnits } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'form-wider-than-size',
  weight: 'must change',
  source: 'ASME Y14.5-2018 5.8, Rule #1: the limits of size hold the form too (from memory)',
  about:
    'Under Rule #1 a round or parallel feature is as true as its limits of size at least. A form tolerance as wide as the limits lets nothing go and holds nothing. ISO sheets keep form and size apart (ISO 8015) and are not asked.',
  reads: 'drawing',
  check: (subject) => {
    const { header } = subject.brief
    if (header.practice !== 'ASME') return []
    return heldFrames(subject).flatMap(({ said, feature }) => {
      const { characteristic, rows } = said.frame
      // A straight median line or a flat middle plane is meant to go beyond the limits.
      const surface = ['circularity', 'cylindricity', 'straightness'].includes(characteristic)
      const derived = rows.some((r) => r.zone !== 'width' || r.material)
      const limits = feature?.kind === 'round' && feature.size && deviationsOf(feature.size, header)
      if (!surface || derived || !limits) return []
      const value = lengthOf(rows[0]!.value, header.units)
      if (value < width(limits) - 1e-9) return []
      return [
        {
          text: `${characteristic[0]!.toUpperCase()}${characteristic.slice(1)} ${rows[0]!.value.text} is no finer than the size of ${feature.id}, which varies by ${inUnits(width(limits), header.units)}.`,
          span: rows[0]!.value.span,
          expected: `less than ${inUnits(width(limits), header.units)}, or no frame`,
        },
      ]
    })
  },
}
