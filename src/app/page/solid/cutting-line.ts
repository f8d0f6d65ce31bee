import type { Curve2 } from '../../../geometry/curve2.ts'
import type { Vec2, Vec3 } from '../../../geometry/vec.ts'
import { arrowhead } from '../../../sheet/arrowhead.ts'
import type { PracticeFigures } from '../../../standards/practice-figures.ts'
import { fitChain } from '../../../views/dashes/chain.ts'
import { FRAMES } from '../../../views/frames.ts'
import { type PlaneInHand, standingAt } from './cutting-plane.ts'
import { type Board, onBoard } from './pose.ts'

/** How far the line's ends stand clear of the part, its arrows' length, and from arrow to letter: paper mm, as on a sheet. */
const CLEAR = 6
const ARROW = 9
const LETTER = 4.5
/** A line that cuts nothing yet lies this far before the part. */
const READY = 9

/** A cutting-plane line as it stands on the slip, in px. */
export interface LineOnSlip {
  readonly strokes: readonly { readonly curve: Curve2; readonly width: number; readonly dashes?: readonly number[] }[]
  readonly heads: readonly (readonly Curve2[])[]
  readonly letters: readonly { readonly at: Vec2; readonly height: number }[]
  /** Px that the line goes for each mm that the plane is brought in. */
  readonly way: Vec2
}

interface Box {
  readonly min: Vec3
  readonly max: Vec3
}

/**
 * The cutting-plane line A–A laid over the part where the plane leaves it, in the pictorial: its ends turn into arrows in
 * the direction of sight and carry the letters (ASME Y14.3; ISO 128-3: the arrows come from behind and meet the line).
 *
 * @param reach how far the material reaches in the plane, mm
 * @param px px for a paper mm
 */
export function cuttingLine(
  plane: PlaneInHand,
  box: Box,
  reach: Box,
  board: Board,
  figures: PracticeFigures,
  px: number,
): LineOnSlip {
  const normal = FRAMES[plane.side].toViewer
  const { frame, scale } = board
  const mm = px / scale
  const k = normal.findIndex((c) => c !== 0)
  const sight = normal.map((c) => -c) as unknown as Vec3
  // It lies on that side of the cut that the viewer sees best, along the longer one of two that are seen alike.
  const others = [0, 1, 2].filter((a) => a !== k)
  const wide = (a: number) => reach.max[a]! - reach.min[a]!
  const shown = (a: number) => Math.abs(frame.toViewer[a]!) * wide(others.find((o) => o !== a)!)
  const lies = k === 2 ? others.sort((a, b) => shown(b) - shown(a))[0]! : 2
  const runs = others.find((a) => a !== lies)!
  const level = standingAt(plane, box) + (plane.depth > 0 ? 0 : READY * mm * normal[k]!)
  const shelf = frame.toViewer[lies]! < -1e-9 ? reach.min[lies]! : reach.max[lies]!
  const point = (along: number, back = 0): Vec3 => {
    const p = [0, 0, 0]
    p[k] = level + back * sight[k]!
    p[lies] = shelf
    p[runs] = along
    return p as unknown as Vec3
  }
  const ends = [reach.min[runs]! - CLEAR * mm, reach.max[runs]! + CLEAR * mm] as const
  const [a, b] = ends.map((e) => onBoard(board, point(e))) as [Vec2, Vec2]
  const { thick, thin } = figures.widths
  const iso = figures.practice === 'ISO'
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  const dashes = fitChain(long / px, figures.dashes.cuttingPlane).dashes?.map((d) => d * px)
  const strokes: { curve: Curve2; width: number; dashes?: readonly number[] }[] = [
    { curve: { kind: 'line', a, b }, width: (iso ? thin : thick) * px, ...(dashes ? { dashes } : {}) },
  ]
  if (iso) {
    const thicker = Math.min(7 * px, long / 2)
    for (const [p, q] of [
      [a, b],
      [b, a],
    ] as const) {
      const d: Vec2 = [(q[0] - p[0]) / long, (q[1] - p[1]) / long]
      strokes.push({
        curve: { kind: 'line', a: p, b: [p[0] + d[0] * thicker, p[1] + d[1] * thicker] },
        width: thick * px,
      })
    }
  }
  const heads: Curve2[][] = []
  const letters: { at: Vec2; height: number }[] = []
  const size = { length: 4.5 * px, width: 1.7 * px }
  for (const [end, out] of [
    [ends[0], -1],
    [ends[1], 1],
  ] as const) {
    const [tail, tip] = [
      onBoard(board, point(end, iso ? -ARROW * mm : 0)),
      onBoard(board, point(end, iso ? 0 : ARROW * mm)),
    ]
    const l = Math.hypot(tip[0] - tail[0], tip[1] - tail[1])
    if (l > size.length) {
      const way: Vec2 = [(tip[0] - tail[0]) / l, (tip[1] - tail[1]) / l]
      const neck: Vec2 = [tip[0] - way[0] * size.length * 0.9, tip[1] - way[1] * size.length * 0.9]
      strokes.push({ curve: { kind: 'line', a: tail, b: neck }, width: (iso ? thin : thick) * px })
      heads.push(arrowhead(tip, way, size))
    }
    const height = figures.lettering.sectionLetter * 0.8 * px
    // Beside the stem, on the outer side.
    const off = (out * LETTER * px) / (long || 1)
    const [x, y] = [(tail[0] + tip[0]) / 2 + (b[0] - a[0]) * off, (tail[1] + tip[1]) / 2 + (b[1] - a[1]) * off]
    letters.push({ at: [x, y + height / 2], height })
  }
  const [from, to] = [onBoard(board, [0, 0, 0]), onBoard(board, sight)]
  return { strokes, heads, letters, way: [to[0] - from[0], to[1] - from[1]] }
}

/** mm by which the plane is brought in when the hand goes so many px; where it is seen square on, as if a little turned. */
export function broughtBy([x, y]: Vec2, [dx, dy]: Vec2, scale: number): number {
  const length = Math.hypot(x, y)
  const least = 0.3 * scale
  if (length < 1e-6 * scale) return -dy / scale
  const share = (dx * x + dy * y) / length
  return share / Math.max(length, least)
}
