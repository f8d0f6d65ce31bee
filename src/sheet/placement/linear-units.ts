import type { Vec2 } from '../../geometry/vec.ts'
import type { Dimension } from '../../sizes/dimension.ts'
import { acrossStep, isAcross } from './across-step.ts'
import { alikePlaces } from './alike-places.ts'
import type { Desk, Option, Unit } from './form.ts'
import { at, type InChain, type Span1 } from './line-setting.ts'
import { canonical, extensionStart, linearMember, span1 } from './linear-form.ts'
import { once } from './once.ts'
import { faces, obeying, outlineLevel, paperSide } from './sides.ts'
import { back, dot, turned } from './vec.ts'
import { WEIGHTS } from './weights.ts'

/** Rows tried on each side. */
const ROWS = 14
/** Rows tried in a recess of the outline. */
const INNER_ROWS = 3

/** Units of the linear sizes of one view: each chain in one line, everything else by itself. */
export function linearUnits(desk: Desk, owner: number, dimensions: readonly Dimension[]): Unit[] {
  const chains = new Map<string, Span1[]>()
  const units: Unit[] = []
  const all = dimensions.flatMap((d) => span1(desk, owner, d) ?? [])
  for (const bare of all) {
    const span = { ...bare, outer: outerOf(bare, all) }
    const d = span.dimension
    if (d.group?.scheme === 'chain') {
      const key = `${d.group.id} ${canonical(span.u).map((x) => x.toFixed(6))}`
      const chain = chains.get(key)
      if (chain) chain.push(span)
      else chains.set(key, [span])
    } else units.push(unit(desk, owner, d.id, [span], d.group?.id, elsewhere(desk, owner, d, all)))
  }
  for (const [key, chain] of chains) {
    for (const [i, line] of inLines(chain).entries())
      units.push(unit(desk, owner, `${key} ${i}`, line, chain[0]!.dimension.group?.id))
  }
  return units
}

/** The spans of a size where else it may stand. */
function elsewhere(desk: Desk, owner: number, d: Dimension, all: readonly Span1[]): Span1[] {
  return alikePlaces(desk, owner, d).flatMap((other) => {
    const bare = span1(desk, owner, other)
    return bare ? [{ ...bare, outer: outerOf(bare, all) }] : []
  })
}

/** Where longer sizes in the same direction end, other than at this one's own ends. */
function outerOf(span: Span1, all: readonly Span1[]): number[] {
  const apart = (s: number) => Math.abs(s - span.s0) > 0.5 && Math.abs(s - span.s1) > 0.5
  return all
    .filter((o) => dot(o.u, span.u) > 0.999 && o.s1 - o.s0 > span.s1 - span.s0)
    .flatMap((o) => [o.s0, o.s1])
    .filter(apart)
}

/** A chain whose members overlap cannot stand in one line: split into as few lines as will hold them. */
function inLines(chain: readonly Span1[]): Span1[][] {
  const lines: Span1[][] = []
  for (const span of [...chain].sort((a, b) => a.s0 - b.s0 || a.s1 - b.s1)) {
    const line = lines.find((l) => l.at(-1)!.s1 <= span.s0 + 1e-6)
    if (line) line.push(span)
    else lines.push([span])
  }
  return lines
}

/**
 * Extension lines that would run on past their own edge along lines of other features in line with it: what stands at
 * such a size would seem to stand at those.
 */
function passesOn(desk: Desk, owner: number, { lo, hi }: Span1, n: Vec2): boolean {
  return [lo, hi].some((p) => {
    const edge = desk.ink.edge(owner, p, n)
    return edge !== undefined && dot(p, n) + desk.ink.runOut(owner, p, n).straight > edge[1] + OWN_EDGE
  })
}

/** Chamfers at the end of an edge are its own, mm. */
const OWN_EDGE = 3

/** The members of a chain one by one, for when the chain finds no room in one line. */
export function splitChain(desk: Desk, chain: Unit): Unit[] {
  return chain.dimensions.flatMap((d) => {
    const span = span1(desk, chain.owner, d)
    return span ? [unit(desk, chain.owner, d.id, [span], d.group?.id)] : []
  })
}

