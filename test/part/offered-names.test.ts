import { describe, expect, it } from 'vitest'
import { faults, openBench } from './workbench.ts'

const bench = openBench()

const PILLOW = `block 140 × 40 × 80
step top left: 40 from left, 60 from top
step top right: 40 from right, 60 from top
`
const LEVER = `outline 12 thick, face front
  right 110; arc R 10 to 110 across, 20 up, turning left; left 70; slope left 14 up 14
  arc R 22 to 0 across, 0 up, turning left; close
`
const PULLEY = `turned axis left-right
  hub ⌀60, 25 long
  rim ⌀150, 45 long
`
/** The names that a mark offers, without the places said behind them. */
const offers = (expected: string) => expected.replace(/ \([^)]*\)/g, '').split(', ')
const area = (text: string) => bench.part(text).properties.volume

describe('names that are offered can be written', () => {
  it.each([
    ['a block', 'block 60 × 40 × 30\n'],
    ['a block with steps', PILLOW],
    ['an outline', LEVER],
    ['turned stock', PULLEY],
  ])('edges of %s', (_, stock) => {
    const mark = bench.part(`${stock}chamfer heel edge: 1 × 45°`).marks.find((m) => m.rule === 'unknown-name')!
    // the longest of the names, so that the nearest is not all that is offered
    const names = offers(mark.expected!)
    expect(names.length).toBeGreaterThan(0)
    for (const name of names) {
      const part = bench.part(`${stock}chamfer ${name}: 1 × 45°`)
      expect(faults(part), name).not.toContain('unknown-name')
    }
  })

  it('corners and sides of an outline, each with its place', () => {
    const mark = bench
      .part(`${LEVER}hole front: ⌀4 THRU\n  40 from heel; 10 from bottom`)
      .marks.find((m) => m.rule === 'unknown-name')!
    expect(mark.expected).toContain('corner 2 (at 110 across, 0 up)')
    expect(mark.expected).toContain('side 2 (from 110, 20 to 40, 20)')
    for (const name of offers(mark.expected!).filter((n) => n.startsWith('corner'))) {
      const part = bench.part(`${LEVER}hole front: ⌀4 THRU\n  across 20 from ${name}; 10 from bottom`)
      expect(
        faults(part).filter((r) => r !== 'hole-off-part'),
        name,
      ).toEqual([])
    }
    expect(faults(bench.part(`${LEVER}hole top: ⌀4 THRU\n  80 from bottom`))).toEqual(['unknown-name'])
    const onSide = bench.part(`${LEVER}hole side 2, from top: ⌀4 THRU\n  across 30 from corner 4; centred up`)
    expect(faults(onSide)).toEqual([])
  })

  it('never the one that was refused', () => {
    for (const text of ['flat bore, top: 20 across', 'chamfer bore edges: 1 × 45°', 'round top left corner: R2']) {
      const stock = text.startsWith('flat') ? 'bar ⌀40, 60 long\nbore left face: ⌀20 THRU\n' : LEVER
      const mark = bench.part(stock + text).marks.find((m) => m.rule === 'unknown-name')!
      const refused = /(?:flat|chamfer|round) ([^:,]*)/.exec(text)![1]!
      expect(offers(mark.expected!)).not.toContain(refused)
      expect(mark.text).not.toContain(`nearest name is “${refused}”`)
    }
  })
})

describe('edges that a step leaves', () => {
  const stepped = 140 * 40 * 80 - 2 * 40 * 40 * 60
  /** What a round takes from a square edge: (1 − π/4) r² for each length. */
  const round = (r: number, long: number) => (1 - Math.PI / 4) * r * r * long
  it('the head of a pillow block is rounded by the two names of its edge', () => {
    const part = bench.part(`${PILLOW}round top left edge and top right edge: 2X R20`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(stepped - 2 * round(20, 40), 3)
  })
  it('the foot by the same, the side first', () => {
    const part = bench.part(`${PILLOW}round left top edge and right top edge: 2X R5`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(stepped - 2 * round(5, 40), 3)
    const { max } = part.body.box
    expect(max).toEqual([140, 40, 80].map((v) => expect.closeTo(v, 6)))
  })
})

describe('one face, one answer', () => {
  it('an end of a step is worked as the face that it is', () => {
    const holes = (face: string) => `${PULLEY}holes ${face}: 2X ⌀6 ↧ 12\n  on ⌀44 bolt circle, equal, one at 12 o'clock`
    const part = bench.part(holes('hub left face'))
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(area(holes('left face')), 6)
  })
  it('a hole in a round surface takes its side with or without from', () => {
    const hole = (head: string) => `${PULLEY}hole ${head}: ⌀6 ↧ 12\n  12 from hub left face`
    expect(faults(bench.part(hole('hub, top')))).toEqual([])
    expect(area(hole('hub, top'))).toBeCloseTo(area(hole('hub, from top')), 9)
  })
  it('a hole stands on the axis of an arc of the outline', () => {
    const part = bench.part(`${LEVER}hole front: ⌀8 THRU\n  on axis of side 1`)
    expect(faults(part)).toEqual([])
    // R10 from 110, 0 to 110, 20 is a half circle about 110, 10
    expect(part.features[0]!.members[0]!.point).toEqual(
      [110, expect.anything(), 10].map((v) => (typeof v === 'number' ? expect.closeTo(v, 9) : v)),
    )
  })
})
