import { describe, expect, it } from 'vitest'
import type { Brief, Feature, HoleFeature, SlotFeature } from '../../src/brief/brief.ts'
import { formatMark } from '../../src/brief/format-mark.ts'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'
import { withoutPlaces } from '../../src/brief/without-places.ts'

const inch = (lines: string) => `units inch\npractice ASME\nblock 6 × 4 × 2\n${lines}\n`
const mm = (lines: string) => `units mm\npractice ISO, first angle\nblock 160 × 100 × 50\n${lines}\n`

function clean(text: string): Brief {
  const brief = readBrief(text)
  expect(brief.marks.map((m) => formatMark(text, m))).toEqual([])
  return brief
}
const one = (text: string): Feature => clean(text).features[0]!
const hole = (text: string) => one(text) as HoleFeature

/** Standard notation of ASME Y14.5-2018 section 7 and ISO 129-1 beside its plain typing. */
const pairs: [string, string, string][] = [
  [
    'count, diameter, through',
    'holes top: 4X ⌀.281 THRU; 2 across 1 apart, centred; 2 up 1 apart, centred',
    'holes top 4x dia .281 thru\n  2 across 1 apart centred\n  2 up 1 apart centred',
  ],
  [
    'ISO count sign',
    'holes top: 2× ⌀.281 THRU; 1 apart, centred; centred',
    'holes top: 2X .281 dia THRU; 1 apart, centred; centred',
  ],
  [
    'counterbore',
    'hole top: ⌀.281 THRU, ⌴ ⌀.50 ↧ .25; centred both ways',
    'hole top: dia .281 thru, cbore dia .50 deep .25; centred both ways',
  ],
  [
    'countersink',
    'hole top: ⌀.281 THRU, ⌵ ⌀.50 × 82°; centred both ways',
    'hole top: .281 thru, csk .50 x 82 deg; centred both ways',
  ],
  ['depth', 'hole top: ⌀1/4 ↧ .75; centred both ways', 'hole top: dia 1/4 .75 deep; centred both ways'],
  [
    'depth before and after',
    'hole top: ⌀1/4 ↧ .75; centred both ways',
    'hole top: dia 1/4 deep .75; centered both ways',
  ],
  [
    'spotface',
    'hole top: ⌀1/4 THRU, spotface ⌀.50; centred both ways',
    'hole top: ⌀1/4 through, SF dia .50; centred both ways',
  ],
  [
    'plus and minus',
    'hole top: ⌀.500 ±.002 THRU; centred both ways',
    'hole top: dia .500 +/- .002 thru; centred both ways',
  ],
  [
    'unequal',
    'hole top: ⌀.500 +.002 -.000 THRU; centred both ways',
    'hole top: dia .500 +.002/-.000 thru; centred both ways',
  ],
  ['radius', 'round corners: 4X R.38', 'round corners 4x r .38'],
  ['chamfer', 'chamfer top edges: 4X .06 × 45°', 'chamfer top edges 4x .06x45deg'],
  [
    'slot',
    'slots top: 2X .281 × .75 overall THRU, long way left-right; 1 apart, centred; centred',
    'slot top 2x .281 x .75 overall thru, long way left-right; 1 apart, centred; centred',
  ],
  ['mixed number', 'hole top: ⌀1-3/8 THRU; centred both ways', 'hole top: dia 1-3/8 thru; centred both ways'],
  ['unit typed', 'hole top: ⌀25 mm THRU; centred both ways', 'hole top: dia 25mm thru; centred both ways'],
  [
    'thread',
    'hole top: 1/4-20 UNC-2B ↧ .50; centred both ways',
    'hole top: tapped 1/4-20 UNC-2B .50 deep; centred both ways',
  ],
]

/** ISO 286-1 letters that are also the sign of a radius, and deviations of zero as ISO 129-1 writes them (from memory). */
const tolerances: [string, string, string][] = [
  ['a hole r7', 'R7', 'hole top: ⌀30 R7 THRU; centred both ways'],
  ['a shaft r6', 'r6', 'boss top: ⌀30 r6 × 5 high; centred both ways'],
  ['a zero below', '+0.14 0', 'hole top: ⌀30 +0.14/0 THRU; centred both ways'],
  ['a zero below, apart', '+0.14 0', 'hole top: ⌀30 +0.14 0 THRU; centred both ways'],
  ['a zero above', '0 -0.02', 'hole top: ⌀30 0/-0.02 THRU; centred both ways'],
  ['a zero above, apart', '0 -0.02', 'hole top: ⌀30 0 -0.02 THRU; centred both ways'],
]

