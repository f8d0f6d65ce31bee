/** The same function, worked out once for each value that it is asked about. For pure functions of immutable values. */
export function once<K extends object, V>(work: (of: K) => V): (of: K) => V {
  const known = new WeakMap<K, { readonly value: V }>()
  return (of) => {
    const found = known.get(of)
    if (found) return found.value
    const value = work(of)
    known.set(of, { value })
    return value
  }
}
