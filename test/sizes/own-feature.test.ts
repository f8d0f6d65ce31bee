import { describe, expect, it } from 'vitest'
import { allMarks, asme, iso, type Sized } from './sized.ts'

const marksOf = (s: Sized, rule: string) => allMarks(s).filter((m) => m.rule === rule)

/** Sizes stand at the feature that they are of (ASME Y14.5-2018 4.1 and 1.7, ISO 129-1, from memory). */
describe('a size whose value another feature has too', () => {
  // The thread's crest on the right is ⌀.500 as well.
  const stud = (bottom: string) => `turned    axis left-right
          tap     5/8-11 UNC-2A, 1.25 long
          shoulder ⌀.875, .38 long
          nut     1/2-20 UNF-2A, 1.00 long
groove    tap: .12 wide, bottom ${bottom}
          right side at shoulder left face
`
  it('a groove’s bottom stands in the groove', () => {
    const ends = (s: Sized) => {
      const { measured } = s.find(s.texts.find((t) => /⌀\.(?:500|490)/.test(t))!)
      if (measured.kind !== 'linear') throw new Error('the groove is not sized across its profile')
      return [measured.a[0], measured.b[0]]
    }
    // The groove is cut from 1.13 to 1.25 in from the left, whatever its depth.
    const [same, other] = [asme(stud('⌀.500')), asme(stud('⌀.490'))].map(ends)
    expect(same).toEqual(other)
    const left = asme(stud('⌀.500')).part.body.box.min[0]
    for (const x of same!) {
      expect((x - left) / 25.4).toBeGreaterThan(1.13 - 1e-6)
      expect((x - left) / 25.4).toBeLessThan(1.25 + 1e-6)
    }
  })

  it('a pocket’s and a slot’s depth stand at their floors, not at a step as deep', () => {
    const step = 'block     120 × 70 × 45\nstep      top left: 30 from left, 10 from top\n'
    for (const cut of [
      'pocket    top: 40 × 30 ↧ 10, corners R 5\n  75 from left; centred up\n',
      'slot      top: 12 × 40 overall ↧ 10, open to rear, long way front-rear\n  70 from left\n',
    ]) {
      const s = iso(step + cut)
      const depth = s.sizes.dimensions.find((d) => d.id.includes('/depth/'))!
      // No view shows either floor's edge visible: it reads ↧, with a dot on the floor between 55 and 95 from left.
      expect(s.texts).toContain('↧ 10')
      if (depth.measured.kind !== 'leader') throw new Error('the depth stands at an edge')
      const left = s.part.body.box.min[0]
      for (const target of depth.measured.targets) {
        if (target.kind !== 'point') throw new Error('the depth points at a circle')
        expect(target.at[0] - left).toBeGreaterThan(55)
        expect(target.at[0] - left).toBeLessThan(95)
      }
    }
  })

  it('a bore in a section is sized across its own walls, not across a step of its diameter', () => {
    const s = iso(`turned    axis left-right
          left     ⌀20, 30 long
          mid      ⌀40, 20 long
          right    ⌀30, 30 long
bore      right face: ⌀20 ↧ 25
`)
    const { measured, view } = s.find('⌀20 ↧ 25')
    expect(view).toBe('section A-A')
    if (measured.kind !== 'linear') throw new Error('the bore is not sized across its walls')
    // It is worked 25 deep from the right face, 80 from the left one.
    const left = s.part.body.box.min[0]
    for (const p of [measured.a, measured.b]) expect(p[0] - left).toBeGreaterThanOrEqual(55 - 1e-6)
  })
})

/**
 * A basic size has no tolerance; only the frame of its own feature gives one (ASME Y14.5-2018 7.4.1, ISO 5458, from
 * memory).
 */
