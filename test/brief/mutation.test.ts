import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Brief } from '../../src/brief/brief.ts'
import { formatMark } from '../../src/brief/format-mark.ts'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'
import { withoutPlaces } from '../../src/brief/without-places.ts'

const files = readdirSync('examples').filter((f) => f.endsWith('.brief'))
const examples = files.map((f) => readFileSync(`examples/${f}`, 'utf8'))

/** Every span of a value, wherever it stands. */
function spans(value: unknown, out: { from: number; to: number }[] = []): { from: number; to: number }[] {
  if (Array.isArray(value)) for (const inner of value) spans(inner, out)
  else if (value !== null && typeof value === 'object') {
    if ('from' in value && 'to' in value && typeof value.from === 'number' && typeof value.to === 'number') {
      out.push({ from: value.from, to: value.to })
    }
    for (const inner of Object.values(value)) spans(inner, out)
  }
  return out
}

/** Every number with its digits and its place. */
function numbers(value: unknown, out: { text: string; value: number; span: { from: number; to: number } }[] = []) {
  if (Array.isArray(value)) for (const inner of value) numbers(inner, out)
  else if (value !== null && typeof value === 'object') {
    if ('text' in value && 'decimals' in value && 'span' in value && 'value' in value) {
      out.push(value as (typeof out)[number])
    }
    for (const inner of Object.values(value)) numbers(inner, out)
  }
  return out
}

function sound(text: string, brief: Brief): void {
  const { text: _text, ...value } = brief
  const end = Math.max(text.length, 1)
  const wrong = spans(value).filter(
    ({ from, to }) => !(Number.isInteger(from) && Number.isInteger(to) && from >= 0 && to >= from && to <= end),
  )
  expect(wrong).toEqual([])
  const endless = numbers([brief.stock, brief.features, brief.header.general]).filter((n) => !Number.isFinite(n.value))
  expect(endless).toEqual([])
  for (const mark of brief.marks) expect(formatMark(text, mark).length).toBeGreaterThan(0)
}

const vocabulary = [
  '×',
  '⌀',
  '-',
  '(',
  '?',
  ';',
  '\n',
  '\n          ',
  '4X',
  '1000000000X',
  '0',
  '"',
  '#',
  '/',
  '±',
  ',',
  ':',
  ' from ',
  ' THRU',
  '.',
  '°',
  '\ud800',
  '\u0000',
  '\ufeff',
  'R',
]

const mutation = fc.record({
  kind: fc.constantFrom('insert', 'delete', 'replace', 'swap'),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  other: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.integer({ min: 1, max: 30 }),
  text: fc.oneof(fc.constantFrom(...vocabulary), fc.string({ unit: 'binary', maxLength: 6 })),
})
type Mutation = typeof mutation extends fc.Arbitrary<infer T> ? T : never

function mutate(text: string, m: Mutation): string {
  const at = Math.floor(m.at * text.length)
  const end = Math.min(text.length, at + m.length)
  if (m.kind === 'insert') return text.slice(0, at) + m.text + text.slice(at)
  if (m.kind === 'delete') return text.slice(0, at) + text.slice(end)
  if (m.kind === 'replace') return text.slice(0, at) + m.text + text.slice(end)
  const from = Math.floor(m.other * text.length)
  const chunk = text.slice(at, end)
  const rest = text.slice(0, at) + text.slice(end)
  return rest.slice(0, from) + chunk + rest.slice(from)
}

