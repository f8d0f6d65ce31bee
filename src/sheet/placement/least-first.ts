/**
 * The options by their own cost, least first; equal ones stay in order. A pattern of holes has tens of thousands of
 * options with a few hundred costs: the costs are sorted, not the options.
 */
export function leastFirst<T extends { readonly own: number }>(options: readonly T[]): T[] {
  const byCost = new Map<number, T[]>()
  for (const option of options) {
    const equal = byCost.get(option.own)
    if (equal) equal.push(option)
    else byCost.set(option.own, [option])
  }
  const costs = Float64Array.from(byCost.keys()).sort()
  const out: T[] = []
  for (const cost of costs) for (const option of byCost.get(cost)!) out.push(option)
  return out
}
