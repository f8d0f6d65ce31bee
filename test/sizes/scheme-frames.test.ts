import { describe, expect, it } from 'vitest'
import { plainText } from '../../src/sizes/callout/plain-text.ts'
import { asme, iso, type Sized } from './sized.ts'

/*
 * A frame or letter of a feature of size stands at its diameter or width, whatever gives its place (ASME Y14.5-2018 6.3
 * and 7.3, ISO 1101:2017 clause 6, ISO 5459; from memory). Basic sizes start at the datums of the frame (ASME Y14.5-2018
 * 10.2, ISO 5458; from memory).
 */
const SCHEMES = ['baseline', 'ordinate', 'chain'] as const
const BORED = `block 80 × 60 × 20
holes A top: 4X ⌀7 THRU
  2 across 60 apart, centred; 2 up 40 apart, centred
bore top: ⌀20 H7 THRU
  centred both ways
datum A bottom
datum B bore
`
const signed = ({ sizes }: Sized) =>
  sizes.dimensions.flatMap((d) => (d.signs ?? []).map((s) => `${s.id} at ${plainText(d.callout)}`))
const leftOut = ({ sizes }: Sized) => sizes.marks.filter((m) => m.rule === 'scheme-left-out').map((m) => m.text)

describe.each(SCHEMES)('signs beside sizes by %s', (scheme) => {
  it('stand at the diameter', () => {
    const s = iso(`${BORED}frame holes A: position ⌀0.3 A B\nframe bore: perpendicularity ⌀0.02 A\nsizes ${scheme}\n`)
    expect(signed(s).sort()).toEqual(['datum B at ⌀20 H7', 'frame 1 at 4× ⌀7', 'frame 2 at ⌀20 H7'])
  })

  it('stand at the width of a vee', () => {
    const vee =
      'block 80 × 45 × 40\nnotch front, top: vee, 40 wide, 90°\n  centred\nnotch front, left: square, 8 wide, 6 deep\n  12 from bottom\n'
    const s = iso(`${vee}datum A left\nframe notch 1: position 0.05 A\nsizes ${scheme}\n`)
    expect(signed(s)).toEqual(['frame 1 at 40'])
  })
})

describe.each(SCHEMES)('basic sizes and sizes by %s', (scheme) => {
  it('stay between the holes and their datum where the scheme starts at another face, and the remark names both', () => {
    const s = iso(`${BORED}frame holes A: position ⌀0.3 A B\nsizes ${scheme}\n`)
    const basic = s.sizes.dimensions.filter((d) => d.basic)
    expect(basic.map((d) => d.value).sort()).toEqual([40, 60])
    expect(basic.every((d) => !d.group)).toBe(true)
    expect(leftOut(s).sort()).toEqual([
      `The front-rear places of hole A stand as the brief words them: its frame counts from datum B, and sizes by ${scheme} would start at front.`,
      `The left-right places of hole A stand as the brief words them: its frame counts from datum B, and sizes by ${scheme} would start at left.`,
    ])
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('go into the scheme where it starts at their datums', () => {
    const sides = 'datum C left\ndatum D front\n'
    const s = iso(`${BORED}${sides}frame holes A: position ⌀0.3 A C D\nsizes ${scheme}\n`)
    expect(leftOut(s)).toEqual([])
    expect(s.sizes.dimensions.filter((d) => d.basic && d.group).length).toBeGreaterThanOrEqual(4)
    expect(s.sizes.proof.complete).toBe(true)
  })
})

describe('basic sizes and a hole table', () => {
  it('stay between the holes and their datum where the table counts from other faces, and the remark names both', () => {
    const s = iso(`${BORED}frame holes A: position ⌀0.3 A B\nsizes hole table\n`)
    expect(s.sizes.tables).toEqual([])
    expect(
      s.sizes.dimensions
        .filter((d) => d.basic)
        .map((d) => d.value)
        .sort(),
    ).toEqual([40, 60])
    expect(leftOut(s)).toEqual([
      'hole A stands at the view: its frame counts from datum B, and the hole table would count from the edges of the top view.',
    ])
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('go into the table where it counts from their datums, and holes without a frame do', () => {
    const sides = 'datum C left\ndatum D front\n'
    const other = 'hole X top: ⌀5 THRU\n  40 from left; 10 from front\n'
    const framed = iso(`${BORED}${sides}${other}frame holes A: position ⌀0.3 A C D\nsizes hole table\n`)
    expect(framed.sizes.tables[0]!.rows.map((r) => r.tag)).toEqual(['A1', 'A2', 'A3', 'A4', 'X1'])
    const elsewhere = iso(`${BORED}${other}frame holes A: position ⌀0.3 A B\nsizes hole table\n`)
    expect(elsewhere.sizes.tables[0]!.rows.map((r) => r.tag)).toEqual(['X1'])
    for (const s of [framed, elsewhere]) expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
  })
})

describe('places worked out by a scheme from fractions', () => {
  const RAIL = `plate 4-1/2 × 3 × 3/8
holes top: 2X ⌀9/16 THRU
  2-1/2 apart, centred; 1-3/4 from front
slot top: 9/16 × 1-1/4 overall THRU, long way left-right
  centred left-right; 3/4 from front
`
  it('are fractions again: (4-1/2 − 2-1/2) / 2 + 2-1/2 = 3-1/2, half of 4-1/2 = 2-1/4', () => {
    const s = asme(`${RAIL}sizes baseline\n`)
    expect(s.texts).toEqual(expect.arrayContaining(['1', '2-1/4', '3-1/2']))
    expect(s.find('2-1/4').tolerance).toMatchObject({ upper: 25.4 / 64, lower: -25.4 / 64 })
    expect(s.sizes.marks.filter((m) => m.rule === 'no-tolerance-class')).toEqual([])
  })

  it('are decimals where the brief has decimals too', () => {
    const s = asme(`${RAIL.replace('2-1/2 apart', '2.50 apart')}sizes baseline\n`)
    expect(s.texts).toEqual(expect.arrayContaining(['1.00', '3.50']))
  })
})
