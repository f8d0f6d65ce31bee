import { describe, expect, it } from 'vitest'
import { faults, openBench } from './workbench.ts'

// Volumes by closed formulas of cylinders and boxes.
const bench = openBench()

const round = (d: number, h: number) => (Math.PI * d * d * h) / 4

describe('a step of a turned part and a side', () => {
  const stock = 'turned axis left-right\n  nose ⌀30, 20 long\n  base ⌀80, 12 long\n  tail ⌀20, 8 long'
  const solid = round(30, 20) + round(80, 12) + round(20, 8)
  const circle = '\n  on ⌀60 bolt circle, equal, first at 0°'

  it.each(['left', 'right'])('is its face on the %s', (side) => {
    const part = bench.part(`${stock}\nholes base, from ${side}: 4X ⌀8 THRU${circle}`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(solid - 4 * round(8, 12), 6)
  })

  it('is none where the larger neighbour stands against it', () => {
    expect(faults(bench.part(`${stock}\nholes nose, from right: 4X ⌀8 THRU${circle}`))).toEqual(['unknown-name'])
  })
})

it('a groove inside a tube is in its bore', () => {
  const part = bench.part(
    'tube ⌀60 outside, ⌀40 inside, 50 long, axis left-right\ngroove inside: 4 wide, bottom ⌀44\n  left side 10 from left face',
  )
  expect(faults(part)).toEqual([])
  expect(part.properties.volume).toBeCloseTo(round(60, 50) - round(40, 50) - (round(44, 4) - round(40, 4)), 6)
})

describe('the only step goes without its number', () => {
  const block = 'block 80 × 50 × 30'
  const steps = ['step top left: 20 from left, 10 from top', 'step top right: 20 from right, 10 from top']
  const hole = (face: string) => `hole ${face}: ⌀8 THRU\n  10 from left; centred up`

  it.each(['step floor', 'step top', 'step 1 floor', 'step 1 top'])('%s', (name) => {
    const part = bench.part(`${block}\n${steps[0]}\n${hole(name)}`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(80 * 50 * 30 - 20 * 50 * 10 - round(8, 20), 6)
  })

  it('and two of them need it', () => {
    const part = (name: string) => bench.part(`${block}\n${steps.join('\n')}\n${hole(name)}`)
    expect(faults(part('step top'))).toEqual(['unknown-name'])
    expect(faults(part('step 1 floor'))).toEqual([])
  })
})

it('offers axes where an axis is asked for, with their place', () => {
  const link =
    'outline 14 thick, face front\n  right 120; arc R 20 to 120 across, 40 up, turning left; left 120; arc R 20 to 0 across, 0 up, turning left; close'
  const { marks } = bench.part(`${link}\nhole front: ⌀20 THRU\n  on axis of side 4`)
  const mark = marks.find((m) => m.rule === 'unknown-name')!
  expect(mark.expected).toBe('side 1 axis (at 120 across, 20 up), side 2 axis (at 0 across, 20 up)')
  for (const name of ['side 1 axis', 'side 2 axis'])
    expect(faults(bench.part(`${link}\nhole front: ⌀20 THRU\n  on axis of ${name}`))).toEqual([])
})
