import type { STEPControl_Reader, StepData_StepModel, TopoDS_Shape } from 'replicad-opencascadejs'
import type { Vec3 } from '../geometry/vec.ts'
import { KernelError, type Occt, subShapes } from './occt.ts'
import type { Placement } from './placed-body.ts'
import { type Own, scoped } from './scope.ts'

/** One record of the file's data section: its number (`#120`) and its place among all records, counted from 1. */
export interface StepRef {
  readonly id: number
  readonly place: number
}

/** A body of the file: the record that describes it and the records of its faces. */
export interface StepBodyRef extends StepRef {
  readonly faces: readonly StepRef[]
}

/** A distinct body of the file, in the axes of its own product. */
export interface StepShape {
  readonly shape: TopoDS_Shape
  /** Record of the body; absent where the file's own structure does not lead to it. */
  readonly id: number | undefined
  /** False: an open shell, without a volume. */
  readonly closed: boolean
  /** How often it stands in the whole. */
  readonly count: number
  /** Records of faces that could not be read and are not on the shape. */
  readonly lost: readonly number[]
}

export interface StepShapes {
  /** Everything, each body in its place. */
  readonly whole: TopoDS_Shape
  readonly bodies: readonly StepShape[]
  /** For each body in place, in the order of the file's structure: its index in `bodies`. */
  readonly placed: readonly number[]
  /** Where each of them stands, and its shape there; absent where one is mirrored or scaled, or an open shell is among them. */
  readonly places?: readonly { readonly at: Placement; readonly shape: TopoDS_Shape }[]
  /** Records of bodies of which nothing could be read. */
  readonly lost: readonly number[]
}

/** Tells how far reading has come: roots of the file done, of how many. */
export type StepProgress = (done: number, of: number) => void

/**
 * All bodies of an ISO 10303-21 text, in millimetres whatever the file's unit. Throws `KernelError` where the text
 * cannot be read or holds no shape.
 */
export function readStepShapes(
  oc: Occt,
  text: string,
  refs: readonly StepBodyRef[],
  progress: StepProgress = () => {},
): StepShapes {
  return scoped((own) => {
    const path = '/in.step'
    oc.FS.writeFile(path, text)
    const reader = own(new oc.STEPControl_Reader())
    const session = own(reader.WS())
    try {
      if (reader.ReadFile(path) !== 'IFSelect_RetDone') throw new KernelError('the text is not a readable STEP file')
      const roots = reader.NbRootsForTransfer()
      for (let i = 1; i <= roots; i++) {
        reader.TransferRoot(i, own(new oc.Message_ProgressRange()))
        progress(i, roots)
      }
      if (reader.NbShapes() === 0) throw new KernelError('the STEP file holds no shape')
      return bodiesOf(oc, own, reader, refs)
    } finally {
      oc.FS.unlink(path)
      session.ClearContext()
      session.ClearData(EVERYTHING)
    }
  })
}

/** The work session's mode for dropping model, transfers and results alike. */
const EVERYTHING = 7

