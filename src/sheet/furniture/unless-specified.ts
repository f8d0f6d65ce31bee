import type { Header } from '../../brief/brief.ts'
import type { Box2 } from '../../geometry/evaluate.ts'
import type { PracticeFigures } from '../../standards/practice-figures.ts'
import { wrap } from '../lettering/fit.ts'
import { textWidth } from '../lettering/lettering.ts'
import type { CellWriter } from './cell-writer.ts'
import { type GeneralLine, generalLines } from './general-tolerances.ts'
import type { TitleWords } from './title-words.ts'

const PAD = 1.6
/** Base line to base line in lettering heights (ASME Y14.2-2014 §4.5: at least half a height between). */
const LINE = 1.55
/** Lines of general statements may be narrowed by so much before they wrap. */
const SLIGHTLY_NARROWED = 0.82
/** Values stand in a column no further right than this. */
const WIDEST_NAMES = 22

/**
 * The box of what holds unless otherwise specified: units, general tolerances, edges, surfaces, governing standard, and
 * the warning not to scale. Returns the statements for which there was no room.
 */
export function writeUnless(
  write: CellWriter,
  box: Box2,
  header: Header,
  words: TitleWords,
  { lettering: { heading } }: PracticeFigures,
): readonly GeneralLine[] {
  const step = heading * LINE
  const left = box.min[0] + PAD
  const right = box.max[0] - PAD
  const lines = generalLines(header, words)
  const names = lines.filter((l) => l.value && l.name).map((l) => textWidth(l.name, heading))
  const tab = left + Math.min(Math.max(0, ...names), WIDEST_NAMES) + 2.5
  const last = box.min[1] + PAD
  let y = box.max[1] - PAD - heading
  write.line([left, y], right - left, words.unless, heading)
  y -= step
  const unsaid: GeneralLine[] = []
  for (const l of lines) {
    const lead = l.value && l.name ? l.name : ''
    const narrow = wrap(l.value || l.name, (lead ? right - tab : right - left) / SLIGHTLY_NARROWED, heading, {}, true)!
    // A value too long for its column runs on from its name.
    const tabbed = lead !== '' && narrow.length === 1
    const said = `${lead} ${l.value || l.name}`.trim()
    const text = tabbed ? narrow : wrap(said, (right - left) / SLIGHTLY_NARROWED, heading, {}, true)!
    if (y - (text.length - 1) * step < last + step - 1e-9) {
      unsaid.push(l)
      continue
    }
    if (tabbed) write.line([left, y], tab - left - 1, lead, heading, l.span)
    for (const t of text) {
      write.line([tabbed ? tab : left, y], right - (tabbed ? tab : left), t, heading, l.span)
      y -= step
    }
  }
  write.line([left, last], right - left, words.doNotScale, heading)
  return unsaid
}
