import { holesOf } from '../../measure/cuts.ts'
import { metalOf } from '../../measure/metal.ts'
import { said } from '../../measure/said.ts'
import { tappedIn } from '../../measure/tapped.ts'
import type { DrawingRule } from '../../rule.ts'

/** Full thread over diameter below which the thread strips before the screw breaks. */
const LEAST = { steel: 0.8, stainless: 0.8, iron: 1.1, copper: 1.1, aluminium: 1.2, plastic: 1.5 } as const

export const rule: DrawingRule = {
  name: 'thread-short',
  weight: 'look again',
  source:
    'Machinery’s Handbook and VDI 2230, length of engagement: 0.8 to 1 D in steel, 1.25 D in iron, up to 2 D in aluminium (from memory)',
  about: 'Too few threads strip before the screw breaks. Soft metals need more of them than steel.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const least = LEAST[metalOf(brief.header.material?.text) ?? 'steel']
    const holes = holesOf(part)
    return tappedIn(brief).flatMap(({ hole, diameter }) => {
      const made = holes.find((h) => h.callout === hole)
      const long = hole.threadDepth?.mm ?? (hole.depth.kind === 'blind' ? hole.depth.size.mm : made?.deep)
      if (long === undefined || long >= least * diameter - 1e-6) return []
      return [
        {
          text: `${hole.thread!.text} is cut ${said(long, brief.header.units)} deep, ${(long / diameter).toFixed(1)} diameters: it will strip.`,
          span: hole.thread!.span,
          expected: `at least ${least} diameters in this material, or an insert`,
          ...(made ? { feature: made.of.id } : {}),
          numbers: [hole.thread!.text, said(long, brief.header.units)],
        },
      ]
    })
  },
}
