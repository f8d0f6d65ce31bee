import type { DashFigure } from '../../standards/practice-figures.ts'
import type { LineEnd } from '../view.ts'
import { type DashRun, UNBROKEN } from './dash-run.ts'

/**
 * Fits the dashes of a hidden line to its length: the gap keeps its figure, the dash gives (the way of ISO 128-21,
 * from memory). The line starts and ends with a dash, except where it continues a visible line: there a gap comes
 * first. A short line still shows two dashes and a gap, drawn smaller; one shorter than two gaps stays unbroken.
 *
 * @param length mm on paper
 */
export function fitHidden(length: number, figure: DashFigure, ends: readonly [LineEnd, LineEnd]): DashRun {
  const { long, gap } = figure
  if (length < 2 * gap) return UNBROKEN
  const lead = ends[0] === 'continues' ? Math.min(gap, length / 5) : 0
  const trail = ends[1] === 'continues' ? Math.min(gap, length / 5) : 0
  const rest = length - lead - trail
  if (rest < 2 * gap) return { lead, trail }
  const gaps = Math.max(1, Math.round((rest - long) / (long + gap)))
  const off = Math.min(gap, rest / 4)
  const on = (rest - gaps * off) / (gaps + 1)
  return { lead, trail, dashes: Array.from({ length: 2 * gaps + 1 }, (_, i) => (i % 2 === 0 ? on : off)) }
}

/**
 * Fits whole periods to a closed hidden line; a fourfold number where the dash then keeps its range, so that all four
 * quarters look alike. Starts with a dash and ends with a gap.
 */
export function fitHiddenLoop(length: number, figure: DashFigure): DashRun {
  const { long, gap, longRange } = figure
  if (length < 4 * gap) return UNBROKEN
  const nearest = Math.max(2, Math.round(length / (long + gap)))
  const fourfold = 4 * Math.max(1, Math.round(nearest / 4))
  const fits = (n: number) => length / n - gap >= longRange[0] && length / n - gap <= longRange[1]
  const count = fits(fourfold) ? fourfold : nearest
  const off = Math.min(gap, length / count / 3)
  const on = length / count - off
  return { lead: 0, trail: 0, dashes: Array.from({ length: 2 * count }, (_, i) => (i % 2 === 0 ? on : off)) }
}
