import {
  characteristics,
  type DatumReference,
  type Family,
  type Frame,
  type FrameRow,
} from '../../brief/frame/frame.ts'
import type { Mark } from '../../brief/mark.ts'
import { nearestWord } from '../nearest.ts'
import { capital, type FrameContext, frameMark } from './frame-mark.ts'

/** Fewest and most datum compartments by family; position may do without datums only between features of one pattern. */
const datumCounts: Readonly<Record<Family, readonly [number, number]>> = {
  form: [0, 0],
  profile: [0, 3],
  orientation: [1, 3],
  location: [1, 3],
  runout: [1, 2],
}

/** Marks on the datum compartments of one row. */
export function datumMarks(frame: Frame, row: FrameRow, index: number, context: FrameContext): Mark[] {
  const { characteristic } = frame
  const { family } = characteristics[characteristic]
  const [least, most] = datumCounts[family]
  const source = context.practice === 'ASME' ? 'ASME Y14.5-2018' : 'ISO 1101:2017, ISO 5459'
  const marks: Mark[] = []
  // The lower segment of a composite frame may leave all datums to the upper.
  const lower = index > 0 && frame.stacking === 'composite'
  // A bare M or L that no datum is named by is no compartment of its own.
  const isM = (d: DatumReference) =>
    isBareCondition(row, d) && !context.datums.some(({ letter }) => letter === d.letters[0])
  if (row.datums.filter((d) => !isM(d)).length > most) {
    const text =
      most === 0
        ? `${capital(characteristic)} refers to no datum.`
        : `${capital(characteristic)} takes at most ${most} datums.`
    const span = { from: row.datums[most]!.span.from, to: row.datums.at(-1)!.span.to }
    marks.push(
      frameMark(
        most === 0 ? 'datum-forbidden' : 'too-many-datums',
        'must change',
        span,
        text,
        most === 0 ? 'the frame without datums' : `${most} datums`,
        source,
        '',
      ),
    )
  }
  if (row.datums.length < least && !lower) {
    // ISO 1101 and Y14.5 both let position relate the features of one pattern to each other without a datum.
    const weight = characteristic === 'position' ? 'look again' : 'must change'
    marks.push(
      frameMark(
        'datum-missing',
        weight,
        row.span,
        `${capital(characteristic)} refers to no datum.`,
        'at least one datum letter',
        source,
      ),
    )
  }
  const known = context.datums.map((datum) => datum.letter)
  const seen = new Set<string>()
  for (const datum of row.datums) {
    for (const each of datum.letters) {
      if (['I', 'O', 'Q'].includes(each)) {
        marks.push(
          frameMark(
            'datum-letter',
            'must change',
            datum.span,
            `${each} is not used as a datum letter.`,
            'a letter other than I, O, Q',
            'ASME Y14.5-2018 section 6; ISO 5459',
          ),
        )
      } else if (!known.includes(each) && isBareCondition(row, datum)) {
        marks.push(
          frameMark(
            'datum-unknown',
            'must change',
            datum.span,
            `The drawing has no datum ${each}; a material condition stands in a circle.`,
            each === 'M' ? 'Ⓜ, or (M)' : 'Ⓛ, or (L)',
            source,
            each === 'M' ? 'Ⓜ' : 'Ⓛ',
          ),
        )
      } else if (!known.includes(each)) {
        const near = datum.letters.length === 1 && !datum.material ? nearestWord(each, known) : undefined
        marks.push(
          frameMark(
            'datum-unknown',
            'must change',
            datum.span,
            `The drawing has no datum ${each}.`,
            known.length ? `one of ${known.join(', ')}` : 'a datum feature symbol on the drawing',
            source,
            near,
          ),
        )
      }
      if (seen.has(each))
        marks.push(
          frameMark(
            'datum-twice',
            'must change',
            datum.span,
            `Datum ${each} stands twice in one frame.`,
            'each datum once',
            source,
          ),
        )
      seen.add(each)
    }
    marks.push(...datumMaterialMarks(family, datum, context))
  }
  return marks
}

/** `.01 M A`: M or L straight after the value, where Ⓜ or Ⓛ would stand. */
const isBareCondition = (row: FrameRow, datum: DatumReference): boolean =>
  datum === row.datums[0] && datum.letters.length === 1 && /^[ML]$/.test(datum.letters[0]!)

function datumMaterialMarks(family: Family, datum: DatumReference, context: FrameContext): Mark[] {
  if (!datum.material) return []
  if (family === 'runout') {
    return [
      frameMark(
        'runout-datum-material',
        'must change',
        datum.span,
        'Runout turns about its datum regardless of size.',
        'the letter alone',
        'ASME Y14.5-2018 section 12',
      ),
    ]
  }
  const surface = datum.letters.every(
    (each) => context.datums.find((known) => known.letter === each)?.featureOfSize === false,
  )
  return surface
    ? [
        frameMark(
          'datum-material-needs-size',
          'must change',
          datum.span,
          `Datum ${datum.letters.join('-')} is a surface and has no material boundary of size.`,
          'the letter alone',
          'ASME Y14.5-2018 section 7; ISO 2692',
        ),
      ]
    : []
}
