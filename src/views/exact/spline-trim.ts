import type { Vec3 } from '../../geometry/vec.ts'
import { fitChain } from './fit-chain.ts'
import { type Path3, path3At, samplePlaces } from './path3.ts'
import type { SplineSheet, UV } from './spline-face.ts'
import { type Border, nearestPassing, Trim } from './trim.ts'

/**
 * The part of a spline surface that a face covers, in its parameters brought to lengths. What counts is on which side of
 * the nearest border passed along v a point lies, along -v if there is none, then along u: seams and pinched sides need
 * no border of their own.
 */
export class SplineTrim {
  private readonly sheet: SplineSheet
  private readonly byU: Trim
  private readonly byV: Trim
  private readonly forward = new Map<number, boolean>()
  /** The borders in u, v times `scale`, z = 0. */
  readonly borders: readonly Border[]
  /** 1 where the face's outward normal is Du × Dv. */
  private readonly sign: 1 | -1

  constructor(sheet: SplineSheet, borders: readonly Border[], sign: 1 | -1, tolerance: number, step: () => void) {
    this.sheet = sheet
    this.sign = sign
    const flat: Border[] = []
    const turned: Border[] = []
    for (const b of borders) {
      this.forward.set(b.edge, b.forward)
      const path = this.inParameters(b.path, 0.2 * tolerance, step)
      flat.push({ ...b, path })
      turned.push({ ...b, path: exchanged(path) })
    }
    this.borders = flat
    this.byU = new Trim('x', flat, tolerance, 1)
    this.byV = new Trim('x', turned, tolerance, 1)
  }

  /** An edge's curve laid into the parameters, by the surface's points nearest to it. */
  private inParameters(path: Path3, bound: number, step: () => void): Path3 {
    const p = [0, 0, 0]
    const { scale } = this.sheet
    const places =
      path.kind === 'segment'
        ? Array.from({ length: 9 }, (_, i) => path.t0 + ((path.t1 - path.t0) * i) / 8)
        : samplePlaces(path, 4)
    const known: UV[] = []
    let from: UV | undefined
    for (const t of places) {
      path3At(path, t, p)
      from = this.sheet.nearest([p[0]!, p[1]!, p[2]!], from)
      known.push(from)
    }
    // an end on a seam or on a pinched side has many parameters: those next to its neighbour are meant
    for (const [end, next] of [
      [0, 1],
      [places.length - 1, places.length - 2],
    ] as const) {
      path3At(path, places[end]!, p)
      known[end] = this.sheet.nearest([p[0]!, p[1]!, p[2]!], known[next])
    }
    const at = (t: number): Vec3 => {
      step()
      let i = 0
      while (i + 2 < places.length && t > places[i + 1]!) i++
      const f = (t - places[i]!) / (places[i + 1]! - places[i]!)
      const [a, b] = [known[i]!, known[i + 1]!]
      path3At(path, t, p)
      const [u, v] = this.sheet.nearest([p[0]!, p[1]!, p[2]!], [a[0] + f * (b[0] - a[0]), a[1] + f * (b[1] - a[1])])
      return [u * scale[0], v * scale[1], 0]
    }
    return { kind: 'chain', chain: fitChain(at, path.t0, path.t1, bound), t0: path.t0, t1: path.t1 }
  }

  covers([u, v]: UV): boolean {
    const { scale } = this.sheet
    const [x, y] = [u * scale[0], v * scale[1]]
    if (this.byU.parityAbove(x, [x, y, 0]) === 'on') return true
    return (
      this.side(this.byU, x, y, true, false) ??
      this.side(this.byU, x, y, false, false) ??
      this.side(this.byV, y, x, true, true) ??
      this.side(this.byV, y, x, false, true) ??
      true
    )
  }

  /** By the nearest border passed above (or below) at a place: whether its inner side is this one. */
  private side(trim: Trim, s: number, height: number, above: boolean, exchanged: boolean): boolean | undefined {
    const met = trim
      .passings(s)
      .map((x) => ({ ...x, gap: above ? x.height - height : height - x.height }))
      .filter((x) => x.gap >= 0)
    const first = nearestPassing(met)
    if (!first) return undefined
    const d = [0, 0, 0]
    path3At(first.piece.path, first.t, [0, 0, 0], d)
    // left of the border's run in u, v; the other side on exchanged axes
    const way = (this.forward.get(first.piece.edge) === false ? -1 : 1) * this.sign * (exchanged ? -1 : 1)
    const innerAbove = way * d[0]! > 0
    return innerAbove !== above
  }
}

function exchanged(path: Path3): Path3 {
  if (path.kind !== 'chain') return path
  const poles = Float64Array.from(path.chain.poles)
  for (let i = 0; i < poles.length; i += 4) {
    poles[i] = path.chain.poles[i + 1]!
    poles[i + 1] = path.chain.poles[i]!
  }
  return { ...path, chain: { ...path.chain, poles } }
}
