import { describe, expect, it } from 'vitest'
import { asme, iso, type Sized } from './sized.ts'

const ROW =
  '15, 15; 72.5, 15; 130, 15; 187.5, 15; 245, 15; 245, 65; 245, 115; 245, 165; 187.5, 165; 130, 165; 72.5, 165'
const FOURTEEN = `${ROW}; 15, 165; 15, 115; 15, 65; from left and front`

const tags = ({ sizes }: Sized) => sizes.tables.flatMap((t) => t.rows.map((r) => r.tag))
const inScheme = ({ sizes }: Sized, way: string) =>
  sizes.dimensions.filter((d) => d.group && d.direction === way).map((d) => d.value)

/**
 * A hole table holds what has coordinates; a bolt circle's diameter and angle, and a bore, are shown where they are (ASME
 * Y14.5-2018 4.4 tabular dimensioning and 4.5 polar coordinates, from memory). Its letters are those that the
 * drawing's notes and frames speak by (common practice, no source).
 */
describe('a hole table', () => {
  it('leaves a bolt circle and the bore that it is about at the view', () => {
    const s = iso(`plate     260 × 180 × 18
holes A   top: 14X ⌀9 THRU
          at ${FOURTEEN}
hole C    top: ⌀40 H8 THRU
          90 from left; centred up
holes B   top: 4X M5 THRU
          on ⌀56 bolt circle, equal, first at 45°, about hole C
`)
    expect(new Set(tags(s).map((t) => t[0]))).toEqual(new Set(['A']))
    expect(s.texts).toEqual(expect.arrayContaining(['⌀56', '45°', '90', '⌀40 H8, centred', '4× M5']))
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('places slots whose axes stand level with those of the rounded corners by chance', () => {
    const s = asme(`plate     7.00 × 6.00 × .375
round     corners: 4X R.50
slots     top: 2X .344 × 1.25 overall THRU, long way left-right
          5.000 apart, centred; .50 from front
holes C   top: 4X ⌀.190 THRU
          2 across 6.250 apart, centred; 2 up 1.500 apart, lowest 1.25 from front
sizes     hole table
`)
    expect(s.sizes.marks.map((m) => m.text)).toEqual([])
    expect(s.sizes.proof).toMatchObject({ complete: true, missing: [], repeated: [] })
  })

  it('has the labels of the brief for tags, and letters that no label has for what has none', () => {
    const s = iso(`plate     260 × 180 × 10
holes B   top: 2X ⌀9 THRU
          at 15, 15; 72, 30; from left and front
hole      top: ⌀6 THRU
          100 from left; 40 from front
holes A   top: 2X ⌀9 THRU
          at 130, 55; 150, 70; from left and front
hole      top: ⌀5 THRU
          200 from left; 85 from front
hole P2   top: ⌀7 THRU
          220 from left; 100 from front
sizes hole table
`)
    expect(tags(s)).toEqual(['B1', 'B2', 'C1', 'A1', 'A2', 'D1', 'P2.1'])
    expect(s.sizes.tables[0]!.rows.map((r) => r.feature)).toEqual(
      expect.arrayContaining(['hole A', 'hole B', 'hole P2']),
    )
  })

  it('works its coordinates out with the decimals of the sizes that place them', () => {
    const s = asme(`plate     8.00 × 5.00 × .50
holes A   top: 4X ⌀.281 THRU
          2 across 5.000 apart, centred; 2 up 2.500 apart, lowest 1.25 from front
sizes hole table
`)
    expect(s.sizes.tables[0]!.rows.map((r) => [r.x, r.y])).toEqual([
      ['1.500', '1.25'],
      ['6.500', '1.25'],
      ['1.500', '3.750'],
      ['6.500', '3.750'],
    ])
  })
})

describe('a scheme that the brief asks for', () => {
  const plate = `plate     260 × 180 × 10
holes A   top: 14X ⌀9 THRU
          at ${FOURTEEN}
`
  it.each(['sizes baseline of holes A', 'sizes baseline', 'sizes ordinate', 'sizes ordinate of holes A'])(
    '%s holds at any count, and no hole table stands in for it',
    (scheme) => {
      const s = iso(`${plate}${scheme}\n`)
      const zero = scheme.includes('ordinate') ? [0] : []
      const whole = scheme.includes('of') ? [[], []] : [[260], [180]]
      expect(s.sizes.tables).toEqual([])
      expect(inScheme(s, 'left-right')).toEqual([...zero, 15, 72.5, 130, 187.5, 245, ...whole[0]!])
      expect(inScheme(s, 'front-rear')).toEqual([...zero, 15, 65, 115, 165, ...whole[1]!])
      expect(s.sizes.proof.complete).toBe(true)
      expect(s.sizes.marks.filter((m) => m.rule === 'scheme-left-out')).toEqual([])
    },
  )

  it('counts every place of the part from one face each way, the thickness too', () => {
    const s = asme(`plate     9.00 × 6.00 × .75
holes A   top: 2X ⌀.500 THRU
          at .750, .750; 2.125, 1.500; from left and front
hole B    top: ⌀.375 THRU
          7.500 from left; .750 from front
step      top right: .50 from right, .25 from top
sizes     ordinate
`)
    const inch = (way: string) => inScheme(s, way).map((mm) => Number((mm / 25.4).toFixed(4)))
    expect(inch('left-right').sort((a, b) => a - b)).toEqual([0, 0, 0.75, 2.125, 7.5, 8.5, 9])
    expect(inch('front-rear')).toEqual([0, 0.75, 1.5, 6])
    expect(inch('up-down')).toEqual([0, 0.25, 0.75])
    for (const view of ['top', 'front'])
      for (const way of ['left-right', 'front-rear', 'up-down'])
        expect(
          s.sizes.dimensions.filter((d) => d.view === view && d.direction === way && d.group && d.value === 0).length,
        ).toBeLessThan(2)
    expect(s.sizes.proof.complete).toBe(true)
  })
})
