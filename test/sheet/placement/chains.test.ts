import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { compile } from '../../../src/app/compile.ts'
import { openKernel } from '../../../src/kernel/open.ts'
import { auditSizes } from '../../../src/sheet/placement/audit.ts'
import { placeDimensions } from '../../../src/sheet/placement/place-dimensions.ts'
import { across, field, place, rect, sizeSet, view } from './fixtures.ts'

// ISO 129-1:2018 §8.2 (from memory) and common practice: chain dimensions stand in one line.

const kernel = await openKernel()

/** Levels of the dimension lines of each chain of the brief's sheet, and of those of its members that are printed. */
function chainsOf(text: string, practice: 'ASME' | 'ISO') {
  const { sheet, sizes, part, marks } = compile(text, kernel)
  kernel.free(part!.solid)
  const chained = new Map(
    sizes!.dimensions.flatMap((d) => (d.group?.scheme === 'chain' ? [[d.id, `${d.view} ${d.group.id}`] as const] : [])),
  )
  const chains = new Map<string, { levels: Set<string>; members: Set<string> }>()
  for (const item of sheet!.items) {
    if (item.item !== 'stroke' || item.kind !== 'dimension' || item.curve.kind !== 'line') continue
    const key = chained.get(item.tie?.dimension ?? '')
    if (!key) continue
    const { a, b } = item.curve
    const level = (Math.abs(a[0] - b[0]) < 1e-6 ? a[0] : a[1]).toFixed(3)
    const chain = chains.get(key) ?? { levels: new Set(), members: new Set() }
    chains.set(key, chain)
    chain.levels.add(level)
    chain.members.add(item.tie!.dimension!)
  }
  return { chains: [...chains.values()], count: chained.size, marks, audit: auditSizes(sheet!, practice) }
}

describe('a chain', () => {
  it.each([
    ['of a stepped shaft, inch', `${readFileSync('examples/stepped-shaft.brief', 'utf8')}sizes     chain\n`, 'ASME', 6],
    ['with steps shorter than their numbers, inch', INCH, 'ASME', 4],
    ['with steps shorter than a head, mm', MILLIMETRE, 'ISO', 5],
  ] as const)('%s, stands in one line', (_name, text, practice, least) => {
    const { chains, count, marks, audit } = chainsOf(text, practice)
    expect(Math.max(...chains.map((c) => c.members.size))).toBeGreaterThanOrEqual(least)
    expect(chains.reduce((n, c) => n + c.members.size, 0)).toBe(count)
    for (const { levels } of chains) expect([...levels]).toHaveLength(1)
    expect(marks.filter((m) => m.rule === 'chain-broken')).toEqual([])
    expect([audit.textOnText, audit.textOnLine, audit.arrowCollisions]).toEqual([0, 0, 0])
  })

  it('for which no line is long enough is broken, and says so', () => {
    const outline = view('front', rect(0, 0, 40, 20), { min: [0, 0], max: [40, 20] })
    const group = { id: 'c', scheme: 'chain' as const }
    const chain = [0, 5, 10, 15, 20, 25, 30, 35].map((x) =>
      across('front', [x, 20], [x + 5, 20], '5,000 ±0,005', { group }),
    )
    const placement = placeDimensions({
      views: [place(outline, [40, 40])],
      sizes: sizeSet(chain),
      practice: 'ISO',
      obstacles: [],
      bounds: field(120, 160),
    })
    expect(placement.broken).toBe(1)
    expect(placement.marks.map((m) => m.rule)).toContain('chain-broken')
  })
})

const HEAD = `part      Trial
number    TR-1  rev A
material  carbon steel
`

const INCH = `${HEAD}units     inch
practice  ASME
general   fractions ±1/64   .XX ±.01   .XXX ±.005   angles ±1/2°
plate     8.00 × 5.00 × .50
holes A   top: 6X ⌀.281 THRU
          3 across 2.500 apart, leftmost 1.50 from left; 2 up 3.000 apart, centred
slot B    top: .50 × 1.50 overall THRU, long way left-right
          4.00 from left; centred up
hole C    top: ⌀1.000 THRU, ⌴ ⌀1.500 ↧ .188
          6.50 from left; centred up
hole D    top: 1/4-20 UNC-2B THRU
          .75 from left; 2.50 from front
sizes     chain
`

const MILLIMETRE = `${HEAD}units     mm
practice  ISO, first angle
general   ISO 2768-mK
plate     160 × 100 × 16
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
sizes     chain
`
