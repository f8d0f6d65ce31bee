import { describe, expect, it } from 'vitest'
import { lengthOf } from '../../src/geometry/evaluate.ts'
import type { Vec3 } from '../../src/geometry/vec.ts'
import { practiceFigures } from '../../src/standards/practice-figures.ts'
import { bareCentre } from '../../src/views/centre-lines/bare-centre.ts'
import { endOnCentreLines } from '../../src/views/centre-lines/end-on.ts'
import { lengthwiseCentreLines } from '../../src/views/centre-lines/lengthwise.ts'
import { isSymmetric, middleLine, middlesOf } from '../../src/views/centre-lines/middle.ts'
import type { RoundFeature } from '../../src/views/centre-lines/round-features.ts'
import { withinBox } from '../../src/views/centre-lines/within-box.ts'
import { paperLines } from '../../src/views/dashes/paper-lines.ts'
import { FRAMES } from '../../src/views/frames.ts'
import type { ViewLine } from '../../src/views/view.ts'
import { toldAll } from './told.ts'

// Centre lines: ASME Y14.2-2014 §2.7 and ISO 128-2 (from memory); ticks on bolt circles are common practice, no source.

const up: Vec3 = [0, 0, 1]
const axis = (x: number, y: number, radius: number) => ({
  point: [x, y, 0] as Vec3,
  direction: up,
  reach: [0, 10] as const,
  radius,
})
const feature = (
  pattern: RoundFeature['pattern'],
  ...members: (readonly ReturnType<typeof axis>[])[]
): RoundFeature => ({
  feature: 'holes',
  pattern,
  members: members.map((axes) => ({ axes })),
})

describe('seen end-on', () => {
  it('ends where flats have taken the round away', () => {
    const lines = endOnCentreLines(feature({ kind: 'single' }, [axis(0, 0, 10)]), FRAMES.top, 3)
    const flats = { min: [-10, -7], max: [10, 8] } as const
    expect(toldAll(lines.map((l) => withinBox(l, flats)))).toEqual(['centre line -10,0 10,0', 'centre line 0,-7 0,8'])
  })

  it('crosses at the centre of one hole, past the circle on paper', () => {
    const lines = endOnCentreLines(feature({ kind: 'single' }, [axis(5, 7, 2)]), FRAMES.top, 3)
    expect(toldAll(lines)).toEqual(['centre line 3,7 7,7', 'centre line 5,5 5,9'])
    expect(lines.every((l) => l.overrun?.[0] === 3 && l.overrun[1] === 3)).toBe(true)
    expect(lines.map((l) => l.cross)).toEqual([[[5, 7]], [[5, 7]]])
  })

  it('runs on through the holes of one grid, row by row and column by column', () => {
    const grid = feature({ kind: 'grid' }, [axis(0, 0, 1)], [axis(20, 0, 1)], [axis(0, 10, 1)], [axis(20, 10, 1)])
    expect(toldAll(endOnCentreLines(grid, FRAMES.top, 3))).toEqual([
      'centre line -1,0 21,0',
      'centre line -1,10 21,10',
      'centre line 0,-1 0,11',
      'centre line 20,-1 20,11',
    ])
  })

  it('does not run on between holes that are not one row or grid', () => {
    const points = feature({ kind: 'points' }, [axis(0, 0, 1)], [axis(20, 0, 1)])
    expect(endOnCentreLines(points, FRAMES.top, 3)).toHaveLength(4)
  })

  it('gives a bolt circle its circular centre line and a radial tick at each hole', () => {
    const holes = [0, 90, 180, 270].map((d) => {
      const a = ((d + 45) * Math.PI) / 180
      return [axis(30 * Math.cos(a), 30 * Math.sin(a), 4)]
    })
    const lines = endOnCentreLines(
      feature({ kind: 'bolt circle', centre: [0, 0, 0], radius: 30, normal: up }, ...holes),
      FRAMES.top,
      3,
    )
    const s = (r: number) => Math.round(((r * Math.SQRT2) / 2) * 1e6) / 1e6
    expect(toldAll(lines)).toEqual(
      [
        'centre circle 0,0 r30',
        `centre line ${s(26)},${s(26)} ${s(34)},${s(34)}`,
        `centre line ${-s(34)},${-s(34)} ${-s(26)},${-s(26)}`,
        `centre line ${-s(34)},${s(34)} ${-s(26)},${s(26)}`,
        `centre line ${s(26)},${-s(26)} ${s(34)},${-s(34)}`,
      ].sort(),
    )
  })

  it('marks the bare centre of a bolt circle, once', () => {
    const circle = feature(
      { kind: 'bolt circle', centre: [10, 5, 0], radius: 30, normal: up },
      [axis(40, 5, 4)],
      [axis(-20, 5, 4)],
    )
    const lines = endOnCentreLines(circle, FRAMES.top, 3)
    // A cross of 3.6 mm and its overruns on paper.
    expect(toldAll(bareCentre(circle, FRAMES.top, lines, 3))).toEqual([
      'centre line 10,3.2 10,6.8',
      'centre line 8.2,5 11.8,5',
    ])
    const bore = endOnCentreLines(feature({ kind: 'single' }, [axis(10, 5, 12)]), FRAMES.top, 3)
    expect(bareCentre(circle, FRAMES.top, [...lines, ...bore], 3)).toEqual([])
    // Level line of a symmetric outline: only the upright one is wanting.
    const [level] = bore.filter((l) => l.curve.kind === 'line' && l.curve.a[1] === l.curve.b[1])
    expect(toldAll(bareCentre(circle, FRAMES.top, [...lines, level!], 3))).toEqual(['centre line 10,3.2 10,6.8'])
    expect(bareCentre(circle, FRAMES.front, lines, 3)).toEqual([])
  })

  it('gives a slanted slot a line along its long way and one across each end', () => {
    // Ends 10 apart along (4, 3)/5, end radius 2.5: 2.5 along the way is (2, 1.5), across it (-1.5, 2).
    const lines = endOnCentreLines(feature({ kind: 'single' }, [axis(0, 0, 2.5), axis(8, 6, 2.5)]), FRAMES.top, 3)
    expect(toldAll(lines)).toEqual([
      'centre line -1.5,2 1.5,-2',
      'centre line -2,-1.5 10,7.5',
      'centre line 6.5,8 9.5,4',
    ])
  })

  it('says nothing of a hole seen from the side', () => {
    expect(endOnCentreLines(feature({ kind: 'single' }, [axis(5, 7, 2)]), FRAMES.front, 3)).toEqual([])
  })
})

