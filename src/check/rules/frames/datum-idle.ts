import { locatedBy, sizeOf } from '../../measure/datum-reach.ts'
import { basisOf, heldBy } from '../../measure/freedoms.ts'
import type { DrawingRule, Finding } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'datum-idle',
  weight: 'look again',
  source: 'ASME Y14.5-2018 section 7, ISO 5459:2011: each datum holds what those before it left free (from memory)',
  about:
    'A datum that holds nothing which those before it have not held already adds nothing to the frame; another feature was meant, or another order.',
  reads: 'drawing',
  check: (subject) => {
    const { part } = subject
    const size = sizeOf(part)
    return locatedBy(subject, () => true).flatMap(({ row, datums }) =>
      datums.flatMap(({ name, elements }, i): Finding[] => {
        if (i === 0) return []
        const before = datums.slice(0, i)
        const held = before.flatMap((d) => d.elements.flatMap((e) => heldBy(e, size)))
        const rank = basisOf(held).length
        if (basisOf([...held, ...elements.flatMap((e) => heldBy(e, size))]).length > rank) return []
        const span = row.datums[i]!.span
        return [
          {
            text: `Datum ${name} holds nothing that ${before.map((d) => d.name).join(', ')} ${before.length > 1 ? 'leave' : 'leaves'} free.`,
            span,
            expected: 'another datum, or the frame without it',
            numbers: datums.map((d) => d.name),
          },
        ]
      }),
    )
  },
}
