import { describe, expect, it } from 'vitest'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { allMarks, asme, iso } from './sized.ts'

/*
 * Each feature has its own sizes, also where another's floor or side stands in line with it by chance, but for a place
 * that one number gives for both (ASME Y14.5-2018 4.1(c), (d) and (k): enough sizes, each once, and what is shown in line
 * is in line; from memory). The numbers are those of the briefs; the rank of the whole constraint Jacobian from its
 * singular values is the second opinion.
 */
const cases: Record<string, { brief: string; own: readonly [feature: string, texts: readonly string[]][] }> = {
  'two notches whose floors lie at one level, cut from opposite sides': {
    brief: `block 80 × 40 × 30
notch front, top: square, 20 wide, 15 deep
  20 from left
notch front, bottom: square, 25 wide, 15 deep
  60 from left
`,
    own: [
      ['notch 1', ['20', '20', '15']],
      ['notch 2', ['60', '25', '15']],
    ],
  },
  'two notches with sides in line': {
    brief: `block 80 × 40 × 30
notch front, left: square, 10 wide, 8 deep
  lower side 10 from bottom
notch front, right: square, 10 wide, 12 deep
  lower side 10 from bottom
`,
    own: [
      ['notch 1', ['10', '10', '8']],
      ['notch 2', ['10', '12']],
    ],
  },
  'three notches of one depth': {
    brief: `block 80 × 40 × 30
notch front, top: square, 12 wide, 10 deep
  20 from left
notch front, top: square, 16 wide, 10 deep
  60 from left
notch right, top: square, 14 wide, 10 deep
  centred
`,
    own: [
      ['notch 1', ['20', '12', '10']],
      ['notch 2', ['60', '16', '10']],
      ['notch 3', ['14, centred', '10']],
    ],
  },
  'two steps that meet at one level back to back': {
    brief: `block 80 × 40 × 30
step top left: 20 from left, 15 from top
step bottom right: 25 from right, 15 from bottom
`,
    own: [
      ['step 1', ['20', '15']],
      ['step 2', ['25', '15']],
    ],
  },
  'two pockets whose floors lie at one level': {
    brief: `block 80 × 40 × 30
pocket top: 20 × 22 ↧ 15, corners R 5
  20 from left; centred front-rear
pocket bottom: 24 × 26 ↧ 15, corners R 4
  60 from left; centred front-rear
`,
    own: [
      ['pocket 1', ['20', '20', '22, centred', '↧ 15', '4× R5']],
      ['pocket 2', ['60', '24', '26, centred', '↧ 15', '4× R4']],
    ],
  },
  'two keyseats of one shaft for keys of one size': {
    brief: `turned axis left-right
  a ⌀30, 50 long
  b ⌀40, 60 long
  c ⌀30, 50 long
keyseat a, top: 8 P9 wide × 4 deep × 30 long
  left end 5 from left face
keyseat c, top: 8 P9 wide × 4 deep × 30 long
  right end 5 from right face
`,
    own: [
      ['keyseat 1', ['8 P9', '4', '30', '5']],
      ['keyseat 2', ['8 P9', '4', '30', '5']],
    ],
  },
  'two keyseats opposite each other': {
    brief: `turned axis left-right
  a ⌀40, 60 long
keyseat a, top: 8 P9 wide × 4 deep × 30 long
  left end 5 from left face
keyseat a, bottom: 8 P9 wide × 4 deep × 30 long
  left end 5 from left face
`,
    own: [
      ['keyseat 1', ['8 P9', '4', '30', '5']],
      ['keyseat 2', ['8 P9', '4', '30']],
    ],
  },
  'wrench flats of one size at both ends': {
    brief: `turned axis left-right
  a ⌀30, 50 long
  b ⌀40, 60 long
  c ⌀30, 50 long
flats a, top and bottom: 24 across, 20 long
  left end at left face
flats c, top and bottom: 24 across, 20 long
  right end at right face
`,
    own: [
      ['flat 1', ['24 A/F', '20']],
      ['flat 2', ['24 A/F', '20']],
    ],
  },
  'two flats of one size on two diameters': {
    brief: `turned axis left-right
  a ⌀30, 50 long
  b ⌀40, 60 long
  c ⌀30, 50 long
flat a, top: 24 across, 20 long
  left end at left face
flat c, top: 24 across, 20 long
  right end at right face
`,
    own: [
      ['flat 1', ['24', '20']],
      ['flat 2', ['24', '20']],
    ],
  },
  'blind holes that meet on one line from both sides': {
    brief: `block 80 × 40 × 30
hole top: ⌀8 ↧ 10
  40 from left; 12 from front
hole bottom: ⌀10 ↧ 8
  40 from left; 12 from front
`,
    own: [
      ['hole 1', ['40', '12', '⌀8 ↧ 10']],
      ['hole 2', ['40', '12', '⌀10 ↧ 8']],
    ],
  },
  'blind slots that lie over each other': {
    brief: `block 80 × 40 × 30
slot top: 8 × 20 overall ↧ 8, long way left-right
  40 from left; 12 from front
slot bottom: 8 × 20 overall ↧ 10, long way left-right
  40 from left; 12 from front
`,
    own: [
      ['slot 1', ['40', '12', '8 × 20 ↧ 8, 2× R']],
      ['slot 2', ['40', '12', '8 × 20 ↧ 10, 2× R']],
    ],
  },
  'a hole about the centre of a slot’s round end': {
    brief: `block 80 × 60 × 20
slot top: 12 × 40 overall ↧ 6, long way left-right
  41 from left; 30 from front
hole top: ⌀6 THRU
  27 from left; 30 from front
`,
    own: [
      ['slot 1', ['41', '30', '12 × 40 ↧ 6, 2× R']],
      ['hole 1', ['27', '⌀6']],
    ],
  },
  'a notch at a slot’s mouth, about one centre': {
    brief: `block 80 × 60 × 20
slot top: 8 × 30 overall THRU, open to rear, long way front-rear
  41 from left
notch top, rear: square, 10 wide, 6 deep
  41 from left
`,
    own: [
      ['slot 1', ['41', '8', '30', 'R']],
      ['notch 1', ['10', '6']],
    ],
  },
}

