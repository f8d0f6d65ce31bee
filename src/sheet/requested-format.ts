import type { Header } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import { type Format, formatNamed, inchFormats, metricFormats } from '../standards/formats.ts'
import { inchScales, isoScales, type Scale, scaleText } from '../standards/scales.ts'

export interface Possible {
  readonly formats: readonly Format[]
  readonly scales: readonly Scale[]
  readonly marks: readonly Mark[]
}

/** Formats and scales to choose from: the practice's own, or what the brief states. */
export function possible(header: Header): Possible {
  const marks: Mark[] = []
  const inch = header.practice === 'ASME' && header.units === 'inch'
  let formats: readonly Format[] = inch ? inchFormats : metricFormats
  if (header.sheet) {
    const stated = formatNamed(header.sheet.text)
    if (stated) formats = [stated]
    else {
      const names = formats.map((f) => f.name).join(', ')
      marks.push({
        rule: 'unknown-sheet',
        weight: 'must change',
        text: `There is no sheet “${header.sheet.text}”.`,
        span: header.sheet.span,
        expected: `one of ${names}`,
        source: inch ? 'ASME Y14.1-2020' : 'ISO 5457:1999',
      })
    }
  }
  const series = inch ? inchScales : isoScales
  if (!header.scale) return { formats, scales: series, marks }
  const stated: Scale = { paper: header.scale.paper, part: header.scale.part }
  if (!(stated.paper > 0 && stated.part > 0)) {
    marks.push({
      rule: 'impossible-scale',
      weight: 'must change',
      text: 'A scale has two numbers above zero.',
      span: header.scale.span,
      expected: 'a scale like 1:2',
    })
    return { formats, scales: series, marks }
  }
  if (![...isoScales, ...inchScales].some((s) => Math.abs(s.paper * stated.part - s.part * stated.paper) < 1e-9)) {
    marks.push({
      rule: 'unusual-scale',
      weight: 'remark',
      text: `${scaleText(stated)} is not one of the recommended scales.`,
      span: header.scale.span,
      expected: series.map(scaleText).slice(0, 11).join(', '),
      source: inch ? 'common practice, no source' : 'ISO 5455:1979',
    })
  }
  return { formats, scales: [stated], marks }
}
