import { describe, expect, it } from 'vitest'
import type { Curve2 } from '../../src/geometry/curve2.ts'
import { united, unwound, without } from '../../src/views/conventions/intervals.ts'
import { withEnds } from '../../src/views/conventions/line-ends.ts'
import { nearest } from '../../src/views/conventions/nearest.ts'
import { byPrecedence } from '../../src/views/conventions/precedence.ts'
import { shownCurves } from '../../src/views/conventions/shown-curves.ts'
import { FRAMES, ISOMETRIC } from '../../src/views/frames.ts'
import { projectCurve } from '../../src/views/project.ts'
import type { ExactView, LineKind, ViewLine } from '../../src/views/view.ts'
import { told, toldAll } from './told.ts'

const line = (
  kind: LineKind,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  more: Partial<ViewLine> = {},
): ViewLine => ({
  curve: { kind: 'line', a: [ax, ay], b: [bx, by] },
  kind,
  sources: [],
  ...more,
})
const arc = (kind: LineKind, r: number, from: number, sweep: number): ViewLine => ({
  curve: { kind: 'arc', c: [0, 0], r, from, sweep },
  kind,
  sources: [],
})
const T = 1e-6

// Precedence: ASME Y14.2-2014 §2.4 and ISO 128-2, visible > hidden > cutting plane > centre (from memory).
describe('precedence', () => {
  it('draws a visible line over a hidden one in the same place', () => {
    expect(toldAll(byPrecedence([line('hidden', 0, 0, 10, 0), line('visible', 10, 0, 0, 0)], T))).toEqual([
      'visible line 0,0 10,0',
    ])
  })

  it('leaves of a hidden line what no visible line covers, and of a centre line what neither does', () => {
    const lines = [line('centre', -5, 0, 30, 0), line('hidden', 0, 0, 20, 0), line('visible', 0, 0, 8, 0)]
    expect(toldAll(byPrecedence(lines, T))).toEqual([
      'centre line -5,0 0,0',
      'centre line 20,0 30,0',
      'hidden line 8,0 20,0',
      'visible line 0,0 8,0',
    ])
  })

  it('lets the cutting plane go before the centre line', () => {
    const lines = [line('centre', 0, 0, 10, 0), line('cutting plane', -2, 0, 12, 0)]
    expect(toldAll(byPrecedence(lines, T))).toEqual(['cutting plane line -2,0 12,0'])
  })

  it('joins collinear neighbours and keeps the sources of both', () => {
    const a = line('visible', 0, 0, 4, 3, { sources: [{ edge: 1, faces: [1, 2] }] })
    const b = line('visible', 8, 6, 4, 3, { sources: [{ edge: 2, faces: [3, 4] }] })
    const [joined, ...rest] = byPrecedence([a, b], T)
    expect(rest).toEqual([])
    expect(told(joined!.curve)).toBe('line 0,0 8,6')
    expect(joined!.sources.map((s) => s.edge)).toEqual([1, 2])
  })

  it('does not join parallel lines, crossing lines, or collinear lines with a space between', () => {
    const lines = [
      line('visible', 0, 0, 10, 0),
      line('visible', 0, 1, 10, 1),
      line('visible', 12, 0, 20, 0),
      line('visible', 5, -5, 5, 5),
    ]
    expect(byPrecedence(lines, T)).toHaveLength(4)
  })

  it('closes two half circles to one circle, across the start of the angle too', () => {
    const halves = [arc('visible', 5, 0.4, Math.PI), arc('visible', 5, 0.4 + Math.PI, Math.PI)]
    expect(toldAll(byPrecedence(halves, T))).toEqual(['visible circle 0,0 r5'])
    const over = [arc('visible', 5, -0.5, 1), arc('visible', 5, 0.2, 1)]
    const [joined] = byPrecedence(over, T)
    expect(joined!.curve).toMatchObject({ kind: 'arc', r: 5 })
    expect((joined!.curve as { sweep: number }).sweep).toBeCloseTo(1.7, 9)
  })

  it('keeps concentric circles of different radius apart', () => {
    expect(byPrecedence([arc('visible', 5, 0, 2 * Math.PI), arc('hidden', 6, 0, 2 * Math.PI)], T)).toHaveLength(2)
  })

  it('drops what has no length', () => {
    expect(byPrecedence([line('visible', 3, 3, 3, 3), line('hidden', 0, 0, 1e-9, 0)], T)).toEqual([])
  })

  it('gives the overrun to the ends that are still the line’s own', () => {
    const lines = [line('centre', 0, 0, 10, 0, { overrun: [3, 3] }), line('visible', 0, 0, 4, 0)]
    const centre = byPrecedence(lines, T).find((l) => l.kind === 'centre' && !l.covered)!
    expect(told(centre.curve)).toBe('line 4,0 10,0')
    const start = centre.curve.kind === 'line' && centre.curve.a[0] === 4
    expect(centre.overrun).toEqual(start ? [0, 3] : [3, 0])
  })
})

