import { Matrix, SingularValueDecomposition } from 'ml-matrix'
import type { Vec3 } from '../../geometry/vec.ts'
import type { Body } from '../../kernel/body.ts'
import type { Dimension } from '../dimension.ts'
import { arcsOf, byChanceOf, clansOf, type Making, PLANES, planeClansOf, STOCK } from './clans.ts'
import type { Equation } from './condition.ts'
import { type AxisIndex, apexOf, axisIndex, type Element, elementsOf, SAME } from './elements.ts'
import { gradient } from './elimination.ts'
import { equationsOf } from './equations.ts'
import { flushEnds } from './flush.ts'
import {
  DOF,
  type Expression,
  type Model,
  type Reading,
  round,
  tilt,
  tiltedPlane,
  tiltFrame,
  type Unknown,
  type Values,
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
  const implied = [
    ...conditions,
    ...tangencies(model),
    ...flushEnds(model),
    ...equations.filter((e) => e.kind !== 'size'),
  ]
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
  const elements = elementsOf(body, making.together, making.floors)
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
  const level = standing(making, { elements, readings, values, conditions, add })
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
      roundEnds: new Set((making.roundEnds ?? []).flatMap((face) => elementOf.get(face) ?? [])),
      edged: new Set(making.edged),
      byChance: byChanceOf(making),
    },
    conditions,
  }
}

/** A plane or axis with its level along one direction. */
interface Standing {
  readonly at: number
  /** Planes stand with planes, axes with those of their own feature. */
  readonly with: string
  /** Point and direction index of an axis. */
  readonly axis?: { readonly point: Vec3; readonly along: AxisIndex | undefined; readonly arc?: string | undefined }
  readonly faces?: readonly number[]
  readonly expression: Expression
}

interface Gathering {
  readonly elements: readonly Element[]
  readonly readings: readonly (Reading | undefined)[]
  readonly values: readonly number[]
  readonly conditions: Equation[]
  readonly add: (kind: Unknown['kind'], value: number) => number
}

/** Writes out who stands level with whom, and gives the look-up of levels that the statements use. */
function standing(making: Making, all: Gathering): Model['level'] {
  const { elements, readings, values, conditions, add } = all
  const clanOf = clansOf(making)
  const arcOf = arcsOf(making)
  const planeClan = planeClansOf(making)
  const sameLine = (a: NonNullable<Standing['axis']>, b: NonNullable<Standing['axis']>, k: AxisIndex) => {
    if (a.arc !== b.arc) return false
    // A round end, without a direction of its own, goes with any axis through its centre.
    const along = a.along ?? b.along
    if (along === undefined || (b.along !== undefined && b.along !== along) || along === k) return false
    return ([0, 1, 2] as const).every((i) => i === along || Math.abs(a.point[i] - b.point[i]) < SAME)
  }
  const centres = making.circles.map((circle) => {
    const along = axisIndex(circle.normal)
    return { circle, along, unknowns: new Map<AxisIndex, Expression>() }
  })
  const levels = ([0, 1, 2] as const).map((k): Standing[] => {
    const list: Standing[] = elements.flatMap((element, i): Standing[] => {
      const reading = readings[i]
      if (!reading) return []
      if (reading.form === 'plane') {
        if (element.along !== k) return []
        const sign = Math.sign(reading.normal(values)[k])
        const expression = { uses: reading.uses, of: (x: Values) => sign * reading.offset(x) }
        return [{ at: expression.of(values), with: planeClan(element.faces), expression }]
      }
      if (reading.form !== 'sphere' && (element.along === undefined || element.along === k)) return []
      const point = reading.point(values)
      const expression = { uses: reading.uses, of: (x: Values) => reading.point(x)[k] }
      const along = reading.form === 'sphere' ? undefined : element.along
      return [
        {
          at: point[k],
          with: clanOf(element.faces),
          axis: { point, along, arc: arcOf(element.faces) },
          faces: element.faces,
          expression,
        },
      ]
    })
    for (const centre of centres) {
      if (centre.along === undefined || centre.along === k) continue
      const axis = { point: centre.circle.centre, along: centre.along }
      const known = list.find((l) => l.axis && sameLine(l.axis, axis, k))
      const unknown = known ? -1 : add('position', axis.point[k])
      const expression = known?.expression ?? { uses: [unknown], of: (x: Values) => x[unknown]! }
      centre.unknowns.set(k, expression)
      if (!known) list.push({ at: axis.point[k], with: `centre ${centre.circle.id}`, axis, expression })
    }
    list.forEach((one, i) => {
      const crossed = list.find((l) => {
        if (one.with === STOCK || l.with !== STOCK || l.axis?.along === undefined || one.axis?.along === undefined)
          return false
        if (l.axis.arc !== undefined) return false
        return l.axis.along !== one.axis.along && Math.abs(l.at - one.at) < SAME
      })
      if (crossed) level(one.expression, crossed.expression)
      const mate = list
        .slice(0, i)
        .find(
          (l) =>
            Math.abs(l.at - one.at) < SAME &&
            (l.with === one.with || (l.axis && one.axis && sameLine(l.axis, one.axis, k))),
        )
      if (mate) level(one.expression, mate.expression)
      const own = centres.find((c) => c.circle.members.some((m) => `member ${m.id}` === one.with))
      const middle = own?.unknowns.get(k)
      if (own && middle && Math.abs(own.circle.centre[k] - one.at) < SAME) level(one.expression, middle)
    })
    return list
  })
  function level(a: Expression, b: Expression): void {
    const uses = [...new Set([...a.uses, ...b.uses])]
    conditions.push({ uses, of: (x) => a.of(x) - b.of(x), kind: 'aligned' })
  }
  return (k, coordinate, at, faces = []) => {
    const near = levels[k]!.filter((l) => Math.abs(l.at - coordinate) < SAME)
    const through = near.filter(
      ({ axis }) =>
        axis &&
        ([0, 1, 2] as const).every((i) => i === k || i === axis.along || Math.abs(axis.point[i] - at[i]) < SAME * 10),
    )
    const own = through.find((l) => l.faces?.some((f) => faces.includes(f)))
    const axis = own ?? through.find((l) => l.axis?.arc === undefined) ?? through[0]
    return (axis ?? near.find((l) => l.with === PLANES) ?? near[0])?.expression
  }
}
