import { locate } from '../../src/brief/locate.ts'
import type { Mark } from '../../src/brief/mark.ts'
import { rules } from '../../src/check/rules/rules.ts'
import type { OcctKernel } from '../../src/kernel/open.ts'
import type { Mutation } from './mutate.ts'
import { lazySubject } from './subject.ts'

/** Rules that look at the finished sheet; laying it out takes longer than all others together. */
const ofSheet = new Set(['sizes-crowded', 'small-on-paper'])

/** Marks of a brief, the cheap ones first; later phases are only worked out while `enough` says no. */
function marksOf(text: string, kernel: OcctKernel, enough: (marks: readonly Mark[]) => boolean): Mark[] {
  const subject = lazySubject(text, kernel)
  try {
    const marks: Mark[] = [...subject.brief.marks, ...subject.part.marks]
    if (enough(marks)) return marks
    const built = subject.part.body.faces.length > 0
    for (const rule of rules) {
      if (ofSheet.has(rule.name) || (rule.reads === 'drawing' && !built)) continue
      const found = rule.check(subject)
      marks.push(...found.map(({ weight = rule.weight, ...f }): Mark => ({ rule: rule.name, weight, ...f })))
    }
    if (built && !enough(marks)) marks.push(...subject.sizes.marks)
    return marks
  } finally {
    subject.free()
  }
}

const key = (m: Mark) => `${m.rule} ${m.text}`

/** Marks that a good brief carries already. */
export function baseOf(text: string, kernel: OcctKernel): ReadonlySet<string> {
  return new Set(marksOf(text, kernel, () => false).map(key))
}

/**
 * The new mark that gives the fault away: one that must change or wants another look, at the lines that were touched or
 * about the whole part. Undefined where nothing does.
 */
export function catches(mutation: Mutation, base: ReadonlySet<string>, kernel: OcctKernel): Mark | undefined {
  const { text, lines } = mutation
  const tells = (m: Mark) => {
    if (m.weight === 'remark' || base.has(key(m))) return false
    if (!m.span || !lines) return true
    const [from, to] = [locate(text, m.span.from).line, locate(text, Math.max(m.span.from, m.span.to - 1)).line]
    // A statement's line above counts: a mark about a place often stands at the callout.
    return from <= lines[1] + 1 && to >= lines[0] - 2
  }
  return marksOf(text, kernel, (marks) => marks.some(tells)).find(tells)
}
