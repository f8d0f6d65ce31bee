import { describe, expect, it } from 'vitest'
import { plainText } from '../../src/sizes/callout/plain-text.ts'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { allMarks, iso } from './sized.ts'

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

// With a groove between them the two have no circle in common: each has the diameter, and one size says so of both where
// their tolerances agree (repetitive sizes, ASME Y14.5-2018 1.9.5, ISO 129-1, from memory).
describe('a taper that a groove parts from a step of the same diameter', () => {
  it.each([
    ['⌀20', ['2× ⌀20', '⌀18', '⌀26', '⌀30']],
    ['⌀20 h6', ['⌀18', '⌀20', '⌀20 h6', '⌀26', '⌀30']],
  ])('and a tail of %s', (tail, diameters) => {
    const s = iso(
      `turned axis left-right\n  a ⌀30, 40 long\n  b ⌀26 tapered to ⌀20, 30 long\n  c ${tail}, 20 long\ngroove c: 2 wide, bottom ⌀18\n  left side at b right face\n`,
    )
    expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
    expect(s.texts.filter((t) => t.includes('⌀')).sort()).toEqual(diameters)
  })
})

// A taper's end is sized at the sharp corner, as a cylinder's edge is, and a chamfer's angle is to the axis (common
// practice, no source).
describe('a taper with a chamfer at its end', () => {
  it.each([
    ['at the small end', 'body ⌀30, 40 long\n  nose ⌀24 tapered to ⌀16, to 80', '1 × 45°', ['⌀16', '⌀24', '⌀30']],
    ['at the large end', 'body ⌀20, 40 long\n  nose ⌀20 tapered to ⌀30, to 80', '2 × 30°', ['⌀20', '⌀30']],
    ['with two legs', 'body ⌀20, 40 long\n  nose ⌀20 tapered to ⌀30, to 80', '2 × 3', ['⌀20', '⌀30']],
  ])('%s keeps its end diameter', (_, steps, chamfer, diameters) => {
    const s = iso(`turned axis left-right\n  ${steps}\nchamfer nose right edge: ${chamfer}\n`)
    expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
    expect(s.texts.filter((t) => t.startsWith('⌀')).sort()).toEqual(diameters)
    for (const one of s.sizes.dimensions) {
      const less = s.sizes.dimensions.filter((d) => d !== one)
      expect(prove(s.part, less).missing.length, one.id).toBeGreaterThan(0)
      expect(rankOf(s.part.body, makingOf(s.part), less).missing, one.id).toBe(prove(s.part, less).missing.length)
      expect(prove(s.part, [...s.sizes.dimensions, { ...one, id: 'again' }]).repeated.length, one.id).toBeGreaterThan(0)
    }
  })

  it('has the chamfer’s leg along the axis and its angle to the axis', () => {
    const s = iso('turned axis left-right\n  nose ⌀24 tapered to ⌀16, 40 long\nchamfer nose right edge: 1 × 45°\n')
    const cones = s.part.body.faces.flatMap(({ surface }) =>
      surface.kind === 'cone' ? [Math.abs(surface.halfAngle)] : [],
    )
    expect(cones.some((half) => Math.abs(half - Math.PI / 4) < 1e-9)).toBe(true)
    // At 1 mm from the end the taper measures 16 + 2 · 0.1, and the chamfer takes 2 · 1 off that.
    const radii = s.part.body.edges.flatMap(({ curve }) => (curve.kind === 'circle' ? [2 * curve.r] : []))
    for (const d of [16.2, 14.2])
      expect(
        radii.some((r) => Math.abs(r - d) < 1e-6),
        `⌀${d}`,
      ).toBe(true)
  })

  it('two tapers that meet have one diameter there', () => {
    const s = iso(
      'turned axis left-right\n  nose ⌀20 tapered to ⌀30, 40 long\n  neck ⌀30 tapered to ⌀26, 10 long\n  body ⌀26, 20 long\n',
    )
    expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
    expect(s.texts.filter((t) => t === '⌀30')).toHaveLength(1)
  })
})

/*
 * A keyseat in a taper, its floor along the axis: the depth is from the taper's sharp edge at the large end, where a
 * depth gauge can stand (shaft ends with a taper, ISO/R 775 gives it there; from memory).
 */
