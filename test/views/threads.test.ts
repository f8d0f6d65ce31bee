import { beforeAll, describe, expect, it } from 'vitest'
import type { ViewRequest } from '../../src/brief/brief.ts'
import { readBrief } from '../../src/brief/read.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import { drawViews } from '../../src/views/draw-views.ts'
import { section, view } from './parts.ts'
import { toldAll } from './told.ts'

// Representation of threads: ISO 6410-1 and ASME Y14.6, simplified (both from memory).

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

const plate = (practice: string, hole: string) =>
  `units mm\npractice ${practice}\nplate 40 × 30 × 20\nhole top: ${hole}\n     10 from left; 12 from front\n`

/** The lines of one view, those of the plate's own outline left out. */
function lines(text: string, id: string, ...views: readonly ViewRequest[]) {
  const part = buildPart(readBrief(text), kernel)
  expect(part.marks.filter((m) => m.weight === 'must change')).toEqual([])
  const set = drawViews({ ...part, brief: { ...part.brief, views } }, kernel)
  kernel.free(part.solid)
  return set.views.find((v) => v.id === id)!.lines.filter((l) => l.kind !== 'centre' && !l.covered)
}
const cut = { ...section('A'), as: 'front' } as ViewRequest
const frame = (w: number, h: number) => [
  `visible line 0,0 0,${h}`,
  `visible line 0,0 ${w},0`,
  `visible line 0,${h} ${w},${h}`,
  `visible line ${w},0 ${w},${h}`,
]

describe('a blind tapped hole: M8, 12 of full thread, drilled ⌀6.8 to 16 with a flat bottom', () => {
  const hole = 'M8 ↧ 12, drill ⌀6.8 ↧ 16, flat bottom'
  const iso = plate('ISO, first angle', hole)
  const asme = plate('ASME', hole)

  it('shows end-on three quarters of a narrow circle, open at the upper right (ISO)', () => {
    const top = lines(iso, 'top', view('top'), view('front'))
    const root = top.filter((l) => l.kind === 'thread')
    expect(root).toHaveLength(1)
    const arc = root[0]!.curve
    expect(arc).toMatchObject({ kind: 'arc', c: [10, 12], r: 4 })
    expect(arc.kind === 'arc' && arc.sweep).toBeCloseTo(1.5 * Math.PI, 12)
    // Nothing at 45°, the middle of the upper right quarter.
    if (arc.kind === 'arc') expect((arc.from + arc.sweep) % (2 * Math.PI)).toBeLessThan(Math.PI / 4)
    expect(toldAll(top.filter((l) => l.kind !== 'thread'))).toEqual(
      ['visible circle 10,12 r3.4', ...frame(40, 30)].sort(),
    )
  })

  it('shows end-on a dashed circle about the drilled one (ASME)', () => {
    expect(toldAll(lines(asme, 'top', view('top'), view('front')))).toEqual(
      ['visible circle 10,12 r3.4', 'hidden circle 10,12 r4', ...frame(40, 30)].sort(),
    )
  })

  it('is dashed where hidden, with the limit of the full thread across it (both)', () => {
    for (const text of [iso, asme]) {
      expect(toldAll(lines(text, 'front', view('top'), view('front')))).toEqual(
        [
          ...frame(40, 20),
          'hidden line 6.6,4 6.6,20',
          'hidden line 13.4,4 13.4,20',
          'hidden line 6.6,4 13.4,4',
          'hidden line 6,8 6,20',
          'hidden line 14,8 14,20',
          'hidden line 6,8 14,8',
        ].sort(),
      )
    }
  })

  it('shows in a section the drilled wall and the limit in full lines, the root narrow (ISO) or dashed (ASME)', () => {
    for (const [text, root] of [
      [iso, 'thread'],
      [asme, 'hidden'],
    ] as const) {
      expect(toldAll(lines(text, 'section A-A', view('top'), cut))).toEqual(
        [
          ...frame(40, 20),
          'visible line 6.6,4 6.6,20',
          'visible line 13.4,4 13.4,20',
          'visible line 6.6,4 13.4,4',
          `${root} line 6,8 6,20`,
          `${root} line 14,8 14,20`,
          'visible line 6,8 14,8',
        ].sort(),
      )
    }
  })

  it('is nothing from behind', () => {
    const bottom = lines(iso, 'bottom', view('bottom'), view('top'))
    expect(bottom.some((l) => l.kind === 'thread')).toBe(false)
  })
})

