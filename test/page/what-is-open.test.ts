import { beforeAll, describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { openWords, whatIsOpen } from '../../src/app/page/bench/what-is-open.ts'
import { writtenWords } from '../../src/app/page/bench/written-words.ts'
import { drawnOf } from '../../src/app/page/engine/drawn.ts'

import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { FIRST } from './open-page.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
}, FIRST)

const HEAD = 'part Trial\nunits inch\npractice ASME\ngeneral .XX ±.01 .XXX ±.005\n\nplate 4.00 × 2.00 × .25\n'
const said = (features: string): string => {
  const drawing = compile(HEAD + features, kernel)
  if (drawing.part) kernel.free(drawing.part.solid)
  return openWords(whatIsOpen(drawnOf(drawing, 0)))
}

describe('what is open on a sheet', () => {
  it('is nothing where every statement is drawn and every size known', () => {
    expect(said('hole top: ⌀.25 THRU\n  centred both ways\n')).toBe('')
  })

  it.each([
    ['a statement without its face', 'hole: ⌀.25 THRU\n  centred both ways\n', '1 statement not drawn'],
    ['one with four faults', 'slots top: 2X .28 × foo\n  2 across 2.00 apart, centred\n', '1 statement not drawn'],
    ['two of them', 'hole top:\n  centred both ways\n\nhole: ⌀.25 THRU\n', '2 statements not drawn'],
    ['a hole off the part', 'hole top: ⌀.25 THRU\n  9.00 from left; 1.00 from front\n', '1 statement not drawn'],
    [
      'a size to be measured',
      'hole top: 2X ⌀.25 THRU\n  2 across ? apart, centred; 1.00 from front\n',
      '1 size is “?”',
    ],
  ])('is %s', (_, features, words) => {
    expect(said(features)).toBe(words)
  })

  it('is said with the notice of a written file', () => {
    const drawing = compile(`${HEAD}hole: ⌀.25 THRU\n  centred both ways\n`, kernel)
    if (drawing.part) kernel.free(drawing.part.solid)
    const notice = writtenWords('N-1.step', drawing.marks, drawnOf(drawing, 0))
    expect(notice).toBe('N-1.step written, preliminary: 1 mark must change; 1 statement not drawn.')
    expect(writtenWords('N-1.pdf', [], undefined)).toBe('N-1.pdf written.')
  })

  it('is a table that the sheet has no room for, and sizes', () => {
    const drawing = compile(`${HEAD}hole top: ⌀.25 THRU\n  centred both ways\n`, kernel)
    if (drawing.part) kernel.free(drawing.part.solid)
    const off = (rule: string) => ({ rule, weight: 'must change', text: 'No room' }) as const
    const drawn = drawnOf(
      { ...drawing, marks: [off('no-room-for-table'), off('no-room-for-size'), off('no-room-for-size')] },
      0,
    )
    expect(openWords(whatIsOpen(drawn))).toBe('1 hole table left off, 2 sizes left off')
  })
})
