import type { ExactCurve, Source } from '../view.ts'
import { type Carrier, carrierOf, curveOn, splineCarrier } from './carrier.ts'
import { splineGroups } from './spline-groups.ts'
import type { Piece } from './split.ts'
import type { Watcher } from './watch.ts'

interface Laid {
  readonly piece: Piece
  readonly carrier: Carrier
}

/** What is drawn of a stretch on which several curves coincide: the highest rank wins. */
enum Rank {
  SmoothHidden,
  SmoothVisible,
  Hidden,
  HiddenCut,
  Visible,
  VisibleCut,
}

/**
 * Joins what lies on one carrier: each stretch once, visible over hidden, drawn edges over smooth ones. Lines, arcs and
 * ellipses are one within `line`, splines within `near` (mm).
 */
export function mergePieces(pieces: readonly Piece[], line: number, near: number, watcher: Watcher): ExactCurve[] {
  const byKind = new Map<Carrier['kind'], Laid[]>()
  const splines: Piece[] = []
  for (const piece of pieces) {
    watcher.step()
    if (piece.track.flat.kind === 'chain') {
      splines.push(piece)
      continue
    }
    const carrier = carrierOf(piece, line)
    const key = carrier.kind
    const list = byKind.get(key)
    if (list) list.push({ piece, carrier })
    else byKind.set(key, [{ piece, carrier }])
  }
  const out: ExactCurve[] = []
  for (const list of byKind.values()) for (const group of groups(list, 0)) laidTogether(group, out)
  for (const { chain, laid, step } of splineGroups(splines, line, near, watcher))
    laidTogether(
      laid.map(({ piece, a, b }) => ({ piece, carrier: splineCarrier(chain, a, b, step) })),
      out,
    )
  return out
}

/** Groups of coincident carriers, key by key: sorted, and parted where the gap is wider than the slack. */
function groups(list: readonly Laid[], key: number): Laid[][] {
  if (list.length === 0) return []
  if (list.length === 1 || key >= list[0]!.carrier.keys.length) return [[...list]]
  const sorted = [...list].sort((x, y) => x.carrier.keys[key]! - y.carrier.keys[key]!)
  const out: Laid[][] = []
  let run: Laid[] = [sorted[0]!]
  for (let i = 1; i < sorted.length; i++) {
    const one = sorted[i]!
    const gap = one.carrier.keys[key]! - sorted[i - 1]!.carrier.keys[key]!
    if (gap > Math.max(one.carrier.slack[key]!, sorted[i - 1]!.carrier.slack[key]!)) {
      for (const g of groups(run, key + 1)) out.push(g)
      run = []
    }
    run.push(one)
  }
  for (const g of groups(run, key + 1)) out.push(g)
  return out
}

function rankOf(piece: Piece): Rank {
  const { kind } = piece.track
  if (kind === 'smooth') return piece.visible ? Rank.SmoothVisible : Rank.SmoothHidden
  if (kind === 'cut') return piece.visible ? Rank.VisibleCut : Rank.HiddenCut
  return piece.visible ? Rank.Visible : Rank.Hidden
}

type Point = readonly [number, number]

interface End {
  readonly at: number
  readonly start: boolean
  readonly piece: Piece
  readonly point: Point | undefined
}

interface Stretch {
  a: number
  b: number
  pa: Point | undefined
  pb: Point | undefined
  readonly rank: Rank
  readonly pieces: Iterable<Piece>
}

type Growing = Stretch & { readonly pieces: Set<Piece> }

