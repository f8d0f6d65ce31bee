import { placed } from '../../../geometry/evaluate.ts'
import type { Vec3 } from '../../../geometry/vec.ts'
import { along, dot } from '../../../geometry/vec3.ts'
import type { Body } from '../../../kernel/body.ts'
import type { HalfSpace } from '../../../kernel/kernel.ts'
import type { OcctKernel } from '../../../kernel/open.ts'
import type { Part } from '../../../part/part.ts'
import { hatchLines, hatchStyle } from '../../../sheet/hatching.ts'
import { practiceFigures } from '../../../standards/practice-figures.ts'
import { cutRegions } from '../../../views/cut-regions.ts'
import { exactView } from '../../../views/exact/exact-view.ts'
import { outlineOf } from '../../../views/finish.ts'
import { FRAMES } from '../../../views/frames.ts'
import { kinOf } from '../../../views/kin.ts'
import { projectPoint } from '../../../views/project.ts'
import type { ExactView, Kin, Source } from '../../../views/view.ts'
import type { HandCut, Held, Seen, SeenLine } from './messages.ts'
import { FIRST_LINE } from './section-lines.ts'

/**
 * The solid as it is held, drawn as the views of a sheet are: exact lines, hidden ones left out; where it is cut the cut
 * face with its section lines, in the plane of the cut (ISO 128-3, ASME Y14.2). Throws `Stopped` where `stop` says so.
 */
export function look(part: Part, kernel: OcctKernel, held: Held, stop: () => boolean): Seen {
  const { frame, cut } = held
  if (!cut) return { lines: outline(part.body, exactView(part.body, frame, { stop }), undefined) }
  const made = kernel.cut(part.solid, [halfSpace(cut)], 'intersection')
  try {
    const exact = exactView(made.body, frame, { stop })
    const { lines, hatching } = hatched(part, made.body, held, cut)
    return { lines: [...outline(made.body, exact, kinOf(made.body, part.body)), ...lines], hatching }
  } finally {
    kernel.free(made.solid)
  }
}

function halfSpace({ side, at }: HandCut): HalfSpace {
  const normal = FRAMES[side].toViewer
  const point = normal.map((c) => (c === 0 ? 0 : at)) as unknown as Vec3
  return { point, normal }
}

function outline(body: Body, exact: ExactView, kin: Kin | undefined): SeenLine[] {
  const cut = exact.curves.filter((c) => c.kind === 'cut' && c.visible)
  const rest = { ...exact, curves: exact.curves.filter((c) => c.kind !== 'cut') }
  return [
    ...outlineOf(rest, body, false).lines.flatMap(({ kind, curve, sources }): SeenLine[] =>
      kind === 'visible' || kind === 'intersection' ? [{ kind, curve, ...owners(sources, kin) }] : [],
    ),
    ...cut.map(({ curve, sources }): SeenLine => ({ kind: 'cut', curve, ...owners(sources, kin) })),
  ]
}

function owners(sources: readonly Source[], kin: Kin | undefined): Pick<SeenLine, 'edges' | 'faces'> {
  const known = (id: number | undefined): id is number => id !== undefined
  const edges = sources.map((s) => s.edge).filter(known)
  const faces = sources.flatMap((s) => s.faces)
  if (!kin) return { edges, faces }
  return { edges: edges.map((e) => kin.edges[e]).filter(known), faces: faces.map((f) => kin.faces[f]).filter(known) }
}

/** Section lines of the cut faces. They are seen whole or not at all: nothing of the solid is left before the plane. */
function hatched(part: Part, body: Body, { frame, scale: onPaper }: Held, cut: HandCut): Required<Seen> {
  const plane = FRAMES[cut.side]
  const regions = cutRegions(body, plane).map((loops) =>
    loops.map((loop) => loop.map((c) => placed(c, onPaper, [0, 0]))),
  )
  const style = hatchStyle(regions, practiceFigures(part.brief.header.practice))
  const hatching = { angle: style.angle, spacing: style.spacing / onPaper }
  if (dot(frame.toViewer, plane.toViewer) < 1e-6) return { lines: [], hatching }
  const inSpace = ([u, v]: readonly [number, number]): Vec3 =>
    along(along(halfSpace(cut).point, plane.right, u / onPaper), plane.up, v / onPaper)
  const lines = regions
    .flatMap((region) => hatchLines(region, { ...style, offset: FIRST_LINE * style.spacing }))
    .flatMap((line): SeenLine[] => {
      if (line.kind !== 'line') return []
      const [a, b] = [line.a, line.b].map((p) => projectPoint(inSpace(p), frame)) as [
        [number, number],
        [number, number],
      ]
      return [{ kind: 'hatching', curve: { kind: 'line', a, b }, edges: [], faces: [] }]
    })
  return { lines, hatching }
}
