import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { BodyEdge } from '../../kernel/body.ts'
import type { Reach } from '../dimension.ts'
import { cornerOf } from './corner.ts'
import { type AxisIndex, axisIndex, SAME } from './elements.ts'
import type { Expression, Model, RoundReading } from './model.ts'
import { mouthOf } from './mouth.ts'
import { crownOfRim } from './rim.ts'

/**
 * What a size's end reaches on the solid, as a function of the unknowns: the place along `direction` of a plane or axis
 * there; else of the farthest point of a round; else of a corner between two surfaces. Undefined: nothing stands there.
 */
export function reached(model: Model, reach: Reach, direction: Vec3): Expression | undefined {
  if (reach.middle) {
    const walls = (reach.faces ?? []).filter((f) => model.elementOf.get(f)?.surface.kind === 'plane')
    const [a, b] = reach.middle.map(
      (at) =>
        ownAxis(model, at, reach.faces ?? [], direction) ??
        reached(model, { at, name: reach.name, faces: walls }, direction),
    )
    if (!a || !b) return undefined
    return { uses: [...new Set([...a.uses, ...b.uses])], of: (x) => (a.of(x) + b.of(x)) / 2 }
  }
  const k = axisIndex(direction)
  if (k === undefined) return reachedObliquely(model, reach, direction)
  const sign = Math.sign(direction[k])
  const signed = (e: Expression): Expression =>
    sign > 0 ? e : { uses: e.uses, of: (x) => -e.of(x), ...(e.bar === undefined ? {} : { bar: e.bar }) }
  const own =
    ownLevel(model, reach, k) ??
    ownEdge(model, reach, k) ??
    crownOfRim(model, reach, k) ??
    ownCorner(model, reach, k) ??
    model.level(k, reach.at[k], reach.at, reach.faces)
  if (own) return signed(own)
  const candidates: { far: number; make: () => Expression | undefined }[] = []
  for (const element of model.elements) {
    const reading = model.readings[element.id]
    if (!reading || reading.form === 'plane' || reading.radius < 0 || reading.form === 'torus') continue
    if (element.along === k || (element.along === undefined && reading.form !== 'sphere')) continue
    if (reading.form === 'cone') continue
    const p = reading.point(model.values)
    for (const side of [1, -1]) {
      if (Math.abs(p[k] + side * model.values[reading.radius]! - reach.at[k]) > SAME) continue
      const across = ([0, 1, 2] as const).filter((i) => i !== k && (i !== element.along || reading.form === 'sphere'))
      const far = Math.hypot(...across.map((i) => p[i] - reach.at[i]))
      candidates.push({ far, make: () => farthest(reading, k, side) })
    }
  }
  for (const edge of model.body.edges) {
    const far = distanceAt(edge, k, reach.at)
    if (far === undefined) continue
    const isOwn = edge.faces.some((f) => f !== undefined && reach.faces?.includes(f))
    candidates.push({
      far: isOwn ? far : far + SAME,
      make: () => {
        const corner = cornerOf(model, edge)
        return corner && { uses: corner.uses, of: (x) => corner.point(x)[k] }
      },
    })
  }
  candidates.sort((a, b) => a.far - b.far)
  for (const candidate of candidates) {
    const made = candidate.make()
    if (made && Math.abs(made.of(model.values) - reach.at[k]) < SAME * 10) return signed(made)
  }
  return openingOf(model, reach, direction)
}

/** Where the hole that the reach is the mouth of begins on a round. */
function openingOf(model: Model, { mouth, at }: Reach, direction: Vec3): Expression | undefined {
  const hole = mouth?.faces.flatMap((f) => model.elementOf.get(f) ?? []) ?? []
  for (const element of hole) {
    const found = mouthOf(model, element, mouth!.r, direction, dot(at, direction))
    if (found) return found
  }
  return undefined
}

/** The place along an axis of the part of the round face among these whose axis goes through the point. */
function ownAxis(model: Model, at: Vec3, faces: readonly number[], direction: Vec3): Expression | undefined {
  const k = axisIndex(direction)
  if (k === undefined) return undefined
  const sign = Math.sign(direction[k])
  for (const face of faces) {
    const element = model.elementOf.get(face)
    const reading = element && model.readings[element.id]
    if (reading?.form !== 'cylinder' || element?.along === undefined || element.along === k) continue
    const p = reading.point(model.values)
    if (([0, 1, 2] as const).some((i) => i !== element.along && Math.abs(p[i] - at[i]) > SAME)) continue
    const bar = reading.bars[k]
    if (bar >= 0 && sign > 0) return { uses: [bar], of: (x) => x[bar]!, bar }
    return { uses: bar >= 0 ? [bar] : reading.uses, of: (x) => sign * reading.point(x)[k] }
  }
  return undefined
}