it('draws the axis from the side, through the length of the hole and past both ends', () => {
  const [line, ...rest] = lengthwiseCentreLines(feature({ kind: 'single' }, [axis(5, 7, 2)]), FRAMES.front, 3)
  expect(rest).toEqual([])
  expect(toldAll([line!])).toEqual(['centre line 5,0 5,10'])
  expect(line!.overrun).toEqual([3, 3])
})

it('takes a middle plane from what is centred between two planes, each once', () => {
  const plane = (id: string, x: number) =>
    ({ id, kind: 'plane', name: id, point: [x, 0, 0], normal: [1, 0, 0] }) as const
  const centred = (text: string, ...between: string[]) => ({ kind: 'centred', text, between }) as const
  const part = {
    data: [plane('left', -10), plane('right', 30)],
    implied: [centred('holes centred', 'h1', 'h2', 'left', 'right'), centred('slot centred', 's', 'left', 'right')],
  }
  expect(middlesOf(part)).toEqual([{ point: [10, 0, 0], normal: [1, 0, 0] }])
})

describe('middle lines', () => {
  const visible = (ax: number, ay: number, bx: number, by: number): ViewLine => ({
    curve: { kind: 'line', a: [ax, ay], b: [bx, by] },
    kind: 'visible',
    sources: [],
  })
  const square = [visible(-5, 0, 5, 0), visible(5, 0, 5, 8), visible(5, 8, -5, 8), visible(-5, 8, -5, 0)]
  const middle = {
    id: 'm',
    kind: 'middle',
    name: 'middle',
    point: [0, 0, 0],
    normal: [1, 0, 0],
    between: ['l', 'r'],
  } as const
  const box = { min: [-5, 0], max: [5, 8] } as const

  it('divides a symmetric outline', () => {
    const line = middleLine(middle, square, box, FRAMES.front, 3, 1e-6)
    expect(toldAll([line!])).toEqual(['centre line 0,0 0,8'])
  })

  it('claims no symmetry that is not there', () => {
    const notched = [...square, visible(2, 0, 2, 3)]
    expect(isSymmetric(notched, [0, 0], [1, 0], 1e-6)).toBe(false)
    expect(middleLine(middle, notched, box, FRAMES.front, 3, 1e-6)).toBeUndefined()
  })

  it('is not seen where the middle plane faces the viewer', () => {
    expect(middleLine(middle, square, box, FRAMES.right, 3, 1e-6)).toBeUndefined()
  })
})

