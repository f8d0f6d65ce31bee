import type { Curve2 } from '../../geometry/curve2.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { Sign } from '../../sizes/annotation.ts'
import { lettering } from '../lettering/lettering.ts'
import type { SheetItem, Tie } from '../sheet.ts'

/** A drawn sign in paper mm, its lower left corner at (0, 0). */
export interface Art {
  readonly sign: Sign
  readonly width: number
  readonly height: number
  readonly strokes: readonly Curve2[]
  readonly fills: readonly (readonly Curve2[])[]
  readonly texts: readonly {
    readonly text: string
    readonly at: Vec2
    readonly anchor: 'start' | 'middle'
    /** Stays upright about the point half its height above `at`, however the art is turned. */
    readonly upright?: true
  }[]
  /** Strokes that stand for a character. */
  readonly glyphs: readonly { readonly text: string; readonly at: Vec2; readonly strokes: readonly Curve2[] }[]
}

export const lines = (...p: readonly Vec2[]): Curve2[] => p.slice(1).map((b, i) => ({ kind: 'line', a: p[i]!, b }))
export const box = (x: number, y: number, w: number, h: number): Curve2[] =>
  lines([x, y], [x + w, y], [x + w, y + h], [x, y + h], [x, y])

export interface ArtPlace {
  /** Where the art's lower left corner goes; its own x runs along `angle` (degrees). */
  readonly at: Vec2
  readonly angle: number
  /** Lettering height and width of thin lines, mm. */
  readonly height: number
  readonly line: number
  readonly tie: Tie
}

/** The art as sheet items, tied to its own statement of the brief. */
export function artItems(art: Art, { at, angle, height, line, tie }: ArtPlace): SheetItem[] {
  const turn = (angle * Math.PI) / 180
  const put = ([x, y]: Vec2): Vec2 => [
    at[0] + x * Math.cos(turn) - y * Math.sin(turn),
    at[1] + x * Math.sin(turn) + y * Math.cos(turn),
  ]
  const set = (c: Curve2): Curve2 => placed(c, put, turn)
  const own: Tie = { ...tie, dimension: art.sign.id, span: art.sign.span }
  return [
    ...art.strokes.map((c): SheetItem => ({ item: 'stroke', kind: 'symbol', curve: set(c), width: line, tie: own })),
    ...art.fills.map((f): SheetItem => ({ item: 'fill', kind: 'symbol', outline: f.map(set), tie: own })),
    ...art.glyphs.map(
      (g): SheetItem => ({
        item: 'glyph',
        text: g.text,
        at: put(g.at),
        height,
        angle,
        strokes: g.strokes.map(set),
        width: height * STROKE,
        tie: own,
      }),
    ),
    ...art.texts.flatMap((t) => {
      const [x, y] = put([t.at[0], t.at[1] + height / 2])
      const [at, turned] = t.upright ? [[x, y - height / 2] as const, 0] : [put(t.at), angle]
      return lettering(t.text, { role: 'dimension', at, height, anchor: t.anchor, angle: turned, tie: own })
    }),
  ]
}

/** Strokes of drawn characters: a tenth of the lettering height (ISO 3098-1 type B). */
const STROKE = 0.1

function placed(c: Curve2, put: (p: Vec2) => Vec2, turn: number): Curve2 {
  if (c.kind === 'line') return { kind: 'line', a: put(c.a), b: put(c.b) }
  if (c.kind === 'arc') return { ...c, c: put(c.c), from: c.from + turn }
  throw new Error('signs are drawn with lines and arcs')
}
