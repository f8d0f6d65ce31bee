import type { Vec3 } from '../../../src/geometry/vec.ts'
import { along, cross, distance, dot, norm, sub } from '../../../src/geometry/vec3.ts'
import type { Body, Surface3 } from '../../../src/kernel/body.ts'
import { normalOfSurface, pointOnCurve } from '../../../src/kernel/evaluate3.ts'

/**
 * What is wrong with a body by its own numbers: edges that stray from their faces or from where these meet, loops that do
 * not close, by more than `most` (mm). No view of such a body can agree with one of the solid meant.
 */
export function flaws(body: Body, most: number): string[] {
  const out: string[] = []
  for (const face of body.faces) {
    for (const loop of face.loops) {
      const open: Vec3[] = []
      for (const use of loop) {
        const edge = body.edges[use.edge]!
        for (const t of [0, 1]) {
          const p = pointOnCurve(edge.curve, t)
          const met = open.findIndex((q) => distance(p, q) <= most)
          if (met >= 0) open.splice(met, 1)
          else open.push(p)
        }
        let stray = 0
        for (let i = 0; i <= 40; i++) stray = Math.max(stray, off(face.surface, pointOnCurve(edge.curve, i / 40)))
        if (stray > most) out.push(`edge ${edge.id} strays ${stray.toExponential(1)} mm from face ${face.id}`)
      }
      if (open.length > 0) out.push(`a loop of face ${face.id} is open at ${open[0]!.map((x) => x.toFixed(3))}`)
    }
  }
  for (const edge of body.edges) {
    const [f, g] = edge.faces.map((id) => body.faces[id!]!.surface)
    if (!f || !g || edge.seam || edge.smooth) continue
    let stray = 0
    for (let i = 0; i <= 40; i++) {
      const p = pointOnCurve(edge.curve, i / 40)
      const [m, n] = [normalOfSurface(f, p), normalOfSurface(g, p)]
      // where faces meet at a small angle, a little off one of them is far aside
      if (m && n) stray = Math.max(stray, (off(f, p) + off(g, p)) / Math.max(1e-6, norm(cross(m, n))))
    }
    if (stray > most) out.push(`edge ${edge.id} lies ${stray.toExponential(1)} mm from where its faces meet`)
  }
  return out
}

/** Distance of a point from a surface; of splines none is known. */
function off(surface: Surface3, p: Vec3): number {
  if (surface.kind === 'spline') return 0
  const from = sub(p, surface.axes.origin)
  const h = dot(from, surface.axes.z)
  const rho = norm(along(from, surface.axes.z, -h))
  switch (surface.kind) {
    case 'plane':
      return Math.abs(h)
    case 'cylinder':
      return Math.abs(rho - surface.r)
    case 'cone':
      return Math.abs(rho - surface.r - h * Math.tan(surface.halfAngle)) * Math.cos(surface.halfAngle)
    case 'sphere':
      return Math.abs(norm(from) - surface.r)
    case 'torus':
      return Math.abs(Math.hypot(rho - surface.major, h) - surface.minor)
  }
}
