import { sweepParameter } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { Dimension, LeaderTarget } from '../../sizes/dimension.ts'
import { type Block, calloutBlock } from './callout-block.ts'
import {
  arrow,
  type Desk,
  type Drawn,
  drawn,
  line,
  type Member,
  nothing,
  type Option,
  textSlab,
  tieOf,
  type Unit,
} from './form.ts'
import { onPaper } from './ink.ts'
import { once } from './once.ts'
import { bar, type Shape } from './shapes.ts'
import { paperSide, wishedSide } from './sides.ts'
import { along, dot, polar } from './vec.ts'
import { WEIGHTS } from './weights.ts'

/**
 * Leader directions in degrees from the level, in each quadrant: 30°, 45° and 60° are the custom of the drawing board;
 * level and upright leaders are never drawn, they would read as view or extension lines.
 */
const ANGLES = [45, 60, 30, 52, 38, 68, 22]
/** Elbow past the outline of the view, and past the tip within it, mm. */
const PAST_OUTLINE = [5, 9, 14, 20, 27, 35, 44, 55, 70]
const PAST_TIP = [8, 13, 19, 26]

/** Leader notes, diameters and radii of one view. */
export function leaderUnits(desk: Desk, owner: number, dimensions: readonly Dimension[]): Unit[] {
  return dimensions.flatMap((d): Unit[] => {
    const m = d.measured
    let options: Option[]
    if (m.kind === 'leader') options = m.targets.flatMap((t) => toTarget(desk, owner, d, t))
    else if (m.kind === 'diameter') {
      options = toTarget(desk, owner, d, { kind: 'circle', centre: m.centre, radius: m.radius })
    } else if (m.kind === 'radius') options = toArc(desk, owner, d, m)
    else return []
    const side = wishedSide(d, desk.ink.views[owner]!.view)
    const wished = options.filter((o) => o.side === side)
    if (wished.length > 0) options = wished
    options.sort((a, b) => a.own - b.own)
    const block = calloutBlock(d, desk.figures)
    return [
      {
        id: d.id,
        owner,
        dimensions: [d],
        rank: [3, -block.width],
        options,
        name: d.callout.lines
          .map((l) => l.map((p) => (typeof p === 'string' ? p : p.stack.join('/'))).join(''))
          .join(' '),
        ...(d.group ? { group: d.group.id } : {}),
      },
    ]
  })
}

/** Options for one target, radial at a circle. */
function toTarget(desk: Desk, owner: number, d: Dimension, target: LeaderTarget): Option[] {
  const { placed } = desk.ink.views[owner]!
  const block = calloutBlock(d, desk.figures)
  if (target.kind === 'point') {
    const tip = onPaper(placed, target.at)
    const normal = target.normal
    return directions().flatMap(({ way, odd }) =>
      normal && dot(way, normal) < 0.25
        ? []
        : elbows(desk, owner, tip, way).map((length) => leaderOption(desk, owner, d, block, { tip, way, length, odd })),
    )
  }
  const centre = onPaper(placed, target.centre)
  const r = target.radius * placed.scale
  const holdsHeads = r >= 2 * desk.figures.arrow.length + 1 && d.direction === 'diameter'
  const through = holdsHeads && desk.figures.iso && d.measured.kind === 'diameter'
  return directions().flatMap(({ way, odd }) => {
    if (target.from !== undefined && target.sweep !== undefined) {
      if (sweepParameter(target.from, target.sweep, Math.atan2(way[1], way[0])) === undefined) return []
    }
    const tip = along(centre, way, r)
    const far = along(centre, way, -r)
    return elbows(desk, owner, tip, way).flatMap((length) =>
      through
        ? [
            leaderOption(desk, owner, d, block, { tip, way, length, odd, far }),
            // Where the line through the circle would cross other outlines, an outside leader serves.
            leaderOption(desk, owner, d, block, { tip, way, length, odd: odd + 1 }),
          ]
        : [
            leaderOption(desk, owner, d, block, { tip, way, length, odd }),
            // Where another circle lies close about this one, the heads find room within.
            ...(holdsHeads && odd < WEIGHTS.oddAngle
              ? [leaderOption(desk, owner, d, block, { tip, way, length, odd: odd + WEIGHTS.noteThrough, far })]
              : []),
          ],
    )
  })
}

/** A note on a leader to an edge of the profile, at the custom angles; `extra` is what that costs. */
export function leaderToEdge(
  desk: Desk,
  owner: number,
  d: Dimension,
  tip: Vec2,
  normal: Vec2,
  extra: number,
): Option[] {
  const block = calloutBlock(d, desk.figures)
  return directions()
    .filter(({ way, odd }) => odd < WEIGHTS.oddAngle && dot(way, normal) > 0.25)
    .flatMap(({ way, odd }) =>
      elbows(desk, owner, tip, way)
        .filter((length) => length < 60)
        .map((length) => leaderOption(desk, owner, d, block, { tip, way, length, odd: odd + extra })),
    )
}

