import { turnInto } from '../../geometry/trig-roots.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import type { Frame } from '../view.ts'
import type { BodyModel } from './body-model.ts'
import { SQUARE, signChanges } from './edge-tracks.ts'
import { covers, type FaceModel, fromLocal, localDirection } from './face-model.ts'
import { fitChain } from './fit-chain.ts'
import { type Path3, path3At } from './path3.ts'
import { bisected } from './sweep-pieces.ts'
import { project, type Track } from './track.ts'

const TURN = 2 * Math.PI

/** One closed outline of a whole torus: angle round the axis and angle round the tube, by a parameter in [0, 2π). */
interface Outline {
  readonly angles: (t: number) => readonly [number, number]
  /** Parameter of the outline's point with the given angles, if it lies on this outline. */
  readonly place: (round: number, tube: number) => number
  /** Exact arc, where the outline is a circle; otherwise it is fitted. */
  readonly conic?: Path3
}

/**
 * Outlines of a torus within a face. Looking along the axis or square to it they are circles, exactly. In general they
 * are two closed curves of degree 8 in the view, known in closed form by the angle round the axis:
 * normal · d = D cos(tube) cos(round - round(d)) + d_z sin(tube) = 0; they are followed by polynomial pieces.
 */
export function torusSilhouettes(model: BodyModel, face: FaceModel, frame: Frame, out: Track[]): void {
  const d = localDirection(face, frame.toViewer)
  for (const outline of outlines(face, d)) {
    const cuts = [...bendChanges(face, outline, d), ...borderMeetings(face, outline, d)]
    cuts.sort((a, b) => a - b)
    const ends = cuts.length === 0 ? [0, TURN] : [...cuts, cuts[0]! + TURN]
    for (let i = 1; i < ends.length; i++) {
      const [a, b] = [ends[i - 1]!, ends[i]!]
      if (b - a < 1e-9) continue
      const mid = 0.5 * (a + b)
      const [round, tube] = outline.angles(mid)
      if (!belongs(face, round, tube)) continue
      const bend = bendAlong(face, round, tube, d)
      const path: Path3 = outline.conic
        ? ({ ...outline.conic, t0: a, t1: b } as Path3)
        : fitted(model, face, outline, a, b)
      out.push(
        ...project(
          path,
          frame,
          {
            faces: [face],
            kind: 'silhouette',
            divides: bend > 0 || !model.closed,
            buried: model.closed && bend < 0,
          },
          model.tolerances.line,
        ),
      )
    }
  }
}

/**
 * Whether the face covers a place of an outline. Outlines run through just those angles at which the kernel's edges on
 * tangent surfaces end, and there by up to 1e-3 mm apart: of the place itself and one on either side two decide.
 */
function belongs(face: FaceModel, round: number, tube: number): boolean {
  const at = (f: number) => covers(face, localPoint(face, round + f * ASIDE, tube + f * ASIDE))
  const first = at(0)
  return at(1) === first || at(-1) === first ? first : !first
}

/** Radians. */
const ASIDE = 1.7e-3

function fitted(model: BodyModel, face: FaceModel, outline: Outline, a: number, b: number): Path3 {
  const at = (t: number) => {
    const [round, tube] = outline.angles(t)
    const p = localPoint(face, round, tube)
    return fromLocal(face, p[0], p[1], p[2])
  }
  return { kind: 'chain', chain: fitChain(at, a, b, 2e-9 * model.size), t0: a, t1: b }
}

function localPoint(face: FaceModel, round: number, tube: number): Vec3 {
  const rho = face.major + face.r * Math.cos(tube)
  return [rho * Math.cos(round), rho * Math.sin(round), face.r * Math.sin(tube)]
}

