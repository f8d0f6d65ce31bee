import type { Curve2 } from '../../geometry/curve2.ts'
import { endOf, lengthOf, parameterAtLength, piece, placed, startOf } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { DashFigure, PracticeFigures } from '../../standards/practice-figures.ts'
import { groupedByCarrier } from '../conventions/carrier.ts'
import { nearest } from '../conventions/nearest.ts'
import { byPrecedence } from '../conventions/precedence.ts'
import type { LineKind, Source, ViewLine } from '../view.ts'
import { fitChain, fitChainLoop } from './chain.ts'
import type { DashRun } from './dash-run.ts'
import { fitHidden, fitHiddenLoop } from './hidden.ts'

/** A line ready for paper: paper mm from the view's origin, overruns added, dashes fitted. */
export interface PaperLine {
  readonly kind: LineKind
  readonly curve: Curve2
  /** Alternating on/off lengths that exactly fill the curve, starting with on; absent: unbroken. */
  readonly dashes?: readonly number[]
  readonly sources: readonly Source[]
  readonly features?: readonly string[]
}

export type LineFigures = Pick<PracticeFigures, 'dashes' | 'centreCross' | 'centreSolidBelow'>

/**
 * Brings the lines of a view to paper at `scale` (paper mm per part mm). Centre lines whose overruns would run into one
 * another on this sheet become one line; every broken line gets dashes fitted to its length and ends.
 */
export function paperLines(lines: readonly ViewLine[], scale: number, figures: LineFigures): PaperLine[] {
  const onPaper = lines.map((l): ViewLine => {
    const cross = l.cross?.map((p): Vec2 => [p[0] * scale, p[1] * scale])
    return { ...l, curve: placed(l.curve, scale, [0, 0]), ...(cross ? { cross } : {}) }
  })
  const centres = onPaper.filter((l) => l.kind === 'centre' && !l.covered)
  const others = onPaper.filter((l) => l.kind !== 'centre')
  const { gap } = figures.dashes.centre
  return [
    ...[...others, ...joined(centres, gap)].map((l) => fitted(l, figures)),
    ...onPaper.filter((l) => l.covered).flatMap((l) => stubsOf(l, gap)),
  ]
}

const BROKEN: ReadonlySet<LineKind> = new Set(['hidden', 'centre', 'cutting plane', 'phantom'])

/** Of a line that an edge covers, what passes the edge's ends: a dash a gap clear of each. */
function stubsOf(line: ViewLine, gap: number): PaperLine[] {
  const [start, end] = line.overrun ?? [0, 0]
  const stub = (curve: Curve2): PaperLine => ({
    kind: line.kind,
    curve,
    sources: line.sources,
    ...(line.features ? { features: line.features } : {}),
  })
  const length = lengthOf(line.curve)
  const past = (from: number, to: number) => stretched(line.curve, [-from, to - length])
  return [
    ...(start > gap ? [stub(past(-start, -gap))] : []),
    ...(end > gap ? [stub(past(length + gap, length + end))] : []),
  ]
}

function fitted(line: ViewLine, figures: LineFigures): PaperLine {
  const curve = stretched(line.curve, overrunOf(line, figures))
  const made = (c: Curve2, run: DashRun): PaperLine => ({
    kind: line.kind,
    curve: trimmed(c, run),
    ...(run.dashes ? { dashes: run.dashes } : {}),
    sources: line.sources,
    ...(line.features ? { features: line.features } : {}),
  })
  // Unbroken lines need no length: that of an ellipse is dear.
  if (!BROKEN.has(line.kind)) return made(curve, { lead: 0, trail: 0 })
  const length = lengthOf(curve)
  const closed = isClosed(curve)
  switch (line.kind) {
    case 'hidden': {
      if (!closed) return made(curve, fitHidden(length, figures.dashes.hidden, line.ends ?? ['corner', 'corner']))
      const run = fitHiddenLoop(length, figures.dashes.hidden)
      return made(turned(curve, -(run.dashes?.[0] ?? 0) / 2), run)
    }
    case 'centre': {
      const figure = figures.dashes.centre
      const on = figures.centreCross
      if (!closed) {
        const cross = (line.cross ?? []).map((p) => lengthOf(curve, 0, nearest(curve, p).t))
        const tiny = cross.length === 1 && lengthOf(line.curve) < figures.centreSolidBelow
        return made(curve, tiny ? { lead: 0, trail: 0 } : fitChain(length, figure, cross, on))
      }
      const start = line.cross?.[0]
      const from = start ? turned(curve, lengthOf(curve, 0, nearest(curve, start).t)) : curve
      const cross = (line.cross ?? []).slice(1).map((p) => lengthOf(from, 0, nearest(from, p).t))
      return made(from, fitChainLoop(length, figure, start ? [0, ...cross] : [], on))
    }
    case 'cutting plane':
      return made(curve, chained(curve, length, figures.dashes.cuttingPlane))
    case 'phantom':
      return made(curve, chained(curve, length, figures.dashes.phantom))
    default:
      return made(curve, { lead: 0, trail: 0 })
  }
}