/** A radius: from outside towards the centre, or from the centre's side out to the arc. */
function toArc(
  desk: Desk,
  owner: number,
  d: Dimension,
  m: { centre: Vec2; radius: number; from: number; sweep: number },
): Option[] {
  const { placed } = desk.ink.views[owner]!
  const block = calloutBlock(d, desk.figures)
  const centre = onPaper(placed, m.centre)
  const r = m.radius * placed.scale
  const within = arcDirections(m.from, m.sweep)
  return within.flatMap(({ way, odd }) => {
    const tip = along(centre, way, r)
    const inward: Vec2 = [-way[0], -way[1]]
    return [
      ...elbows(desk, owner, tip, way).map((length) => leaderOption(desk, owner, d, block, { tip, way, length, odd })),
      ...elbows(desk, owner, tip, inward).map((length) =>
        leaderOption(desk, owner, d, block, { tip, way: inward, length, odd: odd + 0.3 }),
      ),
    ]
  })
}

interface Direction {
  readonly way: Vec2
  /** Cost of an angle other than the customary ones. */
  readonly odd: number
}

let all: readonly Direction[] | undefined

function directions(): readonly Direction[] {
  all ??= [0, 1, 2, 3].flatMap((quadrant) =>
    ANGLES.map((angle, i): Direction => {
      const a = ([angle, 180 - angle, 180 + angle, -angle][quadrant]! * Math.PI) / 180
      return {
        way: polar(a),
        odd: (i < 3 ? 0 : WEIGHTS.oddAngle) + (quadrant === 1 || quadrant === 2 ? WEIGHTS.leftwardLeader : 0),
      }
    }),
  )
  return all
}

/** Directions within an arc; where no customary one falls in, the arc's own middle and quarters. */
function arcDirections(from: number, sweep: number): readonly Direction[] {
  const inside = directions().filter(({ way }) => sweepParameter(from, sweep, Math.atan2(way[1], way[0])) !== undefined)
  if (inside.length > 0) return inside
  return [0.5, 0.25, 0.75, 0.1, 0.9]
    .map((t) => polar(from + t * sweep))
    .filter((w) => Math.min(Math.abs(w[0]), Math.abs(w[1])) > 0.1)
    .map((way) => ({ way, odd: WEIGHTS.oddAngle }))
}

/** Distances from tip to elbow: just past the view's outline, or close by in free space. */
function elbows(desk: Desk, owner: number, tip: Vec2, way: Vec2): number[] {
  const { min, max } = desk.ink.views[owner]!.box
  const exits = ([0, 1] as const).map((k) => ((way[k] > 0 ? max[k] : min[k]) - tip[k]) / way[k])
  const exit = Math.max(0, Math.min(...exits))
  const out = PAST_TIP.filter((d) => d < exit + PAST_OUTLINE[0]!)
  return [...out, ...PAST_OUTLINE.map((d) => Math.max(exit, 2) + d)].filter((d) => d < 160)
}

interface Leader {
  readonly tip: Vec2
  /** From tip to elbow. */
  readonly way: Vec2
  readonly length: number
  readonly odd: number
  /** Other end of a diameter's line through the centre, with its own head. */
  readonly far?: Vec2
}

function leaderOption(desk: Desk, owner: number, d: Dimension, block: Block, l: Leader): Option {
  return {
    own: WEIGHTS.leaderLength * l.length + l.odd + (l.far ? 0.3 : 0),
    side: paperSide(along([0, 0], l.way, 1)),
    members: once(() => leaderMember(desk, owner, d, block, l)),
  }
}

/** None where the text could not stand. */
function leaderMember(desk: Desk, owner: number, d: Dimension, block: Block, l: Leader): readonly Member[] {
  const f = desk.figures
  const right = l.way[0] >= 0
  const sx = right ? 1 : -1
  const elbow = along(l.tip, l.way, l.length)
  let centre: Vec2
  let shoulder: Vec2
  if (f.iso) {
    // ISO 128-2: text stands above the reference line.
    const length = block.width + 1
    shoulder = along(elbow, [sx, 0], length)
    centre = [elbow[0] + (sx * length) / 2, elbow[1] + f.textGap + block.height / 2]
  } else {
    shoulder = along(elbow, [sx, 0], f.shoulder)
    const gap = f.practice.leader.gap
    // Mid-height of the first letter, or of the last where the note stands to the left.
    const mid = right ? block.firstMid : block.lastMid
    centre = [shoulder[0] + sx * (gap + block.width / 2), elbow[1] - mid]
  }
  const text = textSlab(block, centre, 0)
  if (!desk.ground.holdsText(text, owner, false)) return []
  const inward: Vec2 = [-l.way[0], -l.way[1]]
  const shapes: Shape[] = [text, bar('leader', l.tip, elbow), arrow(l.tip, l.far ? l.way : inward, f)]
  const strokes: Drawn['strokes'][number][] = []
  if (l.far) {
    shapes.push(bar('dimension', l.far, l.tip), arrow(l.far, inward, f))
    strokes.push({ kind: 'dimension', curve: { kind: 'line', a: l.far, b: l.tip } })
  }
  strokes.push({ kind: 'leader', curve: { kind: 'line', a: l.tip, b: elbow } })
  const s = line('shoulder', elbow, shoulder)
  shapes.push(s.shape)
  strokes.push({ kind: 'leader', curve: s.curve })
  return [
    {
      dimension: d,
      tie: tieOf(d),
      fixed: nothing(),
      alternatives: [
        { own: 0, ...drawn(shapes, strokes, [{ block, centre, angle: 0, justify: f.iso || right ? 'start' : 'end' }]) },
      ],
    },
  ]
}