describe('tolerances that could be read as something else', () => {
  it.each(tolerances)('%s', (_, written, text) => {
    const brief = clean(mm(text))
    const feature = brief.features[0] as HoleFeature
    const t = feature.diameter.tolerance!
    expect(t.kind === 'fit' ? t.symbol : t.kind === 'unequal' && `${t.upper.text} ${t.lower.text}`).toBe(written)
    // what is printed reads back to the same
    const again = readBrief(printBrief(brief))
    expect((again.features[0] as HoleFeature).diameter.tolerance).toMatchObject(
      t.kind === 'fit' ? { kind: 'fit', symbol: written } : { kind: 'unequal' },
    )
  })

  it('leaves a radius after another size a radius', () => {
    const pocket = one(mm('pocket top: 40 × 36 ↧ 14 R5; centred both ways'))
    expect(pocket).toMatchObject({ kind: 'pocket', cornerRadius: { value: 5 }, depth: { size: { value: 14 } } })
  })
})

describe('standard notation and plain typing', () => {
  it.each(pairs)('read alike: %s', (_what, standard, plain) => {
    const value = (text: string) => withoutPlaces(clean(inch(text)))
    expect(value(plain)).toEqual(value(standard))
  })
})

describe('digits', () => {
  const sizes: [string, number, string, number][] = [
    ['.281', 0.281, 'decimal', 3],
    ['2.5', 2.5, 'decimal', 1],
    ['2.50', 2.5, 'decimal', 2],
    ['2-1/2', 2.5, 'fraction', 0],
    ['2 1/2', 2.5, 'fraction', 0],
    ['3/8', 0.375, 'fraction', 0],
    ['2½', 2.5, 'fraction', 0],
    ['2', 2, 'whole', 0],
  ]
  it.each(sizes)('%s stays as typed', (text, value, form, decimals) => {
    const { diameter } = hole(inch(`hole top: ⌀${text} THRU; centred both ways`))
    expect(diameter).toMatchObject({ text, value, form, decimals, unit: 'inch', unitTyped: false })
    expect(diameter.mm).toBeCloseTo(value * 25.4, 12)
  })

  it('keep a typed unit: 25 mm on an inch sheet, 1 inch on a metric one', () => {
    expect(hole(inch('hole top: ⌀25 mm THRU; centred both ways')).diameter).toMatchObject({
      text: '25',
      unit: 'mm',
      unitTyped: true,
      mm: 25,
    })
    for (const unit of ['in', 'inch', '"']) {
      expect(hole(mm(`hole top: ⌀1 ${unit} THRU; centred both ways`)).diameter).toMatchObject({
        unit: 'inch',
        unitTyped: true,
        mm: 25.4,
      })
    }
  })

  it('take a decimal comma where it is asked for, and say so where it is not', () => {
    const text = mm('hole top: ⌀5,5 THRU; centred both ways')
    expect(hole(`decimal comma\n${text}`).diameter).toMatchObject({ text: '5,5', value: 5.5, decimals: 1 })
    expect(readBrief(text).marks.map((m) => [m.rule, m.mends?.[0]?.text])).toEqual([['decimal-comma', '5.5']])
  })
})

