import { heldFrames } from '../../measure/framed.ts'
import type { DrawingRule, Finding } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'datum-order-differs',
  weight: 'remark',
  source:
    'ASME Y14.5-2018 section 7, simultaneous requirements; ISO 5459: the order is part of the datum system (from memory)',
  about:
    'The same letters in another order are another set-up: the two patterns are no longer held to each other, and the part is gauged twice.',
  reads: 'drawing',
  check: (subject) => {
    const rows = heldFrames(subject).flatMap(({ said, feature }) =>
      said.frame.characteristic === 'position' && feature
        ? [
            {
              row: said.frame.rows[0]!,
              id: feature.id,
              names: said.frame.rows[0]!.datums.map((d) => d.letters.join('-')),
            },
          ]
        : [],
    )
    return rows.flatMap(({ row, id, names }, i): Finding[] => {
      const other = rows
        .slice(0, i)
        .find((r) => r.names.join() !== names.join() && [...r.names].sort().join() === [...names].sort().join())
      if (!other) return []
      return [
        {
          text: `${id} is held to ${names.join(' ')}, ${other.id} to ${other.names.join(' ')}: the same datums in another order.`,
          span: row.span,
          expected: `${other.names.join(' ')}, if both are gauged in one set-up`,
          numbers: [...names, ...other.names],
        },
      ]
    })
  },
}
