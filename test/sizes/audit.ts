import { expect } from 'vitest'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import type { Sized } from './sized.ts'

/**
 * The sizes are complete and none is over-stated; without each one of them something is found missing, with a size to
 * write, and with each one twice it is found repeated: held against the rank of the whole constraint Jacobian from its
 * singular values, an independent method.
 */
export function auditSizes({ part, views, sizes }: Sized, text: string): void {
  expect({ text, missing: sizes.proof.missing, repeated: sizes.proof.repeated }).toEqual({
    text,
    missing: [],
    repeated: [],
  })
  const chosen = part.chosen.find((c) => c.kind === 'thickness')
  const noted = views.thicknessNote && chosen?.kind === 'thickness'
  const at = (id: string) => ({ at: part.data.find((d) => d.id === id)!.point, name: id })
  const notes = noted
    ? [
        {
          id: 'note',
          text: views.thicknessNote!,
          states: [
            { kind: 'distance' as const, direction: chosen.direction, from: at(chosen.from), to: at(chosen.to) },
          ],
        },
      ]
    : []
  const all = [...sizes.dimensions, ...notes.map((n) => ({ ...n, reference: false }))]
  expect(rankOf(part.body, makingOf(part), all), text).toMatchObject({ missing: 0, repeated: 0 })
  for (const one of sizes.dimensions) {
    if (one.reference || !one.states?.length) continue
    const less = prove(
      part,
      sizes.dimensions.filter((d) => d !== one),
      { views, notes },
    )
    expect(less.missing.length, `${text}without ${one.id}`).toBeGreaterThan(0)
    for (const m of less.missing) expect(m.write, `${text}without ${one.id}: ${m.text}`).toMatch(/\d/)
    const more = prove(part, [...sizes.dimensions, { ...one, id: 'again' }], { notes })
    expect(more.repeated.length, `${text}with ${one.id} twice`).toBeGreaterThan(0)
  }
}
