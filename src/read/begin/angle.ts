import type { Vec2 } from '../../geometry/vec.ts'
import type { Body } from '../../kernel/body.ts'
import { endSides, faceAxes } from '../../part/sides.ts'
import { SAME } from '../recognise/borders.ts'
import { type Outline, type OutlineSide, turnOf } from './outline.ts'
import { statement, type Wording } from './wording.ts'

/**
 * An outline that is an angle of one thickness standing on its base: with a bend's two radii `formed`, with a sharp heel
 * `rolled`. Undefined for any other, and for one without an inside radius.
 */
export function angleStatement(body: Body, outline: Outline, words: Wording): AngleWords | undefined {
  const { axis, sides } = outline
  if (axis === 2) return undefined
  const { across, up } = faceAxes(axis)
  const size: Vec2 = [body.box.max[across] - body.box.min[across], body.box.max[up] - body.box.min[up]]
  const lines = sides.filter((s) => s.kind === 'line')
  const arcs = sides.filter((s): s is Arc => s.kind === 'arc')
  const inside = arcs.filter((a) => a.turn !== turnOf(sides))
  if (lines.length !== 6 || inside.length !== 1) return undefined
  const levels = (k: 0 | 1) => lines.filter((s) => Math.abs(s.from[k] - s.to[k]) < SAME).map((s) => s.from[k])
  const [xs, zs] = [levels(0), levels(1)]
  if (xs.length !== 3 || zs.length !== 3) return undefined
  const wall = inner(xs, size[0])
  const floor = inner(zs, size[1])
  if (wall === undefined || floor === undefined) return undefined
  const high = size[0] - wall < wall
  const thickness = high ? size[0] - wall : wall
  if (Math.abs(thickness - floor) > SAME) return undefined
  const heel: Vec2 = [high ? size[0] : 0, 0]
  const near = (a: Arc, p: Vec2) =>
    ([0, 1] as const).every((k) => Math.min(Math.abs(a.from[k] - p[k]), Math.abs(a.to[k] - p[k])) < SAME)
  const outer = arcs.filter((a) => a !== inside[0])
  const bend = outer.filter((a) => near(a, heel))
  const toes = outer.filter((a) => near(a, [wall, size[1]]) || near(a, [high ? 0 : size[0], floor]))
  if (bend.length + toes.length < outer.length || bend.length > 1) return undefined
  const r = inside[0]!.radius
  if (bend[0] && (toes.length > 0 || Math.abs(bend[0].radius - r - thickness) > SAME)) return undefined
  if (toes.length === 1 || toes.some((t) => Math.abs(t.radius - toes[0]!.radius) > SAME)) return undefined
  const [low, top] = endSides[across]!
  const [at, toward] = high ? [top, low] : [low, top]
  const toe = toes[0] ? `, toe R ${words.length(toes[0].radius)}` : ''
  const length = body.box.max[axis] - body.box.min[axis]
  const line = statement(
    'angle',
    `${bend[0] ? 'formed' : 'rolled'}, ${words.length(thickness)} thick, inside R ${words.length(r)}${toe}`,
    `upright ${words.length(size[1])} high, at ${at}; base ${words.length(size[0])} toward ${toward}; length ${words.length(length)}`,
  )
  const ends = endSides[axis]!
  return {
    line,
    cornerOf: (pair) => {
      if (!pair.some((s) => ends.some((e) => e === s))) return undefined
      return pair.includes('top') ? 'upright, top corners' : pair.includes(toward) ? 'base, toe corners' : undefined
    },
  }
}

export interface AngleWords {
  readonly line: string
  /** The corners of a leg's free end, by the two sides that one of them lies between. */
  readonly cornerOf: (sides: readonly string[]) => string | undefined
}

type Arc = Extract<OutlineSide, { kind: 'arc' }>

/** The one level that is not at either end. */
function inner(levels: readonly number[], size: number): number | undefined {
  const between = levels.filter((l) => l > SAME && l < size - SAME)
  return between.length === 1 ? between[0] : undefined
}
