import { sizesOf } from '../../measure/all-sizes.ts'
import { ownDeviations, width } from '../../measure/deviation.ts'
import { quoted } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

/** Tolerances below this are eaten up by a plated layer on both sides, mm. */
const TIGHT = 0.06

export const rule: BriefRule = {
  name: 'coating-on-fits',
  weight: 'look again',
  source:
    'ASME Y14.5-2018, 4.1(o); ISO 8015:2011: the drawing says whether sizes hold before or after coating (from memory)',
  about:
    'A layer of 5 to 25 µm a side moves a fit or a thread out of its limits. The drawing says whether sizes apply before or after coating.',
  reads: 'brief',
  check: ({ brief }) => {
    const { coating, notes, practice } = brief.header
    if (!coating || !/plate|plating|zinc|nickel|chrom(?!ate conv)|galvani[sz]|anodi[sz]|powder/i.test(coating.text))
      return []
    const answers = [coating.text, ...notes.map((n) => n.text)]
    if (
      answers.some((t) =>
        /\b(before|after|prior to|mask\w*|except|free of)\b.*\b(coat|plat|anodi|galvani|zinc)|\bmask|sizes apply|\b(except|bores? free)\b/i.test(
          t,
        ),
      )
    )
      return []
    const tight = sizesOf(brief).find(({ size }) => {
      const own = ownDeviations(size)
      return own !== undefined && width(own) < TIGHT && size.tolerance?.kind !== 'stock'
    })
    if (!tight) return []
    return [
      {
        text: `${quoted(tight.size)} is coated: does it apply before or after?`,
        span: tight.size.span,
        expected:
          practice === 'ASME'
            ? 'note      Sizes apply after coating.'
            : 'note      Sizes apply after coating. (Or: bore masked.)',
        numbers: [quoted(tight.size)],
      },
    ]
  },
}
