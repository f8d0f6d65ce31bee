import { type Characteristic, characteristics, type FrameRow } from '../../brief/frame/frame.ts'
import type { Mark } from '../../brief/mark.ts'
import { type FrameContext, frameMark } from './frame-mark.ts'

/** May the zone be round? Undefined: it must be. */
function roundZone(characteristic: Characteristic): boolean | undefined {
  if (characteristic === 'coaxiality') return undefined
  const { family } = characteristics[characteristic]
  return characteristic === 'straightness' || family === 'orientation' || characteristic === 'position'
}

/** Marks on the shape of the zone and on its value. */
export function zoneMarks(characteristic: Characteristic, row: FrameRow, { feature }: FrameContext): Mark[] {
  const marks: Mark[] = []
  const may = roundZone(characteristic)
  if (row.zone !== 'width' && may === false) {
    marks.push(
      frameMark(
        'zone-not-round',
        'must change',
        row.span,
        `The zone of ${characteristic} is not a diameter.`,
        'the value without ⌀',
        'ASME Y14.5-2018 section 6; ISO 1101',
      ),
    )
  }
  if (row.zone === 'width' && may === undefined) {
    marks.push(
      frameMark(
        'zone-must-be-round',
        'must change',
        row.span,
        'The zone of coaxiality is a cylinder.',
        '⌀ before the value',
        'ISO 1101:2017',
      ),
    )
  }
  if (row.zone === 'spherical diameter' && characteristic !== 'position') {
    marks.push(
      frameMark(
        'zone-not-spherical',
        'must change',
        row.span,
        'Only the position of a centre point has a spherical zone.',
        '⌀ or no symbol',
        'ASME Y14.5-2018 section 10',
      ),
    )
  }
  if (row.zone !== 'width' && feature?.ofSize === false) {
    marks.push(
      frameMark(
        'round-zone-of-surface',
        'must change',
        row.span,
        'A surface has no axis for a round zone.',
        'the value without ⌀',
        'ASME Y14.5-2018; ISO 1101',
      ),
    )
  }
  if (row.value.value === 0 && !row.material) {
    marks.push(
      frameMark(
        'zero-tolerance',
        'must change',
        row.span,
        'A zero tolerance needs a bonus to live on.',
        '0 Ⓜ or 0 Ⓛ',
        'ASME Y14.5-2018 section 10',
      ),
    )
  }
  return marks
}
