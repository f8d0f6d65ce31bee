import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, negate } from '../../geometry/vec3.ts'
import type { BodyFace, Surface3 } from '../../kernel/body.ts'
import { localPath, type Path3, path3At } from './path3.ts'
import { SplineSheet } from './spline-face.ts'
import { SplineTrim } from './spline-trim.ts'
import { TorusTrim } from './torus-trim.ts'
import { type Border, Trim } from './trim.ts'

/**
 * A face made ready for computing, once for all views: its surface in a frame of its own and its trimmed extent.
 * A quadric is x² + y² + e z² = (r + k z)² in that frame (cylinder: e = k = 0; cone: e = 0; sphere: e = 1, k = 0).
 */
export interface FaceModel {
  readonly id: number
  readonly kind: Surface3['kind']
  readonly o: Vec3
  readonly x: Vec3
  readonly y: Vec3
  readonly z: Vec3
  /** 1 where the outward normal is the surface's own (bulging out), -1 where it is opposite (hollow). */
  readonly sign: 1 | -1
  readonly r: number
  /** Tangent of a cone's half angle. */
  readonly k: number
  readonly e: 0 | 1
  /** Torus: large radius. */
  readonly major: number
  readonly cut: boolean
  readonly surface: Surface3
  readonly borders: readonly { readonly edge: number; readonly forward: boolean }[]
  /** Edges that lie in the face without bounding it, where another sheet of the solid touches it. */
  readonly slits: readonly number[]
  /** Local axes hold the outward normal as z on a plane. */
  trim(): Trim
  /** The borders in the face's frame. */
  localBorders(): readonly Border[]
  torusTrim(): TorusTrim
  /** Of a true spline surface: the surface and the part of it covered. */
  sheet(): SplineSheet
  /** `step` is called for each place on a border, where the trim is yet to be made. */
  splineTrim(step?: () => void): SplineTrim
  /** Sphere: whether the local +z pole belongs to the face. */
  poleInside(): boolean
}

/** An odd turn of a plane's own axes, so that border lines do not run along the sweep lines. */
const TURN_COS = Math.cos(0.5731)
const TURN_SIN = Math.sin(0.5731)
/** Likewise for a sphere's axis. */
const SPHERE_Z: Vec3 = (() => {
  const raw: Vec3 = [0.3711, 0.5237, 0.7667]
  const n = Math.hypot(...raw)
  return [raw[0] / n, raw[1] / n, raw[2] / n]
})()

export function faceModel(
  face: BodyFace,
  pathOf: (edge: number) => Path3,
  seam: (edge: number) => boolean,
  tolerance: number,
): FaceModel {
  return new OneFace(face, pathOf, seam, tolerance)
}

/** Each with its methods' state in fields: a body may have ten thousands. */
class OneFace implements FaceModel {
  readonly id: number
  readonly kind: Surface3['kind']
  readonly o: Vec3
  readonly x: Vec3
  readonly y: Vec3
  readonly z: Vec3
  readonly sign: 1 | -1
  readonly r: number
  readonly k: number
  readonly e: 0 | 1
  readonly major: number
  readonly cut: boolean
  readonly surface: Surface3
  readonly borders: FaceModel['borders']
  readonly slits: readonly number[]
  private readonly closed: BodyFace['loops']
  private readonly pathOf: (edge: number) => Path3
  private readonly tolerance: number
  private inFrame: readonly Border[] | undefined
  private ownTrim: Trim | undefined
  private ownTorusTrim: TorusTrim | undefined
  private ownSheet: SplineSheet | undefined
  private ownSplineTrim: SplineTrim | undefined
  private pole: boolean | undefined

