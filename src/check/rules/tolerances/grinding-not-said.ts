import { standardTolerance } from '../../../tolerance/iso286/grades.ts'
import { sizesOf } from '../../measure/all-sizes.ts'
import { ownDeviations, width } from '../../measure/deviation.ts'
import { quoted } from '../../measure/said.ts'
import { textureOfSize } from '../../measure/texture-of-size.ts'
import type { DrawingRule } from '../../rule.ts'

const FINE = /\b(ground|grind|lapped|honed|lap|hone)\b/i

export const rule: DrawingRule = {
  name: 'grinding-not-said',
  weight: 'look again',
  source:
    'Machinery’s Handbook, tolerance grades by process: IT5 and finer is grinding, lapping or honing (from memory)',
  about: 'Turning and reaming reach IT6. A finer tolerance goes with a surface or a process that says so.',
  reads: 'drawing',
  check: ({ brief, part }) => {
    if (brief.header.notes.some((n) => FINE.test(n.text))) return []
    return sizesOf(brief).flatMap(({ size }) => {
      const own = size.tolerance?.kind === 'stock' ? undefined : ownDeviations(size)
      const it6 = standardTolerance('6', size.mm)
      if (!own || it6 === undefined || width(own) >= it6 / 1000 - 1e-9 || width(own) < 1e-9) return []
      const { ra, processes } = textureOfSize(part, size)
      if ((ra !== undefined && ra <= 0.82) || processes.some((p) => FINE.test(p))) return []
      return [
        {
          text: `${quoted(size)} is finer than IT6, and neither a surface nor a process is named that holds it.`,
          span: size.span,
          expected: 'note      Ground. Or a surface of Ra 0.8 (32 µin) and finer',
          numbers: [quoted(size)],
        },
      ]
    })
  },
}
