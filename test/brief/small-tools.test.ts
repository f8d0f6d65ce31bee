import { describe, expect, it } from 'vitest'
import type { HoleFeature } from '../../src/brief/brief.ts'
import { changeSize, replaceSpan, sizeExtent } from '../../src/brief/edit.ts'
import { formatMark } from '../../src/brief/format-mark.ts'
import { locate } from '../../src/brief/locate.ts'
import { readBrief } from '../../src/brief/read.ts'
import { nearestWord, spellingDistance } from '../../src/brief/spelling.ts'

describe('locate', () => {
  it('counts lines and columns from one, whatever ends a line', () => {
    expect(locate('ab\ncd', 4)).toEqual({ line: 2, column: 2 })
    expect(locate('ab\r\ncd', 4)).toEqual({ line: 2, column: 1 })
    expect(locate('ab\rcd', 3)).toEqual({ line: 2, column: 1 })
    expect(locate('', 0)).toEqual({ line: 1, column: 1 })
    expect(locate('ab', 99)).toEqual({ line: 1, column: 3 })
    expect(locate('ab', -1)).toEqual({ line: 1, column: 1 })
  })
})

describe('formatMark', () => {
  it('shows the line with carets under the place', () => {
    const text = 'units mm\nhoel top\n'
    const out = formatMark(text, {
      rule: 'r',
      weight: 'must change',
      text: 'no such word',
      span: { from: 9, to: 13 },
      expected: 'hole',
    })
    expect(out).toBe('line 2, column 1: must change: No such word.\n  | hoel top\n  | ^^^^\n  expected: hole')
  })
  it('cuts a long line about the place', () => {
    const text = `${'a '.repeat(500)}here${' b'.repeat(500)}`
    const out = formatMark(text, { rule: 'r', weight: 'remark', text: 't', span: { from: 1000, to: 1004 } })
    const [, line, carets] = out.split('\n')
    expect(line!.length).toBeLessThan(120)
    expect(line!.slice(carets!.indexOf('^'), carets!.lastIndexOf('^') + 1)).toBe('here')
  })
})

describe('spelling', () => {
  // Optimal string alignment distances, worked by hand.
  it.each([
    ['hole', 'hole', 0],
    ['hoel', 'hole', 1],
    ['hol', 'hole', 1],
    ['kitten', 'sitting', 3],
    ['thur', 'thru', 1],
  ])('%s to %s is %d', (a, b, d) => expect(spellingDistance(a, b)).toBe(d))
  it('offers nothing where nothing is near', () => {
    expect(nearestWord('xyzzy', ['hole', 'slot'])).toBeUndefined()
    expect(nearestWord('solt', ['hole', 'slot', 'bolt'])).toBe('slot')
  })
})

describe('editing by place', () => {
  const text =
    '# kept\r\nunits inch\r\npractice ASME\r\nblock 6 × 4 × 2 ±.01\r\nhole top: ⌀.500 +.002 -.000 THRU  # drill\r\n  centred both ways\r\n'
  const diameter = () => (readBrief(text).features[0] as HoleFeature).diameter

  it('replaces a stretch and nothing else', () => {
    expect(replaceSpan('abcdef', { from: 2, to: 4 }, 'X')).toBe('abXef')
    expect(replaceSpan('ab', { from: 5, to: 9 }, 'X')).toBe('abX')
  })

  it('digits alone keep the tolerance; digits with one take its place', () => {
    expect(changeSize(text, diameter(), '.625').text).toBe(text.replace('.500', '.625'))
    expect(changeSize(text, diameter(), '.625 H7').text).toBe(text.replace('.500 +.002 -.000', '.625 H7'))
    expect(changeSize(text, diameter(), '5/8').text).toBe(text.replace('.500', '5/8'))
    expect(changeSize(text, diameter(), '16 mm').text).toBe(text.replace('.500 +.002 -.000', '16 mm'))
  })

  it('knows how far a size reaches', () => {
    const reach = (line: string) => {
      const source = `units inch\npractice ASME\nblock ${line} × 4 × 2\n`
      const { stock } = readBrief(source)
      if (stock?.kind !== 'block') throw new Error('no block read')
      const { from, to } = sizeExtent(source, stock.length)
      return source.slice(from, to)
    }
    for (const size of ['25 mm', '25 mm ±0.1', '1-3/8', '.500/.498', '(6.00)', '2 STK', '6?', '1.50"'])
      expect(reach(size)).toBe(size)
  })

  it('refuses what is no size, and says why', () => {
    for (const typed of ['', 'abc', '0', '-1', '1/0', '.5 .6', '1 # x', '1\n2', '9999999', '.5 +.1', '⌀']) {
      const change = changeSize(text, diameter(), typed)
      expect(change.text, typed).toBe(text)
      expect(change.marks.length, typed).toBeGreaterThan(0)
      expect(change.marks[0]!.expected, typed).toBeTruthy()
    }
  })

  it('a changed size reads back as it was typed, the rest as it was', () => {
    const changed = readBrief(changeSize(text, diameter(), '.750/.748').text)
    expect((changed.features[0] as HoleFeature).diameter).toMatchObject({
      text: '.750',
      tolerance: { kind: 'limits', upper: { text: '.750' }, lower: { text: '.748' } },
    })
    expect(changed.marks).toEqual([])
  })
})