  constructor(face: BodyFace, pathOf: (edge: number) => Path3, seam: (edge: number) => boolean, tolerance: number) {
    const { surface, loops } = face
    this.id = face.id
    this.kind = surface.kind
    this.surface = surface
    this.sign = face.reversed ? -1 : 1
    this.cut = face.cut === true
    this.pathOf = pathOf
    this.tolerance = tolerance
    // the outer loop bounds the face even where it is damaged and does not close
    this.closed = loops.length === 1 ? loops : loops.filter((loop, i) => i === 0 || isClosed(loop, pathOf))
    const uses = this.closed.flat().filter((use) => !seam(use.edge))
    const times = new Map<number, number>()
    for (const { edge } of uses) times.set(edge, (times.get(edge) ?? 0) + 1)
    const bothWays = times.size < uses.length
    this.borders = bothWays ? uses.filter((use) => times.get(use.edge) === 1) : uses
    this.slits = [
      ...loops.filter((loop) => !this.closed.includes(loop)).flatMap((loop) => loop.map((use) => use.edge)),
      ...(bothWays ? new Set(uses.filter((use) => times.get(use.edge)! > 1).map((use) => use.edge)) : []),
    ]
    let [o, x, y, z]: Vec3[] = [ORIGIN, X, Y, Z]
    let [r, k, major] = [0, 0, 0]
    if (surface.kind !== 'spline') {
      const { axes } = surface
      o = axes.origin
      x = axes.x
      y = axes.y
      z = axes.z
      if (surface.kind === 'plane') {
        x = combine(axes.x, TURN_COS, axes.y, TURN_SIN)
        z = face.reversed ? negate(axes.z) : axes.z
        y = cross(z, x)
      }
      if (surface.kind === 'sphere') {
        z = SPHERE_Z
        x = [z[2] / Math.hypot(z[0], z[2]), 0, -z[0] / Math.hypot(z[0], z[2])]
        y = cross(z, x)
      }
      if (surface.kind === 'cylinder' || surface.kind === 'sphere' || surface.kind === 'cone') r = surface.r
      if (surface.kind === 'cone') k = Math.tan(surface.halfAngle)
      if (surface.kind === 'torus') {
        r = surface.minor
        major = surface.major
      }
    }
    this.o = o!
    this.x = x!
    this.y = y!
    this.z = z!
    this.r = r
    this.k = k
    this.e = surface.kind === 'sphere' ? 1 : 0
    this.major = major
  }

  localBorders(): readonly Border[] {
    if (!this.inFrame) {
      const { o, x, y, z, closed, pathOf, tolerance } = this
      this.inFrame = [
        ...this.borders.map((use) => ({
          edge: use.edge,
          forward: use.forward,
          path: localPath(pathOf(use.edge), o, x, y, z),
        })),
        ...closed
          .flatMap((loop) => bridges(loop, pathOf, tolerance, isClosed(loop, pathOf) ? LOOSE : Infinity))
          .map((path) => ({ edge: BRIDGE, forward: true, path: localPath(path, o, x, y, z) })),
      ]
    }
    return this.inFrame
  }

  trim(): Trim {
    const plane = this.kind === 'plane'
    this.ownTrim ??= new Trim(plane ? 'x' : 'angle', this.localBorders(), this.tolerance, plane ? 1 : this.r)
    return this.ownTrim
  }

  torusTrim(): TorusTrim {
    this.ownTorusTrim ??= new TorusTrim(this.localBorders(), this.major, this.r, this.sign, this.tolerance)
    return this.ownTorusTrim
  }

  sheet(): SplineSheet {
    if (this.surface.kind !== 'spline') throw new Error(`face ${this.id} is no spline surface`)
    this.ownSheet ??= new SplineSheet(this.surface)
    return this.ownSheet
  }

  splineTrim(step = () => {}): SplineTrim {
    this.ownSplineTrim ??= new SplineTrim(this.sheet(), this.localBorders(), this.sign, this.tolerance, step)
    return this.ownSplineTrim
  }

  poleInside(): boolean {
    this.pole ??= spherePole(this)
    return this.pole
  }
}

