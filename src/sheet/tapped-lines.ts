import type { Curve2 } from '../geometry/curve2.ts'
import type { Vec2 } from '../geometry/vec.ts'
import type { PracticeFigures } from '../standards/practice-figures.ts'
import type { View, ViewLine } from '../views/view.ts'

/** Crest within root as a share of the radius: the tapping drill is about 0.85 of the thread (common practice). */
const DEPTH = 0.15

/**
 * The view with the conventional lines of tapped holes that are modelled at the thread's size: the line at hand is the
 * root, narrow (ISO 6410-1: end-on three quarters of a circle open at the upper right) or dashed (ASME Y14.6,
 * simplified); the crest is drawn within it as the hole itself, no nearer than twice the wide line or 0.7 mm (ISO
 * 6410-1 §3.2.1). Hatching goes on to the crest. All from memory.
 */
export function withTappedHoles(view: View, scale: number, figures: PracticeFigures): View {
  if (!view.lines.some((l) => l.tapped)) return view
  const least = Math.max(2 * figures.widths.thick, 0.7) / scale
  const iso = figures.practice === 'ISO'
  const hatched: View['hatched'][number][] = []
  const lines = view.lines.flatMap((l): ViewLine[] => {
    const { tapped, ...plain } = l
    const crest = tapped && crestOf(l.curve, tapped, least)
    if (!crest) return [l]
    const narrow = l.kind === 'visible' && iso
    if (view.hatched.length > 0 && l.kind === 'visible' && l.curve.kind === 'line' && crest.kind === 'line')
      hatched.push([between(l.curve, crest)])
    const root: ViewLine = {
      curve: l.curve.kind === 'arc' ? { ...l.curve, ...tapped?.open } : l.curve,
      kind: narrow ? 'thread' : 'hidden',
      sources: plain.sources,
      ...(plain.features ? { features: plain.features } : {}),
    }
    return [root, { ...plain, curve: crest }]
  })
  return { ...view, lines, hatched: [...view.hatched, ...hatched] }
}

/** Undefined where the hole is too small on paper to show both. */
function crestOf(curve: Curve2, { r, inward }: NonNullable<ViewLine['tapped']>, least: number): Curve2 | undefined {
  const by = Math.max(DEPTH * r, least)
  if (r - by < least) return undefined
  if (curve.kind === 'arc') return { ...curve, r: r - by }
  if (curve.kind !== 'line' || !inward) return undefined
  return { kind: 'line', a: shifted(curve.a, inward, by), b: shifted(curve.b, inward, by) }
}

const shifted = (p: Vec2, way: Vec2, by: number): Vec2 => [p[0] + by * way[0], p[1] + by * way[1]]

type Line = Extract<Curve2, { kind: 'line' }>

function between(root: Line, crest: Line): readonly Curve2[] {
  const corners = [root.a, root.b, crest.b, crest.a]
  return corners.map((a, i): Curve2 => ({ kind: 'line', a, b: corners[(i + 1) % 4]! }))
}
