import type { Side } from '../../brief/brief.ts'
import { dot, sub } from '../../geometry/vec3.ts'
import type { Part, PartFeature } from '../../part/part.ts'
import { isAbout } from '../centre-lines/round-features.ts'
import { sideOf } from '../frames.ts'
import { featurePoints } from './feature-points.ts'
import { nameOf } from './wants.ts'

/**
 * A shaft or bar, solid but for blind holes on its axis in one end: it is not cut lengthwise (ISO 128-3, ASME Y14.3: no
 * shafts, bolts and pins in section along their axis; from memory), and the holes have their notes in the view of that
 * end. How little must be bored away is common practice, no source: no more than half the length and
 * half the diameter there.
 */
export function boredEnd(part: Part): { readonly side: Side; readonly names: readonly string[] } | undefined {
  const { point, direction } = part.axis!
  const inside = part.features.filter((f) => isInside(f, part))
  const sides = new Set(inside.map((f) => sideOf(f.outward)))
  const [side] = sides
  if (!side || sides.size > 1) return undefined
  if (inside.some((f) => f.kind !== 'hole' && f.kind !== 'bore')) return undefined
  const extent = sub(part.body.box.max, part.body.box.min)
  const length = Math.abs(dot(extent, direction))
  const across = Math.max(...extent.filter((_, k) => Math.abs(direction[k]!) < 0.5))
  const reach = inside.flatMap((f) => featurePoints(f, part)).map((p) => dot(sub(p, point), direction))
  const [low, high] = [Math.min(...reach), Math.max(...reach)]
  const deep = high - low
  const wide = Math.max(...inside.flatMap((f) => radiiOf(f, part))) * 2
  if (!(length > across && deep <= length / 2 && wide <= outsideAt(part, low, high) / 2)) return undefined
  return { side, names: inside.map(nameOf) }
}

const facesOf = (f: PartFeature, { body }: Part) =>
  f.members.flatMap((m) => m.faces).flatMap((id) => body.faces[id] ?? [])

/** Some face of it about the part's axis has the material around it. */
export const isInside = (f: PartFeature, part: Part): boolean =>
  facesOf(f, part).some(
    (face) =>
      face.reversed &&
      (face.surface.kind === 'cylinder' || face.surface.kind === 'cone') &&
      isAbout(face.surface, part.axis!.point, part.axis!.direction),
  )

/** The smallest outside diameter between two places along the axis, mm; of a slope its larger end. */
function outsideAt({ body, axis }: Part, low: number, high: number): number {
  const radii = body.faces.flatMap((face) => {
    if (face.reversed || !isAbout(face.surface, axis!.point, axis!.direction)) return []
    if (face.surface.kind !== 'cylinder' && face.surface.kind !== 'cone') return []
    const rims = face.loops
      .flat()
      .map((use) => body.edges[use.edge]!.curve)
      .flatMap((c) =>
        c.kind === 'circle' ? [{ on: dot(sub(c.axes.origin, axis!.point), axis!.direction), r: c.r }] : [],
      )
    const places = rims.map((rim) => rim.on)
    const isBeside = Math.min(...places) < high - 1e-6 && Math.max(...places) > low + 1e-6
    return isBeside ? [Math.max(...rims.map((rim) => rim.r))] : []
  })
  return 2 * Math.min(...radii)
}

const radiiOf = (f: PartFeature, part: Part): number[] =>
  facesOf(f, part).flatMap(({ surface }) => (surface.kind === 'cylinder' ? [surface.r] : []))
