import type { Vec2 } from '../../geometry/vec.ts'
import type { Dimension } from '../../sizes/dimension.ts'
import { type Block, blockOf, calloutBlock } from './callout-block.ts'
import {
  arrow,
  type Desk,
  type Drawn,
  drawn,
  endDot,
  line,
  type Member,
  nothing,
  type Option,
  readable,
  textSlab,
  tieOf,
  type Unit,
} from './form.ts'
import { onPaper } from './ink.ts'
import { at } from './line-setting.ts'
import { canonical, extensionStart } from './linear-form.ts'
import { once } from './once.ts'
import { originCircle } from './origin-circle.ts'
import { bar, type Shape } from './shapes.ts'
import { faces, obeying, outlineLevel, paperSide } from './sides.ts'
import { back, dot, turned } from './vec.ts'
import { WEIGHTS } from './weights.ts'

/** One line of a set of running sizes. */
interface Running {
  /** May be absent for the datum's own line. */
  readonly dimension: Dimension | undefined
  readonly isDatum?: true
  readonly block: Block
  readonly s: number
  readonly point: Vec2
}

/**
 * Depth of the jogs of a row, mm: as deep as the widest of them is wide, so that all lean by 45° or less and their lines
 * stay apart; at most a jog that still reads as one (common practice, no source).
 */
const JOG = { least: 4, most: 12 } as const

/** Sets of running sizes of one view: all from one datum in one direction stand together. */
export function ordinateUnits(desk: Desk, owner: number, dimensions: readonly Dimension[]): Unit[] {
  const sets = new Map<string, Dimension[]>()
  for (const d of dimensions) {
    if (d.measured.kind !== 'ordinate') continue
    const u = canonical(d.measured.along)
    const key = `${d.group?.id ?? ''} ${u.map((x) => x.toFixed(6))} ${dot(d.measured.datum, u).toFixed(6)}`
    const set = sets.get(key)
    if (set) set.push(d)
    else sets.set(key, [d])
  }
  return [...sets].map(([key, set]) => unit(desk, owner, `ordinate ${key}`, set))
}

function unit(desk: Desk, owner: number, id: string, set: readonly Dimension[]): Unit {
  const { placed, view } = desk.ink.views[owner]!
  const first = set[0]!.measured
  if (first.kind !== 'ordinate') throw new Error('a running set holds running sizes only')
  const u = canonical(first.along)
  const datum = onPaper(placed, first.datum)
  const s0 = dot(datum, u)
  const own = set.flatMap((d): Running[] => {
    if (d.measured.kind !== 'ordinate') return []
    const point = onPaper(placed, d.measured.point)
    return [{ dimension: d, block: calloutBlock(d, desk.figures), s: dot(point, u), point }]
  })
  // The datum reads 0 once, whether or not the set holds a size for it.
  const isZero = ({ s }: Running) => Math.abs(s - s0) < 1e-6
  const zero = own.find(isZero) ?? {
    dimension: undefined,
    block: blockOf({ lines: [['0']] }, desk.figures),
    s: s0,
    point: datum,
  }
  const running: Running[] = [{ ...zero, isDatum: true }, ...own.filter((r) => !isZero(r))]
  running.sort((a, b) => a.s - b.s)
  const all = [turned(u), back(turned(u))].flatMap((n) => rows(desk, owner, running, u, n))
  const length = running.at(-1)!.s - running[0]!.s
  return {
    id,
    owner,
    dimensions: set,
    rank: [0, length],
    ...obeying(
      all.sort((a, b) => a.own - b.own),
      set.find((d) => d.wish),
      view,
    ),
    name: `the running sizes ${set.length > 0 ? set.map((d) => d.callout.lines.flat().join('')).join(', ') : ''}`,
    ...(set[0]!.group ? { group: set[0]!.group.id } : {}),
  }
}

function rows(desk: Desk, owner: number, set: readonly Running[], u: Vec2, n: Vec2): Option[] {
  const f = desk.figures
  const outline = outlineLevel(desk.ink.views[owner]!, n)
  const side = paperSide(n)
  const facing = desk.facing[owner]!
  // Running sizes need depth; they stand away from the neighbouring view.
  const bias = faces(facing, n) ? WEIGHTS.awayFromNeighbour : 0
  const taste = side === 'above' || side === 'right' ? WEIGHTS.belowOrLeft : 0
  const starts = set.map((r) => extensionStart(desk, owner, r.point, n))
  const through = starts.reduce((sum, s) => sum + Math.max(0, outline - s), 0)
  return Array.from({ length: 6 }, (_, k): Option => {
    const level = outline + f.first + k * f.pitch
    return {
      own: taste + WEIGHTS.rowDistance * (level - outline) + WEIGHTS.extensionLength * through,
      bias,
      side,
      row: k + 1,
      settled: true,
      members: once(() => members(desk, set, u, n, level, starts)),
    }
  })
}

