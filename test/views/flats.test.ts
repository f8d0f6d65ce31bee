import { describe, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import { drawViews } from '../../src/views/draw-views.ts'

const kernel = await openKernel()

const viewsOf = (lines: string) =>
  drawViews(
    buildPart(readBrief(`units mm\npractice ISO, first angle\nturned axis left-right\n${lines}`), kernel),
    kernel,
  )

/*
 * No more views than the shape needs (ISO 128-3:2022 4.2, ASME Y14.3-2012 1.7; both from memory): a flat that the end view
 * shows in true shape has no section that shows it again.
 */
describe('views of a shaft with flats', () => {
  it.each([
    ['over its whole length', '  a ⌀30, 60 long\nflat a, top: 24 across\n'],
    [
      'on the largest step',
      '  a ⌀20, 40 long\n  b ⌀30, 20 long\n  c ⌀20, 40 long\nflats b, top and bottom: 24 across\n',
    ],
    ['six about the end', '  a ⌀20, 40 long\n  b ⌀30, 20 long\nflats b: 6X 27 A/F\n'],
  ])('%s are the end view beside the front', (_, lines) => {
    const { views } = viewsOf(lines)
    expect(views.filter((v) => v.kind === 'section')).toEqual([])
    const end = views.find((v) => v.side === 'left' || v.side === 'right')
    // the flats' own lines, seen edge-on: parallel to their faces and in full lines
    expect(end?.lines.filter((l) => l.kind === 'visible' && l.curve.kind === 'line').length).toBeGreaterThan(0)
  })

  it('between two collars are a section across it, and no end view that hides them', () => {
    const { views } = viewsOf(
      '  a ⌀40, 10 long\n  b ⌀30, 60 long\n  c ⌀40, 10 long\nflats b, top and bottom: 24 across\n',
    )
    expect(views.map((v) => v.id)).toEqual(['front', 'section A-A', 'pictorial'])
  })
})
