import type { Practice } from '../../brief/brief.ts'
import { lengthOf, pointAt } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { practiceFigures } from '../../standards/practice-figures.ts'
import { textExtent } from '../lettering/lettering.ts'
import type { Sheet, SheetItem, StrokeKind } from '../sheet.ts'
import {
  alongAxis,
  besides,
  bounds,
  centre,
  collinear,
  convexOverlap,
  crosses,
  distance,
  type Head,
  indexOf,
  onSegment,
  order,
  type Piece,
  properCrossing,
  same,
  segmentInConvex,
  touchesEnd,
} from './audit-geometry.ts'

/**
 * A checker's look at the sizes of a finished sheet. It knows nothing of how they were placed: it measures the items
 * that will be printed, with geometry of its own.
 */
export interface Audit {
  readonly textOnText: number
  readonly textOnLine: number
  /** Arrowheads over other arrowheads, text, or lines that are not theirs. */
  readonly arrowCollisions: number
  /** Dimension lines crossed by extension lines, leaders, outlines or one another. */
  readonly dimensionLineCrossings: number
  /** Extension lines that cross each other; not a fault, but counted. */
  readonly extensionCrossings: number
  /** Parallel dimension lines closer than the practice allows. */
  readonly rowsTooClose: number
  /** Dimension lines closer to a parallel outline than the practice allows. */
  readonly firstRowsTooClose: number
  /** Extension lines that touch, or all but touch, what they start from. */
  readonly gapsMissing: number
  /** Extension lines that do not pass the dimension line. */
  readonly overshootsMissing: number
  /** Level or upright leaders. */
  readonly leadersLevel: number
  readonly findings: readonly Finding[]
}

export interface Finding {
  readonly what: Exclude<keyof Audit, 'findings'>
  readonly at: Vec2
  /** Ids of the sizes concerned. */
  readonly dimensions: readonly string[]
  readonly text: string
}

type Corners = readonly [Vec2, Vec2, Vec2, Vec2]

interface Lettered {
  readonly corners: Corners
  readonly owner: string
  readonly text: string
  readonly sized: boolean
}

const sizeKinds: ReadonlySet<StrokeKind> = new Set(['dimension', 'extension', 'leader'])
const viewKinds: ReadonlySet<StrokeKind> = new Set([
  'visible',
  'hidden',
  'centre',
  'cutting plane',
  'phantom',
  'intersection',
  'thread',
  'hatching',
])

