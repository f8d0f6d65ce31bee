import type { HalfSpace, Kernel } from '../kernel/kernel.ts'
import type { Part } from '../part/part.ts'
import { practiceFigures } from '../standards/practice-figures.ts'
import { inOneView, turnedHalves } from './aligned-halves.ts'
import { centreLines } from './centre-lines/centre-lines.ts'
import { withSlopes } from './conventions/slopes.ts'
import { withTapped } from './conventions/tapped.ts'
import { threadLines } from './conventions/threads.ts'
import type { CutView } from './cut-view.ts'
import { finished, outlineOf } from './finish.ts'
import { FRAMES } from './frames.ts'
import { kinOf } from './kin.ts'
import type { Projector } from './projector.ts'
import type { PlannedSection } from './propose/plan.ts'
import { keptBy, withoutDivision } from './sections.ts'
import type { CuttingPlane, Frame, View, ViewLine } from './view.ts'

/** Lines and letters of the planes of other sections that are marked in a view. */
export interface MarkedPlanes {
  readonly planes: readonly CuttingPlane[]
  readonly lines: readonly ViewLine[]
}

/** What of the solid is kept, how it is looked at, and which lines are no lines of the sheet. */
interface Cut {
  readonly frame: Frame
  readonly planes: readonly HalfSpace[]
  readonly keep: 'intersection' | 'union'
  readonly trimmed: (lines: readonly ViewLine[], tolerance: number) => ViewLine[]
}

/** The view of a section; an aligned one is drawn half by half. `planesIn`: the planes that are marked in it. */
export function sectionView(
  part: Part,
  kernel: Kernel,
  section: PlannedSection,
  project: Projector,
  planesIn: (box: View['box']) => MarkedPlanes,
): View {
  const { frame, lines, hatched, box, kin, planes } = section.aligned
    ? aligned(part, kernel, section, project, planesIn)
    : straight(part, kernel, section, project, planesIn)
  const letters = `${section.letter}-${section.letter}`
  const label = `${practiceFigures(part.brief.header.practice).words.section} ${letters}`.trim()
  return {
    id: `section ${letters}`,
    kind: 'section',
    side: section.side,
    frame,
    lines,
    hatched,
    ...(section.parent ? { label } : {}),
    cuttingPlanes: planes,
    box,
    kin,
  }
}

type Made = Pick<CutView, 'frame' | 'lines' | 'hatched' | 'box' | 'kin'> & Pick<MarkedPlanes, 'planes'>
type PlanesIn = (box: View['box']) => MarkedPlanes

function straight(part: Part, kernel: Kernel, section: PlannedSection, project: Projector, planesIn: PlanesIn): Made {
  const axis = part.axis?.direction
  const cut: Cut = {
    frame: FRAMES[section.side],
    ...keptBy(section, axis),
    trimmed: (lines, tolerance) => withoutDivision(lines, section, axis, tolerance),
  }
  let planes: MarkedPlanes['planes'] = []
  const made = cutView(part, kernel, section, project, cut, (box) => {
    const marked = planesIn(box)
    planes = marked.planes
    return marked.lines
  })
  return { ...made, planes }
}

function aligned(part: Part, kernel: Kernel, section: PlannedSection, project: Projector, planesIn: PlanesIn): Made {
  const halves = turnedHalves(part, section).map((half) =>
    half.brought(
      cutView(part, kernel, section, project, { ...half, keep: 'intersection', trimmed: half.withoutDivision }),
    ),
  )
  const { lines, ...whole } = inOneView(halves, FRAMES[section.side])
  const { planes, lines: marked } = planesIn(whole.box)
  return { ...whole, lines: finished(lines, marked, whole.tolerance), planes }
}

function cutView(
  part: Part,
  kernel: Kernel,
  section: PlannedSection,
  project: Projector,
  { frame, planes, keep, trimmed }: Cut,
  added: (box: View['box']) => readonly ViewLine[] = () => [],
): CutView {
  const cut = kernel.cut(part.solid, planes, keep)
  try {
    const { body } = cut
    const exact = project(cut.solid, body, frame)
    const { lines: all, box, tolerance } = outlineOf(exact, body, false)
    const outline = trimmed(all, tolerance)
    const plane = { point: section.point, normal: frame.toViewer }
    const { centreOverrun } = practiceFigures(part.brief.header.practice)
    const threads = threadLines(part, frame, outline, { tolerance, section: plane })
    const centres = centreLines(part, frame, outline, box, { overrun: centreOverrun, tolerance, section: plane })
    const lines = finished(outline, [...threads, ...centres, ...added(box)], tolerance)
    return {
      frame,
      lines: withTapped(withSlopes(lines, body, frame), part, frame, true),
      hatched: exact.cuts,
      box,
      tolerance,
      kin: kinOf(body, part.body),
    }
  } finally {
    kernel.free(cut.solid)
  }
}
