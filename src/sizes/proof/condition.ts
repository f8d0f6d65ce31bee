import type { Values } from './model.ts'

/** One condition on the unknowns. A `size` comes from a number on the sheet, the rest are counted as implied. */
export interface Equation {
  readonly uses: readonly number[]
  readonly of: (x: Values) => number
  /** Set where the equation is exactly one unknown less another, or one unknown alone. */
  readonly pair?: readonly [number, number | undefined]
  readonly kind:
    | 'size'
    | 'tangent'
    | 'full round'
    | 'equal'
    | 'equally spaced'
    | 'centred'
    | 'aligned'
    | 'by custom'
    | 'parallel'
  readonly dimension?: string
}

export type Plain = Omit<Equation, 'dimension'>

export const distinct = (list: readonly number[]): number[] => [...new Set(list)]

export function single(unknown: number, kind: Equation['kind']): Plain {
  return { uses: [unknown], of: (x) => x[unknown]!, kind, pair: [unknown, undefined] }
}

/** The first carries the number; the others are as the first. */
export function asFirst(first: Omit<Plain, 'kind'>, own: Omit<Plain, 'kind'>, isFirst: boolean): Plain {
  if (isFirst) return { ...own, kind: 'size' }
  // Lengths may run the other way on the mirrored copy; only their sizes are alike.
  return {
    uses: distinct([...first.uses, ...own.uses]),
    of: (x) => Math.abs(own.of(x)) - Math.abs(first.of(x)),
    kind: 'equal',
  }
}
