import type { Box2 } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'
import type { PracticeFigures } from '../standards/practice-figures.ts'
import { fitChain } from '../views/dashes/chain.ts'
import type { CuttingPlane, View } from '../views/view.ts'
import { boxOf } from './arrange/boxes.ts'
import { arrowhead } from './arrowhead.ts'
import { lettering, letteringBox, textWidth } from './lettering/lettering.ts'
import type { SheetItem, Tie } from './sheet.ts'

/** How far the line's ends stand clear of the outline. */
const CLEAR = 5
/** Length of a thick end where only ends and corners are thick (ISO 128-3, from memory: wide at ends and changes of direction). */
const THICK_END = 7
/** Arrow stem with head. */
const ARROW = 9
/** Between a letter and where an extension line will want to pass. */
const BESIDE_LETTER = 0.8

/** What a cutting-plane line takes beside the outline it passes, paper mm. */
export function cuttingPlaneReach(figures: PracticeFigures): number {
  return CLEAR + figures.lettering.sectionLetter + 4
}

export interface DrawnPlane {
  readonly items: readonly SheetItem[]
  /** Letters: nothing else may stand there. */
  readonly taken: readonly Box2[]
  /** Arrows: at need an extension line may cross one. */
  readonly arrows: readonly Box2[]
}

/**
 * A cutting-plane line with arrows and letters. ASME Y14.3: one thick line whose turned ends carry the arrowheads, tips
 * away from the line in the direction of sight. ISO 128-3: narrow long-dashed dotted line, wide at ends and corners,
 * arrows whose tips meet the ends. Letters stand upright outside the arrows (both).
 *
 * @param onPaper part mm of the view to paper mm
 * @param outline the view's outline on paper
 * @param edges where the view's straight lines would run on through the letters: each letter stands clear of them where its
 *   arrow leaves the choice, so that sizes can be brought out there
 */
export function cuttingPlaneLine(
  plane: CuttingPlane,
  onPaper: (p: Vec2) => Vec2,
  outline: Box2,
  figures: PracticeFigures,
  tie: Tie,
  edges: readonly [across: readonly number[], up: readonly number[]] = [[], []],
): DrawnPlane {
  const whole = cuttingPlanePath(plane, onPaper, outline)
  if (whole.length < 2) return { items: [], taken: [], arrows: [] }
  const ends = [whole[0]!, whole.at(-1)!] as const
  const { thick, thin } = figures.widths
  const items: SheetItem[] = []
  const taken: Box2[] = []
  const arrows: Box2[] = []
  const stroke = (a: Vec2, b: Vec2, width: number, dashes?: readonly number[]) =>
    items.push({
      item: 'stroke',
      kind: 'cutting plane',
      curve: { kind: 'line', a, b },
      width,
      ...(dashes ? { dashes } : {}),
      tie,
    })
  const iso = figures.practice === 'ISO'
  for (let i = 0; i + 1 < whole.length; i++) {
    const [a, b] = [whole[i]!, whole[i + 1]!]
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (iso) {
      const wide = Math.min(THICK_END, length / 2)
      stroke(a, toward(a, b, wide), thick)
      stroke(toward(b, a, wide), b, thick)
      const [c, d] = [toward(a, b, wide), toward(b, a, wide)]
      const rest = length - 2 * wide
      if (rest > 0.1) stroke(c, d, thin, fitChain(rest, figures.dashes.cuttingPlane).dashes)
    } else stroke(a, b, thick, fitChain(length, figures.dashes.cuttingPlane).dashes)
  }
  const head = {
    length: Math.max(figures.arrowhead.length * 1.5, 4),
    width: Math.max(figures.arrowhead.width * 1.5, 1.4),
  }
  const height = figures.lettering.sectionLetter
  for (const [end, inner, sight] of [
    [ends[0], whole[1]!, plane.sight],
    [ends[1], whole.at(-2)!, plane.farSight ?? plane.sight],
  ] as const) {
    const away = unit([end[0] - inner[0], end[1] - inner[1]])
    // ASME: from the end of the line forward; ISO: from behind, tip on the line. So too where a half section's line runs
    // towards the viewer: forward it would lie on the line.
    const inLine = away[0] * sight[0] + away[1] * sight[1] < -0.9
    const behind = iso || inLine
    const tip: Vec2 = behind ? end : [end[0] + sight[0] * ARROW, end[1] + sight[1] * ARROW]
    const tail: Vec2 = behind ? [end[0] - sight[0] * ARROW, end[1] - sight[1] * ARROW] : end
    const neck: Vec2 = [tip[0] - sight[0] * head.length * 0.9, tip[1] - sight[1] * head.length * 0.9]
    stroke(tail, neck, iso ? thin : thick)
    items.push({ item: 'fill', kind: 'arrowhead', outline: arrowhead(tip, sight, head), tie })
    // Letter beside the stem, on the outer side: of an arrow in line with its line, the one that the corner turns from.
    const beside = inLine ? turnedFrom(away, [ends[0], ends[1]].find((e) => e !== end)!, inner) : away
    const k = Math.abs(beside[0]) > 0.5 ? 1 : 0
    const half = k === 0 ? textWidth(plane.letter, height) / 2 : height / 2
    const inTheWay = (t: number) =>
      edges[k].some((x) => Math.abs(x - (tail[k] + t * (tip[k] - tail[k]))) < half + BESIDE_LETTER)
    const t = [0.5, ...(iso ? [1, 0] : [0, 1])].find((x) => !inTheWay(x)) ?? 0.5
    const middle: Vec2 = [tail[0] + t * (tip[0] - tail[0]), tail[1] + t * (tip[1] - tail[1])]
    const off = 1.5 + (k === 1 ? height * 0.4 : height / 2) + 0.5
    const centre: Vec2 = [middle[0] + beside[0] * off, middle[1] + beside[1] * off]
    const place = {
      at: [centre[0], centre[1] - height / 2] as Vec2,
      height,
      anchor: 'middle' as const,
      role: 'label' as const,
      tie,
    }
    items.push(...lettering(plane.letter, place))
    taken.push(letteringBox(plane.letter, place))
    arrows.push(around(tip, tail, head.width / 2 + 0.5))
  }
  return { items, taken, arrows }
}

