import { isMildSteel } from '../../measure/metal.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'steel-without-coating',
  weight: 'remark',
  source: 'common practice, no source',
  about: 'Mild steel rusts on the shelf. If it stays bare on purpose, the drawing says so.',
  reads: 'brief',
  check: ({ brief: { header } }) => {
    const { coating, material, notes } = header
    if (!material || coating || !isMildSteel(material.text)) return []
    if (
      notes.some((n) => /\b(oil|oiled|greased|paint|painted|primed|plated|galvani[sz]ed|uncoated|bare)\b/i.test(n.text))
    )
      return []
    return [
      {
        text: 'Mild steel, and no coating is stated.',
        span: material.span,
        expected: 'coating   oiled, primed, zinc plated …, or coating none',
      },
    ]
  },
}
