import { holesOf } from '../../measure/cuts.ts'
import type { DrawingRule } from '../../rule.ts'

/** Depth over diameter: where chips no longer come out by themselves. */
const DEEP = 10

export const rule: DrawingRule = {
  name: 'deep-hole',
  weight: 'look again',
  source: 'DIN 338 jobber drills reach about 10 D; Machinery’s Handbook, deep-hole drilling (from memory)',
  about:
    'Beyond ten diameters a twist drill wanders and must be cleared again and again; a gun drill or two diameters cost less.',
  reads: 'drawing',
  check: ({ part }) => {
    const seen = new Set<string>()
    return holesOf(part).flatMap(({ of, callout, deep, r }) => {
      const bore = callout.counterbore?.depth.mm ?? 0
      const ratio = (deep - bore) / (2 * r)
      if (ratio <= DEEP || seen.has(of.id)) return []
      seen.add(of.id)
      return [
        {
          text: `⌀${callout.diameter.text} goes ${ratio.toFixed(0)} diameters deep.`,
          span: callout.depth.kind === 'blind' ? callout.depth.size.span : callout.diameter.span,
          expected: `at most ${DEEP} diameters, or a larger hole for part of the way`,
          feature: of.id,
          numbers: [callout.diameter.text, ratio.toFixed(1)],
        },
      ]
    })
  },
}
