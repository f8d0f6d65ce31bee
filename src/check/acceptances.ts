import type { Acceptance, Brief } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import { printAcceptance } from '../brief/read-acceptance.ts'
import { nearestWord } from '../brief/spelling.ts'
import { isNamed, nameOf } from './accepted-place.ts'
import { rules } from './rules/rules.ts'

const SOURCE = 'common practice, no source: what is accepted is accepted in writing'

/**
 * The marks, with those that the brief accepts turned into remarks that carry the reason. A mark whose figures have
 * changed since stands again and says so; acceptances that name nothing are marked themselves.
 */
export function withAcceptances(brief: Brief, marks: readonly Mark[]): Mark[] {
  const acceptances = brief.acceptances ?? []
  if (acceptances.length === 0) return [...marks]
  const used = new Set<Acceptance>()
  const out = marks.map((mark) => {
    const naming = acceptances.filter((a) => a.rule.text === mark.rule && isAt(a, mark, brief))
    for (const a of naming) used.add(a)
    const numbers = numbersOf(mark, brief)
    const holds = naming.find((a) => isSame(a.numbers ?? [], numbers))
    if (holds && isOpen(mark)) return accepted(mark, holds)
    const first = naming[0]
    return first ? woken(mark, first, numbers) : mark
  })
  return [...out, ...acceptances.filter((a) => !used.has(a)).map((a) => idle(a, brief))]
}

/** The statement that accepts a mark, ready to stand in the brief. Undefined where a mark cannot be accepted. */
export function acceptanceOf(mark: Mark, brief: Brief, because: string): string | undefined {
  if (!isOpen(mark)) return undefined
  const words = (text: string) => ({ text, span: mark.span ?? { from: 0, to: 0 } })
  const place = placeOf(mark, brief)
  const at = place && nameOf(place, brief)
  const text = printAcceptance({
    rule: words(mark.rule),
    ...(at ? { at: words(at) } : {}),
    numbers: numbersOf(mark, brief),
    because: words(because),
  })
  return `accept    ${text}`
}

/** What the brief cannot be read or built without is not open to be accepted; rules' findings and lighter marks are. */
const isOpen = (mark: Mark) => mark.weight !== 'must change' || ruleNames.has(mark.rule)
const ruleNames: ReadonlySet<string> = new Set(rules.map((r) => r.name))

function accepted({ weight: _, mends: _mends, ...mark }: Mark, by: Acceptance): Mark {
  return { ...mark, weight: 'remark', accepted: by.because.text }
}

function woken(mark: Mark, by: Acceptance, numbers: readonly string[]): Mark {
  if (!isOpen(mark)) return { ...mark, text: `${mark.text} This cannot be accepted.` }
  const then = by.numbers?.join(', ') ?? 'no figures'
  return { ...mark, text: `${mark.text} (It was accepted with ${then}; now it is ${numbers.join(', ') || 'without'}.)` }
}

function idle(a: Acceptance, brief: Brief): Mark {
  const { span } = a
  const near = ruleNames.has(a.rule.text) ? undefined : nearestWord(a.rule.text, [...ruleNames])
  if (near) {
    return {
      rule: 'acceptance-idle',
      weight: 'look again',
      text: `There is no rule ${a.rule.text}; did you mean ${near}?`,
      span: a.rule.span,
      expected: near,
      mends: [{ label: `Write ${near}`, span: a.rule.span, text: near }],
      source: SOURCE,
    }
  }
  const end = brief.text[span.to] === '\n' ? span.to + 1 : span.to
  if (!ruleNames.has(a.rule.text)) {
    return {
      rule: 'acceptance-idle',
      weight: 'look again',
      text: `There is no rule ${a.rule.text}: nothing is accepted by this.`,
      span: a.rule.span,
      expected: 'the name of one rule, as it stands beside its mark: one statement for each mark',
      mends: [{ label: 'Drop the statement', span: { from: span.from, to: end }, text: '' }],
      source: SOURCE,
    }
  }
  return {
    rule: 'acceptance-idle',
    weight: 'remark',
    text: `${a.rule.text} says nothing${a.at ? ` at ${a.at.text}` : ''} any more: there is nothing to accept.`,
    span,
    expected: 'no such statement',
    mends: [{ label: 'Drop the statement', span: { from: span.from, to: end }, text: '' }],
    source: SOURCE,
  }
}

const isAt = (a: Acceptance, mark: Mark, brief: Brief) =>
  a.at === undefined || isNamed(a.at.text, placeOf(mark, brief) ?? '', brief)

const plain = (text: string) => text.toLowerCase().replace(/\s+/g, ' ').trim()
const isSame = (a: readonly string[], b: readonly string[]) => a.map(plain).join('|') === b.map(plain).join('|')

/** The feature of a mark, else the statement it stands in: `hole A`, `material`. */
function placeOf(mark: Mark, brief: Brief): string | undefined {
  if (mark.feature) return mark.feature
  if (!mark.span) return undefined
  // Statements begin at the margin; indented lines belong to the one above.
  const before = brief.text.slice(0, mark.span.from)
  const start = Math.max(0, before.search(/(?:^|\n)\S[^\n]*(?:\n[ \t][^\n]*)*$/))
  return /^\s*(flat bar|round bar|[a-z]+(?: [A-Z]\d?(?=\s))?)/i.exec(brief.text.slice(start))?.[1]
}

/** The figures that a mark stands on. */
function numbersOf(mark: Mark, brief: Brief): readonly string[] {
  if (mark.numbers) return mark.numbers
  const said = mark.span ? brief.text.slice(mark.span.from, mark.span.to) : ''
  return said.match(/\d*[.,/-]?\d+/g) ?? []
}
