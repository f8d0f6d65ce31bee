import type { Side } from '../../brief/brief.ts'
import type { Part } from '../../part/part.ts'
import { axisOf } from '../frames.ts'
import type { PlannedView, Sight, ViewPlan } from './plan.ts'
import { proposePrismatic } from './prismatic.ts'
import { planSection, unseenFrom } from './sections.ts'
import { proposeTurned } from './turned.ts'
import { wantsOf } from './wants.ts'
import { withSections } from './with-sections.ts'
import { listed } from './words.ts'

/**
 * Which views the sheet shows, and why. The front is the part's own, as the brief names it; how much it
 * shows is counted against the other sides. Views that the brief asks for are drawn as asked; otherwise the fewest views
 * that show every feature in true shape, beside sections that are asked for. A pictorial comes along unless it is
 * refused.
 */
export function proposeViews(part: Part, sight: Sight): ViewPlan {
  const asked = part.brief.views ?? []
  const sections = asked.filter((r) => r.kind === 'section')
  const proposed = () => (part.axis ? proposeTurned(part, sight) : proposePrismatic(part, sight))
  const plan = asked.some((r) => r.kind === 'view')
    ? asAsked(part, sight)
    : sections.length > 0
      ? withSections(part, sections, proposed(), sight)
      : proposed()
  if (asked.some((r) => r.kind === 'no pictorial')) return plan
  return { ...plan, views: [...plan.views, { kind: 'pictorial' }] }
}

function asAsked(part: Part, sight: Sight): ViewPlan {
  const asked = part.brief.views ?? []
  const sides = [...new Set(asked.flatMap((r) => (r.kind === 'view' ? [r.side] : [])))]
  const requests = asked.filter((r) => r.kind === 'section')
  const unseen = requests.some((r) => !r.through) ? unseenFrom(part, sides, sight) : undefined
  const sections = requests.map((r) => planSection(part, r, sides, unseen))
  const replaced = sides.filter((s) => sections.some((x) => x.side === s))
  const views: PlannedView[] = [
    ...sides.filter((s) => !replaced.includes(s)).map((side): PlannedView => ({ kind: 'principal', side })),
    ...sections,
  ]
  const reasons = [
    'Views as the brief asks.',
    ...sections.map((s) => `Section ${s.letter}-${s.letter} stands in the place of the ${s.side} view.`),
    ...replaced.map((s) => `The ${s} view itself is left out: its section stands in its place.`),
    ...untold(part, [...sides, ...sections.map((s) => s.side)]),
  ]
  return { views, reasons }
}

/** What the views asked for do not show in true shape, with the view that would. */
function untold(part: Part, sides: readonly Side[]): string[] {
  const axes = new Set(sides.map((s) => axisOf[s]))
  const missing = wantsOf(part).filter((w) => w.along.length > 0 && !w.along.some((a) => axes.has(a)))
  if (missing.length === 0) return []
  const side = { x: 'left or right', y: 'front', z: 'top' }[missing[0]!.along[0]!]
  return [`None of these views shows ${listed(missing.map((w) => w.what))} in true shape; the ${side} view would.`]
}
