import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot } from '../../geometry/vec3.ts'
import type { Statement } from '../dimension.ts'
import { distinct, type Plain } from './condition.ts'
import { axisIndex } from './elements.ts'
import type { Model, Reading, RoundReading, Values } from './model.ts'

/**
 * Holes equally spaced round an axis: each meets it, at one place along it, evenly turned from the first and as deep.
 * Those that run along an axis of space share their places with the first already.
 */
export function ring(model: Model, said: Extract<Statement, { kind: 'ring' }>): Plain[] | string {
  const { axis } = said
  const k = axisIndex(axis)
  const members = said.members.map(({ faces }) => readingsOf(model, faces))
  const first = members[0]?.find((r): r is RoundReading => r.form === 'cylinder')
  if (k === undefined || !first) return 'no holes stand round the axis'
  const across = ([0, 1, 2] as const).filter((i) => i !== k)
  const centre = across.map((i) => model.level(i, said.at[i], said.at))
  if (centre.some((c) => !c)) return 'no axis stands in the middle of the holes'
  const inAxis = centre.flatMap((c) => c!.uses)
  const fromAxis = (p: Vec3, x: Values): Vec3 => {
    const q: [number, number, number] = [...p]
    across.forEach((i, j) => {
      q[i] -= centre[j]!.of(x)
    })
    q[k] = 0
    return q
  }
  /** How far a direction is turned from where it stands, as a length. */
  const turn = (of: (x: Values) => Vec3, x: Values) => {
    const [now, d] = [of(model.values), of(x)]
    return model.scale * Math.atan2(dot(cross(now, d), axis), dot(now, d))
  }
  /** How far out a floor or the point of a drill lies. */
  const height = (r: Reading, x: Values): number =>
    r.form === 'plane'
      ? Math.abs(r.offset(x) + dot(r.normal(x), fromAxis([0, 0, 0], x)))
      : dot(fromAxis(r.point(x), x), fromAxis(r.point(model.values), model.values)) /
        (Math.hypot(...fromAxis(r.point(model.values), model.values)) || 1)

  return members.flatMap((own, m) =>
    own.flatMap((r, j): Plain[] => {
      if (m === 0 || !isOffAxes(r)) return []
      const like = members[0]!.filter((o) => o.form === r.form)[own.slice(0, j).filter((o) => o.form === r.form).length]
      const both = distinct([...first.uses, ...r.uses])
      const level = like && distinct([...like.uses, ...r.uses, ...inAxis])
      const asDeep: Plain[] = level ? [{ uses: level, of: (x) => height(r, x) - height(like, x), kind: 'equal' }] : []
      if (r.form === 'plane')
        return [{ uses: both, of: (x) => turn(r.normal, x) - turn(first.direction, x), kind: 'parallel' }, ...asDeep]
      const off = (x: Values) => dot(fromAxis(r.point(x), x), cross(axis, r.direction(x)))
      return [
        { uses: both, of: (x) => r.point(x)[k] - first.point(x)[k], kind: 'aligned' },
        { uses: distinct([...r.uses, ...inAxis]), of: off, kind: 'aligned' },
        { uses: both, of: (x) => turn(r.direction, x) - turn(first.direction, x), kind: 'equally spaced' },
        ...(r.form === 'cone' ? asDeep : []),
      ]
    }),
  )
}

/** One of each surface that the member's faces lie on. */
function readingsOf(model: Model, faces: readonly number[]): Reading[] {
  const ids = distinct(faces.flatMap((f) => model.elementOf.get(f)?.id ?? []))
  return ids.flatMap((id) => model.readings[id] ?? [])
}

const isOffAxes = (r: Reading): boolean => (r.form === 'plane' ? r.bar === undefined : r.bars.every((bar) => bar < 0))