// Common practice, no source: the axis of a hole is told past the outline even where an edge lies on it.
describe('a centre line under an edge', () => {
  const centre = (from: number, to: number) => line('centre', from, 0, to, 0, { overrun: [3, 3] })
  const covered = (lines: ViewLine[]) =>
    byPrecedence(lines, T)
      .filter((l) => l.covered)
      .map((l) => [told(l.curve), l.overrun])

  it('shows past both ends of the edge', () => {
    expect(covered([centre(0, 10), line('visible', 0, 0, 10, 0)])).toEqual([['line 0,0 10,0', [3, 3]]])
    expect(covered([centre(0, 10), line('hidden', 0, 0, 10, 0)])).toEqual([['line 0,0 10,0', [3, 3]]])
  })

  it('does not show where the edge runs on', () => {
    expect(covered([centre(0, 10), line('visible', 0, 0, 25, 0)])).toEqual([['line 0,0 10,0', [3, 0]]])
    expect(covered([centre(5, 10), line('visible', 0, 0, 25, 0)])).toEqual([])
    expect(covered([centre(0, 10), line('visible', 0, 0, 4, 0), line('hidden', 4, 0, 25, 0)])).toEqual([
      ['line 0,0 10,0', [3, 0]],
    ])
  })

  it('shows at the end that is covered, beside what is left of the line', () => {
    const lines = byPrecedence([centre(0, 10), line('visible', 0, 0, 4, 0)], T)
    expect(toldAll(lines)).toEqual(['centre line 4,0 10,0', 'covered centre line 0,0 4,0', 'visible line 0,0 4,0'])
    expect(lines.find((l) => l.covered)!.overrun).toEqual([3, 0])
  })

  it('leaves its place to a cutting-plane line', () => {
    expect(covered([centre(0, 10), line('visible', 0, 0, 10, 0), line('cutting plane', 0, 0, 10, 0)])).toEqual([])
  })
})

// Ends of hidden lines: ASME Y14.2-2014 §2.4: dashes touch where they meet, a gap where the line continues a visible one.
describe('ends of hidden lines', () => {
  const endsOf = (lines: ViewLine[]) =>
    withEnds(lines, T)
      .filter((l) => l.kind === 'hidden')
      .map((l) => l.ends)

  it('touches where it abuts the outline, leaves a gap where it continues a visible line', () => {
    const lines = [line('visible', 0, -5, 0, 5), line('hidden', 0, 0, 6, 0), line('visible', 6, 0, 9, 0)]
    expect(endsOf(lines)).toEqual([['corner', 'continues']])
  })

  it('is a corner where hidden lines meet at an angle and free where nothing is', () => {
    const lines = [line('hidden', 0, 0, 6, 0), line('hidden', 6, 0, 6, 4)]
    expect(endsOf(lines)).toEqual([
      ['free', 'corner'],
      ['corner', 'free'],
    ])
  })

  it('continues a straight visible line into a tangent hidden arc', () => {
    const lines = [line('visible', 5, -4, 5, 0), arc('hidden', 5, 0, Math.PI / 2)]
    expect(endsOf(lines)).toEqual([['continues', 'free']])
  })

  it('parts a centre line from any outline it runs on from', () => {
    const lines = [line('hidden', 0, 0, 6, 0), line('centre', 6, 0, 9, 0), line('visible', 6, -2, 6, 2)]
    const centre = withEnds(lines, T).find((l) => l.kind === 'centre')
    expect(centre!.ends).toEqual(['continues', 'free'])
  })

  it('does not continue a visible line that folds back on itself', () => {
    const lines = [line('hidden', 0, 0, 6, 0), line('visible', 6, 0, 6, 4), line('centre', 6, 0, 9, 0)]
    expect(endsOf(lines)).toEqual([['free', 'corner']])
  })
})

it('leaves out smooth edges, and hidden lines where the kind of view has none', () => {
  const curve: Curve2 = { kind: 'line', a: [0, 0], b: [1, 0] }
  const exact: ExactView = {
    frame: FRAMES.front,
    cuts: [],
    curves: [
      { curve, visible: true, kind: 'smooth', sources: [] },
      { curve, visible: true, kind: 'silhouette', sources: [] },
      { curve, visible: false, kind: 'edge', sources: [] },
    ],
  }
  expect(shownCurves(exact, { hidden: true }).map((l) => l.kind)).toEqual(['visible', 'hidden'])
  expect(shownCurves(exact, { hidden: false }).map((l) => l.kind)).toEqual(['visible'])
})

