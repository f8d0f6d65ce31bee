import type { HoleFeature } from '../../brief/brief.ts'
import { nominalSize } from '../../brief/thread.ts'
import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { along, cross, dot, norm, sub, unit } from '../../geometry/vec3.ts'
import type { Curve3 } from '../../kernel/body.ts'
import type { Part } from '../../part/part.ts'
import { liesInPlane } from '../centre-lines/lengthwise.ts'
import { projectPoint } from '../project.ts'
import type { Frame, LineKind, ViewLine } from '../view.ts'
import { outsideThreads, type Thread, USUAL } from './outside-threads.ts'

export interface ThreadSettings {
  readonly tolerance: number
  /** In a section only threads whose axis lies in its plane are seen from the side. */
  readonly section?: { readonly point: Vec3; readonly normal: Vec3 }
}

/**
 * The conventional lines of tapped holes that are modelled as drilled. The drilled hole is the thread's crest and is in
 * the outline already; added is the root. ISO 6410-1: narrow lines, end-on three quarters of a circle open at the upper
 * right; dashed where the hole is hidden. ASME Y14.6, simplified: dashed lines throughout, end-on a whole circle. The
 * limit of the full thread is drawn across it. All from memory. A hole modelled at the thread's own size gets none.
 * An outside thread is modelled at its crest, the outline; its root is added within, narrow (ISO) or dashed (ASME).
 */
export function threadLines(
  part: Part,
  frame: Frame,
  outline: readonly ViewLine[],
  settings: ThreadSettings,
): ViewLine[] {
  const iso = part.brief.header.practice === 'ISO'
  return [...threadsOf(part), ...outsideThreads(part)].flatMap((thread) => {
    const square = Math.abs(dot(thread.outward, frame.toViewer))
    if (square > 1 - 1e-9) return endOn(thread, frame, outline, iso, settings.tolerance)
    return square < 1e-9 ? fromSide(thread, frame, outline, iso, settings) : []
  })
}

function threadsOf(part: Part): Thread[] {
  return part.features.flatMap((f): Thread[] => {
    const hole = f.feature
    if (hole?.kind !== 'hole' || !hole.thread) return []
    const nominal = nominalSize(hole.thread, part.brief.header.units)
    const r = hole.diameter.mm / 2
    // A pipe thread is named by the bore of its pipe, not by a size that could be drawn.
    const major = nominal ? nominal.mm / 2 : r / USUAL
    if (major - r < 1e-6) return []
    return f.members.flatMap((m): Thread[] => {
      const out = m.outward ?? f.outward
      const walls = m.faces.flatMap((id) => {
        const face = part.body.faces[id]
        if (face?.surface.kind !== 'cylinder') return []
        const s = face.surface
        if (Math.abs(s.r - r) > 1e-6 || norm(cross(s.axes.z, out)) > 1e-9) return []
        return [{ face, origin: s.axes.origin }]
      })
      const [first] = walls
      if (!first) return []
      // A hole that is crossed by another has its wall in pieces: together they reach from mouth to bottom.
      const on = walls
        .flatMap(({ face }) => face.loops.flat())
        .flatMap((use) => endsOf(part.body.edges[use.edge]!.curve))
        .map((p) => dot(sub(p, m.point), out))
      const deep = fullThread(hole)
      const reach = [Math.max(Math.min(...on), -deep), Math.max(Math.max(...on), mouthOf(hole, major))] as const
      if (!(reach[1] - reach[0] > 1e-6)) return []
      const ends = Number.isFinite(deep)
      return [
        {
          feature: f.id,
          point: first.origin,
          outward: out,
          r,
          other: major,
          reach: shifted(reach, first.origin, m.point, out),
          ends,
          through: !ends,
        },
      ]
    })
  })
}

/** Points that tell how far an edge of the wall reaches along it: the mouth of a hole into a round surface is no circle. */
export function endsOf(curve: Curve3): readonly Vec3[] {
  if (curve.kind === 'circle') return [curve.axes.origin]
  if (curve.kind === 'line') return [curve.a, curve.b]
  return curve.kind === 'spline' ? curve.poles : []
}

/** Depth of the full thread below the worked face, mm; Infinity where it goes through. */
function fullThread(hole: HoleFeature): number {
  if (hole.threadDepth) return hole.threadDepth.mm
  return hole.depth.kind === 'blind' ? hole.depth.size.mm : Infinity
}

/** Where the thread's root leaves a countersink, mm from the worked face (negative inward); far inside without one. */
function mouthOf(hole: HoleFeature, major: number): number {
  const sink = hole.countersink
  if (!sink) return -Infinity
  const half = (sink.angle.value * Math.PI) / 360
  return Math.min(0, -(sink.diameter.mm / 2 - major) / Math.tan(half))
}

/** Places along the axis counted from the worked face, told from the surface's own origin. */
function shifted(reach: readonly [number, number], origin: Vec3, face: Vec3, outward: Vec3): readonly [number, number] {
  const by = dot(sub(face, origin), outward)
  return [reach[0] + by, reach[1] + by]
}

