import type { Body } from '../../kernel/body.ts'
import { axisAlong, type Line3, offLine, outwardOfPlane, parallel, pointsOfFace, SAME } from './borders.ts'
import { levels } from './patterns.ts'
import { isRound, type Wall } from './walls.ts'

/**
 * The axis of a part of revolution: a wall that goes round the whole part, from which nothing stands out. Only along an
 * axis of the part, so that a view can lay it across the sheet. Undefined for other parts.
 */
export function turnedAxis(body: Body, walls: readonly Wall[]): Line3 | undefined {
  const outside = walls.filter((w) => !w.inside && isRound(w) && axisAlong(w.line.direction) !== undefined)
  const widest = [...outside].sort((a, b) => outer(b) - outer(a))
  for (const wall of widest) {
    const { line } = wall
    const own = outer(wall)
    const reach = Math.max(...body.faces.flatMap((face) => pointsOfFace(body, face)).map((p) => offLine(p, line)))
    if (reach > own + SAME) continue
    if (mostlyOfRevolution(body, line)) return line
  }
  return undefined
}

const outer = (wall: Wall): number => (wall.kind === 'cylinder' || wall.kind === 'cone' ? Math.max(...wall.radii) : 0)

/** Both ends are square to the axis or of revolution about it. */
function mostlyOfRevolution(body: Body, line: Line3): boolean {
  const k = axisAlong(line.direction)!
  const ends = [body.box.min[k], body.box.max[k]]
  return ends.every((level) =>
    body.faces.some((face) => {
      const { surface } = face
      if (surface.kind === 'spline') return false
      if (surface.kind === 'plane')
        return parallel(surface.axes.z, line.direction) && Math.abs(surface.axes.origin[k] - level) < SAME
      const reaches = pointsOfFace(body, face).some((p) => Math.abs(p[k] - level) < SAME) || surface.kind === 'sphere'
      return reaches && offLine(surface.axes.origin, line) < SAME
    }),
  )
}

/** Parts thicker than this share of their smaller side are blocks (common practice, no source). */
const THIN = 0.4

/**
 * The direction in which the part has one thickness everywhere: two planes square to it and every other face along it.
 * Undefined for parts that are not flat.
 */
export function flatDirection(body: Body): 0 | 1 | 2 | undefined {
  const size = ([0, 1, 2] as const).map((k) => body.box.max[k] - body.box.min[k])
  return ([0, 1, 2] as const).find((k) => {
    const others = size.filter((_, i) => i !== k)
    if (size[k]! > THIN * Math.min(...others)) return false
    const heights: number[] = []
    for (const face of body.faces) {
      const { surface } = face
      const normal = outwardOfPlane(face)
      if (normal && axisAlong(normal) === k && surface.kind === 'plane') {
        heights.push(surface.axes.origin[k])
        continue
      }
      if (normal ? Math.abs(normal[k]) > 1e-9 : surface.kind !== 'cylinder' || axisAlong(surface.axes.z) !== k)
        return false
    }
    return levels(heights).length === 2
  })
}
