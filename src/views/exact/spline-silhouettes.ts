import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot } from '../../geometry/vec3.ts'
import type { Frame } from '../view.ts'
import type { BodyModel } from './body-model.ts'
import { signChanges } from './edge-tracks.ts'
import type { FaceModel } from './face-model.ts'
import { fitChain } from './fit-chain.ts'
import { path3At } from './path3.ts'
import { bendAlong } from './spline-bend.ts'
import type { SplineSheet, UV } from './spline-face.ts'
import { outlineTraces } from './spline-outlines.ts'
import { inView, type SurfacePoint } from './spline-patches.ts'
import { bisected } from './sweep-pieces.ts'
import { project, type Track } from './track.ts'
import type { Watcher } from './watch.ts'

/**
 * Outlines of a true spline surface within a face: where normal · d vanishes. They are followed from cell to cell of
 * the parameters and given as polynomial pieces within 2e-9 of the part.
 */
export function splineSilhouettes(
  model: BodyModel,
  face: FaceModel,
  frame: Frame,
  out: Track[],
  watcher: Watcher,
): void {
  const sheet = face.sheet()
  const d = frame.toViewer
  const step = () => watcher.step()
  const trim = face.splineTrim(step)
  const patches = sheet.patches.map((p) => inView(p, frame))
  for (const { places, closed } of outlineTraces(patches, step)) {
    const line = new OutlineLine(sheet, d, places, step)
    const end = places.length - 1
    const cuts = [...bendChanges(face, line, d), ...borderMeetings(face, line, d)].sort((a, b) => a - b)
    const stops = closed && cuts.length > 0 ? [...cuts, cuts[0]! + end] : [0, ...cuts, end]
    for (let i = 1; i < stops.length; i++) {
      const [a, b] = [stops[i - 1]!, stops[i]!]
      if (b - a < 1e-7) continue
      const mid = line.at(0.5 * (a + b))
      if (!trim.covers(mid)) continue
      const bend = bendAlong(face, sheet.at(...mid), d)
      const nodes = Array.from({ length: Math.ceil(b) + 1 }, (_, k) => k)
      const chain = fitChain((t) => sheet.at(...line.at(t)).p, a, b, 2e-9 * model.size, nodes)
      out.push(
        ...project(
          { kind: 'chain', chain, t0: a, t1: b },
          frame,
          {
            faces: [face],
            kind: 'silhouette',
            // beside a stretch seen edge-on the bend is nothing but rounding
            divides: bend > -STRAIGHT || !model.closed,
            buried: model.closed && bend < -STRAIGHT,
          },
          model.tolerances.line,
        ),
      )
    }
  }
}

/** Bend below which a surface counts as straight along the line of sight, 1/mm. */
const STRAIGHT = 1e-9

/** normal · d, not normed, and its slopes along u and v. */
function facing(x: SurfacePoint, d: Vec3): readonly [number, number, number] {
  const u = [cross(x.uu, x.v), cross(x.u, x.uv)] as const
  const v = [cross(x.uv, x.v), cross(x.u, x.vv)] as const
  return [dot(cross(x.u, x.v), d), dot(u[0], d) + dot(u[1], d), dot(v[0], d) + dot(v[1], d)]
}

/** An outline by a parameter that counts the places given; between them it is found beside the straight line in u, v. */
class OutlineLine {
  readonly places: readonly UV[]
  private readonly sheet: SplineSheet
  private readonly d: Vec3
  private readonly step: () => void

  /** `step` is called for each place asked for. */
  constructor(sheet: SplineSheet, d: Vec3, places: readonly UV[], step: () => void) {
    this.sheet = sheet
    this.d = d
    this.places = places
    this.step = step
  }

