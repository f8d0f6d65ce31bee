import type { BriefRule } from '../../rule.ts'

/** Largest edge break that is a break and not a chamfer to be sized, mm. */
const MOST = 3

export const rule: BriefRule = {
  name: 'edge-break-odd',
  weight: 'look again',
  source: 'ISO 13715:2017, edges of undefined shape: usual sizes up to 2.5 mm; common practice for the wording',
  about:
    'The general edge break is a small size, or a range from the smaller to the larger. Turned round, unequal or larger than a chamfer, it was mistyped.',
  reads: 'brief',
  check: ({ brief: { header } }) => {
    const words = header.edgeBreak
    if (!words) return []
    const found = (text: string, expected: string) => [
      { text, span: words.span, expected, numbers: words.text.match(/\d*[.,]?\d+/g) ?? [] },
    ]
    const per = header.units === 'inch' ? 25.4 : 1
    // Edges by ISO 13715 have signs and letters of their own; other standards' numbers and angles are no sizes.
    if (/\bISO 13715\b/i.test(words.text)) return []
    const text = words.text
      .replace(/\b(ISO|DIN|EN|ASME|BS|Y14)\b[\s\d.:-]*/gi, ' ')
      .replace(/[×x]\s*\d+(?:[.,]\d+)?\s*°/g, ' ')
    const sum = /(?<![\w.,])(\d*[.,]?\d+)\+(\d*[.,]?\d+)(?!\s*[/-])/.exec(text)
    if (sum) return found(`“${sum[0]}” is no range of edge breaks.`, `${sum[1]} to ${sum[2]}`)
    const range = /(?<![\w.,/+±-])(\d*[.,]?\d+)\s*(?:to|–|-|…)\s*(\d*[.,]?\d+)(?![\w/])/i.exec(text)
    if (range && value(range[1]!) >= value(range[2]!))
      return found(
        `Edges are broken from ${range[1]} to ${range[2]}: the range runs the wrong way.`,
        `${range[2]} to ${range[1]}`,
      )
    const sizes = [...text.matchAll(/(?<![\w.,/])(?:\d+\/\d+|\d*[.,]?\d+)(?![\w°/])/g)].map((m) => m[0])
    const pointless = sizes.find((s) => /^0\d/.test(s))
    if (pointless) return found(`${pointless} begins with a zero and has no point.`, pointless.replace(/^0/, '0.'))
    const large = sizes.find((s) => value(s) * per > MOST + 1e-9)
    return large ? found(`Edges are broken ${large}: that is a chamfer.`, 'a few tenths of a millimetre') : []
  },
}

/** `0.5`, `0,5`, `1/64`. */
function value(text: string): number {
  const [top, bottom = '1'] = text.replace(',', '.').split('/')
  return Number(top) / Number(bottom)
}