export function auditSizes(sheet: Sheet, practice: Practice): Audit {
  const figures = practiceFigures(practice, sheet.format)
  const findings: Finding[] = []
  const find = (what: Finding['what'], at: Vec2, text: string, ...owners: (string | undefined)[]) =>
    findings.push({ what, at, text, dimensions: owners.filter((o) => o !== undefined) })
  const texts = letteredOf(sheet.items)
  const pieces = piecesOf(sheet.items).filter((p) => sizeKinds.has(p.kind) || viewKinds.has(p.kind))
  const heads = headsOf(sheet.items)
  const ends = endsOf(sheet.items, heads)
  const index = indexOf(pieces)
  const touching = (points: readonly Vec2[], margin = 0) => {
    const [x0, y0, x1, y1] = bounds(points)
    return index ? index.search(x0 - margin, y0 - margin, x1 + margin, y1 + margin).map((i) => pieces[i]!) : []
  }

  for (const [i, t] of texts.entries()) {
    if (!t.sized) continue
    for (const [j, u] of texts.entries()) {
      if (j === i || (u.sized && j < i) || t.owner === u.owner) continue
      if (convexOverlap(t.corners, u.corners, 0.02))
        find('textOnText', t.corners[0], `${t.text} / ${u.text}`, t.owner, u.owner)
    }
    for (const p of touching(t.corners)) {
      if (segmentInConvex(p.a, p.b, t.corners, 0.02))
        find('textOnLine', t.corners[0], `${t.text} / ${p.kind}`, t.owner, p.owner)
    }
    for (const h of heads) {
      if (convexOverlap(h.points, t.corners, 0.02))
        find('arrowCollisions', h.tip, `arrowhead on ${t.text}`, h.owner, t.owner)
    }
  }

  for (const [i, h] of heads.entries()) {
    for (const g of heads.slice(i + 1)) {
      if (convexOverlap(h.points, g.points, 0.1))
        find('arrowCollisions', h.tip, 'arrowhead on arrowhead', h.owner, g.owner)
    }
    for (const p of touching(h.points)) {
      if (p.owner === h.owner && p.owner !== undefined) continue
      if (!segmentInConvex(p.a, p.b, h.points, 0.2)) continue
      // The next size of a chain runs along the head's axis; a circle touches the tip of its leader.
      if (p.kind === 'dimension' && alongAxis(p, h)) continue
      if (viewKinds.has(p.kind) && p.kind !== 'visible') continue
      find('arrowCollisions', h.tip, `arrowhead over ${p.kind}`, h.owner, p.owner)
    }
  }

  for (const p of pieces) {
    if (p.kind === 'leader' && p.straight) {
      const [dx, dy] = [Math.abs(p.b[0] - p.a[0]), Math.abs(p.b[1] - p.a[1])]
      const headed = heads.some((h) => h.owner === p.owner && (same(h.tip, p.a) || same(h.tip, p.b)))
      if (headed && Math.min(dx, dy) < 0.05 * Math.hypot(dx, dy))
        find('leadersLevel', p.a, 'level or upright leader', p.owner)
    }
    if (p.kind !== 'dimension' && p.kind !== 'extension') continue
    for (const q of touching([p.a, p.b])) {
      if (q === p || (q.owner === p.owner && p.owner !== undefined)) continue
      if (!properCrossing(p, q)) continue
      if (p.kind === 'dimension') {
        if (q.kind === 'dimension' && order(p, q)) continue
        // Running sizes share one dimension line: each extension line crosses it at its own head, dot or origin circle.
        if (q.kind === 'extension' && ends.some((e) => onSegment(e, p) && onSegment(e, q))) continue
        if (q.kind === 'extension' || q.kind === 'leader' || q.kind === 'dimension' || q.kind === 'visible') {
          find('dimensionLineCrossings', p.a, `dimension line crossed by ${q.kind}`, p.owner, q.owner)
        }
      } else if (q.kind === 'extension' && !order(p, q))
        find('extensionCrossings', p.a, 'extension lines cross', p.owner, q.owner)
    }
    if (p.kind === 'dimension' && p.straight) {
      // A line through the part from edge to edge is no row: its heads touch what they measure.
      const tips = heads.filter((h) => h.owner === p.owner && p.owner !== undefined).map((h) => h.tip)
      const onEdge = (tip: Vec2) => touching([tip], 0.1).some((q) => q.kind === 'visible' && onSegment(tip, q))
      const within = tips.length === 2 && tips.every(onEdge)
      for (const q of touching([p.a, p.b], figures.rows.first)) {
        if (!q.straight || q === p || (q.owner === p.owner && p.owner !== undefined)) continue
        const side = besides(p, q)
        if (!side || side.overlap < 1 || side.distance < 0.05) continue
        if (q.kind === 'dimension' && !order(p, q) && side.distance < figures.rows.next - 0.05) {
          find('rowsTooClose', p.a, `${side.distance.toFixed(2)} mm between dimension lines`, p.owner, q.owner)
        }
        if (!within && q.kind === 'visible' && side.distance < figures.rows.first - 0.05) {
          find('firstRowsTooClose', p.a, `${side.distance.toFixed(2)} mm from the outline`, p.owner)
        }
      }
    }
    if (p.kind === 'extension') extensionFindings(p, touching, heads, pieces, figures.extension, find)
  }

  const count = (what: Finding['what']) => findings.reduce((n, f) => n + (f.what === what ? 1 : 0), 0)
  return {
    textOnText: count('textOnText'),
    textOnLine: count('textOnLine'),
    arrowCollisions: count('arrowCollisions'),
    dimensionLineCrossings: count('dimensionLineCrossings'),
    extensionCrossings: count('extensionCrossings'),
    rowsTooClose: count('rowsTooClose'),
    firstRowsTooClose: count('firstRowsTooClose'),
    gapsMissing: count('gapsMissing'),
    overshootsMissing: count('overshootsMissing'),
    leadersLevel: count('leadersLevel'),
    findings,
  }
}

/** The gap behind each end of an extension line, and how far it passes the heads that stand on it. */
function extensionFindings(
  p: Piece,
  touching: (points: readonly Vec2[], margin?: number) => Piece[],
  heads: readonly Head[],
  pieces: readonly Piece[],
  figures: { readonly gap: number; readonly overshoot: number },
  find: (what: Finding['what'], at: Vec2, text: string, ...owners: (string | undefined)[]) => void,
): void {
  const length = Math.hypot(p.b[0] - p.a[0], p.b[1] - p.a[1])
  if (length < 0.2) return
  const u: Vec2 = [(p.b[0] - p.a[0]) / length, (p.b[1] - p.a[1]) / length]
  for (const [end, way] of [
    [p.a, [-u[0], -u[1]]],
    [p.b, u],
  ] as const) {
    const probe: Vec2 = [end[0] + way[0] * (figures.gap * 0.9), end[1] + way[1] * (figures.gap * 0.9)]
    const from: Vec2 = [end[0] - way[0] * 0.05, end[1] - way[1] * 0.05]
    if (figures.gap < 0.1) continue
    const near = touching([from, probe], 0.1)
    // A centre line that goes on as extension line has no gap.
    if (near.some((q) => q.kind === 'centre' && (same(q.a, end) || same(q.b, end)))) continue
    if (near.some((q) => q.kind === 'visible' && crosses(from, probe, q.a, q.b))) {
      find('gapsMissing', end, 'extension line without a visible gap', p.owner)
    }
  }
  // Heads whose tip stands on this line, and what of the line, over breaks and mergers, goes on past them.
  for (const h of heads) {
    const d: Vec2 = [h.tip[0] - p.a[0], h.tip[1] - p.a[1]]
    const s = d[0] * u[0] + d[1] * u[1]
    if (Math.abs(d[0] * u[1] - d[1] * u[0]) > 0.05 || s < -0.05 || s > length + 0.05) continue
    const axis: Vec2 = [h.tip[0] - centre(h.points)[0], h.tip[1] - centre(h.points)[1]]
    if (Math.abs(axis[0] * u[0] + axis[1] * u[1]) > 0.5 * Math.hypot(axis[0], axis[1])) continue
    const past = Math.min(s, length - s)
    if (past < figures.overshoot - 0.1) {
      const carriedOn = pieces.some(
        (q) =>
          q !== p &&
          (q.kind === 'extension' || q.kind === 'centre' || q.kind === 'visible') &&
          collinear(p, q) &&
          (touchesEnd(q, p.a) || touchesEnd(q, p.b)),
      )
      if (!carriedOn)
        find('overshootsMissing', h.tip, `extension line passes by ${past.toFixed(2)} mm`, p.owner, h.owner)
    }
  }
}

