import { describe, expect, it } from 'vitest'
import { partsListBlock } from '../../src/sheet/furniture/parts-list.ts'
import { titleWords } from '../../src/sheet/furniture/title-words.ts'
import { letteringBox } from '../../src/sheet/lettering/lettering.ts'
import { practiceFigures } from '../../src/standards/practice-figures.ts'

const PARTS = [
  { name: 'Carrier plate, left', quantity: 1, instances: [] },
  { name: 'Nut', quantity: 12, instances: [] },
]
const listed = (practice: 'ASME' | 'ISO') => {
  const block = partsListBlock(PARTS, titleWords(practice).items, practiceFigures(practice))
  const items = block.at([100, 50])
  return { block, items, texts: items.flatMap((i) => (i.item === 'text' ? [i] : [])) }
}

describe('a parts list', () => {
  // ASME Y14.2-2014 §4.3: all lettering in capitals
  it('letters names in capitals on ASME sheets only', () => {
    expect(listed('ASME').texts.map((t) => t.text)).toContain('CARRIER PLATE, LEFT')
    expect(listed('ISO').texts.map((t) => t.text)).toContain('Carrier plate, left')
  })

  it.each(['ASME', 'ISO'] as const)('%s: keeps every word inside its own cell', (practice) => {
    const { block, items, texts } = listed(practice)
    const rules = items.flatMap((i) => (i.item === 'stroke' && i.curve.kind === 'line' ? [i.curve] : []))
    const upright = rules.filter((r) => r.a[0] === r.b[0]).map((r) => r.a[0])
    const level = rules.filter((r) => r.a[1] === r.b[1]).map((r) => r.a[1])
    // three columns, headings and two parts
    expect([upright.length, level.length, texts.length]).toEqual([4, 4, 9])
    expect(Math.max(...upright) - Math.min(...upright)).toBeCloseTo(block.width, 9)
    expect(Math.max(...level) - Math.min(...level)).toBeCloseTo(block.height, 9)
    for (const text of texts) {
      const { min, max } = letteringBox(text.text, text)
      const cuts = (at: readonly number[], k: 0 | 1) => at.filter((v) => v > min[k] && v < max[k])
      expect([...cuts(upright, 0), ...cuts(level, 1)], text.text).toEqual([])
    }
  })
})