function unit(
  desk: Desk,
  owner: number,
  id: string,
  spans: readonly Span1[],
  group: string | undefined,
  alike: readonly Span1[] = [],
): Unit {
  const u = spans[0]!.u
  const normals = [turned(u), back(turned(u))]
  const single = spans.length === 1 ? spans[0] : undefined
  const options = [
    ...normals.flatMap((n) => rows(desk, owner, spans, n)),
    ...alike.flatMap((s) => normals.flatMap((n) => rows(desk, owner, [s], n, WEIGHTS.atAnotherPlace))),
    ...(single ? acrossStep(desk, owner, single) : []),
  ].sort((a, b) => a.own - b.own)
  const wishing = spans.find((x) => x.dimension.wish)?.dimension
  const first = spans[0]!
  const last = spans.reduce((m, s) => (s.s1 > m.s1 ? s : m), first)
  return {
    id,
    owner,
    dimensions: spans.map((s) => s.dimension),
    rank: [1, last.s1 - first.s0],
    ...(group === undefined ? {} : { group }),
    ...obeying(options, wishing, desk.ink.views[owner]!.view),
    name: first.dimension.callout.lines
      .flat()
      .filter((p) => typeof p === 'string')
      .join(' '),
  }
}

function rows(desk: Desk, owner: number, spans: readonly Span1[], n: Vec2, dearer = 0): Option[] {
  const f = desk.figures
  const view = desk.ink.views[owner]!
  const u = spans[0]!.u
  const upright = u[0] === 0 || u[1] === 0
  const inChain = (i: number): InChain => {
    if (spans.length === 1) return false
    const meets = (a: Span1 | undefined, b: Span1 | undefined) =>
      a !== undefined && b !== undefined && Math.abs(a.s1 - b.s0) < 0.05
    return [meets(spans[i - 1], spans[i]), meets(spans[i], spans[i + 1])]
  }
  const starts = spans.map((s): [number, number] => [
    s.open === 'lo' ? Infinity : extensionStart(desk, owner, s.lo, n),
    s.open === 'hi' ? Infinity : extensionStart(desk, owner, s.hi, n),
  ])
  const straying = spans.filter((s) => passesOn(desk, owner, s, n)).map((s) => s.dimension)
  if (straying.some((d) => d.signs)) return []
  const stray = straying.some(isAcross) ? WEIGHTS.atAnotherStep : 0
  const features = Math.max(...spans.flatMap((s) => [dot(s.lo, n), dot(s.hi, n)]))
  const outline = outlineLevel(view, n)
  const nearest = Math.min(...spans.flatMap((s) => [dot(s.lo, n), dot(s.hi, n)]))
  const within = nearest + outlineLevel(view, back(n))
  const side = paperSide(n)
  const facing = desk.facing[owner]!
  const bias = facing.length > 0 && !faces(facing, n) ? WEIGHTS.awayFromNeighbour : 0
  const taste = side === 'below' || side === 'left' ? WEIGHTS.belowOrLeft : 0
  const option = (level: number, base: number, row: number, extra: number, onPart = false): Option => {
    let lines = 0
    for (const [a, b] of starts) lines += Math.max(0, level - a) + Math.max(0, level - b)
    const own = dearer + taste + stray + extra + WEIGHTS.rowDistance * (level - base) + WEIGHTS.extensionLength * lines
    return {
      own,
      bias,
      side,
      row,
      ...(onPart ? { onPart } : {}),
      members: once(() => spans.map((s, i) => linearMember(desk, s, n, level, starts[i]!, inChain(i)))),
    }
  }
  const out: Option[] = []
  if (upright) {
    for (let k = 0; k < ROWS; k++) out.push(option(outline + f.first + k * f.pitch, outline, k + 1, 0))
  }
  // A recess of the outline that is open on this side keeps the size near its feature.
  if (!upright || features < outline - 3) {
    const count = upright ? INNER_ROWS : ROWS
    for (let k = 0; k < count; k++) {
      const level = features + f.first + k * f.pitch
      if (upright && level > outline - 1) break
      const free = spans.every((s) =>
        [s.s0 + 0.2, (s.s0 + s.s1) / 2, s.s1 - 0.2].every((x) =>
          desk.ink.sees(owner, at(u, n, x, level - f.first + 0.3), n),
        ),
      )
      // Over the part only for what lies well within it on both sides.
      if (!free && (!upright || outline - level < f.first || within < f.first + 5)) break
      const middle = (first: Span1, last: Span1) => at(u, n, (first.s0 + last.s1) / 2, level)
      const onPart = upright && !free && !desk.ink.seesOut(owner, ...middle(spans[0]!, spans.at(-1)!))
      const kept = free ? 0 : onPart ? WEIGHTS.rowOnPart : WEIGHTS.rowOverPart
      out.push(option(level, features, k + 1, upright ? WEIGHTS.innerRow + kept : 0, onPart))
    }
    if (!upright && out.length === 0) {
      for (let k = 0; k < ROWS; k++) out.push(option(outline + f.first + k * f.pitch, outline, k + 1, 0))
    }
  }
  return out
}
