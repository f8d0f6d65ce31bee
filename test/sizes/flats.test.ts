import { describe, expect, it } from 'vitest'
import { allMarks, iso } from './sized.ts'

const SHAFT = `turned axis left-right
  a ⌀20, 40 long
  b ⌀30, 20 long
  c ⌀20, 40 long
`

describe('flats across from each other', () => {
  // the size across is given once and nothing else is missing or said twice
  it.each([
    ['flats b, top and bottom: 24 across', '24 A/F'],
    // ASME Y14.5-2018 4.4.6 and ISO 129-1:2018, from memory: a square by its sign
    ['flats b: 4X 24 across', '□24'],
    ['flats b: □24', '□24'],
    ['flats b: 6X 28 across', '28 A/F'],
  ])('%s', (text, size) => {
    const s = iso(`${SHAFT}${text}\n`)
    expect(s.texts.filter((t) => /A\/F|□/.test(t))).toEqual([size])
    expect(s.sizes.proof).toMatchObject({ complete: true, missing: [], repeated: [] })
    expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
  })

  // the chamfer of a hexagon head shows at its circle, from its own end (common practice, no source)
  it.each([
    ['left', '  head ⌀50, 25 long\n  shank ⌀30, 40 long\n'],
    ['right', '  shank ⌀30, 40 long\n  head ⌀50, 25 long\n'],
  ])('a chamfered hexagon head at the %s', (side, steps) => {
    const s = iso(
      `turned axis left-right\n${steps}flats head: 6X 46 A/F\nchamfer head ${side} face outer edge: 1.5 × 45°\n`,
    )
    const chamfer = s.find('1.5 × 45°')
    expect(chamfer.view).toBe(side)
    expect(chamfer.measured).toMatchObject({
      kind: 'leader',
      targets: [{ kind: 'circle', radius: expect.closeTo(23.5, 6) }],
    })
    expect(s.sizes.proof).toMatchObject({ complete: true, missing: [], repeated: [] })
    expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
  })

  it('without the words the flats would stand anywhere about the axis', () => {
    const s = iso(`${SHAFT}flats b: 6X 28 across\n`)
    const unsaid = s.sizes.dimensions.find((d) => d.states?.some((x) => x.kind === 'flats alike'))!
    // five flats as far from the axis as the first, four of them turned
    expect(s.sizes.proof.conditions).toContainEqual({ kind: 'equally spaced', count: 4 })
    expect(unsaid.value).toBe(28)
  })
})