function laidTogether(group: readonly Laid[], out: ExactCurve[]): void {
  const { piece: one, carrier } = group[0]!
  const round = carrier.kind === 'arc' || carrier.kind === 'ellipse'
  const turn = 2 * Math.PI
  if (group.length === 1) {
    const { a, b, step } = carrier
    if (b - a <= step) return
    const [pa, pb] = [carrier.ends?.[0], carrier.ends?.[1]]
    out.push(exactCurve(carrier, { a, b, pa, pb, rank: rankOf(one), pieces: [one] }, round && b - a >= turn - step))
    return
  }
  const ends: End[] = []
  const lay = (piece: Piece, a: number, b: number, ends2: Carrier['ends']) => {
    ends.push({ at: a, start: true, piece, point: ends2?.[0] }, { at: b, start: false, piece, point: ends2?.[1] })
  }
  let step = 0
  for (const { piece, carrier: c } of group) {
    step = Math.max(step, c.step)
    if (round && c.b > turn) {
      lay(piece, c.a, turn, undefined)
      if (c.b - turn > c.step) lay(piece, 0, c.b - turn, undefined)
    } else lay(piece, c.a, c.b, c.ends)
  }
  ends.sort((x, y) => x.at - y.at)
  const stretches = sweep(ends, step)
  if (round) closeUp(stretches, step)
  for (const s of stretches) {
    if (s.b - s.a <= step) continue
    out.push(exactCurve(carrier, s, round && s.b - s.a >= turn - step))
  }
}

function sweep(ends: readonly End[], step: number): Growing[] {
  const out: Growing[] = []
  const active = new Map<Piece, number>()
  let from = ends[0]!.at
  let fromPoint = ends[0]!.point
  for (let i = 0; i < ends.length; ) {
    const head = ends[i]!.at
    if (active.size > 0 && head - from > 0) {
      let rank = Rank.SmoothHidden
      for (const piece of active.keys()) rank = Math.max(rank, rankOf(piece))
      const last = out[out.length - 1]
      if (last && last.rank === rank && from - last.b <= step) {
        last.b = head
        last.pb = ends[i]!.point
        for (const piece of active.keys()) last.pieces.add(piece)
      } else out.push({ a: from, b: head, pa: fromPoint, pb: ends[i]!.point, rank, pieces: new Set(active.keys()) })
    }
    let j = i
    while (j < ends.length && ends[j]!.at - head <= step) {
      const { piece, start } = ends[j]!
      const n = (active.get(piece) ?? 0) + (start ? 1 : -1)
      if (n === 0) active.delete(piece)
      else active.set(piece, n)
      j++
    }
    from = head
    fromPoint = ends[i]!.point
    i = j
  }
  return out
}

/** On a closed carrier the last stretch may run on into the first. */
function closeUp(stretches: Growing[], step: number): void {
  const turn = 2 * Math.PI
  const first = stretches[0]
  const last = stretches[stretches.length - 1]
  if (!first || !last || first.a > step || turn - last.b > step || first.rank !== last.rank) return
  if (first === last) {
    first.a = 0
    first.b = turn
    return
  }
  stretches.shift()
  last.b = turn + first.b
  for (const piece of first.pieces) last.pieces.add(piece)
}

function exactCurve(carrier: Carrier, s: Stretch, closed: boolean): ExactCurve {
  let kind: ExactCurve['kind'] = 'silhouette'
  const sources = new Map<number, Source>()
  for (const { track } of s.pieces) {
    if (track.kind === 'edge') kind = 'edge'
    const key = track.edge ?? -1 - track.faces[0]!.id
    if (!sources.has(key))
      sources.set(key, {
        ...(track.edge === undefined ? {} : { edge: track.edge }),
        faces: track.faces.map((f) => f.id),
      })
  }
  if (s.rank === Rank.VisibleCut || s.rank === Rank.HiddenCut) kind = 'cut'
  if (s.rank <= Rank.SmoothVisible) kind = 'smooth'
  return {
    curve: closed
      ? curveOn(carrier, 0, 2 * Math.PI, undefined)
      : curveOn(carrier, s.a, s.b, s.pa && s.pb ? [s.pa, s.pb] : undefined),
    visible: s.rank >= Rank.Visible || s.rank === Rank.SmoothVisible,
    kind,
    sources: [...sources.values()],
  }
}
