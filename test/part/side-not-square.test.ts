import { describe, expect, it } from 'vitest'
import { openBench } from './workbench.ts'

const bench = openBench()

const WEDGE = `outline 40 thick, face front
  right 120; up 20; slope left 100 up 60; left 20; close
`
const ROUND = `outline 40 thick, face front
  right 80; arc R 15 to 80 across, 30 up, turning left; left 80; close
`

describe('a side of an outline that no feature can be worked into', () => {
  it.each([
    ['slopes', WEDGE, 'hole side 1: ⌀10 ↧ 15\n  centred both ways', 'so that this side runs right or up'],
    [
      'slopes',
      WEDGE,
      'slot side 1: 8 × 20 overall ↧ 4, long way front-rear\n  centred both ways',
      'front, rear, bottom',
    ],
    ['slopes', WEDGE, 'hole front: ⌀10 THRU\n  40 from side 1; 10 from bottom', 'front, rear, bottom'],
    ['is round', ROUND, 'hole side 1: ⌀10 ↧ 5\n  centred both ways', 'on axis of side 1'],
  ])('%s: that is said, and what to write instead', (word, stock, feature, expected) => {
    const { marks } = bench.part(stock + feature)
    expect(marks.map((m) => m.rule)).toEqual(['side-not-square'])
    expect(marks[0]!.text).toMatch(new RegExp(`^The outline’s side 1 ${word}: `))
    expect(marks[0]!.expected).toContain(expected)
  })

  it('can be written as is advised: laid on its slope, the hole square to it', () => {
    const laid = bench.part(`outline 40 thick, face front
  right 116; slope left 60 up 50; left 56; close
hole bottom: ⌀10 ↧ 15, flat bottom
  40 from left; centred front-rear
`)
    expect(laid.marks).toEqual([])
    // trapezium × thickness, less the hole
    expect(laid.properties.volume).toBeCloseTo(((116 + 56) / 2) * 50 * 40 - Math.PI * 25 * 15, 3)
  })
})