  /** Parameters beyond the end of a closed line go round again. */
  at(t: number): UV {
    this.step()
    const n = this.places.length - 1
    const s = t > n ? t - n : t
    const i = Math.min(n - 1, Math.floor(s))
    const f = s - i
    const [a, b] = [this.places[i]!, this.places[i + 1]!]
    const { lo, hi, scale } = this.sheet
    let u = a[0] + f * (b[0] - a[0])
    let v = a[1] + f * (b[1] - a[1])
    // square to the chord in true lengths, so that places run evenly
    const way = [(b[0] - a[0]) * scale[0], (b[1] - a[1]) * scale[1]] as const
    const l = Math.hypot(...way)
    const side = [-way[1] / l / scale[0], way[0] / l / scale[1]] as const
    for (let k = 0; k < 20; k++) {
      const [g, gu, gv] = facing(this.sheet.at(clamp(u, lo[0], hi[0]), clamp(v, lo[1], hi[1])), this.d)
      const slope = gu * side[0] + gv * side[1]
      if (slope === 0) break
      const step = clamp(-g / slope, -0.5 * l, 0.5 * l)
      u += step * side[0]
      v += step * side[1]
      if (Math.abs(step) < 1e-14 * (l + Math.abs(u * scale[0]) + Math.abs(v * scale[1]))) break
    }
    return [clamp(u, lo[0], hi[0]), clamp(v, lo[1], hi[1])]
  }

  /** Parameter of the line's place nearest to u, v, and how far away that is (in lengths). */
  place([u, v]: UV): { readonly t: number; readonly off: number } {
    const { scale } = this.sheet
    const off = (p: UV) => Math.hypot((p[0] - u) * scale[0], (p[1] - v) * scale[1])
    let best = { t: 0, off: Infinity }
    for (let i = 0; i + 1 < this.places.length; i++) {
      const [a, b] = [this.places[i]!, this.places[i + 1]!]
      const way = [(b[0] - a[0]) * scale[0], (b[1] - a[1]) * scale[1]] as const
      const l2 = way[0] ** 2 + way[1] ** 2
      const f = clamp(((u - a[0]) * scale[0] * way[0] + (v - a[1]) * scale[1] * way[1]) / l2, 0, 1)
      const straight = off([a[0] + f * (b[0] - a[0]), a[1] + f * (b[1] - a[1])])
      // no curve of one cell strays further from its chord than the chord is long
      if (straight > Math.sqrt(l2) + best.off) continue
      const d = off(this.at(i + f))
      if (d < best.off) best = { t: i + f, off: d }
    }
    return best
  }
}

function bendChanges(face: FaceModel, line: OutlineLine, d: Vec3): number[] {
  const sheet = face.sheet()
  const bend = (t: number) => bendAlong(face, sheet.at(...line.at(t)), d)
  const out: number[] = []
  const steps = 4 * (line.places.length - 1)
  let before = bend(0)
  for (let i = 1; i <= steps; i++) {
    const now = bend(i / 4)
    if (now < 0 !== before < 0) out.push(bisected(bend, (i - 1) / 4, i / 4, before))
    before = now
  }
  return out
}

/** Where the face's border passes the outline: normal · d vanishes on it. */
function borderMeetings(face: FaceModel, line: OutlineLine, d: Vec3): number[] {
  const sheet = face.sheet()
  const { scale } = sheet
  const near = 1e-5 * (scale[0] * (sheet.hi[0] - sheet.lo[0]) + scale[1] * (sheet.hi[1] - sheet.lo[1]))
  const q = [0, 0, 0]
  const out: number[] = []
  for (const { path } of face.splineTrim().borders) {
    const places = [path.t0, path.t1]
    const at = (t: number): UV => {
      path3At(path, t, q)
      return [clamp(q[0]! / scale[0], sheet.lo[0], sheet.hi[0]), clamp(q[1]! / scale[1], sheet.lo[1], sheet.hi[1])]
    }
    const facingAt = (t: number) => dot(sheet.normal(sheet.at(...at(t))), d)
    signChanges(path, facingAt, 1e-9, places)
    for (const t of places) {
      if (Math.abs(facingAt(t)) > 1e-5) continue
      const uv = at(t)
      const { t: on, off } = line.place(uv)
      if (off <= near) out.push(on)
    }
  }
  return out
}

function clamp(x: number, lo: number, hi: number): number {
  return x < lo ? lo : Math.min(x, hi)
}
