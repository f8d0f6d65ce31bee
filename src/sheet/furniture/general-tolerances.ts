import type { GeneralTolerance, Header } from '../../brief/brief.ts'
import type { Span } from '../../brief/span.ts'
import type { TitleWords } from './title-words.ts'

/** A line of the "unless otherwise specified" box: what it governs and the value, as typed. */
export interface GeneralLine {
  readonly name: string
  readonly value: string
  readonly span?: Span
}

/** The lines of the box, in the order of the brief; nothing that the brief does not state. */
export function generalLines(header: Header, words: TitleWords): GeneralLine[] {
  const lines: GeneralLine[] = [{ name: words.units[header.units], value: '' }]
  if (header.general.length > 0) lines.push({ name: words.tolerances, value: '' })
  for (const g of header.general) lines.push({ ...toleranceLine(g, header, words), span: g.span })
  const more = [
    [words.edges, header.edgeBreak],
    [words.texture, header.texture],
    [words.standard, header.standard],
  ] as const
  for (const [name, said] of more) {
    // A whole sentence needs no name in front of it, nor what says for itself that it is about edges.
    const isNamed = said && (isSentence(said.text) || (name === words.edges && OWN_WORDS.test(said.text)))
    if (said) lines.push({ name: isNamed ? '' : name, value: said.text, span: said.span })
  }
  return lines
}

/** `edges broken 0.2`, `remove burrs`, `break sharp edges`: with the name before them a word would stand twice. */
const OWN_WORDS = /\bedges?\b|^(?:break|remove|deburr)\b|\bburrs?\b/i

function isSentence(text: string): boolean {
  return (text.match(/\p{L}{3,}/gu) ?? []).length > 2
}

function toleranceLine(g: GeneralTolerance, header: Header, words: TitleWords): { name: string; value: string } {
  switch (g.kind) {
    case 'standard':
      return { name: g.text, value: '' }
    case 'decimals': {
      const sign = header.decimalSign ?? '.'
      const lead = header.units === 'inch' ? '' : 'X'
      const name = g.decimals === 0 ? 'X' : `${lead}${sign}${'X'.repeat(g.decimals)}`
      return { name, value: `±${g.plusMinus.text}` }
    }
    case 'fractions':
      return { name: words.fractions, value: `±${g.plusMinus.text}` }
    case 'whole':
      return { name: words.whole, value: `±${g.plusMinus.text}` }
    case 'angles':
      return { name: words.angles, value: `±${g.plusMinus.text}°` }
  }
}