describe('a tapped hole that goes through', () => {
  it('has no limit, and its root shows from both sides', () => {
    const text = plate('ISO, first angle', 'M8 THRU, drill ⌀6.8')
    expect(toldAll(lines(text, 'front', view('top'), view('front')))).toEqual(
      [
        ...frame(40, 20),
        'hidden line 6.6,0 6.6,20',
        'hidden line 13.4,0 13.4,20',
        'hidden line 6,0 6,20',
        'hidden line 14,0 14,20',
      ].sort(),
    )
    expect(lines(text, 'bottom', view('bottom')).filter((l) => l.kind === 'thread')).toHaveLength(1)
  })

  it('starts where its root leaves the countersink: ⌀10 × 90° meets ⌀8 at 1 below the face', () => {
    const text = plate('ISO, first angle', 'M8 THRU, drill ⌀6.8, ⌵ ⌀10 × 90°')
    const told = toldAll(lines(text, 'section A-A', view('top'), cut))
    expect(told.filter((l) => l.startsWith('thread'))).toEqual(['thread line 14,0 14,19', 'thread line 6,0 6,19'])
  })

  it('has none where it is modelled at the thread’s own size, nor has a plain hole', () => {
    for (const hole of ['M8 THRU', '⌀6.8 THRU']) {
      const top = lines(plate('ISO, first angle', hole), 'top', view('top'))
      expect(top.some((l) => l.kind === 'thread')).toBe(false)
    }
  })
})

describe('a tapped hole that is crossed by another', () => {
  // M8 from the right, full thread to x = 10; the ⌀5 through hole about x = 28 takes the wall away from 25.5 to 30.5.
  const text = (practice: string) => `units mm
practice ${practice}
block 40 × 30 × 20
hole top: ⌀5 THRU
     28 from left; 15 from front
hole right: M8 ↧ 30, drill ⌀6.8 ↧ 34, flat bottom
     15 from front; 10 from bottom
`
  const roots = (all: ReturnType<typeof lines>, kind: string, off: number) =>
    all.flatMap(({ kind: k, curve: c }) =>
      k === kind && c.kind === 'line' && Math.abs(Math.abs(c.a[1] - 10) - off) < 1e-6 && c.a[1] === c.b[1]
        ? [[c.a[0], c.b[0]].sort((a, b) => a - b)]
        : [],
    )

  it('keeps its thread lines on either side, cut, and the line across its end (ISO)', () => {
    const all = lines(text('ISO, first angle'), 'section A-A', view('top'), cut)
    const found = roots(all, 'thread', 4)
    expect(found.filter(([from]) => Math.abs(from! - 10) < 1e-6)).toHaveLength(2)
    expect(found.filter(([, to]) => Math.abs(to! - 40) < 1e-6)).toHaveLength(2)
    for (const [from, to] of found) expect(to! <= 28 || from! >= 28, `${from} to ${to}`).toBe(true)
    const ends = all.filter(
      ({ kind, curve: c }) =>
        kind === 'visible' && c.kind === 'line' && Math.abs(c.a[0] - 10) < 1e-6 && Math.abs(c.b[0] - 10) < 1e-6,
    )
    expect(ends.length).toBeGreaterThan(0)
  })

  it('keeps them hidden (ASME)', () => {
    const found = roots(lines(text('ASME'), 'front', view('front')), 'hidden', 4)
    expect(Math.min(...found.flat())).toBeCloseTo(10, 6)
    expect(Math.max(...found.flat())).toBeCloseTo(40, 6)
  })
})
