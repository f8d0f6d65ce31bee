import type { Occt } from './occt.ts'

/**
 * In the compiled kernel `delete()` calls, for most classes, a destructor without a body: nothing is ever given back.
 * This starts the kernel and puts working destructors in their place in its table of functions. A class with virtual
 * functions is destroyed by its own deleting destructor, which the C++ binary interface keeps second in the table that
 * each object begins with (Itanium C++ ABI, section 2.5.2). Of any other class the object's own memory is freed; what
 * such an object refers to is let go beforehand where it can be (`release`).
 *
 * Every object that the kernel hands out is either a counted reference, which has a working destructor, or a copy of
 * its own, so that nothing is freed twice.
 */
export function startedWithDestructors(start: () => Promise<Occt>): Promise<Occt> {
  // one after another: each start watches over the loading of all WebAssembly
  const started = before.then(() => watchedStart(start))
  before = started.catch(() => {})
  return started
}

let before: Promise<unknown> = Promise.resolve()

async function watchedStart(start: () => Promise<Occt>): Promise<Occt> {
  const classes: { readonly name: number; readonly destructor: number }[] = []
  let exports: WebAssembly.Exports | undefined
  /** True for the kernel's imports, which from then on are listened to. */
  const watched = (imports: WebAssembly.Imports | undefined): boolean => {
    // the only import with so many parameters tells of a class: the eleventh is its name, the last its destructor
    for (const group of Object.values(imports ?? {})) {
      for (const [key, value] of Object.entries(group)) {
        if (typeof value !== 'function' || value.length !== CLASS_PARAMETERS) continue
        group[key] = (...told: number[]) => {
          classes.push({ name: told[10]! >>> 0, destructor: told[12]! >>> 0 })
          return (value as (...told: number[]) => void)(...told)
        }
        return true
      }
    }
    return false
  }
  const { instantiate, instantiateStreaming } = WebAssembly
  // the kernel's loader keeps its instance to itself; whatever else is loaded meanwhile passes untouched
  WebAssembly.instantiate = (async (source: BufferSource, imports?: WebAssembly.Imports) => {
    const kernel = watched(imports)
    const made = await instantiate(source, imports)
    if (kernel) exports = made.instance.exports
    return made
  }) as typeof instantiate
  WebAssembly.instantiateStreaming = async (source, imports) => {
    const kernel = watched(imports)
    const made = await instantiateStreaming(source, imports)
    if (kernel) exports = made.instance.exports
    return made
  }
  try {
    const oc = await start()
    if (exports) putDestructors(oc, exports, classes)
    return oc
  } finally {
    Object.assign(WebAssembly, { instantiate, instantiateStreaming })
  }
}

const CLASS_PARAMETERS = 13

/** Builders of shapes: all have virtual functions. */
const VIRTUAL = /^BRep(?:AlgoAPI|BuilderAPI|FilletAPI|PrimAPI)_/

/** Plain values, and references to shapes and places. */
const PLAIN = /^(?:gp_\w+|TopoDS_\w+|TopLoc_Location|Bnd_Box|GProp_GProps)$/

function putDestructors(
  oc: Occt,
  exports: WebAssembly.Exports,
  classes: readonly { readonly name: number; readonly destructor: number }[],
): void {
  const table = Object.values(exports).find((value) => value instanceof WebAssembly.Table)
  if (!table) return
  const bytes = new Uint8Array(oc.wasmMemory.buffer)
  const textAt = (from: number) => String.fromCharCode(...bytes.subarray(from, bytes.indexOf(0, from)))
  const named = classes.map(({ name, destructor }) => ({ name: textAt(name), destructor }))
  const idle = named.find(({ name }) => name === 'gp_Pnt')
  if (!idle) return
  const empty = table.get(idle.destructor) as unknown
  const kernel = { table, memory: oc.wasmMemory }
  const { destroy } = new WebAssembly.Instance(new WebAssembly.Module(DESTROY), { kernel }).exports
  const free = (oc as unknown as { ___libc_free: (at: number) => void }).___libc_free
  // decided before any is put: classes share the empty function
  const found = named.filter(({ destructor }) => table.get(destructor) === empty)
  for (const { name, destructor } of found) {
    if (VIRTUAL.test(name)) table.set(destructor, destroy)
    else if (PLAIN.test(name)) table.set(destructor, free)
  }
}

/**
 * (module
 *   (type $take (func (param i32)))
 *   (import "kernel" "table" (table 0 funcref))
 *   (import "kernel" "memory" (memory 0))
 *   (func (export "destroy") (param $object i32)
 *     local.get $object
 *     local.get $object i32.load i32.load offset=4
 *     call_indirect (type $take)))
 */
const DESTROY = Uint8Array.from(
  [
    '0061736d 01000000', // WebAssembly, version 1
    '01 05 01 60 017f 00', // types
    '02 23 02 06 6b65726e656c 05 7461626c65 01 70 0000 06 6b65726e656c 06 6d656d6f7279 02 0000', // imports
    '03 02 01 00', // functions
    '07 0b 01 07 64657374726f79 0000', // exports
    '0a 11 01 0f 00 2000 2000 280200 280204 110000 0b', // code
  ]
    .join(' ')
    .match(/[0-9a-f]{2}/g)!
    .map((pair) => Number.parseInt(pair, 16)),
)
