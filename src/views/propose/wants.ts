import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm } from '../../geometry/vec3.ts'
import type { BodyFace } from '../../kernel/body.ts'
import type { Part, PartFeature } from '../../part/part.ts'
import { distanceToAxis } from '../centre-lines/round-features.ts'
import { AXES, type Axis } from '../frames.ts'

/** A feature is told when the part is seen along one of these axes; empty: any view tells it. */
export interface Want {
  readonly what: string
  readonly along: readonly Axis[]
  /** Faces that the feature made, none for the stock's profile; absent where no shape asks. */
  readonly faces?: readonly number[]
  /** Told by the longitudinal view of a part of revolution. */
  readonly coaxial: boolean
  /** Inside the outline of a part of revolution: needs a section to be seen in full lines. */
  readonly inside: boolean
}

const ALL = ['x', 'y', 'z'] as const

/** What each feature and the stock's own profile ask of the views. */
export function wantsOf(part: Part): Want[] {
  const wants = part.features.map((f) => wantOf(f, part))
  const profile = profileAxis(part)
  if (profile) wants.unshift({ what: 'the profile', along: [profile], faces: [], coaxial: false, inside: false })
  return [...wants, ...ringsOf(part), ...edgesOn(part)]
}

/** Faces with a datum letter, a frame or a texture must be seen edge-on, for the sign to stand at them; one with a profile all around from before it, where its border shows. */
function edgesOn(part: Part): Want[] {
  const { datums = [], frames = [], textures = [] } = part.named ?? {}
  const around = frames.filter((_, i) => part.brief.frames?.[i]?.allAround)
  const planes = [...datums, ...frames.filter((f) => !around.includes(f)), ...textures]
  const want = (what: string, along: readonly Axis[]): Want[] =>
    along.length > 0 ? [{ what, along, coaxial: false, inside: false }] : []
  return [
    ...planes.flatMap((f) =>
      f?.kind === 'plane'
        ? want(
            `the edge of ${f.id}`,
            ALL.filter((a) => Math.abs(dot(AXES[a], f.direction)) < 1e-9),
          )
        : [],
    ),
    ...around.flatMap((f) =>
      f?.kind === 'plane'
        ? want(
            `the border of ${f.id}`,
            ALL.filter((a) => Math.abs(dot(AXES[a], f.direction)) > 1 - 1e-9),
          )
        : [],
    ),
  ]
}

function wantOf(f: PartFeature, part: Part): Want {
  const faces = f.members
    .flatMap((m) => m.faces)
    .map((id) => part.body.faces[id])
    .filter((face): face is BodyFace => face !== undefined)
  const ids = faces.map((face) => face.id)
  const what = nameOf(f)
  const { axis } = part
  if (axis && faces.length > 0 && faces.every((face) => isOfRevolution(face, axis.point, axis.direction))) {
    return { what, along: [], faces: ids, coaxial: true, inside: f.kind === 'hole' || f.kind === 'bore' }
  }
  const inside = axis !== undefined && ['hole', 'pocket', 'slot'].includes(f.kind)
  switch (f.kind) {
    case 'hole':
    case 'slot':
    case 'pocket':
    case 'boss':
    case 'bore':
    case 'keyseat':
      return { what, along: seenAlong(f), faces: ids, coaxial: false, inside }
    default:
      return { what, along: sweptAlong(faces), faces: ids, coaxial: false, inside }
  }
}

/** Stock of one cross-section shows its profile along its length. */
function profileAxis(part: Part): Axis | undefined {
  const stock = part.brief.stock
  switch (stock?.kind) {
    case 'angle':
      return stock.uprightAt === 'left' || stock.uprightAt === 'right' ? 'y' : 'x'
    case 'channel':
    case 'tee':
      return stock.lie === 'left-right' ? 'x' : stock.lie === 'front-rear' ? 'y' : 'z'
    case 'outline':
      return stock.face === 'top' || stock.face === 'bottom'
        ? 'z'
        : stock.face === 'front' || stock.face === 'rear'
          ? 'y'
          : 'x'
    default:
      return undefined
  }
}

/** How many stand round the axis, and at what angles, is seen along it. */
function ringsOf(part: Part): Want[] {
  const { axis } = part
  if (!axis) return []
  const along = ALL.filter((a) => Math.abs(dot(AXES[a], axis.direction)) > 1 - 1e-9)
  return part.features.flatMap((f) =>
    isRing(f) ? [{ what: `${nameOf(f)} round the axis`, along, coaxial: false, inside: false }] : [],
  )
}

/** Members that each point at the axis from a side of their own. */
export const isRing = ({ members }: PartFeature): boolean => members.some((m) => m.outward)

/** Of holes round an axis, along any that stands square to a view. */
function seenAlong({ members, outward }: PartFeature): Axis[] {
  const ways = members.map((m) => m.outward ?? outward)
  const square = ALL.filter((a) => ways.some((d) => Math.abs(dot(AXES[a], d)) > 1 - 1e-9))
  return square.length > 0 ? square : nearestAxis(outward)
}

function nearestAxis(d: Vec3): Axis[] {
  const by = ALL.map((axis) => ({ axis, size: Math.abs(dot(AXES[axis], d)) })).sort((a, b) => b.size - a.size)
  return by[0] ? [by[0].axis] : []
}

/** Axes along which all the faces run and are seen edge-on; where they share none, those of the single faces. */
function sweptAlong(faces: readonly BodyFace[]): Axis[] {
  const each = faces.map((f) => ALL.filter((a) => runsAlong(f, AXES[a])))
  const common = ALL.filter((a) => each.length > 0 && each.every((axes) => axes.includes(a)))
  return common.length > 0 ? common : ALL.filter((a) => each.some((axes) => axes.length === 1 && axes[0] === a))
}

function runsAlong(face: BodyFace, d: Vec3): boolean {
  const s = face.surface
  if (s.kind === 'plane') return Math.abs(dot(s.axes.z, d)) < 1e-9
  return s.kind === 'cylinder' && norm(cross(s.axes.z, d)) < 1e-9
}

function isOfRevolution(face: BodyFace, point: Vec3, direction: Vec3): boolean {
  const s = face.surface
  switch (s.kind) {
    case 'plane':
      return norm(cross(s.axes.z, direction)) < 1e-9
    case 'cylinder':
    case 'cone':
    case 'torus':
      return norm(cross(s.axes.z, direction)) < 1e-9 && distanceToAxis(s.axes.origin, point, direction) < 1e-6
    case 'sphere':
      return distanceToAxis(s.axes.origin, point, direction) < 1e-6
    default:
      return false
  }
}

/** The feature as a reason names it: `hole A`, `the slots`. */
export function nameOf(f: PartFeature): string {
  const word = f.kind === 'flat-cut' ? 'flat' : f.kind === 'step-diameter' ? 'diameter' : f.kind
  const label = f.feature?.label?.text
  const noun = f.members.length > 1 ? plural(word) : word
  return label ? `${noun} ${label}` : `the ${noun}`
}

const plural = (word: string) => (word.endsWith('s') || word.endsWith('h') ? `${word}es` : `${word}s`)