// ---------------------------------------------------------------- reading the items

function letteredOf(items: readonly SheetItem[]): Lettered[] {
  const out: Lettered[] = []
  for (const [i, item] of items.entries()) {
    if (item.item !== 'text' && item.item !== 'glyph') continue
    const owner = item.tie?.dimension ?? `item ${i}`
    const sized = item.item === 'glyph' ? item.tie?.dimension !== undefined : item.role === 'dimension'
    if (item.item === 'glyph') {
      const points = item.strokes.flatMap((c) => sampled(c))
      if (points.length === 0) continue
      // the box lies along the lettering, as that of letters does
      const [cos, sin] = [Math.cos((item.angle * Math.PI) / 180), Math.sin((item.angle * Math.PI) / 180)]
      const [x0, y0, x1, y1] = bounds(points.map(([x, y]): Vec2 => [x * cos + y * sin, y * cos - x * sin]))
      const back = (x: number, y: number): Vec2 => [x * cos - y * sin, x * sin + y * cos]
      out.push({
        corners: [back(x0, y0), back(x1, y0), back(x1, y1), back(x0, y1)],
        owner,
        text: item.text,
        sized,
      })
      continue
    }
    if (item.text.trim() === '') continue
    const width = textExtent(item.text, item.height, item.bold ? { bold: true } : {}).width * (item.stretch ?? 1)
    const x = item.anchor === 'middle' ? -width / 2 : item.anchor === 'end' ? -width : 0
    const a = (item.angle * Math.PI) / 180
    const at = (dx: number, dy: number): Vec2 => [
      item.at[0] + dx * Math.cos(a) - dy * Math.sin(a),
      item.at[1] + dx * Math.sin(a) + dy * Math.cos(a),
    ]
    out.push({
      corners: [at(x, 0), at(x + width, 0), at(x + width, item.height), at(x, item.height)],
      owner,
      text: item.text,
      sized,
    })
  }
  return out
}

function sampled(curve: Parameters<typeof pointAt>[0]): Vec2[] {
  const n = curve.kind === 'line' ? 1 : Math.max(8, Math.min(180, Math.ceil(lengthOf(curve) / 0.4)))
  return Array.from({ length: n + 1 }, (_, i) => pointAt(curve, i / n))
}

function piecesOf(items: readonly SheetItem[]): Piece[] {
  return items.flatMap((item): Piece[] => {
    if (item.item !== 'stroke') return []
    const points = sampled(item.curve)
    return points.slice(1).map((b, i) => ({
      a: points[i]!,
      b,
      kind: item.kind,
      owner: sizeKinds.has(item.kind) ? item.tie?.dimension : undefined,
      straight: item.curve.kind === 'line',
    }))
  })
}

function headsOf(items: readonly SheetItem[]): Head[] {
  return items.flatMap((item): Head[] => {
    if (item.item !== 'fill' || item.kind !== 'arrowhead' || item.outline.length !== 3) return []
    const points = item.outline.map((c) => pointAt(c, 0))
    // The tip lies opposite the shortest side.
    const sides = points.map((_, i) => distance(points[(i + 1) % 3]!, points[(i + 2) % 3]!))
    const tip = points[sides.indexOf(Math.min(...sides))]!
    return [{ points, tip, owner: item.tie?.dimension }]
  })
}

/** Points at which a dimension line ends or is marked: tips, dots, origin circles. */
function endsOf(items: readonly SheetItem[], heads: readonly Head[]): Vec2[] {
  const dots = items.flatMap((item): Vec2[] => {
    if (item.item === 'fill' && item.kind === 'dot' && item.outline[0]?.kind === 'arc') return [item.outline[0].c]
    if (item.item !== 'stroke' || item.kind !== 'dimension' || item.curve.kind !== 'arc') return []
    return Math.abs(item.curve.sweep) > 6.28 ? [item.curve.c] : []
  })
  return [...heads.map((h) => h.tip), ...dots]
}
