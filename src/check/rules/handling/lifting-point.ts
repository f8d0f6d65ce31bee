import type { DrawingRule } from '../../rule.ts'

/** Above this a hoist is the rule, kg. */
const HOIST = 50

export const rule: DrawingRule = {
  name: 'lifting-point',
  weight: 'look again',
  source:
    'ISO 12100:2010, 6.3.5.5: provisions for handling machines and their heavy component parts (from memory); 50 kg is common practice',
  about:
    'What is lifted by a hoist has something to hook on to: a thread for an eye bolt, a hole for a shackle, or a note how to sling it.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const { mass } = part.properties
    if (mass === undefined || mass <= HOIST) return []
    const threads = brief.features.some((f) => f.kind === 'hole' && f.thread && f.diameter.mm >= 6.5)
    const holes = brief.features.some((f) => f.kind === 'hole' && f.depth.kind === 'through' && f.diameter.mm >= 20)
    if (threads || holes || brief.header.notes.some((n) => /\b(lift|hoist|sling|eye ?bolt)\w*/i.test(n.text))) return []
    return [
      {
        text: `${mass.toFixed(0)} kg, and nothing to lift it by.`,
        expected: 'a tapped hole for an eye bolt, or a note how to sling it',
        numbers: [`${mass.toFixed(0)} kg`],
      },
    ]
  },
}
