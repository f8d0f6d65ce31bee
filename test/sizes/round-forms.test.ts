import { describe, expect, it } from 'vitest'
import { compileSolid } from '../../src/app/compile-solid.ts'
import type { Vec3 } from '../../src/geometry/vec.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { shapes } from '../../src/kernel/shapes.ts'
import { plainText } from '../../src/sizes/callout/plain-text.ts'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { asme, iso, type Sized } from './sized.ts'

/*
 * Countersinks, spotfaces, balls and slanting holes: callouts of ASME Y14.5-2018 (⌵ ⌴SF, SR, S⌀) and ISO 129-1:2018 (SR,
 * S⌀), all from memory; freedoms of the surfaces as counted in descriptive geometry.
 */

/** Complete by both roads, and in need of each of its sizes. */
function expectProper(s: Sized): void {
  const { part, sizes } = s
  expect(sizes.proof.complete, sizes.proof.sentence).toBe(true)
  expect(rankOf(part.body, makingOf(part), sizes.dimensions)).toMatchObject({ missing: 0, repeated: 0 })
  for (const one of sizes.dimensions) {
    if (one.reference || !one.states?.length) continue
    const less = prove(
      part,
      sizes.dimensions.filter((d) => d !== one),
    )
    expect(less.missing.length, `without ${one.id}`).toBeGreaterThan(0)
  }
}

describe('a countersink and a spotface', () => {
  it('are in the hole’s note and proven, in a section too', () => {
    const s = iso(`block 80 × 50 × 20
hole top: ⌀9 THRU, ⌵ ⌀18 × 90°
  20 from left; centred up
hole top: ⌀11 THRU, spotface ⌀24 ↧ 2
  55 from left; centred up
views front, top; section A-A as front
`)
    expect(s.texts).toContain('⌀9, ⌵ ⌀18 × 90°, centred')
    expect(s.texts).toContain('⌀11, ⌴ ⌀24 ↧ 2, centred')
    expectProper(s)
    // Seen in the section: the cone's two slanting sides, 4.5 mm deep at 90° from ⌀18 to ⌀9, in full lines.
    const section = s.views.views.find((v) => v.kind === 'section')!
    const slants = section.lines.filter(
      ({ kind, curve: c }) =>
        kind === 'visible' &&
        c.kind === 'line' &&
        Math.abs(Math.abs(c.b[0] - c.a[0]) - 4.5) < 1e-6 &&
        Math.abs(Math.abs(c.b[1] - c.a[1]) - 4.5) < 1e-6,
    )
    expect(slants).toHaveLength(2)
    expect(section.lines.filter((l) => l.kind === 'hidden')).toEqual([])
  })

  it('of no depth only cleans the face, and is said so', () => {
    const s = asme(`block 3.00 × 2.00 × .75
hole top: ⌀.406 THRU, spotface ⌀.88
  2.00 from left; centred up
`)
    expect(s.texts).toContain('⌀.406 THRU, ⌴SF ⌀.88, CENTERED')
    expectProper(s)
  })
})

describe('a ball end', () => {
  it('as round as its diameter allows carries SR in brackets: the diameter says it already', () => {
    const s = iso(`turned axis left-right
  body ⌀20, 50 long
  neck ⌀12, 20 long
round right end outer edge: R6
`)
    const ball = s.find('SR6')
    expect(ball.reference).toBe(true)
    expectProper(s)
    expect(prove(s.part, [...s.sizes.dimensions, { ...ball, reference: false, id: 'again' }]).repeated).toHaveLength(1)
  })

  it('of a smaller radius is a round with an R of its own', () => {
    const s = iso(`turned axis left-right
  body ⌀20, 50 long
  neck ⌀12, 20 long
round right end outer edge: R2
`)
    expect(s.find('R2').reference).toBe(false)
    expectProper(s)
  })
})

describe('of a solid read', async () => {
  const kernel = await openKernel()
  const make = shapes(kernel)
  const sized = (solid: Parameters<typeof kernel.step>[0]) => {
    const { sizes, part } = compileSolid(kernel.step(solid, { name: 'Part', unit: 'mm' }), kernel)
    kernel.free(part!.solid)
    return sizes!
  }

  it('a dimple carries S⌀', () => {
    const sizes = sized(make.cut(make.box([0, 0, 0], [40, 40, 20]), make.sphere([20, 20, 20], 8)))
    expect(sizes.dimensions.map((d) => plainText(d.callout))).toContain('S⌀16')
  })

  it('a slanting hole is missed by the proof: its slope, its place both ways and its radius', () => {
    const slant: Vec3 = [Math.SQRT1_2, 0, Math.SQRT1_2]
    const sizes = sized(make.cut(make.box([0, 0, 0], [80, 40, 40]), make.cylinder([20, 20, -20], slant, 5, 120)))
    // A cylinder has five freedoms; its axis lies square to one axis of the part, which is implied: four are left.
    expect(sizes.proof.complete).toBe(false)
    expect(sizes.proof.missing).toHaveLength(4)
    expect(sizes.proof.missing.map((m) => m.text).join('; ')).toMatch(/slopes.*stands.*stands.*radius/)
  })
})
