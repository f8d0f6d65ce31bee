import type { Side } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import { lengthOf } from '../geometry/evaluate.ts'
import type { Vec3 } from '../geometry/vec.ts'
import { cross, unit } from '../geometry/vec3.ts'
import type { Body } from '../kernel/body.ts'
import type { Kernel } from '../kernel/kernel.ts'
import type { Part } from '../part/part.ts'
import { practiceFigures } from '../standards/practice-figures.ts'
import { centreLines } from './centre-lines/centre-lines.ts'
import { withoutNeedlessHidden } from './conventions/needless-hidden.ts'
import type { CutBySection, Showing } from './conventions/showing.ts'
import { withSlopes } from './conventions/slopes.ts'
import { withTapped } from './conventions/tapped.ts'
import { threadLines } from './conventions/threads.ts'
import { exactView } from './exact/exact-view.ts'
import { finished, type Outline, outlineOf } from './finish.ts'
import { FRAMES, ISOMETRIC } from './frames.ts'
import type { Projector } from './projector.ts'
import type { PlannedSection, PlannedView, Sight, ViewPlan } from './propose/plan.ts'
import { proposeViews } from './propose/propose.ts'
import { sectionView } from './section-view.ts'
import { cuttingPlaneIn, outsideHalf } from './sections.ts'
import type { CuttingPlane, View, ViewLine, ViewSet } from './view.ts'

const ownProjector: Projector = (_, body, frame) => exactView(body, frame)

/** Says for each view in the making (`front`, `section`, `pictorial`) how much of its line-work is done, 0 to 1; may stop it. */
export interface ViewsWatch {
  readonly stop?: () => boolean
  readonly progress?: (view: string, share: number) => void
}

/** Our own projector under a watch. Throws `Stopped` where it says so. */
export function watchedProjector({ stop, progress }: ViewsWatch, whole: Body): Projector {
  return (_, body, frame) => {
    const side = (Object.keys(FRAMES) as Side[]).find((s) => FRAMES[s] === frame)
    const view = body !== whole ? 'section' : (side ?? 'pictorial')
    return exactView(body, frame, {
      ...(stop ? { stop } : {}),
      ...(progress ? { progress: (done, total) => progress(view, total > 0 ? done / total : 1) } : {}),
    })
  }
}

/** The views that the part needs or the brief asks for, with all their lines, and the reasons for the choice. */
export function drawViews(part: Part, kernel: Kernel, project: Projector = ownProjector): ViewSet {
  const made = new Map<Side, Outline>()
  const outline = (side: Side): Outline => {
    const known = made.get(side) ?? outlineOf(project(part.solid, part.body, FRAMES[side]), part.body, true)
    made.set(side, known)
    return known
  }
  const plan = proposeViews(part, sightOf(outline))
  const showing = showingOf(part, plan, outline)
  const draw = (planned: PlannedView): View => {
    if (planned.kind === 'principal') return principalView(part, planned.side, outline(planned.side), plan, showing)
    if (planned.kind === 'section')
      return sectionView(part, kernel, planned, project, (box) => cuttingPlanes(part, planned.side, box, plan, planned))
    return pictorialView(part, project)
  }
  const { thicknessNote } = plan
  const drawn = plan.views.map(draw)
  // what the plane takes away whole leaves nothing to draw
  const views = drawn.filter((v) => Number.isFinite(v.box.min[0]))
  const empty = drawn.filter((v) => v.kind === 'section' && v.hatched.length === 0)
  const marks = [...(plan.marks ?? []), ...empty.map((v) => cutsNothing(part, v.id))]
  return {
    views,
    reasons: plan.reasons,
    ...(marks.length > 0 ? { marks } : {}),
    ...(thicknessNote ? { thicknessNote } : {}),
  }
}

function cutsNothing(part: Part, id: string): Mark {
  const asked = part.brief.views?.find((r) => r.kind === 'section' && id === `section ${r.letter}-${r.letter}`)
  return {
    rule: 'section-cuts-nothing',
    weight: 'must change',
    text: `The plane of ${id} does not cut the part.`,
    expected: 'through a feature that the plane can go through, or another view for it: as front, as top',
    ...(asked ? { span: asked.span } : {}),
  }
}

