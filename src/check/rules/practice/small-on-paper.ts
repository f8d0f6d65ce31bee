import { holesOf } from '../../measure/cuts.ts'
import { said } from '../../measure/said.ts'
import type { SheetRule } from '../../rule.ts'

/** Smallest circle that can be told from a blot and still carry a centre mark, paper mm. */
const LEAST = 1

export const rule: SheetRule = {
  name: 'small-on-paper',
  weight: 'look again',
  source:
    'ISO 5455:1979, 4: details too small to be shown are drawn larger beside the view (from memory); 1 mm is common practice',
  about: 'A hole that prints smaller than a millimetre cannot be read; it wants a larger scale or a detail view.',
  reads: 'sheet',
  check: ({ part, sheet }) => {
    const scale = Math.max(0, ...sheet.views.filter((v) => v.id !== 'pictorial').map((v) => v.scale))
    const seen = new Set<string>()
    return holesOf(part).flatMap(({ of, r, callout }) => {
      if (scale === 0 || 2 * r * scale >= LEAST || seen.has(of.id)) return []
      seen.add(of.id)
      return [
        {
          text: `At ${sheet.scale} the ⌀${callout.diameter.text} of ${of.id} prints ${said(2 * r * scale, part.brief.header.units)} wide.`,
          span: callout.diameter.span,
          expected: 'a larger scale',
          feature: of.id,
          numbers: [callout.diameter.text, sheet.scale],
        },
      ]
    })
  },
}
