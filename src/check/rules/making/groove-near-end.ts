import type { GrooveFeature } from '../../../brief/brief.ts'
import { dot, sub } from '../../../geometry/vec3.ts'
import { ownDeviations } from '../../measure/deviation.ts'
import { said } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'groove-near-end',
  weight: 'look again',
  source:
    'DIN 471: land beyond the groove at least three times its depth; its grooves are toleranced, no wider than 0.13 and no deeper than 0.04 of the shaft (from memory)',
  about:
    'The land between a retaining ring’s groove and the end takes the thrust; too short, it shears off. Lands beside oil grooves and piston rings carry none and may be short.',
  reads: 'drawing',
  check: ({ part, brief }) =>
    part.features.flatMap((f) => {
      if (f.feature?.kind !== 'groove' || !part.axis) return []
      const { direction } = part.axis
      const walls = part.data.filter((d) => d.kind === 'plane' && d.id.startsWith(`${f.id} `))
      const others = part.data.filter((d) => d.kind === 'plane' && !d.id.startsWith(`${f.id} `))
      const floor = f.members[0]?.faces.map((i) => part.body.faces[i]).find((face) => face?.surface.kind === 'cylinder')
      const shaft = part.chosen.find(
        (c) =>
          c.kind === 'diameter' &&
          c.of === (f.feature?.kind === 'groove' ? f.feature.face.text.trim().toLowerCase() : ''),
      )
      if (floor?.surface.kind !== 'cylinder' || shaft?.kind !== 'diameter') return []
      const deep = shaft.size.mm / 2 - floor.surface.r
      const land = walls.reduce((least, w) => {
        for (const o of others) {
          if (o.kind !== 'plane' || w.kind !== 'plane') continue
          const d = dot(sub(o.point, w.point), direction)
          // Out of the groove, away from it, to a face that ends the step: not the other wall, not a rising shoulder.
          const outOfGroove = d * dot(w.normal, direction)
          if (outOfGroove > -1e-6 || !isOpenEnd(part, o.id)) continue
          least = Math.min(least, Math.abs(d))
        }
        return least
      }, Number.POSITIVE_INFINITY)
      if (!(land < 3 * deep - 1e-6) || !isForRing(f.feature, shaft.size.mm, deep)) return []
      return [
        {
          text: `Beyond the groove ${said(deep, brief.header.units)} deep only ${said(land, brief.header.units)} are left to the end.`,
          span: f.feature.anchor.distance.span,
          expected: `at least ${said(3 * deep, brief.header.units)}`,
          feature: f.id,
          numbers: [said(deep, brief.header.units), said(land, brief.header.units)],
        },
      ]
    }),
}

/** A narrow, shallow groove with a tolerance of its own. */
const isForRing = ({ width, bottom, depth }: GrooveFeature, shaft: number, deep: number): boolean =>
  [width, bottom, depth].some((s) => s && ownDeviations(s)) && width.mm <= 0.13 * shaft && deep <= 0.04 * shaft

/** An end face of the part. */
const isOpenEnd = (part: Parameters<DrawingRule['check']>[0]['part'], id: string): boolean => {
  const datum = part.data.find((d) => d.id === id)
  if (datum?.kind !== 'plane' || !part.axis) return false
  const k = part.axis.direction.findIndex((c) => Math.abs(c) > 0.5) as 0 | 1 | 2
  const { min, max } = part.body.box
  return Math.abs(datum.point[k] - min[k]) < 1e-6 || Math.abs(datum.point[k] - max[k]) < 1e-6
}
