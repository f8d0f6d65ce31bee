import type { BodyEdge } from '../../kernel/body.ts'
import type { Part, PartFeature } from '../../part/part.ts'

/** The feature that made a face; undefined for the stock's own. */
export function ownersOf(part: Part): ReadonlyMap<number, PartFeature> {
  return new Map(part.features.flatMap((f) => f.members.flatMap((m) => m.faces.map((face) => [face, f] as const))))
}

const cutKinds: ReadonlySet<PartFeature['kind']> = new Set(['hole', 'bore', 'slot', 'pocket'])

/** The hole, slot or pocket whose edge this is, if it is one's. */
export function cutAt(owners: ReadonlyMap<number, PartFeature>, edge: BodyEdge): PartFeature | undefined {
  for (const face of edge.faces) {
    const owner = face === undefined ? undefined : owners.get(face)
    if (owner && cutKinds.has(owner.kind)) return owner
  }
  return undefined
}

/** Whether the edge is a keyseat's: one in a bore belongs to it, and leaves no wall of its own. */
export const isKeyseats = (owners: ReadonlyMap<number, PartFeature>, edge: BodyEdge): boolean =>
  edge.faces.some((face) => face !== undefined && owners.get(face)?.kind === 'keyseat')

/** Whether the edge is a slit's that is meant to run out in the hole. */
export const isSlits = (owners: ReadonlyMap<number, PartFeature>, edge: BodyEdge): boolean =>
  edge.faces.some((face) => {
    const made = face === undefined ? undefined : owners.get(face)?.feature
    return made?.kind === 'notch' && made.into !== undefined
  })

/** Whether the cut is meant to break into another: a hole through one wall. */
export const breaksIn = ({ feature }: PartFeature): boolean =>
  feature?.kind === 'hole' && feature.depth.kind === 'through' && feature.depth.oneWall !== undefined
