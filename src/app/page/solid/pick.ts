import { pointAt } from '../../../geometry/evaluate.ts'
import type { Vec2 } from '../../../geometry/vec.ts'
import type { Drawn, Seen, SeenLine, SolidPicture } from '../engine/messages.ts'
import { edgeWords } from '../sheet/why.ts'
import type { Board } from './pose.ts'

/** Places along a curve that are looked at. */
const LOOKS = 24

/** The line of an edge nearest to a point of the board, within `reach` px. */
export function lineAt(seen: Seen, board: Board, point: Vec2, reach: number): SeenLine | undefined {
  const { scale, middle, at } = board
  const [u, v] = [middle[0] + (point[0] - at[0]) / scale, middle[1] - (point[1] - at[1]) / scale]
  let best: SeenLine | undefined
  let least = reach / scale
  for (const line of seen.lines) {
    if (line.edges.length === 0) continue
    const looks = line.curve.kind === 'line' ? 1 : LOOKS
    let a = pointAt(line.curve, 0)
    for (let i = 1; i <= looks; i++) {
      const b = pointAt(line.curve, i / looks)
      const off = away([u, v], a, b)
      if (off < least) {
        least = off
        best = line
      }
      a = b
    }
  }
  return best
}

function away(p: Vec2, a: Vec2, b: Vec2): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const square = dx * dx + dy * dy
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square))
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy)
}

/** The edges in sight, one stop each where they have the same name, each with its line. */
export function edgeStops(
  seen: Seen,
  solid: SolidPicture,
  drawn: Drawn,
): { readonly edge: number; readonly line: SeenLine; readonly words: string }[] {
  const named = new Set<string>()
  return seen.lines.flatMap((line) => {
    const edge = line.edges[0]
    if (edge === undefined) return []
    const words = edgeWords(drawn.edges, solid.faceWords, edge)
    if (named.has(words)) return []
    named.add(words)
    return [{ edge, line, words }]
  })
}
