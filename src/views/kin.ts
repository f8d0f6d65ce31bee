import type { Vec3 } from '../geometry/vec.ts'
import { along, cross, distance, dot, norm, sub, unit } from '../geometry/vec3.ts'
import type { Body, BodyEdge, Curve3 } from '../kernel/body.ts'
import { pointOnCurve } from '../kernel/evaluate3.ts'
import type { Kin, Source } from './view.ts'

/** The lines' sources in numbers of the whole solid; what the cut made is none. */
export function ofTheWhole(sources: readonly Source[], { edges, faces }: Kin): Source[] {
  return sources.flatMap((s): Source[] => {
    const edge = s.edge === undefined ? undefined : edges[s.edge]
    const known = s.faces.map((f) => faces[f]).filter((f) => f !== undefined)
    return edge === undefined && known.length === 0 ? [] : [{ ...(edge === undefined ? {} : { edge }), faces: known }]
  })
}

/** Part of the body's size within which two points are one. */
const NEAR = 1e-6
/** Places along a spline that are compared. */
const LOOKS = 64

/** An edge is the one that its middle lies on; a face the one that most of its edges border. */
export function kinOf(cut: Body, whole: Body): Kin {
  const near = NEAR * distance(whole.box.min, whole.box.max)
  const edges = cut.edges.map((edge) => sameEdge(edge, whole, near))
  const faces = cut.faces.map((face) => {
    if (face.cut) return undefined
    const votes = new Map<number, number>()
    for (const { edge } of face.loops.flat()) {
      const own = edges[edge]
      for (const id of own === undefined ? [] : whole.edges[own]!.faces) {
        if (id !== undefined && whole.faces[id]!.surface.kind === face.surface.kind)
          votes.set(id, (votes.get(id) ?? 0) + 1)
      }
    }
    return [...votes].sort((a, b) => b[1] - a[1])[0]?.[0]
  })
  return { edges, faces }
}

function sameEdge(edge: BodyEdge, whole: Body, near: number): number | undefined {
  const places = [0.5, 0.3].map((t) => pointOnCurve(edge.curve, t))
  return whole.edges.find((e) => e.curve.kind === edge.curve.kind && places.every((p) => lies(p, e.curve, near)))?.id
}

function lies(p: Vec3, curve: Curve3, near: number): boolean {
  switch (curve.kind) {
    case 'line': {
      const d = sub(curve.b, curve.a)
      const s = dot(sub(p, curve.a), d)
      return s >= 0 && s <= dot(d, d) && norm(cross(sub(p, curve.a), unit(d))) < near
    }
    case 'circle':
    case 'ellipse': {
      const { origin, x, y, z } = curve.axes
      const q = sub(p, origin)
      if (Math.abs(dot(q, z)) > near) return false
      const [a, b] = curve.kind === 'circle' ? [curve.r, curve.r] : [curve.major, curve.minor]
      const angle = Math.atan2(dot(q, y) / b, dot(q, x) / a)
      const at = along(along(origin, x, a * Math.cos(angle)), y, b * Math.sin(angle))
      if (distance(at, p) > near) return false
      const turn = ((angle - curve.from) * Math.sign(curve.sweep) + 8 * Math.PI) % (2 * Math.PI)
      return turn <= Math.abs(curve.sweep) + 1e-9
    }
    case 'spline': {
      // Between two looked-at places the curve runs nearly straight.
      for (let i = 0; i < LOOKS; i++) {
        const [a, b] = [pointOnCurve(curve, i / LOOKS), pointOnCurve(curve, (i + 1) / LOOKS)]
        if (distance(a, p) + distance(p, b) < distance(a, b) * (1 + 1e-3) + near) return true
      }
      return false
    }
  }
}
