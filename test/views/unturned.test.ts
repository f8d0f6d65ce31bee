import { beforeAll, describe, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import { drawViews } from '../../src/views/draw-views.ts'
import { onHeader } from '../check/subject.ts'

// ISO 128-3 and ASME Y14.3 (from memory): a section stands in the direction of its arrows, or its rotation is said.
// Only about a round outline may a straight plane be turned into another view without misreading.

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

const GLAND = `disc ⌀100 × 16, outer face front
bore front: ⌀40 THRU
holes A front: 2X ⌀11 THRU
  80 apart, centred; centred up`

function sectionOf(lines: string) {
  const part = buildPart(readBrief(onHeader('iso', lines)), kernel)
  const views = drawViews(part, kernel)
  kernel.free(part.solid)
  const section = views.views.find((v) => v.kind === 'section')!
  return { name: section.side, size: section.box.max.map((m, i) => Math.round((m - section.box.min[i]!) * 1e3) / 1e3) }
}

describe('a section through holes beside the vertical', () => {
  it('is turned into the side view of a round flange', () => {
    const { name, size } = sectionOf(GLAND)
    expect(['left', 'right']).toContain(name)
    expect(size).toEqual([16, 100])
  })

  it.each(['', '\nviews front; section A-A'])('lies as it is cut where flats make the outline lower%s', (views) => {
    const { name, size } = sectionOf(`${GLAND}\nflats rim, top and bottom: 70 across${views}`)
    expect(name).toBe('top')
    expect(size).toEqual([100, 16])
  })
})
