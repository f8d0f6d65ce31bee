import type { Curve2 } from '../../geometry/curve2.ts'
import { sweepParameter } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { Dimension, LeaderTarget } from '../../sizes/dimension.ts'
import type { Tie } from '../sheet.ts'
import { type Block, calloutBlock } from './callout-block.ts'
import { ROUNDING } from './candidates.ts'
import {
  arrow,
  type Desk,
  type Drawn,
  endDot,
  type Member,
  nothing,
  type Option,
  Outlined,
  textSlab,
  tieOf,
  type Unit,
} from './form.ts'
import { onPaper } from './ink.ts'
import { type Leader, LeaderPlaces, leadersOf, type Ray } from './leader-places.ts'
import { bar, type Shape, slab } from './shapes.ts'
import { obeying, type PaperSide, paperSide } from './sides.ts'
import { along, back, dot, polar } from './vec.ts'
import { WEIGHTS } from './weights.ts'

/**
 * Leader directions in degrees from the level, in each quadrant: 30°, 45° and 60° are the custom of the drawing board;
 * level and upright leaders are never drawn, they would read as view or extension lines.
 */
const ANGLES = [45, 60, 30, 52, 38, 68, 22]
/** Elbow past the outline of the view, and past the tip within it, mm. */
const PAST_OUTLINE = [5, 9, 14, 20, 27, 35, 44, 55, 70]
const PAST_TIP = [8, 13, 19, 26]
const LONGEST = 160
/** From this sweep on an arc is a slot's end, with sides that face each other. */
const HALF_ROUND = (Math.PI * 5) / 6

/** Leader notes, diameters and radii of one view. */
export function leaderUnits(desk: Desk, owner: number, dimensions: readonly Dimension[]): Unit[] {
  return dimensions.flatMap((d): Unit[] => {
    const m = d.measured
    const block = calloutBlock(d, desk.figures)
    const dotted = m.kind === 'leader' && m.targets.every((t) => t.kind === 'point' && t.within)
    const note = noteOf({ desk, owner, dimension: d, block, tie: tieOf(d), ...(dotted ? { dotted } : {}) })
    let rays: Ray[]
    if (m.kind === 'leader') rays = m.targets.flatMap((t) => toTarget(note, t))
    else if (m.kind === 'diameter') rays = toTarget(note, { kind: 'circle', centre: m.centre, radius: m.radius })
    else if (m.kind === 'radius') rays = toArc(note, m)
    else return []
    const options = new LeaderPlaces(
      rays,
      (leader) => new LeaderOption(note, leader),
      ({ tip, way }, length, most) => leastOnGround(note, tip, way, length, most),
    )
    return [
      {
        id: d.id,
        owner,
        dimensions: [d],
        rank: [3, -block.width],
        ...obeying(options, d, desk.ink.views[owner]!.view),
        name: d.callout.lines
          .map((l) => l.map((p) => (typeof p === 'string' ? p : p.stack.join('/'))).join(''))
          .join(' '),
        ...(d.group ? { group: d.group.id } : {}),
      },
    ]
  })
}

/** Rays to one target, radial at a circle. */
function toTarget(note: Note, target: LeaderTarget): Ray[] {
  const { desk, owner, dimension: d } = note
  const { placed } = desk.ink.views[owner]!
  if (target.kind === 'point') {
    const tip = onPaper(placed, target.at)
    const { normal } = target
    return directions()
      .filter(({ way }) => !normal || dot(way, normal) >= 0.25)
      .map((direction) => rayFrom(note, tip, direction, direction.plain))
  }
  const centre = onPaper(placed, target.centre)
  const r = target.radius * placed.scale
  const holdsHeads = r >= 2 * desk.figures.arrow.length + 1 && d?.direction === 'diameter'
  const through = holdsHeads && desk.figures.iso && d.measured.kind === 'diameter'
  const out: Ray[] = []
  for (const direction of directions()) {
    const { way, odd, plain } = direction
    if (target.from !== undefined && target.sweep !== undefined) {
      if (sweepParameter(target.from, target.sweep, Math.atan2(way[1], way[0])) === undefined) continue
    }
    const far = along(centre, way, -r)
    // Where a line through the circle would cross other outlines an outside leader serves; where another circle lies
    // close about this one, the heads find room within.
    const forms = through
      ? [{ odd, far }, { odd: odd + 1 }]
      : holdsHeads && odd < WEIGHTS.oddAngle
        ? [{ odd: odd + WEIGHTS.noteThrough, far }, { odd }]
        : plain
    out.push(rayFrom(note, along(centre, way, r), direction, forms))
  }
  return out
}

function rayFrom(note: Note, tip: Vec2, direction: Direction, forms: Ray['forms']): Ray {
  const { way, side } = direction
  return { tip, way, side, lengths: elbows(note, tip, direction), forms }
}

