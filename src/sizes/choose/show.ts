import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { LeaderTarget, Measured } from '../dimension.ts'
import type { Context, Mooring } from './context.ts'
import type { Showing } from './draft.ts'
import type { Found, Sight } from './sight.ts'

const WORTH: Readonly<Record<Found['seen'], number>> = { visible: 30, hidden: -40, nothing: -70 }

export interface LinearWish {
  /** The view that looks along this axis shows the feature true. */
  readonly facing?: Vec3
  /** The view that looks along this shows the stock's own section or outline. */
  readonly profile?: Vec3
  /** A section that goes by these faces shows another's in their place. */
  readonly cut?: readonly number[]
  /** It stands at the moorings' own lines, not at another's that is level with them. */
  readonly own?: boolean
}

/** A distance between two moorings, in any view whose plane holds its direction. */
export function showLinear(
  a: Mooring,
  b: Mooring,
  direction: Vec3,
  wish: LinearWish = {},
): (sight: Sight) => Showing | undefined {
  return (sight) => {
    const along = sight.inPlane(direction)
    if (!along) return undefined
    const own = wish.own === true
    const first = moored(sight, a, along, undefined, own)
    const second = moored(sight, b, along, first.at, own)
    const again = moored(sight, a, along, second.at, own)
    // Neither shown nor cut there: a size would end in the empty.
    if (again.seen === 'nothing' && second.seen === 'nothing' && wish.cut && sight.passesBy(wish.cut)) return undefined
    let score = WORTH[again.seen] + WORTH[second.seen] - 2 * sight.order
    if (wish.facing && sight.facing(wish.facing)) score += 40
    if (wish.profile && sight.facing(wish.profile)) score += 15
    if (wish.cut && sight.passesBy(wish.cut)) score -= 80
    const hidden = again.seen !== 'visible' || second.seen !== 'visible'
    return { score, measured: { kind: 'linear', a: again.at, b: second.at, along }, ...(hidden ? { hidden } : {}) }
  }
}

/** Where an extension line would leave the mooring in this view. */
function moored(sight: Sight, mooring: Mooring, along: Vec2, toward: Vec2 | undefined, own: boolean): Found {
  const flat = sight.flat(mooring.at)
  const level = flat[0] * along[0] + flat[1] * along[1]
  if (mooring.axis && sight.facing(mooring.axis)) {
    const circles = sight.circles(flat)
    // The middle of a slot or pocket is seen where its own outline is.
    const outline = mooring.middle ? sight.linesOf(mooring.faces) : []
    if (outline.length > 0) return { at: flat, seen: outline.some((l) => l.kind === 'visible') ? 'visible' : 'hidden' }
    if (circles.length === 0) {
      // What another view shows from behind is not drawn here: a size would end in the empty.
      if (mooring.faces.length > 0 && sight.linesOf(mooring.faces).length === 0) return { at: flat, seen: 'nothing' }
      return cornerOr(sight, flat, along, level, mooring, toward, own)
    }
    return { at: flat, seen: circles.some((c) => c.visible) ? 'visible' : 'hidden' }
  }
  // A middle plane is seen where both its sides are.
  if (mooring.normal && mooring.middle) {
    const lines = sight.linesOf(mooring.faces)
    if (lines.length > 0) return { at: flat, seen: lines.some((l) => l.kind === 'visible') ? 'visible' : 'hidden' }
  }
  if (mooring.axis) {
    const lines = sight.linesOf(mooring.faces)
    if (lines.length > 0) return { at: flat, seen: lines.some((l) => l.kind === 'visible') ? 'visible' : 'hidden' }
  }
  return cornerOr(sight, flat, along, level, mooring, toward, own)
}

function cornerOr(
  sight: Sight,
  flat: Vec2,
  along: Vec2,
  level: number,
  mooring: Mooring,
  toward: Vec2 | undefined,
  own: boolean,
): Found {
  const through = sight.through(flat)
  // A corner named by its own point stays where it is; a plane may be met anywhere along its line.
  if (mooring.axis && through !== 'nothing') return { at: flat, seen: through }
  const line = sight.level(along, level, mooring.faces, toward, { own }) ?? sight.extreme(along, level)
  if (line) return line
  return { at: flat, seen: mooring.axis ? 'visible' : 'nothing' }
}

/**
 * A diameter: across the profile where the axis lies in the view, else at the circle itself. `toward`: beyond the end of
 * the profile that it is taken from.
 */
