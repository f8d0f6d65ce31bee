import type { Lie, Side } from '../../brief/brief.ts'
import type { Part } from '../../part/part.ts'
import { type Axis, axisOf, sideOf } from '../frames.ts'
import { crossSections } from './cross-sections.ts'
import { countsOf } from './front.ts'
import type { PlannedView, Sight, ViewPlan } from './plan.ts'
import { sideView } from './side-view.ts'
import { wantsOf } from './wants.ts'
import { capital, listed } from './words.ts'

/**
 * Views of a part of revolution. The longitudinal view alone where everything is of revolution, in full section where
 * the part is hollow. Features off the axis add the view that shows them true: the end view for holes along the axis, a
 * cross-section for a keyseat or a flat.
 */
export function proposeTurned(part: Part, sight: Sight): ViewPlan {
  const lie = part.axis!.lie
  const wants = wantsOf(part)
  const offAxis = wants.filter((w) => !w.coaxial && w.along.length > 0)
  const end = AXIS_OF[lie]
  const ended = offAxis.filter((w) => w.along.includes(end))
  const crosswise = offAxis.filter((w) => !w.along.includes(end))
  const longitudinal = longitudinalSide(part, lie, sight)
  // A section would take away what is worked across the axis in its front half.
  const hollow =
    (wants.some((w) => w.inside && w.coaxial) || isTube(part)) &&
    !crosswise.some((w) => w.along.includes(axisOf[longitudinal]))
  const views: PlannedView[] = []
  const reasons: string[] = []

  const needsEnd = ended.length > 0
  const endSide = endView(part, lie, sight)
  if (needsEnd) {
    views.push({ kind: 'principal', side: endSide })
    reasons.push(`${capital(endSide)} view: shows ${listed(ended.map((w) => w.what))} in true shape.`)
  }
  if (hollow) {
    const section: PlannedView = {
      kind: 'section',
      letter: 'A',
      extent: 'full',
      side: longitudinal,
      point: part.axis!.point,
      ...(needsEnd ? { parent: endSide } : {}),
    }
    views.push(section)
    reasons.push(
      needsEnd
        ? 'Section A-A through the axis shows the inside in full lines.'
        : 'One view in full section: everything is of revolution, the inside shows in full lines and the diameters carry ⌀.',
    )
  } else {
    views.unshift({ kind: 'principal', side: longitudinal })
    reasons.unshift(
      offAxis.length === 0
        ? 'One view: every feature is of revolution about the axis, the diameters carry ⌀.'
        : `${capital(longitudinal)}: the axis lies along the view; ${countsOf(longitudinal, wants, sight)}.`,
    )
  }
  for (const want of crosswise) {
    const axis = want.along[0]!
    if (views.some((v) => v.kind !== 'pictorial' && axisOf[v.side] === axis)) continue
    const side: Side = axis === 'z' ? 'top' : axis === 'y' ? 'front' : sideView(part, sight).side
    views.push({ kind: 'principal', side })
    reasons.push(`${capital(side)} view: shows ${want.what} in true shape.`)
  }
  const parent = views.flatMap((v) => (v.kind !== 'pictorial' && axisOf[v.side] !== end ? [v.side] : []))[0]
  for (const { section, reason } of crossSections(part, endSide, hollow ? 'B' : 'A', parent)) {
    views.push(section)
    reasons.push(reason)
  }
  return { views, reasons }
}

const AXIS_OF: Readonly<Record<Lie, Axis>> = { 'left-right': 'x', 'front-rear': 'y', 'up-down': 'z' }

/** The view that lays the axis across the sheet. */
function longitudinalSide(part: Part, lie: Lie, sight: Sight): Side {
  return lie === 'front-rear' ? sideView(part, sight).side : 'front'
}

function endView(part: Part, lie: Lie, sight: Sight): Side {
  if (lie === 'front-rear') return 'front'
  if (lie === 'up-down') return 'top'
  // Holes are best seen from the face they are worked from.
  const worked = part.features.filter((f) => f.kind === 'hole').map((f) => sideOf(f.outward))
  const left = worked.filter((s) => s === 'left').length
  const right = worked.filter((s) => s === 'right').length
  if (left !== right) return left > right ? 'left' : 'right'
  return sideView(part, sight).side
}

function isTube(part: Part): boolean {
  return part.brief.stock?.kind === 'tube' || part.features.some((f) => f.kind === 'bore')
}
