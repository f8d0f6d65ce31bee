import { boxOf } from '../geometry/evaluate.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { add, cross, scale } from '../geometry/vec3.ts'
import type { Surface3 } from '../kernel/body.ts'
import type { Box3 } from '../kernel/box3.ts'
import type { FaceName } from '../kernel/names.ts'
import { inPlane } from '../kernel/profile.ts'
import { cornerWork, halfSection } from './contour.ts'
import type { Contour, Profile, ProfileCurve } from './model.ts'
import { squareUp, unitAxis } from './sides.ts'
import { Workshop } from './workshop.ts'

/**
 * Names for faces that the kernel made where worked edges meet or run on (corners of rounds, chamfers round an arc):
 * the statement with the same radius, else the last chamfer.
 */
export function blendName(shop: Workshop, surface: Surface3): string | undefined {
  const ids = new Set(shop.steps.flatMap((s) => (s.kind === 'edges' ? [s.feature] : [])))
  if (ids.size === 0) return undefined
  const radius =
    surface.kind === 'torus'
      ? surface.minor
      : surface.kind === 'sphere' || surface.kind === 'cylinder'
        ? surface.r
        : undefined
  const fits = shop.edgeWork.filter((w) => ids.has(w.id))
  const round = fits.find((w) => w.kind !== 'chamfer' && radius !== undefined && Math.abs(w.size - radius) < 1e-6)
  const found = round ?? fits.filter((w) => w.kind === 'chamfer').pop() ?? fits[fits.length - 1]
  return found && `${found.id} corner`
}

/** Names of all faces that the brief's words give; features' own faces before the stock's. */
export function faceNames(shop: Workshop): FaceName[] {
  const names: FaceName[] = shop.surfaces.map((s) => ({ ...s }))
  for (const { profile } of shop.legs?.legs ?? []) names.push(...wallNames(profile))
  if (shop.profile) names.push(...profileNames(shop.profile))
  if (shop.contour) names.push(...contourNames(shop, shop.contour))
  return names
}

function profileNames(profile: Profile): FaceName[] {
  const normal = cross(profile.plane.right, profile.plane.up)
  const { origin, right, up } = profile.plane
  const caps = profile.caps.map((name, i): FaceName => {
    const at = add(origin, scale(normal, i * profile.thickness))
    return { name, surface: { kind: 'plane', axes: { origin: at, x: right, y: up, z: normal } }, reversed: i === 0 }
  })
  return [...wallNames(profile), ...caps]
}

/** Beyond any part, mm. */
const FAR = 1e6
/** Sides nearer than this lie in one line, mm. */
const SAME = 1e-6

function wallNames(profile: Profile): FaceName[] {
  const normal = cross(profile.plane.right, profile.plane.up)
  const named = (curves: readonly ProfileCurve[], within?: Box3) =>
    curves
      .filter((c) => c.face !== '')
      .map((c) => ({ name: c.face, surface: wallSurface(profile, c, normal), ...(within ? { within } : {}) }))
  // The walls of two holes, or of two notches, may lie in one plane; each keeps to its own stretch.
  return [
    ...profile.holes.flatMap((loop) => named(loop, reachOf(profile, loop, normal))),
    ...profile.curves.flatMap((c) =>
      named([c], isInLine(profile.curves, c) ? reachOf(profile, [c], normal) : undefined),
    ),
  ]
}

/** Whether a side of another name lies in the same line. */
function isInLine(curves: readonly ProfileCurve[], { curve, face }: ProfileCurve): boolean {
  if (curve.kind !== 'line') return false
  const [dx, dy] = [curve.b[0] - curve.a[0], curve.b[1] - curve.a[1]]
  const off = (p: Vec2) => Math.abs((p[0] - curve.a[0]) * dy - (p[1] - curve.a[1]) * dx) / Math.hypot(dx, dy)
  return curves.some(
    (c) => c.face !== face && c.curve.kind === 'line' && off(c.curve.a) < SAME && off(c.curve.b) < SAME,
  )
}

