import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, scale, sub, unit } from '../../geometry/vec3.ts'
import { axisAlong, type Line3, offLine, SAME } from './borders.ts'

/** How equal members stand to one another. Members are indices into the list given. */
export type FoundPattern =
  | { readonly kind: 'single' | 'points' }
  /** Equal steps along one direction. */
  | { readonly kind: 'row'; readonly direction: Vec3; readonly members: readonly number[]; readonly pitch: number }
  /** Equal steps along two directions of the part; rows first. */
  | {
      readonly kind: 'grid'
      readonly across: { readonly direction: Vec3; readonly members: readonly number[]; readonly pitch: number }
      readonly up: { readonly direction: Vec3; readonly members: readonly number[]; readonly pitch: number }
    }
  | {
      readonly kind: 'bolt circle'
      readonly centre: Vec3
      readonly radius: number
      /** Members follow one another at equal angles. */
      readonly equal: boolean
    }

const UNITS: readonly [Vec3, Vec3, Vec3] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]

/**
 * The pattern of parallel members at `points`, seen along `outward`. `centres` are round axes that a bolt circle may go
 * about: about one of these two members or a single one are enough; elsewhere three or more at equal angles are, but
 * four in a rectangle are a grid.
 */
export function patternOf(
  points: readonly Vec3[],
  outward: Vec3,
  centres: readonly Line3[],
  turned?: Line3,
): FoundPattern {
  const flat = points.map((p) => sub(p, scale(outward, dot(p, outward))))
  if (turned && Math.abs(dot(turned.direction, outward)) > 1 - 1e-9) {
    const about = circleAbout(flat, outward, turned)
    if (about) return about
  }
  if (points.length === 1) return { kind: 'single' }
  const squared = gridOf(flat, outward)
  if (points.length >= 3) {
    const own = equalCircle(flat, outward)
    const marked = centres.find((c) => {
      const about = circleAbout(flat, outward, c)
      return about?.kind === 'bolt circle' && about.equal
    })
    if (marked && squared?.kind !== 'grid') {
      const about = circleAbout(flat, outward, marked)
      if (about) return about
    }
    if (own && !squared) return own
  }
  return squared ?? { kind: 'points' }
}

function circleAbout(flat: readonly Vec3[], outward: Vec3, centre: Line3): FoundPattern | undefined {
  if (Math.abs(dot(centre.direction, outward)) < 1 - 1e-9) return undefined
  const radii = flat.map((p) => offLine(p, centre))
  const radius = radii[0]!
  if (radius < SAME || radii.some((r) => Math.abs(r - radius) > SAME)) return undefined
  const about = sub(centre.point, scale(outward, dot(centre.point, outward)))
  return { kind: 'bolt circle', centre: about, radius, equal: equalAngles(flat, about, outward) }
}

function equalCircle(flat: readonly Vec3[], outward: Vec3): FoundPattern | undefined {
  const sum = flat.reduce((a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]] as const)
  const centre = scale(sum, 1 / flat.length)
  const radii = flat.map((p) => norm(sub(p, centre)))
  if (radii.some((r) => Math.abs(r - radii[0]!) > SAME) || radii[0]! < SAME) return undefined
  return equalAngles(flat, centre, outward)
    ? { kind: 'bolt circle', centre, radius: radii[0]!, equal: true }
    : undefined
}

function equalAngles(flat: readonly Vec3[], centre: Vec3, outward: Vec3): boolean {
  if (flat.length < 2) return true
  const x = unit(sub(flat[0]!, centre))
  const y = cross(outward, x)
  const radius = norm(sub(flat[0]!, centre))
  const step = (2 * Math.PI) / flat.length
  const angles = flat.map((p) => Math.atan2(dot(sub(p, centre), y), dot(sub(p, centre), x)))
  const turns = angles.map((a) => ((a / step) % flat.length) + flat.length)
  const spots = new Set(turns.map((t) => Math.round(t) % flat.length))
  return spots.size === flat.length && turns.every((t) => Math.abs(t - Math.round(t)) * step * radius < 2 * SAME)
}

/** A row or grid along the axes of the part; undefined where the members stand otherwise. */
function gridOf(flat: readonly Vec3[], outward: Vec3): FoundPattern | undefined {
  const k = axisAlong(outward)
  if (k === undefined) return undefined
  const [i, j] = ([0, 1, 2] as const).filter((m) => m !== k) as [0 | 1, 1 | 2]
  const [us, vs] = [levels(flat.map((p) => p[i])), levels(flat.map((p) => p[j]))]
  if (us.length * vs.length !== flat.length) return undefined
  const at = (u: number, v: number) => flat.findIndex((p) => Math.abs(p[i] - u) < SAME && Math.abs(p[j] - v) < SAME)
  if (us.some((u) => vs.some((v) => at(u, v) < 0))) return undefined
  const [pu, pv] = [pitchOf(us), pitchOf(vs)]
  const row = us.map((u) => at(u, vs[0]!))
  const column = vs.map((v) => at(us[0]!, v))
  if (vs.length === 1)
    return pu === undefined ? undefined : { kind: 'row', direction: UNITS[i], members: row, pitch: pu }
  if (us.length === 1)
    return pv === undefined ? undefined : { kind: 'row', direction: UNITS[j], members: column, pitch: pv }
  if (pu === undefined || pv === undefined) return undefined
  return {
    kind: 'grid',
    across: { direction: UNITS[i], members: row, pitch: pu },
    up: { direction: UNITS[j], members: column, pitch: pv },
  }
}

/** Distinct values in ascending order. */
export function levels(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted.filter((v, n) => n === 0 || v - sorted[n - 1]! > SAME)
}

function pitchOf(sorted: readonly number[]): number | undefined {
  if (sorted.length < 2) return undefined
  const pitch = sorted[1]! - sorted[0]!
  return sorted.every((v, n) => n === 0 || Math.abs(v - sorted[n - 1]! - pitch) < SAME) ? pitch : undefined
}

/** Sets of more members than this are not searched for circles (common practice, no source). */
const SEARCHED = 48

/**
 * Members that stand at equal angles on circles of their own, three or five and more on each, taken out of a set that
 * is no pattern as a whole; the rest last. Four at equal angles are a square, and rather part of a grid.
 */
export function circlesAmong(points: readonly Vec3[], outward: Vec3): readonly (readonly number[])[] {
  const all = points.map((_, i) => i)
  if (points.length < 4 || points.length > SEARCHED) return [all]
  const flat = points.map((p) => sub(p, scale(outward, dot(p, outward))))
  const sets: (readonly number[])[] = []
  let left = all
  for (let found = true; found && left.length >= 3; ) {
    found = false
    for (const set of triples(left)) {
      const circle = equalCircle(
        set.map((i) => flat[i]!),
        outward,
      )
      if (circle?.kind !== 'bolt circle') continue
      const on = left.filter((i) => Math.abs(norm(sub(flat[i]!, circle.centre)) - circle.radius) < SAME)
      const whole =
        on.length === 3 ||
        (on.length > 4 &&
          equalAngles(
            on.map((i) => flat[i]!),
            circle.centre,
            outward,
          ))
      if (!whole) continue
      sets.push(on)
      left = left.filter((i) => !on.includes(i))
      found = true
      break
    }
  }
  return left.length > 0 ? [...sets, left] : sets
}

function* triples(list: readonly number[]): Generator<readonly [number, number, number]> {
  for (let a = 0; a < list.length; a++)
    for (let b = a + 1; b < list.length; b++)
      for (let c = b + 1; c < list.length; c++) yield [list[a]!, list[b]!, list[c]!]
}