/** The place of the reach's own plane, or of its own round's farthest point, whatever else stands level with it. */
function ownLevel(model: Model, reach: Reach, k: AxisIndex): Expression | undefined {
  for (const face of reach.faces ?? []) {
    const element = model.elementOf.get(face)
    const reading = element && model.readings[element.id]
    if (!element || !reading) continue
    if (reading.form === 'plane') {
      if (element.along !== k) continue
      const sign = Math.sign(reading.normal(model.values)[k])
      if (Math.abs(sign * reading.offset(model.values) - reach.at[k]) > SAME) continue
      const { bar } = reading
      if (bar !== undefined) return { uses: [bar], of: (x) => x[bar]!, bar }
      return { uses: reading.uses, of: (x) => sign * reading.offset(x) }
    }
    if (reading.form !== 'cylinder' || element.along === undefined || element.along === k) continue
    const p = reading.point(model.values)
    const side = Math.sign(reach.at[k] - p[k])
    if (Math.abs(p[k] + side * model.values[reading.radius]! - reach.at[k]) > SAME) continue
    return farthest(reading, k, side)
  }
  return undefined
}

/** The border there of the reach's own slope or cone, whatever else stands level with it: a chamfer's, a drill point's. */
function ownEdge(model: Model, reach: Reach, k: AxisIndex): Expression | undefined {
  let best: { far: number; edge: BodyEdge } | undefined
  for (const edge of model.body.edges) {
    const slopes = edge.faces.some((f) => f !== undefined && reach.faces?.includes(f) && isSlope(model, f))
    const far = slopes ? distanceAt(edge, k, reach.at) : undefined
    if (far !== undefined && (!best || far < best.far)) best = { far, edge }
  }
  const corner = best && cornerOf(model, best.edge)
  if (!corner || Math.abs(corner.point(model.values)[k] - reach.at[k]) > SAME * 10) return undefined
  return { uses: corner.uses, of: (x) => corner.point(x)[k] }
}

/** A corner named by its point alone, whatever plane or axis is level with it: where the sides beside it meet. */
function ownCorner(model: Model, reach: Reach, k: AxisIndex): Expression | undefined {
  if (reach.corner !== true) return undefined
  for (const edge of model.body.edges) {
    if (edge.curve.kind !== 'line') continue
    const along = sub(edge.curve.b, edge.curve.a)
    // The corner's own edge runs through the thickness, across the size; one in line with it elsewhere is another's.
    if (Math.abs(along[k]) > SAME || (distanceAt(edge, k, reach.at) ?? Infinity) > SAME) continue
    const corner = cornerOf(model, edge)
    if (corner) return { uses: corner.uses, of: (x) => corner.point(x)[k] }
  }
  return undefined
}

function isSlope(model: Model, face: number): boolean {
  const element = model.elementOf.get(face)
  const form = element && model.readings[element.id]?.form
  return form === 'cone' || (form === 'plane' && element?.along === undefined)
}

/** The place along `k` of a round's farthest point to one side. */
function farthest(reading: RoundReading, k: AxisIndex, side: number): Expression {
  const bar = reading.bars[k]
  const uses = bar >= 0 ? [bar, reading.radius] : reading.uses
  return { uses, of: (x) => reading.point(x)[k] + side * x[reading.radius]! }
}

/** How far an edge that reads as a point or level along `k` lies from `at`; undefined when it is not at that level. */
function distanceAt(edge: BodyEdge, k: AxisIndex, at: Vec3): number | undefined {
  const { curve } = edge
  if (curve.kind === 'line') {
    if (Math.abs(curve.a[k] - at[k]) > SAME || Math.abs(curve.b[k] - at[k]) > SAME) return undefined
    const d = sub(curve.b, curve.a)
    const length = norm(d)
    const t = Math.min(1, Math.max(0, dot(sub(at, curve.a), d) / (length * length)))
    return Math.hypot(...[0, 1, 2].map((i) => curve.a[i]! + t * d[i]! - at[i]!))
  }
  if (curve.kind === 'circle') {
    if (axisIndex(curve.axes.z) !== k || Math.abs(curve.axes.origin[k] - at[k]) > SAME) return undefined
    const out = sub(at, curve.axes.origin)
    return Math.abs(norm(cross(out, curve.axes.z)) - curve.r)
  }
  return undefined
}

/** Along a direction off the axes: planes square to it, axes, corners. */
function reachedObliquely(model: Model, reach: Reach, direction: Vec3): Expression | undefined {
  const place = dot(reach.at, direction)
  for (const element of model.elements) {
    const reading = model.readings[element.id]
    if (!reading) continue
    const x = model.values
    if (reading.form === 'plane') {
      const n = reading.normal(x)
      if (norm(cross(n, direction)) > 1e-7) continue
      const sign = Math.sign(dot(n, direction))
      if (Math.abs(sign * reading.offset(x) - place) > SAME) continue
      return { uses: reading.uses, of: (v) => sign * reading.offset(v) }
    }
    if (Math.abs(dot(reading.direction(x), direction)) > 1e-7) continue
    const p = reading.point(x)
    const off = sub(reach.at, p)
    const u = reading.direction(x)
    if (norm(cross(off, u)) > SAME) continue
    return { uses: reading.uses, of: (v) => dot(reading.point(v), direction) }
  }
  for (const edge of model.body.edges) {
    if (edge.curve.kind !== 'line') continue
    const d = sub(edge.curve.b, edge.curve.a)
    if (norm(cross(sub(reach.at, edge.curve.a), d)) / norm(d) > SAME) continue
    const corner = cornerOf(model, edge)
    if (corner) return { uses: corner.uses, of: (v) => dot(corner.point(v), direction) }
  }
  return undefined
}
