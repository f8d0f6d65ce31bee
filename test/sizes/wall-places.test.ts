import { describe, expect, it } from 'vitest'
import { printBrief } from '../../src/brief/print.ts'
import { faults } from '../part/workbench.ts'
import { iso } from './sized.ts'

/*
 * A slot is located by its axes or by its tangent edges, a pocket by its middle or its walls: the words say which (common
 * practice, no source).
 */
const PLATE = 'plate 80 × 40, 10 thick\n'

/** Middle of the first member, and the sizes that say where it stands. */
function placed(text: string) {
  const { part, sizes } = iso(PLATE + text)
  const found = part.features.find((f) => f.feature)
  const said = sizes.dimensions.filter((d) => d.id.includes('/distance/') && d.feature)
  return {
    faults: faults(part),
    at: found?.members[0]?.point.slice(0, 2),
    said: said.map((d) => d.callout.lines.flat().join('')),
    complete: sizes.proof.complete && sizes.marks.length === 0,
    printed: printBrief(part.brief),
  }
}

describe('a distance to a wall or an end', () => {
  it.each([
    ['slot top: 16 × 40 overall THRU, long way left-right\n  left end 10 from left; front side 6 from front', [30, 14]],
    ['slot top: 16 × 40 overall THRU, long way left-right\n  right end 10 from right; rear side 6 from rear', [50, 26]],
    ['slot top: 16 × 24 centre to centre ↧ 4, long way left-right\n  left end 10 from left; centred up', [30, 20]],
    ['pocket top: 30 × 20 ↧ 4, corners R 5\n  left side 10 from left; front side 6 from front', [25, 16]],
    ['pocket top: 30 × 20 ↧ 4\n  right side 10 from right; rear side 6 from rear', [55, 24]],
    ['pocket top: 30 × 20 ↧ 4\n  right edge 10 from right; rear wall 6 from rear', [55, 24]],
    ['slot top: 12 × 30 overall THRU, open to left\n  front side 6 from front', [24, 12]],
  ])('%s', (text, at) => {
    const got = placed(text)
    expect(got.faults).toEqual([])
    expect(got.at?.map((v) => Math.round(v * 1e6) / 1e6)).toEqual(at)
    const wanted = [...text.matchAll(/(?:end|side|edge|wall) (\d+)/g)].map((m) => m[1])
    expect(got.said).toEqual(wanted)
    expect(got.complete).toBe(true)
    // what is printed means the same
    for (const phrase of text.match(/\w+ (?:end|side|edge|wall) \d+ from \w+/g) ?? [])
      expect(got.printed).toContain(phrase)
  })

  it('is that of the outermost of a row', () => {
    const got = placed(
      'slots top: 2X 8 × 20 overall ↧ 4, long way left-right\n  2 across 30 apart, right end 10 from right; centred up',
    )
    expect([got.faults, got.complete, got.at?.[0]]).toEqual([[], true, 30])
  })

  it('is refused of what is placed by its middle alone', () => {
    expect(placed('hole top: ⌀6 THRU\n  left side 10 from left; centred up').faults).toEqual(['no-such-wall'])
    expect(
      placed('slot top: 12 × 30 overall THRU, open to left\n  left end 6 from left; centred up').faults,
    ).not.toEqual([])
  })
})
