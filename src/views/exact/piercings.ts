import { rootsBernstein, timesBernstein } from '../../geometry/bernstein.ts'
import type { Path2 } from '../../geometry/path2.ts'
import { turnInto } from '../../geometry/trig-roots.ts'
import type { Frame } from '../view.ts'
import type { BodyModel } from './body-model.ts'
import { curveThroughSheet } from './curve-sheet.ts'
import type { FaceModel } from './face-model.ts'
import { localPath, type Path3, path3At } from './path3.ts'
import { type BezierPiece, bezierPieces } from './path3-pieces.ts'
import type { Track } from './track.ts'

/**
 * Parameters on a track's projection at which its curve passes through the unbounded surface of a face. Planes, quadrics
 * and tori are polynomials along the curve's Bézier pieces, so that none is lost.
 */
export function piercings(model: BodyModel, frame: Frame, track: Track, face: FaceModel, out: number[]): void {
  const { flat, space } = track
  const found: number[] = []
  throughSurface(model, space, face, found)
  for (const t of found) {
    const at = track.through ? placeOn(flat, space, t, frame) : t
    if (at > flat.t0 && at < flat.t1) out.push(at)
  }
}

/** Parameters at which a space curve passes through the unbounded surface of a face. */
export function throughSurface(model: BodyModel, space: Path3, face: FaceModel, out: number[]): void {
  if (face.kind === 'spline') curveThroughSheet(space, face.sheet(), model.size, out)
  else surfaceRoots(space, face, model.tolerances.touch, out)
}

function surfaceRoots(space: Path3, face: FaceModel, touch: number, out: number[]): void {
  for (const piece of bezierPieces(localPath(space, face.o, face.x, face.y, face.z))) {
    const { form, still } = formOf(piece, face, touch)
    // a curve that runs within the surface does not pass through it
    if (form.every((v) => Math.abs(v) <= still)) continue
    for (const s of rootsBernstein(form, 0)) {
      const t = piece.at(s)
      if (t >= space.t0 && t <= space.t1) out.push(t)
    }
  }
}

/** The surface's polynomial along a piece, and its size at the distance `touch` from the surface. */
function formOf({ x, y, z, w }: BezierPiece, face: FaceModel, touch: number): { form: number[]; still: number } {
  const { r, k, e, major } = face
  if (face.kind === 'plane') return { form: [...z], still: touch }
  const [xx, yy, zz] = [timesBernstein(x, x), timesBernstein(y, y), timesBernstein(z, z)]
  if (face.kind === 'torus') {
    const ww = timesBernstein(w, w)
    const g = xx.map((v, i) => v + yy[i]! + zz[i]! + (major * major - r * r) * ww[i]!)
    const h = timesBernstein(
      ww,
      xx.map((v, i) => v + yy[i]!),
    )
    return {
      form: timesBernstein(g, g).map((v, i) => v - 4 * major * major * h[i]!),
      still: 8 * major * major * r * touch,
    }
  }
  const radius = w.map((v, i) => r * v + k * z[i]!)
  const rr = timesBernstein(radius, radius)
  return { form: xx.map((v, i) => v + yy[i]! + e * zz[i]! - rr[i]!), still: 2 * Math.max(r, touch) * touch }
}

const p = [0, 0, 0]

/** Place on a projection that has a parameter of its own. A place told on another part of the curve parts it needlessly. */
function placeOn(flat: Path2, space: Path3, t: number, { right, up }: Frame): number {
  path3At(space, t, p)
  const x = p[0]! * right[0] + p[1]! * right[1] + p[2]! * right[2]
  const y = p[0]! * up[0] + p[1]! * up[1] + p[2]! * up[2]
  if (flat.kind === 'segment') {
    const [dx, dy] = [flat.bx - flat.ax, flat.by - flat.ay]
    return ((x - flat.ax) * dx + (y - flat.ay) * dy) / (dx * dx + dy * dy)
  }
  return flat.kind === 'conic' ? turnInto(Math.atan2(y - flat.cy, x - flat.cx), flat.t0) : t
}
