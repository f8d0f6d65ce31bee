import type { Unit } from '../../brief/size.ts'
import { typed } from '../measure/said.ts'
import type { SizeLink } from './links.ts'
import type { StackUp } from './stack-up.ts'

/** A half tolerance that nobody can hold, mm. */
const LEAST = 0.0005

/** Which size to tighten and to what, in the drafter's unit; without limits the one that counts most. */
export function whatToTighten(unit: Unit, { advice, result, wanted }: StackUp): string {
  const asked = wanted.min !== undefined || wanted.max !== undefined
  const [most] = result.contributions
  if (!asked || advice.keeps) {
    if (!most || most.half === 0) return 'nothing to tighten'
    return `${most.link.name} counts most, ${percent(most.varianceShare)} of the variance`
  }
  if (advice.room < LEAST) return 'other nominal sizes: the middle itself lies at the limit or outside'
  const best = advice.single.find((s) => s.half !== undefined && s.half > LEAST)
  if (best?.half !== undefined)
    return `${best.link.name} held to ±${isAngle(best.link) ? Number(best.half.toFixed(3)) : typed(best.half, unit)}`
  return `all of them held to ${Math.floor((advice.together ?? 0) * 100)} % of what they are`
}

export const percent = (share: number): string => `${Math.round(100 * share)} %`

const isAngle = (link: object): boolean => 'unit' in link && (link as SizeLink).unit === 'degrees'
