import { writtenPitch } from '../../brief/thread.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { dot, sub } from '../../geometry/vec3.ts'
import type { BodyFace } from '../../kernel/body.ts'
import type { Part } from '../../part/part.ts'

/** One threaded wall: `r` as modelled, `other` the radius that the thin lines stand at, mm; `reach` of the full thread along `outward` from `point`. */
export interface Thread {
  readonly feature: string
  readonly point: Vec3
  readonly outward: Vec3
  readonly r: number
  readonly other: number
  readonly reach: readonly [from: number, to: number]
  /** The full thread stops inside the material at `reach[0]`. */
  readonly ends: boolean
  /** The thread can be seen from the far end of its hole. */
  readonly through: boolean
  /** On the outside: its wall is an outline in every view that shows it. */
  readonly outside?: boolean
}

/** Basic minor diameter of an ISO and of a unified thread: d − 1.082532 P (ISO 724, ASME B1.1). */
const MINOR = 1.082532
/** Minor radius as a share of the major one where the designation does not tell it (common practice). */
export const USUAL = 0.85

/** The threaded steps of a turned part, one for each stretch of wall that grooves and flats have left. */
export function outsideThreads(part: Part): Thread[] {
  const { stock } = part.brief
  const { axis } = part
  if (stock?.kind !== 'turned' || !axis) return []
  return stock.steps.flatMap(({ name, thread, diameter }): Thread[] => {
    const feature = thread && part.features.find((f) => f.id === name.text && f.kind === 'step-diameter')
    if (!feature) return []
    const r = diameter.mm / 2
    const pitch = writtenPitch(thread)
    const other = pitch ? r - (MINOR * pitch) / 2 : USUAL * r
    return feature.members
      .flatMap((m) => m.faces)
      .flatMap((id): Thread[] => {
        const face = part.body.faces[id]
        if (face?.surface.kind !== 'cylinder') return []
        const { origin } = face.surface.axes
        const reach = reachOf(part, face, origin, axis.direction, other)
        return [
          {
            feature: name.text,
            point: origin,
            outward: axis.direction,
            r,
            other,
            reach,
            ends: false,
            through: true,
            outside: true,
          },
        ]
      })
  })
}

/** From and to of the root along the axis: it runs on within a chamfer to the chamfer's slope. */
function reachOf(part: Part, face: BodyFace, origin: Vec3, along: Vec3, root: number): readonly [number, number] {
  const { edges, faces } = part.body
  const height = (p: Vec3) => dot(sub(p, origin), along)
  const rims = face.loops.flat().flatMap(({ edge }) => {
    const { curve, faces: beside } = edges[edge]!
    return curve.kind === 'circle' ? [{ at: height(curve.axes.origin), r: curve.r, beside }] : []
  })
  const ends = [Math.min(...rims.map((e) => e.at)), Math.max(...rims.map((e) => e.at))] as const
  const [low, high] = ends.map((at): number => {
    const rim = rims.find((e) => e.at === at)!
    const next = rim.beside.map((id) => (id === undefined || id === face.id ? undefined : faces[id])).find((f) => f)
    if (next?.surface.kind !== 'cone') return at
    const tip = next.loops
      .flat()
      .map(({ edge }) => edges[edge]!.curve)
      .find((c) => c.kind === 'circle' && c.r < rim.r - 1e-9)
    if (tip?.kind !== 'circle') return at
    return at + (height(tip.axes.origin) - at) * Math.min(1, (rim.r - root) / (rim.r - tip.r))
  })
  return [low!, high!]
}
