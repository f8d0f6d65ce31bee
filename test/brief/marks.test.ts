import { describe, expect, it } from 'vitest'
import { formatMark } from '../../src/brief/format-mark.ts'
import { readBrief } from '../../src/brief/read.ts'

const head = 'units mm\npractice ISO, first angle\n'
const block = `${head}block 160 × 100 × 50\n`

/** What a checker sees: the rule, the words under the caret, the first mend's text. */
function seen(text: string): [rule: string, place: string | undefined, mend?: string][] {
  return readBrief(text).marks.map((m) => {
    const place = m.span && text.slice(m.span.from, m.span.to)
    return m.mends ? [m.rule, place, m.mends[0]!.text] : [m.rule, place]
  })
}

describe('one cause, one mark', () => {
  it.each<[string, string, ReturnType<typeof seen>]>([
    [
      'a word that a place hangs from',
      `${block}hole top: ⌀9 THRU; 20 form left; centred up\n`,
      [['unknown-word', 'form', 'from']],
    ],
    [
      'two slips in a grid',
      `${block}holes top: 4X ⌀9; 2 accross 40 apart, centred; 2 up 30 apart, centerd\n`,
      [
        ['unknown-word', 'accross', 'across'],
        ['unknown-word', 'centerd', 'centred'],
      ],
    ],
    ['an angle', `${block}chamfer top rear edge: 2 × 45 dge\n`, [['unknown-word', 'dge', 'deg']]],
    [
      'a figure left out before apart',
      `${block}holes top: 4X ⌀9; 2 across 40 apart, centred; 2 up apart, centred\n`,
      [['missing-size', 'apart']],
    ],
    ['a slip in the stock', `${head}tube ⌀60 outsid, ⌀40 inside, 20 long\n`, [['unknown-word', 'outsid', 'outside']]],
  ])('%s', (_, text, marks) => {
    expect(seen(text)).toEqual(marks)
    expect(readBrief(text).features.length + (readBrief(text).stock?.kind === 'tube' ? 1 : 0)).toBe(1)
  })
})

describe('a word in place of a size', () => {
  it('makes no size up: what has it is left out, all else stands', () => {
    expect(readBrief(`${head}block abc × 100 × 50\n`).stock).toBeUndefined()
    const { stock, features } = readBrief(`${block}hole top: ⌀abc THRU; centred both ways\nround corners: 4X R5\n`)
    expect(stock?.kind).toBe('block')
    expect(features.map((f) => f.kind)).toEqual(['round'])
  })
})

