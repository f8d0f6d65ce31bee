import type { Vec3 } from '../../../geometry/vec.ts'
import { dot } from '../../../geometry/vec3.ts'
import type { NamedFeature } from '../../../part/named-feature.ts'
import type { Part } from '../../../part/part.ts'
import { locatedBy } from '../../measure/datum-reach.ts'
import { across } from '../../measure/elements.ts'
import { samples } from '../../measure/faces.ts'
import { said } from '../../measure/said.ts'
import type { DrawingRule, Finding } from '../../rule.ts'

/** Least share of the part's own length that a flat primary datum reaches over, and least length over diameter of a round one. */
const [FLAT, ROUND] = [1 / 3, 0.25]

export const rule: DrawingRule = {
  name: 'datum-unstable',
  weight: 'look again',
  source:
    'common practice, no source; ASME Y14.5-2018 section 7: datum features large enough to repeat a set-up (from memory)',
  about:
    'The first datum sets how the part lies. A face much smaller than the part, or a round much shorter than its diameter, tilts from one set-up to the next; it belongs in second place, or the other feature in first.',
  reads: 'drawing',
  check: (subject) => {
    const seen = new Set<string>()
    return locatedBy(subject, () => true).flatMap(({ row, datums }): Finding[] => {
      const [first] = datums
      const [feature, more] = first?.features ?? []
      if (!first || !feature || more || seen.has(first.name)) return []
      const short = feature.kind === 'width' ? undefined : shortness(subject.part, feature)
      if (!short) return []
      seen.add(first.name)
      const { header, datums: stated = [] } = subject.brief
      const { units } = header
      // By the brief's own word: the part may name a spigot boss.
      const name = stated.find((d) => d.letter.text === first.name)?.of.text ?? feature.id
      return [
        {
          text:
            feature.kind === 'round'
              ? `Datum ${first.name}, ${name}, bears over ${said(short.own, units)} of its length, chamfers and rounds not counted, on a diameter of ${said(short.of, units)}: it does not set how the part lies.`
              : `Datum ${first.name}, ${name}, reaches over ${said(short.own, units)} of the part’s ${said(short.of, units)}: it does not set how the part lies.`,
          span: row.datums[0]!.span,
          expected:
            feature.kind === 'round'
              ? 'a face in first place and this round in second, or a longer round'
              : 'a larger face as the first datum',
          numbers: [said(short.own, units), said(short.of, units), first.name],
        },
      ]
    })
  },
}

/** Reach of the feature where it is too small; undefined where it is large enough. */
function shortness(part: Part, feature: NamedFeature): { readonly own: number; readonly of: number } | undefined {
  const { body } = part
  const points = body.edges
    .filter((e) => e.faces.some((f) => f !== undefined && feature.faces.includes(f)))
    .flatMap((e) => [...samples(e)])
  const reach = (all: readonly Vec3[], way: Vec3) => {
    const at = all.map((p) => dot(p, way))
    return Math.max(...at) - Math.min(...at)
  }
  if (points.length === 0) return undefined
  if (feature.kind === 'round') {
    const surface = body.faces[feature.faces[0]!]?.surface
    // A pattern's reach is its spread, not its depth.
    if (surface?.kind !== 'cylinder' || feature.faces.length > 1) return undefined
    const [own, of] = [reach(points, surface.axes.z), 2 * surface.r]
    return own < ROUND * of - 1e-9 ? { own, of } : undefined
  }
  const corners = body.edges.flatMap((e) => [...samples(e)])
  const ways = across(feature.direction).map((way) => ({ own: reach(points, way), of: reach(corners, way) }))
  const [most] = ways.sort((a, b) => b.of - a.of)
  return most && ways.every((w) => w.own < FLAT * w.of - 1e-9) ? most : undefined
}
