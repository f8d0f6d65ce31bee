import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { plainText } from '../../src/sizes/callout/plain-text.ts'
import { asme, iso, type Sized, sized } from './sized.ts'

/*
 * Schemes for a whole part: every located feature takes part. Rules: baseline and ordinate count each place from one datum,
 * a chain goes from neighbour to neighbour and leaves one step out beside the overall size (ASME Y14.5-2018, rectangular
 * coordinate and ordinate dimensioning, chain and baseline; ISO 129-1:2018 parallel, running and chain dimensioning; from
 * memory). The expected places are sums and differences of the brief's own numbers.
 */
const MIXED = `plate     160 × 100 × 16
holes A   top: 4X ⌀9 THRU
          2 across 120 apart, centred; 2 up 60 apart, centred
slot B    top: 11 × 40 overall THRU, long way left-right
          80 from left; 50 from front
slot C    top: 8 × 20 centre to centre THRU, long way front-rear
          35 from left; 50 from front
pocket D  top: 30 × 20 ↧ 6, corners R 4
          125 from left; 50 from front
notch E   top, left: square, 12 wide, 8 deep
          75 from front
hole F    top: ⌀12 H7 THRU
          80 from left; 80 from front
hole G    top: ⌀6 ↧ 10
          centred left-right; 15 from front
`

const inWay = ({ sizes }: Sized, scheme: string, way: string) =>
  sizes.dimensions.filter((d) => d.group?.scheme === scheme && d.direction === way)

const remarks = ({ sizes }: Sized) => sizes.marks.filter((m) => m.rule === 'scheme-left-out').map((m) => m.text)

