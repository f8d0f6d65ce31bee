import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { BodyFace } from '../../kernel/body.ts'
import type { Part } from '../../part/part.ts'
import { projectPoint } from '../project.ts'
import type { Frame, ViewLine } from '../view.ts'
import { crossAt } from './bare-centre.ts'
import { isAbout } from './round-features.ts'

const NEAR = 1e-6

/**
 * Crossed lines at the centres of arcs of an outline, seen end-on (ASME Y14.2, ISO 128-2: centres of arcs that locate
 * something; which these are is common practice, no source): round ends of half a turn, and arcs of more than a quarter
 * that do not run on smoothly at both ends. Corners that are merely rounded get none.
 */
export function outlineArcCentres(part: Part, frame: Frame, drawn: readonly ViewLine[], overrun: number): ViewLine[] {
  if (part.brief.stock?.kind !== 'outline') return []
  const featured = new Set(part.features.flatMap((f) => f.members.flatMap((m) => m.faces)))
  const done: Vec3[] = []
  return part.body.faces.flatMap((face): ViewLine[] => {
    const { surface } = face
    if (surface.kind !== 'cylinder' || featured.has(face.id)) return []
    const { origin, z } = surface.axes
    if (Math.abs(dot(z, frame.toViewer)) < 1 - NEAR || done.some((p) => isAbout(surface, p, z))) return []
    const turn = turnOf(part, face)
    const isEnd = turn > Math.PI - NEAR
    if (!isEnd && (turn < Math.PI / 2 + NEAR || runsOn(part, face))) return []
    done.push(origin)
    const c: Vec2 = projectPoint(origin, frame)
    return crossAt(c, surface.r, drawn, overrun)
  })
}

/** Radians that the face goes round its axis. */
function turnOf(part: Part, face: BodyFace): number {
  const sweeps = face.loops
    .flat()
    .map((use) => part.body.edges[use.edge]!.curve)
    .flatMap((c) => (c.kind === 'circle' ? [Math.abs(c.sweep)] : []))
  return Math.max(0, ...sweeps)
}

/** Smooth along both of its straight borders. */
function runsOn(part: Part, face: BodyFace): boolean {
  const straight = face.loops
    .flat()
    .map((use) => part.body.edges[use.edge]!)
    .filter((e) => e.curve.kind === 'line' && !e.seam)
  return straight.length > 0 && straight.every((e) => e.smooth)
}
