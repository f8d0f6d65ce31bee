import { ownDeviations } from '../../measure/deviation.ts'
import type { DrawingRule } from '../../rule.ts'

/** Shaft, groove bottom, least groove width, mm. DIN 471, normal rings, from memory. */
const rings = [
  [10, 9.6, 1.1],
  [12, 11.5, 1.1],
  [15, 14.3, 1.1],
  [16, 15.2, 1.1],
  [17, 16.2, 1.1],
  [18, 17, 1.3],
  [20, 19, 1.3],
  [22, 21, 1.3],
  [25, 23.9, 1.3],
  [28, 26.6, 1.6],
  [30, 28.6, 1.6],
  [32, 30.3, 1.6],
  [35, 33, 1.6],
  [40, 37.5, 1.85],
  [45, 42.5, 1.85],
  [50, 47, 2.15],
  [55, 52, 2.15],
  [60, 57, 2.15],
] as const

export const rule: DrawingRule = {
  name: 'ring-groove',
  weight: 'look again',
  source: 'DIN 471, retaining rings for shafts, table (from memory)',
  about: 'A groove as wide as a retaining ring’s is meant for one, and then its bottom diameter is the ring’s too.',
  reads: 'drawing',
  check: ({ part }) =>
    part.features.flatMap((f) => {
      if (f.feature?.kind !== 'groove' || !f.feature.bottom || f.feature.width.unit !== 'mm') return []
      const { width, bottom, face } = f.feature
      const on = part.chosen.find((c) => c.kind === 'diameter' && c.of === face.text.trim().toLowerCase())
      const row = on?.kind === 'diameter' ? rings.find(([d]) => Math.abs(d - on.size.mm) < 1e-6) : undefined
      if (!row) return []
      const [shaft, d2, m] = row
      // Toleranced and of about the ring's width: a ring is meant, not an undercut.
      const isMeant = (ownDeviations(width) || ownDeviations(bottom)) && Math.abs(width.mm - m) < 0.3 * m
      if (!isMeant || (Math.abs(bottom.mm - d2) < 0.05 && width.mm > m - 1e-6 && width.mm < m + 0.15)) return []
      return [
        {
          text: `For a retaining ring on ⌀${shaft} the groove is ${m} wide to ⌀${d2}, not ${width.text} to ⌀${bottom.text}.`,
          span: Math.abs(bottom.mm - d2) < 0.05 ? width.span : bottom.span,
          expected: `${m} H13 wide, bottom ⌀${d2} h11`,
          feature: f.id,
          numbers: [width.text, bottom.text],
        },
      ]
    }),
}