/** A centre line that runs on from an outline stops a gap short of it instead of passing its end. */
function overrunOf(line: ViewLine, figures: LineFigures): readonly [number, number] {
  const [start, end] = line.overrun ?? [0, 0]
  if (line.kind !== 'centre') return [start, end]
  const { gap } = figures.dashes.centre
  return [line.ends?.[0] === 'continues' ? -gap : start, line.ends?.[1] === 'continues' ? -gap : end]
}

const chained = (curve: Curve2, length: number, figure: DashFigure) =>
  isClosed(curve) ? fitChainLoop(length, figure) : fitChain(length, figure)

/** Straight lines grow or shrink by the overruns; other curves have none. */
function stretched(curve: Curve2, overrun: readonly [number, number]): Curve2 {
  if (curve.kind !== 'line') return curve
  const length = lengthOf(curve)
  if (length === 0 || length + overrun[0] + overrun[1] <= 0) return curve
  const at = (s: number): Vec2 => [
    curve.a[0] + ((curve.b[0] - curve.a[0]) * s) / length,
    curve.a[1] + ((curve.b[1] - curve.a[1]) * s) / length,
  ]
  return { kind: 'line', a: at(-overrun[0]), b: at(length + overrun[1]) }
}

/** Collinear centre lines that would touch or all but touch once their overruns are drawn become one. */
function joined(lines: readonly ViewLine[], gap: number): ViewLine[] {
  const out: ViewLine[] = []
  for (const { members } of groupedByCarrier(lines, 1e-4)) {
    const sorted = [...members].sort((a, b) => a.on.from - b.on.from)
    let run: ViewLine[] = []
    let end = 0
    for (const { item, on } of sorted) {
      const over = Math.max(0, ...(item.overrun ?? [0]))
      if (run.length > 0 && on.from - over > end + gap) {
        out.push(...merged(run))
        run = []
      }
      end = run.length === 0 ? on.to + over : Math.max(end, on.to + over)
      run.push(item)
    }
    out.push(...merged(run))
  }
  return out
}

function merged(run: readonly ViewLine[]): ViewLine[] {
  if (run.length < 2 || run.some((l) => l.curve.kind !== 'line')) return [...run]
  const bridges: ViewLine[] = []
  for (let i = 0; i + 1 < run.length; i++) {
    const a = farEnd(run[i]!, run[i + 1]!)
    const b = farEnd(run[i + 1]!, run[i]!)
    bridges.push({ curve: { kind: 'line', a, b }, kind: 'centre', sources: [] })
  }
  return byPrecedence([...run, ...bridges], 1e-4)
}

/** The end of `of` that looks toward `toward`. */
function farEnd(of: ViewLine, toward: ViewLine): Vec2 {
  const d = (p: Vec2) => Math.min(nearest(toward.curve, p).distance)
  return d(startOf(of.curve)) < d(endOf(of.curve)) ? startOf(of.curve) : endOf(of.curve)
}

function isClosed(curve: Curve2): boolean {
  if (curve.kind === 'line') return false
  const a = startOf(curve)
  const b = endOf(curve)
  return Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-6 && lengthOf(curve) > 1e-4
}

/** A closed arc or ellipse started `by` mm further on. */
function turned(curve: Curve2, by: number): Curve2 {
  if (curve.kind === 'arc') return { ...curve, from: curve.from + (by / curve.r) * Math.sign(curve.sweep) }
  if (curve.kind !== 'ellipse') return curve
  const whole = lengthOf(curve)
  const t = parameterAtLength(curve, ((by % whole) + whole) % whole)
  return { ...curve, from: curve.from + t * curve.sweep }
}

function trimmed(curve: Curve2, run: DashRun): Curve2 {
  if (run.lead === 0 && run.trail === 0) return curve
  const length = lengthOf(curve)
  return piece(curve, parameterAtLength(curve, run.lead), parameterAtLength(curve, length - run.trail))
}
