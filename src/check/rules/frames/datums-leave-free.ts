import { isLocation, type Located, leftFree, locatedBy, motionWords } from '../../measure/datum-reach.ts'
import type { DrawingRule, Finding } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'datums-leave-free',
  weight: 'must change',
  source: 'ASME Y14.5-2018 section 7, ISO 5459:2011: degrees of freedom held by each datum (from memory)',
  about:
    'The datums of a frame must hold the part in every way in which its zone has a place. What they leave free lets the feature lie anywhere that way, and its basic sizes measure from nothing. Where only a turn is left free, look again: the sides of the part are not held to the pattern.',
  reads: 'drawing',
  check: (subject) => {
    const located = locatedBy(subject, isLocation).map((l) => ({ l, left: leftFree(subject.part, l) }))
    // A frame beside it may locate the feature, and this one refine it.
    const whole = new Set(located.flatMap(({ l, left }) => (left.all ? [l.held.feature.id] : [])))
    const seen = new Set<string>()
    return located.flatMap(({ l, left }): Finding[] => {
      const { id } = l.held.feature
      if (left.all || whole.has(id) || seen.has(id)) return []
      seen.add(id)
      const shifts = left.free.some((f) => f.kind === 'shift') || left.free.length === 0
      return [
        {
          weight: shifts ? 'must change' : 'look again',
          text: textOf(l, left.free),
          span: l.row.span,
          expected: shifts
            ? `a further datum that holds ${id} that way, or a frame of orientation`
            : 'a further datum that stops the turn, or a note that none is meant',
          ...(l.held.feature.feature ? { feature: l.held.feature.feature } : {}),
          numbers: [l.row.value.text, ...l.datums.map((d) => d.name)],
        },
      ]
    })
  },
}

function textOf({ held, datums }: Located, free: Parameters<typeof motionWords>[0]): string {
  const names = `Datum${datums.length > 1 ? 's' : ''} ${datums.map((d) => d.name).join(', ')}`
  const { characteristic } = held.said.frame
  const of = `the ${characteristic} of ${held.feature.id}`
  if (free.length === 0) return `${names} ${datums.length > 1 ? 'do' : 'does'} not lie where ${of} has its zone.`
  return `${names} ${datums.length > 1 ? 'do' : 'does'} not keep ${of} from ${motionWords(free)}.`
}
