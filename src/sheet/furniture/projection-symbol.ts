import type { Projection } from '../../brief/brief.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { SheetItem } from '../sheet.ts'

/**
 * The symbol of the projection method, ISO 5456-2:1996 Annex A (ASME Y14.3 takes over the same): a truncated cone, large
 * diameter 2h, small diameter h, length 2h, and its end view; proportions from memory. The end view shows both
 * circles, so it is the view of the small end: it stands beside that end in third angle, beside the other in first.
 *
 * @param centre middle of the symbol, paper mm
 * @param h lettering height, mm
 */
export function projectionSymbol(
  projection: Projection,
  centre: Vec2,
  h: number,
  widths: { readonly thick: number; readonly thin: number },
): SheetItem[] {
  const [x, y] = centre
  const third = projection === 'third angle'
  const cone = x + (third ? 0.5 : -2.5) * h
  const circles = x + (third ? -1.5 : 1.5) * h
  const overrun = 0.5 * h
  const line = (a: Vec2, b: Vec2, width: number, dashes?: readonly number[]): SheetItem => ({
    item: 'stroke',
    kind: 'symbol',
    curve: { kind: 'line', a, b },
    width,
    ...(dashes ? { dashes } : {}),
  })
  // Small end at the left, large end at the right.
  const [l, r] = [cone, cone + 2 * h]
  const outline: readonly [Vec2, Vec2][] = [
    [
      [l, y - h / 2],
      [l, y + h / 2],
    ],
    [
      [l, y + h / 2],
      [r, y + h],
    ],
    [
      [r, y + h],
      [r, y - h],
    ],
    [
      [r, y - h],
      [l, y - h / 2],
    ],
  ]
  const circle = (radius: number): SheetItem => ({
    item: 'stroke',
    kind: 'symbol',
    curve: { kind: 'arc', c: [circles, y], r: radius, from: 0, sweep: 2 * Math.PI },
    width: widths.thick,
  })
  const chain = (length: number): number[] => {
    const gap = 0.18 * h
    const short = 0.3 * h
    const long = (length - 2 * gap - short) / 2
    return [long, gap, short, gap, long]
  }
  const axis = (a: Vec2, b: Vec2) => line(a, b, widths.thin, chain(Math.hypot(b[0] - a[0], b[1] - a[1])))
  return [
    ...outline.map(([a, b]) => line(a, b, widths.thick)),
    circle(h),
    circle(h / 2),
    axis([l - overrun, y], [r + overrun, y]),
    axis([circles - h - overrun, y], [circles + h + overrun, y]),
    axis([circles, y - h - overrun], [circles, y + h + overrun]),
  ]
}
