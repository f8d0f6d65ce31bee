import type { Words } from './brief.ts'
import { parseNumber } from './number.ts'
import type { Num, Size, Unit } from './size.ts'

const forms = [
  /^M\d+(?:[.,]\d+)?(?:\s?[x×]\s?\d+(?:[.,]\d+)?)?(?:\s?[-–]\s?\d{1,2}[a-zA-Z]{1,2}(?:\d[a-zA-Z])?|\s?[4-9][hHgG])?(?:-?LH\b)?(?![A-Za-z0-9])/,
  /^(?:#\d{1,2}|\d+-\d+\/\d+|\d+\/\d+|\d*\.\d+|\d+)-\d{1,2}\s?UN(?:C|F|EF|S|R|J)*(?:-[123][AB])?(?:-LH\b)?(?![A-Za-z0-9])/i,
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
  const numbered = /^#(\d{1,2})-/.exec(text)
  if (numbered) {
    const value = Math.round((0.06 + 0.013 * Number(numbered[1])) * 1000) / 1000
    const digits = value.toFixed(3).replace(/^0/, '')
    return size(
      {
        text: digits,
        value,
        form: 'decimal',
        decimals: 3,
        span: { from: span.from, to: span.from + numbered[0].length - 1 },
      },
      'inch',
    )
  }
  const inch = /^(\d+-\d+\/\d+|\d+\/\d+|\d*\.\d+|\d+)-\d{1,2}\s?UN/i.exec(text)
  const num = inch ? parseNumber(inch[1]!, span.from) : undefined
  return num && num.value > 0 ? size(num, 'inch') : undefined
}

/** Pitch as the designation itself gives it, mm; undefined for a metric coarse thread, which leaves it out. */
export function writtenPitch({ text }: Words): number | undefined {
  const metric = /^(?:M|Tr)\s?\d+(?:[.,]\d+)?\s?[x×]\s?(\d+(?:[.,]\d+)?)/.exec(text)
  if (metric) return Number(metric[1]!.replace(',', '.'))
  const inch = /-(\d{1,2})\s?UN/i.exec(text)
  return inch ? 25.4 / Number(inch[1]) : undefined
}
