import { describe, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import { drawViews } from '../../src/views/draw-views.ts'

const kernel = await openKernel()
const drawn = (lines: string) =>
  drawViews(buildPart(readBrief(`units mm\npractice ISO, first angle\n${lines}`), kernel), kernel).views
const ids = (lines: string) => drawn(lines).map((v) => v.id)

// ISO 128-3 and ASME Y14.3: shafts, bolts and pins are not drawn in section along their axis; from memory.
describe('a solid bar', () => {
  const bar = (hole: string) => `round bar ⌀25, 160 long, axis left-right\n${hole}`

  it('with a blind hole in one end is drawn whole, beside the view of that end', () => {
    expect(ids(bar('hole left face: M10 ↧ 25, drill ⌀8.5 ↧ 30\n  on axis\n'))).toEqual(['front', 'left', 'pictorial'])
    expect(ids(bar('hole right face: ⌀8 ↧ 30\n  on axis\n'))).toEqual(['front', 'right', 'pictorial'])
  })

  it('is cut where it is bored through or deep, for it is a tube or a sleeve then', () => {
    expect(ids(bar('hole left face: ⌀8 THRU\n  on axis\n'))).toContain('section A-A')
    expect(ids(bar('hole left face: ⌀8 ↧ 100\n  on axis\n'))).toContain('section A-A')
    expect(ids(bar('hole left face: ⌀18 ↧ 30, flat bottom\n  on axis\n'))).toContain('section A-A')
    const end = (wide: number) =>
      ids(`turned axis left-right\n  body ⌀60, 150 long\n  end ⌀30, 40 long\nbore right: ⌀${wide} ↧ 30\n`)
    expect(end(20)).toContain('section A-A')
    expect(end(12)).toEqual(['front', 'right', 'pictorial'])
  })
})

describe('a keyseat', () => {
  const shaft = (side: string) => `turned axis left-right
  body ⌀45, 150 long
keyseat body, ${side}: 10 wide × 5 deep × 100 long
  left end 10 from left face
`
  it.each(['top', 'bottom'])('is seen from its own side: %s', (side) => {
    expect(ids(shaft(side))).toEqual(['front', side, 'section A-A', 'pictorial'])
  })
})

it('a cutting plane is marked once, in the end view and not in the section beside it', () => {
  const views = drawn(`turned axis left-right
  flange ⌀80, 10 long
  body ⌀40, 50 long
bore left: ⌀20 THRU
holes flange left face: 4X ⌀7 THRU
  on ⌀60 bolt circle, equal, one at 3 o'clock
keyseat body, top: 8 wide × 4 deep × 20 long
  left end 10 from body left face
`)
  expect(views.map((v) => v.id)).toEqual(['left', 'section A-A', 'top', 'section B-B', 'pictorial'])
  expect(views.map((v) => v.cuttingPlanes.map((c) => c.letter).join())).toEqual(['A', 'B', '', '', ''])
})