describe('a keyseat in a taper', () => {
  const shaft = (neighbour: number) =>
    iso(`turned axis left-right
  a ⌀${neighbour}, 30 long
  b ⌀40 tapered to ⌀30, 60 long
  c ⌀20, 30 long
keyseat b, top: 8 wide × 4 deep × 30 long
  left end 10 from b left face
`)

  it.each([
    ['a smaller', 36, 'section A-A'],
    ['as large a', 40, 'section A-A'],
    ['a larger', 50, 'front'],
  ])('beside %s diameter has its depth from the large end', (_, neighbour, view) => {
    const s = shaft(neighbour)
    const depth = s.sizes.dimensions.find((d) => d.id.startsWith('keyseat 1/depth'))!
    expect([plainText(depth.callout), depth.view]).toEqual(['4', view])
    const [said] = depth.states!
    if (said?.kind !== 'distance') throw new Error('no distance')
    // ⌀40 at the large end: its crown is 20 from the axis, the floor 16
    expect([said.from.at[2], said.to.at[2]].sort()).toEqual([expect.closeTo(16, 6), expect.closeTo(20, 6)])
    expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
    expect(s.sizes.proof.sentence).toMatch(/^complete/)
    const { body } = s.part
    expect(rankOf(body, makingOf(s.part), s.sizes.dimensions)).toMatchObject({ missing: 0, repeated: 0 })
    const less = s.sizes.dimensions.filter((d) => d !== depth)
    expect(
      prove(s.part, less)
        .missing.map((m) => m.text)
        .join(),
    ).toContain('floor')
  })
})

// The diameter in which a taper runs out stands once (ISO 3040:2009, from memory), also where flats cut into it there.
describe('a taper that runs out into a step with flats', () => {
  it.each(['flat end, top: 26 across', 'flats end, top and bottom: 26 across', 'flats end: 6X 27 A/F'])(
    '%s',
    (flats) => {
      const s = iso(`turned axis left-right
  stud ⌀16, 15 long
  grip ⌀24 tapered to ⌀30, 80 long
  end ⌀30, 15 long
${flats}
`)
      const { dimensions, proof } = s.sizes
      expect(s.texts.filter((t) => t === '⌀30')).toHaveLength(1)
      expect(proof.sentence).toMatch(/^complete/)
      expect(rankOf(s.part.body, makingOf(s.part), dimensions)).toMatchObject({ missing: 0, repeated: 0 })
      for (const one of dimensions) {
        const less = dimensions.filter((d) => d !== one)
        expect([one.id, prove(s.part, less).missing.length > 0]).toEqual([one.id, true])
      }
    },
  )
})

// Two cones of one slope on one axis may lie in one surface by chance: with a cylinder or a groove between them each has its
// own diameters (a frustum is fixed by two diameters and its length). Where nothing parts them no line shows the end of the
// one, and the brief has to say it otherwise; the same holds of two cylinders.
describe('two tapers of one slope in line', () => {
  it.each([
    [
      'a cylinder between them',
      'a ⌀20 tapered to ⌀30, 20 long\n  b ⌀30, 10 long\n  c ⌀35 tapered to ⌀40, 10 long\n',
      ['⌀20', '⌀30', '⌀35', '⌀40'],
    ],
    [
      'a collar as large as the second begins',
      'a ⌀20 tapered to ⌀30, 20 long\n  b ⌀32, 4 long\n  c ⌀32 tapered to ⌀42, 20 long\n',
      ['⌀20', '⌀30', '⌀32', '⌀42'],
    ],
    [
      'a groove between them',
      'a ⌀20 tapered to ⌀30, 20 long\n  b ⌀32, 8 long\n  c ⌀34 tapered to ⌀44, 20 long\ngroove b: 4 wide, bottom ⌀18\n  left side 2 from a right face\n',
      ['⌀18', '⌀20', '⌀30', '⌀32', '⌀34', '⌀44'],
    ],
  ])('with %s have each their own diameters', (_, steps, diameters) => {
    const s = iso(`turned axis left-right\n  ${steps}`)
    expect(allMarks(s).filter((m) => m.rule.startsWith('size-'))).toEqual([])
    expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
    expect(rankOf(s.part.body, makingOf(s.part), s.sizes.dimensions)).toMatchObject({ missing: 0, repeated: 0 })
    expect(s.texts.filter((t) => t.startsWith('⌀')).sort()).toEqual(diameters)
  })

  it.each([
    ['tapers by their ends', 'a ⌀20 tapered to ⌀30, 20 long\n  b ⌀30 tapered to ⌀40, 20 long\n'],
    ['tapers by their rate', 'a ⌀40 tapered 1:5, 20 long\n  b ⌀36 tapered 1:5, 20 long\n  c ⌀30, 10 long\n'],
    ['cylinders', 'a ⌀20, 20 long\n  b ⌀20, 20 long\n'],
  ])('with nothing between them are marked at the second, once: %s', (_, steps) => {
    const s = iso(`turned axis left-right\n  ${steps}`)
    const told = allMarks(s).filter((m) => m.weight === 'must change' && m.rule !== 'size-missing')
    expect(told.map((m) => m.rule)).toEqual(['steps-run-on'])
    const { from, to } = told[0]!.span!
    expect(s.part.brief.text.slice(from, to)).toMatch(/^b /)
  })

  it('cylinders of one diameter on both sides of a groove are two steps', () => {
    const s = iso(
      'turned axis left-right\n  a ⌀20, 20 long\n  b ⌀20, 20 long\ngroove b: 3 wide, bottom ⌀16\n  left side at a right face\n',
    )
    expect(allMarks(s).map((m) => m.rule)).not.toContain('steps-run-on')
    expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
  })
})
