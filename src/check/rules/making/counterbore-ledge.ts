import { said } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

/** Least ledge a side that a head or washer can bear on, as a share of the hole. */
const SHARE = 0.1

export const rule: BriefRule = {
  name: 'counterbore-ledge',
  weight: 'must change',
  source: 'common practice, no source: a tenth of the hole a side; ISO 4762 heads leave about 0.25',
  about: 'A counterbore hardly wider than its hole leaves no ledge for a head to sit on.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      const bore = f.kind === 'hole' ? (f.counterbore ?? f.spotface) : undefined
      if (f.kind !== 'hole' || !bore) return []
      const ledge = (bore.diameter.mm - f.diameter.mm) / 2
      if (ledge >= SHARE * f.diameter.mm - 1e-6 || ledge <= 0) return []
      return [
        {
          text: `The counterbore leaves a ledge of ${said(ledge, bore.diameter.unit)} about the hole.`,
          span: bore.diameter.span,
          expected: `at least ⌀${said(f.diameter.mm * (1 + 2 * SHARE), bore.diameter.unit)}`,
          numbers: [f.diameter.text, bore.diameter.text],
        },
      ]
    }),
}
