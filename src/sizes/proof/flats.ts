import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm } from '../../geometry/vec3.ts'
import type { Statement } from '../dimension.ts'
import { distinct, type Plain } from './condition.ts'
import { axisIndex } from './elements.ts'
import type { Model, PlaneReading, Values } from './model.ts'

/** Flats given across two of them stand as far from the axis as each other, and evenly turned about it. */
export function flatsAlike(model: Model, said: Extract<Statement, { kind: 'flats alike' }>): Plain[] | string {
  const { axis, at } = said
  const k = axisIndex(axis)
  const planes = said.faces.map((f) => model.readings[model.elementOf.get(f)?.id ?? -1])
  if (k === undefined || planes.length < 2 || planes.some((p) => p?.form !== 'plane'))
    return 'no flats stand where the size across them points'
  const flats = planes as readonly PlaneReading[]
  const others = ([0, 1, 2] as const).filter((i) => i !== k)
  const centre = others.map((i) => model.level(i, at[i], at))
  if (centre.some((c) => !c)) return 'no axis stands between the flats'
  const inAxis = centre.flatMap((c) => c!.uses)
  const point = (x: Values): Vec3 => {
    const p: [number, number, number] = [0, 0, 0]
    others.forEach((i, j) => {
      p[i] = centre[j]!.of(x)
    })
    return p
  }
  /** Distance from the axis: the side on which a plane stands is that of the solid as drawn. */
  const apart = (plane: PlaneReading) => {
    const from = (x: Values) => plane.offset(x) - dot(plane.normal(x), point(x))
    const sign = Math.sign(from(model.values)) || 1
    return { sign, of: (x: Values) => sign * from(x) }
  }
  const [first, ...rest] = flats.map((plane) => ({ plane, ...apart(plane) }))
  return rest.flatMap(({ plane, sign, of }): Plain[] => {
    const equal: Plain = {
      uses: distinct([...first!.plane.uses, ...plane.uses, ...inAxis]),
      of: (x) => of(x) - first!.of(x),
      kind: 'equal',
    }
    if (plane.bar !== undefined) return [equal]
    const between = (x: Values) => {
      const [n, m] = [first!.plane.normal(x), plane.normal(x)]
      return model.scale * Math.atan2(norm(cross(n, m)), first!.sign * sign * dot(n, m))
    }
    return [equal, { uses: distinct([...first!.plane.uses, ...plane.uses]), of: between, kind: 'equally spaced' }]
  })
}
