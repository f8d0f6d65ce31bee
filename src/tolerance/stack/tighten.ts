import { halfWidth, type Link } from './link.ts'
import { keeps, type Requirement, type Stack } from './stack.ts'

export type Method = 'worst case' | 'root-sum-square'

/** One way to make a stack keep to its requirement: a single link made finer. */
export interface Tightening {
  readonly link: Link
  /** Half width that the link would need, in its own unit; undefined when even zero would not do. */
  readonly half: number | undefined
  /** The new half width as a share of the present one. */
  readonly share: number | undefined
}

export interface Advice {
  readonly method: Method
  readonly keeps: boolean
  /** Room on the nearer side from the middle to the requirement; negative when the middle itself lies outside. */
  readonly room: number
  /** Move of the middle that would use both sides alike; 0 with a one-sided requirement that has room. */
  readonly shift: number
  /** Greatest contributor first; the first with a `half` is the one to tighten. */
  readonly single: readonly Tightening[]
  /** Share to which all tolerances would have to shrink together; undefined when that cannot help. */
  readonly together: number | undefined
  readonly sentence: string
}

/** Which size to tighten, and to what, so that the result keeps to a requirement. */
export function tighten(result: Stack, wanted: Requirement, method: Method): Advice {
  const range = method === 'worst case' ? result.worstCase : result.rootSumSquare
  const half = (range.max - range.min) / 2
  const above = (wanted.max ?? Number.POSITIVE_INFINITY) - result.middle
  const below = result.middle - (wanted.min ?? Number.NEGATIVE_INFINITY)
  const room = Math.min(above, below)
  const fits = keeps(range, wanted)
  const power = method === 'worst case' ? 1 : 2
  const single = [...result.contributions]
    .sort((a, b) => b.half - a.half)
    .map(({ link, half: own }): Tightening => {
      const left = room ** power - (half ** power - own ** power)
      if (room < 0 || left < 0 || own === 0) return { link, half: undefined, share: undefined }
      const allowed = left ** (1 / power)
      return { link, half: Math.min(allowed, own) / Math.abs(link.sensitivity), share: Math.min(1, allowed / own) }
    })
  const together = room < 0 || half === 0 ? undefined : Math.min(1, room / half)
  const both = Number.isFinite(above) && Number.isFinite(below)
  const shift = both ? (above - below) / 2 : room < 0 ? (above < below ? room : -room) : 0
  return { method, keeps: fits, room, shift, single, together, sentence: sentence() }

  function sentence(): string {
    if (fits) return `Keeps by ${method}.`
    if (room < 0)
      return `The middle lies ${text(-room)} outside: move it by ${text(shift)}; tighter sizes alone do not help.`
    const best = single.find((each) => each.half !== undefined)
    if (best) return `Tighten ${best.link.name} from ±${text(halfWidth(best.link))} to ±${text(best.half!)}.`
    return `No single size will do: all would have to shrink to ${Math.floor(together! * 100)} %.`
  }
}

function text(value: number): string {
  return String(Number(value.toPrecision(4)))
}
