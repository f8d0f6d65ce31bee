import { describe, expect, it } from 'vitest'
import { prove } from '../../src/sizes/proof/prove.ts'
import { allMarks, iso } from './sized.ts'

describe('a keyseat that ends at a shoulder', () => {
  it.each([
    ['left', '  head ⌀40, 10 long\n  body ⌀20, 50 long\n', 'left end at head right face'],
    ['right', '  body ⌀20, 50 long\n  head ⌀40, 10 long\n', 'right end at head left face'],
  ])('at its %s end: its length from there is all it needs along the shaft', (_, steps, place) => {
    const s = iso(`turned axis left-right\n${steps}keyseat body, top: 6 wide × 3.5 deep × 22 long\n  ${place}\n`)
    expect(s.sizes.proof).toMatchObject({ complete: true, missing: [], repeated: [] })
    expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
    const length = s.find('22')
    const rest = s.sizes.dimensions.filter((d) => d.id !== length.id)
    expect(prove(s.part, rest).complete).toBe(false)
  })

  it('clear of the shoulder it needs its place too', () => {
    const s = iso(
      'turned axis left-right\n  head ⌀40, 10 long\n  body ⌀20, 50 long\nkeyseat body, top: 6 wide × 3.5 deep × 22 long\n  left end 4 from head right face\n',
    )
    expect(s.sizes.proof.complete).toBe(true)
    const rest = s.sizes.dimensions.filter((d) => d.id !== s.find('4').id)
    expect(prove(s.part, rest).complete).toBe(false)
  })
})