export function showDiameter(
  faces: readonly number[],
  at: Vec3,
  axis: Vec3,
  r: number,
  style: 'profile' | 'circle',
  toward?: Vec3,
): (sight: Sight) => Showing | undefined {
  return (sight) => {
    const centre = sight.flat(at)
    if (sight.facing(axis)) {
      const found = sight.circles(centre, [r])[0]
      if (!found) return undefined
      const score = (found.visible ? 40 : -30) + (style === 'circle' ? 30 : 0) - 2 * sight.order
      const open = acrossOpen(sight, centre, r, found.visible)
      return { score, measured: open ?? { kind: 'diameter', centre, radius: r } }
    }
    const way = sight.inPlane(axis)
    if (!way) return undefined
    const along: Vec2 = Math.abs(way[0]) > Math.abs(way[1]) ? [0, 1] : [1, 0]
    if (Math.abs(way[0] * along[0] + way[1] * along[1]) > 1e-6) return undefined
    const middle = centre[0] * along[0] + centre[1] * along[1]
    const nearest = toward !== undefined
    const a = sight.level(along, middle - r, faces, toward && sight.flat(toward), { nearest, own: true })
    const b = sight.level(along, middle + r, faces, a?.at, { nearest, own: true })
    const one = sight.view.kind === 'section' && a?.own !== b?.own ? [a, b].find((end) => end?.own) : undefined
    if (one) return onOneSide(sight, one, along, middle)
    if (!a || !b) return undefined
    const score = WORTH[a.seen] + WORTH[b.seen] + (style === 'profile' ? 30 : 0) - 2 * sight.order
    return { score, measured: { kind: 'linear', a: a.at, b: b.at, along } }
  }
}

/**
 * A diameter of which a half section shows one side: its line runs on past the axis and has one arrowhead (ISO 129-1:2018,
 * ASME Y14.5-2018; from memory).
 */
function onOneSide(sight: Sight, { at, seen }: Found, along: Vec2, middle: number): Showing {
  const off = middle - (at[0] * along[0] + at[1] * along[1])
  const onAxis: Vec2 = [at[0] + off * along[0], at[1] + off * along[1]]
  return {
    score: WORTH[seen] - 2 * sight.order,
    measured: { kind: 'linear', a: onAxis, b: at, along, open: true },
  }
}

/**
 * Of a circle that flats or cuts have opened, the distance from crown to crown where two opposite ones stand: an arrow
 * elsewhere might end where nothing is. Undefined for a whole circle.
 */
