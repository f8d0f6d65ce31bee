import { printFeature } from '../../brief/print-feature.ts'
import { printStock } from '../../brief/print-stock.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { dot, norm, sub } from '../../geometry/vec3.ts'
import type { Part } from '../../part/part.ts'
import { type Element, SAME } from './elements.ts'
import { featureOf } from './feature-of.ts'
import type { Model, Unknown } from './model.ts'

const ENDS = [
  ['left', 'right'],
  ['front', 'rear'],
  ['bottom', 'top'],
] as const

/**
 * What to write in the brief so that the unknown is fixed, in the brief's unit: a place of an axis or side, the statement
 * of the feature that it belongs to, the turned step, the move of the outline, else the bare size.
 */
export function lineFor(part: Part, model: Model, lead: Unknown): string {
  const element = lead.elements.length > 0 ? model.elements[lead.elements[0]!] : undefined
  const value = model.values[lead.id]!
  const say = (mm: number) => lengthWords(part, mm)
  const statement = element && statementOf(part, element)
  const isAxis = element?.surface.kind !== 'plane'
  if (lead.kind === 'position' && (isAxis || !statement)) return placeWords(part, model, lead, value)
  if (lead.kind === 'radius') return isWhole(model, lead) ? `⌀${say(2 * value)}` : `R${say(value)}`
  if (statement) return statement
  if (lead.kind === 'angle') return `${degrees((2 * value) / model.scale)}°`
  if (element) return moveWords(part, model, element) ?? leanWords(part, model, lead, element)
  return placeWords(part, model, lead, value)
}

/** Round all the way: by its diameter, else by its radius. */
export function isWhole(model: Model, lead: Unknown): boolean {
  const faces = model.elements[lead.elements[0]!]!.faces
  return model.body.edges.some(
    (e) =>
      e.curve.kind === 'circle' &&
      Math.abs(e.curve.sweep) > Math.PI * 1.9 &&
      e.faces.some((f) => f !== undefined && faces.includes(f)),
  )
}

function lengthWords(part: Part, mm: number): string {
  return part.brief.header.units === 'inch'
    ? (mm / 25.4).toFixed(3).replace(/^0\./, '.')
    : String(Math.round(mm * 1000) / 1000)
}

const degrees = (radians: number): number => Math.round((radians * 180e3) / Math.PI) / 1000

/** `60 from left`, or from the other side where that one alone is a face, or where it is that side itself. */
function placeWords(part: Part, model: Model, lead: Unknown, at: number): string {
  const k = lead.along ?? 0
  const { min, max } = model.body.box
  const [low, high] = ENDS[k]
  const isFace = (name: string, level: number) =>
    part.data.some((d) => d.kind === 'plane' && d.id === name && Math.abs(d.point[k] - level) < SAME)
  const isLow = Math.abs(at - min[k]) < SAME
  if (isLow || (!isFace(low, min[k]) && isFace(high, max[k]))) return `${lengthWords(part, max[k] - at)} from ${high}`
  return `${lengthWords(part, at - min[k])} from ${low}`
}

/** The feature's own statement, or the turned step it is, as the brief has it. */
function statementOf(part: Part, element: Element): string | undefined {
  const own = featureOf(part, element.faces)
  if (own?.feature) {
    const { keyword, lines } = printFeature(own.feature)
    return `${keyword}  ${lines[0] ?? ''}`
  }
  const { stock } = part.brief
  if (!own || stock?.kind !== 'turned') return undefined
  const step = printStock(stock).lines.find((line) => line.startsWith(`${own.id} `))
  return step?.replace(/\s+/g, ' ')
}

/** A sloping side of an outline as its move: `slope left 30 up 30`. */
function moveWords(part: Part, model: Model, element: Element): string | undefined {
  const { stock } = part.brief
  if (stock?.kind !== 'outline' || element.surface.kind !== 'plane') return undefined
  const thin = ENDS.findIndex((ends) => ends.some((e) => e === stock.face))
  const [across, up] = [0, 1, 2].filter((i) => i !== thin) as [0 | 1 | 2, 0 | 1 | 2]
  const caps = model.body.edges.flatMap(({ curve, faces }) => {
    if (curve.kind !== 'line' || !faces.some((f) => f !== undefined && element.faces.includes(f))) return []
    return Math.abs(curve.a[thin]! - curve.b[thin]!) < SAME ? [sub(curve.b, curve.a)] : []
  })
  if (caps.length === 0) return undefined
  const longest = caps.reduce((a, b) => (norm(b) > norm(a) ? b : a))
  const [dx, dy] = longest[up] < 0 ? [-longest[across], -longest[up]] : [longest[across], longest[up]]
  const way = dx < 0 ? 'left' : 'right'
  return `slope ${way} ${lengthWords(part, Math.abs(dx))} up ${lengthWords(part, dy)}`
}

/** The lean of a plane or axis against the nearest of the part's axes, or its distance square to itself from a corner. */
function leanWords(part: Part, model: Model, lead: Unknown, element: Element): string {
  const { surface } = element
  const axis: Vec3 = surface.kind === 'spline' ? [0, 0, 1] : surface.axes.z
  const k = ([0, 1, 2] as const).reduce((a, b) => (Math.abs(axis[b]) > Math.abs(axis[a]) ? b : a))
  if (lead.kind === 'direction')
    return `${degrees(Math.acos(Math.min(1, Math.abs(axis[k]))))}° to the ${ENDS[k][0]} face`
  const at = surface.kind === 'spline' ? 0 : dot(surface.axes.origin, axis)
  const place = lengthWords(part, Math.abs(at - dot(model.body.box.min, axis)))
  return `${place} from the ${ENDS.map((e) => e[0]).join(' ')} corner`
}