describe('tolerances', () => {
  const tolerance = (t: string) => hole(inch(`hole top: ⌀${t} THRU; centred both ways`)).diameter.tolerance
  it('limits hold the number typed first, and know which is the larger', () => {
    expect(tolerance('.498/.500')).toMatchObject({ kind: 'limits', upper: { text: '.500' }, lower: { text: '.498' } })
    expect(tolerance('12/11.9 mm')).toMatchObject({ kind: 'limits', upper: { value: 12 }, lower: { value: 11.9 } })
  })
  it('unequal deviations keep their signs', () => {
    expect(tolerance('.500 +.002 -.000')).toMatchObject({
      kind: 'unequal',
      upper: { text: '+.002', value: 0.002 },
      lower: { text: '-.000', value: 0 },
    })
    expect(tolerance('.500 -.001 -.003')).toMatchObject({
      kind: 'unequal',
      upper: { value: -0.001 },
      lower: { value: -0.003 },
    })
  })
  it.each([
    ['.500 H7', { kind: 'fit', symbol: 'H7' }],
    ['.500 js6', { kind: 'fit', symbol: 'js6' }],
    ['.500 MAX', { kind: 'max' }],
    ['.500 min', { kind: 'min' }],
    ['.500 BSC', { kind: 'basic' }],
    ['.500 REF', { kind: 'reference' }],
  ])('%s', (text, expected) => expect(tolerance(text)).toMatchObject(expected))
  it('brackets make a reference, a question mark a size still to be measured', () => {
    expect(tolerance('(.500)')).toMatchObject({ kind: 'reference' })
    const brief = readBrief(inch('hole top: ⌀? THRU; centred both ways'))
    expect(brief.marks.map((m) => [m.rule, m.weight])).toEqual([['still-to-be-measured', 'look again']])
    expect((brief.features[0] as HoleFeature).diameter).toMatchObject({ unknown: true, text: '?' })
  })
  it('stock is governed by the mill', () => {
    const { stock } = clean('units inch\npractice ASME\nplate 6 × 4 × 1/4 STK\n')
    expect(stock).toMatchObject({ kind: 'plate', thickness: { text: '1/4', tolerance: { kind: 'stock' } } })
  })
})

describe('places', () => {
  const first = (t: string) => {
    const { placement } = hole(mm(`holes top: 6X ⌀9 THRU; on ⌀80 bolt circle, ${t}`))
    return placement.kind === 'bolt circle' ? placement.first?.degrees : undefined
  }
  // Counter-clockwise from 3 o'clock, an hour being 30°; astride of the vertical leaves half a step on each side of it.
  it.each([
    ["one at 12 o'clock", 90],
    ["one at 3 o'clock", 0],
    ["one at 1 o'clock", 60],
    ["one at 9 o'clock", 180],
    ['first at 15°', 15],
    ['first at 0 deg', 0],
    ['astride', 120],
    ['astride the vertical centre line', 120],
  ])('a bolt circle’s first hole: %s', (text, degrees) => expect(first(text)).toBeCloseTo(degrees, 12))

  it('a grid says how many across and up, from where', () => {
    const { placement, count } = hole(
      mm('holes top: ⌀9 THRU; 3 across 40 apart, leftmost 20 from left; 2 up 50 apart, lowest 15 from front'),
    )
    expect(count.value).toBe(6)
    expect(placement).toMatchObject({
      kind: 'runs',
      runs: [
        {
          count: { value: 3 },
          way: 'across',
          pitch: { value: 40 },
          anchor: { which: 'leftmost', distance: { value: 20 }, from: { text: 'left' } },
        },
        {
          count: { value: 2 },
          way: 'up',
          pitch: { value: 50 },
          anchor: { which: 'lowest', distance: { value: 15 }, from: { text: 'front' } },
        },
      ],
    })
  })

  it('directions of the part stand for across and up', () => {
    const ways = (text: string) => {
      const { placement } = hole(mm(text))
      return placement.kind === 'runs' ? placement.runs.map((r) => r.way) : []
    }
    expect(ways('holes top: ⌀9 THRU; 2 left-right 40 apart, centred; 2 front-rear 40 apart, centred')).toEqual([
      'across',
      'up',
    ])
    expect(ways('holes left: ⌀9 THRU; 2 front-rear 40 apart, centred; 2 up-down 20 apart, centred')).toEqual([
      'across',
      'up',
    ])
  })

  it('points are counted from two faces', () => {
    const { placement, count } = hole(mm('holes front: ⌀11 THRU; at 75, 25; 25, 40; from left and bottom'))
    expect(count.value).toBe(2)
    expect(placement).toMatchObject({
      kind: 'points',
      points: [
        { a: { value: 75 }, b: { value: 25 } },
        { a: { value: 25 }, b: { value: 40 } },
      ],
      fromA: { text: 'left' },
      fromB: { text: 'bottom' },
    })
  })

  it('the count is of all that are made, the mirrored ones too', () => {
    expect(hole(mm('holes top: ⌀9 THRU; 20 from left; 30 from front; mirrored left-right')).count.value).toBe(2)
    expect(hole(mm('holes top: 4X ⌀9 THRU; 20 from left; 30 apart, centred; mirrored left-right')).count.value).toBe(4)
  })

  it('slots say overall or centre to centre, and which way they run', () => {
    const slot = one(
      mm('slot top: 10 × 40 centre to centre THRU, long way front-rear; centred both ways'),
    ) as SlotFeature
    expect(slot).toMatchObject({ measured: 'centres', way: 'front-rear', width: { value: 10 }, length: { value: 40 } })
    const open = one(mm('slot top: 10 × 40 overall THRU, open to left; centred')) as SlotFeature
    expect(open).toMatchObject({ way: 'left-right', openTo: { text: 'left' } })
    // an open slot has one end: overall and centre to centre mean nothing else of it
    const bare = readBrief(mm('slot top: 10 wide × 18, open to left; centred'))
    expect(bare.marks).toEqual([])
    expect(bare.features).toMatchObject([{ measured: 'overall', length: { value: 18 } }])
  })
})

