import type { Words } from '../../../brief/brief.ts'
import { readIso2768 } from '../../../tolerance/general/iso2768.ts'
import type { BriefRule } from '../../rule.ts'

const superseded: readonly (readonly [form: RegExp, instead: string])[] = [
  [/\bISO 1302\b/i, 'ISO 21920-1:2021'],
  [/\bY14\.5M?-(19\d\d|2009)\b/i, 'ASME Y14.5-2018'],
  [/\bISO 286-1:1988\b/i, 'ISO 286-1:2010'],
  [/\bDIN 7168\b/i, 'ISO 2768-1'],
  [/\bISO 128-(2\d|3\d|4\d|50)\b/i, 'ISO 128-2:2020 and ISO 128-3:2020'],
]

export const rule: BriefRule = {
  name: 'withdrawn-standard',
  weight: 'remark',
  source:
    'ISO catalogue: ISO 2768-2 withdrawn 2021, ISO 1302 withdrawn 2021, ISO 128-20 to -50 withdrawn 2020 (from memory)',
  about: 'A standard that is withdrawn can still be read, but a new drawing calls up what took its place.',
  reads: 'brief',
  check: ({ brief: { header } }) => {
    const said = [header.standard, header.texture, ...header.notes].flatMap((w): Words[] => (w ? [w] : []))
    const classes = header.general.flatMap((g) => {
      if (g.kind !== 'standard') return []
      const read = readIso2768(g.text)
      return read.ok && read.value.note
        ? [{ text: read.value.note, span: g.span, expected: 'ISO 2768-1 for the sizes, ISO 22081 for geometry' }]
        : []
    })
    const others = [...said, ...header.general.flatMap((g): Words[] => (g.kind === 'standard' ? [g] : []))].flatMap(
      (w) => {
        const found = superseded.find(([form]) => form.test(w.text))
        return found ? [{ text: `${found[0].exec(w.text)![0]} is superseded.`, span: w.span, expected: found[1] }] : []
      },
    )
    return [...classes, ...others]
  },
}
