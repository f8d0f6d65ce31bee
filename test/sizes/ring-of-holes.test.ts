import { describe, expect, it } from 'vitest'
import { prove } from '../../src/sizes/proof/prove.ts'
import { allMarks, sized as drawn, iso } from './sized.ts'

const TUBE = 'tube ⌀62 outside, ⌀45 inside, 40 long, axis left-right\n'
const ring = (n: number, callout: string) =>
  `${TUBE}holes outside, from top: ${n}X ${callout}\n  15 from left face, equally spaced\n`

const asme = (lines: string) =>
  drawn(`part Trial piece\nunits mm\npractice ASME\nmaterial carbon steel\ngeneral ISO 2768-m\n${lines}`)

describe('holes equally spaced round a tube', () => {
  // the number of places before the callout, equal spacing by its words (ASME Y14.5-2018 repetitive features, ISO 129-1:2018, from memory)
  it.each([
    ['ISO', 4, iso, '⌀6 THRU to bore', ['4× ⌀6 through to bore', 'equally spaced']],
    ['ISO', 3, iso, '⌀6 THRU', ['3× ⌀6 through one wall', 'equally spaced']],
    ['ISO', 6, iso, '⌀6 ↧ 4', ['6× ⌀6 ↧ 4', 'equally spaced']],
    ['ASME', 4, asme, '⌀6 THRU to bore', ['4X ⌀6 THRU TO BORE', 'EQL SP']],
    ['ASME', 5, asme, 'M6 - 6H ↧ 4, drill ⌀5 ↧ 5, flat bottom', ['5X M6 - 6H ↧ 4', 'EQL SP']],
    ['ASME', 3, asme, '⌀6 THRU, ⌴ ⌀10 ↧ 2', ['⌴ ⌀10 ↧ 2', 'EQL SP']],
  ] as const)('%s, %i of them: one callout and one place along the axis', (_, n, sized, callout, words) => {
    const s = sized(ring(n, callout))
    const note = s.texts.find((t) => t.includes('EQL SP') || t.includes('equally spaced'))!
    for (const word of words) expect(note).toContain(word)
    expect(note).not.toMatch(/centred|CENTERED/)
    expect(s.texts.filter((t) => t === '15')).toHaveLength(1)
    expect(s.sizes.proof).toMatchObject({ complete: true, missing: [], repeated: [] })
    expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
    // without either of them holes are loose
    const { dimensions } = s.sizes
    for (const { id } of [s.find('15'), s.find(note)]) {
      const rest = dimensions.filter((d) => d.id !== id)
      expect(rest).toHaveLength(dimensions.length - 1)
      expect(prove(s.part, rest).complete).toBe(false)
    }
    // and without the words those that stand at a slant
    const unsaid = dimensions.map((d) => ({ ...d, states: d.states?.filter((x) => x.kind !== 'ring') ?? [] }))
    expect(prove(s.part, unsaid).complete).toBe(n === 4)
  })

  it('shows in the view along the axis', () => {
    const s = iso(ring(6, '⌀6 THRU to bore'))
    expect(s.views.views.some((v) => v.kind === 'principal' && Math.abs(v.frame.toViewer[0]) > 1 - 1e-9)).toBe(true)
  })
})
