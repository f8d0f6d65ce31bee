import type { Header } from '../../brief/brief.ts'
import type { Mark } from '../../brief/mark.ts'
import type { Angle, Size } from '../../brief/size.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { add, dot, scale, sub } from '../../geometry/vec3.ts'
import type { Datum, Part, PartFeature } from '../../part/part.ts'
import type { ViewSet } from '../../views/view.ts'
import type { SheetWriting } from '../callout/habit.ts'
import { writingOf } from '../callout/writing.ts'
import type { Reach } from '../dimension.ts'
import { basicSizes } from '../geometric/basic-sizes.ts'
import { makingOf } from '../proof/making.ts'
import { type Model, modelOf } from '../proof/model.ts'
import { Sight } from './sight.ts'

/** What every step of choosing sizes looks at. Marks gather as the steps find them. */
export interface Context {
  readonly part: Part
  readonly header: Header
  readonly writing: SheetWriting
  readonly model: Model
  /** Views that can carry sizes, in the order drawn. */
  readonly sights: readonly Sight[]
  readonly data: ReadonlyMap<string, Datum>
  readonly features: ReadonlyMap<string, PartFeature>
  /** Numbers that frames make theoretically exact. */
  readonly basic: ReadonlySet<Size | Angle>
  /** Round faces with a frame or datum letter, whose size stands by itself. */
  readonly signed: ReadonlySet<number>
  readonly marks: Mark[]
  readonly thicknessNote?: string
}

export function contextOf(part: Part, views: ViewSet): Context {
  const { header } = part.brief
  return {
    part,
    header,
    writing: writingOf(header),
    model: modelOf(part.body, makingOf(part)),
    sights: views.views.filter((v) => v.kind !== 'pictorial').map((v, i) => new Sight(v, i, part.body, views.views)),
    data: new Map(part.data.map((d) => [d.id, d])),
    features: new Map(part.features.map((f) => [f.id, f])),
    basic: basicSizes(part),
    signed: signedFaces(part),
    marks: [],
    ...(views.thicknessNote ? { thicknessNote: views.thicknessNote } : {}),
  }
}

function signedFaces({ named }: Part): Set<number> {
  const all = [...(named?.datums ?? []), ...(named?.frames ?? [])]
  return new Set(all.flatMap((f) => (f?.kind === 'round' ? f.faces : [])))
}

/** A point that a size can reach, with the faces it lies on. */
export interface Mooring extends Reach {
  readonly faces: readonly number[]
  /** Direction of the axis, for axes. */
  readonly axis?: Vec3
  /** Normal of the plane, for planes. */
  readonly normal?: Vec3
}

/** The datum, or named round face, as something a size can reach along a direction. */
export function mooringOf(context: Context, id: string, direction: Vec3): Mooring | undefined {
  const { part } = context
  const datum = context.data.get(id)
  const named = part.body.faces.filter((f) => f.name === id)
  if (datum?.kind === 'axis') {
    const stem = id.replace(/ axis$/, '')
    const member = part.features.flatMap((f) => f.members).find((m) => m.axes.includes(id) || m.id === stem)
    const faces = datum.faces ?? member?.faces ?? []
    const isCorner = part.brief.stock?.kind === 'outline' && /^corner \d+$/.test(id)
    const own: Mooring = {
      at: datum.point,
      name: datum.name,
      faces,
      axis: datum.direction,
      ...(isCorner ? { corner: true } : {}),
    }
    const walls = wallsOf(context, id, direction)
    if (walls) return { ...own, middle: walls }
    const ends = endsOf(context, id)
    if (!ends) return own
    const [a, b] = ends
    // Along its long way a slot is held by the middle of its ends; across, by the axis that both ends share.
    const apart = Math.abs(dot(sub(b, a), direction)) > 1e-6
    return apart ? { ...own, middle: spread(a, b, datum.point, direction) } : { ...own, at: a }
  }
  if (datum?.kind === 'middle') {
    const sides = datum.between.map((side) => mooringOf(context, side, direction))
    const [a, b] = sides
    const own = { at: datum.point, name: datum.name, faces: sides.flatMap((s) => s?.faces ?? []), normal: datum.normal }
    const across = Math.abs(dot(datum.normal, direction)) > 1 - 1e-9
    return a && b && across ? { ...own, middle: spread(a.at, b.at, datum.point, direction) } : own
  }
  if (datum) {
    const plane = named.length > 0 ? named.map((f) => f.id) : facesOnPlane(context, datum.point, datum.normal)
    // a round end has no plane: it is met at the crown of the feature's own
    const rounds = plane.length > 0 ? [] : roundsOf(context, id)
    const faces = [...plane, ...(rounds.length > 0 || plane.length > 0 ? rounds : stepsAt(context, datum))]
    return { at: datum.point, name: datum.name, faces, normal: datum.normal }
  }
  const face = named[0]
  if (!face || face.surface.kind === 'spline') return undefined
  const { surface } = face
  const { origin } = surface.axes
  if (surface.kind === 'plane') return { at: origin, name: id, faces: named.map((f) => f.id), normal: surface.axes.z }
  const r = surface.kind === 'torus' ? surface.major : surface.r
  const at: Vec3 = [origin[0] + r * direction[0], origin[1] + r * direction[1], origin[2] + r * direction[2]]
  return { at, name: id, faces: named.map((f) => f.id) }
}

