import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { auditSizes } from './audit.ts'
import { allMarks, iso, type Sized, sized } from './sized.ts'

/*
 * Features shown in line, whose places the brief gives by one number from one side, show it once (ASME Y14.5-2018 4.1:
 * zero applies between axes and between planes shown in line; ISO 129-1:2018: each size once; from memory). The audit
 * holds it against the rank of the whole constraint Jacobian, leaves each size out and gives each twice.
 */
const BLOCK = 'block     80 × 60 × 20\n'
const STAND = 'block     80 × 40 × 30\n'

const level: Record<string, { lines: string; text: string; speaksFor: number; said: readonly string[] }> = {
  'holes drilled from opposite faces': {
    lines: `${BLOCK}hole A    top: ⌀8 THRU
          24 from left; 30 from front
hole B    bottom: M6 THRU
          24 from left; 45 from front
`,
    text: '24',
    speaksFor: 1,
    said: ['hole A level with hole B, left-right'],
  },
  'a hole and the notches above and below it': {
    lines: `${STAND}notch A   front, top: square, 20 wide, 6 deep
          32 from left
notch B   front, bottom: vee, 12 wide, 6 deep
          32 from left
hole      front: ⌀6 THRU
          32 from left; 15 from bottom
`,
    text: '32',
    speaksFor: 2,
    said: ['hole 1 level with notch A, left-right', 'notch A level with notch B, left-right'],
  },
  'notches at opposite edges, by their middles': {
    lines: `${BLOCK}notch     front, left: square, 10 wide, 6 deep
          12 from bottom
notch     front, right: square, 8 wide, 4 deep
          12 from bottom
`,
    text: '12',
    speaksFor: 1,
    said: ['notch 1 level with notch 2, up-down'],
  },
  'notches at opposite edges, by their sides': {
    lines: `${STAND}notch     front, left: square, 9 wide, 8 deep
          lower side 10 from bottom
notch     front, right: square, 7 wide, 12 deep
          lower side 10 from bottom
`,
    text: '10',
    speaksFor: 1,
    said: ['notch 1 level with notch 2, up-down'],
  },
  'a slot and a hole of one face': {
    lines: `${BLOCK}slot A    top: 8 × 20 overall THRU, long way left-right
          40 from left; 15 from front
hole B    top: ⌀9 THRU
          40 from left; 45 from front
`,
    text: '40',
    speaksFor: 1,
    said: ['slot A level with hole B, left-right'],
  },
  'rows from opposite faces, both centred': {
    lines: `${BLOCK}holes A   top: 2X ⌀8 THRU
          60 apart, centred; 12 from front
holes B   bottom: 2X M6 THRU
          60 apart, centred; 45 from front
`,
    text: '60, centred',
    speaksFor: 1,
    said: ['hole A level with hole B, left-right'],
  },
  'keyseats that one view shows from beside and from their own side': {
    lines: `turned    axis left-right
          a ⌀40, 60 long
keyseat A a, top: 8 P9 wide × 4 deep × 30 long
          left end 6 from left face
keyseat B a, front: 8 P9 wide × 4 deep × 20 long
          left end 6 from left face
`,
    text: '6',
    speaksFor: 1,
    said: ['keyseat A level with keyseat B, left-right'],
  },
}

const reading = (s: Sized, text: string) => s.sizes.dimensions.filter((_, i) => s.texts[i] === text)

describe.each(Object.entries(level))('%s', (_, { lines, text, speaksFor, said }) => {
  const s = iso(lines)
  it('show their place once, for all places in the brief', () => {
    const [one, more] = reading(s, text)
    expect(more).toBeUndefined()
    const places = [one!.span!, ...(one!.alike ?? [])]
    expect(places).toHaveLength(1 + speaksFor)
    expect(new Set(places.map((p) => p.from)).size).toBe(1 + speaksFor)
    for (const { from, to } of places) expect(s.part.brief.text.slice(from, to)).toBe(text.split(',')[0])
  })
  it('are counted as in line, and miss each size that is left out', () => {
    expect(s.sizes.proof.levels).toEqual(said)
    expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
    auditSizes(s, lines)
  })
})

const parted: Record<string, readonly [lines: string, texts: readonly string[]]> = {
  'a tolerance at one of them': [
    `${BLOCK}hole A    top: ⌀8 THRU
          22 from left; 30 from front
hole B    bottom: ⌀8 THRU
          22 ±0.1 from left; 45 from front
`,
    ['22', '22 ±0.1'],
  ],
  'a frame at one of them': [
    `${BLOCK}hole A    top: ⌀8 THRU
          22 from left; 30 from front
hole B    bottom: ⌀8 THRU
          22 from left; 45 from front
datum A bottom
datum B left
datum C front
frame hole A: position ⌀0.3 A B C
`,
    ['22', '22'],
  ],
  'a scheme for one of them': [
    `${BLOCK}hole A    top: ⌀8 THRU
          22 from left; 30 from front
hole B    bottom: ⌀8 THRU
          22 from left; 45 from front
sizes baseline of hole B
`,
    ['22', '22'],
  ],
  'other digits': [
    `${BLOCK}hole A    top: ⌀8 THRU
          22 from left; 30 from front
hole B    bottom: ⌀8 THRU
          22.0 from left; 45 from front
`,
    ['22', '22.0'],
  ],
  'another side that it counts from': [
    `${BLOCK}hole A    top: ⌀8 THRU
          40 from left; 30 from front
hole B    bottom: ⌀8 THRU
          40 from right; 45 from front
`,
    ['40', '40'],
  ],
  'the views that show them': [
    `${STAND}hole A    top: ⌀6 ↧ 9
          22 from left; 10 from front
hole B    bottom: ⌀5 ↧ 9
          22 from left; 30 from front
`,
    ['22', '22'],
  ],
  'a side beside a centre': [
    `${STAND}notch     front, top: square, 20 wide, 6 deep
          left side 22 from left
hole      front: ⌀6 THRU
          22 from left; 15 from bottom
`,
    ['22', '22'],
  ],
  'the other’s own number for its row': [
    `${BLOCK}holes A   top: 2X ⌀8 THRU
          56 apart, centred; 22 from front
holes B   top: 2X ⌀6 THRU
          56 apart, leftmost 12 from left; 45 from front
`,
    ['56, centred', '56'],
  ],
}

describe('are parted and keep each its own size by', () => {
  it.each(Object.entries(parted))('%s', (_, [lines, texts]) => {
    const s = iso(lines)
    const [start] = texts
    const found = s.texts.filter((t) => t.startsWith(start!.split(',')[0]!))
    expect(found).toEqual(texts)
    auditSizes(s, lines)
  })
})

it('keep each its own depth and width, however alike', () => {
  const s = iso(`${BLOCK}notch     front, left: square, 10 wide, 6 deep
          12 from bottom
notch     front, right: square, 10 wide, 6 deep
          12 from bottom
`)
  expect([reading(s, '10').length, reading(s, '6').length, reading(s, '12').length]).toEqual([2, 2, 1])
})

it('the V-block’s tapped hole shares the place of the notches beside it', () => {
  const text = readFileSync(new URL('../../examples/v-block.brief', import.meta.url), 'utf8')
  const s = sized(text.replace('lower side 12 from bottom', '17 from bottom'))
  expect(reading(s, '17')).toHaveLength(1)
  expect(s.sizes.proof.levels).toEqual(['hole 1 level with notch 3, up-down'])
  auditSizes(s, text)
})
