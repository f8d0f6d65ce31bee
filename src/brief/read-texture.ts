import { Cursor, type Setting, show } from './cursor.ts'
import { type FaceTexture, type Lay, lays, processWords, textureWords } from './geometric.ts'
import { cut, type Statement } from './lexeme.ts'
import { parseNumber } from './number.ts'
import { readName } from './read-name.ts'
import { nearestWord } from './spelling.ts'

const layWords: Readonly<Record<string, Lay>> = {
  parallel: '=',
  square: '⟂',
  perpendicular: '⟂',
  '⊥': '⟂',
  crossed: 'X',
  x: 'X',
  'many ways': 'M',
  m: 'M',
  round: 'C',
  c: 'C',
  radial: 'R',
  r: 'R',
  even: 'P',
  p: 'P',
}

/** `texture bore: Ra 0.8` is about one surface; without a name and a colon the statement is the header's. */
export function isFaceTexture(statement: Statement): boolean {
  return /^[\p{L}\d ,’'-]{1,60}:/u.test(statement.lines[0]?.text ?? '')
}

/** `texture bore: Ra 0.8, machined, lay =, ground`: what is expected is said with every mark. */
export function readFaceTexture(statement: Statement, setting: Setting): FaceTexture | undefined {
  const [first] = statement.lines
  if (!first) return undefined
  const colon = first.text.indexOf(':')
  const of = nameAt(first.text.slice(0, colon), first.span.from, statement, setting)
  const lines = [{ text: first.text.slice(colon + 1), from: first.span.from + colon + 1 }]
  for (const { text, span } of statement.lines.slice(1)) lines.push({ text, from: span.from })
  const phrases = lines.flatMap(({ text, from }) => phrasesOf(text, from))
  let value: Pick<FaceTexture, 'parameter' | 'value' | 'unit'> | undefined
  let removal: FaceTexture['removal'] = 'any'
  let lay: Lay | undefined
  let process: FaceTexture['process']
  for (const { text, from } of phrases) {
    const span = { from, to: from + text.length }
    const low = text.toLowerCase()
    const roughness = value ? undefined : readRoughness(text, from)
    if (roughness) value = roughness
    else if (/^(machined|machining required|removal required)$/.test(low)) removal = 'required'
    else if (/^(unmachined|not machined|no machining|machining prohibited|removal prohibited)$/.test(low))
      removal = 'prohibited'
    else if (low.startsWith('lay ') && layOf(low.slice(4).trim())) lay = layOf(low.slice(4).trim())
    else if ((processWords as readonly string[]).includes(low)) process = { text: low, span }
    else {
      const near = nearestWord(low, [...textureWords, ...processWords])
      setting.mark({
        rule: 'unknown-word',
        weight: 'must change',
        text: `“${show(text)}” is not understood here${near ? `; did you mean “${near}”?` : ''}`,
        span,
        expected: value
          ? `machined, unmachined, lay ${lays.join(' ')}, or how it is made: ${processWords.join(', ')}`
          : 'a roughness such as Ra 3.2 or 63 µin',
        ...(near ? { mends: [{ label: `write ${near}`, span, text: near }] } : {}),
      })
    }
  }
  if (!value) {
    setting.mark({
      rule: 'texture-without-value',
      weight: 'must change',
      text: 'the surface has no roughness',
      span: statement.span,
      expected: 'texture bore: Ra 0.8, or texture bore: 32 µin',
    })
    return undefined
  }
  return of && { of, ...value, removal, ...(lay ? { lay } : {}), ...(process ? { process } : {}), span: statement.span }
}

/** What stands between the commas; a decimal comma parts nothing. */
function phrasesOf(text: string, from: number): { readonly text: string; readonly from: number }[] {
  let at = from
  return text.split(/[,;](?!\d)/).flatMap((part) => {
    const start = at + part.length - part.trimStart().length
    at += part.length + 1
    return part.trim() === '' ? [] : [{ text: part.trim(), from: start }]
  })
}

const layOf = (word: string): Lay | undefined => lays.find((l) => l.toLowerCase() === word) ?? layWords[word]

/** `Ra 0.8`, `Rz 6,3 µm`, `32 µin`; a parameter without a unit is in µm. */
function readRoughness(text: string, from: number): Pick<FaceTexture, 'parameter' | 'value' | 'unit'> | undefined {
  const found = /^(?:(Ra|Rz)\s*)?(\d*[.,]?\d+)\s*([µμu]in|microinch(?:es)?|[µμu]m)?$/i.exec(text)
  if (!found || (!found[1] && !found[3])) return undefined
  const digits = found[2]!
  const at = from + text.indexOf(digits, found[1]?.length ?? 0)
  const number = parseNumber(digits.replace(',', '.'), at)
  if (!number) return undefined
  const inch = found[3] !== undefined && /in/i.test(found[3])
  const value = { ...number, text: digits, span: { from: at, to: at + digits.length } }
  return { parameter: found[1]?.toLowerCase() === 'rz' ? 'Rz' : 'Ra', value, unit: inch ? 'µin' : 'µm' }
}

/** The name before the colon, read as any other name. */
function nameAt(text: string, from: number, statement: Statement, setting: Setting) {
  // A keyword before it makes the name's words a statement of their own.
  const head = 'show '
  const pieces = cut(head + text, false).statements[0]?.lexemes ?? []
  const lexemes = pieces.map((p) => ({ ...p, from: p.from - head.length + from, to: p.to - head.length + from }))
  const c = new Cursor(statement, setting, lexemes)
  const name = readName(c, 'the surface')
  while (!c.done) c.unexpected([], 'the surface, then a colon: texture bore: Ra 0.8')
  return name
}

export function printTexture(t: FaceTexture): string {
  const parts = [
    t.unit === 'µin' && t.parameter === 'Ra'
      ? `${t.value.text} µin`
      : `${t.parameter} ${t.value.text}${t.unit === 'µin' ? ' µin' : ''}`,
    ...(t.removal === 'any' ? [] : [t.removal === 'required' ? 'machined' : 'unmachined']),
    ...(t.lay ? [`lay ${t.lay}`] : []),
    ...(t.process ? [t.process.text] : []),
  ]
  return `${t.of.text}: ${parts.join(', ')}`
}
