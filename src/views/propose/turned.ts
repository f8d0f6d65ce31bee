import type { Lie, Side } from '../../brief/brief.ts'
import { dot, sub } from '../../geometry/vec3.ts'
import type { Part, PartFeature } from '../../part/part.ts'
import { type Axis, axisOf, FRAMES, sideOf } from '../frames.ts'
import { alignedHalves, unturned } from './aligned.ts'
import { crossSections } from './cross-sections.ts'
import { countsOf } from './front.ts'
import { partedFillets } from './parted-fillets.ts'
import type { PlannedView, Sight, ViewPlan } from './plan.ts'
import { isBefore, sectionBeside } from './section-beside.ts'
import { order } from './sections.ts'
import { sideView } from './side-view.ts'
import { boredEnd } from './solid-bar.ts'
import { isRing, nameOf, type Want, wantsOf } from './wants.ts'
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
  const bored = boredEnd(part)
  const endSide = bored?.side ?? endView(part, lie, sight)
  // A flat with something larger at both its ends is not seen from there: the section across it shows it.
  const flats = part.features.flatMap((f) => (f.kind === 'flat-cut' ? [nameOf(f)] : []))
  const isBehind = (w: Want) => flats.includes(w.what) && !!w.faces && !sight.shows(endSide, w.faces)
  const ended = offAxis.filter((w) => w.along.includes(end) && !isBehind(w))
  const longitudinal = longitudinalSide(part, lie, sight)
  const crosswise = [...offAxis.filter((w) => !w.along.includes(end)), ...partedFillets(part, longitudinal)]
  const rings = part.features.filter(isRing)
  // A section would take away what is worked across the axis in its front half.
  const hollow =
    !bored &&
    (wants.some((w) => w.inside && w.coaxial) || isTube(part) || isPiercedDisc(part, longitudinal, sight)) &&
    !crosswise.some(
      (w) =>
        w.faces &&
        w.along.includes(axisOf[longitudinal]) &&
        !rings.some((f) => nameOf(f) === w.what && isToldByCut(part, w, longitudinal)),
    )
  const views: PlannedView[] = []
  const reasons: string[] = []

  const needsEnd = ended.length > 0 || bored !== undefined
  if (needsEnd) {
    views.push({ kind: 'principal', side: endSide })
    const behind = hiddenFrom(part, endSide, ended)
    const shown = [...(bored?.names ?? []), ...ended.filter((w) => !behind.includes(w)).map((w) => w.what)]
    reasons.push(`${capital(endSide)} view: shows ${listed(shown)} in true shape.`)
    if (behind.length > 0) {
      views.push({ kind: 'principal', side: OPPOSITE[endSide] })
      reasons.push(
        `${capital(OPPOSITE[endSide])} view: shows ${listed(behind.map((w) => w.what))}, blind in the other end.`,
      )
    }
  }
  // Turned to go through the holes of a flange, a section goes past what is drilled across the axis elsewhere.
  const bent = hollow && needsEnd ? alignedHalves(part, longitudinal) : undefined
  const asItLies = unturned(part, bent)
  const level = asItLies && order(part).find((s) => axisOf[s] === asItLies)
  const aligned = level ? undefined : bent
  if (hollow) {
    const section: PlannedView = {
      kind: 'section',
      letter: 'A',
      extent: 'full',
      side: level ?? longitudinal,
      point: part.axis!.point,
      ...(aligned ? { aligned } : {}),
      ...(needsEnd ? { parent: endSide } : {}),
    }
    views.push(section)
    reasons.push(
      needsEnd
        ? `Section A-A through the axis shows the inside in full lines${aligned ? '; it is aligned, what it cuts at an angle is turned into the view' : ''}.`
        : 'One view in full section: everything is of revolution, the inside shows in full lines and the diameters carry ⌀.',
    )
  } else {
    views.unshift({ kind: 'principal', side: longitudinal })
    reasons.unshift(
      bored
        ? `${capital(longitudinal)}: a solid bar is not cut lengthwise; ${countsOf(longitudinal, wants, sight)}.`
        : offAxis.length === 0
          ? 'One view: every feature is of revolution about the axis, the diameters carry ⌀.'
          : `${capital(longitudinal)}: the axis lies along the view; ${countsOf(longitudinal, wants, sight)}.`,
    )
  }
  const isHollow = wants.some((w) => w.inside && w.coaxial) || isTube(part)
  const beside = !hollow && !bored && isHollow ? sectionBeside(part, longitudinal) : undefined
  if (beside) {
    views.push(beside)
    reasons.push(
      `Section A-A through the axis shows the inside in full lines, beside the ${longitudinal} view, which stays whole.`,
    )
  }
  const isLost = (want: Want, side: Side) =>
    side === beside?.side && part.features.some((f) => nameOf(f) === want.what && isBefore(f, part, side))
  for (const want of crosswise) {
    const axis = want.along[0]!
    const tells = (side: Side) => want.along.includes(axisOf[side]) && !isLost(want, side)
    if (views.some((v) => v.kind !== 'pictorial' && tells(v.side))) continue
    if (hollow && !aligned && isToldByCut(part, want, longitudinal)) {
      reasons.push(`Section A-A holds the axis of ${want.what}: no further view for it.`)
      continue
    }
    const usual: Side = axis === 'z' ? 'top' : axis === 'y' ? 'front' : sideView(part, sight).side
    const side = facingSide(want, usual, sight)
    views.push({ kind: 'principal', side })
    reasons.push(
      `${capital(side)} view: shows ${want.what} in true shape${side === usual ? '' : `, hidden from the ${usual}`}.`,
    )
  }
  const parent = views.flatMap((v) => (v.kind !== 'pictorial' && axisOf[v.side] !== end ? [v.side] : []))[0]
  // A flat whose end stands open in the end view is seen there in true shape: a section would show it again.
  const isShown = (faces: readonly number[]) => needsEnd && sight.shows(endSide, faces)
  for (const { section, reason } of crossSections(part, endSide, hollow || beside ? 'B' : 'A', parent, isShown)) {
    views.push(section)
    reasons.push(reason)
  }
  return { views, reasons }
}

