import { describe, expect, it } from 'vitest'
import { printBrief } from '../../src/brief/print.ts'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { allMarks, asme, iso, type Sized } from './sized.ts'

/** Every size fixes something nothing else fixes: without it the proof, and the rank of the whole, see the gap. */
function eachOnce(s: Sized) {
  expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
  const making = makingOf(s.part)
  // a thickness that stands in a note is no dimension
  const noted = s.sizes.noted?.length ?? 0
  expect(rankOf(s.part.body, making, s.sizes.dimensions)).toMatchObject({ missing: noted, repeated: 0 })
  for (const one of s.sizes.dimensions) {
    const less = s.sizes.dimensions.filter((d) => d !== one)
    const missing = rankOf(s.part.body, making, less).missing
    expect(missing, one.id).toBeGreaterThan(noted)
    expect(prove(s.part, less).missing.length, one.id).toBe(missing)
    const twice = [...s.sizes.dimensions, { ...one, id: 'again' }]
    expect(prove(s.part, twice).repeated.length, one.id).toBeGreaterThan(0)
    expect(rankOf(s.part.body, making, twice).repeated, one.id).toBeGreaterThan(0)
  }
}

/** Frustum of a cone: π h / 3 (R² + R r + r²), R and r from the diameters. */
const frustum = (D: number, d: number, h: number) => ((Math.PI * h) / 12) * (D * D + D * d + d * d)

