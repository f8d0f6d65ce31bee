import type { GeneralTolerance } from '../../../brief/brief.ts'
import type { Num } from '../../../brief/size.ts'
import type { BriefRule, Finding } from '../../rule.ts'

/** Widest that title blocks in inches go, by decimals. */
const MOST: Readonly<Record<number, number>> = { 1: 0.25, 2: 0.08, 3: 0.025 }

type Decimals = Extract<GeneralTolerance, { kind: 'decimals' }>

export const rule: BriefRule = {
  name: 'general-out-of-step',
  weight: 'must change',
  source: 'common practice, no source: more decimals, finer tolerance',
  about:
    'In a title block with tolerances by decimals each further decimal means a finer tolerance. Where they run the other way, two figures were swapped or a point slipped.',
  reads: 'brief',
  check: ({ brief: { header } }) => {
    const classes = header.general.filter((g): g is Decimals => g.kind === 'decimals')
    const ordered = [...classes].sort((a, b) => a.decimals - b.decimals)
    const turned = ordered.flatMap((fine, i): Finding[] => {
      const coarse = ordered[i - 1]
      if (!coarse || fine.plusMinus.value < coarse.plusMinus.value) return []
      return [
        {
          text: `${named(fine)} ±${fine.plusMinus.text} is no finer than ${named(coarse)} ±${coarse.plusMinus.text}.`,
          span: fine.plusMinus.span,
          expected: `less than ±${coarse.plusMinus.text}`,
          numbers: [coarse.plusMinus.text, fine.plusMinus.text],
        },
      ]
    })
    const wide = ordered.flatMap((g): Finding[] => {
      const most = header.units === 'inch' ? MOST[g.decimals] : undefined
      return most === undefined || g.plusMinus.value <= most ? [] : [tooWide(g, g.plusMinus)]
    })
    return turned.length > 0 ? turned : wide.map((f) => ({ ...f, weight: 'look again' as const }))
  },
}

const named = ({ decimals }: Decimals): string => `.${'X'.repeat(decimals)}`

const tooWide = (g: Decimals, { text, span }: Num): Finding => ({
  text: `${named(g)} ±${text} is wider than such decimals ever are.`,
  span,
  expected: 'a tolerance such as .XX ±.01, .XXX ±.005',
  numbers: [text],
})
