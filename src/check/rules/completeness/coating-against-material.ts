import { type Metal, metalOf } from '../../measure/metal.ts'
import type { BriefRule } from '../../rule.ts'

/** Coatings, and the metals that they are made on. */
const coatings: readonly (readonly [form: RegExp, on: readonly Metal[]])[] = [
  [/anodi[sz]|eloxa|MIL-PRF-8625|ISO 7599|hard coat/i, ['aluminium']],
  [/black oxide|blued|browned|MIL-DTL-13924|DIN 50938/i, ['steel', 'stainless', 'iron', 'copper']],
  [/phosphat|parkeri[sz]|ISO 9717/i, ['steel', 'iron']],
  [/galvani[sz]|ASTM A123|ISO 1461|zinc plat|ASTM B633|ISO 2081|zinc flake|ISO 10683/i, ['steel', 'iron']],
  [/passivat(?!ed chromat).*(A967|AMS 2700)|ASTM A967|pickled and passivated/i, ['stainless']],
  [/chromate conver|MIL-DTL-5541|chem(ical)? film/i, ['aluminium']],
]

export const rule: BriefRule = {
  name: 'coating-against-material',
  weight: 'must change',
  source: 'scope of the coatings’ own standards: MIL-PRF-8625, ASTM B633, ISO 1461, MIL-DTL-13924 (from memory)',
  about: 'Anodizing is for aluminium, zinc plating for steel: a coating that the metal cannot take is a contradiction.',
  reads: 'brief',
  check: ({ brief: { header } }) => {
    const { coating, material } = header
    const metal = metalOf(material?.text)
    if (!coating || !metal) return []
    const wrong = coatings.find(([form, on]) => form.test(coating.text) && !on.includes(metal))
    if (!wrong) return []
    return [
      {
        text: `“${coating.text}” is no coating for ${metal === 'iron' ? 'cast iron' : metal === 'copper' ? 'copper alloys' : metal}.`,
        span: coating.span,
        expected: `a coating for ${material!.text}, or another material`,
      },
    ]
  },
}
