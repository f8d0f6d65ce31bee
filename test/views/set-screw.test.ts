import { expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import { drawViews } from '../../src/views/draw-views.ts'

const kernel = await openKernel()

const ids = (holes: string) =>
  drawViews(
    buildPart(
      readBrief(`units mm
practice ISO, first angle
turned axis left-right
  hub ⌀60, 25 long
  rim ⌀120, 10 long
bore left: ⌀25 H7 THRU
${holes}hole hub, from top: M6 THRU to bore
  10 from left face
`),
      kernel,
    ),
    kernel,
  ).views.map((v) => v.id)

// A hole's place and note need a view in which it is seen (ASME Y14.5-2018 4.1, ISO 129-1; from memory).
it('a set screw that the section holds needs no view of its own', () => {
  expect(ids('')).toEqual(['section A-A', 'pictorial'])
})

it('a set screw past which the section is aligned to other holes has a view from its side', () => {
  expect(ids('holes right: 4X ⌀12 THRU\n  on ⌀85 bolt circle, equal, first at 45°\n')).toContain('top')
})
