import { describe, expect, it } from 'vitest'
import { goesOn } from '../../src/app/page/slip/line-end.ts'

const plate = 'units inch\npractice ASME\nplate 6 × 4 × 1/2\n'

describe('a statement goes on in the next line', () => {
  it.each([
    'hole top: 4x .281 dia thru',
    'hole top: 4x .281 dia thru; 2 across 4.50 apart;',
    'holes top, 4X ⌀.281 THRU:',
    'hole',
    'note One,',
    'hole top: 2x .281 dia thru\n  2 across',
  ])('behind “%s”', (text) => {
    expect(goesOn(plate + text)).toBe(true)
  })

  it.each([
    'note One',
    'hole top: ⌀.281 thru; centred both ways',
    'views front, top',
    'material Steel',
    '',
    'hole\nnote One',
  ])('but not behind “%s”', (text) => {
    expect(goesOn(plate + text)).toBe(false)
  })

  it('where turned steps are to come', () => {
    expect(goesOn('units mm\npractice ISO\nturned axis left-right')).toBe(true)
    expect(goesOn('units mm\npractice ISO\nturned axis left-right\n  left ⌀20, 28 long')).toBe(false)
  })
})
