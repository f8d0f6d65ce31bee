import { describe, expect, it } from 'vitest'
import { allMarks, asme, iso, sized } from './sized.ts'

const plate = (more: string) => `plate 120 × 80 × 12\n${more}`
const rules = (s: ReturnType<typeof iso>) => allMarks(s).map((m) => m.rule)

describe('marks about sizes', () => {
  it('a tolerance larger than the size', () => {
    const s = iso('plate 120 × 80 ±90 × 12\n')
    const mark = allMarks(s).find((m) => m.rule === 'tolerance-larger-than-size')!
    expect(s.part.brief.text.slice(mark.span!.from, mark.span!.to)).toContain('90')
  })

  it.each([
    ['limits', 'plate 120 × 80 × 12\nhole top: ⌀9.0/1.0 THRU\n  20 from left; 15 from front\n'],
    ['deviations', 'plate 120 × 80 × 12\nhole top: ⌀6 +0.2 -7 THRU\n  20 from left; 15 from front\n'],
    ['of an angle', 'block 120 × 80 × 60\nnotch front, top: vee, 36 wide, 90° ±95°\n  centred\n'],
    ['of a thickness in a note', 'plate 120 × 80 × 5 ±6\n'],
    ['in a hole table', 'plate 120 × 80 × 12\nhole top: ⌀6 ±8 THRU\n  20 from left; 15 from front\nsizes hole table\n'],
  ])('a tolerance larger than the size: %s', (_, lines) => {
    expect(rules(iso(lines))).toContain('tolerance-larger-than-size')
  })

  it('deviations in either order stand with the upper above (ASME Y14.5-2018 5.3, ISO 129-1, from memory)', () => {
    const s = iso(plate('hole top: ⌀6 -0.1 +0.3 THRU\n  20 from left; 15 from front\n'))
    expect(s.texts).toContain('⌀6 +0.3/−0.1')
  })

  it.each(['+0.1 +0.2', '-0.2 -0.1', '+0.1/+0.2'])('deviations of one sign in the wrong order: %s', (typed) => {
    const s = iso(plate(`hole top: ⌀6 ${typed} THRU\n  20 from left; 15 from front\n`))
    const [mark, more] = allMarks(s).filter((m) => m.rule === 'limits-reversed')
    expect(more).toBeUndefined()
    expect(s.part.brief.text.slice(mark!.span!.from, mark!.span!.to)).toBe(typed)
    const { span, text } = mark!.mends![0]!
    const mended = s.part.brief.text.slice(0, span.from) + text + s.part.brief.text.slice(span.to)
    expect(allMarks(sized(mended)).filter((m) => m.rule === 'limits-reversed')).toEqual([])
  })

  it('one direction located twice: both places, each with both numbers', () => {
    const s = iso(plate('hole top: ⌀6 THRU\n  20 from left; 90 from right; 15 from front\n'))
    const both = allMarks(s).filter((m) => m.rule === 'located-twice')
    const { text } = s.part.brief
    expect(both.map((m) => text.slice(m.span!.from, m.span!.to))).toEqual(['90 from right', '20 from left'])
    for (const m of both) expect(m.text).toContain('20 from left, and 90 from right')
  })

  it('a size whose face another statement has cut away', () => {
    const s = iso(plate('step top right: 20 from right, 4 from top\nstep top right: 30 from right, 4 from top\n'))
    const mark = allMarks(s).find((m) => m.rule === 'size-reaches-nothing')!
    expect(s.part.brief.text.slice(mark.span!.from, mark.span!.to)).toBe('20')
  })

  it.each([
    ['a radius', 'round corners: 4X R5 H7\n'],
    ['a distance that locates a feature', 'hole top: ⌀6 THRU\n  20 H7 from left; 15 from front\n'],
    ['a bolt circle', 'holes top: 4X ⌀6 THRU\n  on ⌀40 H7 bolt circle, equal, first at 0°\n'],
    ['a chamfer', 'chamfer top edges: 4X 1 h9 × 45°\n'],
    ['a depth', 'hole top: ⌀6 ↧ 5 H7\n  20 from left; 15 from front\n'],
  ])('a fit on %s (ISO 286-1: cylinders and two parallel opposite surfaces only, from memory)', (what, lines) => {
    const marks = allMarks(iso(plate(lines))).filter((m) => m.rule === 'fit-without-feature')
    expect(marks.map((m) => m.text).join()).toContain(`${what} has none`)
  })

  it('a reference size that a size gives already (each size once: ASME Y14.5-2018 4.1, from memory)', () => {
    const s = iso('block 80 × 50 × 20\nshow overall (80)\n')
    const mark = allMarks(s).find((m) => m.rule === 'reference-repeats-size')!
    expect(mark.text).toContain('80 gives the left-right length already')
    expect(s.texts.filter((t) => t.includes('80'))).toEqual(['80'])
    const chained = iso('turned axis left-right\n  left ⌀20, 30 long\n  right ⌀30, 40 long\nshow overall (70)\n')
    expect(allMarks(chained).map((m) => m.rule)).not.toContain('reference-repeats-size')
    expect(chained.texts).toContain('(70)')
  })

  it('limits with the smaller first, and the mend that turns them', () => {
    const s = asme(`turned axis left-right
  left ⌀.7500/.7503, 1.38 long
`)
    const mark = allMarks(s).find((m) => m.rule === 'limits-reversed')!
    const [mend] = mark.mends!
    const { text } = s.part.brief
    expect(text.slice(0, mend!.span.from) + mend!.text + text.slice(mend!.span.to)).toContain('⌀.7503/.7500,')
  })

  it('a fit on a slot length and on a pitch; none on a bore', () => {
    const s = iso(
      plate(`slot top: 8 × 30 H7 overall THRU, long way left-right
  60 from left; 50 from front
holes top: 2X ⌀6 H7 THRU
  2 across 25 H7 apart, leftmost 20 from left; 15 from front
`),
    )
    const wrong = allMarks(s).filter((m) => m.rule === 'fit-without-feature')
    expect(wrong.map((m) => m.text).sort()).toEqual([
      'H7 is a fit, and a distance between axes has none.',
      'H7 is a fit, and the length of a slot has none.',
    ])
  })

  it('a shaft symbol on a bore, with the capital letter as mend (ISO 286-1, from memory)', () => {
    const s = iso(plate('hole top: ⌀20 h7 THRU\n  60 from left; 50 from front\n'))
    const mark = allMarks(s).find((m) => m.rule === 'fit-letter-case')!
    expect(mark.mends![0]!.text).toBe('H7')
    expect(rules(iso(plate('hole top: ⌀20 H7 THRU\n  60 from left; 50 from front\n')))).not.toContain('fit-letter-case')
  })

  it('a size whose decimals have no class in the title block', () => {
    const s = asme('plate 4.0000 × 3.00 × .500\n')
    const mark = allMarks(s).find((m) => m.rule === 'no-tolerance-class')!
    expect(s.part.brief.text.slice(mark.span!.from, mark.span!.to)).toBe('4.0000')
  })

  it('decimals that tighten one of several sister sizes unawares', () => {
    const s = asme(`plate 4.00 × 3.00 × .50
holes top: 3X ⌀.250 THRU
  at 1.00, .50; 2.00, 1.00; 3.000, 1.50; from left and front
`)
    const marks = allMarks(s).filter((m) => m.rule === 'decimals-tighten')
    expect(marks).toHaveLength(1)
    expect(s.part.brief.text.slice(marks[0]!.span!.from, marks[0]!.span!.to)).toBe('3.000')
  })

  it('one distance stated twice with different digits: both are named', () => {
    const s = iso(
      plate(`holes A top: 2X ⌀6 THRU
  2 across 25 apart, leftmost 20 from left; 15 from front
step top right: 20 from right, 4 from top
step top left: 20 from left, 4.0 from top
`),
    )
    const both = allMarks(s).filter((m) => m.rule === 'same-size-two-ways')
    expect(both[0]!.text).toContain('4.0 and 4')
    const { text } = s.part.brief
    expect(both.map((m) => text.slice(m.span!.from, m.span!.to)).sort()).toEqual(['4', '4.0'])
    expect(s.sizes.proof.complete).toBe(false)
    expect(s.sizes.proof.repeated).toHaveLength(1)
  })

  it('a reference size that the part does not bear out, with the right number as mend', () => {
    const s = iso(plate('show overall (118)\n'))
    const mark = allMarks(s).find((m) => m.rule === 'sizes-contradict')!
    expect(mark.mends![0]!.text).toBe('120')
    // A reference size is in brackets and outside the proof.
    expect(s.find('(118)').reference).toBe(true)
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('a size still to be measured is laid out and flagged', () => {
    const s = iso(plate('hole top: ⌀6 THRU\n  ? from left; 15 from front\n'))
    const unknown = s.sizes.dimensions.find((d) => d.unknown)!
    expect(unknown.callout.lines[0]!.join('')).toContain('?')
    expect(rules(s)).toContain('still-to-be-measured')
  })

  it('names what is missing, in which view and what to write', () => {
    const s = iso(plate('hole top: ⌀6 THRU\n  15 from front\n'))
    expect(rules(s)).toContain('not-located')
    const [missing] = s.sizes.proof.missing
    expect(missing!.text).toBe('no size says where hole 1 wall stands left-right; the size would stand in the top view')
    expect(missing!.view).toBe('top')
    expect(missing!.write).toBe('60 from left')
    expect(s.part.brief.text.slice(missing!.span!.from, missing!.span!.to)).toContain('hole')
    // Written so, the sheet is complete.
    const mended = iso(plate(`hole top: ⌀6 THRU\n  ${missing!.write}; 15 from front\n`))
    expect(mended.sizes.proof.complete).toBe(true)
  })
})
