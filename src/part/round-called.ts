import { bothCalled } from './find-name.ts'
import type { RoundCut, Workshop } from './workshop.ts'

/** Of these holes the ones that a name in plain words means: by label or number, as the one said to be a bore, or alone. */
export function roundsCalled(shop: Workshop, text: string, cuts: readonly RoundCut[]): readonly RoundCut[] {
  const called = cuts.filter((c) => bothCalled(text).includes(c.name.toLowerCase()))
  const said = cuts.filter((c) => text === 'bore' && shop.saidBores.has(c.feature))
  const alone = cuts.length === 1 && /^(hole|bore)$/.test(text) ? cuts : []
  return [called, said, alone].find((list) => list.length > 0) ?? []
}