describe('on paper', () => {
  const figures = practiceFigures('ASME')

  it('overruns by the same paper figure at every scale', () => {
    const lines = endOnCentreLines(feature({ kind: 'single' }, [axis(0, 0, 10)]), FRAMES.top, 3)
    for (const scale of [0.1, 1, 4]) {
      for (const l of paperLines(lines, scale, figures)) expect(lengthOf(l.curve)).toBeCloseTo(20 * scale + 6, 9)
    }
  })

  it('crosses two long lines on short dashes (ASME) or long dashes (ISO)', () => {
    const lines = endOnCentreLines(feature({ kind: 'single' }, [axis(0, 0, 30)]), FRAMES.top, 3)
    const middleDash = (practice: 'ASME' | 'ISO') => {
      const [line] = paperLines(lines, 1, practiceFigures(practice))
      let s = 0
      for (const [i, d] of line!.dashes!.entries()) {
        if (s <= 33 && s + d >= 33) return { on: i % 2 === 0, length: d }
        s += d
      }
      return undefined
    }
    expect(middleDash('ASME')).toEqual({ on: true, length: 3 })
    const iso = middleDash('ISO')!
    expect(iso.on).toBe(true)
    expect(iso.length).toBeGreaterThan(3)
  })

  it('leaves the lines of a tiny circle unbroken', () => {
    const lines = endOnCentreLines(feature({ kind: 'single' }, [axis(0, 0, 1)]), FRAMES.top, 3)
    expect(paperLines(lines, 1, figures).every((l) => l.dashes === undefined)).toBe(true)
  })

  it('makes one line of collinear lines whose overruns would meet on the sheet, and two of them at a larger scale', () => {
    const lines = endOnCentreLines(
      feature({ kind: 'points' }, [axis(0, 0, 2)], [axis(10, 0, 2)]),
      FRAMES.top,
      3,
    ).filter((l) => l.curve.kind === 'line' && l.curve.a[1] === l.curve.b[1])
    expect(paperLines(lines, 1, figures).map((l) => lengthOf(l.curve))).toEqual([20])
    expect(paperLines(lines, 4, figures).map((l) => lengthOf(l.curve))).toEqual([22, 22])
  })

  it('starts a closed hidden line so that a dash lies evenly about its first point', () => {
    const circle: ViewLine = {
      curve: { kind: 'arc', c: [0, 0], r: 20, from: 0, sweep: 2 * Math.PI },
      kind: 'hidden',
      sources: [],
    }
    const [line] = paperLines([circle], 1, figures)
    expect(line!.curve.kind === 'arc' && line!.curve.from * 20).toBeCloseTo(-line!.dashes![0]! / 2, 12)
  })

  it('stops a gap short of the outline that a centre line runs on from', () => {
    const line: ViewLine = {
      curve: { kind: 'line', a: [0, 0], b: [10, 0] },
      kind: 'centre',
      sources: [],
      overrun: [0, 3],
      ends: ['continues', 'free'],
    }
    const [fitted] = paperLines([line], 1, figures)
    expect(toldAll([fitted!])).toEqual(['centre line 1.5,0 13,0'])
  })

  it('parts a hidden line from the visible line it continues by one gap', () => {
    const line: ViewLine = {
      curve: { kind: 'line', a: [0, 0], b: [30, 0] },
      kind: 'hidden',
      sources: [],
      ends: ['continues', 'corner'],
    }
    const [fitted] = paperLines([line], 1, figures)
    expect(fitted!.curve).toMatchObject({ kind: 'line', b: [30, 0] })
    expect(fitted!.curve.kind === 'line' && fitted!.curve.a[0]).toBeCloseTo(0.8, 12)
    expect(fitted!.dashes!.reduce((a, b) => a + b)).toBeCloseTo(29.2, 9)
  })
})
