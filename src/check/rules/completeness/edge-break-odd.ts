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
    const value = (text: string) => Number(text.replace(',', '.'))
    // An angle beside the size is no size.
    const text = words.text.replace(/[×x]\s*\d+(?:[.,]\d+)?\s*°/g, '')
    const range = /(\d*[.,]?\d+)\s*(to|–|-|\+|\/|\.\.\.?|…)\s*(\d*[.,]?\d+)/i.exec(text)
    if (range) {
      const [, a = '', sign, b = ''] = range
      if (sign === '+' || sign === '/') return found(`“${range[0]}” is no range of edge breaks.`, `${a} to ${b}`)
      if (value(a) >= value(b))
        return found(`Edges are broken from ${a} to ${b}: the range runs the wrong way.`, `${b} to ${a}`)
    }
    const sizes = [...text.matchAll(/(?<![\w.,])\d*[.,]?\d+(?![\w°])/g)].map((m) => m[0])
    const large = sizes.find((s) => value(s) * per > MOST + 1e-9)
    return large ? found(`Edges are broken ${large}: that is a chamfer.`, 'a few tenths of a millimetre') : []
  },
}
