import { describe, expect, it } from 'vitest'
import { printBrief } from '../../src/brief/print.ts'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { allMarks, asme, iso, type Sized } from './sized.ts'

function eachOnce(s: Sized) {
  expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
  const making = makingOf(s.part)
  // a thickness that stands in a note is no dimension
  const noted = s.sizes.noted?.length ?? 0
  expect(rankOf(s.part.body, making, s.sizes.dimensions)).toMatchObject({ missing: noted, repeated: 0 })
  for (const one of s.sizes.dimensions) {
    const less = s.sizes.dimensions.filter((d) => d !== one)
    expect(prove(s.part, less).missing.length, one.id).toBeGreaterThan(noted)
    expect(rankOf(s.part.body, making, less).missing, one.id).toBeGreaterThan(noted)
    const twice = [...s.sizes.dimensions, { ...one, id: 'again' }]
    expect(prove(s.part, twice).repeated.length, one.id).toBeGreaterThan(0)
    expect(rankOf(s.part.body, making, twice).repeated, one.id).toBeGreaterThan(0)
  }
}

// Arc length = radius × angle; corners from sine and cosine.
describe('an arc by its length', () => {
  it.each([
    [
      'to the left, less than a quarter',
      'right 80; up 20; arc R 50, 40 long, turning left; to 0 across, 70 up; close',
      50,
      40,
    ],
    ['with its sign', 'right 80; up 20; arc R 50, ⌒ 40, turning left; to 0 across, 70 up; close', 50, 40],
    [
      'more than a quarter',
      'right 60; arc R 30, 70 long, turning left; slope left 30 up 20; to 0 across, 60 up; close',
      30,
      70,
    ],
    ['hollow', 'right 80; up 60; left 30; arc R 40, 30 long, turning left; to 0 across, 30 up; close', 40, 30],
    [
      'after another arc',
      'right 60; arc R 30 to 90 across, 30 up, turning left; arc R 50, 30 long, turning left; to 0 across, 70 up; close',
      50,
      30,
    ],
  ])('%s', (_, moves, r, length) => {
    const s = iso(`outline 10 thick, face front\n  ${moves}\n`)
    expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
    expect(s.texts).toContain(`⌒${length}`)
    const sweeps = s.part.body.edges.flatMap(({ curve }) =>
      curve.kind === 'circle' && Math.abs(curve.r - r) < 1e-9 ? [Math.abs(curve.sweep) * r] : [],
    )
    expect(sweeps.some((l) => Math.abs(l - length) < 1e-6)).toBe(true)
    eachOnce(s)
  })

  it('ends where sine and cosine say', () => {
    const s = iso(
      'outline 10 thick, face front\n  right 80; up 20; arc R 50, 40 long, turning left; to 0 across, 70 up; close\n',
    )
    const end = [30 + 50 * Math.cos(0.8), 20 + 50 * Math.sin(0.8)]
    const corners = s.part.body.edges.flatMap(({ curve }) => (curve.kind === 'line' ? [curve.a] : []))
    expect(corners.some((p) => Math.hypot(p[0] - end[0]!, p[2] - end[1]!) < 1e-6)).toBe(true)
  })

  // ASME Y14.5-2018 Fig. 4-8: the sign above the figures; ISO 129-1:2018: before them (both from memory).
  it('writes its sign as the practice does', () => {
    const moves = (k: number) =>
      `right ${4 * k}; up ${k}; arc R ${2.5 * k}, ${2 * k} long, turning left; to 0 across, ${3.5 * k} up; close`
    const inch = asme(`outline 1 thick, face front\n  ${moves(1)}\n`)
    expect(inch.find('⌒2').callout.lines).not.toEqual(
      iso(`outline 1 thick, face front\n  ${moves(1)}\n`).find('⌒2').callout.lines,
    )
    expect(inch.find('⌒2').direction).toBe('arc length')
    eachOnce(inch)
  })

  it.each([
    ['arc R 20, 30 long, turning left; to 0 across, 30 up; close', 'arc-from-where'],
    ['right 80; arc R 20, 130 long, turning left; close', 'arc-too-long'],
    ['right 80; arc R 20, turning left; close', 'missing-size'],
    ['right 80; arc R 20, 0 long, turning left; close', 'zero-size'],
  ])('%s is refused at its place', (moves, rule) => {
    const s = iso(`outline 10 thick, face front\n  ${moves}\n`)
    const [mark] = allMarks(s).filter((m) => m.weight === 'must change')
    expect(mark?.rule).toBe(rule)
    expect(mark?.span?.from).toBeGreaterThan(s.part.brief.text.indexOf('outline'))
  })

  it('prints as it reads', () => {
    const text = 'arc R 50, 40 long, turning left'
    const s = iso(`outline 10 thick, face front\n  right 80; up 20; ${text}; to 0 across, 70 up; close\n`)
    expect(printBrief(s.part.brief)).toContain(text)
  })
})
