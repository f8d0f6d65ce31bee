/** The value of `make`, made at the first call and kept. */
export function once<T>(make: () => T): () => T {
  let value: T | undefined
  return () => (value ??= make())
}
