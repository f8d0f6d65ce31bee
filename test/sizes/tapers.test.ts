import { describe, expect, it } from 'vitest'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { iso } from './sized.ts'

// ISO 3040:2009 (from memory): a cone is fixed by two of its diameters, its length and its angle; a diameter where it
// runs out into a cylinder is that cylinder's and stands once.
describe('a taper beside a step of the same diameter', () => {
  it.each([
    ['falling from it', 'body ⌀24 h6, 60 long\n  taper ⌀24 tapered to ⌀18, 30 long', ['⌀24 h6', '⌀18']],
    ['rising to it', 'nose ⌀18 tapered to ⌀24, 20 long\n  body ⌀24 h6, 60 long', ['⌀24 h6', '⌀18']],
    [
      'between two',
      'body ⌀24 h6, 60 long\n  taper ⌀24 tapered to ⌀18, 30 long\n  tail ⌀18, 20 long',
      ['⌀24 h6', '⌀18'],
    ],
  ])('%s is sized by their diameters, each once', (_, steps, diameters) => {
    const s = iso(`turned axis left-right\n  ${steps}\n`)
    expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
    expect(rankOf(s.part.body, makingOf(s.part), s.sizes.dimensions)).toMatchObject({ missing: 0, repeated: 0 })
    expect(s.texts.filter((t) => t.startsWith('⌀')).sort()).toEqual(diameters.sort())
  })
})
