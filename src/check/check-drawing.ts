import type { Mark } from '../brief/mark.ts'
import type { Finding, PartialSubject, Rule, Subject } from './rule.ts'
import { rules } from './rules/rules.ts'

/**
 * What a checker would pencil on the drawing, rule by rule. Where the drawing could not be derived whole, only the rules
 * about the brief itself are asked. Acceptances are not looked at: see `withAcceptances`.
 */
export function checkDrawing(subject: PartialSubject, asked: readonly Rule[] = rules): Mark[] {
  const whole = isWhole(subject) ? subject : undefined
  return asked.flatMap((rule) => {
    if (rule.reads === 'brief') return rule.check(subject).map((f) => markOf(rule, f))
    return whole ? rule.check(whole).map((f) => markOf(rule, f)) : []
  })
}

function markOf(rule: Rule, { weight = rule.weight, ...found }: Finding): Mark {
  return { rule: rule.name, weight, source: rule.source, ...found }
}

function isWhole(s: PartialSubject): s is Subject {
  return !!s.part && s.part.body.faces.length > 0 && !!s.views && !!s.sizes && !!s.sheet
}
