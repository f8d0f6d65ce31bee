import type { Side, ViewRequest } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { add, along, dot, scale, sub } from '../../geometry/vec3.ts'
import type { Part, PartFeature } from '../../part/part.ts'
import { liesInPlane } from '../centre-lines/lengthwise.ts'
import { type RoundAxis, roundFeatures } from '../centre-lines/round-features.ts'
import { axisOf, FRAMES } from '../frames.ts'
import { alignedHalves, standsBesideAxis, unturned } from './aligned.ts'
import { clearerSide, isWorkedAcross, middleAlong } from './cross-sections.ts'
import { featurePoints } from './feature-points.ts'
import type { PlannedSection, Sight } from './plan.ts'

export type SectionRequest = Extract<ViewRequest, { kind: 'section' }>

/** Sides in the order in which a section takes their place, by projection method. */
export const order = (part: Part): readonly Side[] =>
  part.brief.header.projection === 'first angle'
    ? ['left', 'right', 'top', 'front', 'bottom', 'rear']
    : ['right', 'left', 'top', 'front', 'bottom', 'rear']

/** Ids of features that no view drawn shows in full lines: a section should go through them. */
export type Unseen = ReadonlySet<string>

/**
 * Where a section that the brief asks for goes: into the view it names, or else into the free place whose plane cuts
 * most of what is `unseen`, then the most holes and bores along their axes; its plane must be seen edge-on in one of the
 * views drawn.
 */
export function planSection(
  part: Part,
  request: SectionRequest,
  views: readonly Side[],
  unseen: Unseen = new Set(),
): PlannedSection {
  const named = request.through && featureNamed(part, request.through.text)
  const first = request.as ?? acrossNamed(part, named, views) ?? chooseSide(part, request, views, unseen)
  const point = planePoint(part, first, named, unseen)
  const bent =
    views.some((v) => isEndView(part, v)) &&
    request.extent === 'full' &&
    isLengthwise(part, first) &&
    (!named || standsBesideAxis(part, named))
      ? alignedHalves(part, first, named)
      : undefined
  const asItLies = request.as ? undefined : unturned(part, bent)
  const level = asItLies && freeSides(part, views).find((s) => axisOf[s] === asItLies)
  const side = level ?? first
  const aligned = level ? undefined : bent
  const parent = parentOf(part, { side, extent: request.extent, ...(aligned ? { aligned } : {}) }, views)
  return {
    kind: 'section',
    letter: request.letter,
    extent: request.extent,
    side,
    point,
    ...(aligned ? { aligned } : {}),
    ...(parent ? { parent } : {}),
  }
}

/**
 * The view that shows the cutting-plane line: one that sees the plane edge-on, for a bent plane along the axis, as for that
 * of a half section, whose corner shows nowhere else, where there is such a view.
 */
export function parentOf(
  part: Part,
  { side, aligned, extent }: Pick<PlannedSection, 'side' | 'aligned' | 'extent'>,
  views: readonly Side[],
): Side | undefined {
  const edgeOn = views.filter((v) => axisOf[v] !== axisOf[side])
  const along = edgeOn.find((v) => isEndView(part, v))
  if (aligned) return along
  return extent === 'half' ? (along ?? edgeOn[0]) : edgeOn[0]
}

/** A keyseat or a flat is cut across the axis, where its width and its depth show (common practice, no source). */
function acrossNamed(part: Part, named: PartFeature | undefined, views: readonly Side[]): Side | undefined {
  if (!named || !isWorkedAcross(named, part)) return undefined
  const free = order(part).filter((s) => isEndView(part, s) && !views.includes(s))
  return free[0] && clearerSide(part, middleAlong(named, part), free[0])
}

function chooseSide(part: Part, request: SectionRequest, views: readonly Side[], unseen: Unseen): Side {
  const free = freeSides(part, views)
  const along = free.filter((s) => !part.axis || isLengthwise(part, s))
  return sideOfMostCuts(part, request, along.length > 0 ? along : free, unseen) ?? order(part)[0]!
}

/** Sides of directions in which no view is drawn yet. */
export const freeSides = (part: Part, views: readonly Side[]): readonly Side[] =>
  order(part).filter((s) => !views.some((v) => axisOf[v] === axisOf[s]))

/** The side, of several the first, from which a section cuts most. */
export function sideOfMostCuts(
  part: Part,
  request: SectionRequest,
  sides: readonly Side[],
  unseen: Unseen = new Set(),
): Side | undefined {
  const named = request.through && featureNamed(part, request.through.text)
  let best: { side: Side; cuts: number } | undefined
  for (const side of sides) {
    const cuts = worthOf(part, side, planePoint(part, side, named, unseen), unseen)
    if (!best || cuts > best.cuts) best = { side, cuts }
  }
  return best?.side
}

