import type { Side } from '../../brief/brief.ts'
import { dot, sub } from '../../geometry/vec3.ts'
import type { Part } from '../../part/part.ts'
import { axisOf, FRAMES } from '../frames.ts'
import { featurePoints } from './feature-points.ts'
import type { PlannedSection, PlannedView, Sight, ViewPlan } from './plan.ts'
import { freeSides, parentOf, planSection, type SectionRequest, sideOfMostCuts, unseenFrom } from './sections.ts'
import { nameOf, wantsOf } from './wants.ts'
import { listed } from './words.ts'

/**
 * Sections that the brief asks for without naming a view: the proposed views that are still needed stand beside them. A
 * section takes the place of the proposed view of its side, except where that view alone shows what the plane cuts away;
 * other views go that show nothing of their own any more.
 */
export function withSections(
  part: Part,
  requests: readonly SectionRequest[],
  proposed: ViewPlan,
  sight: Sight,
): ViewPlan {
  let views = proposed.views.filter((v) => v.kind !== 'pictorial')
  const reasons: string[] = []
  const sections: PlannedSection[] = []
  for (const request of requests) {
    const section = sectionFor(part, request, views, sight)
    const { letter, side } = section
    const lost = cutAway(part, section)
    const gone = views.filter((v) => v.side === side && !(v.kind === 'principal' && lost.length > 0))
    views = views.filter((v) => !gone.includes(v))
    sections.push(section)
    const place = gone.length > 0 ? `in the place of the ${side} view` : `as the ${side} view`
    reasons.push(
      lost.length > 0 && views.some((v) => v.side === side)
        ? `Section ${letter}-${letter} as the brief asks, beside the ${side} view: that shows ${listed(lost)}, cut away here.`
        : `Section ${letter}-${letter} as the brief asks, ${place}.`,
    )
  }
  const needed = stillNeeded(part, views, sections, sight)
  const dropped = views.filter((v) => !needed.includes(v))
  const principals = needed.flatMap((v) => (v.kind === 'principal' ? [v.side] : []))
  const all: PlannedView[] = [...needed, ...sections]
  // Seen edge-on nowhere, and not the one section through the axis of a part of revolution: where it cuts must be told.
  const hidden = sections.find((s) => !principals.some((p) => axisOf[p] !== axisOf[s.side]))
  if (hidden && !throughAxis(part, hidden)) {
    const side: Side = axisOf[hidden.side] === 'y' ? 'top' : 'front'
    all.unshift({ kind: 'principal', side })
    principals.push(side)
    reasons.push(`The ${side} view shows where section ${hidden.letter}-${hidden.letter} cuts.`)
  }
  const letters = new Set(sections.map((s) => s.letter))
  const lettered = all.map((v): PlannedView => {
    if (v.kind !== 'section') return v
    const { parent: _, ...rest } = v
    const parent = parentOf(part, v, principals)
    const letter = sections.includes(v) ? v.letter : freeLetter(letters)
    return { ...rest, letter, ...(parent ? { parent } : {}) }
  })
  const left = dropped.map((v) => v.side)
  if (left.length > 0)
    reasons.push(`The ${listed(left)} view is not needed beside ${sections.length > 1 ? 'them' : 'it'}.`)
  const { thicknessNote, reasons: own, ...rest } = proposed
  // The thickness shows in a section across it, and has its size there.
  const across = lettered.some((v) => v.kind !== 'pictorial' && part.flat && axisOf[v.side] !== axisOf[part.flat.side])
  return {
    ...rest,
    views: lettered,
    reasons: [...own, ...reasons],
    ...(thicknessNote && !across ? { thicknessNote } : {}),
  }
}

type Told = Exclude<PlannedView, { readonly kind: 'pictorial' }>

/**
 * In the view that the brief names; along the axis of a part of revolution; else where the plane cuts most axes, a free
 * place before that of another view.
 */
function sectionFor(part: Part, request: SectionRequest, views: readonly Told[], sight: Sight): PlannedSection {
  const sides = views.flatMap((v) => (v.kind === 'principal' ? [v.side] : []))
  const unseen = part.axis || request.through ? undefined : unseenFrom(part, sides, sight)
  if (!request.as && !request.through && part.axis) {
    const { direction } = part.axis
    const lengthwise = views.find((v) => Math.abs(dot(direction, FRAMES[v.side].toViewer)) < 1e-9)
    if (lengthwise) {
      const section = planSection(part, { ...request, as: lengthwise.side }, sides)
      if (cutAway(part, section).length === 0) return section
    }
  }
  const among = [...freeSides(part, sides), ...besidesFront(sides)]
  const as = request.as ?? (part.axis ? undefined : sideOfMostCuts(part, request, among, unseen))
  return planSection(part, as ? { ...request, as } : request, sides, unseen)
}

/** The front last: it gives way only where a section there cuts more. */
const besidesFront = (sides: readonly Side[]) => [
  ...sides.filter((s) => s !== 'front'),
  ...sides.filter((s) => s === 'front'),
]

const throughAxis = (part: Part, { side, point }: PlannedSection): boolean =>
  part.axis !== undefined &&
  Math.abs(dot(part.axis.direction, FRAMES[side].toViewer)) < 1e-9 &&
  Math.abs(dot(sub(part.axis.point, point), FRAMES[side].toViewer)) < 1e-9

/** Features shown true by this side alone of which nothing is left behind the plane. */
function cutAway(part: Part, { side, point, extent }: PlannedSection): string[] {
  if (extent === 'half') return []
  const { toViewer } = FRAMES[side]
  const wants = wantsOf(part)
  return part.features
    .filter((f) => {
      const points = featurePoints(f, part)
      return (
        points.length > 0 &&
        points.every((p) => dot(sub(p, point), toViewer) > -1e-6) &&
        wants.some(
          (w) => w.what === nameOf(f) && !w.coaxial && w.along.length > 0 && w.along.every((a) => a === axisOf[side]),
        )
      )
    })
    .map(nameOf)
}

/** The front, and as many more as tell what would not be told without. */
function stillNeeded(
  part: Part,
  views: readonly Told[],
  sections: readonly PlannedSection[],
  sight: Sight,
): readonly Told[] {
  const wants = wantsOf(part).filter((w) => w.along.length > 0)
  const lost = new Set(sections.flatMap((s) => cutAway(part, s)))
  let kept = [...views]
  for (const v of [...views].reverse()) {
    if (v.kind !== 'principal' || v.side === 'front') continue
    const rest = [...kept.filter((k) => k !== v), ...sections]
    const axes = new Set(rest.map((k) => axisOf[k.side]))
    const told = wants.every((w) => {
      if (!w.along.some((a) => axes.has(a))) return false
      const { faces } = w
      if (!faces || faces.length === 0 || !sight.shows(v.side, faces)) return true
      return rest.some(
        (k) =>
          w.along.includes(axisOf[k.side]) &&
          !(k.kind === 'section' && lost.has(w.what)) &&
          (k.side === v.side || sight.shows(k.side, faces)),
      )
    })
    const marked = sections.every((s) => rest.some((k) => k.kind === 'principal' && axisOf[k.side] !== axisOf[s.side]))
    if (axes.size > 1 && told && marked) kept = kept.filter((k) => k !== v)
  }
  return kept
}

function freeLetter(taken: Set<string>): string {
  const letter = 'ABCDEFGHJKLMNPRSTUVWXYZ'.split('').find((l) => !taken.has(l)) ?? 'Z'
  taken.add(letter)
  return letter
}
