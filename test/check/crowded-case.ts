import type { Sheet } from '../../src/sheet/sheet.ts'
import type { Case } from './cases.ts'

const block = 'block     80 × 50 × 30'

/** Placing keeps sizes clear of each other, so that only a hand can bring one onto another. */
export const crowdedCase: Case = {
  rule: 'sizes-crowded',
  on: 'iso',
  bad: block,
  good: block,
  spoilt: { words: 'The figure 50 moved onto the 80 by hand.', by: onto('50', '80') },
}

/** The sheet with the figure of one size put where another's stands. */
function onto(text: string, other: string): (sheet: Sheet) => Sheet {
  return (sheet) => {
    const figure = (wanted: string) =>
      sheet.items.find((i) => i.item === 'text' && i.role === 'dimension' && i.text === wanted)
    const [moved, there] = [figure(text), figure(other)]
    if (moved?.item !== 'text' || there?.item !== 'text') throw new Error(`no figures ${text} and ${other}`)
    const { at, anchor, angle } = there
    return { ...sheet, items: sheet.items.map((i) => (i === moved ? { ...moved, at, anchor, angle } : i)) }
  }
}
