import type { Vec2 } from '../../geometry/vec.ts'
import type { NamedFeature } from '../../part/named-feature.ts'
import type { SurfacePlace } from '../annotation.ts'
import type { Context } from '../choose/context.ts'
import type { Sight } from '../choose/sight.ts'

const NEAR = 1e-4

/** The view that shows the surface best, edge-on where there is one, and where it shows there; longest places first. */
export function surfacePlaces(
  context: Context,
  feature: NamedFeature,
): { readonly view: string; readonly places: readonly SurfacePlace[] } | undefined {
  const shown = context.sights.flatMap((sight) => {
    const places = placesIn(context, sight, feature)
    const reach = places.reduce((most, p) => Math.max(most, p.kind === 'line' ? lengthOf(p) : 0), 0)
    if (places.length === 0) return []
    const { view } = sight
    const size = Math.hypot(view.box.max[0] - view.box.min[0], view.box.max[1] - view.box.min[1])
    // A straight edge takes a triangle better than a circle does; an inner surface is cut open in a section.
    const straight = places[0]!.kind === 'line' ? 2 : 0
    return [{ view: view.id, places, score: straight + reach / size - 0.15 * sight.order }]
  })
  return shown.sort((a, b) => b.score - a.score)[0]
}

/**
 * Where the border of a flat surface shows as an outline: in the view that looks onto it, for there the faces that a
 * profile all around holds are seen edge-on; straight sides before a whole circle.
 */
export function borderPlaces(
  context: Context,
  { direction }: NamedFeature,
  border: readonly number[],
): { readonly view: string; readonly places: readonly SurfacePlace[] } | undefined {
  const { faces } = context.part.body
  const shown = context.sights.flatMap((sight) => {
    const { view } = sight
    if (!sight.facing(direction) || view.kind === 'section') return []
    const sides = faces
      .filter((f) => border.includes(f.id))
      .flatMap((f): SurfacePlace[] => {
        const { axes } = f.surface.kind === 'plane' || f.surface.kind === 'cylinder' ? f.surface : {}
        if (!axes) return []
        const kind = f.surface.kind === 'plane' ? 'plane' : 'round'
        return placesIn(context, sight, { id: '', kind, faces: [f.id], direction: axes.z, internal: false })
      })
    const lines = sides.flatMap((p) => (p.kind === 'line' ? [p] : [])).sort((a, b) => lengthOf(b) - lengthOf(a))
    const places = lines.length > 0 ? lines : sides
    return places.length > 0 ? [{ view: view.id, places, order: sight.order }] : []
  })
  return shown.sort((a, b) => a.order - b.order)[0]
}

function placesIn(context: Context, sight: Sight, feature: NamedFeature): SurfacePlace[] {
  const way = sight.inPlane(feature.direction)
  const lines = sight.linesOf(feature.faces).filter((l) => l.kind === 'visible')
  if (feature.kind === 'round' && sight.facing(feature.direction)) {
    const faces = context.part.body.faces.filter((f) => feature.faces.includes(f.id))
    const radii = faces.flatMap((f) => (f.surface.kind === 'cylinder' ? [f.surface.r] : []))
    const circles = lines.flatMap(({ curve }): SurfacePlace[] =>
      curve.kind === 'arc' && radii.some((r) => Math.abs(r - curve.r) < NEAR)
        ? [{ kind: 'circle', centre: curve.c, radius: curve.r }]
        : [],
    )
    return circles.filter((c, i) => i === circles.findIndex((d) => sameCircle(c, d)))
  }
  if (!way) return []
  const segments = lines.flatMap(({ curve }): Extract<SurfacePlace, { kind: 'line' }>[] => {
    if (curve.kind !== 'line') return []
    const { a, b } = curve
    const out =
      feature.kind === 'round'
        ? besideAxis(context, sight, feature, way, a, b)
        : onTrace(context, sight, feature, way, a, b)
    return out ? [{ kind: 'line', a, b, out }] : []
  })
  return segments.sort((a, b) => lengthOf(b) - lengthOf(a))
}

/** Out of the material, where the line is the plane's own edge-on trace. */
function onTrace(context: Context, sight: Sight, feature: NamedFeature, way: Vec2, a: Vec2, b: Vec2): Vec2 | undefined {
  for (const face of context.part.body.faces) {
    if (!feature.faces.includes(face.id) || face.surface.kind !== 'plane') continue
    const level = dot(sight.flat(face.surface.axes.origin), way)
    if (Math.abs(dot(a, way) - level) > NEAR || Math.abs(dot(b, way) - level) > NEAR) continue
    const { z } = face.surface.axes
    const n = sight.flat(face.reversed ? [-z[0], -z[1], -z[2]] : z)
    return n
  }
  return undefined
}

/** Away from the axis of a shaft, towards that of a bore, where the line is an outline of the round surface; square to the line. */
function besideAxis(
  context: Context,
  sight: Sight,
  feature: NamedFeature,
  way: Vec2,
  a: Vec2,
  b: Vec2,
): Vec2 | undefined {
  const across: Vec2 = [-way[1], way[0]]
  for (const face of context.part.body.faces) {
    const { surface } = face
    if (!feature.faces.includes(face.id) || (surface.kind !== 'cylinder' && surface.kind !== 'cone')) continue
    const axis = sight.flat(surface.axes.origin)
    const off = (p: Vec2) => dot(p, across) - dot(axis, across)
    const radius = (p: Vec2) => {
      if (surface.kind === 'cylinder') return surface.r
      const along = (dot(p, way) - dot(axis, way)) * dot(sight.flat(surface.axes.z), way)
      return Math.abs(surface.r + along * Math.tan(surface.halfAngle))
    }
    if ([a, b].some((p) => Math.abs(Math.abs(off(p)) - radius(p)) > NEAR)) continue
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    // A line that crosses the axis or lies across it is the edge at an end of the surface.
    if (length < NEAR || off(a) * off(b) <= 0) continue
    const n: Vec2 = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length]
    const side = Math.sign(dot(n, across)) * Math.sign(off(a)) * (feature.internal ? -1 : 1)
    if (side !== 0) return [n[0] * side, n[1] * side]
  }
  return undefined
}

const dot = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1]
const lengthOf = ({ a, b }: { readonly a: Vec2; readonly b: Vec2 }): number => Math.hypot(b[0] - a[0], b[1] - a[1])
const sameCircle = (a: SurfacePlace, b: SurfacePlace): boolean =>
  a.kind === 'circle' && b.kind === 'circle' && Math.hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1]) < NEAR