describe('threads', () => {
  // Nominal sizes: ISO 261 (M8 is 8 mm), ASME B1.1 (#10 is .190 inch, 1/4 is .250).
  it.each([
    ['M8', 8],
    ['M10 × 1.25-6H', 10],
    ['#10-32 UNF-2B', 0.19 * 25.4],
    ['1/4-20 UNC-2B', 6.35],
    ['1-1/8-7 UNC', 1.125 * 25.4],
    // a screw's number without its #: no inch size is that fine
    ['10-32 UNF', 0.19 * 25.4],
    ['10-32', 0.19 * 25.4],
    ['12-24 UNC-2B', 0.216 * 25.4],
    ['8-32 UNC', 0.164 * 25.4],
    ['6-32', 0.138 * 25.4],
    ['4-40 UNC', 0.112 * 25.4],
    ['2-56', 0.086 * 25.4],
    ['1-64 UNC', 0.073 * 25.4],
    ['1/4-20', 6.35],
    ['3/8-16-2B', 0.375 * 25.4],
    ['1-8 UNC', 25.4],
    ['1-12 UNF', 25.4],
  ])('%s gives its nominal size', (text, nominal) => {
    const f = hole(mm(`hole top: ${text} ↧ 15; centred both ways`))
    expect(f.thread?.text).toBe(text)
    expect(f.diameter.mm).toBeCloseTo(nominal, 9)
  })
  it('take the drill where it is said', () => {
    expect(hole(mm('hole top: M8 ↧ 16, drill ⌀6.8 ↧ 21; centred both ways'))).toMatchObject({
      diameter: { text: '6.8' },
      threadDepth: { text: '16' },
      depth: { kind: 'blind', size: { text: '21' } },
    })
  })
})

describe('the text’s own habits', () => {
  it('byte order mark, CR LF, lone CR and tabs make no difference', () => {
    const text = inch('hole top: ⌀1/4 THRU\n  centred both ways')
    const plain = withoutPlaces(clean(text))
    expect(withoutPlaces(clean(`\ufeff${text}`))).toEqual(plain)
    expect(withoutPlaces(clean(text.replaceAll('\n', '\r\n')))).toEqual(plain)
    expect(withoutPlaces(clean(text.replaceAll('\n', '\r')))).toEqual(plain)
    expect(withoutPlaces(clean(text.replaceAll('\n  ', '\n\t')))).toEqual(plain)
  })
  it('statements stand in any order', () => {
    const lines = [
      'units mm',
      'practice ISO, first angle',
      'block 60 × 40 × 20',
      'hole top: ⌀9 THRU; centred both ways',
      'part Test block',
    ]
    const value = withoutPlaces(clean(`${lines.join('\n')}\n`))
    expect(withoutPlaces(clean(`${[...lines].reverse().join('\n')}\n`))).toEqual(value)
  })
  it('free text keeps what stands in it, a screw’s # too', () => {
    const { header } = clean(
      'units mm\npractice ISO\nblock 1 × 1 × 1\nnote Tap #10-32, see "B"; Ø 5 ± 1 (twice)  # not printed\nnote "as # typed"\n',
    )
    expect(header.notes.map((n) => n.text)).toEqual(['Tap #10-32, see "B"; Ø 5 ± 1 (twice)', 'as # typed'])
  })
})