/** Features worked from a side that none of these sides shows in full lines. */
export function unseenFrom(part: Part, sides: readonly Side[], sight: Sight): Unseen {
  const hidden = part.features.filter((f) => {
    const faces = f.members.flatMap((m) => m.faces)
    return DEEP.has(f.kind) && faces.length > 0 && !sides.some((side) => sight.showsAlone(side, faces))
  })
  return new Set(hidden.map((f) => f.id))
}

const DEEP: ReadonlySet<PartFeature['kind']> = new Set(['hole', 'slot', 'pocket', 'bore'])

/**
 * A point for the cutting plane that faces `side`: through what is named, through the part's axis, or through most of
 * what is unseen and then most axes.
 */
function planePoint(part: Part, side: Side, named: PartFeature | undefined, unseen: Unseen): Vec3 {
  const normal = FRAMES[side].toViewer
  const middle = scale(add(part.body.box.min, part.body.box.max), 0.5)
  if (part.axis && isLengthwise(part, side) && (!named || standsBesideAxis(part, named))) return part.axis.point
  const axes = allAxes(part, named).filter((a) => Math.abs(dot(a.direction, normal)) < 1e-9)
  const deep = named ? [] : part.features.filter((f) => unseen.has(f.id)).flatMap((f) => f.members)
  if (named && part.axis && isEndView(part, side) && isWorkedAcross(named, part))
    return along(part.axis.point, part.axis.direction, middleAlong(named, part))
  let best: Vec3 = named ? (named.members[0]?.point ?? middle) : middle
  const worth = (at: Vec3) =>
    named ? axes.filter((a) => liesInPlane(a, at, normal)).length : worthOf(part, side, at, unseen)
  let most = worth(best)
  for (const { point } of [...deep, ...axes]) {
    const cut = worth(point)
    if (cut > most) [best, most] = [point, cut]
  }
  return named ? within(part, named, best, normal) : best
}

/** The point, brought half way into the first of the feature's members where the plane would touch them at an end or miss them. */
function within(part: Part, named: PartFeature, point: Vec3, normal: Vec3): Vec3 {
  const reaches = named.members.map((m) => {
    const at = featurePoints({ ...named, members: [m] }, part).map((p) => dot(sub(p, point), normal))
    return [Math.min(...at), Math.max(...at)] as const
  })
  const first = reaches[0]
  // round edges are told by their middles alone
  if (!first || !(first[1] - first[0] > 1e-6)) return point
  const margin = 0.05 * (first[1] - first[0])
  if (reaches.some(([low, high]) => low < -margin && high > margin)) return point
  return along(point, normal, (first[0] + first[1]) / 2)
}

const isLengthwise = (part: Part, side: Side) =>
  part.axis !== undefined && Math.abs(dot(part.axis.direction, FRAMES[side].toViewer)) < 1e-9

const isEndView = (part: Part, side: Side) =>
  part.axis !== undefined && Math.abs(dot(part.axis.direction, FRAMES[side].toViewer)) > 1 - 1e-9

/** One unseen feature counts for more than all axes. */
const UNSEEN = 1000

function worthOf(part: Part, side: Side, point: Vec3, unseen: Unseen): number {
  const normal = FRAMES[side].toViewer
  const deep = part.features.filter(
    (f) =>
      unseen.has(f.id) &&
      Math.abs(dot(f.outward, normal)) < 1e-9 &&
      f.members.some((m) => Math.abs(dot(sub(m.point, point), normal)) < 1e-6),
  )
  return UNSEEN * deep.length + axesCut(part, side, point).length
}

const axesCut = (part: Part, side: Side, point: Vec3) =>
  allAxes(part).filter((a) => liesInPlane(a, point, FRAMES[side].toViewer))

function allAxes(part: Part, only?: PartFeature): RoundAxis[] {
  return roundFeatures(part)
    .filter((f) => !only || f.feature === only.id)
    .flatMap((f) => f.members.flatMap((m) => m.axes))
}

/** `bore`, `holes`, `holes A`, `hole 2`: by id, then by label, then by kind. */
function featureNamed(part: Part, text: string): PartFeature | undefined {
  const words = text.trim().toLowerCase().split(/\s+/)
  const first = words[0] ?? ''
  const singular = [first, first.replace(/s$/, ''), first.replace(/es$/, '')]
  const ids = singular.map((w) => [w, ...words.slice(1)].join(' '))
  return (
    part.features.find((f) => ids.includes(f.id.toLowerCase())) ??
    part.features.find((f) => f.feature?.label?.text.toLowerCase() === words[words.length - 1]) ??
    part.features.find((f) => singular.includes(f.kind))
  )
}