describe('a place that a framed and an unframed feature have in common', () => {
  const plate = `plate     6.00 × 4.00 × .50
hole A    top: ⌀.500 THRU
          2.000 from left; 2.000 from front
hole B    top: ⌀.375 THRU
          4.000 from left; 2.000 from front
hole C    top: ⌀.375 THRU
          5.000 from left; 2.000 from front
datum     A  bottom
datum     B  left
datum     C  front
frame     hole A: position dia .010 A B C
`
  it('has a size for each kind: one exact, one with its tolerance for the others', () => {
    const s = asme(plate)
    const level = s.sizes.dimensions.filter((d) => d.direction === 'front-rear' && Math.abs(d.value - 50.8) < 1e-6)
    expect(level.map((d) => [d.feature, d.basic])).toEqual([
      ['hole A', true],
      ['hole B', false],
    ])
    expect(level[1]!.tolerance).toMatchObject({ from: 'general' })
    // each next to its own hole: A stands left of B
    expect(level.map((d) => d.wish?.side)).toEqual(['left', 'right'])
    expect(s.sizes.proof.complete).toBe(true)
    expect(marksOf(s, 'basic-without-frame')).toEqual([])
  })

  it('is marked where a scheme shows it once, with the frame to write', () => {
    const s = asme(`${plate}sizes baseline\n`)
    expect(marksOf(s, 'basic-without-frame').map((m) => m.expected)).toEqual([
      expect.stringContaining('`frame hole B: position dia .010 A B C`'),
      expect.stringContaining('`frame hole C: position dia .010 A B C`'),
    ])
    const both = asme(
      `${plate}frame     hole B: position dia .010 A B C\nframe     hole C: position dia .010 A B C\nsizes baseline\n`,
    )
    expect(marksOf(both, 'basic-without-frame')).toEqual([])
  })

  // A basic size has no tolerance of its own: what no frame holds has none at all (ASME Y14.5-2018 7.4.1, from memory).
  it('is marked where dowel holes stand on the bolt circle of framed holes, with the frame to write', () => {
    const disc = `disc ⌀5.00 × .75, outer face front
bore front: ⌀1.500 +.001 -.000 THRU
holes A outer face: 6X 3/8-16 UNC-2B THRU
  on ⌀3.875 bolt circle, equal, one at 12 o'clock
holes B outer face: 2X ⌀.2500 +.0005 -.0000 THRU
  on ⌀3.875 bolt circle, equal, first at 0°
datum A rear
datum B bore
frame holes A: position dia .014 MMC A B
`
    expect(marksOf(asme(disc), 'basic-without-frame').map((m) => [m.text, m.expected])).toEqual([
      [
        '⌀3.875 is exact for hole A, which a frame holds, and places hole B too, which none holds: hole B has no tolerance of place.',
        '`frame holes B: position dia .014 MMC A B`',
      ],
    ])
    const framed = asme(`${disc}frame holes B: position dia .002 A B\n`)
    expect(marksOf(framed, 'basic-without-frame')).toEqual([])
    const apart = asme(disc.replace('⌀3.875 bolt circle, equal, first', '⌀3.500 bolt circle, equal, first'))
    expect(marksOf(apart, 'basic-without-frame')).toEqual([])
  })
})

/** A word beside a number is read of that number's direction (common practice, no source). */
describe('centred under a note', () => {
  it('is plain beside a number of the other direction, and else names its own', () => {
    const s = iso(`plate     120 × 80 × 12
hole A    top: ⌀10 THRU
          30 from left; 25 from front
hole B    top: ⌀14 THRU
          centred left-right; 25 from front
hole C    top: ⌀20 THRU
          90 from left; centred up
`)
    // hole B's 25 is shown once, at hole A
    expect(s.texts).toEqual(expect.arrayContaining(['⌀14, centred left-right', '⌀20, centred']))
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('stands beside a size only where that runs the same way', () => {
    for (const lines of [
      'block 120 × 80 × 20\nboss top: ⌀40 × 15 high\n  40 from left; centred up\n',
      'block 120 × 80 × 20\nslot top: 12 × 30 overall ↧ 6, open to right\n  centred up\n',
      'block 120 × 80 × 20\npocket top: 40 × 30 ↧ 6, corners R 5\n  30 from left; centred up\n',
    ]) {
      const s = iso(lines)
      const worded = s.sizes.dimensions.filter((d) => d.callout.lines.some((l) => /^centred/.test(String(l[0]))))
      expect(worded).toHaveLength(1)
      for (const { direction, states } of worded) {
        const ways = (states ?? []).flatMap((x) => (x.kind === 'centred' ? [x.direction] : []))
        expect(ways).toHaveLength(1)
        expect(['diameter', 'front-rear']).toContain(direction)
      }
    }
  })
})

/** Two corners of one height have one number, and that they are level is counted (proper dimensioning, from memory). */
it('an outline whose two slopes have the same numbers is fixed', () => {
  const s = iso(`outline   50 thick, face front
          right 70; up 12; left 8; up 10; right 8; up 28; left 17; slope left 16.5 down 16.5
          down 3.5; left 3; up 3.5; slope left 16.5 up 16.5; left 17; down 28; right 8; down 10
          left 8; close
`)
  expect(s.sizes.proof.sentence).toMatch(/^complete: /)
  expect(marksOf(s, 'size-missing')).toEqual([])
})

/** The word counts between the slot's sides, whatever stands where its end would have been. */
it('an open slot that runs out into a hole is centred by its sides', () => {
  const s = iso(`angle     formed, 2 STK, inside R 3
          upright 38 high, at rear; base 25 toward front; length 40
hole      upright, from front: ⌀22 THRU
          centred left-right; 20 from bottom
slot      upright, from front: 10 wide × 18, open to top
          centred left-right
`)
  expect(s.sizes.proof.missing.map((m) => m.text)).toEqual([])
})
