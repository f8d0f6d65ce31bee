import { sizesOf } from '../../measure/all-sizes.ts'
import { ownDeviations, width } from '../../measure/deviation.ts'
import { quoted } from '../../measure/said.ts'
import { textureOfSize } from '../../measure/texture-of-size.ts'
import type { DrawingRule } from '../../rule.ts'

/** Peaks and valleys are about 4.5 times Ra; beyond two thirds of the tolerance the surface itself is the error. */
const SHARE = 7

export const rule: DrawingRule = {
  name: 'rough-for-tolerance',
  weight: 'look again',
  source: 'Machinery’s Handbook, surface texture and tolerance; Rz ≈ 4 to 7 Ra (from memory)',
  about:
    'A surface whose roughness takes up most of the tolerance cannot be measured to it, and wears out of it in a day.',
  reads: 'drawing',
  check: ({ brief, part }) => {
    const worst = sizesOf(brief)
      .flatMap(({ size }) => {
        const own = size.tolerance?.kind === 'stock' ? undefined : ownDeviations(size)
        if (!own || width(own) <= 1e-6) return []
        const { ra } = textureOfSize(part, size)
        const um = 1000 * width(own)
        return ra !== undefined && ra > um / SHARE ? [{ size, um, ra }] : []
      })
      .sort((a, b) => a.um - b.um)[0]
    if (!worst) return []
    const { size, um, ra } = worst
    const shown = brief.header.units === 'inch' ? `${Math.round(ra / 0.0254)} µin` : `Ra ${ra}`
    return [
      {
        text: `${quoted(size)} is held to ${um < 10 ? Number(um.toPrecision(2)) : um.toFixed(0)} µm, but the texture asked of its surface is ${shown}.`,
        span: size.span,
        expected: `a finer texture of this surface: ${brief.header.units === 'inch' ? `${Math.floor(um / SHARE / 0.0254)} µin` : `Ra ${[0.1, 0.2, 0.4, 0.8, 1.6, 3.2].filter((r) => r <= um / SHARE).pop() ?? 0.1}`}`,
        numbers: [quoted(size), shown],
      },
    ]
  },
}
