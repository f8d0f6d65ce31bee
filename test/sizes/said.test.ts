import { describe, expect, it } from 'vitest'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { asme, iso, type Sized } from './sized.ts'

/** Complete by both roads, and in need of each of its sizes. */
function expectProper(s: Sized): void {
  const { part, sizes } = s
  expect(sizes.marks.filter((m) => m.weight === 'must change').map((m) => m.text)).toEqual([])
  expect(sizes.proof.complete).toBe(true)
  expect(sizes.proof.sizes + sizes.proof.implied).toBe(sizes.proof.freedoms)
  expect(rankOf(part.body, makingOf(part), sizes.dimensions)).toMatchObject({ missing: 0, repeated: 0 })
  for (const one of sizes.dimensions) {
    if (one.reference || !one.states?.length) continue
    const less = prove(
      part,
      sizes.dimensions.filter((d) => d !== one),
    )
    expect(less.missing.length, `without ${one.id}`).toBeGreaterThan(0)
  }
}

const block = (more: string) => iso(`block 160 × 100 × 50\n${more}`)

// Repetitive features: the number of places and X (ASME Y14.5-2018 1.9.5), × (ISO 129-1), from memory; own numbers.
describe('a mirrored pair', () => {
  it('has its distance once, said of both sides', () => {
    const s = block('holes top: 2X ⌀9 THRU\n  20 from left; 25 from front; mirrored left-right\n')
    expect(s.texts).toEqual(['160', '100', '50', '2× 20', '25', '2× ⌀9'])
    expectProper(s)
  })

  it('is no longer proven once the count is gone', () => {
    const s = block('holes top: 2X ⌀9 THRU\n  20 from left; 25 from front; mirrored left-right\n')
    const single = s.sizes.dimensions.map((d) => {
      const [said] = d.states ?? []
      if (said?.kind !== 'distance' || !said.also) return d
      const { also: _, ...alone } = said
      return { ...d, states: [alone] }
    })
    expect(prove(s.part, single).missing.map((m) => m.element)).toEqual(['hole 1'])
  })

  it('keeps rows, walls and slots to their own side', () => {
    const s = block(`holes A top: 6X ⌀4 THRU
  3 across 12 apart, leftmost 30 from left; 90 from front; mirrored left-right
notches front, bottom: 2X square, 10 wide, 8 deep
  left side 30 from left; mirrored left-right
slots top: 2X 8 × 20 overall THRU, long way left-right
  40 from left; 50 from front; mirrored left-right
`)
    expect(s.texts).toEqual(expect.arrayContaining(['4× 12', '2× 30', '2× 10', '2× 8', '2× 40', '2× 8 × 20, 4× R']))
    expect(s.texts.join()).not.toMatch(/mirrored|symmetrical/)
    expectProper(s)
  })
})

describe('centred', () => {
  // common practice, no source: a word beside a distance is read of that distance
  it('stands beside the diameter of what it centres, not beside the distance in the other direction', () => {
    const s = block('boss top: ⌀40 × 15 high\n  40 from left; centred up\n')
    expect(s.texts).toEqual(['160', '100', '50', '40', '⌀40, centred', '15'])
    expectProper(s)
  })

  it('stands alone where the other direction has a number, and both ways where not', () => {
    const s = asme(`block 4.00 × 3.00 × 1.500
hole top: ⌀.500 THRU
  1.25 from left; centred up
hole top: ⌀1.000 THRU
  centred both ways
`)
    expect(s.texts).toContain('⌀.500 THRU, CENTERED')
    expect(s.texts).toContain('⌀1.000 THRU, CENTERED BOTH WAYS')
    expect(s.texts.join()).not.toMatch(/LEFT-RIGHT|FRONT-REAR|UP-DOWN/)
    expectProper(s)
  })

  it('goes with each of the two sizes of a pocket', () => {
    const s = block('pocket top: 60 × 40 ↧ 10, corners R 6\n  centred both ways\n')
    expect(s.texts).toEqual(expect.arrayContaining(['60, centred', '40, centred', '↧ 10', '4× R6']))
    expectProper(s)
  })

  it('goes with the stem of a tee, which has its thickness from the flange', () => {
    const s = iso('tee 50 high × 50 wide × 6 thick, 120 long, axis left-right\n')
    const stem = s.find('2× 6, centred')
    expect(stem.direction).toBe('front-rear')
    expectProper(s)
  })
})

