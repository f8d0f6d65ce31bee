import type { Side } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, scale } from '../../geometry/vec3.ts'
import type { BodyEdge } from '../../kernel/body.ts'
import type { Part } from '../../part/part.ts'
import { type Axis, axisOf, FRAMES } from '../frames.ts'
import { nameOf, type Want } from './wants.ts'

type Circle = Extract<BodyEdge['curve'], { kind: 'circle' }>

const ALL = ['x', 'y', 'z'] as const

/**
 * Rounds and fillets about the axis of a turned part that flats have cut away at both outlines of its longitudinal view: the
 * view a quarter turn on shows their arc, where it is left there.
 */
export function partedFillets(part: Part, longitudinal: Side): Want[] {
  const { axis, body } = part
  if (!axis) return []
  const own = axisOf[longitudinal]
  const along = ALL.find((a) => a !== own && Math.abs(dot(axis.direction, axisVector(a))) < 1e-9)
  if (!along) return []
  return part.features.flatMap((f): Want[] => {
    if (f.kind !== 'round' && f.kind !== 'fillet') return []
    const faces = f.members.flatMap((m) => m.faces).filter((id) => body.faces[id]?.surface.kind === 'torus')
    const rims = body.edges.flatMap(({ curve, faces: sides }) =>
      curve.kind === 'circle' && sides.some((id) => id !== undefined && faces.includes(id)) ? [curve] : [],
    )
    const radii = new Set(rims.map(({ r }) => r.toFixed(6)))
    const stands = (seenAlong: Axis) => {
      const out = cross(axis.direction, axisVector(seenAlong))
      // from its one border to the other: a flat may take one of them alone
      return [out, scale(out, -1)].some(
        (way) =>
          new Set(rims.flatMap((rim) => (passes(rim, axis.direction, way) ? [rim.r.toFixed(6)] : []))).size ===
          radii.size,
      )
    }
    if (faces.length === 0 || stands(own) || !stands(along)) return []
    return [{ what: nameOf(f), along: [along], faces, coaxial: false, inside: false }]
  })
}

const axisVector = (axis: Axis): Vec3 => FRAMES[({ x: 'right', y: 'front', z: 'top' } as const)[axis]].toViewer

/** Whether an arc about the axis goes through the place that way from it. */
function passes(curve: Circle, axis: Vec3, way: Vec3): boolean {
  if (norm(cross(curve.axes.z, axis)) > 1e-7) return false
  const at = Math.atan2(dot(way, curve.axes.y), dot(way, curve.axes.x))
  const start = curve.sweep < 0 ? curve.from + curve.sweep : curve.from
  const on = (((at - start) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
  return on < Math.abs(curve.sweep) - 1e-6
}
