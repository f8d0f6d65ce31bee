import { isMildSteel } from '../../measure/metal.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'steel-will-not-harden',
  weight: 'must change',
  source:
    'Machinery’s Handbook, heat treatment of steels: about 0.3 % carbon is needed to harden through (from memory)',
  about: 'Mild steel does not harden through; it can be case-hardened, or the material is the wrong one.',
  reads: 'brief',
  check: ({ brief: { header } }) => {
    const { material, notes } = header
    if (!material || !isMildSteel(material.text)) return []
    const found = [material, ...notes].find((w) => {
      const text = w.text.replace(
        /\b(case|surface|skin)[- ]?(hardened|hardening)\b|carburi[sz]ed[ ,a-z]*hardened/gi,
        '',
      )
      return /\b(hardened|quenched and tempered)\b/i.test(text)
    })
    if (!found) return []
    return [
      {
        text: 'This steel has too little carbon to harden through.',
        span: found.span,
        expected: 'case hardened, or a steel such as C45E, 1045 or 4140',
      },
    ]
  },
}
