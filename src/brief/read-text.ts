import type { GeneralTolerance, Signature, Words } from './brief.ts'
import type { Statement } from './lexeme.ts'
import type { Mark } from './mark.ts'
import { parseNumber } from './number.ts'

/** Free text of a statement, its lines joined by a blank. Text in quotation marks may hold a `#`. */
export function readText(s: Statement): Words | undefined {
  return joined(s.lines)
}

function joined(lines: readonly Words[]): Words | undefined {
  const first = lines[0]
  if (!first) return undefined
  const text = lines.map((line) => unquoted(line.text)).join(' ')
  return text.trim() === ''
    ? undefined
    : { text, span: { from: first.span.from, to: lines[lines.length - 1]!.span.to } }
}

function unquoted(text: string): string {
  return /^"(?:[^"]|"")*"$/.test(text) ? text.slice(1, -1).replaceAll('""', '"') : text
}

/** `GH-214   rev A`: the number, and the revision where it stands beside it. */
export function readNumber(s: Statement): { number?: Words; revision?: Words } {
  const text = readText(s)
  const line = s.lines[0]
  if (!text || !line) return {}
  const found = /^(.*?)(?:^|\s+)rev(?:ision)?\.?\s+(\S+)$/i.exec(text.text)
  if (!found || s.lines.length > 1 || line.text.startsWith('"')) return { number: text }
  const { from, to } = line.span
  const revision = { text: found[2]!, span: { from: to - found[2]!.length, to } }
  const number = found[1]!
  return { revision, ...(number ? { number: { text: number, span: { from, to: from + number.length } } } : {}) }
}

/** `M. Adelund, 2024-03-11`: what stands after the last comma is the date if it has a digit. */
export function readSignature(s: Statement): Signature | undefined {
  const text = readText(s)
  if (!text) return undefined
  const quoted = s.lines.length === 1 ? /^"((?:[^"]|"")+)"(\s*,\s*)([^"]*\d[^"]*)$/.exec(s.lines[0]!.text) : null
  if (quoted) {
    const { from, to } = text.span
    const date = quoted[3]!.trim()
    return {
      name: { text: quoted[1]!.replaceAll('""', '"'), span: { from, to: from + quoted[1]!.length + 2 } },
      date: { text: date, span: { from: to - quoted[3]!.length, to } },
    }
  }
  const comma = text.text.lastIndexOf(',')
  const date = text.text.slice(comma + 1)
  if (comma < 0 || !/\d/.test(date) || s.lines.length > 1 || text.text.length !== text.span.to - text.span.from)
    return { name: text }
  const name = text.text.slice(0, comma).trimEnd()
  const { from, to } = text.span
  const start = to - date.trimStart().length
  if (name === '') return { name: text }
  return {
    name: { text: name, span: { from, to: from + name.length } },
    date: { text: date.trim(), span: { from: start, to } },
  }
}

/** Each line of `notes` is a note of its own, its number left off: the sheet numbers them. */
export function readNotes(s: Statement): Words[] {
  return s.lines.flatMap((line) => {
    const number = /^\d{1,2}[.)]\s+/.exec(line.text)?.[0].length ?? 0
    const text = unquoted(line.text.slice(number))
    return text.trim() === '' ? [] : [{ text, span: { from: line.span.from + number, to: line.span.to } }]
  })
}

const number = String.raw`(?:\d+-\d+/\d+|\d+/\d+|\d*[.,]\d+|\d+)`
const classForm = new RegExp(
  String.raw`(?:X?[.,](X+)|(X)(?![A-Z])|(fractions?|fractional)|(whole(?: numbers)?)|(angles?|angular))\s*(?:±|\+/-|\+-)\s*(${number})(?!\d)\s*(°|deg(?:rees)?\b)?`,
  'iy',
)

/** `fractions ±1/64   .XX ±.01   angles ±1/2°`, or the name of a standard's class such as `ISO 2768-mK`. */
export function readGeneral(s: Statement, mark: (mark: Mark) => void): GeneralTolerance[] {
  return s.lines.flatMap((line) => readGeneralLine(line, mark))
}

function readGeneralLine(line: Words, mark: (mark: Mark) => void): GeneralTolerance[] {
  const out: GeneralTolerance[] = []
  const { text, span } = line
  const gap = /[\s,;]*/y
  let at = 0
  while (at < text.length) {
    gap.lastIndex = at
    at += gap.exec(text)![0].length
    if (at >= text.length) break
    classForm.lastIndex = at
    const found = classForm.exec(text)
    if (!found) {
      const rest = /^(?:(?!\s{2}|;|,\s).)+/s.exec(text.slice(at))
      const piece = rest?.[0] ?? text.slice(at)
      const where = { from: span.from + at, to: span.from + at + piece.length }
      if (/±|\+\/-/.test(piece)) {
        mark({
          rule: 'general-tolerance',
          weight: 'must change',
          text: `“${piece.slice(0, 30)}” is no class of general tolerance`,
          span: where,
          expected: 'fractions ±1/64, .XX ±.01, whole ±1, angles ±1/2°, or a class such as ISO 2768-mK',
        })
      } else out.push({ kind: 'standard', text: piece.trimEnd(), span: where })
      at += piece.length
      continue
    }
    const digits = found[6]!
    const sign = /±|\+\/-|\+-/.exec(found[0])!
    const from = span.from + at + found[0].indexOf(digits, sign.index + sign[0].length)
    const plusMinus = parseNumber(digits, from)
    const length = found[0].trimEnd().length
    const where = { from: span.from + at, to: span.from + at + length }
    at += found[0].length
    if (!plusMinus || plusMinus.value <= 0) {
      mark({
        rule: 'zero-size',
        weight: 'must change',
        text: 'a tolerance of nothing cannot be held',
        span: where,
        expected: 'a tolerance above zero',
      })
    } else if (found[1]) out.push({ kind: 'decimals', decimals: found[1].length, plusMinus, span: where })
    else out.push({ kind: found[3] ? 'fractions' : found[5] ? 'angles' : 'whole', plusMinus, span: where })
  }
  return out
}

/** `1:2` */
export function readScale(s: Statement): { paper: number; part: number; span: Words['span'] } | undefined {
  const text = readText(s)
  const found = text && /^(\d{1,4}(?:\.\d{1,3})?)\s*[:/]\s*(\d{1,4}(?:\.\d{1,3})?)$/.exec(text.text)
  if (!found) return undefined
  const paper = Number(found[1])
  const part = Number(found[2])
  return paper > 0 && part > 0 ? { paper, part, span: text.span } : undefined
}
