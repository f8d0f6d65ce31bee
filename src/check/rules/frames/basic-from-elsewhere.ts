import type { Vec3 } from '../../../geometry/vec.ts'
import { dot } from '../../../geometry/vec3.ts'
import type { ChosenSize, Part } from '../../../part/part.ts'
import { framedSizes } from '../../../sizes/geometric/basic-sizes.ts'
import { isLocation, type Located, leftFree, locatedBy } from '../../measure/datum-reach.ts'
import { coordinates } from '../../measure/freedoms.ts'
import type { DrawingRule, Finding, Sized } from '../../rule.ts'

const NEAR = 1e-6

export const rule: DrawingRule = {
  name: 'basic-from-elsewhere',
  weight: 'look again',
  source:
    'ASME Y14.5-2018 7.2 and 10.2, ISO 5458: true positions by basic sizes from the datums of the frame (from memory)',
  about:
    'The basic sizes of a feature run from the datums of its frame, or through other basic sizes to them. A size from another face, or a middle between faces that are no datums, adds that face’s own tolerance to the zone without saying so.',
  reads: 'drawing',
  check: (subject) =>
    locatedBy(subject, isLocation).flatMap((l) =>
      leftFree(subject.part, l).all && l.held.said.frame.characteristic === 'position' ? elsewhere(subject, l) : [],
    ),
}

function elsewhere({ part }: Sized, l: Located): Finding[] {
  const { feature } = l.held
  if (feature.feature === undefined) return []
  const names = l.datums.map((d) => d.name).join(', ')
  const elements = l.datums.flatMap((d) => d.elements)
  const sizes = framedSizes(part).flatMap(({ by, chosen }): Finding[] => {
    if (by !== l.held.said || chosen.kind !== 'distance' || !isBasic(part, chosen)) return []
    const from = part.data.find((d) => d.id === chosen.from)
    if (!from || chosen.from.startsWith(`${feature.id}.`)) return []
    if (isExact(part, elements, chosen.direction, dot(from.point, chosen.direction))) return []
    return [
      {
        text: `The basic ${chosen.size.text} of ${feature.id} starts at ${from.name}, which is not among its datums ${names}.`,
        span: chosen.size.span,
        expected: `a size from datum ${names}, or ${from.name} as a datum of the frame`,
        feature: feature.feature!,
        numbers: [chosen.size.text, from.name, ...l.datums.map((d) => d.name)],
      },
    ]
  })
  const middles = part.implied.flatMap((c): Finding[] => {
    if (c.kind !== 'centred' || !c.between.some((id) => id === `${feature.id} axis` || id.startsWith(`${feature.id}.`)))
      return []
    const sides = c.between.slice(-2).flatMap((id) => part.data.find((d) => d.id === id && d.kind === 'plane') ?? [])
    const [low, high] = sides
    if (low?.kind !== 'plane' || high?.kind !== 'plane') return []
    const at = (dot(low.point, low.normal) - dot(high.point, low.normal)) / 2 + dot(high.point, low.normal)
    if (isExact(part, elements, low.normal, at)) return []
    return [
      {
        text: `${feature.id} is centred between ${low.name} and ${high.name}, whose middle is not among its datums ${names}.`,
        span: l.row.span,
        expected: 'a datum taken from that length, width or thickness, or a size from the datum',
        feature: feature.feature!,
        numbers: [low.name, high.name, ...l.datums.map((d) => d.name)],
      },
    ]
  })
  return [...sizes, ...middles, ...onArcs(part, l, elements, names)]
}

/** A feature said to stand on the axis of a round or an arc that sizes with tolerances place. */
function onArcs(part: Part, l: Located, elements: Parameters<typeof coordinates>[0], names: string): Finding[] {
  const { feature } = l.held
  return part.implied.flatMap((c): Finding[] => {
    const [own, on] = c.between
    if (c.kind !== 'coaxial' || !on || own !== `${feature.id} axis`) return []
    const axis = part.data.find((d) => d.id === on)
    if (axis?.kind !== 'axis') return []
    const open = WAYS.filter(
      ([, way]) =>
        Math.abs(dot(axis.direction, way)) < NEAR &&
        coordinates(elements, way).length > 0 &&
        !isExact(part, elements, way, dot(axis.point, way)),
    ).map(([name]) => name)
    if (open.length === 0) return []
    return [
      {
        text: `${feature.id} stands on the axis of ${axis.name.replace(/ axis$/, '')}, which no basic size places ${open.join(' and ')} from datum ${names}.`,
        span: l.row.span,
        expected: `a place of its own for ${feature.id} by distances from datum ${names}`,
        feature: feature.feature!,
        numbers: [axis.name, ...l.datums.map((d) => d.name)],
      },
    ]
  })
}

const WAYS: readonly (readonly [string, Vec3])[] = [
  ['left-right', [1, 0, 0]],
  ['front-rear', [0, 1, 0]],
  ['up-down', [0, 0, 1]],
]

/** Whether the datums and the basic sizes that start at them fix that coordinate. */
function isExact(part: Part, elements: Parameters<typeof coordinates>[0], way: Vec3, wanted: number): boolean {
  const known = coordinates(elements, way)
  const has = (at: number) => known.some((k) => Math.abs(k - at) < NEAR)
  const links = part.chosen.flatMap((c): readonly (readonly [number, number])[] => {
    if (c.kind !== 'distance' && c.kind !== 'pitch') return []
    if (Math.abs(dot(c.direction, way)) < 1 - NEAR || !isBasic(part, c)) return []
    const ids = c.kind === 'distance' ? [c.from, c.to] : c.members
    const at = ids.flatMap((id) => part.data.find((d) => d.id === id) ?? []).map((d) => dot(d.point, way))
    return at.slice(1).map((b) => [at[0]!, b] as const)
  })
  for (let more = true; more; ) {
    more = false
    for (const [a, b] of links) {
      if (has(a) === has(b)) continue
      known.push(has(a) ? b : a)
      more = true
    }
  }
  return has(wanted)
}

const isBasic = (part: Part, c: Extract<ChosenSize, { size: unknown }>): boolean =>
  c.size.tolerance?.kind === 'basic' || (!c.size.tolerance && framedSizes(part).some((f) => f.size === c.size))
