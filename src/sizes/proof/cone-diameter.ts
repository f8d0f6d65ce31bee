import { dot, sub } from '../../geometry/vec3.ts'
import type { Statement } from '../dimension.ts'
import { asFirst, distinct, type Plain } from './condition.ts'
import { cornerOf } from './corner.ts'
import { type Element, SAME } from './elements.ts'
import type { Model, PlaneReading, RoundReading, Values } from './model.ts'
import { mouthOf } from './mouth.ts'

/**
 * The circle of that diameter (mm) in which each cone meets a plane across its axis: at a border of its face, else where
 * the cone would meet it but for a chamfer or round (a taper's end is sized at the sharp corner: common practice, no
 * source). A countersink in a round surface has it at the crown.
 */
export function coneDiameters(model: Model, said: Extract<Statement, { kind: 'cone diameter' }>): Plain[] | string {
  const { faces, diameter, like } = said
  const mate = like && mateOf(model, like)
  const result: Plain[] = []
  const seen = new Set<number>()
  for (const face of faces) {
    const element = model.elementOf.get(face)
    const cone = element && model.readings[element.id]
    if (!element || cone?.form !== 'cone' || seen.has(element.id)) continue
    seen.add(element.id)
    const along =
      alongAtBorder(model, element, cone, diameter) ??
      alongBeyond(model, element, cone, diameter) ??
      alongAtMouth(model, element, cone, diameter)
    if (!along) continue
    const circle = {
      uses: distinct([...cone.uses, ...along.uses]),
      of: (x: Values) => 2 * Math.abs(along.of(x)) * Math.tan(x[cone.half]! / model.scale),
    }
    result.push(asFirst(mate ?? result[0] ?? circle, circle, !mate && result.length === 0))
  }
  return result.length > 0 ? result : 'no circle of that diameter stands on the cone'
}

/** Diameter of the first cylinder among these faces. */
function mateOf(model: Model, faces: readonly number[]): Omit<Plain, 'kind'> | undefined {
  const round = faces
    .map((f) => model.readings[model.elementOf.get(f)?.id ?? -1])
    .find((r): r is RoundReading => r?.form === 'cylinder')
  return round && { uses: [round.radius], of: (x) => 2 * x[round.radius]! }
}

type Along = Pick<Plain, 'uses' | 'of'>

/** From the cone's point to the plane, as the cone's axis runs. */
function alongTo(cone: RoundReading, plane: PlaneReading): Along {
  return {
    uses: plane.uses,
    of: (x) => {
      const u = cone.direction(x)
      return Math.sign(dot(plane.normal(x), u)) * plane.offset(x) - dot(cone.point(x), u)
    },
  }
}

/** At a border of the cone's face that has the diameter: to the plane there, or to the circle where another cone meets it. */
function alongAtBorder(model: Model, element: Element, cone: RoundReading, diameter: number): Along | undefined {
  for (const edge of model.body.edges) {
    const { curve, faces } = edge
    if (curve.kind !== 'circle' || Math.abs(curve.r - diameter / 2) > SAME) continue
    if (!faces.some((f) => f !== undefined && element.faces.includes(f))) continue
    const other = faces.map((f) => (f === undefined ? undefined : model.elementOf.get(f))).find((e) => e !== element)
    const reading = other && model.readings[other.id]
    if (reading?.form === 'plane') return alongTo(cone, reading)
    if (reading?.form !== 'cone') continue
    const corner = cornerOf(model, edge)
    if (corner) return { uses: corner.uses, of: (x) => dot(sub(corner.point(x), cone.point(x)), cone.direction(x)) }
  }
  return undefined
}

/** To the plane in which the cone, run on beyond its face, would have the diameter. */
function alongBeyond(model: Model, element: Element, cone: RoundReading, diameter: number): Along | undefined {
  const x = model.values
  const u = cone.direction(x)
  const border = model.body.edges.find(
    ({ curve, faces }) => curve.kind === 'circle' && faces.some((f) => f !== undefined && element.faces.includes(f)),
  )
  if (border?.curve.kind !== 'circle') return undefined
  const side = Math.sign(dot(sub(border.curve.axes.origin, cone.point(x)), u))
  const wanted = (side * diameter) / 2 / Math.tan(x[cone.half]! / model.scale)
  const plane = model.readings.find(
    (r): r is PlaneReading =>
      r?.form === 'plane' &&
      Math.abs(Math.abs(dot(r.normal(x), u)) - 1) < 1e-12 &&
      Math.abs(alongTo(cone, r).of(x) - wanted) < SAME,
  )
  return plane && alongTo(cone, plane)
}

/** To the crown of the round that a countersink is sunk into. */
function alongAtMouth(model: Model, element: Element, cone: RoundReading, diameter: number): Along | undefined {
  const x = model.values
  const u = cone.direction(x)
  const tip = dot(cone.point(x), u)
  const deep = diameter / 2 / Math.tan(x[cone.half]! / model.scale)
  for (const side of [1, -1]) {
    const crown = mouthOf(model, element, diameter / 2, u, tip + side * deep)
    if (crown) return { uses: crown.uses, of: (v) => crown.of(v) - dot(cone.point(v), u) }
  }
  return undefined
}
