/** Anything the kernel hands out and that must be given back. */
interface Owned {
  delete(): void
  /** References to shapes have it. */
  Nullify?(): unknown
}

/** Gives an object back. A reference to a shape lets go of it first: freed alone it would keep the shape for ever. */
export function release(object: Owned): void {
  object.Nullify?.()
  object.delete()
}

/** Puts an object under the scope's ownership and returns it. */
export type Own = <T extends Owned>(object: T) => T

/**
 * Runs `work` with an owner of kernel objects and frees all of them, last first, when it ends or throws.
 * What must outlive the scope is simply not owned.
 */
export function scoped<R>(work: (own: Own) => R): R {
  const objects: Owned[] = []
  try {
    return work((object) => {
      objects.push(object)
      return object
    })
  } finally {
    for (let i = objects.length - 1; i >= 0; i--) release(objects[i]!)
  }
}
