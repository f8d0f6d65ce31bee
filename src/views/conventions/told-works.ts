import type { Vec3 } from '../../geometry/vec.ts'
import { dot, sub } from '../../geometry/vec3.ts'
import type { Body } from '../../kernel/body.ts'
import type { PartFeature } from '../../part/part.ts'
import type { Source } from '../view.ts'
import type { CutBySection, Showing, ShownView } from './showing.ts'

/** Kinds that have a shape seen from the worked face and a depth. */
const KINDS: ReadonlySet<PartFeature['kind']> = new Set(['hole', 'slot', 'pocket', 'bore'])

/**
 * Says of an edge or face whether it belongs to a hole, slot or pocket that another view shows whole and in full lines
 * from the worked side, and that a full section cuts along its depth.
 */
export function worksToldBySection(view: ShownView, showing: Showing): (source: Source) => boolean {
  const sections = showing.sections.filter((s) => !s.cutHalf)
  const told = showing.features.filter(
    (f) =>
      KINDS.has(f.kind) &&
      isOfOneDepth(f, showing.body) &&
      showing.principals.some((v) => v.frame !== view.frame && isShownWhole(f, v)) &&
      sections.some(
        (s) =>
          Math.abs(dot(s.normal, f.outward)) < 1e-9 && f.members.some((m) => isCutThrough(m.faces, s, showing.body)),
      ),
  )
  const groups = told.map((f) => ({ outward: f.outward, faces: facesOf(f) }))
  return (source) =>
    groups.some(({ outward, faces }) => {
      if (!source.faces.some((id) => faces.has(id))) return false
      return source.faces.every((id) => faces.has(id) || isLevel(id, outward, showing.body))
    })
}

const facesOf = (f: PartFeature) => new Set(f.members.flatMap((m) => m.faces))

/** Flat faces stand along the depth or square to it: no floor slopes, so one cut tells the depth everywhere. */
function isOfOneDepth(f: PartFeature, body: Body): boolean {
  return f.members
    .flatMap((m) => m.faces)
    .every((id) => {
      const s = body.faces[id]?.surface
      if (!s) return false
      if (s.kind !== 'plane' && s.kind !== 'cylinder' && s.kind !== 'cone') return false
      const d = Math.abs(dot(s.axes.z, f.outward))
      return d > 1 - 1e-9 || (s.kind === 'plane' && d < 1e-9)
    })
}

function isLevel(id: number, outward: Vec3, body: Body): boolean {
  const s = body.faces[id]?.surface
  return s?.kind === 'plane' && Math.abs(dot(s.axes.z, outward)) > 1 - 1e-9
}

/** The view looks along the depth, from the worked side, and no line of the feature is hidden in it. */
function isShownWhole(f: PartFeature, view: ShownView): boolean {
  if (Math.abs(dot(f.outward, view.frame.toViewer)) < 1 - 1e-9) return false
  const faces = facesOf(f)
  const own = view.lines.filter((l) => l.sources.some((s) => s.faces.some((id) => faces.has(id))))
  return own.some((l) => l.kind === 'visible') && own.every((l) => l.kind !== 'hidden')
}

/** Some of the member lies on each side of the plane. */
function isCutThrough(faces: readonly number[], section: CutBySection, body: Body): boolean {
  const reach = faces
    .flatMap((id) => body.faces[id]?.loops.flat() ?? [])
    .flatMap((use): Vec3[] => {
      const { curve } = body.edges[use.edge]!
      if (curve.kind === 'line') return [curve.a, curve.b]
      return curve.kind === 'spline' ? [] : [curve.axes.origin]
    })
    .map((p) => dot(sub(p, section.point), section.normal))
  return Math.min(...reach) < 1e-6 && Math.max(...reach) > -1e-6
}
