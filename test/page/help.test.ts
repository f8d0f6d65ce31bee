import { beforeAll, describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { drawnOf } from '../../src/app/page/engine/drawn.ts'
import { helpBrief } from '../../src/app/page/slip/help-brief.ts'
import { picturedOf } from '../../src/app/page/slip/pictures.ts'
import { featureKeywords, keywords, stockKeywords } from '../../src/brief/vocabulary.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

describe('the explanation of each statement', () => {
  it.each(keywords)('%s: its example can be drawn, and its picture shows what it made', (keyword) => {
    const { text, span } = helpBrief(keyword)
    expect(text.slice(span.from)).toMatch(new RegExp(`^${keyword}`))
    const drawing = compile(text, kernel)
    if (drawing.part) kernel.free(drawing.part.solid)
    expect(drawing.marks.filter((m) => m.weight === 'must change')).toEqual([])
    const { box, lit } = picturedOf(drawnOf(drawing, 0), span)
    if ([...stockKeywords, ...featureKeywords].some((k) => k === keyword)) expect(lit.size).toBeGreaterThan(2)
    for (const i of lit) expect(drawing.sheet!.items[i]).toBeDefined()
    expect(box.max[0] - box.min[0]).toBeGreaterThan(20)
    expect(box.max[1] - box.min[1]).toBeGreaterThan(20)
  })
})
