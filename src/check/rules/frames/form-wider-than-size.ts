import type { Header } from '../../../brief/brief.ts'
import type { Size } from '../../../brief/size.ts'
import type { Part } from '../../../part/part.ts'
import { deviationsOf, width } from '../../measure/deviation.ts'
import { keepsEnvelope, sizeAcross } from '../../measure/form-rule.ts'
import { lengthOf } from '../../measure/frame-conditions.ts'
import { datumsOf, type HeldFrame, heldFrames } from '../../measure/framed.ts'
import { said as inUnits } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'form-wider-than-size',
  weight: 'must change',
  source:
    'ASME Y14.5-2018 5.8, Rule #1, and section 8: form within size; ISO 14405-1, Ⓔ: the limits of size hold the form too (from memory)',
  about:
    'Within the envelope a round is as true, and two sides are as flat and parallel, as the limits of size let them be. A tolerance of form, or of parallelism between those sides, that is as wide as the limits holds nothing. Asked on ASME sheets, unless Ⓘ stands with the size; on ISO sheets, where size and form are independent (ISO 8015), only where Ⓔ does.',
  reads: 'drawing',
  check: (subject) => {
    const { header } = subject.brief
    return heldFrames(subject).flatMap((held) => {
      const { characteristic, rows } = held.said.frame
      // A straight median line or a flat middle plane is meant to go beyond the limits.
      if (rows.some((r) => r.zone !== 'width' || r.material)) return []
      const size = sizeThatHolds(subject.part, held, subject)
      const limits = size && keepsEnvelope(size, header) && limitsOf(size, header)
      if (!limits) return []
      const value = lengthOf(rows[0]!.value, header.units)
      if (value < width(limits) - 1e-9) return []
      return [
        {
          text: `${characteristic[0]!.toUpperCase()}${characteristic.slice(1)} ${rows[0]!.value.text} is no finer than the size ${size.text} of ${held.feature!.id}, which varies by ${inUnits(width(limits), header.units)}.`,
          span: rows[0]!.value.span,
          expected: `less than ${inUnits(width(limits), header.units)}, or no frame`,
          numbers: [rows[0]!.value.text, inUnits(width(limits), header.units)],
        },
      ]
    })
  },
}

/** Stock as the mill rolls it is not held by the title block, and outside Rule #1 (Y14.5-2018 5.8.2). */
const limitsOf = (size: Size, header: Header) =>
  size.tolerance?.kind === 'stock' ? undefined : deviationsOf(size, header)

/** The size whose limits hold what the frame holds: of a round its diameter, of a face the size to the face behind it. */
function sizeThatHolds(
  part: Part,
  { said, feature }: HeldFrame,
  subject: Parameters<typeof datumsOf>[0],
): Size | undefined {
  const { characteristic, rows } = said.frame
  if (feature?.kind === 'round')
    return ['circularity', 'cylindricity', 'straightness'].includes(characteristic) && !feature.threaded
      ? feature.size
      : undefined
  if (feature?.kind !== 'plane') return undefined
  const across = sizeAcross(part, feature)
  if (characteristic === 'flatness' || characteristic === 'straightness')
    return tightest(
      across.map((a) => a.size),
      subject,
    )
  if (characteristic !== 'parallelism') return undefined
  // Parallel to the very face that the size runs to.
  const letters = rows[0]!.datums.length === 1 ? rows[0]!.datums[0]!.letters : []
  const datum = letters.length === 1 ? datumsOf(subject).find((d) => d.letter === letters[0])?.feature : undefined
  return across.find((a) => a.other === datum?.id)?.size
}

function tightest(sizes: readonly Size[], { brief }: Parameters<typeof datumsOf>[0]): Size | undefined {
  const wide = (s: Size) => {
    const d = keepsEnvelope(s, brief.header) ? limitsOf(s, brief.header) : undefined
    return d ? width(d) : Number.POSITIVE_INFINITY
  }
  return [...sizes].sort((a, b) => wide(a) - wide(b))[0]
}
