import { describe, expect, test } from 'vitest'
import type { Practice } from '../../src/brief/brief.ts'
import {
  type Characteristic,
  characteristics,
  compartments,
  type Frame,
  frameText,
} from '../../src/brief/frame/frame.ts'
import { readFrame } from '../../src/brief/frame/read-frame.ts'
import { checkFrame } from '../../src/tolerance/frame/check-frame.ts'

function frame(text: string): Frame {
  const read = readFrame(text)
  if (!read.ok) throw new Error(`${text}: ${read.problem.text}`)
  return read.value
}
function problem(text: string, offset = 0) {
  const read = readFrame(text, offset)
  return read.ok ? undefined : read.problem
}
const datums = [
  { letter: 'A', featureOfSize: false },
  { letter: 'B', featureOfSize: true },
  { letter: 'C', featureOfSize: true },
]
function rules(
  text: string,
  practice: Practice = 'ASME',
  feature?: { ofSize: boolean; round?: boolean },
): readonly string[] {
  return checkFrame(frame(text), { practice, datums, ...(feature ? { feature } : {}) }).map((mark) => mark.rule)
}

describe('reading', () => {
  test('symbols and plain words say the same', () => {
    const strip = (text: string) => frameText(frame(text))
    expect(strip('position dia .010 MMC A B C')).toBe('⌖ ⌀.010 Ⓜ A B C')
    expect(strip('⌖ ⌀.010 Ⓜ A B C')).toBe('⌖ ⌀.010 Ⓜ A B C')
    expect(strip('⌖|⌀.010Ⓜ|A|B|C')).toBe('⌖ ⌀.010 Ⓜ A B C')
    expect(strip('true position Ø.010 (M) a b(M)')).toBe('⌖ ⌀.010 Ⓜ A BⓂ')
    expect(strip('perpendicularity 0,05 A')).toBe('⟂ 0,05 A')
    expect(strip('squareness dia .002 A RFS')).toBe('⟂ ⌀.002 A')
    expect(strip('profile of a surface .03 unequal .01 A B C')).toBe('⌓ .03 Ⓤ .01 A B C')
    expect(strip('surface profile .03')).toBe('⌓ .03')
    expect(strip('total runout .002 A-B')).toBe('⌰ .002 A-B')
    expect(strip('run-out .002 A')).toBe('↗ .002 A')
    expect(strip('position dia 0 MMC .005 MAX A')).toBe('⌖ ⌀0 Ⓜ .005 MAX A')
    expect(strip('position dia .02 projected 1.25 A')).toBe('⌖ ⌀.02 Ⓟ 1.25 A')
    expect(strip('position spherical dia .02 A B')).toBe('⌖ S⌀.02 A B')
    expect(strip('flatness .01 free state')).toBe('⏥ .01 Ⓕ')
    expect(strip('parallelism .01 tangent plane A')).toBe('∥ .01 Ⓣ A')
    expect(strip('flatness 0.1 CZ')).toBe('⏥ 0.1 CZ')
  })
  test('every characteristic is read by its name and by its symbol', () => {
    for (const name of Object.keys(characteristics) as Characteristic[]) {
      expect(frame(`${name} .01`).characteristic).toBe(name)
      expect(frame(`${characteristics[name].symbol} .01`).characteristic).toBe(name)
    }
    expect(Object.keys(characteristics).length).toBe(14)
  })
  test('what is printed reads again as the same', () => {
    for (const text of ['⌖ ⌀.030 Ⓜ A B C\n⌀.010 Ⓜ A', '⌓ 0.4 UZ0.1 A', '⌖ ⌀0 Ⓜ .005 MAX A BⓂ C-D', '⟂ .01 Ⓟ .5 A']) {
      expect(frameText(frame(frameText(frame(text))))).toBe(frameText(frame(text)))
    }
  })
  test('composite frames and single segments are told apart', () => {
    const composite = frame('position dia .030 MMC A B C; dia .010 MMC A')
    expect(composite.stacking).toBe('composite')
    expect(compartments(composite)).toEqual([
      ['⌖', '⌀.030 Ⓜ', 'A', 'B', 'C'],
      ['⌀.010 Ⓜ', 'A'],
    ])
    const segments = frame('position dia .030 A B C\nposition dia .010 A B')
    expect(segments.stacking).toBe('segments')
    expect(compartments(segments)[1]).toEqual(['⌖', '⌀.010', 'A', 'B'])
  })
  test('digits stand as typed', () => {
    expect(frame('position dia .010 A').rows[0]!.value).toMatchObject({ text: '.010', value: 0.01, decimals: 3 })
  })
  test('a fault points at the word and offers the nearest', () => {
    expect(problem('postion dia .010 A', 100)).toMatchObject({ instead: 'position', span: { from: 100, to: 107 } })
    expect(problem('position dia A')).toMatchObject({ span: { from: 13, to: 14 } })
    expect(problem('position dia .010 MMX A')).toMatchObject({ instead: 'MMC', span: { from: 18, to: 21 } })
    expect(problem('position')).toMatchObject({ text: 'The frame ends too soon.', span: { from: 8, to: 8 } })
    expect(problem('profile .02 unequal A')?.text).toContain('needs a value')
    expect(problem('position .02 MMC LMC A')?.expected).toContain('Ⓜ')
    expect(problem('position .02 A; flatness .01')?.text).toContain('flatness')
    expect(problem('position -.02 A')?.instead).toBe('.02')
    expect(problem('')).toBeDefined()
    expect(problem('.02 A')).toBeDefined()
  })
  test('nothing throws, whatever is written', () => {
    const bits = [
      'position',
      '⌖',
      'dia',
      '⌀',
      '.01',
      '0',
      'MMC',
      'Ⓜ',
      'A',
      'A-B',
      ';',
      '|',
      'max',
      'Ⓟ',
      'uz',
      '§',
      '-',
      'profile',
      'of',
      '\n',
    ]
    let seed = 1
    for (let i = 0; i < 3000; i++) {
      const words: string[] = []
      for (let n = 0; n < 6; n++) {
        seed = (seed * 48271) % 2147483647
        words.push(bits[seed % bits.length]!)
      }
      const text = words.join(seed % 2 ? ' ' : '')
      const read = readFrame(text)
      if (!read.ok) expect(read.problem.text.length, text).toBeGreaterThan(5)
    }
  })
})

