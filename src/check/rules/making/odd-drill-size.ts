import type { Size } from '../../../brief/size.ts'
import { inchDrills, nearestDrill } from '../../../tolerance/threads/drills.ts'
import { typed } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'odd-drill-size',
  weight: 'look again',
  source:
    'ASME B94.11M, twist drill sizes; DIN 338 and ISO 235 series (from memory); up to 1/2 in or 13 mm: common practice, no source',
  about:
    'A small plain hole is made with a drill off the rack. A size that no drill has is bored or reamed, as a larger hole and a bore are anyway.',
  reads: 'brief',
  check: ({ brief }) =>
    brief.features.flatMap((f) => {
      if (f.kind !== 'hole' || f.thread || f.diameter.tolerance || f.diameter.unknown) return []
      if (/^bores?\b/i.test(brief.text.slice(f.span.from)) || f.diameter.mm > (f.diameter.unit === 'inch' ? 12.7 : 13))
        return []
      const near = f.diameter.unit === 'inch' ? inch(f.diameter) : metric(f.diameter)
      if (near === undefined) return []
      return [
        {
          text: `There is no drill of ⌀${f.diameter.text}.`,
          span: f.diameter.span,
          expected: `⌀${near}, the nearest drill, or a tolerance`,
          mends: [{ label: `Write ${near}`, span: f.diameter.span, text: near }],
          numbers: [f.diameter.text],
        },
      ]
    }),
}

/** The nearest drill where the size is none. */
function inch(size: Size): string | undefined {
  if (size.form !== 'decimal') return undefined
  const slack = 0.5 * 10 ** -size.decimals + 1e-9
  if (inchDrills.some((d) => Math.abs(d.diameter - size.value) <= slack)) return undefined
  return typed(nearestDrill(size.value).diameter * 25.4, 'inch')
}

/** Steps of the series: 0.1 mm. */
function metric(size: Size): string | undefined {
  const step = 0.1
  const near = Math.round(size.value / step) * step
  if (Math.abs(near - size.value) < 1e-6 || isTenthForThread(size.value)) return undefined
  const text = String(Number(near.toFixed(2)))
  return size.text.includes(',') ? text.replace('.', ',') : text
}

/** Twentieths are made up to 3 mm, for tap drills and the like. */
const isTenthForThread = (mm: number) => mm < 3 && Math.abs(mm * 20 - Math.round(mm * 20)) < 1e-6
