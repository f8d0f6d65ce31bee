import { characteristics, type Family } from '../../../brief/frame/frame.ts'
import { heldFrames } from '../../measure/framed.ts'
import type { DrawingRule } from '../../rule.ts'

/** What holds less of a feature stands first: form within orientation within location. */
const ORDER: readonly Family[] = ['form', 'orientation', 'location']

export const rule: DrawingRule = {
  name: 'refinement-coarser',
  weight: 'must change',
  source: 'ASME Y14.5-2018 sections 8 and 9: form refines orientation, orientation refines location (from memory)',
  about:
    'A zone of location holds orientation and form too, one of orientation form. A frame that holds less of the feature must be the finer one, or it says nothing.',
  reads: 'drawing',
  check: (subject) => {
    const frames = heldFrames(subject).flatMap(({ said, feature }) => {
      const level = ORDER.indexOf(characteristics[said.frame.characteristic].family)
      const [row] = said.frame.rows
      return feature && row && level >= 0 && !row.material ? [{ said, id: feature.id, level, row }] : []
    })
    return frames.flatMap(({ said, id, level, row }) => {
      const wider = frames.find((f) => f.id === id && f.level > level && (level === 0 || f.row.zone === row.zone))
      if (!wider || row.value.value < wider.row.value.value) return []
      return [
        {
          text: `The ${said.frame.characteristic} of ${id}, ${row.value.text}, is no finer than its ${wider.said.frame.characteristic}, ${wider.row.value.text}.`,
          span: row.value.span,
          expected: `less than ${wider.row.value.text}, or no such frame`,
        },
      ]
    })
  },
}
