import { type Characteristic, characteristics, type FrameRow } from '../../brief/frame/frame.ts'
import type { Mark } from '../../brief/mark.ts'
import { capital, type FrameContext, frameMark } from './frame-mark.ts'

/** Marks on the modifiers of the tolerance compartment. */
export function modifierMarks(
  characteristic: Characteristic,
  row: FrameRow,
  { practice, feature }: FrameContext,
): Mark[] {
  const marks: Mark[] = []
  const { family } = characteristics[characteristic]
  const sized =
    family === 'orientation' ||
    family === 'location' ||
    characteristic === 'straightness' ||
    characteristic === 'flatness'
  if (row.material && !sized) {
    marks.push(
      frameMark(
        'material-not-allowed',
        'must change',
        row.span,
        `${capital(characteristic)} takes no ${letter(row.material)}.`,
        'the value alone',
        'ASME Y14.5-2018 section 5; ISO 2692',
      ),
    )
  } else if (row.material && feature?.ofSize === false) {
    marks.push(
      frameMark(
        'material-needs-size',
        'must change',
        row.span,
        `${letter(row.material)} stands at a surface, which has no size.`,
        'the value alone, or the frame at the size',
        'ASME Y14.5-2018 section 5; ISO 2692',
      ),
    )
  }
  if (row.most && !row.material) {
    marks.push(
      frameMark(
        'max-without-bonus',
        'must change',
        row.span,
        'MAX limits a bonus, and there is none.',
        'MAX after Ⓜ or Ⓛ',
        'ASME Y14.5-2018 section 10',
      ),
    )
  }
  if (row.projected) {
    if (characteristic !== 'position' && family !== 'orientation') {
      marks.push(
        frameMark(
          'projection-not-allowed',
          'must change',
          row.projected.span,
          `${capital(characteristic)} has no projected zone.`,
          'no Ⓟ',
          'ASME Y14.5-2018 section 10; ISO 1101',
        ),
      )
    } else if (!row.projected.height) {
      marks.push(
        frameMark(
          'projection-height',
          'look again',
          row.projected.span,
          'The height of the projected zone is not stated.',
          'the height after Ⓟ, or drawn',
          'ASME Y14.5-2018 section 10',
        ),
      )
    }
  }
  if (row.tangentPlane && family !== 'orientation' && family !== 'profile' && family !== 'runout') {
    marks.push(
      frameMark(
        'tangent-plane-not-allowed',
        'must change',
        row.span,
        `${capital(characteristic)} takes no Ⓣ.`,
        'no Ⓣ',
        'ASME Y14.5-2018 section 6',
      ),
    )
  }
  if (row.unequal) {
    if (family !== 'profile') {
      marks.push(
        frameMark(
          'unequal-not-allowed',
          'must change',
          row.unequal.span,
          'Only a profile can lie unequally.',
          'a profile',
          'ASME Y14.5-2018 section 11; ISO 1660',
        ),
      )
    } else if ((practice === 'ASME') !== (row.unequal.form === 'U')) {
      const right = practice === 'ASME' ? 'Ⓤ and the part outside the material' : 'UZ and the shift of the middle'
      marks.push(
        frameMark(
          'unequal-of-other-practice',
          'must change',
          row.unequal.span,
          `${row.unequal.form === 'U' ? 'Ⓤ' : 'UZ'} belongs to the other practice.`,
          right,
          'ASME Y14.5-2018 section 11; ISO 1660',
        ),
      )
    } else if (row.unequal.form === 'U' && (row.unequal.value.value < 0 || row.unequal.value.value > row.value.value)) {
      marks.push(
        frameMark(
          'unequal-out-of-zone',
          'must change',
          row.unequal.span,
          'The part outside the material cannot be more than the whole zone.',
          `0 to ${row.value.text}`,
          'ASME Y14.5-2018 section 11',
        ),
      )
    }
  }
  if (row.combined && practice === 'ASME') {
    marks.push(
      frameMark(
        'combined-zone-of-iso',
        'must change',
        row.span,
        `${row.combined} belongs to ISO 1101.`,
        'a note such as 2X or CONTINUOUS',
        'ISO 1101:2017',
      ),
    )
  }
  return marks
}

function letter(material: 'M' | 'L'): string {
  return material === 'M' ? 'Ⓜ' : 'Ⓛ'
}