const ORIGIN: Vec3 = [0, 0, 0]
const X: Vec3 = [1, 0, 0]
const Y: Vec3 = [0, 1, 0]
const Z: Vec3 = [0, 0, 1]

/** Whether a loop comes back to where it began: at every place as many ends meet as make pairs. */
function isClosed(loop: BodyFace['loops'][number], pathOf: (edge: number) => Path3): boolean {
  const open: Vec3[] = []
  const p = [0, 0, 0]
  for (const use of loop) {
    const path = pathOf(use.edge)
    for (const t of [path.t0, path.t1]) {
      path3At(path, t, p)
      const met = open.findIndex((q) => Math.hypot(q[0] - p[0]!, q[1] - p[1]!, q[2] - p[2]!) <= LOOSE)
      if (met >= 0) open.splice(met, 1)
      else open.push([p[0]!, p[1]!, p[2]!])
    }
  }
  return open.length === 0
}

/** In place of an edge's number on what closes a gap of a loop. */
const BRIDGE = -1

/** Straight pieces over the gaps of a loop: where surfaces are tangent, the kernel's edges end up to 1e-3 mm apart. */
function bridges(
  loop: BodyFace['loops'][number],
  pathOf: (edge: number) => Path3,
  tolerance: number,
  most: number,
): Path3[] {
  const ends = loop.map((use) => {
    const path = pathOf(use.edge)
    const [a, b] = [[0, 0, 0] as [number, number, number], [0, 0, 0] as [number, number, number]]
    path3At(path, use.forward ? path.t0 : path.t1, a)
    path3At(path, use.forward ? path.t1 : path.t0, b)
    return [a, b] as const
  })
  return ends.flatMap(([, from], i): Path3[] => {
    const to = ends[(i + 1) % ends.length]![0]
    const gap = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2])
    return gap > 0.5 * tolerance && gap <= most ? [{ kind: 'segment', a: from, b: to, t0: 0, t1: 1 }] : []
  })
}

/** Ends of neighbouring edges in files from elsewhere may lie this far apart, mm. */
const LOOSE = 1e-2

function combine(a: Vec3, f: number, b: Vec3, g: number): Vec3 {
  return [f * a[0] + g * b[0], f * a[1] + g * b[1], f * a[2] + g * b[2]]
}

/** The topmost border passing of any meridian tells on which of its sides the face lies. */
function spherePole(face: FaceModel): boolean {
  const trim = face.trim()
  if (trim.pieces.length === 0) return true
  // the widest piece gives the meridian furthest from any corner
  const widest = trim.pieces.reduce((a, b) => (b.hi - b.lo > a.hi - a.lo ? b : a))
  const passings = trim.passings(widest.lo + 0.4387 * (widest.hi - widest.lo))
  const top = passings[passings.length - 1]!
  return faceLiesAbove(face, top.piece.edge, top.piece.path, top.t)
}

/** Whether the face lies to the +z side of a border curve at its parameter t (face frame, surface of revolution). */
function faceLiesAbove(face: FaceModel, edge: number, path: Path3, t: number): boolean {
  const use = face.borders.find((b) => b.edge === edge)
  return interiorUp(path, t, face.sign, use?.forward !== false, face.kind === 'torus' ? face.major : 0)
}

/** z component of the direction into the face, square to its border: outward normal × travel. */
function interiorUp(path: Path3, t: number, sign: 1 | -1, forward: boolean, major: number): boolean {
  const p = [0, 0, 0]
  const d = [0, 0, 0]
  path3At(path, t, p, d)
  const rho = Math.hypot(p[0]!, p[1]!) || 1
  const f = (rho - major) / rho
  const n: Vec3 = [p[0]! * f * sign, p[1]! * f * sign, p[2]! * sign]
  const way = forward ? 1 : -1
  return way * (n[0] * d[1]! - n[1] * d[0]!) > 0
}

