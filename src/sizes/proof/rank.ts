import { Matrix, SingularValueDecomposition } from 'ml-matrix'
import type { Body } from '../../kernel/body.ts'
import type { Dimension } from '../dimension.ts'
import { type AxisIndex, apexOf, axisIndex, elementsOf, SAME } from './elements.ts'
import { gradient } from './elimination.ts'
import { type Equation, equationsOf } from './equations.ts'
import {
  AXES,
  DOF,
  type Expression,
  type Making,
  type Model,
  PLANES,
  type Reading,
  round,
  tilt,
  tiltedPlane,
  tiltFrame,
  type Unknown,
} from './model.ts'
import { tangencies } from './tangency.ts'

export interface RankVerdict {
  readonly parameters: number
  readonly rank: number
  /** Freedoms that no size or condition fixes. */
  readonly missing: number
  /** Sizes that fix nothing new. */
  readonly repeated: number
}

/**
 * The same judgement by another road: every surface keeps all its parameters, tilts included; square, coaxial and
 * aligned are written out as equations; the rank of the whole constraint Jacobian comes from its singular values.
 */
export function rankOf(
  body: Body,
  making: Making,
  dimensions: readonly Pick<Dimension, 'id' | 'states' | 'reference'>[],
): RankVerdict {
  const { model, conditions } = looseModel(body, making)
  const { equations } = equationsOf(model, dimensions)
  const implied = [...conditions, ...tangencies(model), ...equations.filter((e) => e.kind !== 'size')]
  const sizes = equations.filter((e) => e.kind === 'size')
  const rows = (list: readonly Equation[]) => list.map((e) => gradient(e, model.values, model.scale))
  const alone = rank(rows(implied), model.unknowns.length)
  const whole = rank(rows([...implied, ...sizes]), model.unknowns.length)
  return {
    parameters: model.unknowns.length,
    rank: whole,
    missing: model.unknowns.length - 3 - whole,
    repeated: sizes.length - (whole - alone),
  }
}

/** Rank from singular values, the rows first brought to unit length. */
function rank(rows: readonly ReadonlyMap<number, number>[], columns: number): number {
  const kept = rows.filter((row) => row.size > 0)
  if (kept.length === 0) return 0
  const matrix = Matrix.zeros(kept.length, columns)
  kept.forEach((row, i) => {
    const length = Math.sqrt([...row.values()].reduce((sum, v) => sum + v * v, 0))
    for (const [u, v] of row) matrix.set(i, u, v / length)
  })
  const { diagonal } = new SingularValueDecomposition(matrix, {
    computeLeftSingularVectors: false,
    computeRightSingularVectors: false,
    autoTranspose: true,
  })
  const most = Math.max(...diagonal)
  return diagonal.filter((s) => s > most * 1e-7).length
}