function endOn(t: Thread, frame: Frame, outline: readonly ViewLine[], iso: boolean, tolerance: number): ViewLine[] {
  if (!t.through && dot(t.outward, frame.toViewer) < 0 && !hasCircle('hidden', t, frame, outline, tolerance)) return []
  const seen = hasCircle('visible', t, frame, outline, tolerance)
  if (!seen && !hasCircle('hidden', t, frame, outline, tolerance)) return []
  const c = projectPoint(t.point, frame)
  const sweep = iso ? { from: (100 * Math.PI) / 180, sweep: 1.5 * Math.PI } : { from: 0, sweep: 2 * Math.PI }
  const curve = { kind: 'arc', c, r: t.other, ...sweep } as const
  return [{ ...made(t, seen && iso ? 'thread' : 'hidden', curve), thread: { crest: t.r, root: t.other } }]
}

function hasCircle(kind: LineKind, t: Thread, frame: Frame, outline: readonly ViewLine[], tolerance: number): boolean {
  const c = projectPoint(t.point, frame)
  return outline.some(
    (l) =>
      l.kind === kind &&
      l.curve.kind === 'arc' &&
      Math.abs(l.curve.sweep) > 2 * Math.PI - 1e-6 &&
      Math.abs(l.curve.r - t.r) <= 10 * tolerance &&
      Math.hypot(l.curve.c[0] - c[0], l.curve.c[1] - c[1]) <= 10 * tolerance,
  )
}

function fromSide(
  t: Thread,
  frame: Frame,
  outline: readonly ViewLine[],
  iso: boolean,
  { section, tolerance }: ThreadSettings,
): ViewLine[] {
  const inPlane =
    section &&
    liesInPlane({ point: t.point, direction: t.outward, reach: t.reach, radius: t.r }, section.point, section.normal)
  if (section && !inPlane) return []
  const across = unit(cross(t.outward, frame.toViewer))
  const at = (s: number, off: number): Vec2 => projectPoint(along(along(t.point, t.outward, s), across, off), frame)
  const u: Vec2 = [dot(across, frame.right), dot(across, frame.up)]
  const foot = at(0, 0)
  const thread = { crest: t.r, root: t.other, across: u, axis: foot[0] * u[0] + foot[1] * u[1] }
  const wall: LineKind = section || t.outside ? 'visible' : 'hidden'
  const root: LineKind = (section || t.outside) && iso ? 'thread' : 'hidden'
  return [1, -1].flatMap((sign) => {
    const pieces = wallPieces(outline, wall, at(0, sign * t.r), projectPoint(t.outward, frame), tolerance)
    if (pieces.length === 0) return []
    // Beyond the ends of the wall the root runs on, into a countersink.
    const [first, last] = [pieces[0]!, pieces.at(-1)!]
    first[0] = Math.min(first[0], t.reach[0])
    last[1] = Math.max(last[1], t.reach[1])
    const threaded = pieces.flatMap(([from, to]): [number, number][] => {
      const [low, high] = [Math.max(from, t.reach[0]), Math.min(to, t.reach[1])]
      return high - low > 10 * tolerance ? [[low, high]] : []
    })
    const ends = t.ends && threaded.some(([low]) => low - t.reach[0] < 10 * tolerance)
    return [
      ...threaded.map(([low, high]) =>
        made(t, root, { kind: 'line', a: at(low, sign * t.other), b: at(high, sign * t.other) }),
      ),
      ...(ends ? [made(t, wall, { kind: 'line', a: at(t.reach[0], 0), b: at(t.reach[0], sign * t.other) })] : []),
    ].map((line): ViewLine => ({ ...line, thread }))
  })
}

/** Where straight lines of this kind run on the line through `p` along `way`: from and to, counted from `p`, joined where they touch. */
function wallPieces(
  outline: readonly ViewLine[],
  kind: LineKind,
  p: Vec2,
  way: Vec2,
  tolerance: number,
): [number, number][] {
  const on: [number, number][] = outline.flatMap(({ kind: k, curve: c }): [number, number][] => {
    if (k !== kind || c.kind !== 'line') return []
    const places = [c.a, c.b].map(([x, y]) => [x - p[0], y - p[1]] as const)
    if (places.some(([x, y]) => Math.abs(x * way[1] - y * way[0]) > 10 * tolerance)) return []
    const [s, e] = places.map(([x, y]) => x * way[0] + y * way[1]) as [number, number]
    return [s < e ? [s, e] : [e, s]]
  })
  const joined: [number, number][] = []
  for (const [s, e] of on.sort((a, b) => a[0] - b[0])) {
    const last = joined.at(-1)
    if (last && s - last[1] < 10 * tolerance) last[1] = Math.max(last[1], e)
    else joined.push([s, e])
  }
  return joined
}

/** Thread lines stand for no edge of the solid: nothing is measured to them. */
const made = (t: Thread, kind: LineKind, curve: ViewLine['curve']): ViewLine => ({
  curve,
  kind,
  sources: [],
  features: [t.feature],
})
