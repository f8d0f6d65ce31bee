import type { Vec2 } from '../../geometry/vec.ts'
import type { Body } from '../../kernel/body.ts'
import { endSides, faceAxes } from '../../part/sides.ts'
import { SAME } from '../recognise/borders.ts'
import type { Outline, OutlineSide } from './outline.ts'
import { statement, type Wording } from './wording.ts'

/** The side of the stock that shows its outline. */
const SHOWN = ['right', 'front', 'top'] as const

/**
 * What is taken off the rectangle about an outline, as steps along its corners and square notches from its edges.
 * Undefined where it is anything else than rectangles.
 */
export function cutOff(body: Body, outline: Outline, words: Wording): readonly string[] | undefined {
  const { axis, sides } = outline
  if (sides.some((s) => s.kind !== 'line' || !isLevel(s))) return undefined
  const { across, up } = faceAxes(axis)
  const size: Vec2 = [body.box.max[across] - body.box.min[across], body.box.max[up] - body.box.min[up]]
  const lines: string[] = []
  for (const run of runsInside(sides, size)) {
    const start = run[0]!.from
    const end = run.at(-1)!.to
    if (run.length === 2) {
      const [i, j] = [borderOf(start, size), borderOf(end, size)]
      if (!i || !j || i.level === j.level) return undefined
      const sideName = (b: Border) => endSides[b.level === 0 ? across : up]![b.high ? 1 : 0]
      const depth = (b: Border, other: Vec2) => Math.abs(other[b.level] - (b.high ? size[b.level] : 0))
      // each run ends on one border: its depth from it is where the run's other end stands
      const named = [
        { side: sideName(i), mm: depth(i, end) },
        { side: sideName(j), mm: depth(j, start) },
      ]
      lines.push(
        statement(
          'step',
          `${named.map((n) => n.side).join(' ')}: ${named.map((n) => `${words.length(n.mm)} from ${n.side}`).join(', ')}`,
        ),
      )
    } else if (run.length === 3) {
      const border = borderOf(start, size)
      if (!border || Math.abs(start[border.level] - end[border.level]) > SAME) return undefined
      const other = border.level === 0 ? 1 : 0
      const wide = Math.abs(end[other] - start[other])
      const deep = Math.abs(run[0]!.to[border.level] - start[border.level])
      const low = Math.min(start[other], end[other])
      const middle = Math.abs(2 * low + wide - size[other]) < 2 * SAME
      const [lowSide] = endSides[other === 0 ? across : up]!
      const side = endSides[border.level === 0 ? across : up]![border.high ? 1 : 0]
      lines.push(
        statement(
          'notch',
          `${SHOWN[axis]}, ${side}: square, ${words.length(wide)} wide, ${words.length(deep)} deep`,
          middle ? 'centred' : `${LOWER[other === 0 ? across : up]} side ${words.length(low)} from ${lowSide}`,
        ),
      )
    } else return undefined
  }
  return lines
}

const LOWER = ['left', 'front', 'lower'] as const

const isLevel = (s: OutlineSide): boolean =>
  Math.abs(s.from[0] - s.to[0]) < SAME || Math.abs(s.from[1] - s.to[1]) < SAME

interface Border {
  readonly level: 0 | 1
  readonly high: boolean
}

/** The edge of the rectangle that a point lies on. */
function borderOf(p: Vec2, size: Vec2): Border | undefined {
  for (const level of [0, 1] as const) {
    if (Math.abs(p[level]) < SAME) return { level, high: false }
    if (Math.abs(p[level] - size[level]) < SAME) return { level, high: true }
  }
  return undefined
}

/** Sides that follow one another off the rectangle's edges. */
function runsInside(sides: readonly OutlineSide[], size: Vec2): OutlineSide[][] {
  const onEdge = (s: OutlineSide) =>
    ([0, 1] as const).some((k) =>
      [0, size[k]].some((at) => Math.abs(s.from[k] - at) < SAME && Math.abs(s.to[k] - at) < SAME),
    )
  const first = sides.findIndex(onEdge)
  const round = first < 0 ? [] : [...sides.slice(first), ...sides.slice(0, first)]
  const runs: OutlineSide[][] = []
  let open: OutlineSide[] | undefined
  for (const side of round) {
    if (onEdge(side)) open = undefined
    else if (open) open.push(side)
    else {
      open = [side]
      runs.push(open)
    }
  }
  return runs
}
