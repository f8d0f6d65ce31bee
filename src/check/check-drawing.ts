import type { Mark } from '../brief/mark.ts'
import type { Finding, PartialSubject, Rule, Sized, Subject } from './rule.ts'
import { rules } from './rules/rules.ts'

/**
 * What a checker would pencil on the drawing, rule by rule. Where the drawing could not be derived whole, only the rules
 * are asked that read what is there. Acceptances are not looked at: see `withAcceptances`.
 */
export function checkDrawing(subject: PartialSubject, asked: readonly Rule[] = rules): Mark[] {
  const sized = isSized(subject) ? subject : undefined
  const whole = sized && isWhole(sized) ? sized : undefined
  return asked.flatMap((rule) => found(rule, subject, sized, whole).map((f) => markOf(rule, f)))
}

function found(
  rule: Rule,
  subject: PartialSubject,
  sized: Sized | undefined,
  whole: Subject | undefined,
): readonly Finding[] {
  if (rule.reads === 'brief') return rule.check(subject)
  if (rule.reads === 'drawing') return sized ? rule.check(sized) : []
  return whole ? rule.check(whole) : []
}

/** What only the finished sheet shows. */
export const checkSheet = (subject: PartialSubject): Mark[] => checkDrawing(subject, ofSheet)
const ofSheet = rules.filter((r) => r.reads === 'sheet')

function markOf(rule: Rule, { weight = rule.weight, ...found }: Finding): Mark {
  return { rule: rule.name, weight, source: rule.source, ...found }
}

function isSized(s: PartialSubject): s is PartialSubject & Sized {
  return !!s.part && s.part.body.faces.length > 0 && !!s.views && !!s.sizes
}

const isWhole = (s: Sized & PartialSubject): s is Subject => !!s.sheet
