import { dot } from '../../../geometry/vec3.ts'
import type { BodyEdge } from '../../../kernel/body.ts'
import { holesOf, type RoundCut, slotEndsOf } from '../../measure/cuts.ts'
import { breaksIn, cutAt, isKeyseats, ownersOf } from '../../measure/owners.ts'
import { said } from '../../measure/said.ts'
import { shareOfLeast } from '../../measure/small-part.ts'
import { fallsShort } from '../../measure/thumb.ts'
import { worstLigaments } from '../../measure/worst.ts'
import type { DrawingRule } from '../../rule.ts'

const SHARE = 0.15
const LEAST = 0.8
const MOST = 3

export const rule: DrawingRule = {
  name: 'wall-between-holes',
  weight: 'must change',
  source:
    'common practice, no source: 0.15 of the smaller diameter, 3 mm at most, 0.8 mm at least; in proportion on a part under 25 mm across',
  about: 'Between two holes there must be material enough to stand while the second one is drilled.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const owners = ownersOf(part)
    const cuts = [...holesOf(part), ...slotEndsOf(part)]
    const between = (cut: RoundCut) => (edge: BodyEdge) => {
      const other = cutAt(owners, edge)
      // what crosses a keyseat ends in it, and not in the wall beside its bore
      return other !== undefined && !isKeyseats(owners, edge) && !breaksIn(other) && !breaksIn(cut.of)
    }
    return worstLigaments(part, cuts, between).flatMap(({ cut, least }) => {
      const other = cutAt(owners, least.edge)!
      const smaller = Math.min(cut.r, ...cuts.filter((c) => c.of.id === other.id).map((c) => c.r))
      const wanted = Math.max(LEAST * shareOfLeast(part), Math.min(MOST, SHARE * 2 * smaller) - least.wider)
      if (!fallsShort(least.mm, wanted)) return []
      // holes that cross are meant to meet
      if (least.mm < 1e-6 && Math.abs(dot(cut.of.outward, other.outward)) < 0.99) return []
      const unit = brief.header.units
      return [
        {
          text: `Between ${cut.id} and ${other.id === cut.of.id ? 'its neighbour' : other.id} stand ${said(Math.max(0, least.mm), unit)} of material.`,
          span: cut.callout.span,
          expected: `at least ${said(wanted, unit)}`,
          feature: cut.of.id,
          numbers: [said(2 * cut.r, unit), said(least.mm, unit)],
        },
      ]
    })
  },
}
