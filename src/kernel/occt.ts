import type { OpenCascadeInstance, TopAbs_ShapeEnum, TopoDS_Shape } from 'replicad-opencascadejs'
import type { Vec3 } from '../geometry/vec.ts'
import { cross } from '../geometry/vec3.ts'
import type { Axes3 } from './body.ts'
import type { Own } from './scope.ts'

/** The compiled kernel's own programming interface. */
export type Occt = OpenCascadeInstance

/** A shape in the compiled kernel; whoever makes one frees it. */
export type Shape = TopoDS_Shape

/** A build or query that the kernel refused; `message` is the kernel's own. */
export class KernelError extends Error {
  override readonly name = 'KernelError'
}

/** Runs `work`, turning the kernel's binary exceptions into `KernelError`. */
export function guarded<R>(oc: Occt, doing: string, work: () => R): R {
  try {
    return work()
  } catch (e) {
    if (e instanceof KernelError) throw e
    throw new KernelError(`${doing}: ${reasonOf(oc, e)}`)
  }
}

function reasonOf(oc: Occt, e: unknown): string {
  if (e instanceof Error) return e.message
  try {
    const decode: (e: unknown) => readonly string[] = oc.getExceptionMessage as (e: unknown) => [string, string]
    return decode(e).filter(Boolean).join(': ')
  } catch {
    return 'the kernel gave no reason'
  }
}

interface HasXyz {
  X(): number
  Y(): number
  Z(): number
  delete(): void
}

/** Reads a point, vector or direction and frees it. */
export function takeVec(p: HasXyz): Vec3 {
  const v: Vec3 = [p.X(), p.Y(), p.Z()]
  p.delete()
  return v
}

interface HasAxes {
  Location(): HasXyz
  XDirection(): HasXyz
  YDirection(): HasXyz
  Direction(): HasXyz
  delete(): void
}

/** Reads a position and frees it. `x`, `y`, `z` as the kernel has them: left-handed systems are possible. */
export function takeAxes(a: HasAxes): Axes3 {
  const axes: Axes3 = {
    origin: takeVec(a.Location()),
    x: takeVec(a.XDirection()),
    y: takeVec(a.YDirection()),
    z: takeVec(a.Direction()),
  }
  a.delete()
  return axes
}

/** Reads a position that is right-handed by its kind and frees it; the third axis follows from the two others. */
export function takeRightHanded(a: HasAxes): Axes3 {
  const x = takeVec(a.XDirection())
  const y = takeVec(a.YDirection())
  const origin = takeVec(a.Location())
  a.delete()
  return { origin, x, y, z: cross(x, y) }
}

export const pnt = (oc: Occt, own: Own, p: Vec3) => own(new oc.gp_Pnt(p[0], p[1], p[2]))
export const vec = (oc: Occt, own: Own, p: Vec3) => own(new oc.gp_Vec(p[0], p[1], p[2]))
export const dir = (oc: Occt, own: Own, p: Vec3) => own(new oc.gp_Dir(p[0], p[1], p[2]))
export const ax1 = (oc: Occt, own: Own, origin: Vec3, z: Vec3) =>
  own(new oc.gp_Ax1(pnt(oc, own, origin), dir(oc, own, z)))
export const ax2 = (oc: Occt, own: Own, origin: Vec3, z: Vec3, x?: Vec3) =>
  own(
    x
      ? new oc.gp_Ax2(pnt(oc, own, origin), dir(oc, own, z), dir(oc, own, x))
      : new oc.gp_Ax2(pnt(oc, own, origin), dir(oc, own, z)),
  )

type Explorer = InstanceType<Occt['TopExp_Explorer']>
const explorers = new WeakMap<Occt, Explorer>()

/** Sub-shapes of a kind as owned objects. One explorer serves a kernel for life: each new one would keep 0.5 kB. */
export function subShapes(oc: Occt, own: Own, shape: TopoDS_Shape, kind: TopAbs_ShapeEnum): TopoDS_Shape[] {
  let explorer = explorers.get(oc)
  if (!explorer) explorers.set(oc, (explorer = new oc.TopExp_Explorer()))
  const list: TopoDS_Shape[] = []
  for (explorer.Init(shape, kind, 'TopAbs_SHAPE'); explorer.More(); explorer.Next()) list.push(own(explorer.Current()))
  explorer.Clear()
  return list
}

/** Numbers distinct sub-shapes (same geometry and place, whatever the direction) from 0. */
export class ShapeNumbers {
  private readonly buckets = new Map<number, { shape: TopoDS_Shape; id: number }[]>()
  private count = 0
  private readonly oc: Occt

  constructor(oc: Occt) {
    this.oc = oc
  }

  get size(): number {
    return this.count
  }

  /** Number of the shape, and whether it was met for the first time. The shape must live as long as this. */
  numberOf(shape: TopoDS_Shape): { readonly id: number; readonly first: boolean } {
    const hash = this.oc.ReplicadShapeHasher.HashCode(shape, 2147483647)
    let bucket = this.buckets.get(hash)
    if (!bucket) this.buckets.set(hash, (bucket = []))
    for (const entry of bucket) if (entry.shape.IsSame(shape)) return { id: entry.id, first: false }
    const id = this.count++
    bucket.push({ shape, id })
    return { id, first: true }
  }
}