/** A note on a leader to an edge of the profile, at the custom angles; `extra` is what that costs; `inGroove` where the edge is shorter than a head. */
export function leaderToEdge(
  desk: Desk,
  owner: number,
  dimension: Dimension,
  block: Block,
  tip: Vec2,
  normal: Vec2,
  extra: number,
  inGroove = false,
): Option[] {
  const tie = tieOf(dimension)
  const note = noteOf({ desk, owner, dimension, block, tie, ...(inGroove ? { inGroove: true as const } : {}) })
  const rays = directions()
    .filter(({ way, odd }) => odd < WEIGHTS.oddAngle && dot(way, normal) > 0.25)
    .map((direction) => rayFrom(note, tip, direction, [{ odd: direction.odd + extra }]))
  return leadersOf(rays)
    .filter(({ length }) => length < 60)
    .map((leader) => new LeaderOption(note, leader))
}

/** Leaders from signs to a surface, each at what it costs; `fixed` is drawn with them. */
export function leadersToSurface(
  desk: Desk,
  owner: number,
  block: Block,
  tie: Tie,
  target: LeaderTarget,
  fixed?: Drawn,
): Option[] {
  const note = noteOf({ desk, owner, dimension: undefined, block, tie, ...(fixed ? { fixed } : {}) })
  return leadersOf(toTarget(note, target)).map((leader) => new LeaderOption(note, leader))
}

/** A radius: from outside towards the centre, or from the centre's side out to the arc. */
function toArc(note: Note, m: { centre: Vec2; radius: number; from: number; sweep: number }): Ray[] {
  const { placed } = note.desk.ink.views[note.owner]!
  const centre = onPaper(placed, m.centre)
  const r = m.radius * placed.scale
  const within = Math.abs(m.sweep) > HALF_ROUND ? WEIGHTS.overFarSide : 0.3
  return arcDirections(m.from, m.sweep).flatMap((direction) => {
    const { odd } = direction
    const tip = along(centre, direction.way, r)
    const inward = facing(back(direction.way), odd)
    return [rayFrom(note, tip, direction, [{ odd }]), rayFrom(note, tip, inward, [{ odd: odd + within }])]
  })
}

interface Direction {
  readonly way: Vec2
  readonly side: PaperSide
  /** Cost of an angle other than the customary ones. */
  readonly odd: number
  /** A leader and nothing else. */
  readonly plain: Ray['forms']
}

const facing = (way: Vec2, odd: number): Direction => ({ way, side: paperSide(way), odd, plain: [{ odd }] })

let all: readonly Direction[] | undefined

