import { describe, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { withoutPlaces } from '../../src/brief/without-places.ts'

const lines = (...rows: string[]) => `units inch\npractice ASME\n${rows.join('\n')}\n`

describe('an indented line that begins with a keyword', () => {
  it.each([
    ['chamfer', ['plate 4 × 3 × .5', 'hole top: ⌀.25 THRU, centred both ways', '  chamfer top edges: .06 × 45°']],
    ['hole', ['plate 4 × 3 × .5', '   hole top: ⌀.25 THRU, centred both ways', '   note     break all edges']],
    ['note', ['plate 4 × 3 × .5', '  note break all edges']],
    ['number', ['part Bracket', '  number X-2', 'plate 4 × 3 × .5']],
    ['plate', ['part Bracket', '  plate 4 × 3 × .5']],
  ])('%s is marked at the word, and read as the statement it begins', (word, rows) => {
    const text = lines(...rows)
    const { marks } = readBrief(text)
    expect(new Set(marks.map((m) => m.rule))).toEqual(new Set(['indented-statement']))
    expect(text.slice(marks[0]!.span!.from, marks[0]!.span!.to)).toBe(word)
    let mended = text
    for (const m of [...marks].reverse()) {
      const { span, text: write } = m.mends![0]!
      mended = mended.slice(0, span.from) + write + mended.slice(span.to)
    }
    expect(readBrief(mended).marks).toEqual([])
    expect(withoutPlaces(readBrief(mended))).toEqual(withoutPlaces(readBrief(text)))
  })

  it('leaves lines that go on with their statement, whatever they begin with', () => {
    const text = lines(
      'turned axis left-right',
      '  flat ⌀1.00, 2.00 long',
      '  disc ⌀2.00, .50 long',
      'note Deburr',
      '  hole edges too.',
      'views front; section A-A',
      '  section B-B through hole 1',
      'hole right: ⌀.25 ↧ .50',
      '  flat bottom, on axis',
    )
    expect(readBrief(text).marks.filter((m) => m.rule === 'indented-statement')).toEqual([])
  })
})
