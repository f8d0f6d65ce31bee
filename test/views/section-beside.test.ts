import { expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import { drawViews } from '../../src/views/draw-views.ts'

const kernel = await openKernel()
const drawn = (lines: string) =>
  drawViews(buildPart(readBrief(`units mm\npractice ISO, first angle\n${lines}`), kernel), kernel).views

const TUBE = (axis: string, crossed: string) => `tube ⌀80 outside, ⌀60 inside, 100 long, axis ${axis}
${crossed}groove bore: 3 wide, bottom ⌀64
   ${axis === 'up-down' ? 'lower' : 'left'} side 30 from ${axis === 'up-down' ? 'bottom' : 'left'} face
`
// Sizes stand at full lines (ISO 129-1, ASME Y14.5-2018 4.1; from memory): the inside of a hollow part needs a section.
it.each([
  ['up-down', 'bottom'],
  ['left-right', 'left'],
])('a tube %s with a hole from the front is cut in the third direction, the front stays whole', (axis, face) => {
  const hole = `hole outside, from front: ⌀20 THRU\n   50 from ${face} face\n`
  const [front, section, more] = drawn(TUBE(axis, hole))
  expect([front!.id, section!.id, more!.id]).toEqual(['front', 'section A-A', 'pictorial'])
  expect(front!.cuttingPlanes.map((c) => c.letter)).toEqual(['A'])
  expect(section!.lines.some((l) => l.kind === 'hidden')).toBe(false)
})

it('is looked at from where a hole in one wall is left behind the plane', () => {
  const both = (side: string) =>
    `hole outside, from front: ⌀20 THRU\n   50 from bottom face\nhole outside, from ${side}: ⌀10 THRU one wall\n   20 from top face\n`
  const sideOf = (side: string) => drawn(TUBE('up-down', both(side))).find((v) => v.kind === 'section')!.side
  expect(sideOf('right')).toBe('left')
  expect(sideOf('left')).toBe('right')
})
