import { metalOf } from '../../measure/metal.ts'
import { said } from '../../measure/said.ts'
import { shareOfLeast } from '../../measure/small-part.ts'
import { fallsShort } from '../../measure/thumb.ts'
import { wallsOf } from '../../measure/walls.ts'
import type { DrawingRule } from '../../rule.ts'

/** Least wall that can be cut without giving way, mm. */
const LEAST = { steel: 0.8, stainless: 0.8, iron: 3, copper: 0.8, aluminium: 0.8, plastic: 1.5 } as const

export const rule: DrawingRule = {
  name: 'thin-wall',
  weight: 'must change',
  source:
    'common practice, no source: 0.8 mm in metal, 3 mm in cast iron, 1.5 mm in plastic; in proportion on a part under 25 mm across',
  about: 'A wall too thin gives way under the tool and cannot be held to its size.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const least = LEAST[metalOf(brief.header.material?.text) ?? 'steel'] * shareOfLeast(part)
    const given = brief.stock && 'thickness' in brief.stock ? brief.stock.thickness.mm : 0
    // Sheet is as thin as it was bought.
    const wall = wallsOf(part.body)
      .filter((w) => Math.abs(w.thick - given) > 1e-6 && fallsShort(w.thick, least))
      .sort((a, b) => a.thick - b.thick)[0]
    if (!wall) return []
    const [a, b] = wall.faces
    const feature = part.features.find(
      (f) => f.feature && f.members.some((m) => m.faces.includes(a.id) || m.faces.includes(b.id)),
    )
    return [
      {
        text: `The wall between ${a.name ?? 'one face'} and ${b.name ?? 'another'} is ${said(wall.thick, brief.header.units)} thick.`,
        ...(feature?.feature
          ? { span: feature.feature.span, feature: feature.id }
          : brief.stock
            ? { span: brief.stock.span }
            : {}),
        expected: `at least ${said(least, brief.header.units)}`,
        numbers: [said(wall.thick, brief.header.units)],
      },
    ]
  },
}