/** The opposite side where alone the feature is seen, as a keyseat on the underside. */
function facingSide({ faces }: Want, usual: Side, sight: Sight): Side {
  const behind = OPPOSITE[usual]
  if (!faces || faces.length === 0 || sight.showsAlone(usual, faces)) return usual
  return sight.showsAlone(behind, faces) ? behind : usual
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
  return chamferedEnd(part, sight) ?? sideView(part, sight).side
}

/** The end from which alone a chamfer is seen that flats part into pieces, as of a hexagon head: its circle shows there. */
function chamferedEnd(part: Part, sight: Sight): Side | undefined {
  const parted = part.features.filter(
    (f) => f.kind === 'chamfer' && f.members.some((m) => m.faces.length > 1) && isTurned(f, part),
  )
  const faces = parted.flatMap((f) => f.members.flatMap((m) => m.faces))
  return (['left', 'right'] as const).find((side) => faces.length > 0 && sight.showsAlone(side, faces))
}

const OPPOSITE: Readonly<Record<Side, Side>> = {
  left: 'right',
  right: 'left',
  front: 'rear',
  rear: 'front',
  top: 'bottom',
  bottom: 'top',
}

/** Blind holes worked from the far end while others are worked from the near one: one end view shows them only dashed. */
function hiddenFrom(part: Part, near: Side, ended: readonly Want[]): Want[] {
  const holes = part.features.filter((f) => f.kind === 'hole' && ended.some((w) => w.what === nameOf(f)))
  if (!holes.some((f) => sideOf(f.outward) === near)) return []
  const far = holes.filter(
    (f) => sideOf(f.outward) === OPPOSITE[near] && f.feature?.kind === 'hole' && f.feature.depth.kind === 'blind',
  )
  return ended.filter((w) => far.some((f) => nameOf(f) === w.what))
}

/** Hidden lines of a disc from which it is cut open (common practice, no source). */
const MANY_HIDDEN = 8

/** Shorter than its diameter, and full of hidden lines from the side. */
function isPiercedDisc(part: Part, longitudinal: Side, sight: Sight): boolean {
  const { direction } = part.axis!
  const { min, max } = part.body.box
  const extent = sub(max, min)
  const length = Math.abs(dot(extent, direction))
  const across = Math.max(...extent.filter((_, k) => Math.abs(direction[k]!) < 0.5))
  return length < across && sight.hiddenLines(longitudinal) >= MANY_HIDDEN
}

/** A single hole across the axis that a section along it holds: its diameter and its place stand there. */
function isToldByCut(part: Part, want: Want, longitudinal: Side): boolean {
  const { toViewer } = FRAMES[longitudinal]
  return part.features.some(
    (f) =>
      f.kind === 'hole' &&
      (f.members.length === 1 || isRing(f)) &&
      nameOf(f) === want.what &&
      f.members.some(
        (m) =>
          Math.abs(dot(m.outward ?? f.outward, toViewer)) < 1e-9 &&
          Math.abs(dot(sub(m.point, part.axis!.point), toViewer)) < 1e-6,
      ),
  )
}

const isTurned = (f: PartFeature, { body }: Part): boolean =>
  f.members.some((m) => m.faces.some((id) => body.faces[id]?.surface.kind === 'cone'))

function isTube(part: Part): boolean {
  return part.brief.stock?.kind === 'tube' || part.features.some((f) => f.kind === 'bore')
}
