import type { Vec2 } from '../../geometry/vec.ts'
import type { Annotation, Sign, SurfacePlace } from '../../sizes/annotation.ts'
import type { LeaderTarget } from '../../sizes/dimension.ts'
import { capitals } from '../lettering/capitals.ts'
import type { Tie } from '../sheet.ts'
import { datumBox, standingDatum } from '../signs/datum-art.ts'
import { textureArt } from '../signs/texture-art.ts'
import { type Block, blockOf, signBlock } from './callout-block.ts'
import { type Desk, type Drawn, drawn, nothing, type Option, type Unit } from './form.ts'
import { onPaper } from './ink.ts'
import { leadersToSurface } from './leader-units.ts'
import { once } from './once.ts'
import { bar, type Shape, slab } from './shapes.ts'
import { paperSide } from './sides.ts'
import { along, back, dot, polar } from './vec.ts'
import { WEIGHTS } from './weights.ts'

/** Where along an edge a sign may stand, the middle first; what each step away from it costs. */
const ALONG = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9]
const OFF_MIDDLE = 0.15
/** How far out on an extension line of the edge, mm. */
const OUT = [6, 10, 15, 21]
/** What standing on an extension line costs over standing at the edge. */
const ON_EXTENSION = 1.6
/** What standing behind a neighbour costs. */
const COVERED = 4
/** What standing where another line meets the edge costs. */
const AT_CROSSING = 1
/** What pointing at the mouth of a hole costs. */
const AT_OPENING = 6
/** Lengths of the line between a datum's triangle and its box, mm. */
const STEMS = [3, 6, 9, 13, 18, 24, 31]
/** Passed by the extension line beyond what stands on it, mm. */
const PAST = 3

/** Frames, datum letters and textures of the surfaces that one view shows. */
export function annotationUnits(desk: Desk, owner: number, annotations: readonly Annotation[]): Unit[] {
  const { view } = desk.ink.views[owner]!
  return annotations.filter((a) => a.view === view.id).map((a) => unitOf(desk, owner, a))
}

function unitOf(desk: Desk, owner: number, annotation: Annotation): Unit {
  const { id, view, signs, count, feature, span } = annotation
  const tie: Tie = { view, dimension: id, span, ...(feature ? { features: [feature] } : {}) }
  const [first] = signs
  const spots = spotsOf(desk, owner, annotation.places)
  let options: Option[]
  let rank: Unit['rank']
  if (first?.kind === 'datum') {
    options = spots.flatMap((spot) => datumOptions(desk, tie, spot, first))
    rank = [2, 0]
  } else if (first?.kind === 'texture') {
    options = spots.flatMap((spot) => textureOptions(desk, owner, tie, spot, first))
    rank = [2, 1]
  } else {
    const block = blockOf({ lines: count ? [[count]] : [] }, desk.figures, false, signs)
    options = spots.flatMap((spot) => ledOptions(desk, owner, tie, spot, block, 0))
    rank = [3, -block.width]
  }
  options.sort((a, b) => a.own - b.own)
  return { id, owner, dimensions: [], rank, options, name: nameOf(first), span }
}

function nameOf(sign: Sign | undefined): string {
  if (sign?.kind === 'frame') return `the frame ${[sign.rows[0]?.symbol, ...(sign.rows[0]?.cells ?? [])].join(' ')}`
  if (sign?.kind === 'item') return `the item number ${sign.number}`
  return sign?.kind === 'texture' ? `the texture ${sign.value}` : `the letter of ${sign?.id ?? 'the surface'}`
}

/** A point of the surface's outline, or of an extension line of it, on paper. */
interface Spot {
  readonly at: Vec2
  /** Ways out of the material; a circle is met from any side. */
  readonly out: readonly Vec2[]
  readonly own: number
  /** The extension line. */
  readonly fixed?: Drawn
  readonly target: LeaderTarget
}