/** How far the hole reaches in the profile's plane; its walls may run on beyond the thickness. */
function reachOf({ plane }: Profile, loop: readonly ProfileCurve[], normal: Vec3): Box3 {
  const boxes = loop.map(({ curve }) => boxOf(curve))
  const corners = boxes.flatMap(({ min, max }) =>
    [min, max].flatMap((p) => {
      const q = inPlane(plane, p)
      return [add(q, scale(normal, FAR)), add(q, scale(normal, -FAR))]
    }),
  )
  const level = (k: number, pick: (...values: number[]) => number) => pick(...corners.map((c) => c[k]!))
  return {
    min: [level(0, Math.min), level(1, Math.min), level(2, Math.min)],
    max: [level(0, Math.max), level(1, Math.max), level(2, Math.max)],
  }
}

function wallSurface(profile: Profile, { curve }: ProfileCurve, normal: Vec3): Surface3 {
  const { right, up } = profile.plane
  if (curve.kind === 'arc') {
    const origin = inPlane(profile.plane, curve.c)
    return { kind: 'cylinder', axes: { origin, x: right, y: up, z: normal }, r: curve.r }
  }
  if (curve.kind !== 'line') throw new Error('profiles are made of lines and arcs')
  const [dx, dy] = [curve.b[0] - curve.a[0], curve.b[1] - curve.a[1]]
  const n = Math.hypot(dx, dy)
  const along = add(scale(right, dx / n), scale(up, dy / n))
  return {
    kind: 'plane',
    axes: { origin: inPlane(profile.plane, curve.a), x: along, y: normal, z: cross(along, normal) },
  }
}

function contourNames(shop: Workshop, contour: Contour): FaceName[] {
  // marks of the corner work were made when the solid was built
  const section = cornerWork(new Workshop(shop.brief), contour, halfSection(contour))
  const z = unitAxis[contour.axis]
  const x = squareUp(contour.axis)
  const y = cross(z, x)
  const at = (h: number): Vec3 => scale(z, h)
  return section.flatMap(({ curve, face }): FaceName[] => {
    if (face === '') return []
    if (curve.kind === 'arc') {
      const [h, r] = curve.c
      const axes = { origin: at(h), x, y, z }
      const surface: Surface3 =
        Math.abs(r) < 1e-9 ? { kind: 'sphere', axes, r: curve.r } : { kind: 'torus', axes, major: r, minor: curve.r }
      return [{ name: face, surface }]
    }
    if (curve.kind !== 'line') return []
    const [[h0, r0], [h1, r1]] = [curve.a, curve.b]
    // Two steps of one diameter, or two tapers of one slope, may lie on one surface; each keeps to its own stretch.
    const across = scale(add(x, y), Math.max(r0, r1))
    const [p, q] = [add(at(Math.min(h0, h1)), scale(across, -1)), add(at(Math.max(h0, h1)), across)]
    const within = { min: lower(p, q), max: lower(p, q, Math.max) }
    if (Math.abs(r0 - r1) < 1e-9) {
      if (r0 < 1e-9) return []
      return [{ name: face, surface: { kind: 'cylinder', axes: { origin: at(h0), x, y, z }, r: r0 }, within }]
    }
    // The outline runs with its material on the left: a floor and a shoulder in one plane look opposite ways.
    if (Math.abs(h0 - h1) < 1e-9)
      return [{ name: face, surface: { kind: 'plane', axes: { origin: at(h0), x, y, z } }, reversed: r1 < r0 }]
    const slope = (r1 - r0) / (h1 - h0)
    const axes = slope > 0 ? { origin: at(h0), x, y, z } : { origin: at(h0), x, y: scale(y, -1), z: scale(z, -1) }
    return [{ name: face, surface: { kind: 'cone', axes, r: r0, halfAngle: Math.atan(Math.abs(slope)) }, within }]
  })
}

function lower(p: Vec3, q: Vec3, end: (a: number, b: number) => number = Math.min): Vec3 {
  return [end(p[0], q[0]), end(p[1], q[1]), end(p[2], q[2])]
}