/**
 * Text positions along the row: as near to the feature as neighbours allow, in the feature's order. Pool-adjacent-violators
 * of the least-squares problem min Σ(t − s)², t[i+1] − t[i] ≥ need[i].
 */
export function spread(s: readonly number[], need: readonly number[]): number[] {
  const offset: number[] = [0]
  for (let i = 1; i < s.length; i++) offset.push(offset[i - 1]! + need[i - 1]!)
  const pools: { sum: number; count: number }[] = []
  s.forEach((x, i) => {
    pools.push({ sum: x - offset[i]!, count: 1 })
    while (pools.length > 1) {
      const b = pools.at(-1)!
      const a = pools.at(-2)!
      if (a.sum / a.count <= b.sum / b.count) break
      pools.splice(-2, 2, { sum: a.sum + b.sum, count: a.count + b.count })
    }
  })
  return pools.flatMap((p) => Array<number>(p.count).fill(p.sum / p.count)).map((x, i) => x + offset[i]!)
}

function members(
  desk: Desk,
  set: readonly Running[],
  u: Vec2,
  n: Vec2,
  level: number,
  starts: readonly number[],
): Member[] {
  const f = desk.figures
  // ASME: level text at the ends of the lines. ISO: text in line with the extension line.
  const angle = f.iso ? readable(n) : 0
  const flat = Math.abs(Math.cos((angle * Math.PI) / 180) * u[0] + Math.sin((angle * Math.PI) / 180) * u[1]) > 0.5
  const across = (r: Running) => (flat ? r.block.width : r.block.height)
  const deep = (r: Running) => (flat ? r.block.height : r.block.width)
  const need = set.slice(1).map((r, i) => (across(r) + across(set[i]!)) / 2 + (flat ? 1.6 : 1.3))
  const t = spread(
    set.map((r) => r.s),
    need,
  )
  const widest = Math.max(...set.map((r, i) => Math.abs(t[i]! - r.s)))
  const jog = Math.min(JOG.most, Math.max(JOG.least, widest))
  const zero = set.find((r) => r.isDatum)!
  return set.map((r, i): Member => {
    const shapes: Shape[] = []
    const strokes: Drawn['strokes'][number][] = []
    const draw = (a: Vec2, b: Vec2) => shapes.push(bar('extension', a, b))
    const jogged = Math.abs(t[i]! - r.s) > 0.05
    const rowEnd = level + (f.iso ? f.overshoot : 0)
    const start = Math.min(starts[i]!, level - 1)
    let end = rowEnd
    if (jogged) {
      // Along the line, across to the text's place, along again: the lines stay side by side and in order.
      const bend = rowEnd + jog
      shapes.push(bar('extension', at(u, n, r.s, start), at(u, n, r.s, rowEnd)))
      draw(at(u, n, r.s, rowEnd), at(u, n, t[i]!, bend))
      draw(at(u, n, t[i]!, bend), at(u, n, t[i]!, bend + 1))
      end = bend + 1
    } else {
      end = set.some((q, j) => Math.abs(t[j]! - q.s) > 0.05) ? rowEnd + jog + 1 : rowEnd
      shapes.push(bar('extension', at(u, n, r.s, start), at(u, n, r.s, end)))
    }
    if (f.iso) {
      if (r === zero) {
        const circle = originCircle(at(u, n, r.s, level), (f.practice.originCircle ?? 3) / 2)
        strokes.push(circle.stroke)
        shapes.push(...circle.shapes)
      } else {
        const way = r.s > zero.s ? u : back(u)
        const before = set[r.s > zero.s ? i - 1 : i + 1]!
        const room = Math.abs(r.s - before.s) - (before === zero ? (f.practice.originCircle ?? 3) / 2 : 0)
        const end = at(u, n, r.s, level)
        shapes.push(room > f.arrow.length + 0.3 ? arrow(end, way, f) : endDot(end, way))
        if (furthest(set, zero, r)) {
          const l = line('dimension', at(u, n, zero.s, level), end)
          shapes.push(l.shape)
          strokes.push({ kind: 'dimension', curve: l.curve })
        }
      }
    }
    const centre = at(u, n, t[i]!, end + 1 + deep(r) / 2)
    shapes.unshift(textSlab(r.block, centre, angle))
    const tie = r.dimension ? tieOf(r.dimension) : { view: tieOf(set.find((q) => q.dimension)!.dimension!).view! }
    return {
      dimension: r.dimension,
      tie,
      fixed: nothing(),
      alternatives: [{ own: 0, ...drawn(shapes, strokes, [{ block: r.block, centre, angle, justify: 'middle' }]) }],
    }
  })
}

/** The one dimension line each way is drawn with the size furthest from the origin. */
function furthest(set: readonly Running[], zero: Running, r: Running): boolean {
  const sign = Math.sign(r.s - zero.s)
  return set.every((q) => (q.s - r.s) * sign <= 1e-9)
}
