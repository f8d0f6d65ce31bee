import type { Body } from '../../kernel/body.ts'
import { type FaceModel, faceModel } from './face-model.ts'
import { type Path3, path3Of } from './path3.ts'
import { recognised } from './recognise.ts'
import type { Watcher } from './watch.ts'

/** An edge with the faces beside it, ready for computing. */
export interface EdgeModel {
  readonly id: number
  readonly path: Path3
  readonly smooth: boolean
  readonly faces: readonly FaceModel[]
  /** For each of `faces` that it bounds: whether the edge runs with the face on its left, seen from outside. */
  readonly forward: readonly boolean[]
  readonly cut: boolean
}

/** A body read into the shape computing wants; the same for every view. */
export interface BodyModel {
  readonly faces: readonly FaceModel[]
  /** Seams left out. */
  readonly edges: readonly EdgeModel[]
  /** Every edge has two faces (or two pairs): what enters must leave, so only faces turned to the eye can hide anything. */
  readonly closed: boolean
  /** The connected border it belongs to: the solids of an assembly have one each. */
  readonly shellOf: ReadonlyMap<FaceModel, number>
  readonly shells: number
  /** Diagonal of the bounding box, mm. */
  readonly size: number
  readonly tolerances: Tolerances
  readonly pathOf: (edge: number) => Path3
}

/** Lengths in mm below which things count as one. */
export interface Tolerances {
  /** A point this near a border belongs to the face; surfaces this near touch. */
  readonly touch: number
  /** Lines this near are one line; pieces this short are none. */
  readonly line: number
  /** Splines this near are one: the kernel's are approximations themselves. */
  readonly spline: number
}

const models = new WeakMap<Body, BodyModel>()

/** The model of a body, made at the first call and kept as long as the body is. */
export function bodyModel(body: Body, watcher: Watcher): BodyModel {
  let model = models.get(body)
  if (!model) {
    model = make(body, watcher)
    models.set(body, model)
  }
  return model
}

function make(raw: Body, watcher: Watcher): BodyModel {
  const { min, max } = raw.box
  const size = Math.hypot(max[0] - min[0], max[1] - min[1], max[2] - min[2])
  // 1e-7 mm is the kernel's own measure of one point
  const tolerances: Tolerances = { touch: 1e-7 + 2e-9 * size, line: 2e-7 + 1e-8 * size, spline: 1e-6 + 5e-7 * size }
  const body = recognised(raw, tolerances.touch, 1e-5 * size, () => watcher.step())
  const place = new Map(body.edges.map((e, i) => [e.id, i]))
  const paths: (Path3 | undefined)[] = new Array(body.edges.length)
  const indexOf = (edge: number) => place.get(edge)!
  const pathOf = (edge: number) => (paths[indexOf(edge)] ??= path3Of(body.edges[indexOf(edge)]!.curve))
  const faces = body.faces.map((f) => {
    watcher.step()
    return faceModel(f, pathOf, (edge) => body.edges[indexOf(edge)]!.seam, tolerances.touch)
  })
  const uses = new Map<number, { face: FaceModel; forward: boolean }[]>()
  for (const face of faces) {
    for (const use of face.borders) {
      const list = uses.get(use.edge)
      if (list) list.push({ face, forward: use.forward })
      else uses.set(use.edge, [{ face, forward: use.forward }])
    }
  }
  const slits = new Map<number, FaceModel[]>()
  for (const face of faces) for (const edge of face.slits) slits.set(edge, [...(slits.get(edge) ?? []), face])
  let closed = true
  const edges: EdgeModel[] = []
  for (const e of body.edges) {
    if (e.seam) continue
    const beside = uses.get(e.id) ?? []
    // where sheets of the border touch along a line, an edge has four faces or more
    if (beside.length % 2 !== 0) closed = false
    edges.push({
      id: e.id,
      path: pathOf(e.id),
      smooth: e.smooth,
      faces: [...beside.map((u) => u.face), ...(slits.get(e.id) ?? [])],
      forward: beside.map((u) => u.forward),
      cut: beside.some((u) => u.face.cut),
    })
  }
  return { faces, edges, closed, ...shellsOf(faces, edges), size, tolerances, pathOf }
}

/** Faces that share an edge belong together. */
function shellsOf(faces: readonly FaceModel[], edges: readonly EdgeModel[]): Pick<BodyModel, 'shellOf' | 'shells'> {
  const next = new Map<FaceModel, FaceModel>()
  const root = (f: FaceModel): FaceModel => {
    let at = f
    for (let up = next.get(at); up; up = next.get(at)) {
      const above = next.get(up)
      if (above) next.set(at, above)
      at = up
    }
    return at
  }
  for (const { faces: beside } of edges) {
    for (const face of beside.slice(1)) {
      const [a, b] = [root(beside[0]!), root(face)]
      if (a !== b) next.set(a, b)
    }
  }
  const numbers = new Map<FaceModel, number>()
  const shellOf = new Map<FaceModel, number>()
  for (const face of faces) {
    const r = root(face)
    if (!numbers.has(r)) numbers.set(r, numbers.size)
    shellOf.set(face, numbers.get(r)!)
  }
  return { shellOf, shells: numbers.size }
}
