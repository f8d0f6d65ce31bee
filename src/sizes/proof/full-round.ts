import { cross, dot, norm, sub } from '../../geometry/vec3.ts'
import type { Axes3, Body, Surface3 } from '../../kernel/body.ts'
import type { Part } from '../../part/part.ts'
import { SAME } from './elements.ts'

type Cylinder = Extract<Surface3, { kind: 'cylinder' }>

/** A half round from one side of the part to the opposite one. */
export interface RoundEnd {
  readonly r: number
  /** Of its cylinder. */
  readonly axes: Axes3
  readonly faces: readonly number[]
}

/**
 * Ends that corners worked round make half round, from one side of the part to the opposite one: their radius is half the
 * width between the two sides, and follows from it.
 */
export const fullRounds = (part: Part): RoundEnd[] => endsOfKind(part, 'round')

/** The half round ends of pockets whose corners are half their width. */
export const pocketEnds = (part: Part): RoundEnd[] => endsOfKind(part, 'pocket')

const endsOfKind = (part: Part, kind: string): RoundEnd[] =>
  endsAmong(
    part,
    part.features.flatMap((f) => (f.kind === kind ? f.members.flatMap((m) => m.faces) : [])),
  )

/** Those, and the half round ends of an outline. */
export function roundEnds(part: Part): RoundEnd[] {
  const { body, features } = part
  const others = new Set(features.flatMap((f) => (f.kind === 'round' ? [] : f.members.flatMap((m) => m.faces))))
  return endsAmong(
    part,
    body.faces.flatMap((f) => (others.has(f.id) || f.reversed ? [] : [f.id])),
  )
}

function endsAmong({ body }: Part, candidates: readonly number[]): RoundEnd[] {
  const groups: { surface: Cylinder; faces: number[] }[] = []
  for (const id of new Set(candidates)) {
    const surface = body.faces.find((f) => f.id === id)?.surface
    if (surface?.kind !== 'cylinder') continue
    const group = groups.find((g) => isOne(g.surface, surface))
    if (group) group.faces.push(id)
    else groups.push({ surface, faces: [id] })
  }
  return groups.flatMap(({ surface, faces }) =>
    spansAWidth(body, surface, faces) ? [{ r: surface.r, axes: surface.axes, faces }] : [],
  )
}

function isOne(a: Cylinder, b: Cylinder): boolean {
  const off = norm(cross(sub(a.axes.origin, b.axes.origin), a.axes.z))
  return off < SAME && norm(cross(a.axes.z, b.axes.z)) < 1e-7 && Math.abs(a.r - b.r) < SAME
}

/** It runs smoothly into two sides that stand its diameter apart. */
function spansAWidth(body: Body, { r }: Cylinder, faces: readonly number[]): boolean {
  const sides = body.edges.flatMap((e) => {
    if (!e.smooth || e.curve.kind !== 'line' || !e.faces.some((f) => f !== undefined && faces.includes(f))) return []
    return e.faces.flatMap((f) => {
      const surface = body.faces.find((own) => own.id === f)?.surface
      return surface?.kind === 'plane' ? [surface.axes] : []
    })
  })
  return sides.some((a) =>
    sides.some((b) => {
      const apart = Math.abs(dot(sub(a.origin, b.origin), a.z))
      return norm(cross(a.z, b.z)) < 1e-7 && Math.abs(apart - 2 * r) < SAME
    }),
  )
}
