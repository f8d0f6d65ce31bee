import { describe, expect, it } from 'vitest'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'

const brief = (places: string, callout = '⌀8 THRU') =>
  readBrief(`units mm
practice ISO
disc ⌀90 × 22, outer face front
holes front: ${callout}
  ${places}
`)

describe('a distance with its way behind it', () => {
  it.each([
    ['10 up from axis; centred across', 'up 10 from axis; centred across'],
    ['10.5 across from axis; 8 up from axis', 'across 10.5 from axis; up 8 from axis'],
  ])('%s is %s', (behind, before) => {
    const [a, b] = [behind, before].map((p) => brief(p, '1X ⌀8 THRU'))
    expect(a!.marks).toEqual([])
    expect(b!.marks).toEqual([])
    expect(printBrief(a!)).toBe(printBrief(b!))
  })

  it('is no row: 2 up stays the number of a row', () => {
    const { marks, features } = brief('2 up 20 apart, lowest 12 up from axis; centred across', '2X ⌀8 THRU')
    expect(marks.map((m) => m.rule)).not.toContain('contradiction')
    expect(features[0]).toMatchObject({ count: { value: 2 } })
  })
})

it('says where equal spacing is read, and what to write round an outside', () => {
  const { marks } = brief('equally spaced, 2 up 20 apart, lowest 12 from bottom', '6X ⌀6 THRU')
  const mark = marks.find((m) => m.rule === 'contradiction')
  expect(mark?.text).toContain('equal spacing')
  expect(mark?.expected).toContain('THRU one wall; 20 from left face, equally spaced')
})
