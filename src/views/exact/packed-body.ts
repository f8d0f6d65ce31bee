import type { Vec3 } from '../../geometry/vec.ts'
import type { Axes3, Body, BodyEdge, BodyFace, Curve3, Surface3 } from '../../kernel/body.ts'

/**
 * A body as one array of numbers, for threads that share memory: nothing is copied when another thread is told of it.
 * Names are left out; line-work needs none. Every number comes back as it was.
 */
export function packBody(body: Body): Float64Array<SharedArrayBuffer> {
  const out: number[] = [body.faces.length, body.edges.length, ...body.box.min, ...body.box.max]
  for (const face of body.faces) packFace(face, out)
  for (const edge of body.edges) packEdge(edge, out)
  const shared = new Float64Array(new SharedArrayBuffer(8 * out.length))
  shared.set(out)
  return shared
}

/** The body of packed numbers. */
export function unpackBody(numbers: Float64Array): Body {
  const from = new Reader(numbers)
  const [faces, edges] = [from.next(), from.next()]
  const box = { min: from.vec(), max: from.vec() }
  return {
    faces: Array.from({ length: faces }, () => unpackFace(from)),
    edges: Array.from({ length: edges }, () => unpackEdge(from)),
    box,
  }
}

const SURFACES = ['plane', 'cylinder', 'cone', 'sphere', 'torus', 'spline'] as const
const CURVES = ['line', 'circle', 'ellipse', 'spline'] as const
/** In place of a face that is not there. */
const NONE = -1

class Reader {
  private at = 0
  private readonly numbers: Float64Array

  constructor(numbers: Float64Array) {
    this.numbers = numbers
  }

  next(): number {
    if (this.at >= this.numbers.length) throw new Error('the packed body ends too early')
    return this.numbers[this.at++]!
  }

  vec(): Vec3 {
    return [this.next(), this.next(), this.next()]
  }

  axes(): Axes3 {
    return { origin: this.vec(), x: this.vec(), y: this.vec(), z: this.vec() }
  }

  /** A list with its length before it. */
  list<T>(one: () => T): T[] {
    return Array.from({ length: this.next() }, one)
  }

  numbersList(): number[] {
    return this.list(() => this.next())
  }
}

function packAxes({ origin, x, y, z }: Axes3, out: number[]): void {
  out.push(...origin, ...x, ...y, ...z)
}

function packList(list: readonly number[], out: number[]): void {
  out.push(list.length)
  for (const x of list) out.push(x)
}

function packPoles(poles: readonly Vec3[], out: number[]): void {
  out.push(poles.length)
  for (const p of poles) out.push(...p)
}

function packFace({ id, surface, reversed, loops, cut }: BodyFace, out: number[]): void {
  out.push(id, reversed ? 1 : 0, cut === undefined ? NONE : cut ? 1 : 0)
  packSurface(surface, out)
  out.push(loops.length)
  for (const loop of loops) {
    out.push(loop.length)
    for (const use of loop) out.push(use.edge, use.forward ? 1 : 0)
  }
}

function unpackFace(from: Reader): BodyFace {
  const id = from.next()
  const reversed = from.next() === 1
  const cut = from.next()
  return {
    id,
    surface: unpackSurface(from),
    reversed,
    loops: from.list(() => from.list(() => ({ edge: from.next(), forward: from.next() === 1 }))),
    ...(cut === NONE ? {} : { cut: cut === 1 }),
  }
}

function packSurface(s: Surface3, out: number[]): void {
  out.push(SURFACES.indexOf(s.kind))
  if (s.kind === 'spline') {
    out.push(s.degreeU, s.degreeV)
    packList(s.knotsU, out)
    packList(s.knotsV, out)
    out.push(s.poles.length)
    for (const row of s.poles) packPoles(row, out)
    out.push(s.weights ? s.weights.length : 0)
    for (const row of s.weights ?? []) packList(row, out)
    return
  }
  packAxes(s.axes, out)
  if (s.kind === 'torus') out.push(s.major, s.minor)
  else if (s.kind === 'cone') out.push(s.r, s.halfAngle)
  else if (s.kind !== 'plane') out.push(s.r)
}

function unpackSurface(from: Reader): Surface3 {
  const kind = SURFACES[from.next()]!
  if (kind === 'spline') {
    const [degreeU, degreeV] = [from.next(), from.next()]
    const [knotsU, knotsV] = [from.numbersList(), from.numbersList()]
    const poles = from.list(() => from.list(() => from.vec()))
    const weights = from.list(() => from.numbersList())
    return { kind, degreeU, degreeV, knotsU, knotsV, poles, ...(weights.length > 0 ? { weights } : {}) }
  }
  const axes = from.axes()
  if (kind === 'plane') return { kind, axes }
  if (kind === 'torus') return { kind, axes, major: from.next(), minor: from.next() }
  if (kind === 'cone') return { kind, axes, r: from.next(), halfAngle: from.next() }
  return { kind, axes, r: from.next() }
}

function packEdge({ id, curve, faces, seam, smooth }: BodyEdge, out: number[]): void {
  out.push(id, faces[0], faces[1] ?? NONE, seam ? 1 : 0, smooth ? 1 : 0)
  packCurve(curve, out)
}

function unpackEdge(from: Reader): BodyEdge {
  const [id, a, b] = [from.next(), from.next(), from.next()]
  const [seam, smooth] = [from.next() === 1, from.next() === 1]
  return { id, curve: unpackCurve(from), faces: b === NONE ? [a] : [a, b], seam, smooth }
}

function packCurve(c: Curve3, out: number[]): void {
  out.push(CURVES.indexOf(c.kind))
  if (c.kind === 'line') out.push(...c.a, ...c.b)
  else if (c.kind === 'spline') {
    out.push(c.degree)
    packList(c.knots, out)
    packPoles(c.poles, out)
    packList(c.weights ?? [], out)
  } else {
    packAxes(c.axes, out)
    if (c.kind === 'circle') out.push(c.r, c.from, c.sweep)
    else out.push(c.major, c.minor, c.from, c.sweep)
  }
}

function unpackCurve(from: Reader): Curve3 {
  const kind = CURVES[from.next()]!
  if (kind === 'line') return { kind, a: from.vec(), b: from.vec() }
  if (kind === 'spline') {
    const degree = from.next()
    const knots = from.numbersList()
    const poles = from.list(() => from.vec())
    const weights = from.numbersList()
    return { kind, degree, knots, poles, ...(weights.length > 0 ? { weights } : {}) }
  }
  const axes = from.axes()
  if (kind === 'circle') return { kind, axes, r: from.next(), from: from.next(), sweep: from.next() }
  return { kind, axes, major: from.next(), minor: from.next(), from: from.next(), sweep: from.next() }
}