// Each case by the rules of ASME Y14.5-2018 and ISO 1101:2017 (section numbers in the marks, from memory): one that must be
// marked and a near twin that must not.
describe('legality', () => {
  const cases: [rule: string, wrong: string, right: string, practice?: Practice, feature?: { ofSize: boolean }][] = [
    ['withdrawn-characteristic', 'coaxiality dia .01 B', 'position dia .01 B'],
    ['withdrawn-characteristic', 'symmetry .01 B', 'position .01 B'],
    ['zone-not-round', 'flatness dia .01', 'flatness .01'],
    ['zone-not-round', 'total runout dia .01 B', 'total runout .01 B'],
    ['zone-must-be-round', 'coaxiality 0.01 B', 'coaxiality dia 0.01 B', 'ISO'],
    ['zone-not-spherical', 'perpendicularity spherical dia .01 A', 'position spherical dia .01 A'],
    ['round-zone-of-surface', 'perpendicularity dia .01 A', 'perpendicularity .01 A', 'ASME', { ofSize: false }],
    ['zero-tolerance', 'position dia 0 A', 'position dia 0 MMC A'],
    ['material-not-allowed', 'circularity .01 MMC', 'straightness .01 MMC'],
    ['material-not-allowed', 'profile .01 MMC A', 'profile .01 A'],
    ['material-not-allowed', 'runout .01 MMC B', 'runout .01 B'],
    ['material-needs-size', 'flatness .01 MMC', 'flatness .01', 'ASME', { ofSize: false }],
    ['max-without-bonus', 'position dia .01 .02 MAX A', 'position dia .01 MMC .02 MAX A'],
    ['projection-not-allowed', 'flatness .01 projected .5', 'perpendicularity .01 projected .5 A'],
    ['projection-height', 'position dia .01 projected A', 'position dia .01 projected .75 A'],
    ['tangent-plane-not-allowed', 'position .01 tangent plane A', 'parallelism .01 tangent plane A'],
    ['unequal-not-allowed', 'position .01 unequal .005 A', 'profile .01 unequal .005 A'],
    ['unequal-of-other-practice', 'profile .01 UZ .002 A', 'profile .01 unequal .002 A'],
    ['unequal-of-other-practice', 'profile 0.1 unequal 0.02 A', 'profile 0.1 UZ 0.02 A', 'ISO'],
    ['unequal-out-of-zone', 'profile .01 unequal .02 A', 'profile .01 unequal .01 A'],
    ['combined-zone-of-iso', 'flatness .01 CZ', 'flatness .01'],
    ['datum-forbidden', 'flatness .01 A', 'flatness .01'],
    ['datum-forbidden', 'cylindricity .01 B', 'cylindricity .01'],
    ['datum-missing', 'perpendicularity .01', 'perpendicularity .01 A'],
    ['datum-missing', 'runout .01', 'runout .01 B'],
    ['datum-missing', 'position dia .01', 'position dia .01 A'],
    ['too-many-datums', 'runout .01 A B C', 'runout .01 A B'],
    ['datum-unknown', 'position dia .01 A D', 'position dia .01 A C'],
    ['datum-letter', 'position dia .01 A O', 'position dia .01 A B'],
    ['datum-twice', 'position dia .01 A A', 'position dia .01 A B'],
    ['runout-datum-material', 'runout .01 B(M)', 'runout .01 B'],
    ['datum-material-needs-size', 'position dia .01 MMC A(M) B', 'position dia .01 MMC A B(M)'],
    ['composite-of-asme', 'position 0.3 A B; 0.1 A', 'position 0.3 A B; position 0.1 A', 'ISO'],
    ['composite-not-allowed', 'perpendicularity .03 A; .01 A', 'position .03 A; .01 A'],
    ['composite-not-finer', 'position .03 A B; .03 A', 'position .03 A B; .02 A'],
    ['composite-datum-order', 'position .03 A B; .01 B', 'position .03 A B; .01 A B'],
  ]
  test.each(cases)('%s: %s', (rule, wrong, right, practice = 'ASME', feature = { ofSize: true }) => {
    expect(rules(wrong, practice, feature)).toContain(rule)
    expect(rules(right, practice, feature)).toEqual([])
  })
  test('a profile without datums and a composite that leaves its lower datums out stand', () => {
    expect(rules('profile .03')).toEqual([])
    expect(rules('position dia .03 A B C; dia .01')).toEqual([])
  })
  test('position without a datum is for a second look only, since a pattern may be its own reference', () => {
    const [found] = checkFrame(frame('position dia .01'), { practice: 'ISO', datums })
    expect(found?.weight).toBe('look again')
  })
  test('an unknown datum is offered the nearest known one, with its place', () => {
    const text = 'position dia .01 A D'
    const [found] = checkFrame(frame(text), { practice: 'ASME', datums: [{ letter: 'A' }, { letter: 'E' }] })
    expect(text.slice(found!.span!.from, found!.span!.to)).toBe('D')
    expect(found?.mends?.[0]?.text).toMatch(/^[AE]$/)
  })
  test('every mark has a rule, a sentence, an expectation and a source', () => {
    for (const [, wrong, , practice = 'ASME', feature = { ofSize: true }] of cases) {
      for (const mark of checkFrame(frame(wrong), { practice, datums, feature })) {
        expect(mark.rule).toMatch(/^[a-z-]+$/)
        expect(mark.text.endsWith('.')).toBe(true)
        expect(mark.expected).toBeTruthy()
        expect(mark.source).toMatch(/ASME|ISO/)
        expect(mark.span).toBeDefined()
      }
    }
  })
})