function acrossOpen(sight: Sight, centre: Vec2, r: number, visible: boolean): Measured | undefined {
  const arcs = sight.circles(centre, [r]).filter((c) => c.visible === visible)
  const turned = arcs.reduce((sum, { curve }) => sum + Math.abs(curve.sweep), 0)
  if (turned > 2 * Math.PI - 1e-3) return undefined
  const stands = (at: number) =>
    arcs.some(({ curve: { from, sweep } }) => {
      const start = sweep < 0 ? from + sweep : from
      const on = (((at - start) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
      return on <= Math.abs(sweep) + 1e-6 || on >= 2 * Math.PI - 1e-6
    })
  for (const along of [
    [1, 0],
    [0, 1],
  ] as const) {
    const at = Math.atan2(along[1], along[0])
    if (!stands(at) || !stands(at + Math.PI)) continue
    const end = (side: number): Vec2 => [centre[0] + side * r * along[0], centre[1] + side * r * along[1]]
    return { kind: 'linear', a: end(-1), b: end(1), along }
  }
  return undefined
}

/** A note at circles seen end-on: the largest visible circle of each place. */
export function showAtCircles(
  places: readonly Vec3[],
  axis: Vec3,
  radii: readonly number[],
): (sight: Sight) => Showing | undefined {
  return (sight) => {
    if (!sight.facing(axis)) return undefined
    const found = places.flatMap((p) => {
      const circle =
        sight.circles(sight.flat(p), radii).find((c) => c.visible) ?? sight.circles(sight.flat(p), radii)[0]
      return circle ? [circle] : []
    })
    if (found.length === 0) return undefined
    const seen = found.filter((c) => c.visible)
    const use = seen.length > 0 ? seen : found
    return {
      score: (seen.length > 0 ? 80 : -40) - 2 * sight.order,
      measured: { kind: 'leader', targets: use.map((c) => target(c.curve)) },
    }
  }
}

function target(arc: {
  readonly c: Vec2
  readonly r: number
  readonly from: number
  readonly sweep: number
}): LeaderTarget {
  const whole = Math.abs(arc.sweep) > 2 * Math.PI - 1e-6
  return { kind: 'circle', centre: arc.c, radius: arc.r, ...(whole ? {} : { from: arc.from, sweep: arc.sweep }) }
}

/** A radius at the arcs of these faces, wherever they show as arcs of that radius. */
export function showRadius(faces: readonly number[], r: number): (sight: Sight) => Showing | undefined {
  return (sight) => {
    const arcs = sight
      .linesOf(faces.filter((f) => sight.showsRound(f)))
      .flatMap(({ curve, kind }) =>
        curve.kind === 'arc' && Math.abs(curve.r - r) < 1e-4 && Math.abs(curve.sweep) < 2 * Math.PI - 1e-6
          ? [{ curve, visible: kind === 'visible' }]
          : [],
      )
    if (arcs.length === 0) return undefined
    const seen = arcs.filter((a) => a.visible)
    const use = seen.length > 0 ? seen : arcs
    const score = (seen.length > 0 ? 60 : -40) - 2 * sight.order
    const [only, second] = use
    if (only && !second) {
      const { c, r: radius, from, sweep } = only.curve
      return { score, measured: { kind: 'radius', centre: c, radius, from, sweep } }
    }
    return { score, measured: { kind: 'leader', targets: use.map((a) => target(a.curve)) } }
  }
}

/** A note at a sloping line: chamfers, planes and cones alike, in the view that shows the slope edge-on. */
export function showSlope(context: Context, faces: readonly number[]): (sight: Sight) => Showing | undefined {
  return (sight) => {
    const targets: { target: LeaderTarget; visible: boolean }[] = []
    for (const face of faces) {
      const { surface, reversed } = context.part.body.faces.find((f) => f.id === face) ?? {}
      if (!surface || surface.kind === 'spline') continue
      const { z, origin } = surface.axes
      const axis = sight.flat(origin)
      if (Math.abs(dot(z, sight.view.frame.toViewer)) > 1e-6) continue
      const way = sight.flat(z)
      for (const { curve, kind } of sight.linesOf([face])) {
        if (curve.kind !== 'line') continue
        const d: Vec2 = [curve.b[0] - curve.a[0], curve.b[1] - curve.a[1]]
        const length = Math.hypot(d[0], d[1])
        if (length < 1e-6) continue
        const cos = Math.abs(d[0] * way[0] + d[1] * way[1]) / length
        // Plane: the line lies square to its normal. Cone: the slant stands at the half angle to its axis.
        const wanted = surface.kind === 'cone' ? Math.cos(Math.abs(surface.halfAngle)) : 0
        if (Math.abs(cos - wanted) > 1e-6) continue
        const at: Vec2 = [(curve.a[0] + curve.b[0]) / 2, (curve.a[1] + curve.b[1]) / 2]
        const n: Vec2 = [-d[1] / length, d[0] / length]
        // Out of the material: a plane's normal, a cone's way from its axis; in a bore towards it.
        const side = way[0] * (at[1] - axis[1]) - way[1] * (at[0] - axis[0])
        const own = surface.kind === 'plane' ? n[0] * way[0] + n[1] * way[1] : side * (way[0] * n[1] - way[1] * n[0])
        const out = own >= 0 === !reversed ? 1 : -1
        targets.push({
          target: { kind: 'point', at, normal: [n[0] * out, n[1] * out] },
          visible: kind === 'visible',
        })
      }
    }
    if (targets.length === 0) return undefined
    const seen = targets.filter((t) => t.visible)
    const use = seen.length > 0 ? seen : targets
    return {
      score: (seen.length > 0 ? 60 : -40) - 2 * sight.order,
      measured: { kind: 'leader', targets: use.map((t) => t.target) },
    }
  }
}

/** An angle between two directions from a point, both in the view's plane. `reach`: how far the legs are drawn, mm. */
export function showAngle(
  vertex: Vec3,
  first: Vec3,
  second: Vec3,
  reach: readonly [number, number],
): (sight: Sight) => Showing | undefined {
  return (sight) => {
    const [u, v] = [sight.inPlane(first), sight.inPlane(second)]
    if (!u || !v) return undefined
    const from = Math.atan2(u[1], u[0])
    let sweep = Math.atan2(v[1], v[0]) - from
    if (sweep > Math.PI) sweep -= 2 * Math.PI
    if (sweep < -Math.PI) sweep += 2 * Math.PI
    return {
      score: 60 - 2 * sight.order,
      measured: { kind: 'angle', vertex: sight.flat(vertex), from, sweep, reach },
    }
  }
}