// ISO 3040:2016 3.1, from memory: rate of taper C = (D − d) / L. Volumes from the closed formula.
describe('a taper by its rate', () => {
  it.each([
    ['⌀20 tapered 1:5, 40 long', 20, 12],
    ['⌀20 ⌲ 1:5, 40 long', 20, 12],
    ['⌀20 tapered at 0.2:1 toward left, to 40', 20, 12],
    ['⌀12 small end, tapered 1:5, 40 long', 20, 12],
    ['⌀12 small end, tapered 1:5 toward left, 40 long', 20, 12],
    ['dia 20 large end tapered 1:5, 40 long', 20, 12],
  ])('nose %s', (step, D, d) => {
    const s = iso(`turned axis left-right\n  nose ${step}\n`)
    expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
    expect(s.part.properties.volume).toBeCloseTo(frustum(D, d, 40), 6)
    expect(s.texts.filter((t) => t.startsWith('⌀'))).toHaveLength(1)
    eachOnce(s)
  })

  it('narrows the way that is said, and its sign with it', () => {
    const signs = (s: Sized) =>
      s.sizes.dimensions.flatMap((d) => d.callout.lines[0]!).filter((p) => String(p).includes('⌲'))
    const right = iso('turned axis left-right\n  nose ⌀20 tapered 1:5, 40 long\n')
    const left = iso('turned axis left-right\n  nose ⌀20 tapered 1:5 toward left, 40 long\n')
    expect(right.part.properties.centroid[0]).toBeLessThan(20)
    expect(left.part.properties.centroid[0]).toBeGreaterThan(20)
    expect(right.texts).toContain('⌲ 1:5')
    expect(left.texts).toContain('⌲ 1:5')
    // ISO 3040:2016 clause 5, from memory: the sign's direction is that of the cone.
    expect(signs(left)).not.toEqual(signs(right))
  })

  it('in inches, as a decimal to one', () => {
    const s = asme('turned axis left-right\n  shank ⌀1.000, 2.00 long\n  nose ⌀.875 tapered 0.05:1, 3.00 long\n')
    expect(s.texts).toContain('⌲ .05:1')
    const inch = 25.4
    const volume = Math.PI * 0.25 * 2 + frustum(0.875, 0.875 - 0.15, 3)
    expect(s.part.properties.volume / inch ** 3).toBeCloseTo(volume, 9)
    eachOnce(s)
  })

  it('runs on from a step, to another and into another taper', () => {
    const s = iso(`turned axis left-right
  body ⌀24 h6, 30 long
  cone ⌀24 tapered 1:10, 40 long
  tail ⌀16, 20 long
  point ⌀16 tapered 1:4, 10 long
`)
    expect(s.texts.filter((t) => t.startsWith('⌀')).sort()).toEqual(['⌀16', '⌀24 h6'])
    eachOnce(s)
  })

  it('says the angle of its sides to the tolerance: 2 atan(C / 2)', () => {
    const { value, tolerance } = iso('turned axis left-right\n  nose ⌀20 tapered 1:10, 40 long\n').find('⌲ 1:10')
    // 1:10 is a cone of 5°43'29.3" (ISO 1119 table, from memory)
    expect(value).toBeCloseTo(5 + 43 / 60 + 29.3 / 3600, 4)
    expect(tolerance?.from).toBe('general')
  })

  it.each(['1:5', '⌲ 1:5'])('is placed by its words, %s', (words) => {
    const s = iso(
      `turned axis left-right\n  nose ⌀20 tapered 1:5, 40 long\nplace ${words} in front view, row 2, below\n`,
    )
    expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
    expect(s.find('⌲ 1:5').wish).toEqual({ side: 'bottom', row: 2 })
  })

  it('both diameters, length and rate are one too many, and which is said', () => {
    const s = iso('turned axis left-right\n  nose ⌀20 tapered 1:5 to ⌀12, 40 long\n')
    expect(s.sizes.proof).toMatchObject({ complete: false, missing: [] })
    expect(s.sizes.proof.repeated.map((r) => r.text).join()).toMatch(/already fixed by .*leave one out/)
    expect(rankOf(s.part.body, makingOf(s.part), s.sizes.dimensions)).toMatchObject({ missing: 0, repeated: 1 })
  })

  it.each([
    ['⌀20 tapered 1:5 to (⌀12), 40 long', '(⌀12)'],
    ['⌀20 tapered 1:5 to ⌀12, (40) long', '(40)'],
  ])('%s: the fourth in brackets says nothing', (step) => {
    const s = iso(`turned axis left-right\n  nose ${step}\n`)
    expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
    expect(s.sizes.dimensions.filter((d) => d.reference)).toHaveLength(1)
  })

  it.each([
    ['⌀20 tapered 1:5 to ⌀13, 40 long', 'taper-contradicts', '⌀12'],
    ['⌀20 tapered 1:5, 100 long', 'taper-runs-out', 'smaller rate'],
    ['⌀20 tapered 1:5 toward top, 40 long', 'wrong-direction', 'toward left'],
    ['⌀20 tapered 1:0, 40 long', 'angle-out-of-range', '1:10'],
    ['⌀20 tapered 5:1, 40 long', 'angle-out-of-range', '1:10'],
    ['⌀20 tapered, 40 long', 'missing-size', 'tapered 1:10'],
    ['⌀20 small end, 40 long', 'missing-size', 'tapered 1:10'],
  ])('%s is refused at its place', (step, rule, expected) => {
    const s = iso(`turned axis left-right\n  nose ${step}\n`)
    const [mark] = allMarks(s).filter((m) => m.weight === 'must change')
    expect(mark?.rule).toBe(rule)
    expect(mark?.expected).toContain(expected)
    expect(mark?.span?.from).toBeGreaterThan(s.part.brief.text.indexOf('nose'))
  })

  it.each([
    'nose ⌀20 tapered 1:5, 40 long',
    'nose ⌀12 small end, tapered 1:5 toward left, 40 long',
    'nose ⌀20 tapered 1:5 to ⌀(12), 40 long',
  ])('%s prints as it reads', (step) => {
    expect(printBrief(iso(`turned axis left-right\n  ${step}\n`).part.brief)).toContain(step.replace('nose ', 'nose  '))
  })
})

// rise = rate × run
describe('a slope by its rate', () => {
  it.each([
    ['slope left 100 up at 1:20', 5],
    ['slope left 100 up ⌳ 0.05:1', 5],
    ['slope left 100 up by 1:50', 2],
  ])('%s', (slope, rise) => {
    const s = iso(`outline 8 thick, face front\n  right 100; up 20; ${slope}; close\n`)
    expect(s.part.body.box.max[2]).toBeCloseTo(20 + rise, 9)
    expect(s.part.properties.volume).toBeCloseTo(8 * 100 * (20 + rise / 2), 6)
    eachOnce(s)
  })

  it('from an upright side in inches', () => {
    const s = asme(
      'outline .50 thick, face front\n  right 2.00; slope up 4.00 left at 1:8; to 0 across, 4.00 up; close\n',
    )
    expect(s.texts).toContain('⌳ 1:8')
    expect(s.part.properties.volume / 25.4 ** 3).toBeCloseTo(0.5 * 4 * 1.75, 9)
    eachOnce(s)
  })

  it('without its way says how to write it', () => {
    const s = iso('outline 8 thick, face front\n  right 100; up 20; slope left 100 at 1:20; close\n')
    const [mark] = allMarks(s).filter((m) => m.weight === 'must change')
    expect(mark?.expected).toBe('slope left 100 up at 1:20, or slope left 100 down at 1:20')
  })
})