/** The two ends of a slot whose middle this axis is: `slot 1 end 1 axis`, `slot 1 end 2 axis`. */
function endsOf(context: Context, id: string): readonly [Vec3, Vec3] | undefined {
  const stem = id.replace(/ axis$/, '')
  const [a, b] = [context.data.get(`${stem} end 1 axis`), context.data.get(`${stem} end 2 axis`)]
  return a && b ? [a.point, b.point] : undefined
}

/** A pocket, and a slot whose round end runs out into another cut, has no axis of its own: its place is the middle between the two walls that stand across the direction. */
function wallsOf(context: Context, id: string, direction: Vec3): readonly [Vec3, Vec3] | undefined {
  const stem = id.replace(/ axis$/, '')
  const isRound = (face: number) => context.part.body.faces.some((f) => f.id === face && f.surface.kind === 'cylinder')
  const member = context.part.features
    .flatMap((f) =>
      f.kind === 'pocket' || f.feature?.kind === 'slot' ? f.members.map((m) => ({ ...m, of: f.kind })) : [],
    )
    .find((m) => m.id === stem && (m.of === 'pocket' || !m.faces.some(isRound)))
  const walls = (member?.faces ?? []).flatMap((face): Vec3[] => {
    const surface = context.part.body.faces.find((f) => f.id === face)?.surface
    if (surface?.kind !== 'plane' || Math.abs(dot(surface.axes.z, direction)) < 1 - 1e-9) return []
    return [surface.axes.origin]
  })
  const ends = walls.length > 0 || member?.of !== 'pocket' ? [] : roundWalls(context, member.faces)
  if (walls.length + ends.length < 2) return undefined
  const level = (p: Vec3) => dot(p, direction)
  const all = [...walls, ...ends]
  const low = all.reduce((a, b) => (level(b) < level(a) ? b : a))
  const high = all.reduce((a, b) => (level(b) > level(a) ? b : a))
  return [low, high]
}

/** Where the axes of a pocket's round walls meet the plane that they begin in. */
const roundWalls = ({ part }: Context, faces: readonly number[]): Vec3[] =>
  part.body.faces.flatMap(({ id, surface }) =>
    faces.includes(id) && surface.kind === 'cylinder' ? [surface.axes.origin] : [],
  )

/** Where two sides are sloping, their level along the direction is taken where they meet the edge through `at`. */
function spread(a: Vec3, b: Vec3, at: Vec3, direction: Vec3): readonly [Vec3, Vec3] {
  if (Math.abs(dot(sub(a, at), direction)) < 1e-9) return [a, b]
  const [p, q] = [a, b].map((side) => add(at, scale(direction, dot(sub(side, at), direction))))
  return [p!, q!]
}

/** Faces of the member whose end the datum is: `keyseat 1 left end`. */
function roundsOf({ part }: Context, id: string): readonly number[] {
  const members = part.features.flatMap((f) => (f.feature ? f.members : []))
  return members.find((m) => id.startsWith(`${m.id} `) && id.endsWith(' end'))?.faces ?? []
}

/** Turned steps that meet at this level without a shoulder, so that nothing within the part is taken for their end. */
function stepsAt({ part }: Context, { point, normal }: { readonly point: Vec3; readonly normal: Vec3 }): number[] {
  const stock = part.brief.stock
  if (stock?.kind !== 'turned') return []
  const names = new Set(stock.steps.map((s) => s.name.text.toLowerCase()))
  const isStep = (f: number | undefined) => f !== undefined && names.has(part.body.faces[f]?.name?.toLowerCase() ?? '')
  const meet = part.body.edges.filter(({ curve, faces: [a, b] }) => {
    if (curve.kind !== 'circle' || !isStep(a) || !isStep(b) || a === b) return false
    return Math.abs(dot(sub(curve.axes.origin, point), normal)) < 1e-6 && Math.abs(dot(curve.axes.z, normal)) > 1 - 1e-9
  })
  return [...new Set(meet.flatMap(({ faces }) => faces.flatMap((f) => f ?? [])))]
}

function facesOnPlane(context: Context, point: Vec3, normal: Vec3): number[] {
  return context.model.elements.flatMap(({ surface, faces }) => {
    if (surface.kind !== 'plane') return []
    const { origin, z } = surface.axes
    const parallel = Math.abs(z[0] * normal[0] + z[1] * normal[1] + z[2] * normal[2]) > 1 - 1e-9
    const off = [0, 1, 2].reduce((sum, i) => sum + (origin[i]! - point[i]!) * normal[i]!, 0)
    return parallel && Math.abs(off) < 1e-5 ? faces : []
  })
}