describe('one size for like rounds', () => {
  const shaft = (right: string) =>
    asme(`turned axis left-right
  left ⌀.7503/.7500, 1.38 long
  collar ⌀1.250, .25 long
  right ⌀${right}, 1.25 long
`)
  it('two seats with the same limits show them once', () => {
    const s = shaft('.7503/.7500')
    expect(s.texts.filter((t) => t.includes('.7503'))).toEqual(['2X ⌀.7503/.7500'])
    expect(s.sizes.proof.conditions!.find((c) => c.kind === 'equal')!.count).toBe(1)
    expectProper(s)
  })

  it('two that differ in a digit keep their own', () => {
    const s = shaft('.7503/.7501')
    expect(s.texts).toEqual(expect.arrayContaining(['⌀.7503/.7500', '⌀.7503/.7501']))
    expectProper(s)
  })
})

// A tangent arc's end follows from its radius; points of tangency take no size (common practice, no source).
describe('outlines with arcs that run on smoothly', () => {
  const outline = (moves: string) => iso(`outline 10 thick, face front\n  ${moves}\n`)
  const given = (s: Sized) => s.texts.filter((t) => t !== '10')
  it.each([
    [
      'one round corner',
      'right 80; up 20; arc R 20 to 60 across, 40 up, turning left; left 60; close',
      ['80', '40', 'R20'],
    ],
    [
      'round at both ends',
      'right 60; arc R 20 to 60 across, 40 up, turning left; left 60; arc R 20 to 0 across, 0 up, turning left; close',
      ['60', '2× R20'],
    ],
    [
      'two round corners',
      'right 80; up 20; arc R 20 to 60 across, 40 up, turning left; left 40; arc R 20 to 0 across, 20 up, turning left; close',
      ['80', '40', '2× R20'],
    ],
  ])('%s', (_, moves, wanted) => {
    const s = outline(moves)
    expect(given(s)).toEqual(wanted)
    expect(s.sizes.proof.complete).toBe(true)
    const noted = s.views.thicknessNote ? 1 : 0
    expect(rankOf(s.part.body, makingOf(s.part), s.sizes.dimensions)).toMatchObject({ missing: noted, repeated: 0 })
  })

  it('an arc that meets its neighbours at corners keeps every number', () => {
    const s = outline('right 80; up 40; left 30; arc R 20 to 50 across, 30 up, turning right; left 30; close')
    expect(given(s)).toEqual(['80', '40', '30', '30', '50', '30', 'R20'])
  })

  it('a number with a tolerance of its own is not left out', () => {
    const s = outline('right 80; up 20; arc R 20 to 60 across, 40 up, turning left; left 60 ±0.1; close')
    expect(s.texts).toContain('60 ±0.1')
  })
})

describe('chamfers that run round corners', () => {
  it.each(['2 × 45°', '2 × 4'])('%s: the cones have both numbers too', (size) => {
    const s = iso(`plate 160 × 100 × 12\nround corners: 4X R10\nchamfer top edges: 4X ${size}\n`)
    expect(s.part.body.faces.filter((f) => f.surface.kind === 'cone')).toHaveLength(4)
    expect(s.texts).toContain(`4× ${size}`)
    expectProper(s)
  })
})

describe('which view', () => {
  it('a keyseat has its width and depth in the section, its length and place along the shaft', () => {
    const s = iso(`turned axis left-right
  left ⌀20, 28 long
  body ⌀30, 60 long
keyseat body, front: 8 wide × 4 deep × 36 long
  left end 6 from body left face
`)
    const view = (text: string) => s.views.views.find((v) => v.id === s.find(text).view)!.kind
    expect(['8', '4'].map(view)).toEqual(['section', 'section'])
    expect(['36', '6'].map(view)).toEqual(['principal', 'principal'])
    expectProper(s)
  })

  it('a slot is located where its outline shows, though another line stands level with its middle elsewhere', () => {
    const s = block(`notch front, bottom: square, 10 wide, 8 deep
  left side 40 from left
slot top: 8 × 20 overall THRU, long way left-right
  40 from left; 50 from front
`)
    const own = s.sizes.dimensions.filter((d) => d.feature === 'slot 1')
    expect(own.map((d) => d.view)).toEqual(own.map(() => 'top'))
    expectProper(s)
  })

  it('the sizes of a feature follow one another in the list', () => {
    const s = block(`holes A top: 2X ⌀9 THRU
  2 across 60 apart, leftmost 20 from left; 25 from front
slot B top: 8 × 20 overall THRU, long way left-right
  120 from left; 50 from front
hole C front: ⌀10 THRU
  80 from left; 20 from bottom
`)
    const order = s.sizes.dimensions.flatMap((d) => d.feature ?? 'stock')
    expect(order.filter((f, i) => f !== order[i - 1])).toEqual(['stock', 'hole A', 'slot B', 'hole C'])
  })
})

