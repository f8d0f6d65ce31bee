import { holesOf, slotEndsOf } from '../../measure/cuts.ts'
import { cutAt, isKeyseats, isSlits, ownersOf } from '../../measure/owners.ts'
import { said } from '../../measure/said.ts'
import { shareOfLeast } from '../../measure/small-part.ts'
import { fallsShort } from '../../measure/thumb.ts'
import { beside, worstLigaments } from '../../measure/worst.ts'
import type { DrawingRule } from '../../rule.ts'

/** Least material beside a hole, as a share of its diameter, and in mm; a large bore needs no more than the most. */
const SHARE = 0.15
const LEAST = 0.8
const MOST = 3

export const rule: DrawingRule = {
  name: 'hole-near-edge',
  weight: 'must change',
  source:
    'Machinery’s Handbook, edge distance of holes (from memory); the limits 0.15 D, 3 mm at most, and 0.8 mm, in proportion on a part under 25 mm across, are common practice, no source',
  about:
    'A web thinner than a seventh of the hole tears out at the drill or bulges; it wants a larger edge distance or an open slot.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const owners = ownersOf(part)
    const cuts = [...holesOf(part), ...slotEndsOf(part)]
    return worstLigaments(
      part,
      cuts,
      () => (edge) => !cutAt(owners, edge) && !isKeyseats(owners, edge) && !isSlits(owners, edge),
    ).flatMap(({ cut, least }) => {
      const wanted = Math.max(LEAST * shareOfLeast(part), Math.min(MOST, SHARE * 2 * cut.r) - least.wider)
      if (!fallsShort(least.mm, wanted)) return []
      const unit = brief.header.units
      return [
        {
          text: `${cut.id} leaves ${said(Math.max(0, least.mm), unit)} of material at the ${beside(part, cut, least.edge)}.`,
          span: cut.callout.span,
          expected: `at least ${said(wanted, unit)}`,
          feature: cut.of.id,
          numbers: [said(2 * cut.r, unit), said(least.mm, unit)],
        },
      ]
    })
  },
}
