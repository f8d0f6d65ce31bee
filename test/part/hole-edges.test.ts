import { describe, expect, it } from 'vitest'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { allMarks, asme, iso } from '../sizes/sized.ts'

const BLOCK = `block 120 × 80 × 30
holes A top: 4X ⌀12 THRU
  2 across 80 apart, centred; 2 up 50 apart, centred
bore top: ⌀30 H7 THRU
hole B front: ⌀8 ↧ 6
  60 from left; centred up
hole C top: ⌀6 THRU, ⌴ ⌀10 ↧ 5
  60 from left; 10 from front
`
const DISC = `disc ⌀100 × 12, outer face front
holes A outer face: 6X ⌀9 THRU
  on ⌀70 bolt circle, equal, one at 12 o'clock
`

/** What a chamfer takes off the edge of a hole: the frustum less the hole in it, π a / 3 (R² + R r + r²) − π a r². */
const taken = (d: number, axial: number, radial: number) => {
  const [r, R] = [d / 2, d / 2 + radial]
  return (Math.PI * axial * (R * R + R * r + r * r)) / 3 - Math.PI * axial * r * r
}
const must = (s: ReturnType<typeof iso>) => allMarks(s).filter((m) => m.weight === 'must change')

// Closed formula of a cone's frustum; leg along the axis, angle to the axis: common practice, no source.
describe('a chamfer at the edge of a hole', () => {
  it.each([
    ['hole A edges: 8X 1 × 45°', BLOCK, 8 * taken(12, 1, 1)],
    ['hole A top edges: 4X 1 × 45°', BLOCK, 4 * taken(12, 1, 1)],
    ['bore edges: 2X 2 × 30°', BLOCK, 2 * taken(30, 2, 2 * Math.tan(Math.PI / 6))],
    ['bore bottom edge: 2 × 1', BLOCK, taken(30, 2, 1)],
    ['hole B edge: 0.5 × 45°', BLOCK, taken(8, 0.5, 0.5)],
    ['hole C top edge: 0.5 × 45°', BLOCK, taken(10, 0.5, 0.5)],
    ['hole C bottom edge: 0.5 × 45°', BLOCK, taken(6, 0.5, 0.5)],
    ['hole A edges: 12X 0.5 × 45°', DISC, 12 * taken(9, 0.5, 0.5)],
  ])('%s', (chamfer, stock, less) => {
    const [plain, s] = [iso(stock), iso(`${stock}chamfer ${chamfer}\n`)]
    expect(must(s)).toEqual([])
    expect(plain.part.properties.volume - s.part.properties.volume).toBeCloseTo(less, 5)
    expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
    const making = makingOf(s.part)
    const noted = s.sizes.noted?.length ?? 0
    expect(rankOf(s.part.body, making, s.sizes.dimensions)).toMatchObject({ missing: noted, repeated: 0 })
    const own = s.sizes.dimensions.find((d) => d.id.startsWith('chamfer'))!
    const rest = s.sizes.dimensions.filter((d) => d !== own)
    expect(prove(s.part, rest).missing.length).toBeGreaterThan(noted)
    expect(prove(s.part, [...s.sizes.dimensions, { ...own, id: 'again' }]).repeated.length).toBeGreaterThan(0)
  })

  it.each([
    ['a step', 'step top left: 30 from left, 10 from top\n', '15 from left; centred up', 2],
    ['a pocket', 'pocket top: 40 × 30 ↧ 10, corners R 5\n  centred both ways\n', 'centred both ways', 2],
    ['a pocket from below', 'pocket bottom: 40 × 30 ↧ 10, corners R 5\n  centred both ways\n', 'centred both ways', 2],
  ])('of a hole through the floor of %s is where the hole opens', (_, cut, place, count) => {
    const stock = `block 80 × 60 × 30\n${cut}hole A top: ⌀10 THRU\n  ${place}\n`
    const [plain, s] = [iso(stock), iso(`${stock}chamfer hole A edges: ${count}X 1 × 45°\n`)]
    expect(must(s)).toEqual([])
    expect(plain.part.properties.volume - s.part.properties.volume).toBeCloseTo(count * taken(10, 1, 1), 5)
    expect(s.texts).toContain(`${count}× 1 × 45°`)
    expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
  })

  it('that would stand half in a pocket is refused', () => {
    const s = iso(`block 80 × 60 × 30
pocket top: 12 × 12 ↧ 10, corners R 2
  centred both ways
hole A top: ⌀10 THRU
  centred both ways
chamfer hole A edges: 2X 2 × 45°
`)
    expect(must(s).map((m) => m.rule)).toEqual(['two-levels'])
  })

  it('in inches points at the circle where no view shows the slope in full lines', () => {
    const s = asme(`plate 4.00 × 3.00 × .500
hole A top: ⌀.500 THRU
  1.00 from left; 1.00 from front
chamfer hole A edges: 2X .06 × 45°
`)
    expect(must(s)).toEqual([])
    const own = s.find('2X .06 × 45°')
    expect(own.view).toBe('top')
    expect(own.measured).toMatchObject({
      kind: 'leader',
      targets: [{ kind: 'circle', radius: expect.closeTo(0.31 * 25.4, 6) }],
    })
  })

  it.each([
    ['round hole A edges: R1', 'cannot-build', 'chamfer hole A edges'],
    ['chamfer hole A edges and top left edge: 1 × 45°', 'cannot-build', 'chamfer hole A edges'],
    ['chamfer hole B edge: 6 × 45°', 'radius-too-large', 'less than 6 mm'],
    ['chamfer hole Z edges: 1 × 45°', 'unknown-name', 'hole A edges'],
    ['chamfer hole edges: 1 × 45°', 'unknown-name', 'hole A edges'],
    ['chamfer bore edges: 1 × 45°\nchamfer bore top edge: 1 × 45°', 'worked-twice', 'one statement'],
    ['chamfer hole C top edge: 6 × 45°', 'radius-too-large', 'less than 5 mm'],
  ])('%s is refused and told what to write', (line, rule, expected) => {
    const [mark] = must(iso(`${BLOCK}${line}\n`))
    expect(mark?.rule).toBe(rule)
    expect(mark?.expected).toContain(expected)
    expect(mark?.span).toBeDefined()
  })
})