function directions(): readonly Direction[] {
  all ??= [0, 1, 2, 3].flatMap((quadrant) =>
    ANGLES.map((angle, i): Direction => {
      const a = ([angle, 180 - angle, 180 + angle, -angle][quadrant]! * Math.PI) / 180
      const leftward = quadrant === 1 || quadrant === 2 ? WEIGHTS.leftwardLeader : 0
      return facing(polar(a), (i < 3 ? 0 : WEIGHTS.oddAngle) + leftward)
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
    .map((way) => facing(way, WEIGHTS.oddAngle))
}

/** Distances from tip to elbow: just past the view's outline, or close by in free space; fewer at odd angles. */
function elbows({ desk, owner }: Note, tip: Vec2, { way, odd }: Direction): number[] {
  const { min, max } = desk.ink.views[owner]!.box
  const across = ((way[0] > 0 ? max[0] : min[0]) - tip[0]) / way[0]
  const up = ((way[1] > 0 ? max[1] : min[1]) - tip[1]) / way[1]
  const exit = Math.max(0, Math.min(across, up))
  const out: number[] = []
  for (const d of PAST_TIP) if (d < exit + PAST_OUTLINE[0]!) out.push(d)
  for (let i = 0; i < PAST_OUTLINE.length; i++) {
    const length = Math.max(exit, 2) + PAST_OUTLINE[i]!
    if (length < LONGEST && (odd < WEIGHTS.oddAngle || i % 2 === 0)) out.push(length)
  }
  return out
}

/** A size on a leader, measured. */
interface Note {
  readonly desk: Desk
  readonly owner: number
  /** Absent: signs of a surface, without a size. */
  readonly dimension: Dimension | undefined
  readonly block: Block
  readonly tie: Tie
  /** What the leader ends on, where that is not the view's own line. */
  readonly fixed?: Drawn
  /** It ends on a face with a dot, not at a line with an arrowhead (ISO 128-2, ASME Y14.2; from memory). */
  readonly dotted?: true
  /** It ends at the bottom of a groove narrower than its head. */
  readonly inGroove?: true
  /** Where its text stands from the elbow, by the leader's way. */
  readonly toRight: readonly [across: number, up: number, reach: number]
  readonly toLeft: readonly [across: number, up: number, reach: number]
}

function noteOf(note: Omit<Note, 'toRight' | 'toLeft'>): Note {
  return { ...note, toRight: textFromElbow(note, 1), toLeft: textFromElbow(note, -1) }
}

/** A class, because there are thousands of them. */
class LeaderOption implements Option {
  readonly own: number
  readonly side: PaperSide
  readonly #note: Note
  readonly #leader: Leader
  #members: readonly Member[] | undefined

  constructor(note: Note, leader: Leader) {
    this.own = leader.own
    this.side = leader.side
    this.#note = note
    this.#leader = leader
  }

  members(): readonly Member[] {
    this.#members ??= leaderMember(this.#note, this.#leader)
    return this.#members
  }
}

/** Where the text of a leader stands from its elbow, and how far the shoulder reaches; `sx` is 1 to the right, -1 to the left. */
function textFromElbow(
  { desk, block }: Pick<Note, 'desk' | 'block'>,
  sx: number,
): readonly [across: number, up: number, reach: number] {
  const f = desk.figures
  // The line ends at the frame itself, or runs on as the line that a datum letter hangs from.
  if (block.joint !== undefined) return [sx * f.shoulder + (sx * block.width) / 2, -block.joint, f.shoulder]
  if (block.stands) return [(sx * block.width) / 2, block.height / 2, block.width]
  // ISO 128-2: text stands above the reference line.
  if (f.iso) return [(sx * (block.width + 1)) / 2, f.textGap + block.height / 2, block.width + 1]
  // Mid-height of the first letter, or of the last where the note stands to the left.
  const across = sx * f.shoulder + sx * (f.practice.leader.gap + block.width / 2)
  return [across, -(sx > 0 ? block.firstMid : block.lastMid), f.shoulder]
}

/** What the leader costs on the ground at the least; asked tens of thousands of times, and costs little. */
function leastOnGround(note: Note, tip: Vec2, way: Vec2, length: number, most: number | undefined): number {
  const { ground } = note.desk
  const text = way[0] >= 0 ? note.toRight : note.toLeft
  const ex = tip[0] + way[0] * length
  const ey = tip[1] + way[1] * length
  const cx = ex + text[0]
  const cy = ey + text[1]
  const hw = note.block.width / 2
  const hh = note.block.height / 2
  if (ground.onUnbreakable(cx, cy, hw, hh)) return Infinity
  if (most === undefined) return 0
  const over = ground.noteCost(cx, cy, hw, hh, note.owner)
  // The sum may be rounded another way than where it is worked out whole.
  if (over > most + ROUNDING) return over - ROUNDING
  const crossed = ground.crossedBy(tip, ex, ey, most - over + ROUNDING)
  return Math.max(0, over + crossed - ROUNDING)
}

/** None where the text could not stand. */
function leaderMember(note: Note, l: Leader): readonly Member[] {
  const { desk, owner, dimension: d, block, tie, fixed } = note
  const f = desk.figures
  const right = l.way[0] >= 0
  const sx = right ? 1 : -1
  const [across, up, reach] = right ? note.toRight : note.toLeft
  const ex = l.tip[0] + l.way[0] * l.length
  const ey = l.tip[1] + l.way[1] * l.length
  const [cx, cy] = [ex + across, ey + up]
  if (desk.ground.onUnbreakable(cx, cy, block.width / 2, block.height / 2)) return []
  const centre: Vec2 = [cx, cy]
  const text = textSlab(block, centre, 0, true)
  if (!desk.ground.holdsText(text, owner)) return []
  const elbow: Vec2 = [ex, ey]
  const shoulder: Vec2 = [ex + sx * reach, ey]
  const inward: Vec2 = [-l.way[0], -l.way[1]]
  const head = arrow(l.tip, l.far ? l.way : inward, f, !l.far)
  const shapes: Shape[] = [
    text,
    bar('leader', l.tip, elbow),
    note.dotted ? endDot(l.tip, l.way) : note.inGroove ? { ...head, inGroove: true } : head,
  ]
  if (l.far) shapes.push(bar('dimension', l.far, l.tip), arrow(l.far, inward, f))
  shapes.push(bar('shoulder', elbow, shoulder))
  if (block.allAround) {
    const circle = slab('text', elbow, [1, 0], f.text / 2, f.text / 2)
    if (!desk.ground.holdsText(circle, owner)) return []
    shapes.push(circle)
  }
  const print = () => ({
    strokes: [
      ...(l.far ? [{ kind: 'dimension' as const, curve: { kind: 'line' as const, a: l.far, b: l.tip } }] : []),
      { kind: 'leader' as const, curve: { kind: 'line' as const, a: l.tip, b: elbow } },
      { kind: 'leader' as const, curve: { kind: 'line' as const, a: elbow, b: shoulder } },
      ...(block.allAround ? [{ kind: 'leader' as const, curve: aroundCircle(elbow, f.text) }] : []),
    ],
    texts: [
      {
        block,
        centre,
        angle: 0,
        justify: (f.iso && block.joint === undefined) || right ? ('start' as const) : ('end' as const),
      },
    ],
  })
  return [{ dimension: d, tie, fixed: fixed ?? NOTHING, alternatives: [new Outlined(0, shapes, print)] }]
}

/** All around: a circle at the elbow (ISO 7083, ASME Y14.5 Appendix C: as high as the lettering; from memory). */
function aroundCircle(elbow: Vec2, h: number): Curve2 {
  return { kind: 'arc', c: elbow, r: h / 2, from: 0, sweep: 2 * Math.PI }
}

const NOTHING = nothing()
