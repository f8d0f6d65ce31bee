import type { Vec3 } from '../../geometry/vec.ts'

/** What the model needs to know of the features: faces made as one, bolt circles and their centres. */
export interface Making {
  /** Whose the faces are: axes of one feature that are in line share a position, those of two features do not. */
  readonly owners: readonly { readonly id: string; readonly faces: readonly number[] }[]
  readonly together: readonly (readonly number[])[]
  /** Floors of holes and all planes of other cuts, by feature: their own sizes give them, and what else lies in that plane lies there by itself. */
  readonly floors?: readonly (readonly number[])[]
  /** Ends of slots, and of parts whose corners are rounded to half their width: that they are round from side to side is said by an `R`, not implied. */
  readonly roundEnds?: readonly number[]
  /** Features that their own numbers place, all but rounds and fillets: one that just touches a side does so by chance. */
  readonly placed?: readonly { readonly id: string; readonly faces: readonly number[] }[]
  /** Faces of rounds, fillets and chamfers. */
  readonly edged?: readonly number[]
  /**
   * Arcs of an outline, bends and rounded corners, with the chamfers that run round them. Their own radius and sides place them: an axis of another feature on the same
   * line stands there by its own numbers, and neither follows from the other.
   */
  readonly arcs?: readonly { readonly id: string; readonly faces: readonly number[] }[]
  readonly circles: readonly {
    readonly id: string
    readonly centre: Vec3
    readonly normal: Vec3
    readonly members: readonly { readonly id: string; readonly faces: readonly number[] }[]
  }[]
}

/**
 * Planes in one plane share a position, and so do axes of one feature that are in line, and axes in one line whatever
 * they belong to, but for arcs that stand by themselves. A plane and an axis that happen to be level do not, nor do two features: no drawing implies that.
 */
export const PLANES = 'planes'
export const STOCK = 'stock'

/** Who an axis is counted with when another stands level with it. */
export function clansOf(making: Making): (faces: readonly number[]) => string {
  const clans = new Map<number, string>()
  for (const owner of making.owners) for (const face of owner.faces) clans.set(face, owner.id)
  // Axes on a bolt circle are located about its centre, each by itself.
  for (const circle of making.circles)
    for (const member of circle.members) for (const face of member.faces) clans.set(face, `member ${member.id}`)
  return (faces) => faces.flatMap((f) => clans.get(f) ?? [])[0] ?? STOCK
}

/** Whose arc an element is; undefined for rounds that are coaxial with whatever stands on their line. */
export function arcsOf(making: Making): (faces: readonly number[]) => string | undefined {
  const arcs = new Map((making.arcs ?? []).flatMap(({ id, faces }) => faces.map((f) => [f, id] as const)))
  return (faces) => faces.flatMap((f) => arcs.get(f) ?? [])[0]
}

/** Whether two sets of faces touch by chance along a line: those of two features, or of a feature and the stock. */
export function byChanceOf({
  placed = [],
  edged = [],
}: Making): (a: readonly number[], b: readonly number[]) => boolean {
  const owners = new Map(placed.flatMap(({ id, faces }) => faces.map((f) => [f, id] as const)))
  const edges = new Set(edged)
  const ownerOf = (faces: readonly number[]) => faces.flatMap((f) => owners.get(f) ?? [])[0]
  const isEdged = (faces: readonly number[]) => faces.some((f) => edges.has(f))
  return (a, b) => !isEdged(a) && !isEdged(b) && ownerOf(a) !== ownerOf(b)
}

/** Whom a plane shares its place with. */
export function planeClansOf({ floors = [] }: Making): (faces: readonly number[]) => string {
  const own = new Map(floors.flatMap((set, i) => set.map((face) => [face, `floor ${i}`] as const)))
  return (faces) => own.get(faces[0] ?? -1) ?? PLANES
}