function looseModel(body: Body, making: Making): { model: Model; conditions: Equation[] } {
  const clans = new Map<number, string>()
  for (const circle of making.circles)
    for (const member of circle.members) for (const face of member.faces) clans.set(face, member.id)
  const elements = elementsOf(body, making.together, clans)
  const size = Math.max(...[0, 1, 2].map((k) => body.box.max[k]! - body.box.min[k]!), 1e-3)
  const unknowns: Unknown[] = []
  const values: number[] = []
  const conditions: Equation[] = []
  const add = (kind: Unknown['kind'], value: number): number => {
    unknowns.push({ id: unknowns.length, kind, elements: [] })
    values.push(value)
    return unknowns.length - 1
  }
  const still = (unknown: number) =>
    conditions.push({ uses: [unknown], of: (x) => x[unknown]!, pair: [unknown, undefined], kind: 'tangent' })
  const readings: (Reading | undefined)[] = elements.map(({ surface, along }) => {
    if (surface.kind === 'spline') return undefined
    const from = unknowns.length
    const frame = tiltFrame(surface.axes.z)
    // Both tilts are unknowns here even where the drawing shows the element square.
    const loose = { ...frame, inPlane: false }
    const adder = (kind: Unknown['kind']) => add(kind, 0)
    let reading: Reading
    if (surface.kind === 'plane') reading = tiltedPlane(surface.axes.origin, surface.axes.z, loose, size, adder)
    else {
      const centre = surface.kind === 'cone' ? apexOf(surface) : surface.axes.origin
      if (surface.kind === 'sphere') {
        const bars: [number, number, number] = [
          add('position', centre[0]),
          add('position', centre[1]),
          add('position', centre[2]),
        ]
        reading = round('sphere', bars, undefined, surface.axes.z, centre, { radius: add('radius', surface.r) })
      } else {
        const own: { radius?: number; half?: number; major?: number } = {}
        const tilted = tilt(loose, size, adder, centre)
        if (surface.kind === 'cylinder') own.radius = add('radius', surface.r)
        if (surface.kind === 'cone') own.half = add('angle', Math.abs(surface.halfAngle) * size)
        if (surface.kind === 'torus') {
          own.radius = add('radius', surface.minor)
          own.major = add('radius', surface.major)
        }
        const end = surface.kind === 'cylinder' ? -1 : add('place along its axis', 0)
        reading = round(surface.kind, [-1, -1, -1], tilted, surface.axes.z, centre, own, undefined, end)
      }
    }
    if (unknowns.length - from !== DOF[surface.kind]) throw new Error(`parameters of a ${surface.kind}`)
    const tilts = unknowns.slice(from).filter((u) => u.kind === 'direction')
    if (along !== undefined) for (const t of tilts) still(t.id)
    else if (frame.inPlane && surface.kind !== 'sphere') still(tilts[1]!.id)
    return reading
  })
  const centres = making.circles.flatMap((circle) => {
    const k = axisIndex(circle.normal)
    return k === undefined ? [] : ([0, 1, 2] as const).filter((i) => i !== k).map((i) => ({ i, at: circle.centre[i] }))
  })

  // Levels: who stands where in each direction.
  const levels = ([0, 1, 2] as const).map((k) => {
    const list: {
      at: number
      clan: string
      point: readonly number[]
      expression: Expression
      across: readonly number[]
    }[] = []
    elements.forEach((element, i) => {
      const reading = readings[i]
      if (!reading) return
      const { surface, along } = element
      if (reading.form === 'plane') {
        if (along !== k) return
        const sign = Math.sign(reading.normal(values)[k])
        const expression = { uses: reading.uses, of: (x: ArrayLike<number>) => sign * reading.offset(x) }
        list.push({ at: expression.of(values), clan: PLANES, point: [], expression, across: [] })
      } else if (surface.kind === 'sphere' || (along !== undefined && along !== k)) {
        const p = reading.point(values)
        const onLine = making.circles.some(
          (c) => c.members.some((m) => m.id === element.clan) && Math.abs(c.centre[k] - p[k]) < SAME,
        )
        const across = [0, 1, 2].filter((n) => n !== k && n !== along)
        const expression = { uses: reading.uses, of: (x: ArrayLike<number>) => reading.point(x)[k] }
        list.push({ at: p[k], clan: onLine ? AXES : element.clan || AXES, point: p, expression, across })
      }
    })
    for (const { i, at } of centres) {
      if (i !== k || list.some((l) => l.clan === AXES && Math.abs(l.at - at) < SAME)) continue
      const unknown = add('position', at)
      const expression = { uses: [unknown], of: (x: ArrayLike<number>) => x[unknown]! }
      list.push({ at, clan: AXES, point: [], expression, across: [] })
    }
    list.sort((a, b) => a.at - b.at)
    list.forEach((one, i) => {
      const mate = list.slice(0, i).findLast((l) => l.clan === one.clan && Math.abs(l.at - one.at) < SAME)
      if (!mate) return
      const uses = [...new Set([...mate.expression.uses, ...one.expression.uses])]
      conditions.push({ uses, of: (x) => one.expression.of(x) - mate.expression.of(x), kind: 'tangent' })
    })
    return list
  })
  const level = (k: AxisIndex, coordinate: number, at?: readonly number[]): Expression | undefined => {
    const near = levels[k]!.filter((l) => Math.abs(l.at - coordinate) < SAME)
    const close = near.find(
      (l) =>
        l.clan !== PLANES &&
        l.point.length > 0 &&
        at &&
        l.across.every((i) => Math.abs(l.point[i]! - at[i]!) < SAME * 10),
    )
    const of = (clan: string) => near.find((l) => l.clan === clan)
    const shared = at ? (of(PLANES) ?? of(AXES)) : (of(AXES) ?? of(PLANES))
    return (close ?? shared ?? near[0])?.expression
  }
  const elementOf = new Map(elements.flatMap((e) => e.faces.map((face) => [face, e] as const)))
  return {
    model: {
      body,
      elements,
      elementOf,
      readings,
      unknowns,
      values,
      scale: size,
      level,
      freedoms: 0,
      square: 0,
      coaxial: 0,
      aligned: 0,
      freeForm: [],
    },
    conditions,
  }
}
