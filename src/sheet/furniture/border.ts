import type { Box2 } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { type Format, zoneLetters } from '../../standards/formats.ts'
import type { PracticeFigures } from '../../standards/practice-figures.ts'
import { boxOf, heightOf, widthOf } from '../arrange/boxes.ts'
import type { SheetItem } from '../sheet.ts'

/** The frame of the drawing space, paper mm. */
export function frameOf(format: Format): Box2 {
  const m = format.margins
  return boxOf(m.left, m.bottom, format.width - m.right, format.height - m.top)
}

/** Frame, zones and centring marks. */
export function border(format: Format, figures: PracticeFigures): SheetItem[] {
  const frame = frameOf(format)
  const { thick, thin } = figures.widths
  const line = (a: Vec2, b: Vec2, width: number): SheetItem => ({
    item: 'stroke',
    kind: 'border',
    curve: { kind: 'line', a, b },
    width,
  })
  const items = rectangle(frame).map(([a, b]) => line(a, b, format.zones?.bordered ? FRAME_WIDTH : thick))
  const zones = format.zones
  if (zones) {
    const z = zones.strip
    const outer = boxOf(frame.min[0] - z, frame.min[1] - z, frame.max[0] + z, frame.max[1] + z)
    if (zones.bordered) items.push(...rectangle(outer).map(([a, b]) => line(a, b, GRID_WIDTH)))
    const up = cuts(zones.rows, zones.row, format.height / 2)
    const across = cuts(zones.columns, zones.column, format.width / 2)
    for (const side of zones.sides) {
      const level = side === 'left' || side === 'right'
      const [lo, hi] = level ? [frame.min[1], frame.max[1]] : [frame.min[0], frame.max[0]]
      const edge = { left: frame.min[0], right: frame.max[0], bottom: frame.min[1], top: frame.max[1] }[side]
      const out = side === 'left' || side === 'bottom' ? -z : z
      const on = (along: number, off: number): Vec2 => (level ? [edge + off, along] : [along, edge + off])
      const inner = level ? up : across
      for (const c of inner) {
        // The centring mark stands on the middle division.
        if (Math.abs(c - (level ? format.height : format.width) / 2) < 1e-6) continue
        items.push(line(on(c, 0), on(c, out), zones.bordered ? GRID_WIDTH : thin))
      }
      const stops = [lo, ...inner, hi]
      for (let i = 0; i + 1 < stops.length; i++) {
        const middle = (stops[i]! + stops[i + 1]!) / 2
        const count = stops.length - 1
        const height = Math.min(figures.lettering.zone, z * 0.75)
        const [x, y] = on(middle, out / 2)
        items.push({
          item: 'text',
          role: 'zone',
          text: zoneName(level, i, count, zones.origin),
          at: [x, y - height / 2],
          height,
          anchor: 'middle',
          angle: 0,
        })
      }
    }
  }
  for (const [from, to] of centringMarks(format)) items.push(line(from, to, format.centring.width))
  return items
}

/** From outside the frame to inside it, in the middle of each side. */
function centringMarks(format: Format): readonly (readonly [Vec2, Vec2])[] {
  const frame = frameOf(format)
  const c = format.centring
  const [mx, my] = [format.width / 2, format.height / 2]
  // A narrow sheet's title block fills the lower edge: the mark then ends at the frame.
  const below = widthOf(frame) < 2 * 180 ? 0 : c.inside
  return [
    [
      [mx, frame.max[1] + c.outside],
      [mx, frame.max[1] - c.inside],
    ],
    [
      [mx, frame.min[1] - c.outside],
      [mx, frame.min[1] + below],
    ],
    [
      [frame.min[0] - c.outside, my],
      [frame.min[0] + c.inside, my],
    ],
    [
      [frame.max[0] + c.outside, my],
      [frame.max[0] - c.inside, my],
    ],
  ]
}

/** What the centring marks take inside the frame, with their width. */
export function centringBoxes(format: Format): Box2[] {
  const half = format.centring.width / 2
  return centringMarks(format).map(([a, b]) =>
    boxOf(
      Math.min(a[0], b[0]) - half,
      Math.min(a[1], b[1]) - half,
      Math.max(a[0], b[0]) + half,
      Math.max(a[1], b[1]) + half,
    ),
  )
}

/** ISO 5457:1999 §4.2: frame 0.7 mm; §4.4: grid lines 0.35 mm. */
const FRAME_WIDTH = 0.7
const GRID_WIDTH = 0.35

/** Divisions of a side, counted both ways from its middle; the outermost zones reach to the frame. */
function cuts(count: number, length: number, middle: number): number[] {
  return Array.from({ length: count - 1 }, (_, i) => middle + (i + 1 - count / 2) * length)
}

function zoneName(level: boolean, i: number, count: number, origin: 'upper left' | 'lower right'): string {
  if (level) return zoneLetters[origin === 'upper left' ? count - 1 - i : i]!
  return String(origin === 'upper left' ? i + 1 : count - i)
}

function rectangle(b: Box2): [Vec2, Vec2][] {
  const [x0, y0] = b.min
  const [x1, y1] = [x0 + widthOf(b), y0 + heightOf(b)]
  return [
    [
      [x0, y0],
      [x1, y0],
    ],
    [
      [x1, y0],
      [x1, y1],
    ],
    [
      [x1, y1],
      [x0, y1],
    ],
    [
      [x0, y1],
      [x0, y0],
    ],
  ]
}