it('keeps books on intervals', () => {
  expect(
    united(
      [
        { from: 2, to: 3 },
        { from: 0, to: 1 },
        { from: 1, to: 2.5 },
      ],
      0,
    ),
  ).toEqual([{ from: 0, to: 3 }])
  expect(
    without(
      [{ from: 0, to: 10 }],
      [
        { from: 2, to: 3 },
        { from: 9, to: 12 },
      ],
      0,
    ),
  ).toEqual([
    { from: 0, to: 2 },
    { from: 3, to: 9 },
  ])
  expect(unwound({ from: -1, to: 1 }, 4)).toEqual([
    { from: 3, to: 4 },
    { from: 0, to: 1 },
  ])
})

// Closed formulas of descriptive geometry.
describe('projection of curves', () => {
  const circle = (
    z: readonly [number, number, number],
    x: readonly [number, number, number],
    y: readonly [number, number, number],
  ) => ({ kind: 'circle', axes: { origin: [10, 0, 20], x, y, z }, r: 5, from: 0, sweep: 2 * Math.PI }) as const

  it('shows a circle true, edge-on, and as an ellipse of minor axis r·cos of the tilt', () => {
    expect(told(projectCurve(circle([0, -1, 0], [1, 0, 0], [0, 0, 1]), FRAMES.front)!)).toBe('circle 10,20 r5')
    expect(told(projectCurve(circle([0, 0, 1], [1, 0, 0], [0, 1, 0]), FRAMES.front)!)).toBe('line 5,20 15,20')
    const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)]
    const tilted = circle([0, -c, s], [1, 0, 0], [0, s, c])
    expect(told(projectCurve(tilted, FRAMES.front)!)).toBe(`ellipse 10,20 5×${(5 * c).toFixed(6)}`)
  })

  it('shows a level circle in the isometric view as an ellipse of ratio 1/√3 with its long axis level (ISO 5456-3)', () => {
    const e = projectCurve(circle([0, 0, 1], [1, 0, 0], [0, 1, 0]), ISOMETRIC)!
    expect(e.kind).toBe('ellipse')
    if (e.kind !== 'ellipse') return
    expect(Math.abs(e.ratio)).toBeCloseTo(1 / Math.sqrt(3), 12)
    expect(e.major[1]).toBeCloseTo(0, 12)
    expect(Math.hypot(...e.major)).toBeCloseTo(5, 12)
  })

  it('sees a quarter circle edge-on from its own ends, and a point end-on', () => {
    const quarter = { ...circle([0, 0, 1], [1, 0, 0], [0, 1, 0]), sweep: Math.PI / 2 }
    expect(told(projectCurve(quarter, FRAMES.front)!)).toBe('line 10,20 15,20')
    expect(projectCurve({ kind: 'line', a: [1, 2, 3], b: [1, 9, 3] }, FRAMES.front)).toBeUndefined()
  })

  it('keeps which way round an arc runs when seen from behind', () => {
    const quarter = { ...circle([0, -1, 0], [1, 0, 0], [0, 0, 1]), sweep: Math.PI / 2 }
    expect(told(projectCurve(quarter, FRAMES.front)!)).toBe('arc 10,20 r5 10,25 15,20')
    expect(told(projectCurve(quarter, FRAMES.rear)!)).toBe('arc -10,20 r5 -15,20 -10,25')
  })
})

it('finds the nearest point of an ellipse as closely as its normal says', () => {
  // At parameter angle a the normal of (4 cos a, 2 sin a) is (2 cos a, 4 sin a): step out along it and come back.
  const ellipse: Curve2 = { kind: 'ellipse', c: [0, 0], major: [4, 0], ratio: 0.5, from: 0, sweep: 2 * Math.PI }
  for (const a of [0.3, 1.2, 2.5, 4.4]) {
    const n = Math.hypot(2 * Math.cos(a), 4 * Math.sin(a))
    const p = [4 * Math.cos(a) + (2 * Math.cos(a)) / n, 2 * Math.sin(a) + (4 * Math.sin(a)) / n] as const
    const found = nearest(ellipse, p)
    expect(found.distance).toBeCloseTo(1, 9)
    expect(found.t * 2 * Math.PI).toBeCloseTo(a, 5)
  }
})