function bodiesOf(oc: Occt, own: Own, reader: STEPControl_Reader, refs: readonly StepBodyRef[]): StepShapes {
  const whole = own(reader.OneShape())
  const solids = subShapes(oc, own, whole, 'TopAbs_SOLID')
  const shells = looseShells(oc, own, whole)
  const all = [...solids, ...shells]
  if (all.length === 0) throw new KernelError('the STEP file holds no solid')
  const home = own(new oc.TopLoc_Location())
  const distinct: { shape: TopoDS_Shape; closed: boolean; count: number; id?: number; lost: number[] }[] = []
  const placed = all.map((shape, i) => {
    const known = distinct.findIndex((d) => d.shape.IsPartner(shape))
    if (known >= 0) {
      distinct[known]!.count++
      return known
    }
    distinct.push({ shape, closed: i < solids.length, count: 1, lost: [] })
    return distinct.length - 1
  })
  const model = own(reader.StepModel())
  const entities = new Places(own, model)
  const gone: number[] = []
  for (const ref of refs) {
    const made = transferred(oc, own, reader, entities.entity(ref))
    const body = made && distinct.find((d) => d.id === undefined && d.shape.IsPartner(made))
    if (!body) {
      if (!made) gone.push(ref.id)
      continue
    }
    body.id = ref.id
    if (subShapes(oc, own, made, 'TopAbs_FACE').length < ref.faces.length) {
      for (const face of ref.faces) if (!transferred(oc, own, reader, entities.entity(face))) body.lost.push(face.id)
    }
  }
  return {
    whole: whole.Oriented(whole.Orientation()),
    bodies: distinct.map(({ shape, closed, count, id, lost }) => ({
      shape: shape.Located(home, false),
      closed,
      count,
      id,
      lost,
    })),
    placed,
    ...(shells.length === 0
      ? placesOf(
          own,
          solids,
          placed.map((i) => distinct[i]!.shape),
        )
      : {}),
    lost: gone,
  }
}

function placesOf(
  own: Own,
  solids: readonly TopoDS_Shape[],
  distinct: readonly TopoDS_Shape[],
): Pick<StepShapes, 'places'> {
  const places: { at: Placement; shape: TopoDS_Shape }[] = []
  for (const [i, shape] of solids.entries()) {
    const t = own(own(shape.Location()).Transformation())
    const rigid = !t.IsNegative() && Math.abs(t.ScaleFactor() - 1) < 1e-12
    if (!rigid || shape.Orientation() !== distinct[i]!.Orientation()) {
      for (const done of places) done.shape.delete()
      return {}
    }
    const column = (k: number): Vec3 => [t.Value(1, k), t.Value(2, k), t.Value(3, k)]
    places.push({
      at: { columns: [column(1), column(2), column(3)], move: column(4) },
      shape: shape.Oriented(shape.Orientation()),
    })
  }
  return { places }
}

/** Shells that belong to no solid: surface models, and solids with faces missing. */
function looseShells(oc: Occt, own: Own, whole: TopoDS_Shape): TopoDS_Shape[] {
  const list: TopoDS_Shape[] = []
  const explorer = own(new oc.TopExp_Explorer(whole, 'TopAbs_SHELL', 'TopAbs_SOLID'))
  for (; explorer.More(); explorer.Next()) list.push(own(explorer.Current()))
  return list
}

type Entity = ReturnType<StepData_StepModel['Value']>

/** Finds a record's entity in the kernel's model, which keeps the file's order but for records it could not take. */
class Places {
  private readonly own: Own
  private readonly model: StepData_StepModel
  private byId: Map<number, number> | undefined

  constructor(own: Own, model: StepData_StepModel) {
    this.own = own
    this.model = model
  }

  entity(ref: StepRef): Entity | undefined {
    const { model, own } = this
    if (ref.place >= 1 && ref.place <= model.NbEntities()) {
      const there = own(model.Value(ref.place))
      if (model.IdentLabel(there) === ref.id) return there
    }
    this.byId ??= this.index()
    const place = this.byId.get(ref.id)
    return place === undefined ? undefined : own(model.Value(place))
  }

  private index(): Map<number, number> {
    const map = new Map<number, number>()
    for (let i = 1; i <= this.model.NbEntities(); i++) {
      const entity = this.model.Value(i)
      map.set(this.model.IdentLabel(entity), i)
      entity.delete()
    }
    return map
  }
}

/** The shape of one record; the kernel gives the one already made where the record was part of a root. */
function transferred(oc: Occt, own: Own, reader: STEPControl_Reader, entity: Entity | undefined) {
  if (!entity) return undefined
  const before = reader.NbShapes()
  if (!reader.TransferEntity(entity, own(new oc.Message_ProgressRange()))) return undefined
  const after = reader.NbShapes()
  return after > before ? own(reader.Shape(after)) : undefined
}
