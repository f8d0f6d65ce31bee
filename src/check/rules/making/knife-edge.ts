import { materialAngle } from '../../measure/faces.ts'
import type { DrawingRule } from '../../rule.ts'

/** Degrees of material below which an edge crumbles, cuts hands and cannot be measured. */
const SHARP = 30

export const rule: DrawingRule = {
  name: 'knife-edge',
  weight: 'look again',
  source: 'common practice, no source: 30°',
  about: 'An edge of little material chips, cuts whoever handles it, and cannot be measured. A small flat ends it.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const found = part.body.edges.flatMap((edge) => {
      const angle = edge.smooth ? undefined : materialAngle(part.body, edge)
      return angle !== undefined && angle < SHARP - 0.05 ? [{ edge, angle }] : []
    })
    const worst = found.sort((a, b) => a.angle - b.angle)[0]
    if (!worst) return []
    const names = worst.edge.faces.flatMap((f) => (f === undefined ? [] : [part.body.faces[f]?.name ?? 'a face']))
    const feature = part.features.find(
      (f) => f.feature && f.members.some((m) => worst.edge.faces.some((e) => e !== undefined && m.faces.includes(e))),
    )
    const span = feature?.feature?.span ?? brief.stock?.span
    return [
      {
        text: `The edge between ${names.join(' and ')} is ${worst.angle.toFixed(0)}° sharp.`,
        ...(span ? { span } : {}),
        ...(feature ? { feature: feature.id } : {}),
        expected: 'a flat or a round at the edge',
        numbers: [`${worst.angle.toFixed(0)}°`],
      },
    ]
  },
}
