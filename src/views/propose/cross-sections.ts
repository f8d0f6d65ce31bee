import type { Side } from '../../brief/brief.ts'
import { along, dot, sub } from '../../geometry/vec3.ts'
import type { Part, PartFeature } from '../../part/part.ts'
import { isAbout } from '../centre-lines/round-features.ts'
import { FRAMES } from '../frames.ts'
import { featurePoints } from './feature-points.ts'
import type { PlannedSection } from './plan.ts'

/**
 * A section across the axis through each keyseat and flat of a turned part: it shows the depth. One that an earlier
 * section already cuts gets none of its own, nor does a flat that a planned view shows from its end (`isShown`). Of left and right the side is taken from which nothing larger than the cut
 * stands behind it (common practice, no source); else `side`.
 */
export function crossSections(
  part: Part,
  side: Side,
  firstLetter: string,
  parent: Side | undefined,
  isShown: (faces: readonly number[]) => boolean = () => false,
): { readonly section: PlannedSection; readonly reason: string }[] {
  const out: { section: PlannedSection; reason: string }[] = []
  const cut: number[] = []
  for (const feature of part.features) {
    if (!isWorkedAcross(feature, part)) continue
    if (feature.kind === 'flat-cut' && flatsOf(feature, part).every((f) => isShown([f]))) continue
    const reach = reachOf(feature, part)
    if (cut.some((at) => at > reach[0] && at < reach[1])) continue
    const at = (reach[0] + reach[1]) / 2
    const seen = clearerSide(part, at, side)
    const letter = String.fromCharCode(firstLetter.charCodeAt(0) + cut.length)
    cut.push(at)
    out.push({
      section: {
        kind: 'section',
        letter,
        extent: 'full',
        side: seen,
        point: along(part.axis!.point, part.axis!.direction, at),
        ...(parent ? { parent } : {}),
      },
      reason: `Section ${letter}-${letter} across the axis shows the depth of the ${feature.kind === 'keyseat' ? 'keyseat' : 'flat'}${
        seen === side ? '' : `; seen from the ${seen}, nothing larger stands behind it`
      }.`,
    })
  }
  return out
}

/** A keyseat or a flat of a turned part; one that is open at an end of the part is seen from there in true shape. */
export const isWorkedAcross = ({ kind, outward }: PartFeature, part: Part): boolean =>
  part.axis !== undefined &&
  (kind === 'keyseat' || kind === 'flat-cut') &&
  Math.abs(dot(outward, part.axis.direction)) <= 1 - 1e-9

/** Half way along the feature, mm from the axis's point. */
export function middleAlong(feature: PartFeature, part: Part): number {
  const [from, to] = reachOf(feature, part)
  return (from + to) / 2
}

/** The feature's planes along the axis. */
function flatsOf(feature: PartFeature, part: Part): number[] {
  return feature.members
    .flatMap((m) => m.faces)
    .filter((id) => {
      const surface = part.body.faces[id]?.surface
      return surface?.kind === 'plane' && Math.abs(dot(surface.axes.z, part.axis!.direction)) < 1e-9
    })
}

/** Where the feature begins and ends along the axis, mm from the axis's point. */
function reachOf(feature: PartFeature, part: Part): readonly [number, number] {
  const { point, direction } = part.axis!
  const on = featurePoints(feature, part).map((p) => dot(sub(p, point), direction))
  if (on.length > 0) return [Math.min(...on), Math.max(...on)]
  const at = dot(sub(feature.members[0]?.point ?? point, point), direction)
  return [at, at]
}

export function clearerSide(part: Part, at: number, side: Side): Side {
  if (side !== 'left' && side !== 'right') return side
  const other = side === 'left' ? 'right' : 'left'
  return showsBehind(part, at, side) && !showsBehind(part, at, other) ? other : side
}

/** True where a diameter larger than the one cut stands behind the plane. */
function showsBehind(part: Part, at: number, side: Side): boolean {
  const { point, direction } = part.axis!
  const away = -Math.sign(dot(direction, FRAMES[side].toViewer))
  let [here, behind] = [0, 0]
  for (const face of part.body.faces) {
    if (!isAbout(face.surface, point, direction)) continue
    const rims = face.loops
      .flat()
      .map((use) => part.body.edges[use.edge]!.curve)
      .flatMap((c) => (c.kind === 'circle' ? [{ on: dot(sub(c.axes.origin, point), direction), r: c.r }] : []))
    const largest = Math.max(0, ...rims.map((rim) => rim.r))
    if (rims.some((rim) => rim.on < at) && rims.some((rim) => rim.on > at)) here = Math.max(here, largest)
    else if (rims.some((rim) => (rim.on - at) * away > 0)) behind = Math.max(behind, largest)
  }
  return behind > here + 1e-6
}
