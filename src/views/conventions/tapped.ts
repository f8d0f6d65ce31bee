import { nominalSize } from '../../brief/thread.ts'
import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { Part } from '../../part/part.ts'
import { projectPoint } from '../project.ts'
import type { Frame, ViewLine } from '../view.ts'
import { endsOf } from './threads.ts'

/** ISO 6410-1: three quarters of a circle, open at the upper right (from memory). */
const OPEN = { from: (100 * Math.PI) / 180, sweep: 1.5 * Math.PI }

/**
 * Tells the lines of tapped holes that are modelled at the thread's own size, for want of a drill in the brief. On paper
 * they are the root of the thread, and its crest is drawn beside them. The faces of a `section` are not the part's own:
 * there the place tells.
 */
export function withTapped(lines: readonly ViewLine[], part: Part, frame: Frame, section = false): ViewLine[] {
  const walls = wallsOf(part)
  if (walls.length === 0) return [...lines]
  const iso = part.brief.header.practice === 'ISO'
  return lines.map((line) => {
    if (line.kind !== 'visible' && line.kind !== 'hidden') return line
    const { curve } = line
    for (const wall of walls) {
      if (!section && !line.sources.some((s) => s.faces.some((f) => wall.faces.includes(f)))) continue
      const c = projectPoint(wall.point, frame)
      if (curve.kind === 'arc') {
        const about = Math.hypot(curve.c[0] - c[0], curve.c[1] - c[1]) < 1e-6 && Math.abs(curve.r - wall.r) < 1e-6
        if (about && Math.abs(curve.sweep) > 2 * Math.PI - 1e-6)
          return { ...line, tapped: { r: wall.r, ...(iso ? { open: OPEN } : {}) } }
        continue
      }
      if (curve.kind !== 'line' || Math.abs(dot(wall.direction, frame.toViewer)) > 1e-9) continue
      const way = projectPoint(wall.direction, frame)
      const n: Vec2 = [-way[1], way[0]]
      const off = (p: Vec2) => (p[0] - c[0]) * n[0] + (p[1] - c[1]) * n[1]
      const [a, b] = [off(curve.a), off(curve.b)]
      const along = [curve.a, curve.b].map((p) => (p[0] - c[0]) * way[0] + (p[1] - c[1]) * way[1])
      const out = along.some((s) => s < wall.reach[0] - 1e-6 || s > wall.reach[1] + 1e-6)
      if (isPoint([a, b], along, wall)) {
        const about: Vec2 = [c[0] + wall.reach[0] * way[0], c[1] + wall.reach[0] * way[1]]
        return { ...line, tapped: { r: wall.r, about } }
      }
      if (out || Math.abs(a - b) > 1e-6 || Math.abs(Math.abs(a) - wall.r) > 1e-6) continue
      const sign = a > 0 ? -1 : 1
      return { ...line, tapped: { r: wall.r, inward: [sign * n[0], sign * n[1]] as Vec2 } }
    }
    return line
  })
}

/** From the rim of the wall's deep end to the axis below it: the side of the drill point. `off` the axis and `along` it, mm. */
function isPoint(off: readonly number[], along: readonly number[], { r, reach }: Wall): boolean {
  const isRim = (i: number) => Math.abs(Math.abs(off[i]!) - r) < 1e-6 && Math.abs(along[i]! - reach[0]) < 1e-6
  const isTip = (i: number) => Math.abs(off[i]!) < 1e-6 && along[i]! < reach[0] - 1e-6
  return (isRim(0) && isTip(1)) || (isRim(1) && isTip(0))
}

interface Wall {
  /** The wall's own, and those of the drill point below it. */
  readonly faces: readonly number[]
  readonly point: Vec3
  readonly direction: Vec3
  readonly r: number
  /** Along the direction from the point: deep end, mouth. */
  readonly reach: readonly [number, number]
}

function wallsOf(part: Part): Wall[] {
  return part.features.flatMap((f) => {
    const hole = f.feature
    if (hole?.kind !== 'hole' || !hole.thread) return []
    const nominal = nominalSize(hole.thread, part.brief.header.units)
    const r = hole.diameter.mm / 2
    if (!nominal || Math.abs(nominal.mm / 2 - r) > 1e-6) return []
    return f.members.flatMap((m) => {
      const out = m.outward ?? f.outward
      return m.faces.flatMap((id) => {
        const s = part.body.faces[id]?.surface
        if (s?.kind !== 'cylinder' || Math.abs(s.r - r) > 1e-6 || norm(cross(s.axes.z, out)) > 1e-9) return []
        const on = part.body.faces[id]!.loops.flat()
          .flatMap((use) => endsOf(part.body.edges[use.edge]!.curve))
          .map((p) => dot(sub(p, s.axes.origin), out))
        const reach = [Math.min(...on), Math.max(...on)] as const
        const cones = m.faces.filter((c) => part.body.faces[c]?.surface.kind === 'cone')
        return [{ faces: [id, ...cones], point: s.axes.origin, direction: out, r, reach }]
      })
    })
  })
}
