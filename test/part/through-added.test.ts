import { describe, expect, it } from 'vitest'
import { faults, named, openBench } from './workbench.ts'

// Volumes by the closed formulas of prism and cylinder.
const bench = openBench()

const disc = (d: number, h: number) => (Math.PI / 4) * d * d * h
const BLOCK = 'block 80 × 60 × 20'
const BOSS = 'boss top: ⌀30 × 20 high\n  centred both ways'
const SOLID = 80 * 60 * 20 + disc(30, 20)

describe('a hole through everything on its way', () => {
  it.each([
    ['from under a boss', 'hole bottom: ⌀10 THRU\n  centred both ways', disc(10, 40)],
    ['from the face that a boss stands on', 'hole top: ⌀10 THRU\n  centred both ways', disc(10, 40)],
    ['from the boss', 'hole boss end: ⌀10 THRU\n  centred both ways', disc(10, 40)],
    [
      'with a counterbore from under a boss',
      'hole bottom: ⌀10 THRU, ⌴ ⌀18 ↧ 6\n  centred both ways',
      disc(10, 34) + disc(18, 6),
    ],
    ['beside a boss', 'hole top: ⌀10 THRU\n  10 from left; centred up', disc(10, 20)],
  ])('%s', (_, hole, taken) => {
    const part = bench.part(`${BLOCK}\n${BOSS}\n${hole}`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(SOLID - taken, 6)
  })

  it('counts the boss behind a blind hole as material', () => {
    const part = bench.part(`${BLOCK}\n${BOSS}\nhole bottom: ⌀10 ↧ 30, flat bottom\n  centred both ways`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(SOLID - disc(10, 30), 6)
  })

  it.each(['left', 'right'])('beside the axis of a disc, through its spigot, from the %s', (side) => {
    const part = bench.part(
      `disc ⌀90 × 22, outer face left\nspigot right: ⌀60 × 12 high\nhole ${side}: ⌀25 THRU\n  centred across; up 8 from axis`,
    )
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(disc(90, 22) + disc(60, 12) - disc(25, 34), 6)
  })
})

describe('faces at one level', () => {
  const SLOTTED = `outline 60 thick, face front
  right 80; up 40; left 30; down 15; left 20; up 15; left 30; close`
  const SLOTTED_VOLUME = (80 * 40 - 20 * 15) * 60
  const pocketDeep = 12

  it('take holes on each of them', () => {
    const part = bench.part(
      `${SLOTTED}\nholes top: 4X ⌀6 ↧ ${pocketDeep}, flat bottom\n  at 15, 15; 15, 45; 65, 15; 65, 45; from left and front`,
    )
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(SLOTTED_VOLUME - 4 * disc(6, pocketDeep), 6)
  })

  it('take mirrored holes', () => {
    const part = bench.part(
      `${SLOTTED}\nholes top: 2X ⌀6 ↧ ${pocketDeep}, flat bottom\n  12 from right; 30 from front; mirrored left-right`,
    )
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(SLOTTED_VOLUME - 2 * disc(6, pocketDeep), 6)
  })

  it('take a pocket on the further one, and refuse what lies over the slot', () => {
    const far = bench.part(
      `${SLOTTED}\npocket top: 16 × 20 ↧ 5, corners R 2\n  12 from right; centred front-rear`.replace(
        '12 from right; ',
        'across 12 from right; ',
      ),
    )
    expect(faults(far)).toEqual([])
    expect(far.properties.volume).toBeCloseTo(SLOTTED_VOLUME - 5 * (16 * 20 - (4 - Math.PI) * 4), 6)
    expect(faults(bench.part(`${SLOTTED}\nhole top: ⌀6 ↧ 5\n  40 from left; centred up`))).toEqual(['hole-off-part'])
  })
})

describe('edges', () => {
  it('of an outline go by the numbers of its corners', () => {
    const outline = 'outline 10 thick, face front\n  right 80; up 50; left 80; close'
    const part = bench.part(`${outline}\nchamfer corner 2: 5 × 45°\nround corner 4: R8`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(10 * (80 * 50 - 25 / 2 - (64 - Math.PI * 16)), 6)
    expect(faults(bench.part(`${outline}\nround corner 7: R8`))).toEqual(['unknown-name'])
  })

  it('are rounded as far as the mouth of a vee, alike before and after it', () => {
    const vee = 'notch front, top: vee, 40 wide, 90°\n  centred'
    const round = 'round top rear edge: R4'
    const [after, before] = [`${vee}\n${round}`, `${round}\n${vee}`].map((t) => bench.part(`block 80 × 45 × 40\n${t}`))
    expect(after!.properties.volume).toBeCloseTo(before!.properties.volume, 6)
    // below the edge the vee narrows: the round is longer at its foot; two pieces of it, no further faces
    expect(after!.body.faces).toHaveLength(11)
    expect(named(after!, 'round 1')).toHaveLength(2)
    expect(after!.chosen.find((c) => c.group === 'round 1')).toMatchObject({ count: 1 })
  })

  it('that are outer ones are the end of a spigot, not its foot', () => {
    const part = bench.part(
      'disc ⌀100 × 30, outer face right\nspigot left: ⌀60 × 10 high\nchamfer outer edges: 3X 1 × 45°',
    )
    expect(part.marks).toEqual([])
    // each chamfer takes a triangle of 1 × 1, its centroid a third in from the rim (Pappus)
    const ring = (d: number) => 2 * Math.PI * (d / 2 - 1 / 3) * 0.5
    expect(part.properties.volume).toBeCloseTo(disc(100, 30) + disc(60, 10) - 2 * ring(100) - ring(60), 6)
  })
})

it('knows the hole of an outline that is said as a bore by that name', () => {
  const part = bench.part(`outline 40 thick, face front
  right 60; up 60; slope left 10 up 10; left 50; close
bore front: ⌀25 H7 THRU
  30 from left; 30 from bottom
hole right, from right: ⌀5 THRU to bore
  centred across; 30 from bottom`)
  expect(faults(part)).toEqual([])
})

describe('a keyseat that ends at a shoulder', () => {
  const keyseat = (end: string) => `keyseat body, top: 6 wide × 3.5 deep × 22 long\n  ${end}`
  const lower = 'turned axis left-right\n  body ⌀20, 50 long\n  nose ⌀18, 10 long'
  /** Between the floor at 6.5 and the ⌀20, 6 wide, for each mm of length: a segment less its sides. */
  const section = (() => {
    const half = Math.asin(3 / 10)
    return 100 * half + 3 * Math.sqrt(91) - 6 * 6.5
  })()

  it('takes nothing of a larger step', () => {
    const plain = 'turned axis left-right\n  head ⌀40, 10 long\n  body ⌀20, 50 long'
    const at = (h: number) => bench.part(`${plain}\n${keyseat(`left end ${h} from head right face`)}`)
    const away = at(5)
    const there = bench.part(`${plain}\n${keyseat('left end at head right face')}`)
    expect(faults(there)).toEqual([])
    expect(there.properties.volume).toBeCloseTo(away.properties.volume, 6)
  })

  it('runs out over a smaller one, and takes nothing of it that stands higher than its floor', () => {
    const part = bench.part(`${lower}\n${keyseat('right end at body right face')}`)
    expect(faults(part)).toEqual([])
    const whole = bench.part(lower).properties.volume
    // 19 mm straight and a half-round end; that end is what the two ends of a keyseat of no straight length take, halved
    const round = bench.part(`${lower}\n${keyseat('left end 5 from left face').replace('22 long', '8 long')}`)
    const ends = whole - round.properties.volume - 2 * section
    expect(whole - part.properties.volume).toBeCloseTo(19 * section + ends / 2, 6)
  })
})
