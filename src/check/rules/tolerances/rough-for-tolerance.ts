import { sizesOf } from '../../measure/all-sizes.ts'
import { ownDeviations, width } from '../../measure/deviation.ts'
import { quoted } from '../../measure/said.ts'
import { finestRoughness } from '../../measure/texture.ts'
import type { BriefRule } from '../../rule.ts'

/** Peaks and valleys are about 4.5 times Ra; beyond two thirds of the tolerance the surface itself is the error. */
const SHARE = 7

export const rule: BriefRule = {
  name: 'rough-for-tolerance',
  weight: 'look again',
  source: 'Machinery’s Handbook, surface texture and tolerance; Rz ≈ 4 to 7 Ra (from memory)',
  about:
    'A surface whose roughness takes up most of the tolerance cannot be measured to it, and wears out of it in a day.',
  reads: 'brief',
  check: ({ brief }) => {
    const ra = finestRoughness(brief)
    if (ra === undefined) return []
    const worst = sizesOf(brief)
      .flatMap(({ size }) => {
        const own = size.tolerance?.kind === 'stock' ? undefined : ownDeviations(size)
        return own && width(own) > 1e-6 ? [{ size, um: 1000 * width(own) }] : []
      })
      .sort((a, b) => a.um - b.um)[0]
    if (!worst || ra <= worst.um / SHARE) return []
    const { size, um } = worst
    const shown = brief.header.units === 'inch' ? `${Math.round(ra / 0.0254)} µin` : `Ra ${ra}`
    return [
      {
        text: `${quoted(size)} is held to ${um < 10 ? Number(um.toPrecision(2)) : um.toFixed(0)} µm, but the finest surface asked for is ${shown}.`,
        span: size.span,
        expected: `a note with a finer texture for this surface: ${brief.header.units === 'inch' ? `${Math.floor(um / SHARE / 0.0254)} µin` : `Ra ${[0.1, 0.2, 0.4, 0.8, 1.6, 3.2].filter((r) => r <= um / SHARE).pop() ?? 0.1}`}`,
        numbers: [quoted(size), shown],
      },
    ]
  },
}
