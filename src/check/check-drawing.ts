import type { Mark } from '../brief/mark.ts'
import type { Span } from '../brief/span.ts'
import type { Finding, PartialSubject, Rule, Sized, Subject } from './rule.ts'
import { rules } from './rules/rules.ts'

/**
 * What a checker would pencil on the drawing, rule by rule. Where the drawing could not be derived whole, only the rules
 * are asked that read what is there. Acceptances are not looked at: see `withAcceptances`.
 */
export function checkDrawing(subject: PartialSubject, asked: readonly Rule[] = rules): Mark[] {
  const sized = isSized(subject) ? subject : undefined
  const whole = sized && isWhole(sized) ? sized : undefined
  const refused = refusedIn(subject)
  const within = ({ span }: Finding) => span && refused.some((r) => span.from >= r.from && span.to <= r.to)
  return asked.flatMap((rule) =>
    found(rule, subject, sized, whole)
      .filter((f) => !within(f))
      .map((f) => markOf(rule, f)),
  )
}

/** Statements that the part was built without and that are marked for it: the cause is said, what follows waits. */
function refusedIn({ brief, part }: PartialSubject): readonly Span[] {
  if (!part || part.features.length === 0) return []
  const made = new Set(part.features.map((f) => f.feature))
  const must = part.marks.filter((m) => m.weight === 'must change')
  return brief.features.flatMap(({ span }, i) => {
    const marked = must.some((m) => m.span && m.span.from >= span.from && m.span.to <= span.to)
    return marked && !made.has(brief.features[i]) ? [span] : []
  })
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
