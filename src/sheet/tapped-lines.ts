import type { Curve2 } from '../geometry/curve2.ts'
import type { Vec2 } from '../geometry/vec.ts'
import type { Dimension, LeaderTarget } from '../sizes/dimension.ts'
import type { PracticeFigures } from '../standards/practice-figures.ts'
import type { View, ViewLine } from '../views/view.ts'

/** Crest within root as a share of the radius: the tapping drill is about 0.85 of the thread (common practice). */
const DEPTH = 0.15
/** Least radius of a crest in widths of its line: drawn smaller, it fills (common practice, no source). */
const LEAST_CREST = 1.5

/** A circle is left out only beside one that differs from it by no more than this share. */
const BESIDE = 0.25

/**
 * The view with its threads as they can be printed at `scale`: thick and thin line no nearer than twice the wide line or
 * 0.7 mm (ISO 6410-1 §3.2.1). ASME Y14.6 draws threads simplified, not to scale, and gives no figure: there the least
 * space between lines is kept, and as much white as a narrow line. Where they would be nearer, the thin line gives way:
 * outward in a hole, inward on a shaft.
 *
 * Tapped holes that are modelled at the thread's size get their conventional lines: the line at hand is the root, narrow
 * (ISO 6410-1: end-on three quarters of a circle open at the upper right) or dashed (ASME Y14.6, simplified); the crest
 * is drawn within it as the hole itself, with its drill point. Where the hole is too small for that, both part. Hatching goes on to the crest.
 * All from memory.
 */
export function withThreads(view: View, scale: number, figures: PracticeFigures): View {
  if (!view.lines.some((l) => l.tapped || l.thread)) return view
  const { thick, thin } = figures.widths
  const iso = figures.practice === 'ISO'
  const least = Math.max(figures.leastSpace, iso ? 2 * thick : (thick + thin) / 2 + thin) / scale
  const space = { least, crest: (LEAST_CREST * thick) / scale }
  const hatched: View['hatched'][number][] = []
  const lines = view.lines.flatMap((l): ViewLine[] => {
    const { tapped, thread, ...plain } = l
    if (thread) return [{ ...plain, curve: apart(l.curve, thread, least) }]
    const point = tapped && narrowedPoint(l.curve, tapped, space)
    if (point) {
      if (view.hatched.length > 0 && l.kind === 'visible') hatched.push([between(point.own, point.crest)])
      return [{ ...plain, curve: point.crest }]
    }
    const printed = tapped && crestAndRoot(l.curve, tapped, space)
    if (!printed) return [l]
    const { crest, root } = printed
    const narrow = l.kind === 'visible' && iso
    if (view.hatched.length > 0 && l.kind === 'visible' && l.curve.kind === 'line' && crest.kind === 'line')
      hatched.push([between(l.curve, crest)])
    const outer: ViewLine = {
      curve: root.kind === 'arc' ? { ...root, ...tapped.open } : root,
      kind: narrow ? 'thread' : 'hidden',
      sources: plain.sources,
      ...(plain.features ? { features: plain.features } : {}),
      tapped,
    }
    return [outer, { ...plain, curve: crest }]
  })
  return { ...view, lines, hatched: [...view.hatched, ...hatched] }
}

/**
 * The size with its leaders at the circles that `view` prints: at the root of a thread where that had to give way, and at
 * the nearest circle where its own is left out beside another (a shallow countersink of a tapped hole).
 */
export function atPrintedCircles(dimension: Dimension, view: View | undefined): Dimension {
  const { measured } = dimension
  if (!view || measured.kind !== 'leader') return dimension
  const targets = measured.targets.map((t): LeaderTarget => {
    if (t.kind !== 'circle') return t
    const about = view.lines.flatMap(({ curve: c, tapped }) =>
      c.kind === 'arc' && Math.hypot(c.c[0] - t.centre[0], c.c[1] - t.centre[1]) < 1e-6 ? [{ r: c.r, tapped }] : [],
    )
    const root = about.find(({ tapped }) => tapped && Math.abs(tapped.r - t.radius) < 1e-6)
    if (root) return { ...t, radius: root.r }
    const off = ({ r }: { readonly r: number }) => Math.abs(r - t.radius)
    const [nearest] = about.sort((a, b) => off(a) - off(b))
    return nearest && off(nearest) > 1e-6 && off(nearest) < BESIDE * t.radius ? { ...t, radius: nearest.r } : t
  })
  return { ...dimension, measured: { kind: 'leader', targets } }
}

/** Paper figures brought to the part: from crest to root at least, and the least radius of a crest, mm. */
interface Space {
  readonly least: number
  readonly crest: number
}

/** Radii at which a tapped hole of radius `r` is printed. */
function printedRadii(r: number, space: Space): { readonly crest: number; readonly root: number } {
  const by = Math.max(DEPTH * r, space.least)
  const crest = Math.max(r - by, Math.min(space.crest, r))
  return { crest, root: Math.max(r, crest + by) }
}

function crestAndRoot(curve: Curve2, { r, inward }: NonNullable<ViewLine['tapped']>, space: Space) {
  const { crest, root } = printedRadii(r, space)
  if (curve.kind === 'arc') return { crest: { ...curve, r: crest }, root: { ...curve, r: root } }
  if (curve.kind !== 'line' || !inward) return undefined
  return { crest: moved(curve, inward, r - crest), root: moved(curve, inward, r - root) }
}

/** The side of a drill point, from the crest instead of the wall. */
function narrowedPoint(curve: Curve2, { r, about }: NonNullable<ViewLine['tapped']>, space: Space) {
  if (curve.kind !== 'line' || !about) return undefined
  const share = printedRadii(r, space).crest / r
  const at = (p: Vec2): Vec2 => [about[0] + share * (p[0] - about[0]), about[1] + share * (p[1] - about[1])]
  const crest: Line = { kind: 'line', a: at(curve.a), b: at(curve.b) }
  return { own: curve, crest }
}

/** The thin line where it keeps its distance; of a line across the axis the ends that reach the root. */
function apart(curve: Curve2, { crest, root, across, axis }: NonNullable<ViewLine['thread']>, least: number): Curve2 {
  const by = Math.max(0, least - Math.abs(root - crest)) * Math.sign(root - crest)
  if (by === 0) return curve
  if (curve.kind === 'arc') return { ...curve, r: Math.max(curve.r + by, crest / 2) }
  if (curve.kind !== 'line' || !across || axis === undefined) return curve
  const off = (p: Vec2) => p[0] * across[0] + p[1] * across[1] - axis
  const end = (p: Vec2) => {
    if (Math.abs(Math.abs(off(p)) - root) > 1e-6) return p
    return shifted(p, across, Math.sign(off(p)) * Math.max(by, crest / 2 - root))
  }
  return { kind: 'line', a: end(curve.a), b: end(curve.b) }
}

const shifted = (p: Vec2, way: Vec2, by: number): Vec2 => [p[0] + by * way[0], p[1] + by * way[1]]

type Line = Extract<Curve2, { kind: 'line' }>

const moved = ({ a, b }: Line, way: Vec2, by: number): Line => ({
  kind: 'line',
  a: shifted(a, way, by),
  b: shifted(b, way, by),
})

function between(root: Line, crest: Line): readonly Curve2[] {
  const corners = [root.a, root.b, crest.b, crest.a]
  return corners.map((a, i): Curve2 => ({ kind: 'line', a, b: corners[(i + 1) % 4]! }))
}
