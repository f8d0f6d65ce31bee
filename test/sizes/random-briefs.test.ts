import { describe, expect, it } from 'vitest'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { kinds, numbers } from './random-briefs.ts'
import { iso } from './sized.ts'

const RUNS = 24

/*
 * Briefs that say all that the language asks for are complete, and no size of theirs can be left out or given twice:
 * held against the rank of the whole constraint Jacobian from its singular values, an independent method. Briefs whose
 * random numbers do not fit each other (a hole off the part) are marked and counted out.
 */
describe.each(Object.entries(kinds))('random briefs of a %s', (kind, make) => {
  it('are complete, not over-stated, and miss every size', () => {
    let fitting = 0
    for (let seed = 1; seed <= RUNS; seed++) {
      const text = make(numbers(seed * 7919 + kind.length * 104729))
      const { part, views, sizes } = iso(text)
      if ([...part.brief.marks, ...part.marks].some((m) => m.weight === 'must change')) continue
      fitting++
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
    expect(fitting).toBeGreaterThan(RUNS / 2)
  })
})