describe('messages', () => {
  it.each<[string, string, ReturnType<typeof seen>]>([
    ['a misspelt statement', `${block}hoel top: ⌀9 THRU; centred both ways\n`, [['unknown-word', 'hoel', 'hole']]],
    ['a misspelt header item', `${block}materail steel\n`, [['unknown-word', 'materail', 'material']]],
    [
      'a misspelt word of a callout',
      `${block}hole top: ⌀9 THUR; centred both ways\n`,
      [['unknown-word', 'THUR', 'THRU']],
    ],
    ['a misspelt place', `${block}hole top: ⌀9; centerd both ways\n`, [['unknown-word', 'centerd', 'centred']]],
    ['a number typed on', `${block}hole top: ⌀9; centred both ways; 7\n`, [['out-of-place', '7']]],
    ['a misspelt face', `${block}hole botom: ⌀9; centred both ways\n`, [['unknown-name', 'botom', 'bottom']]],
    ['a misspelt unit', 'units inhc\npractice ASME\nblock 1 × 1 × 1\n', [['unknown-word', 'inhc', 'inch']]],
    ['no stock', head, [['stock-not-said', undefined]]],
    ['a word in place of a size', `${head}block abc × 100 × 50\n`, [['not-a-size', 'abc']]],
    ['a word in place of a diameter', `${block}hole top: ⌀abc THRU; centred both ways\n`, [['not-a-size', 'abc']]],
    [
      'a word in place of a distance',
      `${block}hole top: ⌀9 THRU; abc from left; centred up\n`,
      [['not-a-size', 'abc']],
    ],
    ['a round plate', `${head}plate dia 120, 12 thick\n`, [['out-of-place', 'plate', 'disc']]],
    [
      'a word of the language that is no name',
      `${block}hole plate: ⌀9 THRU; centred both ways\n`,
      [['unknown-name', 'plate']],
    ],
    ['a statement that is only begun', `${block}ho\n`, [['unknown-word', 'ho', 'hole']]],
    ['a statement of which many begin so', `${block}ro\n`, [['unknown-word', 'ro', 'round']]],
    ['a size missing', `${head}block 160 × 100\n`, [['missing-size', 'block']]],
    ['a thickness of zero', `${head}plate 160 × 100 × 0\n`, [['zero-size', '0']]],
    ['a negative size', `${head}plate 160 × -100 × 8\n`, [['negative-size', '-100']]],
    ['a size beyond all sense', `${head}plate 160 × 100 × 9999999\n`, [['enormous-size', '9999999']]],
    ['a zero denominator', `${head}plate 160 × 100 × 1/0\n`, [['not-a-number', '1/0']]],
    [
      'a thousand million holes',
      `${block}holes top: 1000000000X ⌀9; 40 apart, centred; centred\n`,
      [
        ['count-out-of-range', '1000000000X'],
        ['missing-count', '40'],
      ],
    ],
    [
      'a count that the places contradict',
      `${block}holes top: 4X ⌀9; 2 across 40 apart, centred; 3 up 20 apart, centred\n`,
      [['contradiction', '4X', '6X']],
    ],
    [
      'nothing said of the place',
      `${block}hole top: ⌀9\n`,
      [['missing-place', 'hole', '\n          centred both ways']],
    ],
    [
      'nothing said of the place of several',
      `${block}holes top: 3X ⌀9\n`,
      [['missing-place', 'holes', '\n          3 across ? apart, centred; centred up']],
    ],
    ['two depths', `${block}hole top: ⌀9 THRU ↧ 5; centred both ways\n`, [['contradiction', '5']]],
    [
      'a bolt circle without its first hole',
      `${block}holes top: 6X ⌀9; on ⌀40 bolt circle\n`,
      [['first-hole-not-said', 'on ⌀40 bolt circle', ", one at 12 o'clock"]],
    ],
    [
      'a slot’s length left open',
      `${block}slot top: 10 × 40 THRU, long way left-right; centred both ways\n`,
      [['slot-length-not-said', '40', ' overall']],
    ],
    [
      'a slot’s way left open',
      `${block}slot top: 10 × 40 overall THRU; centred both ways\n`,
      [['slot-way-not-said', 'slot', ', long way left-right,']],
    ],
    ['a chamfer without its angle', `${block}chamfer top edges: 4X 1\n`, [['missing-size', '1', ' × 45°']]],
    ['an open outline', `${head}outline 8 thick\n  right 100; up 20\n`, [['outline-open', 'outline', '; close']]],
    ['equal limits', `${block}hole top: ⌀9.5/9.5 THRU; centred both ways\n`, [['equal-limits', '9.5/9.5']]],
    ['half a tolerance', `${block}hole top: ⌀9 +.1 THRU; centred both ways\n`, [['tolerance-incomplete', '+.1']]],
    [
      'an angle’s make left open',
      `${head}angle 6 STK\n  upright 50, at rear; base 50; length 80\n`,
      [['angle-make-not-said', 'angle', ' formed,']],
    ],
    [
      'an upright that stands in the base’s way',
      `${head}angle rolled, 6 STK\n  upright 50, at rear; base 50 toward rear; length 80\n`,
      [['contradiction', 'angle']],
    ],
  ])('%s', (_what, text, expected) => {
    expect(seen(text)).toEqual(expected)
  })

  it('an ASME hole with no depth is asked for it; ISO 129-1 takes it as through', () => {
    const hole = 'hole top: ⌀9; centred both ways\n'
    expect(seen(block + hole)).toEqual([])
    expect(seen(`units mm\npractice ASME\nblock 160 × 100 × 50\n${hole}`)).toEqual([['missing-size', '9', ' THRU']])
  })

  it('says both places of what is stated twice', () => {
    const text = `${block}material steel\nfirm X\nmaterial brass\n`
    const brief = readBrief(text)
    expect(brief.header.material?.text).toBe('steel')
    expect(brief.marks).toHaveLength(1)
    expect(formatMark(text, brief.marks[0]!)).toContain(
      'line 6, column 1: must change: Material is stated here and in line 4',
    )
    expect(seen(`${block}plate 1 × 1 × 1\n`)).toEqual([['stated-twice', 'plate 1 × 1 × 1']])
  })

  it('a size at the margin is joined to the statement above', () => {
    const text = `${block}hole top: ⌀9 THRU\n2 across 40 apart, centred; 30 from front\n`
    const mark = readBrief(text).marks.find((m) => m.rule === 'unknown-word')!
    expect(mark.expected).toContain('the statement above')
    const { span, text: blanks } = mark.mends![0]!
    const mended = text.slice(0, span.from) + blanks + text.slice(span.to)
    expect(readBrief(mended).marks).toEqual([])
    expect(readBrief(mended).features).toHaveLength(1)
  })

  it('odd characters are one mark, with the first place', () => {
    expect(seen(`${block}note a\u0000b\u0000\n`)).toEqual([['odd-characters', '\u0000']])
    expect(seen(`${block}note a\ud800b\n`)).toEqual([['odd-characters', '\ud800']])
  })

  it('a mend, put in, answers its mark', () => {
    const texts = [
      `${block}hoel top: ⌀9 THRU; centred both ways\n`,
      `${block}holes top: 6X ⌀9; on ⌀40 bolt circle\n`,
      `${block}chamfer top edges: 4X 1\n`,
      `${block}hole top: ⌀5,5 THRU; centred both ways\n`,
      `${block}hole top: G1/8 ↧ 12; centred both ways\n`,
      `${block}hole top: 1/8-27 NPT THRU; centred both ways\n`,
      `${block}hole top: Rc 1/4 ↧ 12; centred both ways\n`,
    ]
    for (const text of texts) {
      const [mark] = readBrief(text).marks
      const mend = mark!.mends![0]!
      const mended = text.slice(0, mend.span.from) + mend.text + text.slice(mend.span.to)
      expect(readBrief(mended).marks, mended).toEqual([])
    }
  })

  it('every mark that must change says what was expected', () => {
    const bad = [
      `${block}hoel\nhole\nslot top\nstep\nnotch front\nchamfer\nboss top\ngroove\nflat\nkeyseat\npocket top\nviews\nshow\nplace\nsizes\n`,
      'plate\nangle\ntube 5\nturned\noutline\n',
    ]
    for (const text of bad) {
      const { marks } = readBrief(text)
      expect(marks.length).toBeGreaterThan(3)
      for (const mark of marks) expect(mark.expected, `${mark.rule}: ${mark.text}`).toBeTruthy()
    }
  })
})

