import type { Header } from '../../brief/brief.ts'
import type { Num, Size } from '../../brief/size.ts'
import { generalTolerance } from '../../tolerance/general/title-block.ts'
import { fitLimits } from '../../tolerance/iso286/limits.ts'

export interface Deviations {
  readonly upper: number
  readonly lower: number
}

/** Deviations in mm that stand beside the size itself; undefined where the title block governs, or nothing does. */
export function ownDeviations(size: Size): Deviations | undefined {
  const own = size.tolerance
  const mm = (n: Num) => n.value * (size.unit === 'inch' ? 25.4 : 1)
  switch (own?.kind) {
    case 'plus-minus':
      return { upper: mm(own.value), lower: -mm(own.value) }
    case 'unequal':
      return { upper: mm(own.upper), lower: mm(own.lower) }
    case 'limits':
      return { upper: mm(own.upper) - size.mm, lower: mm(own.lower) - size.mm }
    case 'fit': {
      const fit = fitLimits(own.symbol, size.mm)
      return fit.ok ? { upper: fit.value.upper, lower: fit.value.lower } : undefined
    }
    default:
      return undefined
  }
}

/** Deviations in mm, from the size itself or the title block. */
export function deviationsOf(size: Size, header: Header): Deviations | undefined {
  const own = ownDeviations(size)
  if (own || size.tolerance) return own
  const general = generalTolerance(header, size)
  return general.ok ? { upper: general.value.plusMinus, lower: -general.value.plusMinus } : undefined
}

/** Width of a tolerance zone, mm. */
export const width = (d: Deviations): number => d.upper - d.lower
