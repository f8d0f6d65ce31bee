import { describe, expect, it } from 'vitest'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { allMarks, iso, type Sized } from './sized.ts'

const SHAFT = `turned axis left-right
  seat ⌀25 k6, 32 long
  collar ⌀36, 8 long
  drive ⌀24 h6, 60 long
`
const BUSH = `turned axis left-right
  flange ⌀60, 8 long
  body ⌀42 p6, 40 long
bore left: ⌀30 H7 THRU
`

function expectProper(s: Sized): void {
  expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
  expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
  expect(rankOf(s.part.body, makingOf(s.part), s.sizes.dimensions)).toMatchObject({ missing: 0, repeated: 0 })
}
// Undercuts stand at their shoulder (DIN 509, ISO 18388, from memory). Volumes: a ring π(R² − r²)·w.
describe('a groove at a shoulder', () => {
  it.each([
    ['said with at', 'right side at collar left face'],
    ['said with no distance', 'right side 0 from collar left face'],
  ])('%s needs no size to it', (_, place) => {
    const s = iso(`${SHAFT}groove seat: 2 wide, bottom ⌀24\n  ${place}\n`)
    expectProper(s)
    expect(s.texts).not.toContain('0')
    expect(s.texts).toEqual(expect.arrayContaining(['2', '⌀24', '32']))
    const plain = Math.PI * (12.5 ** 2 * 32 + 18 ** 2 * 8 + 12 ** 2 * 60)
    expect(s.part.properties.volume).toBeCloseTo(plain - Math.PI * (12.5 ** 2 - 12 ** 2) * 2, 6)
    expect(s.part.body.faces.some((f) => f.name === 'collar left face')).toBe(true)
  })

  it('prints with at', () => {
    const text = `units mm\npractice ISO\n${SHAFT}groove seat: 2 wide, bottom ⌀24\n  right side 0 from collar left face\n`
    const printed = printBrief(readBrief(text))
    expect(printed).toContain('right side at collar left face')
    expect(readBrief(printed).marks).toEqual([])
  })
})

describe('a groove by its depth', () => {
  it('is sized by it', () => {
    const s = iso(`${SHAFT}groove drive: 3 wide, 1 deep\n  left side at collar right face\n`)
    expectProper(s)
    expect(s.texts).toEqual(expect.arrayContaining(['3', '1']))
  })
})

describe('a groove in a bore', () => {
  it('has its width and diameter as they were written', () => {
    const s = iso(`${BUSH}groove bore: 3 wide, bottom ⌀33\n  left side 20 from left face\n`)
    expectProper(s)
    expect(s.texts).toEqual(expect.arrayContaining(['3', '⌀33', '20']))
    expect(s.texts).not.toContain('23')
  })
})

// The wall of a tube is one number all along; a groove in the bore parts the bore and adds its own bottom.
it.each(['left-right', 'up-down'])('a tube by its wall, %s, has a groove in its bore', (lie) => {
  const [near, side] = lie === 'left-right' ? ['left', 'left'] : ['bottom', 'lower']
  const s = iso(
    `tube ⌀80 outside, wall 10, 100 long, axis ${lie}\ngroove bore: 3 wide, bottom ⌀64\n  ${side} side 30 from ${near} face\n`,
  )
  expect([...s.texts].sort()).toEqual(['10', '100', '3', '30', '⌀64', '⌀80'])
  expect(s.sizes.proof).toMatchObject({ complete: true, missing: [], repeated: [] })
  expect(allMarks(s)).toEqual([])
})

// round a corner where no view along the wall's first direction is cut, the section beside it shows the wall
it('a wall stands in the section that shows it cut', () => {
  const s = iso(
    'tube ⌀80 outside, wall 10, 100 long, axis up-down\nhole outside, from front: ⌀20 THRU\n  50 from bottom face\ngroove bore: 3 wide, bottom ⌀64\n  lower side 20 from bottom face\n',
  )
  expect(s.views.views.find((v) => v.id === s.find('10').view)!.kind).toBe('section')
  expect(allMarks(s)).toEqual([])
})