function outlines(face: FaceModel, d: Vec3): Outline[] {
  const across = Math.hypot(d[0], d[1])
  const toward = Math.atan2(d[1], d[0])
  const { major, r } = face
  const offset = (a: number, b: number) => Math.abs(turnInto(a - b, -Math.PI))
  if (across < SQUARE || Math.abs(d[2]) < SQUARE) {
    const level = across < SQUARE
    const rings = (level ? [0, Math.PI] : [Math.PI / 2, -Math.PI / 2]).map((tube): Outline => {
      const rho = major + r * Math.cos(tube)
      return {
        angles: (t) => [t, tube],
        place: (round, at) => (offset(at, tube) < 1e-5 ? turnInto(round, 0) : Number.NaN),
        conic: conic(face, [0, 0, r * Math.sin(tube)], [rho, 0, 0], [0, rho, 0]),
      }
    })
    if (level) return rings
    for (const round of [toward + Math.PI / 2, toward - Math.PI / 2]) {
      const [c, s] = [Math.cos(round), Math.sin(round)]
      rings.push({
        angles: (t) => [round, t],
        place: (at, tube) => (offset(at, round) < 1e-5 ? turnInto(tube, 0) : Number.NaN),
        conic: conic(face, [major * c, major * s, 0], [r * c, r * s, 0], [0, 0, r]),
      })
    }
    return rings
  }
  return [1, -1].map((side): Outline => {
    const tubeAt = (t: number) => Math.atan2(-side * across * Math.cos(t - toward), side * d[2])
    return {
      angles: (t) => [t, tubeAt(t)],
      place: (round, tube) => (offset(tube, tubeAt(round)) < 1e-4 ? turnInto(round, 0) : Number.NaN),
    }
  })
}

function conic(face: FaceModel, o: Vec3, u: Vec3, v: Vec3): Path3 {
  const turn = (p: Vec3): Vec3 => {
    const q = fromLocal(face, p[0], p[1], p[2])
    return [q[0] - face.o[0], q[1] - face.o[1], q[2] - face.o[2]]
  }
  return { kind: 'conic', o: fromLocal(face, o[0], o[1], o[2]), u: turn(u), v: turn(v), t0: 0, t1: TURN }
}

/**
 * Bend of the face along the line of sight on an outline (Euler's formula): positive where the solid bulges towards the
 * line's own side, so that the line just touches the solid from outside.
 */
function bendAlong(face: FaceModel, round: number, tube: number, d: Vec3): number {
  const [c, s] = [Math.cos(round), Math.sin(round)]
  const radial = d[0] * c + d[1] * s
  const aroundAxis = d[1] * c - d[0] * s
  const aroundTube = d[2] * Math.cos(tube) - radial * Math.sin(tube)
  const rho = face.major + face.r * Math.cos(tube)
  return face.sign * (aroundTube ** 2 / face.r + (aroundAxis ** 2 * Math.cos(tube)) / rho)
}

function bendChanges(face: FaceModel, outline: Outline, d: Vec3): number[] {
  const bend = (t: number) => {
    const [round, tube] = outline.angles(t)
    return bendAlong(face, round, tube, d)
  }
  const out: number[] = []
  const steps = 96
  let before = bend(0)
  for (let i = 1; i <= steps; i++) {
    const t = (TURN * i) / steps
    const now = bend(t)
    if (now < 0 !== before < 0) out.push(bisected(bend, (TURN * (i - 1)) / steps, t, before))
    before = now
  }
  return out
}

/**
 * Where the border passes an outline. normal · d vanishes there; where it is a product (looking along the axis or square
 * to it), each factor is asked by itself, for a border along one outline makes the product vanish throughout.
 */
function borderMeetings(face: FaceModel, outline: Outline, d: Vec3): number[] {
  const out: number[] = []
  const q = [0, 0, 0]
  const across = Math.hypot(d[0], d[1])
  const beyondCore = () => Math.hypot(q[0]!, q[1]!) - face.major
  const towards = () => q[0]! * d[0] + q[1]! * d[1]
  const factors =
    across < SQUARE
      ? [() => q[2]!]
      : Math.abs(d[2]) < SQUARE
        ? [beyondCore, towards]
        : [() => (towards() * beyondCore()) / (beyondCore() + face.major) + q[2]! * d[2]]
  for (const { path } of face.localBorders()) {
    const places = [path.t0, path.t1]
    for (const factor of factors)
      signChanges(
        path,
        (t) => {
          path3At(path, t, q)
          return factor()
        },
        1e-9 * face.r,
        places,
      )
    for (const t of places) {
      path3At(path, t, q)
      const at = outline.place(Math.atan2(q[1]!, q[0]!), Math.atan2(q[2]!, beyondCore()))
      if (!Number.isNaN(at)) out.push(at)
    }
  }
  return out
}
