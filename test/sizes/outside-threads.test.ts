import { describe, expect, it } from 'vitest'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { allMarks, asme, iso, type Sized } from './sized.ts'

/*
 * ISO 6410-1: the crest of an outside thread is the outline, its root a narrow line within, along the full thread and on
 * to the slope of a chamfer. ASME Y14.6, simplified: the root is dashed (both from memory). Basic minor diameters by ISO
 * 724 (M20 × 1.5: 18.376) and ASME B1.1 (3/4-16: .6823 in), handbook values from memory.
 */
const straight = (s: Sized, kind: 'thread' | 'hidden', radius: number) =>
  s.views.views[0]!.lines.flatMap(({ kind: k, curve: c }) =>
    k === kind && c.kind === 'line' && Math.abs(Math.abs(c.a[1]) - radius) < 2e-3 && Math.abs(c.a[1] - c.b[1]) < 1e-9
      ? [[Math.min(c.a[0], c.b[0]), Math.max(c.a[0], c.b[0])] as const]
      : [],
  )

function expectProper(s: Sized): void {
  expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
  expect(s.sizes.proof.complete, s.sizes.proof.sentence).toBe(true)
  expect(rankOf(s.part.body, makingOf(s.part), s.sizes.dimensions)).toMatchObject({ missing: 0, repeated: 0 })
}

describe('an outside thread', () => {
  it('is a step at its major diameter, called out by its designation, its root drawn within', () => {
    const s = iso('turned axis left-right\n  screw M20 × 1.5 - 6g, 30 long\n  body ⌀30 h7, 60 long\n')
    expectProper(s)
    expect(s.part.properties.volume).toBeCloseTo(Math.PI * (100 * 30 + 225 * 60), 6)
    expect(s.texts).toContain('M20 × 1.5 - 6g')
    expect(s.texts.filter((t) => t.includes('20'))).toHaveLength(1)
    const roots = straight(s, 'thread', 18.376 / 2)
    expect(roots).toHaveLength(2)
    for (const [a, b] of roots) expect(b - a).toBeCloseTo(30, 6)
  })

  it('runs on into a chamfer and stops at a groove', () => {
    const s = iso(`turned axis left-right
  screw M20 × 1.5 – 6g, 30 long
  body ⌀30 h7, 60 long
groove screw: 3 wide, bottom ⌀17.5
  right side at body left face
chamfer left face outer edge: 2 × 45°
`)
    expectProper(s)
    const roots = straight(s, 'thread', 18.376 / 2)
    expect(roots).toHaveLength(2)
    // from the slope of the chamfer at the root's radius to the groove
    for (const [a, b] of roots) expect(b - a).toBeCloseTo(27 - (2 - (20 - 18.376) / 2), 3)
  })

  it('of unified form is read, sized and dashed', () => {
    const s = asme('turned axis left-right\n  screw 3/4-16 UNF-2A, 1.25 long\n  body ⌀1.250, 2.50 long\n')
    expectProper(s)
    expect(s.texts).toContain('3/4-16 UNF-2A')
    expect(straight(s, 'hidden', (0.6823 / 2) * 25.4)).toHaveLength(2)
    expect(s.part.properties.volume).toBeCloseTo((Math.PI / 4) * 25.4 ** 3 * (0.75 ** 2 * 1.25 + 1.25 ** 2 * 2.5), 4)
  })

  it('prints as it was written and can be named', () => {
    const text = `units mm
practice ISO
turned axis left-right; lengths from body left face
  body ⌀30 h7, 60 long
  drive M24, to 90
groove drive: 3 wide, bottom ⌀20
  left side at body right face
`
    const brief = readBrief(text)
    expect(brief.marks).toEqual([])
    const printed = printBrief(brief)
    expect(printed).toMatch(/drive +M24, to 90/)
    expect(readBrief(printed).marks).toEqual([])
  })

  it('of a pipe, which does not say its diameter, is refused with what to write', () => {
    const brief = readBrief('units mm\npractice ISO\nturned axis left-right\n  end G 1/2, 20 long\n')
    expect(brief.marks).toEqual([
      expect.objectContaining({
        rule: 'missing-size',
        weight: 'must change',
        expected: expect.stringContaining('M20'),
      }),
    ])
  })
})