/** Whether a point of the surface, given in the face's frame, belongs to the face. */
export function covers(face: FaceModel, p: readonly number[]): boolean {
  if (face.kind === 'torus') return face.torusTrim().covers(p)
  if (face.kind === 'spline') return face.splineTrim().covers(face.sheet().nearest([p[0]!, p[1]!, p[2]!]))
  const trim = face.trim()
  if (face.kind === 'plane') {
    const odd = trim.parityAbove(p[0]!, p)
    return odd === 'on' || odd
  }
  let s = Math.atan2(p[1]!, p[0]!)
  if (s >= Math.PI) s = -Math.PI
  const odd = trim.parityAbove(s, p)
  if (odd === 'on') return true
  return face.kind === 'sphere' ? odd !== face.poleInside() : odd
}

export function toLocal(face: FaceModel, p: readonly number[], out: number[]): void {
  const a = p[0]! - face.o[0]
  const b = p[1]! - face.o[1]
  const c = p[2]! - face.o[2]
  out[0] = a * face.x[0] + b * face.x[1] + c * face.x[2]
  out[1] = a * face.y[0] + b * face.y[1] + c * face.y[2]
  out[2] = a * face.z[0] + b * face.z[1] + c * face.z[2]
}

export function fromLocal(face: FaceModel, a: number, b: number, c: number): Vec3 {
  return [
    face.o[0] + a * face.x[0] + b * face.y[0] + c * face.z[0],
    face.o[1] + a * face.x[1] + b * face.y[1] + c * face.z[1],
    face.o[2] + a * face.x[2] + b * face.y[2] + c * face.z[2],
  ]
}

/** Outward normal (unit) at a point on the surface, world coordinates; on an apex the zero vector. */
export function outwardAt(face: FaceModel, p: readonly number[]): Vec3 {
  if (face.kind === 'plane') return face.z
  if (face.kind === 'spline') {
    const sheet = face.sheet()
    const n = sheet.normal(sheet.at(...sheet.nearest([p[0]!, p[1]!, p[2]!])))
    return face.sign > 0 ? n : negate(n)
  }
  const q = [0, 0, 0]
  toLocal(face, p, q)
  const [a, b, c] = [q[0]!, q[1]!, q[2]!]
  let n: [number, number, number] = [a, b, face.e * c - face.k * (face.r + face.k * c)]
  if (face.kind === 'torus') {
    const rho = Math.hypot(a, b)
    const f = rho === 0 ? 0 : (rho - face.major) / rho
    n = [a * f, b * f, c]
  }
  const len = Math.hypot(...n)
  if (len === 0) return [0, 0, 0]
  const g = face.sign / len
  return [
    g * (n[0] * face.x[0] + n[1] * face.y[0] + n[2] * face.z[0]),
    g * (n[0] * face.x[1] + n[1] * face.y[1] + n[2] * face.z[1]),
    g * (n[0] * face.x[2] + n[1] * face.y[2] + n[2] * face.z[2]),
  ]
}

/** Height of a point over the unbounded surface on the side of its outward normal, mm; not of splines. */
export function heightOver(face: FaceModel, p: readonly number[]): number {
  const q = [0, 0, 0]
  toLocal(face, p, q)
  const rho = Math.hypot(q[0]!, q[1]!)
  switch (face.kind) {
    case 'sphere':
      return face.sign * (Math.hypot(rho, q[2]!) - face.r)
    case 'torus':
      return face.sign * (Math.hypot(rho - face.major, q[2]!) - face.r)
    case 'cylinder':
    case 'cone':
      return (face.sign * (rho - face.r - face.k * q[2]!)) / Math.hypot(1, face.k)
    default:
      return q[2]!
  }
}

/** Direction in the face's frame. */
export function localDirection(face: FaceModel, d: Vec3): Vec3 {
  return [dot(d, face.x), dot(d, face.y), dot(d, face.z)]
}
