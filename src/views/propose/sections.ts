import type { Side, ViewRequest } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { add, dot, scale } from '../../geometry/vec3.ts'
import type { Part, PartFeature } from '../../part/part.ts'
import { liesInPlane } from '../centre-lines/lengthwise.ts'
import { type RoundAxis, roundFeatures } from '../centre-lines/round-features.ts'
import { axisOf, FRAMES } from '../frames.ts'
import type { PlannedSection } from './plan.ts'

export type SectionRequest = Extract<ViewRequest, { kind: 'section' }>

/** Sides in the order in which a section takes their place, by projection method. */
const order = (part: Part): readonly Side[] =>
  part.brief.header.projection === 'first angle'
    ? ['left', 'right', 'top', 'front', 'bottom', 'rear']
    : ['right', 'left', 'top', 'front', 'bottom', 'rear']

/**
 * Where a section that the brief asks for goes: into the view it names, or else into the free place whose plane cuts
 * the most holes and bores along their axes; its plane must be seen edge-on in one of the views drawn.
 */
export function planSection(part: Part, request: SectionRequest, views: readonly Side[]): PlannedSection {
  const side = request.as ?? chooseSide(part, request, views)
  const parent = views.find((v) => v !== side && axisOf[v] !== axisOf[side])
  const point = planePoint(part, side, request.through?.text)
  return { kind: 'section', letter: request.letter, extent: request.extent, side, point, ...(parent ? { parent } : {}) }
}

function chooseSide(part: Part, request: SectionRequest, views: readonly Side[]): Side {
  const free = freeSides(part, views)
  const along = free.filter((s) => !part.axis || Math.abs(dot(part.axis.direction, FRAMES[s].toViewer)) < 1e-9)
  return sideOfMostCuts(part, request, along.length > 0 ? along : free) ?? order(part)[0]!
}

/** Sides of directions in which no view is drawn yet. */
export const freeSides = (part: Part, views: readonly Side[]): readonly Side[] =>
  order(part).filter((s) => !views.some((v) => axisOf[v] === axisOf[s]))

/** The side, of several the first, from which a section cuts most holes and bores along their axes. */
export function sideOfMostCuts(part: Part, request: SectionRequest, sides: readonly Side[]): Side | undefined {
  let best: { side: Side; cuts: number } | undefined
  for (const side of sides) {
    const cuts = axesCut(part, side, planePoint(part, side, request.through?.text)).length
    if (!best || cuts > best.cuts) best = { side, cuts }
  }
  return best?.side
}

/** A point for the cutting plane that faces `side`: through what is named, through the part's axis, or through most axes. */
function planePoint(part: Part, side: Side, through?: string): Vec3 {
  const normal = FRAMES[side].toViewer
  const middle = scale(add(part.body.box.min, part.body.box.max), 0.5)
  const named = through === undefined ? undefined : featureNamed(part, through)
  if (!named && part.axis && Math.abs(dot(part.axis.direction, normal)) < 1e-9) return part.axis.point
  const axes = allAxes(part, named).filter((a) => Math.abs(dot(a.direction, normal)) < 1e-9)
  let best: Vec3 = named ? (named.members[0]?.point ?? middle) : middle
  let most = axes.filter((a) => liesInPlane(a, best, normal)).length
  for (const axis of axes) {
    const cut = axes.filter((a) => liesInPlane(a, axis.point, normal)).length
    if (cut > most) [best, most] = [axis.point, cut]
  }
  return best
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