describe('damaged briefs', () => {
  it('never throw, and yield a brief whose places lie in the text', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...examples),
        fc.array(mutation, { minLength: 1, maxLength: 8 }),
        (example, mutations) => {
          const text = mutations.reduce(mutate, example)
          sound(text, readBrief(text))
        },
      ),
      { numRuns: 1500 },
    )
  })

  it('still print, and what is printed settles', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...examples),
        fc.array(mutation, { minLength: 1, maxLength: 4 }),
        (example, mutations) => {
          const brief = readBrief(mutations.reduce(mutate, example))
          fc.pre(!brief.marks.some((m) => m.weight === 'must change'))
          const printed = readBrief(printBrief(brief))
          expect(withoutPlaces(printed)).toEqual(withoutPlaces(brief))
        },
      ),
      { numRuns: 150 },
    )
  })

  // Once read for ever: a sign where a size may begin, and no size after it.
  it.each([
    'outline   8 thick, face front\n          right 120; up 20; slope left 100 up 100-# a note; left 20; close',
    'outline   8 thick - ; right 120; close',
    'plate     - × - × -',
    'hole      top: - ⌀9 THRU -',
    'chamfer   top edges: - × -',
  ])('“%s” is answered', (statement) => {
    const text = `units mm\npractice ISO\n${statement}\n`
    const brief = readBrief(text)
    sound(text, brief)
    expect(brief.marks.map((m) => m.rule)).toContain('out-of-place')
  })

  it.each(files)('%s: a statement that cannot be read loses nothing of the others', (file) => {
    const text = readFileSync(`examples/${file}`, 'utf8')
    const whole = readBrief(text)
    const { from } = whole.features[0]!.span
    const word = /^\S+/.exec(text.slice(from))![0]
    const lost = readBrief(`${text.slice(0, from)}xyzzy${text.slice(from + word.length)}`)
    expect(lost.marks.map((m) => m.rule)).toEqual(['unknown-word'])
    expect(withoutPlaces({ ...lost, features: [] })).toEqual(withoutPlaces({ ...whole, features: [] }))
    expect(lost.features).toHaveLength(whole.features.length - 1)
    // One letter too many is understood, and marked.
    const misspelt = readBrief(`${text.slice(0, from)}q${text.slice(from)}`)
    expect(misspelt.marks.map((m) => m.rule)).toEqual(['unknown-word'])
    expect(withoutPlaces(misspelt)).toEqual(withoutPlaces(whole))
  })

  it('says of every number where its digits stand, as typed', () => {
    for (const text of examples) {
      const brief = readBrief(text)
      const found = numbers([brief.stock, brief.features, brief.header.general, brief.shows])
      expect(found.length).toBeGreaterThan(0)
      for (const n of found) expect(text.slice(n.span.from, n.span.to)).toBe(n.text)
    }
  })
})

describe('noise', () => {
  it('of any kind is read without a throw', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (text) => sound(text, readBrief(text))),
      { numRuns: 500 },
    )
  })

  const fill = (piece: string, length: number) => piece.repeat(Math.ceil(length / piece.length)).slice(0, length)
  const tenMillion: [string, string][] = [
    ['letters', fill('abcdefghij', 10_000_000)],
    ['statements', fill('hole top: ⌀9 THRU\n', 10_000_000)],
  ]
  it.each(tenMillion)('of ten million characters (%s) is refused with one mark', (_name, text) => {
    const brief = readBrief(text)
    expect(brief.marks.map((m) => m.rule)).toEqual(['brief-too-long'])
  })

  const nearLimit: [string, string][] = [
    ['one word', fill('a', 199_999)],
    ['one number', fill('1', 199_999)],
    ['blanks', fill(' ', 199_999)],
    ['line feeds', fill('\n', 199_999)],
    ['indented line feeds', fill('   \n', 199_999)],
    ['comments', fill('# x\n', 199_999)],
    ['brackets', fill('(', 199_999)],
    ['symbols on one line', `hole top: ${fill('⌀ ± / ', 199_000)}`],
    ['numbers on one line', `hole top: ${fill('1 ', 199_000)}`],
    ['distances on one line', `hole top: ${fill('1 from left, ', 199_000)}`],
    ['quotes', `note ${fill('" # ', 199_000)}`],
    ['short statements', fill('hole\n', 199_999)],
    ['unknown statements', fill('xyzzy 1\n', 199_999)],
    ['turned steps', `turned axis left-right\n${fill('  a ⌀1, 1 long\n', 199_000)}`],
    ['general tolerances', `general ${fill('.XX ±.01 ', 199_000)}`],
    ['nulls', fill('\u0000', 199_999)],
    ['torn surrogates', fill('\ud800', 199_999)],
  ]
  it.each(nearLimit)('just under the limit (%s) is answered', (_name, text) => {
    const brief = readBrief(text)
    sound(text, { ...brief, marks: brief.marks.slice(0, 20) })
    expect(brief.marks.length).toBeLessThanOrEqual(201)
  })
})
