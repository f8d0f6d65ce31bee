import { arcLengthCallout } from '../callout/shapes.ts'
import type { Context } from './context.ts'
import type { Draft } from './draft.ts'
import type { Chosen } from './kinds.ts'

/** A length along an arc, in the view that shows the arc true. */
export function arcLengthDraft(context: Context, { size, of, span }: Chosen<'arc length'>): Draft | undefined {
  const own = context.part.body.faces.filter((f) => f.name === of && f.surface.kind === 'cylinder')
  const faces = own.map((f) => f.id)
  const [first] = own
  if (!first) {
    context.marks.push({
      rule: 'size-reaches-nothing',
      weight: 'look again',
      text: 'The arc that this length is of is no longer on the part; another statement has cut it away.',
      span,
      expected: 'statements that leave the arc standing',
      source: 'common practice, no source',
    })
    return undefined
  }
  return {
    id: `stock/arc length/${of}`,
    callout: arcLengthCallout(size, context.writing),
    value: size.mm,
    size,
    direction: 'arc length',
    states: [{ kind: 'arc length', faces }],
    shows: (sight) => {
      const arcs = sight
        .linesOf(faces.filter((f) => sight.showsRound(f)))
        .flatMap(({ curve, kind }) => (curve.kind === 'arc' ? [{ curve, visible: kind === 'visible' }] : []))
      const best = arcs.find((a) => a.visible) ?? arcs[0]
      if (!best) return undefined
      const { c, r, from, sweep } = best.curve
      return {
        score: (best.visible ? 60 : -40) - 2 * sight.order,
        measured: {
          kind: 'angle',
          vertex: c,
          from,
          sweep,
          reach: [r, r],
          arc: { radius: r, side: first.reversed ? -1 : 1 },
        },
      }
    },
    span,
  }
}