// An example is taken as it stands, so that it is of the brief's own unit: 18 across on an inch part is 18 in.
it.each([
  ['mm', 'flat body, top: 1 long', '18 across'],
  ['inch', 'flat body, top: 1 long', '.70 across'],
  ['mm', 'notch body, top: square, 10 deep', '20 wide'],
  ['inch', 'notch body, top: square, 10 deep', '.75 wide'],
] as const)('a size missing in a brief in %s, “%s”, is shown by an example of that unit: %s', (units, line, wanted) => {
  const brief = readBrief(`units ${units}\nturned axis left-right\n  body ⌀30, 40 long\n${line}\n`)
  expect(brief.marks.find((m) => m.rule === 'missing-size')?.expected).toBe(wanted)
})

// Common practice, no source: the middles of notches are their centres, as those of slots are.
it('reads the distance between centres of notches as that of slots', () => {
  const places = (words: string) => {
    const { features, marks } = readBrief(
      `units inch\nplate 4.00 × 2.50 × .25, face front\nnotches front, bottom: 2X square, .760 wide, .50 deep\n  ${words}\n`,
    )
    const [notch] = features
    return { marks: marks.map((m) => m.text), sizes: JSON.stringify(notch).match(/"text":"[^"]*"/g) }
  }
  expect(places('centres 1.520 apart, centred')).toEqual(places('1.520 apart, centred'))
  expect(places('centres 1.520 apart, centred').sizes).toContain('"text":"1.520"')
})