/* Sizes stand in the view that shows their own feature true (ASME Y14.5-2018 4.1(b), ISO 129-1; from memory). */
it.each([
  ['ASME', asme],
  ['ISO', iso],
] as const)('%s: width and depth of two like keyseats stand each in the section across its own', (_, read) => {
  const unit = read === asme ? 1 / 25 : 1
  const mm = (n: number) => `${n * unit}`
  const s = read(`turned axis left-right
  a ⌀${mm(25)}, ${mm(50)} long
  b ⌀${mm(50)}, ${mm(50)} long
  c ⌀${mm(25)}, ${mm(50)} long
keyseat a, top: ${mm(8)} wide × ${mm(4)} deep × ${mm(30)} long
  left end ${mm(5)} from left face
keyseat c, top: ${mm(8)} wide × ${mm(4)} deep × ${mm(30)} long
  right end ${mm(5)} from right face
`)
  const viewOf = (id: string) => s.sizes.dimensions.filter((d) => d.id.startsWith(id)).map((d) => d.view)
  for (const what of ['width', 'depth']) {
    expect(viewOf(`keyseat 1/${what}`)).toEqual(['section A-A'])
    expect(viewOf(`keyseat 2/${what}`)).toEqual(['section B-B'])
  }
})

it.each([
  [
    'holes',
    'hole left: M6 ↧ 12\n  centred both ways\nhole right: M6 ↧ 12\n  centred both ways\n',
    'hole',
    ['left', 'right'],
  ],
  [
    'slots',
    `slot top: 8 × 20 overall ↧ 8, long way left-right
  40 from left; 12 from front
slot bottom: 8 × 20 overall ↧ 8, long way left-right
  40 from left; 12 from front
`,
    'slot',
    ['top', 'bottom'],
  ],
])('like blind %s opposite each other stand each in the view from their own side', (_, brief, kind, views) => {
  const s = iso(`block 80 × 40 × 30\n${brief}`)
  for (const [i, view] of views.entries()) {
    const own = s.sizes.dimensions.filter((d) => d.feature === `${kind} ${i + 1}`)
    expect(own.length).toBeGreaterThan(0)
    expect(own.map((d) => d.view)).toEqual(own.map(() => view))
  }
  expect(allMarks(s).filter((m) => m.rule === 'size-to-hidden-line')).toEqual([])
})

describe.each(Object.entries(cases))('%s', (_, { brief, own }) => {
  const s = iso(brief)
  const { dimensions, proof } = s.sizes

  it('have each their own sizes, and no mark', () => {
    const of = (feature: string) =>
      s.texts.filter((_, i) => dimensions[i]!.feature === feature).sort((a, b) => a.localeCompare(b))
    for (const [feature, texts] of own)
      expect([feature, of(feature)]).toEqual([feature, [...texts].sort((a, b) => a.localeCompare(b))])
    expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
    expect(proof.sentence).toMatch(/^complete/)
    expect(rankOf(s.part.body, makingOf(s.part), dimensions)).toMatchObject({ missing: 0, repeated: 0 })
  })

  it('miss each of them that is left out', () => {
    for (const one of dimensions) {
      const less = dimensions.filter((d) => d !== one)
      expect([one.id, prove(s.part, less).missing.length > 0]).toEqual([one.id, true])
      expect([one.id, rankOf(s.part.body, makingOf(s.part), less).missing > 0]).toEqual([one.id, true])
    }
  })
})
