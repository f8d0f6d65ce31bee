import type { Box2 } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { Pencil, SheetItem } from '../../sheet/sheet.ts'

/** What a pencilled mark asks for; told apart without colour by the strokes. */
export type Change = 'add' | 'delete' | 'change' | 'remark'

/** A straight stroke of the pencil, paper mm. */
export function stroke(a: Vec2, b: Vec2, pencil: Pencil, width: number, dashes?: readonly number[]): SheetItem {
  const curve = { kind: 'line', a, b } as const
  return { item: 'stroke', kind: 'symbol', curve, width, pencil, ...(dashes ? { dashes } : {}) }
}

/** A frame about a place; broken by `dash` where given. */
export function frame(box: Box2, pencil: Pencil, width: number, dash?: number): SheetItem[] {
  const [a, c] = [box.min, box.max]
  const corners: Vec2[] = [a, [c[0], a[1]], c, [a[0], c[1]]]
  return corners.map((p, i) => {
    const q = corners[(i + 1) % 4]!
    return stroke(
      p,
      q,
      pencil,
      width,
      dash === undefined ? undefined : even(Math.hypot(q[0] - p[0], q[1] - p[1]), dash),
    )
  })
}

/** On and off lengths that fill a length and end with on. */
function even(length: number, dash: number): number[] {
  const n = 2 * Math.max(1, Math.round(length / dash / 2)) - 1
  return Array.from({ length: n }, () => length / n)
}

/** A filled box, laid under the ink. */
export function tint(box: Box2, pencil: Pencil): SheetItem {
  const [a, c] = [box.min, box.max]
  const corners: Vec2[] = [a, [c[0], a[1]], c, [a[0], c[1]]]
  return {
    item: 'fill',
    kind: 'symbol',
    outline: corners.map((p, i) => ({ kind: 'line', a: p, b: corners[(i + 1) % 4]! })),
    pencil,
  }
}

/** A number in a circle (red) or in a square (blue), so that they differ in black and white too. */
export function balloon(at: Vec2, text: string, pencil: Pencil, r: number): SheetItem[] {
  const ring: SheetItem[] =
    pencil === 'blue'
      ? frame({ min: [at[0] - r, at[1] - r], max: [at[0] + r, at[1] + r] }, pencil, 0.35)
      : [
          {
            item: 'stroke',
            kind: 'symbol',
            curve: { kind: 'arc', c: at, r, from: 0, sweep: 2 * Math.PI },
            width: 0.35,
            pencil,
          },
        ]
  return [
    ...ring,
    {
      item: 'text',
      role: 'label',
      text,
      at: [at[0], at[1] - 1.25],
      height: 2.5,
      anchor: 'middle',
      angle: 0,
      bold: true,
      pencil,
    },
  ]
}

/** Over the framed place: two strokes through it for delete, a caret at its corner for add. */
export function changeStrokes(change: Change, box: Box2, pencil: Pencil): SheetItem[] {
  const [a, c] = [box.min, box.max]
  if (change === 'delete') {
    return [stroke(a, c, pencil, 0.5), stroke([a[0], c[1]], [c[0], a[1]], pencil, 0.5)]
  }
  if (change !== 'add') return []
  const foot: Vec2 = [a[0] - 1, a[1] - 2]
  return [
    stroke(foot, [foot[0] + 1.5, foot[1] + 3], pencil, 0.6),
    stroke([foot[0] + 1.5, foot[1] + 3], [foot[0] + 3, foot[1]], pencil, 0.6),
  ]
}
