import type { Words } from '../../brief/brief.ts'
import type { Angle, Count, Size, Unit } from '../../brief/size.ts'
import type { Span } from '../../brief/span.ts'

/** Lengths off a round number by no more than this (mm) are that number: what files lose in writing. */
const ROUNDED = 1e-6

/** Decimals of a length that is no round number: thousandths of a millimetre, ten-thousandths of an inch. */
const DECIMALS: Readonly<Record<Unit, number>> = { mm: 3, inch: 4 }

/**
 * The measured sizes in the order found, each on a line of its own: the text that stands in the place of a brief, so that
 * every size has its own place in it. Sizes keep the exact length; their digits are rounded.
 */
export class Listing {
  readonly unit: Unit
  private readonly lines: string[] = []
  private length = 0
  private uneven = 0

  constructor(unit: Unit) {
    this.unit = unit
  }

  get text(): string {
    return this.lines.join('')
  }

  /** How many lengths came out as no round number. */
  get unevenSizes(): number {
    return this.uneven
  }

  /** Adds a line and gives the place of its second word. */
  private line(what: string, value: string): Span {
    const from = this.length + what.length + 2
    const line = `${what}  ${value}\n`
    this.lines.push(line)
    this.length += line.length
    return { from, to: from + value.length }
  }

  words(what: string, text: string): Words {
    return { text, span: this.line(what, text) }
  }

  count(value: number): Count {
    return { value, span: { from: 0, to: 0 } }
  }

  size(what: string, mm: number): Size {
    const { unit } = this
    const value = unit === 'inch' ? mm / 25.4 : mm
    const even = evenText(value, unit)
    const metric = even === undefined && unit === 'inch' ? evenText(mm, 'mm') : undefined
    // a hole for a metric screw on an inch part says so
    if (metric !== undefined && !/\.\d{3}/.test(metric)) return this.typed(what, metric, mm)
    if (even === undefined) this.uneven++
    const text = even ?? value.toFixed(DECIMALS[unit])
    const decimals = text.split('.')[1]?.length ?? 0
    return {
      text,
      value,
      form: decimals > 0 ? 'decimal' : 'whole',
      decimals,
      span: this.line(what, text),
      unit,
      unitTyped: false,
      mm,
    }
  }

  private typed(what: string, text: string, mm: number): Size {
    const decimals = text.split('.')[1]?.length ?? 0
    const span = this.line(what, `${text} mm`)
    const form = decimals > 0 ? 'decimal' : 'whole'
    return { text, value: Number(text), form, decimals, span, unit: 'mm', unitTyped: true, mm }
  }

  angle(what: string, degrees: number): Angle {
    const text = String(Math.round(degrees * 1e3) / 1e3)
    const decimals = text.split('.')[1]?.length ?? 0
    return { text, value: degrees, form: decimals > 0 ? 'decimal' : 'whole', decimals, span: this.line(what, text) }
  }
}

/** Fewest decimals that give the value; at least two in inches, where the decimals say the tolerance. */
function evenText(value: number, unit: Unit): string | undefined {
  const slack = unit === 'inch' ? ROUNDED / 25.4 : ROUNDED
  for (let decimals = unit === 'inch' ? 2 : 0; decimals <= DECIMALS[unit]; decimals++) {
    const text = value.toFixed(decimals)
    if (Math.abs(Number(text) - value) <= slack) return text.replace(/^0(?=\.)/, unit === 'inch' ? '' : '0')
  }
  return undefined
}
