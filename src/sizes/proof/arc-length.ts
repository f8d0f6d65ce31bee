import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import { distinct, type Plain } from './condition.ts'
import { cornerOf } from './corner.ts'
import type { Model, Values } from './model.ts'

/** Radius times the angle between the two corners that end the arc, seen from its axis. */
export function arcLength(model: Model, faces: readonly number[]): Plain[] | string {
  const element = faces.map((f) => model.elementOf.get(f)).find((e) => e)
  const arc = element && model.readings[element.id]
  if (!element || arc?.form !== 'cylinder') return 'no arc stands where the length along it points'
  const now = model.values
  const axis = arc.direction(now)
  const own = model.body.edges.filter(
    ({ curve, faces: beside }) =>
      curve.kind === 'line' &&
      norm(cross(sub(curve.b, curve.a), axis)) / norm(sub(curve.b, curve.a)) < 1e-7 &&
      beside.some((f) => f !== undefined && element.faces.includes(f)),
  )
  const corners = own.flatMap((edge) => cornerOf(model, edge) ?? [])
  const [a, b] = corners
  if (!a || !b || corners.length !== 2) return 'the arc does not end at two corners'
  const parts = (x: Values) => {
    const c = arc.point(x)
    const [p, q] = [sub(a.point(x), c), sub(b.point(x), c)]
    return { along: dot(p, q), across: dot(cross(p, q), axis) }
  }
  const first = parts(now)
  const turned = Math.atan2(first.across, first.along)
  const wall = model.body.edges.find(
    ({ curve, faces: beside }) =>
      curve.kind === 'circle' && beside.some((f) => f !== undefined && element.faces.includes(f)),
  )
  const sweep = wall?.curve.kind === 'circle' ? Math.abs(wall.curve.sweep) : Math.abs(turned)
  // the corners alone leave open which way round the arc goes
  const sense = Math.abs(Math.abs(turned) - sweep) < 1e-6 ? Math.sign(turned) : -Math.sign(turned)
  return [
    {
      uses: distinct([...arc.uses, ...a.uses, ...b.uses]),
      of: (x) => {
        const { along, across } = parts(x)
        // Turn from where it stands, so that no branch cut comes near.
        const more = Math.atan2(
          across * Math.cos(turned) - along * Math.sin(turned),
          along * Math.cos(turned) + across * Math.sin(turned),
        )
        return x[arc.radius]! * (sweep + sense * more)
      },
      kind: 'size',
    },
  ]
}
