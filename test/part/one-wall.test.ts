import { describe, expect, it } from 'vitest'
import { faults, named, openBench } from './workbench.ts'

const bench = openBench()

const { PI } = Math
const TUBE = 'tube ⌀62 outside, ⌀45 inside, 40 long, axis left-right\n'
const tube = (PI / 4) * (62 ** 2 - 45 ** 2) * 40
const OUTLINE = `outline 30 thick, face front
  right 60; up 15; left 40; up 20; right 40; up 15; left 60; close
`
const BLOCK = `block 60 × 30 × 50
notch front, right: square, 20 wide, 40 deep
  centred
`
const clevis = (60 * 50 - 40 * 20) * 30

/** What a hole takes from one wall of a tube: the chord between both circles, over the hole's disc. */
function fromTube(r: number): number {
  const n = 20000
  let sum = 0
  for (let i = 0; i < n; i++) {
    const y = -r + (2 * r * (i + 0.5)) / n
    sum += 2 * Math.sqrt(r * r - y * y) * (Math.sqrt(31 ** 2 - y * y) - Math.sqrt(22.5 ** 2 - y * y)) * ((2 * r) / n)
  }
  return sum
}

describe('through one wall', () => {
  it.each(['THRU to bore', 'to bore', 'THRU one wall', 'through to the inside', 'thru one side only'])(
    '%s: of a tube, against numerical integration',
    (words) => {
      const part = bench.part(`${TUBE}hole outside, from top: ⌀6 ${words}\n  20 from left face`)
      expect(faults(part)).toEqual([])
      expect(part.properties.volume).toBeCloseTo(tube - fromTube(3), 2)
    },
  )

  it('and through both without those words', () => {
    const part = bench.part(`${TUBE}hole outside, top: ⌀6 THRU\n  20 from left face`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(tube - 2 * fromTube(3), 2)
  })

  it.each([
    ['an outline', OUTLINE],
    ['a block with a notch', BLOCK],
  ])('of a clevis made as %s', (_, stock) => {
    const hole = (depth: string) => bench.part(`${stock}hole top: ⌀10 ${depth}\n  15 from right; centred up`)
    const both = hole('THRU')
    const one = hole('THRU one wall')
    expect([...faults(both), ...faults(one)]).toEqual([])
    expect(both.properties.volume).toBeCloseTo(clevis - PI * 25 * 30, 4)
    expect(one.properties.volume).toBeCloseTo(clevis - PI * 25 * 15, 4)
    expect(named(both, 'hole 1 wall').length).toBe(2)
    expect(named(one, 'hole 1 wall').length).toBe(1)
  })

  it('into a hole that crosses it', () => {
    const block = 'block 60 × 40 × 50\nhole A front: ⌀12 THRU\n  centred both ways\n'
    const part = bench.part(`${block}hole top: ⌀6 THRU to hole A\n  centred both ways`)
    expect(faults(part)).toEqual([])
    const n = 20000
    let sum = 0
    for (let i = 0; i < n; i++) {
      const y = -3 + (6 * (i + 0.5)) / n
      sum += 2 * Math.sqrt(9 - y * y) * (25 - Math.sqrt(36 - y * y)) * (6 / n)
    }
    expect(part.properties.volume).toBeCloseTo(60 * 40 * 50 - PI * 36 * 40 - sum, 2)
  })
})

describe('what does not fit one wall', () => {
  it.each([
    ['nothing behind it', 'block 60 × 40 × 50\nhole top: ⌀6 THRU one wall\n  centred both ways', 'nothing-behind'],
    [
      'the bore stated after it',
      'bar ⌀40, 60 long\nhole outside, from top: ⌀6 to bore\n  30 from left face\nbore left face: ⌀20 THRU',
      'nothing-behind',
    ],
    [
      'another space than the one named',
      `block 60 × 40 × 50\nhole A front: ⌀12 THRU\n  centred both ways
hole B front: ⌀8 THRU\n  centred across; 40 from bottom\nhole top: ⌀4 THRU to hole A\n  centred both ways`,
      'other-behind',
    ],
    [
      'a hole wider than what it breaks into',
      'block 60 × 40 × 50\nhole A front: ⌀6 THRU\n  centred both ways\nhole top: ⌀12 THRU to hole A\n  centred both ways',
      'hole-too-large',
    ],
  ])('%s', (_, text, rule) => {
    expect(faults(bench.part(text))).toEqual([rule])
  })

  it.each([
    ['the bore of a tube', `${TUBE}hole outside, from top: ⌀6 ↧ 12\n  20 from left face`, '8.5 mm', 'THRU to bore'],
    [
      'a crossing hole',
      'block 60 × 40 × 50\nhole A front: ⌀12 THRU\n  centred both ways\nhole top: ⌀6 ↧ 25\n  centred both ways',
      '19 mm',
      'THRU to hole A',
    ],
    ['the gap of a clevis', `${BLOCK}hole top: ⌀10 ↧ 20\n  15 from right; centred up`, '15 mm', 'THRU one wall'],
  ])('a depth that breaks into %s says so, and what to write', (_, text, wall, write) => {
    const part = bench.part(text)
    const marks = part.marks.filter((m) => m.weight === 'must change')
    expect(marks.map((m) => m.rule)).toEqual(['breaks-into'])
    expect(marks[0]!.text).toContain(wall)
    expect(marks[0]!.expected).toContain(write)
    const { from, to } = marks[0]!.span!
    const whole = part.brief.text
    const at = whole.slice(0, from).lastIndexOf('↧')
    const mended = bench.part(`${whole.slice(0, at)}${write}${whole.slice(to)}`, '')
    expect(faults(mended)).toEqual([])
  })
})
