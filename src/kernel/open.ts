import init, { type TopoDS_Shape } from 'replicad-opencascadejs'
import type { Body } from './body.ts'
import { startedWithDestructors } from './destructors.ts'
import type { HalfSpace, Kernel, SolidKey } from './kernel.ts'
import { type FaceName, withNames } from './names.ts'
import { guarded, KernelError, type Occt } from './occt.ts'
import { type Placement, placedBody, placedProperties } from './placed-body.ts'
import { type SolidProperties, solidProperties } from './properties.ts'
import { boxOfFace, readBody } from './read-body.ts'
import { release } from './scope.ts'
import { cutOpen, withCutFaces } from './section.ts'
import { readStepText, writeStepText } from './step.ts'
import { readStepShapes, type StepBodyRef, type StepProgress } from './step-model.ts'

/** Where the kernel's binary comes from. Node finds it beside the package; a page gives its address or bytes. */
export interface KernelSource {
  readonly url?: string
  readonly bytes?: ArrayBuffer | Uint8Array
}

/** A distinct body of a STEP file, in the axes of its own product. */
export interface StepModelBody {
  readonly solid: SolidKey
  /** Record of the body; absent where the file's own structure does not lead to it. */
  readonly id: number | undefined
  /** False: an open shell, without a volume. */
  readonly closed: boolean
  /** How often it stands in the whole. */
  readonly count: number
  /** Records of faces that could not be read and are not on the solid. */
  readonly lost: readonly number[]
}

/** What a STEP file holds, in the kernel's keeping: the whole and each distinct body are freed one by one. */
export interface StepModel {
  readonly whole: SolidKey
  readonly bodies: readonly StepModelBody[]
  /** For each body in place, in the order of the file's structure: its index in `bodies`. */
  readonly placed: readonly number[]
  /** Records of bodies of which nothing could be read. */
  readonly lost: readonly number[]
}

/** The kernel as the house uses it; `oc` and `shapeOf` are for this room only. */
export interface OcctKernel extends Kernel {
  readonly oc: Occt
  readonly shapeOf: (solid: SolidKey) => TopoDS_Shape
  /** Takes a shape into keeping; `free` gives it back. */
  readonly keep: (shape: TopoDS_Shape) => SolidKey
  /** Names that `body` and `cut` put on the solid's faces. */
  readonly setNames: (solid: SolidKey, names: readonly FaceName[]) => void
  readonly properties: (solid: SolidKey) => SolidProperties
  /** The first shape of a STEP file, in millimetres. */
  readonly readStep: (text: string) => SolidKey
  /** All bodies of a STEP file, in millimetres; `refs` are the records of its bodies. */
  readonly readStepModel: (text: string, refs: readonly StepBodyRef[], progress?: StepProgress) => StepModel
  /** Bytes of memory the kernel holds now; it never shrinks. */
  readonly memory: () => number
  /** How many solids are in keeping. */
  readonly kept: () => number
}

/** Starts the geometry kernel: about 0.3 s in Node. Each call is a kernel of its own. */
export async function openKernel(source: KernelSource = {}): Promise<OcctKernel> {
  const quiet = () => {}
  const { url, bytes } = source
  const oc = await startedWithDestructors(() =>
    init({
      print: quiet,
      printErr: quiet,
      ...(url ? { locateFile: () => url } : {}),
      ...(bytes ? { wasmBinary: bytes } : {}),
    }),
  )
  return kernelOn(oc)
}

interface Kept {
  readonly shape: TopoDS_Shape
  names: readonly FaceName[]
  /** Of an assembly: its bodies in their places, and the shapes there. */
  readonly members?: readonly { readonly kept: Kept; readonly at: Placement; readonly shape: TopoDS_Shape }[]
  /** Given back: nothing can be read of the shape any more. */
  gone?: true
  /** Read once, when first asked for; without and with names. */
  raw?: Body
  properties?: SolidProperties
  body?: Body
}

function kernelOn(oc: Occt): OcctKernel {
  const solids = new Map<number, Kept>()
  let next = 1
  const at = (solid: SolidKey): Kept => {
    const kept = solids.get(solid.key)
    if (!kept) throw new KernelError(`solid ${solid.key} is not in the kernel's keeping`)
    return kept
  }
  const keep = (shape: TopoDS_Shape, members?: Kept['members']): SolidKey => {
    const key = next++
    solids.set(key, { shape, names: [], ...(members ? { members } : {}) })
    return { key }
  }
  /** Each distinct body of an assembly is read once, if it is still there. */
  const rawOf = (kept: Kept): Body => {
    const { members, shape } = kept
    kept.raw ??= members?.every((m) => m.kept.raw || !m.kept.gone)
      ? placedBody(members.map((m) => ({ body: rawOf(m.kept), at: m.at, box: () => boxOfFace(oc, m.shape) })))
      : readBody(oc, shape)
    return kept.raw
  }
  const propertiesOf = (kept: Kept): SolidProperties => {
    const { members, shape } = kept
    const curved = () => rawOf(kept).edges.some(({ curve }) => curve.kind === 'ellipse' || curve.kind === 'spline')
    kept.properties ??= members?.every((m) => m.kept.properties || !m.kept.gone)
      ? placedProperties(members.map((m) => ({ properties: propertiesOf(m.kept), at: m.at })))
      : solidProperties(oc, shape, curved())
    return kept.properties
  }
  const body = (solid: SolidKey): Body => {
    const kept = at(solid)
    const raw = guarded(oc, 'reading the solid', () => rawOf(kept))
    kept.body ??= withNames(raw, kept.names)
    return kept.body
  }
  const cut = (solid: SolidKey, planes: readonly HalfSpace[], keepSide: 'intersection' | 'union') =>
    guarded(oc, 'cutting the solid', () => {
      const kept = at(solid)
      const key = keep(cutOpen(oc, kept.shape, body(solid).box, planes, keepSide))
      const result = at(key)
      result.names = kept.names
      result.body = withCutFaces(body(key), planes)
      return { solid: key, body: result.body }
    })
  return {
    oc,
    keep,
    body,
    cut,
    shapeOf: (solid) => at(solid).shape,
    setNames: (solid, names) => {
      const kept = at(solid)
      kept.names = names
      delete kept.body
    },
    properties: (solid) => guarded(oc, 'weighing the solid', () => propertiesOf(at(solid))),
    step: (solid, about) => guarded(oc, 'writing STEP', () => writeStepText(oc, at(solid).shape, about)),
    readStep: (text) => keep(guarded(oc, 'reading STEP', () => readStepText(oc, text))),
    readStepModel: (text, refs, progress) => {
      const { whole, bodies, placed, places, lost } = guarded(oc, 'reading STEP', () =>
        readStepShapes(oc, text, refs, progress),
      )
      const made = bodies.map(({ shape, ...about }) => ({ solid: keep(shape), ...about }))
      const members = places?.map((place, i) => ({ kept: at(made[placed[i]!]!.solid), ...place }))
      return { whole: keep(whole, members), bodies: made, placed, lost }
    },
    free: (solid) => {
      const kept = solids.get(solid.key)
      if (kept) {
        release(kept.shape)
        for (const { shape } of kept.members ?? []) release(shape)
        kept.gone = true
      }
      solids.delete(solid.key)
    },
    memory: () => oc.wasmMemory.buffer.byteLength,
    kept: () => solids.size,
  }
}
