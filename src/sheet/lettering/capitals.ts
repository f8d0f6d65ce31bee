import type { Header, Signature, Words } from '../../brief/brief.ts'

/** Units and symbols that mean something else, or nothing, in capitals. */
const KEPT = new Set('mm cm m km µm μm µin μin kg g mg N kN mN Nm kNm Pa kPa MPa GPa Hz Ra Rz Rt Rq'.split(' '))
/** Single letters are units only after a figure. */
const AFTER_FIGURE = new Set(['m', 'g', 'N'])

/**
 * Text in capitals, as ASME Y14.2-2014 §4.3 asks for all lettering: units of measure, fits (k6) and thread or grade
 * symbols with a figure keep their letters.
 */
export function capitals(text: string): string {
  return raisedBut(text, true)
}

/** A title in capitals: it names a thing, and holds no fits. */
export function titleCapitals(text: string): string {
  return raisedBut(text, false)
}

function raisedBut(text: string, fits: boolean): string {
  return text.replace(/\p{L}+/gu, (word, at: number) => {
    const afterFigure = /\d\s?$/.test(text.slice(0, at))
    if (KEPT.has(word) && (afterFigure || !AFTER_FIGURE.has(word))) return word
    // Fits and the like: one or two letters straight before a figure.
    if (fits && word.length <= 2 && /\d/.test(text[at + word.length] ?? '')) return word
    return word.toLocaleUpperCase('en')
  })
}

const raised = (w: Words): Words => ({ ...w, text: capitals(w.text) })
const signed = (s: Signature): Signature => ({ ...s, name: raised(s.name) })

/** The words of a header in capitals where the practice asks for them. */
export function lettered(header: Header): Header {
  if (header.practice !== 'ASME') return header
  const { part, material, coating, texture, firm, documentType, edgeBreak, drawn, checked, approved } = header
  return {
    ...header,
    notes: header.notes.map(raised),
    ...(part ? { part: { ...part, text: titleCapitals(part.text) } } : {}),
    ...(material ? { material: raised(material) } : {}),
    ...(coating ? { coating: raised(coating) } : {}),
    ...(texture ? { texture: raised(texture) } : {}),
    ...(firm ? { firm: raised(firm) } : {}),
    ...(documentType ? { documentType: raised(documentType) } : {}),
    ...(edgeBreak ? { edgeBreak: raised(edgeBreak) } : {}),
    ...(drawn ? { drawn: signed(drawn) } : {}),
    ...(checked ? { checked: signed(checked) } : {}),
    ...(approved ? { approved: signed(approved) } : {}),
  }
}
