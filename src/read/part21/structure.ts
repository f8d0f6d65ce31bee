import type { StepBodyRef } from '../../kernel/step-model.ts'
import type { Entity, Records, Value } from './records.ts'

/** What the records of a STEP file say about its bodies. */
export interface Structure {
  readonly bodies: readonly StepBodyRef[]
  /** Name of the product that a body's record belongs to; absent where the file names none. */
  readonly productOf: (body: number) => string | undefined
  /** The product that no other one contains: the assembly's name, or the part's. */
  readonly root: string | undefined
  /** Unit of length that the file was written in. */
  readonly unit: 'inch' | 'mm'
  /** A record in words for a message: `#65 ADVANCED_FACE “top” on PLANE #80`. */
  readonly describe: (id: number) => string
}

/** Kinds of records that a body starts from (ISO 10303-42). */
const BODY_KINDS = ['MANIFOLD_SOLID_BREP', 'BREP_WITH_VOIDS', 'FACETED_BREP', 'SHELL_BASED_SURFACE_MODEL'] as const

const SHELL_KINDS = ['CLOSED_SHELL', 'OPEN_SHELL', 'ORIENTED_CLOSED_SHELL', 'ORIENTED_OPEN_SHELL']

export function structureOf(records: Records): Structure {
  const bodies = BODY_KINDS.flatMap((kind) => records.named(kind))
    .sort((a, b) => records.placeOf(a) - records.placeOf(b))
    .map(
      (id): StepBodyRef => ({
        id,
        place: records.placeOf(id),
        faces: facesOf(records, id).map((face) => ({ id: face, place: records.placeOf(face) })),
      }),
    )
  const products = productsByBody(records)
  return {
    bodies,
    productOf: (body) => products.get(body),
    root: rootProduct(records),
    unit: unitOf(records),
    describe: (id) => describe(records, id),
  }
}

const refOf = (value: Value): number | undefined =>
  typeof value === 'object' && 'ref' in value ? value.ref : undefined

const refsOf = (value: Value): number[] => (Array.isArray(value) ? value.flatMap((v: Value) => refOf(v) ?? []) : [])

const entity = (records: Records, id: number | undefined, name: string): Entity | undefined =>
  id === undefined ? undefined : records.entities(id).find((e) => e.name === name)

const isText = (value: Value): value is string => typeof value === 'string' && value.trim() !== ''

function facesOf(records: Records, body: number): number[] {
  const faces: number[] = []
  const shells = new Set<number>()
  const visit = (id: number) => {
    if (shells.has(id)) return
    shells.add(id)
    for (const { name, args } of records.entities(id)) {
      const isShell = SHELL_KINDS.includes(name)
      for (const ref of args.flatMap((arg) => refOf(arg) ?? refsOf(arg))) {
        const names = records.entities(ref).map((e) => e.name)
        if (names.some((n) => SHELL_KINDS.includes(n))) visit(ref)
        else if (isShell) faces.push(ref)
      }
    }
  }
  visit(body)
  return faces
}

/**
 * A body stands in a shape representation; that (or one tied to it) is the shape of a product definition, whose
 * formation belongs to the product.
 */
function productsByBody(records: Records): Map<number, string> {
  const productOfShape = new Map<number, string>()
  for (const id of records.named('SHAPE_DEFINITION_REPRESENTATION')) {
    const [definition, shape] = entity(records, id, 'SHAPE_DEFINITION_REPRESENTATION')!.args.map(refOf)
    const product = productOf(records, refOf(entity(records, definition, 'PRODUCT_DEFINITION_SHAPE')?.args[2]))
    if (shape !== undefined && product) productOfShape.set(shape, product)
  }
  // representations of one product: its axes and its solid may be kept apart
  const tied = new Map<number, number[]>()
  for (const id of records.named('SHAPE_REPRESENTATION_RELATIONSHIP')) {
    const entities = records.entities(id)
    if (entities.some((e) => e.name === 'REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION')) continue
    const said = entities.find((e) => e.args.length >= 4)
    const [a, b] = [refOf(said?.args[2]), refOf(said?.args[3])]
    if (a === undefined || b === undefined) continue
    tied.set(a, [...(tied.get(a) ?? []), b])
    tied.set(b, [...(tied.get(b) ?? []), a])
  }
  const found = new Map<number, string>()
  for (const [shape, product] of productOfShape) {
    for (const id of [shape, ...(tied.get(shape) ?? []).filter((other) => !productOfShape.has(other))]) {
      const items = records.entities(id).flatMap((e) => e.args.flatMap(refsOf))
      for (const item of items) if (!found.has(item)) found.set(item, product)
    }
  }
  return found
}

function productOf(records: Records, definition: number | undefined): string | undefined {
  const formation = refOf(records.entities(definition ?? 0)[0]?.args[2])
  const product = entity(records, refOf(records.entities(formation ?? 0)[0]?.args[2]), 'PRODUCT')
  return product && [product.args[1], product.args[0]].find(isText)?.trim()
}

function rootProduct(records: Records): string | undefined {
  const used = new Set(
    records
      .named('NEXT_ASSEMBLY_USAGE_OCCURRENCE')
      .flatMap((id) => refOf(entity(records, id, 'NEXT_ASSEMBLY_USAGE_OCCURRENCE')?.args[4]) ?? []),
  )
  const definitions = ['PRODUCT_DEFINITION', 'PRODUCT_DEFINITION_WITH_ASSOCIATED_DOCUMENTS'].flatMap((name) =>
    records.named(name),
  )
  return definitions.filter((id) => !used.has(id)).flatMap((id) => productOf(records, id) ?? [])[0]
}

/** Inch where the lengths of most contexts are in inches (or another part of a foot); millimetres otherwise. */
function unitOf(records: Records): 'inch' | 'mm' {
  let [inch, metric] = [0, 0]
  for (const context of records.named('GLOBAL_UNIT_ASSIGNED_CONTEXT')) {
    const units = refsOf(entity(records, context, 'GLOBAL_UNIT_ASSIGNED_CONTEXT')?.args[0])
    const length = units.map((id) => records.entities(id)).find((e) => e.some((one) => one.name === 'LENGTH_UNIT'))
    const named = length?.find((e) => e.name === 'CONVERSION_BASED_UNIT')?.args[0]
    if (typeof named === 'string' && /inch|foot|feet|^in$|^ft$|mil|yard/i.test(named) && !/milli/i.test(named)) inch++
    else if (length) metric++
  }
  return inch > metric ? 'inch' : 'mm'
}

function describe(records: Records, id: number): string {
  const [own] = records.entities(id)
  if (!own) return `#${id}, which is not in the file`
  const name = isText(own.args[0]) ? ` “${own.args[0].trim()}”` : ''
  const head = `#${id} ${own.name}${name}`
  if (!/FACE/.test(own.name)) return head
  const surface = refOf(own.args[2])
  if (surface === undefined) return head
  const [kind] = records.entities(surface)
  return `${head} on ${kind ? `${kind.name} #${surface}` : `#${surface}, which cannot be read`}`
}
