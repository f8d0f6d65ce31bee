import { bad, good, type Outcome } from '../../brief/outcome.ts'

/** A size between two located elements (faces, axes, planes), positive from `from` to `to`. */
export interface Located {
  readonly id: string
  readonly from: string
  readonly to: string
}

/** One size of a loop and the way it is walked: +1 along, −1 against its direction. */
export interface Step<T extends Located> {
  readonly size: T
  readonly direction: 1 | -1
}

/** The chain of sizes from one element to another. */
export interface Loop<T extends Located> {
  readonly steps: readonly Step<T>[]
  /** Another chain has as few links: the sizes close a ring, and one of them is over-stated. */
  readonly ambiguous: boolean
}

/**
 * Shortest chain of sizes between two elements by number of links (breadth first; sizes in the order given break ties).
 * Contacts between two parts are sizes of nominal zero. No chain: says what can be reached.
 */
export function findLoop<T extends Located>(sizes: readonly T[], from: string, to: string): Outcome<Loop<T>> {
  const around = new Map<string, Step<T>[]>()
  for (const size of sizes) {
    push(around, size.from, { size, direction: 1 })
    push(around, size.to, { size, direction: -1 })
  }
  for (const element of [from, to]) {
    if (element !== from || from !== to) {
      if (!around.has(element))
        return bad({ text: `No size leads to ${element}.`, expected: `a size that ends at ${element}` })
    }
  }
  if (from === to) return good({ steps: [], ambiguous: false })
  const came = new Map<string, { readonly step: Step<T>; readonly depth: number; ways: number }>()
  let front = [from]
  for (let depth = 1; front.length > 0 && !came.has(to); depth++) {
    const next: string[] = []
    for (const here of front) {
      const ways = came.get(here)?.ways ?? 1
      for (const step of around.get(here) ?? []) {
        const there = end(step)
        const known = came.get(there)
        if (there === from) continue
        if (known) {
          if (known.depth === depth) known.ways += ways
          continue
        }
        came.set(there, { step, depth, ways })
        next.push(there)
      }
    }
    front = next
  }
  const last = came.get(to)
  if (!last) {
    const reached = [from, ...came.keys()]
    return bad({
      text: `No chain of sizes joins ${from} to ${to}.`,
      expected: `a size from one of ${reached.join(', ')} towards ${to}`,
    })
  }
  const steps: Step<T>[] = []
  for (let here = to; here !== from; ) {
    const { step } = came.get(here)!
    steps.unshift(step)
    here = step.direction === 1 ? step.size.from : step.size.to
  }
  return good({ steps, ambiguous: last.ways > 1 })
}

function end<T extends Located>(step: Step<T>): string {
  return step.direction === 1 ? step.size.to : step.size.from
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key)
  if (list) list.push(value)
  else map.set(key, [value])
}
