import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { Equation } from './condition.ts'
import { type Element, SAME } from './elements.ts'
import type { Model, PlaneReading, RoundReading, Values } from './model.ts'

/**
 * Conditions of tangency, one for each pair of surfaces that run into each other smoothly: those that the drawing implies,
 * or (`ends`) those of the ends of slots that are said to be round from side to side.
 */
export function tangencies(model: Model, ends?: ReadonlySet<Element>): Equation[] {
  const result: Equation[] = []
  const seen = new Set<string>()
  for (const edge of model.body.edges) {
    const [fa, fb] = edge.faces
    // A plane and an arc, or two arcs, may also touch in a cusp, which is no smooth edge.
    const mayTouch = edge.curve.kind === 'line' && !ends
    if (fb === undefined || !(edge.smooth || mayTouch)) continue
    const [a, b] = [model.elementOf.get(fa), model.elementOf.get(fb)]
    if (!a || !b || a === b) continue
    if (edge.curve.kind === 'line' && model.byChance(a.faces, b.faces)) continue
    const ofEnd = model.roundEnds.has(a) || model.roundEnds.has(b)
    if (ends ? !ends.has(a) && !ends.has(b) : ofEnd) continue
    const key = a.id < b.id ? `${a.id}/${b.id}` : `${b.id}/${a.id}`
    if (seen.has(key)) continue
    const [ra, rb] = [model.readings[a.id], model.readings[b.id]]
    if (!ra || !rb) continue
    const of = contact(ra, rb, model) ?? contact(rb, ra, model)
    if (!edge.smooth && !(of && Math.abs(of(model.values)) < SAME)) continue
    seen.add(key)
    if (of) result.push({ uses: [...new Set([...ra.uses, ...rb.uses])], of, kind: ends ? 'full round' : 'tangent' })
  }
  return result
}

/** A function that is nothing where the two touch; undefined for pairs whose touching is not counted. */
function contact(
  a: PlaneReading | RoundReading,
  b: PlaneReading | RoundReading,
  model: Model,
): ((x: Values) => number) | undefined {
  const now = model.values
  if (a.form === 'plane') {
    if (b.form === 'plane' || b.form === 'cone') return undefined
    const off = (x: Values) => dot(a.normal(x), b.point(x)) - a.offset(x)
    const side = off(now) < 0 ? -1 : 1
    return (x) => off(x) - side * x[b.radius]!
  }
  if (b.form === 'plane') return undefined
  if (a.form === 'cylinder' && b.form === 'cylinder') {
    if (norm(cross(a.direction(now), b.direction(now))) > 1e-7) return undefined
    const apart = (x: Values) => norm(cross(sub(b.point(x), a.point(x)), a.direction(x)))
    const [p, q, d] = [now[a.radius]!, now[b.radius]!, apart(now)]
    // Outside each other, or the smaller within the larger.
    if (Math.abs(d - p - q) < Math.abs(d - Math.abs(p - q))) return (x) => apart(x) - x[a.radius]! - x[b.radius]!
    const sign = Math.sign(p - q)
    return (x) => apart(x) - sign * (x[a.radius]! - x[b.radius]!)
  }
  if (a.form === 'cylinder' && b.form === 'torus') {
    const sign = Math.sign(now[a.radius]! - now[b.major]!)
    return (x) => x[a.radius]! - x[b.major]! - sign * x[b.radius]!
  }
  if (a.form === 'cylinder' && b.form === 'sphere') return (x) => x[a.radius]! - x[b.radius]!
  if (a.form === 'cone' && b.form === 'torus') {
    // Distance of the tube's centre from the cone's slant line, in the plane through the axis.
    const off = (x: Values) => {
      const u = a.direction(x)
      const up = dot(sub(b.point(x), a.point(x)), u)
      const half = x[a.half]! / model.scale
      return x[b.major]! * Math.cos(half) - Math.abs(up) * Math.sin(half)
    }
    const side = Math.sign(off(now))
    return (x) => off(x) - side * x[b.radius]!
  }
  return undefined
}
