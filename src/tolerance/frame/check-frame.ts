import type { Practice } from '../../brief/brief.ts'
import { characteristics, type DatumReference, type Frame } from '../../brief/frame/frame.ts'
import type { Mark } from '../../brief/mark.ts'
import { datumMarks } from './check-datums.ts'
import { modifierMarks } from './check-modifiers.ts'
import { zoneMarks } from './check-zone.ts'
import { capital, type FrameContext, frameMark } from './frame-mark.ts'

/** Checks a frame against ASME Y14.5-2018 or ISO 1101:2017; one mark for each thing a checker would cross out. */
export function checkFrame(frame: Frame, context: FrameContext): readonly Mark[] {
  return [
    ...practiceMarks(frame, context.practice),
    ...frame.rows.flatMap((row, i) => [
      ...zoneMarks(frame.characteristic, row, context),
      ...modifierMarks(frame.characteristic, row, context),
      ...datumMarks(frame, row, i, context),
    ]),
    ...stackMarks(frame, context.practice),
  ]
}

function practiceMarks({ characteristic, span }: Frame, practice: Practice): Mark[] {
  if (practice !== 'ASME' || (characteristic !== 'coaxiality' && characteristic !== 'symmetry')) return []
  return [
    frameMark(
      'withdrawn-characteristic',
      'must change',
      span,
      `${characteristic === 'coaxiality' ? 'Concentricity' : 'Symmetry'} was withdrawn from ASME Y14.5 in 2018.`,
      characteristic === 'coaxiality' ? 'position, runout or profile' : 'position or profile',
      'ASME Y14.5-2018, foreword; ISO 1101 keeps it',
    ),
  ]
}

function stackMarks(frame: Frame, practice: Practice): Mark[] {
  if (frame.stacking !== 'composite') return []
  const { family } = characteristics[frame.characteristic]
  const span = frame.rows[1]!.span
  if (practice === 'ISO') {
    return [
      frameMark(
        'composite-of-asme',
        'must change',
        span,
        'Composite frames belong to ASME Y14.5.',
        'a frame with its own symbol for each row',
        'ISO 1101:2017; ISO 5458',
      ),
    ]
  }
  if (frame.characteristic !== 'position' && family !== 'profile') {
    return [
      frameMark(
        'composite-not-allowed',
        'must change',
        span,
        `${capital(frame.characteristic)} has no composite frame.`,
        'a frame with its own symbol for each row',
        'ASME Y14.5-2018 section 10 and 11',
      ),
    ]
  }
  const marks: Mark[] = []
  for (let i = 1; i < frame.rows.length; i++) {
    const upper = frame.rows[i - 1]!
    const row = frame.rows[i]!
    if (row.value.value >= upper.value.value) {
      marks.push(
        frameMark(
          'composite-not-finer',
          'must change',
          row.span,
          'The lower segment refines nothing: it is no smaller than the upper.',
          `less than ${upper.value.text}`,
          'ASME Y14.5-2018 section 10',
        ),
      )
    }
    const wrong = row.datums.find((datum, n) => name(datum) !== (upper.datums[n] && name(upper.datums[n])))
    if (wrong) {
      marks.push(
        frameMark(
          'composite-datum-order',
          'must change',
          wrong.span,
          'The lower segment must repeat the datums of the upper in their order.',
          upper.datums.map(name).join(' '),
          'ASME Y14.5-2018 section 10',
        ),
      )
    }
  }
  return marks
}

function name(datum: DatumReference): string {
  return datum.letters.join('-') + (datum.material ?? '')
}
