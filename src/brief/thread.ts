import type { Words } from './brief.ts'
import { parseNumber } from './number.ts'
import type { Num, Size, Unit } from './size.ts'

const forms = [
  /^M\d+(?:[.,]\d+)?(?:\s?[x×]\s?\d+(?:[.,]\d+)?)?(?:\s?[-–]\s?\d{1,2}[a-zA-Z]{1,2}(?:\d[a-zA-Z])?|\s?[4-9][hHgG])?(?:-?LH\b)?(?![A-Za-z0-9])/,
  /^(?:#\d{1,2}|\d+-\d+\/\d+|\d+\/\d+|\d*\.\d+|\d+)-\d{1,2}\s?UN(?:C|F|EF|S|R|J)*(?:-[123][AB])?(?:-LH\b)?(?![A-Za-z0-9])/i,
  // the usual pitches alone, without a series: no mixed number reads so
  /^(?:#?(?:0-80|1-(?:64|72)|2-(?:56|64)|3-(?:48|56)|4-(?:40|48)|5-(?:40|44)|6-(?:32|40)|8-(?:32|36)|10-(?:24|32)|12-(?:24|28))|1\/4-(?:20|28)|5\/16-(?:18|24)|3\/8-(?:16|24)|7\/16-(?:14|20)|1\/2-(?:13|20)|9\/16-(?:12|18)|5\/8-(?:11|18)|3\/4-(?:10|16)|7\/8-(?:9|14))(?:-[123][AB])?(?![A-Za-z0-9/.-])/,
  /^(?:G|R|Rp|Rc)\s?\d+(?:\/\d+|-\d+\/\d+)?(?![A-Za-z0-9/])/,
  /^(?:\d+-\d+\/\d+|\d+\/\d+|\d+)(?:-\d+(?:\.\d+)?)?\s?NPT[F]?(?![A-Za-z0-9])/i,
  /^Tr\s?\d+\s?[x×]\s?\d+(?:-?\d[a-zA-Z])?(?![A-Za-z0-9])/,
]

/** A thread's designation at the start of `text`, as typed; empty where there is none. */
export function threadAt(text: string): string {
  for (const form of forms) {
    const found = form.exec(text)
    if (found) return found[0].trimEnd()
  }
  return ''
}

/**
 * Nominal diameter of a thread: M8 is 8 mm (ISO 261), 1/4-20 is 1/4 inch, #10 is .060 + .013 × 10 inch (ASME B1.1
 * numbered sizes, from memory). Pipe threads have no size in their name: undefined.
 */
export function nominalSize(thread: Words, unit: Unit): Size | undefined {
  const { text, span } = thread
  const size = (num: Num, own: Unit): Size => ({
    ...num,
    unit: own,
    unitTyped: own !== unit,
    mm: num.value * (own === 'inch' ? 25.4 : 1),
  })
  const metric = /^(?:M|Tr\s?)(\d+(?:[.,]\d+)?)/.exec(text)
  if (metric) {
    const num = parseNumber(metric[1]!, span.from + metric[0].length - metric[1]!.length)
    return num && num.value > 0 ? size(num, 'mm') : undefined
  }
  const numbered = /^#?(\d{1,2})-(\d+)/.exec(text)
  // without its # a screw's number is told from inches by its pitch: no inch size is that fine (ASME B1.1, from memory)
  if (numbered && (text.startsWith('#') || (Number(numbered[1]) <= 12 && Number(numbered[2]) >= 24))) {
    const value = Math.round((0.06 + 0.013 * Number(numbered[1])) * 1000) / 1000
    const digits = value.toFixed(3).replace(/^0/, '')
    return size(
      {
        text: digits,
        value,
        form: 'decimal',
        decimals: 3,
        span: { from: span.from, to: span.from + text.indexOf('-') },
      },
      'inch',
    )
  }
  const inch = /^(\d+-\d+\/\d+|\d+\/\d+|\d*\.\d+|\d+)-\d{1,2}(?:\s?UN|-|$)/i.exec(text)
  const num = inch ? parseNumber(inch[1]!, span.from) : undefined
  return num && num.value > 0 ? size(num, 'inch') : undefined
}

/** Pitch as the designation itself gives it, mm; undefined for a metric coarse thread, which leaves it out. */
export function writtenPitch({ text }: Words): number | undefined {
  const metric = /^(?:M|Tr)\s?\d+(?:[.,]\d+)?\s?[x×]\s?(\d+(?:[.,]\d+)?)/.exec(text)
  if (metric) return Number(metric[1]!.replace(',', '.'))
  const inch = /^[^\s]*?[\d#]-(\d{1,2})(?:\s?UN|-|$)/i.exec(text)
  return inch ? 25.4 / Number(inch[1]) : undefined
}
