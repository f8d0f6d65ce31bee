import { describe, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { buildPart } from '../../src/part/build.ts'
import { faults, openBench } from './workbench.ts'

const bench = openBench()

const PLATE = 'plate 100 × 60 × 8\n'

describe('what cannot be built is left out and marked', () => {
  it.each([
    ['a hole off the part', `${PLATE}hole top: ⌀9 THRU\n  150 from left; centred up`, 'hole-off-part'],
    ['a hole that breaks out of the edge', `${PLATE}hole top: ⌀9 THRU\n  3 from left; centred up`, 'breaks-edge'],
    [
      'a pattern that leaves the face',
      `${PLATE}holes top: 4X ⌀9 THRU\n  4 across 40 apart, centred; centred up`,
      'pattern-off-face',
    ],
    [
      'holes of one pattern that overlap',
      `${PLATE}holes top: 3X ⌀9 THRU\n  3 across 6 apart, centred; centred up`,
      'holes-overlap',
    ],
    [
      'two holes that overlap',
      `${PLATE}hole top: ⌀9 THRU\n  centred both ways\nhole top: ⌀9 THRU\n  55 from left; centred up`,
      'holes-overlap',
    ],
    ['a blind hole deeper than the plate', `${PLATE}hole top: ⌀9 ↧ 12\n  centred both ways`, 'too-deep'],
    [
      'a counterbore smaller than its hole',
      `${PLATE}hole top: ⌀9 THRU, ⌴ ⌀8 ↧ 3\n  centred both ways`,
      'counterbore-small',
    ],
    [
      'a countersink smaller than its hole',
      `${PLATE}hole top: ⌀9 THRU, ⌵ ⌀8 × 90°\n  centred both ways`,
      'countersink-small',
    ],
    ['a round larger than the side', `${PLATE}round corners: 4X R40`, 'radius-too-large'],
    [
      'a slot no longer than wide',
      `${PLATE}slot top: 10 × 8 overall THRU, long way left-right\n  centred both ways`,
      'slot-too-short',
    ],
    ['a hole from a face that is not there', `${PLATE}hole heel: ⌀9 THRU\n  centred both ways`, 'unknown-name'],
    [
      'a distance from a face that does not lie that way',
      `${PLATE}hole top: ⌀9 THRU\n  20 from bottom; centred up`,
      'wrong-direction',
    ],
    ['a hole located one way only', `${PLATE}hole top: ⌀9 THRU\n  20 from left`, 'not-located'],
    ['a hole located twice one way', `${PLATE}hole top: ⌀9 THRU\n  20 from left; 30 from right`, 'located-twice'],
    ['a notch through the whole part', `${PLATE}notch top, left: square, 10 wide, 100 deep\n  centred`, 'too-deep'],
    ['a step deeper than the part', 'block 40 × 40 × 40\nstep top left: 50 from left, 10 from top', 'too-deep'],
  ])('%s', (_, text, rule) => {
    const part = bench.part(text)
    expect(faults(part)).toContain(rule)
    const mark = part.marks.find((m) => m.rule === rule)!
    expect(mark.span).toBeDefined()
    expect(mark.text.length).toBeGreaterThan(10)
    // the rest still stands
    expect(part.body.faces.length).toBeGreaterThanOrEqual(6)
  })

  it.each([
    [
      'an angle thicker than its leg',
      'angle machined, 50 thick, upright 60 high, at rear; base 40 toward front; length 100',
      'thickness-too-large',
    ],
    [
      'an outline that crosses itself',
      'outline 8 thick, face front\n right 100; up 50; slope left 60 down 80; up 20; close',
      'outline-crosses',
    ],
    ['a bore as large as the tube', 'tube ⌀40 outside, ⌀40 inside, 12 long, axis left-right', 'bore-too-large'],
    [
      'a turned step that ends before it begins',
      'turned axis left-right\n a ⌀20, 28 long\n b ⌀30, to 20',
      'length-not-positive',
    ],
  ])('%s leaves no part', (_, text, rule) => {
    const part = bench.part(text)
    expect(faults(part)).toContain(rule)
    expect(part.body.faces).toHaveLength(0)
    expect(part.properties.volume).toBe(0)
  })

  it('an inside radius larger than the leg is marked and left sharp', () => {
    const part = bench.part(
      'angle rolled, 6 thick, inside R 50; upright 60 high, at rear; base 40 toward front; length 100',
    )
    expect(faults(part)).toContain('radius-too-large')
    expect(part.properties.volume).toBeCloseTo(6 * 94 * 100, 6)
  })

  it('a bore larger than the disc is left out', () => {
    const part = bench.part('disc ⌀50 × 10, outer face front\nbore front: ⌀60 THRU')
    expect(faults(part)).toContain('bore-too-large')
    expect(part.properties.volume).toBeCloseTo(Math.PI * 625 * 10, 6)
  })

  it('the mark of a misspelt name offers the nearest right one', () => {
    const part = bench.part(`${PLATE}hole topp: ⌀9 THRU\n  centred both ways`)
    const mark = part.marks.find((m) => /topp/.test(m.text))
    expect(`${mark?.text} ${mark?.expected}`).toMatch(/\btop\b/)
  })

  it('an angle that says neither rolled, formed nor machined is asked about and taken as formed', () => {
    const part = bench.part(
      'angle .188 STK, inside R .19; upright 3.00 high, at rear; base 2.00 toward front; length 2.50',
      'units inch\npractice ASME',
    )
    const mark = part.marks.find((m) => m.rule === 'angle-make')
    expect(mark?.text).toContain('.19 + .188 = .378')
    const heel = part.body.faces.find((f) => f.name === 'heel')
    expect(heel?.surface).toMatchObject({ kind: 'cylinder', r: expect.closeTo(0.378 * 25.4, 9) })
  })

  it('more members than a drawing can show are refused at once', () => {
    const grid = (at: number) =>
      `holes top: 900X ⌀.1 THRU\n  30 across .5 apart, centred; 30 up .5 apart, lowest ${at} from front\n`
    const many = bench.part(PLATE + [1, 1.25, 16, 16.25, 32, 32.25].map(grid).join(''))
    expect(faults(many)).toEqual(['too-many'])
    expect(many.features).toHaveLength(5)
    // the reader refuses larger counts itself; the part must stand by its own even so
    const brief = readBrief(`units mm\n${PLATE}holes top: 4X ⌀1 THRU\n  4 across 2 apart, centred; centred up`)
    const [hole] = brief.features
    if (hole?.kind !== 'hole' || hole.placement.kind !== 'runs') throw new Error('no row of holes')
    const count = { value: 1e9, span: hole.count.span }
    const runs = hole.placement.runs.map((run) => (run.count.value > 1 ? { ...run, count } : run))
    const part = buildPart({ ...brief, features: [{ ...hole, placement: { ...hole.placement, runs } }] }, bench.kernel)
    expect(faults(part)).toEqual(['too-many'])
    bench.kernel.free(part.solid)
  })

  it('an empty brief is no part', () => {
    expect(bench.part('').body.faces).toHaveLength(0)
  })
})
