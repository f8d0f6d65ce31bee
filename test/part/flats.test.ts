import { describe, expect, it } from 'vitest'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'
import { faults, named, openBench } from './workbench.ts'

const bench = openBench()

const { PI } = Math
const SHAFT = `turned axis left-right
  a ⌀20, 40 long
  b ⌀30, 20 long
  c ⌀20, 40 long
`
const whole = PI * 100 * 80 + PI * 225 * 20
/** Circular segment beyond a chord at d from the centre: r²·acos(d/r) − d·√(r² − d²) (Machinery's Handbook, from memory). */
const segment = (r: number, d: number) => r * r * Math.acos(d / r) - d * Math.sqrt(r * r - d * d)

describe('flats across from each other', () => {
  it.each([
    ['both sides named', 'flats b, top and bottom: 24 across'],
    ['a count', 'flats b, top: 2X 24 across'],
    ['the plural alone', 'flats b: 24 A/F'],
    ['mirrored', 'flat b, top: 24 across; mirrored up-down'],
    ['mirrored, counted', 'flats b, top: 2X 24 across\n  mirrored up-down'],
    ['worked from', 'flats b, from top: 2X 24 across flats'],
  ])('%s: two segments, 12 from the axis', (_, text) => {
    const part = bench.part(SHAFT + text)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(whole - 2 * segment(15, 12) * 20, 4)
    expect(part.chosen.filter((c) => c.group === 'flat 1')).toHaveLength(1)
  })

  it.each([4, 6])('%i of them: as many segments, evenly turned', (n) => {
    const part = bench.part(`${SHAFT}flats b: ${n}X 28 across`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(whole - n * segment(15, 14) * 20, 4)
    const out = named(part, 'flat 1.').map(({ surface }) => (surface.kind === 'plane' ? surface.axes.z : [0, 0, 0]))
    expect(out).toHaveLength(n)
    const turned = n === 4 ? [0, 0, 1] : [0.5, 0.5, 0.5, 0.5, 1]
    for (const [i, z] of out.entries()) {
      const others = out.filter((_, j) => j !== i).map((o) => Math.abs(z[0]! * o[0]! + z[1]! * o[1]! + z[2]! * o[2]!))
      others.sort((p, q) => p - q)
      for (const [j, cosine] of others.entries()) expect(cosine).toBeCloseTo(turned[j]!, 9)
    }
  })

  // Area of a regular polygon of n sides, w across two of them: n·(w/2)²·tan(π/n).
  it.each([
    [4, 'on a shaft of their own width', 21],
    [6, 'as on hexagon bar', 24],
  ])('%i of them %s: a polygon, and no diameter of what is gone', (n, _, wide) => {
    const part = bench.part(`${SHAFT}flats b: ${n}X ${wide} across`)
    expect(part.marks.map((m) => [m.rule, m.weight])).toEqual([['flat-corners-sharp', 'look again']])
    expect(part.properties.volume).toBeCloseTo(PI * 100 * 80 + n * (wide / 2) ** 2 * Math.tan(PI / n) * 20, 4)
    expect(part.chosen.flatMap((c) => (c.kind === 'diameter' ? [c.size.text] : []))).toEqual(['20', '20'])
  })

  it('a length and an end at the shoulder', () => {
    const part = bench.part(`${SHAFT}flats c, front and rear: 16 across, 15 long; right end at right face`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(whole - 2 * segment(10, 8) * 15, 4)
    expect(part.chosen.filter((c) => c.group === 'flat 1').map((c) => c.kind)).toEqual(['distance', 'length'])
  })
})

describe('flats that cannot be', () => {
  it.each([
    ['two statements opposite each other', 'flat b, top: 24 across\nflat b, bottom: 24 across', 'flats-opposite'],
    ['three', 'flats b: 3X 24 across', 'count-out-of-range'],
    ['sides that are not opposite', 'flats b, top and front: 24 across', 'unknown-side'],
    ['mirrored along the wrong way', 'flat b, top: 24 across; mirrored front-rear', 'wrong-direction'],
  ])('%s', (_, text, rule) => {
    expect(faults(bench.part(SHAFT + text))).toEqual([rule])
  })

  it('says what to write for two statements', () => {
    const part = bench.part(`${SHAFT}flat b, top: 24 across\nflat b, bottom: 24 across`)
    const mark = part.marks.find((m) => m.rule === 'flats-opposite')!
    const write = /flats b, .*/.exec(mark.expected!)![0]
    expect(faults(bench.part(SHAFT + write))).toEqual([])
  })
})

it('prints and reads back as the same flats', () => {
  for (const text of ['flats b, top and bottom: 24 across', 'flats b: 6X 28 across', 'flat b, top: 27 across']) {
    const printed = printBrief(readBrief(`units mm\npractice ISO\n${SHAFT}${text}\n`))
    expect(printed.replace(/ +/g, ' ')).toContain(text)
  }
})

// a flat milled against a shoulder goes through the fillet there: nothing stands above it (common practice, no source)
it.each([
  'flats b, top and bottom: 26 across\nfillet b left edge: R2',
  'fillet b left edge: R2\nflats b, top and bottom: 26 across',
])('takes the fillet at its shoulder along: %s', (lines) => {
  const part = bench.part(`turned axis left-right\n  a ⌀40, 40 long\n  b ⌀30, 30 long\n${lines}\n`)
  const heights = part.body.edges.flatMap(({ curve }) => {
    const beyond = curve.kind === 'line' && Math.min(curve.a[0], curve.b[0]) > 40 + 1e-6
    return beyond ? [Math.abs(curve.a[2]), Math.abs(curve.b[2])] : []
  })
  expect(Math.max(...heights)).toBeCloseTo(13, 6)
  expect(part.body.faces.filter((f) => /^flat 1\.[12]$/.test(f.name ?? ''))).toHaveLength(2)
  const levels = part.body.faces.flatMap(({ surface }) =>
    surface.kind === 'plane' && Math.abs(surface.axes.z[2]) > 0.999 ? [surface.axes.origin[2]] : [],
  )
  expect(levels.map(Math.abs)).toEqual([expect.closeTo(13, 6), expect.closeTo(13, 6)])
})
