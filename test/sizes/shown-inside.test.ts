import { describe, expect, it } from 'vitest'
import { iso } from './sized.ts'

/*
 * What is inside stands in a section, in full lines (ASME Y14.3-2012, ISO 128-3:2022; from memory); when one is worth its
 * room, and when a further view is not, is common practice, no source.
 */
const viewsOf = (text: string) => iso(text).views.views.map((v) => v.id)

describe('a disc', () => {
  const disc = 'disc ⌀120 × 20, outer face front\n'
  const sunk = `holes front: 6X ⌀9 THRU, ⌴ ⌀15 ↧ 9
  on ⌀90 bolt circle, equal, one at 12 o'clock
`
  it('with a bore is shown in section, whether or not a face has a surface of its own', () => {
    const bore = 'bore front: ⌀40 H7 THRU\n'
    expect(viewsOf(disc + sunk + bore)).toEqual(['front', 'section A-A', 'pictorial'])
    expect(viewsOf(`${disc}${sunk}${bore}texture front: Ra 1.6, machined\n`)).toEqual([
      'front',
      'section A-A',
      'pictorial',
    ])
  })

  it('without one is, as soon as its side is full of dashes', () => {
    expect(viewsOf(disc + sunk)).toEqual(['front', 'section A-A', 'pictorial'])
    const two = "holes front: 2X ⌀9 THRU\n  on ⌀90 bolt circle, equal, one at 12 o'clock\n"
    expect(viewsOf(disc + two)).toEqual(['left', 'front', 'pictorial'])
  })

  it('of which all holes stand at an angle is cut through two of them', () => {
    const s = iso(`${disc}bore front: ⌀40 H7 THRU
holes front: 8X ⌀6.6 THRU, ⌵ ⌀12.6 × 90°
  on ⌀90 bolt circle, equal, first at 22.5°
`)
    const cut = s.views.views.find((v) => v.kind === 'section')!
    const holes = cut.lines.filter((l) => l.kind === 'centre' && l.features?.includes('hole 1'))
    const heights = holes.flatMap(({ curve: c }) => (c.kind === 'line' ? [Math.round(c.a[1] * 1e6) / 1e6] : []))
    expect(heights.sort((a, b) => a - b)).toEqual([-45, 45])
    expect(s.sizes.proof.complete).toBe(true)
  })
})

describe('a hole across a bush', () => {
  const bush = `turned axis left-right
  body ⌀40, 60 long
bore left: ⌀20 H7 THRU
`
  it('has its size and its place in the section that holds its axis, without a further view', () => {
    const s = iso(`${bush}hole body, from top: ⌀4 THRU\n  12 from left\n`)
    expect(s.views.views.map((v) => v.id)).toEqual(['section A-A', 'pictorial'])
    const sizes = s.sizes.dimensions.filter((d) =>
      d.callout.lines.flat().some((t) => t === '12' || /⌀4\b/.test(`${t}`)),
    )
    expect(sizes.map((d) => d.view)).toEqual(['section A-A', 'section A-A'])
    expect(s.sizes.proof.complete).toBe(true)
    expect(s.sizes.marks.filter((m) => m.rule === 'no-view-for-size')).toEqual([])
  })

  it('keeps its view where there are several, or the section would cut it away', () => {
    const row = 'holes body, from top: 2X ⌀4 THRU\n  20 apart; first 12 from left\n'
    expect(viewsOf(bush + row)).toContain('top')
    expect(viewsOf(`${bush}hole body, from front: ⌀4 THRU\n  12 from left\n`)).toContain('front')
  })
})

describe('a section without a word on what it goes through', () => {
  const cover = (views: string) => `plate 260 × 180 × 18
pocket bottom: 200 × 120 ↧ 10, corners R12
  centred both ways
holes top: 3X ⌀9 THRU
  3 across 60 apart, first 15 from left; 15 from front
${views}`
  const plane = (text: string) => iso(text).views.views.find((v) => v.id === 'front')!.cuttingPlanes[0]!.path[0]![0]

  it('goes through the pocket that no view shows in full lines, before a row of holes', () => {
    expect(plane(cover('views front, top; section A-A as right\n'))).toBeCloseTo(130, 6)
    // Seen from below it shows: then through a hole.
    expect([15, 75, 135]).toContain(Math.round(plane(cover('views front, bottom; section A-A as right\n'))))
  })

  it('is told what to go through, or which view would show the rest', () => {
    const expected = (views: string) =>
      iso(cover(views))
        .sizes.marks.filter((m) => m.rule === 'size-to-hidden-line')
        .map((m) => m.expected)
    expect(expected('views front, top\n')).toContain('`section A-A through pocket`')
    expect(expected('views front, top; section A-A through hole 1 as right\n')).toContain(
      '`section B-B through pocket`',
    )
    expect(expected('views front, top; section A-A as right\n')).toContain(
      'the bottom view, from which the feature is worked',
    )
  })

  it('is not needed where the program proposes the view from below', () => {
    expect(viewsOf(cover(''))).toContain('bottom')
  })
})

// ISO 1101, ISO 21920-1 (from memory): indications stand on the outline of the surface, square to it.
describe('a cone', () => {
  it('takes its texture and its frame at its contour', () => {
    const s = iso(`turned axis left-right
  head ⌀64, 8 long
  cone ⌀48 tapered to ⌀40, 60 long
bore left: ⌀25 H7 THRU
texture cone: Ra 0.8, machined
datum A bore
frame cone: runout 0.03 A
`)
    expect(s.sizes.marks.filter((m) => m.rule === 'no-view-for-sign')).toEqual([])
    const places = (s.sizes.annotations ?? []).flatMap((a) => a.places)
    const outs = places.flatMap((p) => (p.kind === 'line' ? [p.out] : []))
    expect(outs.length).toBeGreaterThan(0)
    // 4 mm in radius over 60 mm: square to the slant, away from the axis.
    const slant = Math.atan(4 / 60)
    for (const out of outs) {
      expect(out[0]).toBeCloseTo(Math.sin(slant), 9)
      expect(Math.abs(out[1])).toBeCloseTo(Math.cos(slant), 9)
    }
  })
})