// An end of a slot level with another axis is the slot's own end still.
it('an overall length reaches its own ends, whatever else stands level with them', () => {
  expectProper(
    block(`holes top: 2X ⌀4 THRU
  2 across 20 apart, leftmost 50 from left; 90 from front
slot top: 8 × 20 overall THRU, long way left-right
  60 from left; 50 from front
`),
  )
})

describe('holes astride a centre line, held in position', () => {
  it('have their angle boxed as their circle is (ASME Y14.5-2018 7.4.1, from memory)', () => {
    const disc = `disc      ⌀7.50 × .88, outer face front
holes A   outer face: 8X ⌀.563 THRU
          on ⌀6.000 bolt circle, equal, astride the vertical centre line
datum     A  inner face
`
    const held = asme(`${disc}frame     holes A: position dia .020 A\n`)
    expect([held.find('⌀6.000').basic, held.find('22.5°').basic]).toEqual([true, true])
    const free = asme(disc)
    expect([free.find('⌀6.000').basic, free.find('22.5°').basic]).toEqual([false, false])
  })
})

describe('blind holes in the rear and the bottom', () => {
  // The fewest views that show every feature; sizes where it is seen (ASME Y14.5-2018 4.1, ISO 128-3, from memory).
  const s = iso(`block     80 × 50 × 30
hole A    top: ⌀10 THRU
          20 from left; 25 from front
hole B    bottom: ⌀6 ↧ 8
          60 from left; 10 from front
hole C    rear: M5 ↧ 10, drill ⌀4.2 ↧ 14
          30 from left; 15 from bottom
`)

  it('bring a rear and a bottom view, with the reason', () => {
    const drawn = s.views.views.map((v) => v.id)
    expect(drawn).toEqual(expect.arrayContaining(['front', 'top', 'rear', 'bottom']))
    expect(s.views.reasons.join()).toContain('Rear: shows hole C')
    expect(s.views.reasons.join()).toContain('Bottom: shows hole B')
  })

  it('are sized and located there', () => {
    const viewsOf = (id: string) => [...new Set(s.sizes.dimensions.filter((d) => d.feature === id).map((d) => d.view))]
    expect(viewsOf('hole B')).toEqual(['bottom'])
    expect(viewsOf('hole C')).toEqual(['rear'])
    expect(viewsOf('hole A')).toEqual(['top'])
  })

  it('leave no centre mark where they are not drawn', () => {
    const centres = (view: string, feature: string) =>
      s.views.views
        .find((v) => v.id === view)!
        .lines.filter((l) => l.kind === 'centre' && l.features?.includes(feature))
    expect(centres('front', 'hole C')).toEqual([])
    expect(centres('top', 'hole B')).toEqual([])
    expect(centres('rear', 'hole C').length).toBeGreaterThan(0)
  })

  it('nor an axis where a section tells them instead', () => {
    const cut = iso(`block     80 × 50 × 30
hole A    front: M10 ↧ 20, drill ⌀8.5 ↧ 26
          40 from left; 15 from bottom
hole B    top: M8 THRU
          40 from left; 40 from front
views     front; top; section A-A as right
`)
    const plan = cut.views.views.find((v) => v.id === 'top')!
    expect(plan.lines.filter((l) => l.kind === 'centre').flatMap((l) => l.features ?? [])).not.toContain('hole A')
  })

  it('bring none where the hole goes through', () => {
    const through = iso(`block     80 × 50 × 30
hole A    top: ⌀10 THRU
          20 from left; 25 from front
hole B    bottom: ⌀6 THRU
          60 from left; 10 from front
`)
    expect(through.views.views.map((v) => v.id)).not.toContain('bottom')
  })
})

describe('a pocket located by its middle', () => {
  const centres = (place: string) =>
    iso(`block     120 × 70 × 45
pocket    top: 40 × 36 ↧ 14, corners R 5
          ${place}
hole A    top: ⌀8 THRU
          10 from left; 10 from front
`)
      .views.views.find((v) => v.id === 'top')!
      .lines.filter((l) => l.kind === 'centre' && l.features?.includes('pocket 1'))

  it('has its crossed centre lines, past its walls (common practice, no source)', () => {
    const lines = centres('60 from left; 30 from front')
    const ends = lines.map(({ curve: c }) =>
      c.kind === 'line' ? [c.a, c.b].map((p) => p.map((x) => Math.round(x))) : [],
    )
    expect(ends).toEqual(
      expect.arrayContaining([
        [
          [40, 30],
          [80, 30],
        ],
        [
          [60, 12],
          [60, 48],
        ],
      ]),
    )
    for (const l of lines) expect(Math.min(...l.overrun!)).toBeGreaterThan(0)
  })
})