function sightOf(outline: (side: Side) => Outline): Sight {
  const hidden = (side: Side) => outline(side).lines.filter((l) => l.kind === 'hidden')
  return {
    hiddenLength: (side) => hidden(side).reduce((sum, l) => sum + lengthOf(l.curve), 0),
    hiddenLines: (side) => hidden(side).length,
    shows: (side, faces) =>
      outline(side).lines.some(
        (l) => l.kind === 'visible' && l.sources.some((s) => s.faces.some((id) => faces.includes(id))),
      ),
    showsAlone: (side, faces) =>
      outline(side).lines.some(
        (l) =>
          l.kind === 'visible' &&
          l.sources.length > 0 &&
          l.sources.every((s) => s.faces.some((id) => faces.includes(id))),
      ),
  }
}

const overrunFor = (part: Part) => practiceFigures(part.brief.header.practice).centreOverrun

function showingOf(part: Part, plan: ViewPlan, outline: (side: Side) => Outline): Showing {
  const { body, features, axis } = part
  return {
    body,
    features,
    ...(axis ? { axis } : {}),
    principals: plan.views.flatMap((v) =>
      v.kind === 'principal' ? [{ frame: FRAMES[v.side], lines: outline(v.side).lines }] : [],
    ),
    sections: plan.views.flatMap((v) => (v.kind === 'section' ? cutsOf(v, axis?.direction) : [])),
  }
}

/** The planes that a section cuts along: an aligned one is two half planes. */
function cutsOf(section: PlannedSection, axis: Vec3 | undefined): CutBySection[] {
  const { point, side, extent, aligned } = section
  if (aligned && axis) return aligned.map((half) => ({ point, normal: unit(cross(axis, half)), cutHalf: half }))
  const normal = FRAMES[side].toViewer
  return [{ point, normal, ...(extent === 'half' ? { cutHalf: outsideHalf(section, axis) } : {}) }]
}

function principalView(part: Part, side: Side, outline: Outline, plan: ViewPlan, showing: Showing): View {
  const frame = FRAMES[side]
  const { box, tolerance } = outline
  const lines = withoutNeedlessHidden({ frame, lines: outline.lines }, showing, tolerance)
  const gone = leftOut(part, outline.lines, lines)
  const centres = centreLines(part, frame, lines, box, { overrun: overrunFor(part), tolerance }).filter(
    (c) => !c.features?.length || c.features.some((f) => !gone.has(f)),
  )
  const cutting = cuttingPlanes(part, side, box, plan)
  return {
    id: side,
    kind: 'principal',
    side,
    frame,
    lines: withTapped(
      withSlopes(
        finished(lines, [...threadLines(part, frame, lines, { tolerance }), ...centres, ...cutting.lines], tolerance),
        part.body,
        frame,
      ),
      part,
      frame,
    ),
    hatched: [],
    cuttingPlanes: cutting.planes,
    box,
  }
}

/** Features of which nothing is left in a view, because other views tell them: no centre line stands for them either. */
function leftOut(part: Part, all: readonly ViewLine[], kept: readonly ViewLine[]): ReadonlySet<string> {
  const gone = part.features.filter(({ members }) => {
    const faces = new Set(members.flatMap((m) => m.faces))
    // A mouth seen edge-on lies in the outline, and tells nothing of the feature.
    const isOwn = (l: ViewLine) => l.sources.length > 0 && l.sources.every((s) => s.faces.some((f) => faces.has(f)))
    return all.some(isOwn) && !kept.some(isOwn)
  })
  return new Set(gone.map((f) => f.id))
}

/** Lines and letters of all planes that are marked in this view. */
function cuttingPlanes(part: Part, side: Side, box: View['box'], plan: ViewPlan, own?: PlannedSection) {
  const planes: CuttingPlane[] = []
  const lines: ViewLine[] = []
  // Once: in the view itself before a section that is seen from its side.
  if (own && plan.views.some((v) => v.kind === 'principal' && v.side === side)) return { planes, lines }
  for (const section of plan.views) {
    if (section.kind !== 'section' || section.parent !== side || section === own) continue
    const made = cuttingPlaneIn(section, FRAMES[side], box, part.axis?.direction)
    planes.push(made.plane)
    lines.push(...made.lines)
  }
  return { planes, lines }
}

function pictorialView(part: Part, project: Projector): View {
  const exact = project(part.solid, part.body, ISOMETRIC)
  const { lines, box, tolerance } = outlineOf(exact, part.body, false)
  return {
    id: 'pictorial',
    kind: 'pictorial',
    frame: ISOMETRIC,
    lines: finished(lines, [], tolerance),
    hatched: [],
    cuttingPlanes: [],
    box,
  }
}
