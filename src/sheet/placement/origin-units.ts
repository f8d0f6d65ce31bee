import type { Vec2 } from '../../geometry/vec.ts'
import type { HoleTable } from '../../sizes/dimension.ts'
import { blockOf } from './callout-block.ts'
import {
  arrow,
  type Desk,
  type Drawn,
  drawn,
  line,
  type Member,
  nothing,
  type Option,
  textSlab,
  type Unit,
} from './form.ts'
import { onPaper } from './ink.ts'
import { at } from './line-setting.ts'
import { extensionStart } from './linear-form.ts'
import { once } from './once.ts'
import { originCircle } from './origin-circle.ts'
import { bar, type Shape } from './shapes.ts'
import { outlineLevel } from './sides.ts'
import { back, dot } from './vec.ts'

/** Lengths of the axes past the outline, mm. */
const LENGTHS = [8, 14, 20, 28]
/** Diameter of the origin's circle where the practice has none of its own, mm (ISO 129-1:2018 §9.4: 3 mm, from memory). */
const CIRCLE = 3

/** From the extension line to the point of an axis's arrow, mm. */
const AXIS = 8

/**
 * The origin of a hole table: a circle at the origin, and at each edge through it an extension line with an arrow the way
 * that the coordinate grows, its letter at the point (ASME Y14.5-2018 Fig. 4-49, from memory).
 */
export function originUnits(desk: Desk, owner: number, table: HoleTable): Unit[] {
  const origin = onPaper(desk.ink.views[owner]!.placed, table.origin)
  const [wx, wy] = table.ways ?? [1, 1]
  const axes = [
    ['X', [wx, 0]],
    ['Y', [0, wy]],
  ] as const
  const options = LENGTHS.flatMap((length) =>
    // Both away from the part, which lies the way that the coordinates grow.
    [0, 1, 2, 3].map((k): Option => {
      const out = (u: Vec2, turnedBack: boolean) => (turnedBack ? back(u) : u)
      return {
        own: 0.1 * length + 0.6 * k,
        settled: true,
        members: once(() =>
          axes.map(([letter, u], i) => {
            const across: Vec2 = i === 0 ? [0, wy] : [wx, 0]
            return member(desk, owner, table, origin, u, out(across, ((k >> i) & 1) === 0), letter, length, i === 0)
          }),
        ),
      }
    }),
  )
  return [
    {
      id: `origin ${table.view}`,
      owner,
      dimensions: [],
      rank: [0, -1],
      options: options.sort((x, y) => x.own - y.own),
      name: 'the origin of the hole table',
    },
  ]
}

function member(
  desk: Desk,
  owner: number,
  table: HoleTable,
  origin: Vec2,
  u: Vec2,
  n: Vec2,
  letter: string,
  length: number,
  marked: boolean,
): Member {
  const f = desk.figures
  const s = dot(origin, u)
  const from = extensionStart(desk, owner, origin, n)
  const end = Math.max(from, outlineLevel(desk.ink.views[owner]!, n)) + length
  const block = blockOf({ lines: [[letter]] }, f)
  const centre = at(u, n, s + AXIS + 1 + (u[0] !== 0 ? block.width : block.height) / 2, end)
  const axis = line('dimension', at(u, n, s, end), at(u, n, s + AXIS, end))
  const shapes: Shape[] = [
    textSlab(block, centre, 0),
    bar('extension', at(u, n, s, from), at(u, n, s, end + f.overshoot)),
    axis.shape,
    arrow(at(u, n, s + AXIS, end), u, f),
  ]
  const circle = originCircle(origin, (f.practice.originCircle ?? CIRCLE) / 2)
  const strokes: Drawn['strokes'] = [{ kind: 'dimension', curve: axis.curve }, ...(marked ? [circle.stroke] : [])]
  if (marked) shapes.push(...circle.shapes)
  return {
    dimension: undefined,
    tie: { view: table.view },
    fixed: nothing(),
    alternatives: [{ own: 0, ...drawn(shapes, strokes, [{ block, centre, angle: 0, justify: 'middle' }]) }],
  }
}
