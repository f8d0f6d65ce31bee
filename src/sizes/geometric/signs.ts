import type { Practice } from '../../brief/brief.ts'
import { characteristics, compartments, type Frame } from '../../brief/frame/frame.ts'
import type { DatumFeature, FaceTexture, FrameStatement } from '../../brief/geometric.ts'
import type { NamedFeature } from '../../part/named-feature.ts'
import type { FrameRowCells, Sign } from '../annotation.ts'
import type { SheetWriting } from '../callout/habit.ts'
import { numberText } from '../callout/numbers.ts'

/** The frame as the sheet letters it. */
export function frameSign(said: FrameStatement, n: number, writing: SheetWriting): Sign {
  const { frame, span } = said
  const all = compartments(frame, (num) => numberText(num.text, writing.unit, writing.sign))
  const rows = all.map((cells, i): FrameRowCells => {
    const own = i === 0 || frame.stacking === 'segments'
    return own ? { symbol: cells[0]!, cells: cells.slice(1) } : { cells }
  })
  return { kind: 'frame', id: `frame ${n}`, rows, allAround: said.allAround === true, span }
}

export function datumSign({ letter, span }: DatumFeature): Sign {
  return { kind: 'datum', id: `datum ${letter.text}`, letter: letter.text, span }
}

/** Microinches stand without a parameter, as the trade writes them (ASME Y14.36, from memory). */
export function textureSign(said: FaceTexture, n: number, writing: SheetWriting): Sign {
  const { parameter, value, unit, removal, lay, process, span } = said
  const digits = unit === 'µin' ? value.text : numberText(value.text, 'mm', writing.sign)
  return {
    kind: 'texture',
    id: `texture ${n}`,
    value: unit === 'µin' && parameter === 'Ra' ? digits : `${parameter} ${digits}`,
    removal,
    ...(lay ? { lay } : {}),
    ...(process ? { process: process.text } : {}),
    span,
  }
}

/**
 * Whether the frame holds the axis or middle plane of a feature of size, and so stands with the size; the others hold a
 * surface (ASME Y14.5-2018 6.3 and 7.2, ISO 1101:2017 clause 6, from memory). ASME lets a frame on a round surface stand
 * with its diameter too; in ISO that place would mean the axis.
 */
export function standsAtSize(frame: Frame, feature: NamedFeature, practice: Practice): boolean {
  if (feature.kind === 'plane') return false
  const { family } = characteristics[frame.characteristic]
  if (family === 'location' || family === 'orientation') return true
  if (family === 'profile') return false
  const derived = frame.rows.some((row) => row.zone !== 'width' || row.material)
  if (frame.characteristic === 'straightness') return derived
  if (frame.characteristic === 'flatness') return feature.kind === 'width'
  return practice === 'ASME' && feature.kind === 'round'
}