function spotsOf(desk: Desk, owner: number, places: readonly SurfacePlace[]): Spot[] {
  const { placed, view } = desk.ink.views[owner]!
  const cut = view.hatched.length > 0
  return places.flatMap((place, nth): Spot[] => {
    if (place.kind === 'circle') {
      const centre = onPaper(placed, place.centre)
      const r = place.radius * placed.scale
      return [45, 135, 225, 315].map((degrees, i) => {
        const way = polar((degrees * Math.PI) / 180)
        return { at: along(centre, way, r), out: [way], own: 0.1 * i, target: { ...place } }
      })
    }
    const [a, b] = [onPaper(placed, place.a), onPaper(placed, place.b)]
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (length < 0.5) return []
    const own = 0.2 * nth
    const inView = (p: Vec2): Vec2 => [
      (p[0] - placed.origin[0]) / placed.scale,
      (p[1] - placed.origin[1]) / placed.scale,
    ]
    const at = (p: Vec2): LeaderTarget => ({ kind: 'point', at: inView(p), normal: place.out })
    const u: Vec2 = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
    const steps = length < 4 ? ALONG.slice(0, 1) : length < 12 ? ALONG.slice(0, 3) : ALONG
    const edge = steps.map((t, i): Spot => {
      const p = along(a, u, t * length)
      const inside = along(p, place.out, -0.4)
      // In a section the place must be material that is cut, not the mouth of a hole.
      const open = cut && desk.ink.hatchedAt(inside[0], inside[1]) === undefined ? AT_OPENING : 0
      const crossed = crossedAt(desk, p, u) ? AT_CROSSING : 0
      // Where a neighbour stands before the face, the line there reads as the neighbour's end.
      const covered = seesOut(desk, owner, p, place.out) ? 0 : COVERED
      return { at: p, out: [place.out], own: own + OFF_MIDDLE * i + open + crossed + covered, target: at(p) }
    })
    const beyond = (
      [
        [a, back(u)],
        [b, u],
      ] as const
    ).flatMap(([end, way]) =>
      extensions(desk, owner, end, way).map(
        ({ p, line, far }): Spot => ({
          at: p,
          // From outside the material there too (ISO 21920-1, from memory).
          out: [place.out],
          own: own + ON_EXTENSION + 0.04 * far,
          fixed: line,
          target: { kind: 'point', at: inView(p) },
        }),
      ),
    )
    return [...edge, ...beyond]
  })
}

/** Nothing of the view stands before the point; not looked into for slanting faces. */
function seesOut(desk: Desk, owner: number, p: Vec2, out: Vec2): boolean {
  const square = Math.min(Math.abs(out[0]), Math.abs(out[1])) < 1e-6
  return !square || desk.ink.sees(owner, along(p, out, 0.3), out)
}

/** Another line meets the edge at the point: a centre line, a border of a cut. */
function crossedAt(desk: Desk, p: Vec2, u: Vec2): boolean {
  const { ends } = desk.ink
  return desk.ink.search(p[0] - 0.8, p[1] - 0.8, p[0] + 0.8, p[1] + 0.8).some((i) => {
    const [vx, vy] = [ends[4 * i + 2]! - ends[4 * i]!, ends[4 * i + 3]! - ends[4 * i + 1]!]
    return Math.abs(vx * u[1] - vy * u[0]) > 0.1 * Math.hypot(vx, vy)
  })
}

/** Points on an extension line that runs on from the end of an edge into the open, and the line drawn so far. */
function extensions(desk: Desk, owner: number, end: Vec2, way: Vec2): { p: Vec2; line: Drawn; far: number }[] {
  const { distance, centre } = desk.ink.runOut(owner, end, way)
  const start = distance + (centre ? 0 : desk.figures.gap)
  const level = way[0] === 0 || way[1] === 0
  if (level && !desk.ink.sees(owner, along(end, way, distance + 0.3), way)) return []
  return OUT.map((far) => ({
    p: along(end, way, distance + far),
    line: drawn([bar('extension', along(end, way, start), along(end, way, distance + far + PAST))]),
    far,
  }))
}

// ---------------------------------------------------------------- at the end of a leader

