import type { Side, TurnedStep, TurnedStock } from '../../brief/brief.ts'
import type { Workshop } from '../workshop.ts'

type Ends = readonly [low: Side, high: Side]

/** Whether the step's own diameter is that of its low end: left, front or bottom. */
export function givesLowEnd({ endDiameter, taper }: TurnedStep, [low]: Ends): boolean {
  // with both diameters said, the first is the low end's
  if (!taper || endDiameter) return true
  return (taper.toward === low) === (taper.given === 'small')
}

/**
 * Radii of each step at its low and high end, mm. By its rate a taper's other diameter is the given one less (or more)
 * rate × length (ISO 3040:2016 3.1, from memory). Undefined, with a mark, where a taper cannot be as said.
 */
export function stepEnds(
  shop: Workshop,
  stock: TurnedStock,
  places: readonly { readonly h0: number; readonly h1: number }[],
  ends: Ends,
): { readonly r0: number; readonly r1: number }[] | undefined {
  const all = stock.steps.map((step, i) => {
    const own = step.diameter.mm
    const { taper, endDiameter } = step
    if (!taper) return { r0: own / 2, r1: (endDiameter?.mm ?? own) / 2 }
    const length = places[i]!.h1 - places[i]!.h0
    const rate = 2 * Math.tan((taper.rate.value * Math.PI) / 360)
    if (endDiameter) {
      if (contradicts(shop, step, endDiameter.mm, rate * length)) return undefined
      return { r0: own / 2, r1: endDiameter.mm / 2 }
    }
    const { toward } = taper
    if (toward && !ends.includes(toward)) {
      const expected = `toward ${ends[0]}, or toward ${ends[1]}`
      shop.must('wrong-direction', taper.rate.span, `${step.name.text} has no ${toward} end to taper toward.`, expected)
      return undefined
    }
    const other = taper.given === 'large' ? own - rate * length : own + rate * length
    if (other <= 1e-9) {
      const text = `${step.name.text} runs to a point: ${taper.rate.text} takes ⌀${step.diameter.text} to nothing in ${words(shop, own / rate)}.`
      shop.must('taper-runs-out', taper.rate.span, text, 'a smaller rate, or a shorter step')
      return undefined
    }
    return givesLowEnd(step, ends) ? { r0: own / 2, r1: other / 2 } : { r0: other / 2, r1: own / 2 }
  })
  if (all.some((e) => !e)) return undefined
  return snapped(all.flatMap((e) => e ?? []))
}

/** Ends that meet but for rounding meet: there is no shoulder between them. */
function snapped(all: { r0: number; r1: number }[]): { r0: number; r1: number }[] {
  return all.map((own, i) => {
    const after = all[i + 1]
    return after && Math.abs(after.r0 - own.r1) < 1e-9 ? { ...own, r1: after.r0 } : own
  })
}

/** Both diameters, length and rate: one follows from the others, and must not say something else. */
function contradicts(shop: Workshop, { name, diameter, endDiameter, taper }: TurnedStep, end: number, by: number) {
  const apart = Math.abs(diameter.mm - end)
  const half = 0.5 * (diameter.unit === 'inch' ? 25.4 : 1) * 10 ** -Math.max(diameter.decimals, endDiameter!.decimals)
  if (Math.abs(apart - by) <= half + 1e-9) return false
  const small = Math.max(diameter.mm, end) - by
  const text = `${name.text} is ⌀${diameter.text} and ⌀${endDiameter!.text}, which over its length is no ${taper!.rate.text}.`
  const expected =
    small > 0 ? `the small end ⌀${words(shop, small)}, or one of the four left out` : 'one of the four left out'
  shop.must('taper-contradicts', taper!.rate.span, text, expected)
  return true
}

/** A length in the brief's unit, as few figures as say it. */
function words(shop: Workshop, mm: number): string {
  const inch = shop.brief.header.units === 'inch'
  const text = String(Number((inch ? mm / 25.4 : mm).toFixed(inch ? 4 : 3)))
  return inch ? text.replace(/^0\./, '.') : text
}
