import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'
import { withoutPlaces } from '../../src/brief/without-places.ts'
import { arbitraryBrief } from './arbitrary-brief.ts'

const examples = readdirSync('examples').filter((f) => f.endsWith('.brief'))

describe('printing', () => {
  it('reads back as the same brief, without a mark that must change', () => {
    fc.assert(
      fc.property(arbitraryBrief, (brief) => {
        const text = printBrief(brief)
        const back = readBrief(text)
        expect(withoutPlaces(back), text).toEqual(withoutPlaces(brief))
        expect(
          back.marks.filter((m) => m.weight === 'must change'),
          text,
        ).toEqual([])
        expect(printBrief(back)).toBe(text)
      }),
      { numRuns: 600 },
    )
  })

  it.each(examples)('leaves the example %s as it is, for it is in canonical form', (file) => {
    const text = readFileSync(`examples/${file}`, 'utf8')
    expect(printBrief(readBrief(text))).toBe(text)
  })

  it('keeps every comment with its statement', () => {
    const text = [
      '# The firm’s own part.',
      'part      Plate  # working title',
      'units     mm  # as the customer draws',
      'practice  ISO, first angle',
      '',
      '# cut from the offcuts',
      'plate     100 × 50 × 8',
      'hole      top: ⌀9 THRU  # for M8',
      '          centred both ways',
      '',
      '# to be asked: coating?',
      '',
    ].join('\n')
    expect(printBrief(readBrief(text))).toBe(text)
  })

  it('puts a statement in canonical words whatever words it was typed in', () => {
    const typed =
      'units in\npractice asme\nplate length 4, width 2, 1/4 thick stock\nholes top 2x dia .281 thru, csk .50 x 82 deg\n  2 across 1.250 apart centred, centred up\n'
    expect(printBrief(readBrief(typed))).toBe(
      'units     inch\npractice  ASME\n\nplate     4 × 2 × 1/4 STK\nholes     top: 2X ⌀.281 THRU, ⌵ ⌀.50 × 82°\n          2 across 1.250 apart, centred; centred up\n',
    )
  })
})
