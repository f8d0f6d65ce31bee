import type { DashFigure } from '../../standards/practice-figures.ts'
import { alternating, type DashRun, UNBROKEN } from './dash-run.ts'

/** What falls on a point where chain lines cross. */
export type CrossOn = 'short' | 'long'

type Joint = 'end' | CrossOn

/**
 * Fits a chain line (centre, phantom, cutting-plane): starts and ends with a long dash, and lays a short (ASME) or a
 * long dash (ISO) on every crossing. Short dashes and gaps keep their figures, long dashes give. A crossing that
 * leaves no room for its dash is content with any dash, but never with a gap; a line too short for a broken pattern
 * stays unbroken.
 *
 * @param length mm on paper
 * @param crossings distances along the line, mm on paper
 */
export function fitChain(
  length: number,
  figure: DashFigure,
  crossings: readonly number[] = [],
  on: CrossOn = 'short',
): DashRun {
  const at = distinctWithin(crossings, length)
  const candidates = [() => openElements(length, figure, at, on)]
  if (at.length > 0) candidates.push(...[0, 1, -1, 2].map((more) => () => plainElements(length, figure, more)))
  for (const candidate of candidates) {
    const elements = candidate()
    const dashes = elements && alternating(elements)
    if (dashes && at.every((c) => isOnDash(dashes, c))) return { lead: 0, trail: 0, dashes }
  }
  return UNBROKEN
}

/** mm: a crossing so near the end of a dash stands at a gap, as far as the eye can tell. */
const onEdge = 1e-6

function isOnDash(dashes: readonly number[], at: number): boolean {
  let from = 0
  for (const [i, d] of dashes.entries()) {
    const to = from + d
    if (i % 2 === 0 && at > from + onEdge && at < to - onEdge) return true
    from = to
  }
  return false
}

function openElements(
  length: number,
  figure: DashFigure,
  crossings: readonly number[],
  on: CrossOn,
): number[] | undefined {
  if (crossings.length === 0) return plainElements(length, figure)
  const stops = [0, ...crossings, length]
  const elements: number[] = []
  for (let i = 0; i + 1 < stops.length; i++) {
    const from: Joint = i === 0 ? 'end' : on
    const to: Joint = i + 2 === stops.length ? 'end' : on
    const part = between(stops[i + 1]! - stops[i]!, figure, from, to)
    if (part) {
      elements.push(...part)
      continue
    }
    const drop = i === 0 ? 0 : i + 2 === stops.length ? crossings.length - 1 : i - 1
    return openElements(
      length,
      figure,
      crossings.filter((_, k) => k !== drop),
      on,
    )
  }
  return elements
}

/**
 * A line without crossings. Long and short dashes must be told apart, or it would read as a hidden line: long ones
 * shorter than one and a half short ones are not drawn (common practice, no source).
 */
function plainElements(length: number, figure: DashFigure, more = 0): number[] | undefined {
  const elements = between(length, figure, 'end', 'end', more)
  return elements && (figure.shorts !== 1 || elements[0]! >= 1.5 * figure.short) ? elements : undefined
}

/** Fits whole periods to a closed chain line that starts at a crossing (the first of `crossings`, which is 0) or anywhere. */
export function fitChainLoop(
  length: number,
  figure: DashFigure,
  crossings: readonly number[] = [],
  on: CrossOn = 'short',
): DashRun {
  if (crossings.length > 0) {
    const stops = [...[...crossings].sort((a, b) => a - b), length]
    const parts = stops.slice(0, -1).map((s, i) => between(stops[i + 1]! - s, figure, on, on))
    if (parts.every((p) => p !== undefined)) return { lead: 0, trail: 0, dashes: alternating(parts.flat()) }
  }
  const f = filler(figure)
  const count = Math.round(length / (figure.long + f.length))
  if (count < 2 && length / 2 - f.length < floorOf(figure)) return UNBROKEN
  const n = Math.max(2, count)
  const long = length / n - f.length
  return { lead: 0, trail: 0, dashes: alternating(Array.from({ length: n }, () => [long, ...f.elements]).flat()) }
}

/** The elements from one joint to the next, with `more` long dashes than fit best; undefined where these come out too short. */
function between(length: number, figure: DashFigure, from: Joint, to: Joint, more = 0): number[] | undefined {
  const f = filler(figure)
  const half = figure.short / 2
  // Fixed lengths at a joint, and how many long dashes it adds to one long dash between each two fillers.
  const fixed = (j: Joint) => (j === 'short' ? half + figure.gap : 0)
  const share = (j: Joint) => (j === 'end' || j === 'short' ? 0.5 : 0)
  const ends = fixed(from) + fixed(to)
  // n fillers part n + 1 long dashes; at a joint on a long dash only half of the outer one belongs here.
  const longs = (n: number) => n + share(from) + share(to)
  const least = from === 'long' || to === 'long' || (from === 'end' && to === 'end') ? 1 : 0
  const size = (n: number) => (length - ends - n * f.length) / longs(n)
  const guess = Math.round((length - ends - (share(from) + share(to)) * figure.long) / (figure.long + f.length))
  const n = Math.max(least, guess + more)
  const long = size(n)
  if (long < floorOf(figure)) return undefined
  const outer = (j: Joint) => (j === 'long' ? long / 2 : long)
  const elements: number[] = from === 'short' ? [half, -figure.gap] : []
  if (n === 0) elements.push(long)
  else {
    elements.push(outer(from))
    for (let i = 0; i < n; i++) elements.push(...f.elements, i === n - 1 ? outer(to) : long)
  }
  if (to === 'short') elements.push(-figure.gap, half)
  return elements
}

/** Long dashes on short lines may come out at half their least figure (common practice, no source). */
const floorOf = (figure: DashFigure) => figure.longRange[0] / 2

function filler(figure: DashFigure): { readonly elements: readonly number[]; readonly length: number } {
  const elements = [-figure.gap]
  for (let i = 0; i < figure.shorts; i++) elements.push(figure.short, -figure.gap)
  return { elements, length: elements.reduce((sum, e) => sum + Math.abs(e), 0) }
}

function distinctWithin(crossings: readonly number[], length: number): number[] {
  const sorted = crossings.filter((c) => c > 1e-6 && c < length - 1e-6).sort((a, b) => a - b)
  return sorted.filter((c, i) => i === 0 || c - sorted[i - 1]! > 1e-6)
}