function ledOptions(desk: Desk, owner: number, tie: Tie, spot: Spot, block: Block, extra: number): Option[] {
  return leadersToSurface(desk, owner, block, tie, spot.target, spot.fixed).map(
    (o): Option => ({ own: o.own + spot.own + extra, ...(o.side ? { side: o.side } : {}), members: () => o.members() }),
  )
}

// ---------------------------------------------------------------- datum letters

function datumOptions(desk: Desk, tie: Tie, spot: Spot, sign: Extract<Sign, { kind: 'datum' }>): Option[] {
  const h = desk.figures.text
  return spot.out.flatMap((way, i) =>
    STEMS.map((stem): Option => {
      const { art, centre, foot } = standingDatum(sign, way, stem, h)
      const [w, tall] = datumBox(sign, h)
      const middle: Vec2 = [spot.at[0] + centre[0], spot.at[1] + centre[1]]
      const across: Vec2 = [-way[1], way[0]]
      const base = (side: number) => along(spot.at, across, side * foot)
      const shapes: Shape[] = [
        slab('text', middle, [1, 0], w / 2, tall / 2),
        bar('leader', along(spot.at, way, 0.3), along(middle, way, -Math.min(w, tall) / 2)),
        bar('leader', along(base(1), way, 0.3), along(spot.at, way, h)),
        bar('leader', along(base(-1), way, 0.3), along(spot.at, way, h)),
      ]
      const piece = drawn(shapes, [], [{ block: signBlock([art]), centre: spot.at, angle: 0, justify: 'start' }])
      return {
        own: spot.own + 0.3 * i + WEIGHTS.leaderLength * stem,
        side: paperSide(way),
        members: once(() => [
          { dimension: undefined, tie, fixed: spot.fixed ?? nothing(), alternatives: [{ own: 0, ...piece }] },
        ]),
      }
    }),
  )
}

// ---------------------------------------------------------------- surface texture

/**
 * The symbol stands on the edge or its extension line where it then reads from below or from the right; elsewhere on
 * the shoulder of a leader (ISO 21920-1, ASME Y14.36; from memory).
 */
function textureOptions(
  desk: Desk,
  owner: number,
  tie: Tie,
  spot: Spot,
  sign: Extract<Sign, { kind: 'texture' }>,
): Option[] {
  const { iso, text } = desk.figures
  const art = textureArt(iso || !sign.process ? sign : { ...sign, process: capitals(sign.process) }, text)
  const stood = spot.out.flatMap((way, i): Option[] => {
    const angle = dot(way, [0, 1]) > 0.999 ? 0 : dot(way, [-1, 0]) > 0.999 ? 90 : undefined
    if (angle === undefined) return []
    const u: Vec2 = angle === 0 ? [1, 0] : [0, 1]
    const put = (x: number, y: number): Vec2 => along(along(spot.at, u, x), way, y)
    const half = (art.height - art.clear) / 2
    const left = art.clear / Math.sqrt(3)
    const wide = (art.width - art.point - left) / 2
    const shapes: Shape[] = [
      slab('text', put(left + wide, art.clear + half), u, wide, half),
      bar('leader', put(0, 0.3), put(left, art.clear)),
      bar('leader', put(0, 0.3), put(-art.point, art.short)),
      ...(sign.lay
        ? [0.4, 0.9].map((y) => bar('shoulder', put(left, y * text), put(left + 1.2 * text, y * text)))
        : []),
      // Upright through the vee: no centre line may run there.
      bar('leader', put(0, 0.3), put(0, art.short)),
    ]
    const block = signBlock([art], -art.point)
    const piece = drawn(shapes, [], [{ block, centre: spot.at, angle, justify: 'start' }])
    return [
      {
        own: spot.own + 0.3 * i,
        side: paperSide(way),
        members: once(() => [
          { dimension: undefined, tie, fixed: spot.fixed ?? nothing(), alternatives: [{ own: 0, ...piece }] },
        ]),
      },
    ]
  })
  if (spot.fixed) return stood
  const block: Block = {
    ...signBlock([art], -art.width / 2, -art.height / 2),
    width: art.width,
    height: art.height,
    stands: true,
  }
  return [...stood, ...ledOptions(desk, owner, tie, spot, block, 1)]
}