describe('a scheme for the whole part', () => {
  it.each(['ordinate', 'baseline'] as const)('%s gives groups, slots, pockets, notches and single holes', (scheme) => {
    const s = iso(`${MIXED}sizes ${scheme}\n`)
    const zero = scheme === 'ordinate' ? [0] : []
    expect(inWay(s, scheme, 'left-right').map((d) => d.value)).toEqual([...zero, 8, 20, 35, 80, 125, 140, 160])
    expect(inWay(s, scheme, 'front-rear').map((d) => d.value)).toEqual([...zero, 15, 20, 50, 75, 80, 100])
    expect(new Set(s.sizes.dimensions.filter((d) => d.group).map((d) => d.view))).toEqual(new Set(['top']))
    expect(s.texts.join()).not.toMatch(/centred/)
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('chain goes from neighbour to neighbour and leaves the last step to the overall size', () => {
    const s = iso(`${MIXED}sizes chain\n`)
    expect(inWay(s, 'chain', 'left-right').map((d) => d.value)).toEqual([8, 12, 15, 45, 45, 15])
    expect(inWay(s, 'chain', 'front-rear').map((d) => d.value)).toEqual([15, 5, 30, 25, 5])
    expect(s.texts).toEqual(expect.arrayContaining(['160', '100']))
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('leaves widths, lengths and depths at their features', () => {
    const s = iso(`${MIXED}sizes chain\n`)
    for (const text of ['30', '12', '↧ 6', '11 × 40, 2× R', '2× R']) expect(s.texts).toContain(text)
    expect(s.sizes.dimensions.filter((d) => /width|length|depth/.test(d.id) && d.group)).toEqual([])
  })

  it('counts a mirrored pair from one datum', () => {
    const s = asme(`plate 8.00 × 5.00 × .50
holes A   top: 2X ⌀.406 THRU
          .75 from left; 1.25 from front; mirrored left-right
sizes ordinate
`)
    expect(inWay(s, 'ordinate', 'left-right').map((d) => plainText(d.callout))).toEqual(['0', '.75', '7.25', '8.00'])
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('keeps the places of each worked face in the view that shows them', () => {
    const s = iso(`block 160 × 100 × 50
holes A   top: 4X ⌀9 THRU
          2 across 120 apart, centred; 2 up 60 apart, centred
holes B   front: 2X ⌀8 ↧ 15
          2 across 60 apart, leftmost 30 from left; 25 from bottom
sizes ordinate
`)
    const places = (view: string) =>
      inWay(s, 'ordinate', 'left-right')
        .filter((d) => d.view === view)
        .map((d) => d.value)
    expect(places('top')).toEqual([0, 20, 140])
    expect(places('front')).toEqual([0, 30, 90, 160])
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('takes the decimals of the sizes that place it (common practice, no source)', () => {
    const s = asme(`plate 8.00 × 5.00 × .50
holes A   top: 4X ⌀.281 THRU
          2 across 2.500 apart, leftmost 1.50 from left; 2 up 3.000 apart, centred
hole B    top: ⌀.500 THRU
          6.50 from left; centred up
sizes ordinate
`)
    const texts = (way: string) => inWay(s, 'ordinate', way).map((d) => plainText(d.callout))
    expect(texts('left-right')).toEqual(['0', '1.50', '4.000', '6.50', '8.00'])
    expect(texts('front-rear')).toEqual(['0', '1.000', '2.50', '4.000', '5.00'])
  })

  it('fixes random plates exactly once, with a size to every place of a hole', () => {
    const hole = fc.record({ x: fc.integer({ min: 3, max: 27 }), y: fc.integer({ min: 3, max: 15 }) })
    fc.assert(
      fc.property(
        fc.uniqueArray(hole, { minLength: 2, maxLength: 5, selector: ({ x, y }) => `${x} ${y}` }),
        fc.boolean(),
        fc.constantFrom('ordinate', 'baseline', 'chain'),
        (holes, centred, scheme) => {
          const lines = holes.map(
            ({ x, y }, i) => `hole ${'ABCDE'[i]} top: ⌀4 THRU\n  ${5 * x} from left; ${5 * y} from front\n`,
          )
          const row = 'holes G top: 2X ⌀3 THRU\n  2 across 134 apart, centred; centred up\n'
          const s = iso(`plate 150 × 90 × 8\n${lines.join('')}${centred ? row : ''}sizes ${scheme}\n`)
          expect(s.sizes.proof.complete).toBe(true)
          const wanted = new Set([...holes.map(({ x }) => 5 * x), ...(centred ? [8, 142] : [])])
          const set = inWay(s, scheme, 'left-right').map((d) => d.value)
          const reached = scheme === 'chain' ? set.map((_, i) => set.slice(0, i + 1).reduce((a, b) => a + b)) : set
          for (const x of wanted) expect(reached.some((v) => Math.abs(v - x) < 1e-6)).toBe(true)
        },
      ),
      { numRuns: 25 },
    )
  })
})

// The proof reads the solid and the sizes, and knows nothing of how they were chosen.
describe('every example by every scheme', () => {
  const folder = join(import.meta.dirname, '../../examples')
  const names = readdirSync(folder).filter((f) => f.endsWith('.brief'))
  it.each(names)('%s is fixed exactly once', (name) => {
    const brief = readFileSync(join(folder, name), 'utf8').replace(/^sizes .*\n?/gm, '')
    for (const scheme of ['ordinate', 'baseline', 'chain', 'hole table']) {
      const { proof, marks } = sized(`${brief}\nsizes ${scheme}\n`).sizes
      expect([scheme, proof.sentence]).toEqual([scheme, expect.stringMatching(/^complete: /)])
      expect(marks.filter((m) => m.text.includes('would not fix them'))).toEqual([])
    }
  })
})

describe('what a scheme cannot give is said', () => {
  it('bolt circles, in a scheme and in a hole table', () => {
    const plate = `plate 120 × 120 × 10
holes A top: 4X ⌀9 THRU
  on ⌀80 bolt circle, equal, first at 45°
hole B top: ⌀6 THRU
  10 from left; 10 from front
`
    for (const scheme of ['ordinate', 'hole table']) {
      const s = iso(`${plate}sizes ${scheme}\n`)
      expect(remarks(s).filter((t) => t.includes('hole A keeps its bolt circle'))).toHaveLength(1)
      expect(s.texts).toContain('⌀80')
      expect(s.sizes.proof.complete).toBe(true)
    }
  })

  it('a pitch with a tolerance of its own', () => {
    const s = iso(`plate 120 × 80 × 10
holes A top: 3X ⌀9 THRU
  3 across 30 ±0.05 apart, leftmost 20 from left; 15 from front
sizes baseline
`)
    expect(remarks(s).join()).toMatch(/2× 30 ±0\.05 of hole A stands as it is/)
    expect(s.texts).toContain('2× 30 ±0.05')
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('a distance with a tolerance of its own stands in the scheme where it counts from the datum', () => {
    const s = iso(`plate 120 × 80 × 10
hole A top: ⌀9 THRU
  20 ±0.05 from left; 15 from front
hole B top: ⌀9 THRU
  90 from left; 15 from front
sizes ordinate
`)
    expect(inWay(s, 'ordinate', 'left-right').map((d) => plainText(d.callout))).toEqual(['0', '20 ±0.05', '90', '120'])
    expect(remarks(s)).toEqual([])
  })

  it('a face without an edge to count from', () => {
    const s = iso(`disc ⌀120 × 10, outer face front
slots A front: 2X 10 × 24 overall THRU, long way left-right
  80 apart, centred; centred up
sizes ordinate
`)
    expect(remarks(s).join()).toMatch(/count from an axis/)
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('a hole table of a feature that is none, or that a table cannot hold', () => {
    const s = iso(`${MIXED}sizes hole table of pocket D\nsizes hole table of holes Z\n`)
    expect(remarks(s).join()).toMatch(/pocket D stands at the view/)
    expect(s.sizes.marks.filter((m) => m.rule === 'unknown-name')).toHaveLength(1)
  })
})

describe('a hole table', () => {
  it('holds slots sized by one note, and tags of the brief’s own labels', () => {
    const s = iso(`block     120 × 80 × 40
holes A   top: 2X ⌀8 ↧ 10
          2 across 90 apart, centred; 20 from front
holes B   front: 2X ⌀8 ↧ 10
          2 across 60 apart, centred; 20 from bottom
slot C    top: 8 × 24 overall ↧ 5, long way front-rear
          25 from left; 50 from front
sizes hole table
`)
    const rows = s.sizes.tables.flatMap((t) => t.rows.map((r) => [t.view, r.tag, r.x, r.y, plainText(r.size)]))
    expect(rows).toEqual([
      ['top', 'A1', '15', '20', '⌀8 ↧ 10'],
      ['top', 'A2', '105', '20', '⌀8 ↧ 10'],
      ['top', 'C1', '25', '50', '8 × 24 ↧ 5, 2× R'],
      ['front', 'B1', '30', '20', '⌀8 ↧ 10'],
      ['front', 'B2', '90', '20', '⌀8 ↧ 10'],
    ])
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('counts from the faces that the brief counts from', () => {
    const s = asme(`angle formed, .188 STK, inside R .19
  upright 3.50 high, at rear; base 2.25 toward front; length 3.00
slots A base, from top: 2X .281 × .88 overall THRU, long way front-rear
  1.500 apart, centred; centres 1.38 from heel
sizes hole table
`)
    const [table] = s.sizes.tables
    expect(table!.rows.map((r) => [r.x, r.y])).toEqual([
      ['.750', '1.38'],
      ['2.250', '1.38'],
    ])
    // the heel stands at the top of the top view: Y counts down from there
    expect(table!.ways).toEqual([1, -1])
    expect(table!.origin[1] - table!.rows[0]!.at[1]).toBeCloseTo(1.38 * 25.4, 6)
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('leaves a slot beside it its own place, though it stands level with a hole of the table', () => {
    const s = iso(`${MIXED}sizes hole table of hole F\n`)
    expect(s.find('80').feature).toBe('slot B')
    expect(s.sizes.tables[0]!.rows.map((r) => [r.x, r.y])).toEqual([['80', '80']])
    expect(s.sizes.proof.complete).toBe(true)
  })
})

describe('running sizes on the sheet', () => {
  it('read 0 once at each origin (ASME Y14.5-2018 ordinate dimensioning, ISO 129-1 running dimensions; from memory)', async () => {
    const kernel = await openKernel()
    const features = 'sizes ordinate of holes A\nsizes ordinate of slot B\nsizes ordinate of pocket D\n'
    for (const lines of ['sizes ordinate\n', features]) {
      const drawing = compile(`part Trial\nunits mm\npractice ISO, first angle\n${MIXED}${lines}`, kernel)
      const zeros = drawing.sheet!.items.filter((i) => i.item === 'text' && i.text === '0')
      expect(zeros).toHaveLength(2)
      kernel.free(drawing.part!.solid)
    }
  })
})

// ASME Y14.5-2018 depth symbol, ISO 129-1; a leader that ends within an outline ends with a dot (ISO 128-2, ASME Y14.2);
// from memory.
describe('depth of pockets and slots', () => {
  it('stands at the floor in the view of true shape, where only hidden lines show it otherwise', () => {
    const s = iso(`block 100 × 70 × 30
pocket top: 60 × 40 ↧ 12, corners R 6
  centred both ways
slot front: 8 × 20 centre to centre ↧ 5, long way left-right
  50 from left; 15 from bottom
`)
    for (const [text, view] of [
      ['↧ 12', 'top'],
      ['↧ 5', 'front'],
    ] as const) {
      const { measured, view: stands } = s.find(text)
      expect(stands).toBe(view)
      expect(measured.kind === 'leader' && measured.targets.every((t) => t.kind === 'point' && t.within)).toBe(true)
    }
    expect(s.sizes.marks.filter((m) => m.rule === 'size-to-hidden-line')).toEqual([])
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('is a plain distance where a section or an open end shows the floor', () => {
    const pocket = 'block 100 × 70 × 30\npocket top: 60 × 40 ↧ 12, corners R 6\n  centred both ways\n'
    const cut = iso(`${pocket}views top; section A-A through pocket as front\n`)
    expect(cut.find('12').measured.kind).toBe('linear')
    const open = iso(
      'block 100 × 70 × 30\nslot top: 10 × 40 overall ↧ 6, open to left\n  centred up\nviews front, top, left\n',
    )
    expect(open.find('6')).toMatchObject({ view: 'left', measured: { kind: 'linear' } })
  })
})
