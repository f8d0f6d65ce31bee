import type { ChosenSize } from '../../part/part.ts'

type Narrow<C, K> = C extends { readonly kind: infer J }
  ? K & J extends never
    ? never
    : C & { readonly kind: K & J }
  : never

/** A chosen size of one kind; several kinds share a member of the union. */
export type Chosen<K extends ChosenSize['kind']> = Narrow<ChosenSize, K>

export function isKind<K extends ChosenSize['kind']>(chosen: ChosenSize, kind: K): chosen is ChosenSize & Chosen<K> {
  return chosen.kind === kind
}

/** The first of the kind in a list. */
export function oneOf<K extends ChosenSize['kind']>(list: readonly ChosenSize[], kind: K): Chosen<K> | undefined {
  return list.find((c): c is ChosenSize & Chosen<K> => c.kind === kind)
}
