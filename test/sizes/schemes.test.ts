import { describe, expect, it } from 'vitest'
import { asme, iso } from './sized.ts'

const plate = (more: string) => `plate 120 × 80 × 12\n${more}`
const ROW = `holes A top: 4X ⌀6.6 THRU
  4 across 25 apart, leftmost 20 from left; 15 from front
`

describe('baseline, chain and ordinate', () => {
  it('gives a pitch once for a row when nothing else is asked', () => {
    const s = iso(plate(ROW))
    expect(s.texts).toContain('3× 25')
    expect(s.sizes.proof.complete).toBe(true)
  })

  // Rule: in baseline each hole is one tolerance from the datum, in chain they add up; ASME Y14.5-2018 "tolerance
  // accumulation" (chain greatest, baseline less, direct least), from memory; own numbers.
  it('baseline: each hole from one datum', () => {
    const s = iso(plate(`${ROW}sizes baseline of holes A\n`))
    expect(s.texts).toEqual(expect.arrayContaining(['20', '45', '70', '95']))
    const set = s.sizes.dimensions.filter((d) => d.group?.scheme === 'baseline' && d.direction === 'left-right')
    expect(set.map((d) => d.value)).toEqual([20, 45, 70, 95])
    const from = set.map((d) => (d.states![0]!.kind === 'distance' ? d.states![0]!.from.at[0] : Number.NaN))
    expect(new Set(from)).toEqual(new Set([0]))
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('chain: neighbour to neighbour, so that the far hole gathers every tolerance between', () => {
    const s = iso(plate(`${ROW}sizes chain of holes A\n`))
    const set = s.sizes.dimensions.filter((d) => d.group?.scheme === 'chain' && d.direction === 'left-right')
    expect(set.map((d) => d.value).sort((a, b) => a - b)).toEqual([20, 25, 25, 25])
    expect(new Set(set.map((d) => d.group!.id)).size).toBe(1)
    expect(s.sizes.proof.complete).toBe(true)
    // ISO 2768-m: ±0.2 to 30 mm, ±0.3 to 120 mm. Chain to the far hole 4 × ±0.2, baseline ±0.3 (from memory).
    const chain = set.reduce((sum, d) => sum + d.tolerance!.upper, 0)
    const base = iso(plate(`${ROW}sizes baseline of holes A\n`)).find('95').tolerance!.upper
    expect(chain).toBeCloseTo(0.8, 9)
    expect(base).toBeCloseTo(0.3, 9)
  })

  it('ordinate: running sizes from a datum that reads 0, arrowless', () => {
    const s = iso(plate(`${ROW}sizes ordinate\n`))
    const set = s.sizes.dimensions.filter((d) => d.measured.kind === 'ordinate' && d.direction === 'left-right')
    expect(set.map((d) => d.value)).toEqual([0, 20, 45, 70, 95, 120])
    for (const d of set) {
      if (d.measured.kind !== 'ordinate') continue
      const { datum, point, along } = d.measured
      expect((point[0] - datum[0]) * along[0] + (point[1] - datum[1]) * along[1]).toBeCloseTo(d.value, 6)
    }
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('says which features there are when a scheme names none of them', () => {
    const s = iso(plate(`${ROW}sizes baseline of holes Z\n`))
    expect(s.sizes.marks.find((m) => m.rule === 'unknown-name')!.expected).toBe('hole A')
  })
})

// Rule: a slot by width and overall length, or by width and centre distance, ends R without a value (ASME Y14.5-2018,
// slotted holes, from memory); own numbers.
describe('slots', () => {
  it('overall: one note; centre to centre: along the axis, the ends as R', () => {
    const overall = iso(plate('slot top: 8 × 30 overall THRU, long way left-right\n  60 from left; 40 from front\n'))
    expect(overall.texts).toContain('8 × 30, 2× R')
    const centres = iso(plate('slot top: 8 × 22 centres THRU, long way left-right\n  60 from left; 40 from front\n'))
    expect(centres.texts).toEqual(expect.arrayContaining(['8', '22', '2× R']))
    for (const s of [overall, centres]) expect(s.sizes.proof.complete).toBe(true)
    expect(overall.sizes.proof.freedoms).toBe(centres.sizes.proof.freedoms)
  })
})

// Rule: equally spaced holes on a circle by its diameter, count and one hole's place, instead of two coordinates each
// (ASME Y14.5-2018, location of features, from memory); own numbers.
describe('bolt circle, polar against coordinates', () => {
  const disc = (holes: string) => `disc ⌀100 × 10, outer face front\n${holes}`
  it('polar: one diameter and one hole note', () => {
    const s = asme(
      disc("holes front: 5X ⌀9 THRU\n  on ⌀70 bolt circle, equal, one at 12 o'clock\n")
        .replace('⌀100 × 10', '⌀4.00 × .50')
        .replace('⌀9', '⌀.281')
        .replace('⌀70', '⌀3.000'),
    )
    expect(s.texts).toEqual(['⌀4.00', '.50', '⌀3.000', '5X ⌀.281 THRU, EQL SP'])
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('needs an angle where no hole stands on a centre line', () => {
    const s = iso(disc('holes front: 5X ⌀9 THRU\n  on ⌀70 bolt circle, equal, first at 20°\n'))
    expect(s.texts).toContain('20°')
    expect(s.find('20°').measured).toMatchObject({ kind: 'angle' })
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('coordinates: two numbers a hole, as many as it has freedoms', () => {
    const s = iso(plate('holes top: 3X ⌀9 THRU\n  at 20, 20; 50, 30; 90, 60; from left and front\n'))
    const placed = s.sizes.dimensions.filter((d) => d.feature === 'hole 1' && d.measured.kind === 'linear')
    expect(placed).toHaveLength(6)
    expect(s.sizes.proof.complete).toBe(true)
  })
})

describe('a centred hole in a hole table', () => {
  it('is located by the word alone; the digits are for reading only (each size once: ASME Y14.5-2018 4.1, from memory)', () => {
    const s = iso(`plate 120 × 80 × 10
hole A    top: ⌀30 THRU
          centred both ways
hole B    top: ⌀8 THRU
          20 from left; centred up
sizes hole table
`)
    const [table] = s.sizes.tables
    expect(table!.rows.map((r) => [r.tag, r.x, r.y])).toEqual([['B1', '20', '(40)']])
    expect(s.sizes.proof.complete).toBe(true)
    const centred = table!.rows.flatMap((r) => (r.states ?? []).filter((x) => x.kind === 'centred'))
    expect(centred).toHaveLength(1)
    // one without a coordinate in numbers has nothing for the table
    expect(s.texts).toContain('⌀30, centred both ways')
  })
})

describe('hole table', () => {
  const many = Array.from({ length: 13 }, (_, i) => `${8 + 8 * i}, ${10 + 4.5 * i}`).join('; ')
  it('stands in for locations above twelve holes each placed by itself, with letter tags', () => {
    const s = iso(
      plate(
        `holes A top: 13X ⌀5 THRU\n  at ${many}; from left and front\nhole B top: ⌀10 THRU\n  100.0 from left; 15 from front\n`,
      ),
    )
    const [table] = s.sizes.tables
    expect(table!.rows.map((r) => r.tag)).toEqual([...Array.from({ length: 13 }, (_, i) => `A${i + 1}`), 'B1'])
    expect(table!.rows[1]).toMatchObject({ x: '16', y: '14.5' })
    // Digits stand as typed in the table too.
    expect(table!.rows[13]).toMatchObject({ x: '100.0', y: '15' })
    expect(s.sizes.dimensions.some((d) => d.feature === 'hole A')).toBe(false)
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('stands where asked for, and not for a row or a grid of its own accord', () => {
    expect(iso(plate(ROW)).sizes.tables).toHaveLength(0)
    const s = iso(plate(`${ROW}sizes hole table\n`))
    expect(s.sizes.tables[0]!.rows.map((r) => r.x)).toEqual(['20', '45', '70', '95'])
    expect(s.sizes.proof.complete).toBe(true)
  })
})

describe('places', () => {
  it('moves a size to a side and row, and keeps it there when other statements change', () => {
    const lines = `${ROW}place 3× 25 above row 3\n`
    const before = iso(plate(lines)).find('3× 25')
    expect(before.wish).toEqual({ side: 'top', row: 3 })
    const after = iso(plate(`hole B top: ⌀10 THRU\n  100 from left; 60 from front\n${lines}`)).find('3× 25')
    expect(after.id).toBe(before.id)
    expect(after.wish).toEqual(before.wish)
  })

  it('moves a size to another view that shows it true, and says so where none does', () => {
    const bracket = 'block 60 × 40 × 30\nstep top left: 20 from left, 10 from top\n'
    const there = iso(`${bracket}place 60 in top view\n`)
    expect(there.find('60').view).toBe('top')
    const not = iso(`${bracket}place 30 in top view\n`)
    expect(not.sizes.marks.some((m) => m.rule === 'size-not-in-view')).toBe(true)
  })
})