/**
 * Where the straight lines of a view lie on paper that run upright (across) and level (up), and where those at its border
 * end: sizes begin there.
 */
export function edgesOf(view: View, onPaper: (p: Vec2) => Vec2): readonly [number[], number[]] {
  const out: readonly [number[], number[]] = [[], []]
  const corners = [onPaper(view.box.min), onPaper(view.box.max)]
  for (const { kind, curve } of view.lines) {
    if (curve.kind !== 'line' || (kind !== 'visible' && kind !== 'centre')) continue
    const [a, b] = [onPaper(curve.a), onPaper(curve.b)]
    for (const k of [0, 1] as const) {
      if (Math.abs(a[k] - b[k]) > 1e-6) continue
      out[k].push(a[k])
      const atBorder = kind === 'visible' && corners.some((c) => Math.abs(c[k] - a[k]) < 1e-6)
      if (atBorder) out[k === 0 ? 1 : 0].push(a[k === 0 ? 1 : 0], b[k === 0 ? 1 : 0])
    }
  }
  return out
}

/** The line as drawn: its ends stand clear of the outline. Empty where the plane has no extent. */
export function cuttingPlanePath(plane: CuttingPlane, onPaper: (p: Vec2) => Vec2, outline: Box2): readonly Vec2[] {
  const path = plane.path.map(onPaper)
  if (path.length < 2) return []
  return [prolonged(path[1]!, path[0]!, outline), ...path.slice(1, -1), prolonged(path.at(-2)!, path.at(-1)!, outline)]
}

/** The end moved outward along its segment until it stands clear of the outline. */
function prolonged(inner: Vec2, end: Vec2, outline: Box2): Vec2 {
  const d = unit([end[0] - inner[0], end[1] - inner[1]])
  const wanted = (k: 0 | 1) => (d[k] > 0 ? outline.max[k] + CLEAR : outline.min[k] - CLEAR)
  const k = Math.abs(d[0]) > Math.abs(d[1]) ? 0 : 1
  const more = (wanted(k) - end[k]) / d[k]
  return more > 0 ? [end[0] + d[0] * more, end[1] + d[1] * more] : end
}

/** Square to a line's end, on the side where the line's other end does not lie from its corner. */
function turnedFrom(away: Vec2, other: Vec2, corner: Vec2): Vec2 {
  const left: Vec2 = [-away[1], away[0]]
  const on = (other[0] - corner[0]) * left[0] + (other[1] - corner[1]) * left[1]
  return on > 0 ? [away[1], -away[0]] : left
}

function toward(a: Vec2, b: Vec2, s: number): Vec2 {
  const d = unit([b[0] - a[0], b[1] - a[1]])
  return [a[0] + d[0] * s, a[1] + d[1] * s]
}

function unit(d: Vec2): Vec2 {
  const l = Math.hypot(d[0], d[1]) || 1
  return [d[0] / l, d[1] / l]
}

function around(a: Vec2, b: Vec2, by: number): Box2 {
  return boxOf(
    Math.min(a[0], b[0]) - by,
    Math.min(a[1], b[1]) - by,
    Math.max(a[0], b[0]) + by,
    Math.max(a[1], b[1]) + by,
  )
}
