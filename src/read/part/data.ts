import type { Unit } from '../../brief/size.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import type { Body } from '../../kernel/body.ts'
import type { Datum } from '../../part/part.ts'
import { axisAlong, type Line3, outwardOfPlane, SAME } from '../recognise/borders.ts'
import { levels } from '../recognise/patterns.ts'

export type Axis = 0 | 1 | 2
export const AXES = [0, 1, 2] as const
export const UNITS: readonly [Vec3, Vec3, Vec3] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]

const SIDES = [
  ['left', 'right'],
  ['front', 'rear'],
  ['bottom', 'top'],
] as const

/** A level of plane faces square to an axis of the part. */
export interface Level {
  readonly id: string
  readonly at: number
  readonly faces: readonly number[]
}

/** The planes of the part by direction, low to high. */
export type Levels = readonly [readonly Level[], readonly Level[], readonly Level[]]

export function levelsOf(body: Body, unit: Unit): Levels {
  return AXES.map((k) => {
    const planes = body.faces.flatMap((face) => {
      const normal = outwardOfPlane(face)
      return normal && face.surface.kind === 'plane' && axisAlong(normal) === k
        ? [{ id: face.id, at: face.surface.axes.origin[k] }]
        : []
    })
    const { min, max } = body.box
    return levels(planes.map((p) => p.at)).map((at): Level => {
      const side = Math.abs(at - min[k]) < SAME ? SIDES[k][0] : Math.abs(at - max[k]) < SAME ? SIDES[k][1] : undefined
      return {
        id: side ?? `face ${inUnit(at - min[k], unit)} from ${SIDES[k][0]}`,
        at,
        faces: planes.filter((p) => Math.abs(p.at - at) < SAME).map((p) => p.id),
      }
    })
  }) as unknown as Levels
}

const inUnit = (mm: number, unit: Unit): string =>
  String(unit === 'inch' ? Math.round((mm / 25.4) * 1e4) / 1e4 : Math.round(mm * 1e3) / 1e3)

/** Planes as data, each facing the way its first face looks. */
export function planeData(body: Body, all: Levels): Datum[] {
  return AXES.flatMap((k) =>
    all[k].map((level): Datum => {
      const face = body.faces.find((f) => f.id === level.faces[0])!
      const point: [number, number, number] = [...body.box.min]
      point[k] = level.at
      return { id: level.id, kind: 'plane', name: level.id, point, normal: outwardOfPlane(face)!, face: face.id }
    }),
  )
}

/** Where positions along each axis are counted from: a plane or an axis, at a coordinate. */
export interface Base {
  readonly id: string
  readonly at: number
}

/**
 * The left, front and bottom faces; across the axis of a turned part the axis; where the part has no plane there, the
 * opposite face, else the first of the round axes.
 */
export function basesOf(
  body: Body,
  all: Levels,
  turned: Line3 | undefined,
  rounds: readonly { readonly id: string; readonly line: Line3 }[],
): readonly (Base | undefined)[] {
  return AXES.map((k) => {
    if (turned && axisAlong(turned.direction) !== k) return { id: 'axis', at: turned.point[k] }
    const low = all[k].find((l) => Math.abs(l.at - body.box.min[k]) < SAME)
    const high = all[k].find((l) => Math.abs(l.at - body.box.max[k]) < SAME)
    const level = low ?? high
    if (level) return { id: level.id, at: level.at }
    const across = rounds.filter((r) => axisAlong(r.line.direction) !== k && axisAlong(r.line.direction) !== undefined)
    const first = [...across].sort((a, b) => a.line.point[k] - b.line.point[k])[0]
    return first && { id: first.id, at: first.line.point[k] }
  })
}
