import type { OutlineMove, OutlineStock, Side } from '../../brief/brief.ts'
import { printAngle } from '../../brief/print-size.ts'
import type { Size } from '../../brief/size.ts'
import type { Span } from '../../brief/span.ts'
import type { Arc2, Curve2 } from '../../geometry/curve2.ts'
import { boxOfCurves, endOf } from '../../geometry/evaluate.ts'
import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { inPlane, signedArea } from '../../kernel/profile.ts'
import type { ProfileCurve } from '../model.ts'
import { startProfile } from '../prism-stock.ts'
import { loopFault, near2 } from '../profile-edit.ts'
import { axisOf, endSides, faceAxes, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'

interface Side2 {
  readonly curve: Curve2
  readonly move: OutlineMove
}

/** A distance that one number of a move fixes between two corners of the outline, along across (0) or up (1). */
interface Moved {
  readonly size: Size
  readonly from: number
  readonly to: number
  readonly level: 0 | 1
  readonly span: Span
  /** Sides along an axis are chosen before slopes where one of the numbers follows from the others. */
  readonly straight: boolean
}

/** Closed outline of lines and arcs, thickened. Returns false where it does not close or crosses itself. */
export function buildOutline(shop: Workshop, stock: OutlineStock): boolean {
  const walked = walk(shop, stock)
  if (!walked) return false
  const { sides, moved } = walked
  const fault = loopFault(sides.map((s) => s.curve))
  if (fault) {
    const { move } = sides[fault.index]!
    if (fault.kind === 'open') {
      shop.must(
        'outline-open',
        move.span,
        'The outline does not come back to its start.',
        'close, or moves that lead back',
      )
    } else {
      shop.must(
        'outline-crosses',
        move.span,
        'The outline crosses itself at this move.',
        'an outline that meets itself nowhere',
      )
    }
    return false
  }
  const curves = sides.map((s) => s.curve)
  if (Math.abs(signedArea(curves)) < 1e-9) {
    shop.must('outline-empty', stock.span, 'The outline encloses no area.', 'moves that go round an area')
    return false
  }
  const axis = axisOf[stock.face]
  const named = nameSides(curves, axis)
  const profile = startProfile(shop, axis, [0, stock.thickness.mm], named)
  const [low, high] = endSides[axis]!
  shop.choose({
    kind: 'thickness',
    size: stock.thickness,
    from: low,
    to: high,
    direction: unitAxis[axis],
    span: stock.thickness.span,
    group: 'stock',
  })
  const { across, up } = faceAxes(axis)
  const directions: [Vec3, Vec3] = [unitAxis[across], unitAxis[up]]
  const corner = (i: number, level: 0 | 1): string => {
    const n = named.length
    const at = startPoint(curves[i % n]!)
    // a side square to the direction stands for its corners
    for (const k of [(i + n - 1) % n, i % n]) {
      const c = curves[k]!
      if (c.kind === 'line' && Math.abs(c.a[level] - c.b[level]) < 1e-9) return named[k]!.face
    }
    return shop.axis(`corner ${(i % n) + 1}`, inPlane(profile.plane, at), unitAxis[axis])
  }
  shop.outlineCorners = curves.map(startPoint)
  chooseMoves(shop, moved, corner, directions)
  chooseLeans(shop, sides, named)
  sides.forEach((s, i) => {
    if (s.move.kind !== 'arc' && s.move.kind !== 'arc by length') return
    const { radius, span } = s.move
    const face = named[i]!.face
    if (s.curve.kind === 'arc') shop.axis(`${face} axis`, inPlane(profile.plane, s.curve.c), unitAxis[axis])
    shop.choose((faces) => ({
      kind: 'radius',
      size: radius,
      of: face,
      faces: faces(face),
      count: 1,
      span,
      group: 'stock',
    }))
    if (s.move.kind !== 'arc by length') return
    const { length } = s.move
    shop.choose({ kind: 'arc length', size: length, of: face, span: length.span, group: 'stock' })
  })
  shop.imply('square', 'edge square to the faces', [low, high])
  return true
}

/** Sizes of the moves as a spanning tree in each direction: a number that follows from others is not chosen again. */
function chooseMoves(
  shop: Workshop,
  moved: readonly Moved[],
  corner: (i: number, level: 0 | 1) => string,
  directions: readonly [Vec3, Vec3],
): void {
  const roots = new Map<string, string>()
  const rootOf = (id: string): string => {
    let r = id
    while (roots.has(r)) r = roots.get(r)!
    return r
  }
  const ordered = [...moved.filter((m) => m.straight), ...moved.filter((m) => !m.straight)]
  for (const m of ordered) {
    const [from, to] = [corner(m.from, m.level), corner(m.to, m.level)]
    const [a, b] = [rootOf(`${m.level} ${from}`), rootOf(`${m.level} ${to}`)]
    if (a === b) continue
    roots.set(a, b)
    shop.choose({
      kind: 'distance',
      size: m.size,
      from,
      to,
      direction: directions[m.level],
      span: m.span,
      group: 'stock',
    })
  }
}

const LEVEL = { left: 0, right: 0, up: 1, down: 1 } as const
const SIGN = { left: -1, right: 1, up: 1, down: -1 } as const

/** Angles of slopes, each from a side that runs the way they were said from: a neighbour where there is one. */
function chooseLeans(shop: Workshop, sides: readonly Side2[], named: readonly ProfileCurve[]): void {
  const n = sides.length
  sides.forEach(({ move }, i) => {
    if (move.kind !== 'lean') return
    const level = LEVEL[move.way]
    const runs = (k: number) => {
      const { curve } = sides[k]!
      return curve.kind === 'line' && Math.abs(curve.a[1 - level]! - curve.b[1 - level]!) < 1e-9
    }
    const order = [(i + n - 1) % n, (i + 1) % n, ...sides.keys()]
    const from = order.find(runs)
    if (from === undefined) {
      const way = level === 0 ? 'left-right' : 'up-down'
      const text = `No side runs ${way}, for the ${printAngle(move.angle)} to be measured from.`
      shop.must(
        'angle-from-where',
        move.angle.span,
        text,
        `how far ${move.toward} the slope goes, in place of the angle`,
      )
      return
    }
    shop.choose({
      kind: 'angle',
      angle: move.angle,
      from: named[from]!.face,
      to: named[i]!.face,
      span: move.angle.span,
      group: 'stock',
    })
  })
}

function walk(shop: Workshop, stock: OutlineStock): { sides: Side2[]; moved: Moved[] } | undefined {
  const sides: Side2[] = []
  const moved: Moved[] = []
  let at: Vec2 = [0, 0]
  let closed = false
  for (const move of stock.moves) {
    const i = sides.length
    const note = (size: Size, level: 0 | 1, straight: boolean, from = i) =>
      moved.push({ size, from, to: i + 1, level, span: move.span, straight })
    let to: Vec2 = at
    switch (move.kind) {
      case 'by': {
        const level = move.way === 'left' || move.way === 'right' ? 0 : 1
        const sign = move.way === 'right' || move.way === 'up' ? 1 : -1
        to = level === 0 ? [at[0] + sign * move.size.mm, at[1]] : [at[0], at[1] + sign * move.size.mm]
        note(move.size, level, true)
        break
      }
      case 'to':
      case 'arc':
        to = [move.across.mm, move.up.mm]
        if (Math.abs(to[0]) > 1e-9) note(move.across, 0, false, 0)
        if (Math.abs(to[1]) > 1e-9) note(move.up, 1, false, 0)
        break
      case 'slope': {
        const dx = (move.acrossWay === 'right' ? 1 : -1) * move.across.mm
        const dy = (move.upWay === 'up' ? 1 : -1) * move.up.mm
        to = [at[0] + dx, at[1] + dy]
        note(move.across, 0, false)
        note(move.up, 1, false)
        break
      }
      case 'lean': {
        const level = LEVEL[move.way]
        const by: [number, number] = [0, 0]
        by[level] = SIGN[move.way] * move.size.mm
        by[1 - level] = SIGN[move.toward] * move.size.mm * Math.tan((move.angle.value * Math.PI) / 180)
        to = [at[0] + by[0], at[1] + by[1]]
        note(move.size, level, false)
        break
      }
      case 'arc by length': {
        const arc = arcOn(shop, sides, move)
        if (!arc) return undefined
        sides.push({ curve: arc, move })
        at = endOf(arc)
        continue
      }
      case 'close':
        to = [0, 0]
        closed = true
        break
    }
    if (near2(at, to)) {
      if (move.kind === 'close') continue
      shop.must('outline-side-zero', move.span, 'This move has no length.', 'a move that goes somewhere')
      return undefined
    }
    if (move.kind === 'arc') {
      const arc = arcTo(at, to, move.radius.mm, move.turn)
      if (!arc) {
        shop.must(
          'radius-too-small',
          move.radius.span,
          `An arc of R${move.radius.text} does not reach from one end of this move to the other.`,
          'a radius of at least half the distance',
        )
        return undefined
      }
      sides.push({ curve: arc, move })
    } else {
      sides.push({ curve: { kind: 'line', a: at, b: to }, move })
    }
    at = to
    if (closed) break
  }
  if (sides.length < 2 || (sides.length === 2 && sides.every((s) => s.curve.kind === 'line'))) {
    shop.must('outline-empty', stock.span, 'The outline encloses no area.', 'moves that go round an area, then close')
    return undefined
  }
  // the last side may end on the start only to rounding: close it exactly
  const last = sides[sides.length - 1]!
  if (last.curve.kind === 'line' && near2(last.curve.b, [0, 0])) {
    sides[sides.length - 1] = { ...last, curve: { ...last.curve, b: [0, 0] } }
  }
  return { sides, moved }
}

const startPoint = (c: Curve2): Vec2 =>
  c.kind === 'line'
    ? c.a
    : c.kind === 'arc'
      ? [c.c[0] + c.r * Math.cos(c.from), c.c[1] + c.r * Math.sin(c.from)]
      : [0, 0]

/** The arc that runs on smoothly from the last side, so long as it is said to be. */
function arcOn(
  shop: Workshop,
  sides: readonly Side2[],
  move: Extract<OutlineMove, { kind: 'arc by length' }>,
): Arc2 | undefined {
  const before = sides.at(-1)?.curve
  const r = move.radius.mm
  if (before?.kind !== 'line' && before?.kind !== 'arc') {
    const text = 'An arc by its length runs on smoothly from the side before it, and there is none.'
    shop.must('arc-from-where', move.span, text, 'a straight move first, or the arc with its end: to 60 across, 40 up')
    return undefined
  }
  const sweep = move.length.mm / r
  if (sweep >= 2 * Math.PI) {
    const text = `An arc of R${move.radius.text} has no length of ${move.length.text}: that is more than its whole circle.`
    shop.must('arc-too-long', move.length.span, text, 'a length under 2π times the radius')
    return undefined
  }
  const [a, at] = [startPoint(before), endOf(before)]
  const way: Vec2 =
    before.kind === 'line'
      ? [at[0] - a[0], at[1] - a[1]]
      : [-Math.sign(before.sweep) * (at[1] - before.c[1]), Math.sign(before.sweep) * (at[0] - before.c[0])]
  const turn = move.turn === 'left' ? 1 : -1
  const size = Math.hypot(way[0], way[1])
  const c: Vec2 = [at[0] - (turn * r * way[1]) / size, at[1] + (turn * r * way[0]) / size]
  return { kind: 'arc', c, r, from: Math.atan2(at[1] - c[1], at[0] - c[0]), sweep: turn * sweep }
}

/** The smaller arc of the radius between two points, turning left (counter-clockwise) or right. */
function arcTo(a: Vec2, b: Vec2, r: number, turn: 'left' | 'right'): Curve2 | undefined {
  const d: Vec2 = [b[0] - a[0], b[1] - a[1]]
  const half = Math.hypot(d[0], d[1]) / 2
  if (half > r * (1 + 1e-9)) return undefined
  const h = Math.sqrt(Math.max(0, r * r - half * half))
  const left: Vec2 = [-d[1] / (2 * half), d[0] / (2 * half)]
  const s = turn === 'left' ? 1 : -1
  const c: Vec2 = [(a[0] + b[0]) / 2 + s * h * left[0], (a[1] + b[1]) / 2 + s * h * left[1]]
  const from = Math.atan2(a[1] - c[1], a[0] - c[0])
  const angle = 2 * Math.asin(Math.min(1, half / r))
  return { kind: 'arc', c, r, from, sweep: s * angle }
}

/** Sides on the outline's own limits are the part's sides; the others are numbered. */
function nameSides(curves: readonly Curve2[], axis: 0 | 1 | 2): ProfileCurve[] {
  const box = boxOfCurves(curves)
  const { across, up } = faceAxes(axis)
  let number = 0
  return curves.map((curve) => {
    let face: Side | string | undefined
    if (curve.kind === 'line') {
      for (const [level, space] of [
        [0, across],
        [1, up],
      ] as const) {
        if (Math.abs(curve.a[level] - curve.b[level]) > 1e-9) continue
        const [low, high] = endSides[space]!
        if (Math.abs(curve.a[level] - box.min[level]) < 1e-9) face = low
        else if (Math.abs(curve.a[level] - box.max[level]) < 1e-9) face = high
      }
    }
    return { curve, face: face ?? `side ${++number}` }
  })
}
