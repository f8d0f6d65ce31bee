import { describe, expect, it } from 'vitest'
import type { EdgeFeature } from '../../src/brief/brief.ts'
import { readBrief } from '../../src/brief/read.ts'

const mm = (lines: string) => `units mm\npractice ISO, first angle\nblock 160 × 100 × 50\n${lines}\n`
const marks = (text: string) => readBrief(text).marks.map((m) => m.text)

describe('one fault, one mark', () => {
  it('a thread or a bent strip as a statement gets one mark that says where it belongs', () => {
    const thread = readBrief(mm('thread drive: M24'))
    expect(thread.marks).toHaveLength(1)
    expect(thread.marks[0]!.expected).toContain('screw M20 × 1.5 - 6g, 30 long')
    const strip = readBrief('units mm\npractice ISO\nstrip bent, 3 STK × 25 wide, inside R 3\n  right 40; up 30')
    expect(strip.marks).toHaveLength(1)
    expect(strip.marks[0]!.text).toContain('cannot be drawn')
  })

  it('a choice that cannot be read gives way to one that can', () => {
    const brief = readBrief('units inch\npractice ANSI\npractice ASME\nblock 4 × 3 × 2\n')
    expect(brief.header.practice).toBe('ASME')
    expect(brief.marks.map((m) => m.text)).toEqual(['“ANSI” is no choice for practice'])
  })

  it('a chamfer’s usual angle without its degree sign is read as one, and the sign asked for', () => {
    const brief = readBrief(mm('chamfer top edges: 2 × 45'))
    expect((brief.features[0] as EdgeFeature).angle).toMatchObject({ value: 45 })
    expect(brief.marks).toEqual([
      expect.objectContaining({ rule: 'no-degree-sign', mends: [expect.objectContaining({ text: '°' })] }),
    ])
    // two legs stay two legs
    const legs = readBrief(mm('chamfer top edges: 20 × 45'))
    expect((legs.features[0] as EdgeFeature).leg).toMatchObject({ value: 45 })
    expect(legs.marks).toEqual([])
  })

  it('a mend for a count is never one that would be refused', () => {
    const brief = readBrief(mm('holes top: 4X ⌀0.1 THRU\n  400 across 0.2 apart, centred; 250 up 0.2 apart, centred'))
    expect(brief.marks.map((m) => m.rule)).toEqual(['contradiction'])
    expect(brief.marks[0]!.mends).toBeUndefined()
    expect(marks(mm('holes top: ⌀0.1 THRU\n  400 across 0.2 apart, centred; 250 up 0.2 apart, centred'))).toHaveLength(
      1,
    )
  })
})
