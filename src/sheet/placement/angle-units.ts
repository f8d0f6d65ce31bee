import type { Curve2 } from '../../geometry/curve2.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { Dimension } from '../../sizes/dimension.ts'
import { calloutBlock } from './callout-block.ts'
import {
  type Alternative,
  arrow,
  type Desk,
  type Drawn,
  drawn,
  Later,
  type Member,
  type Option,
  readable,
  textSlab,
  tieOf,
  type Unit,
} from './form.ts'
import { flattened, onPaper } from './ink.ts'
import { once } from './once.ts'
import { type Bar, bar, type Shape } from './shapes.ts'
import { obeying } from './sides.ts'
import { along, polar, turned } from './vec.ts'
import { WEIGHTS } from './weights.ts'

/** Smallest arc and number of arcs tried. */
const LEAST_RADIUS = 10
/** From the circle of a hole's centre to the first arc of its angle, mm. */
const PAST_LEG = 5
const ARCS = 12

/** Leaders from the arc to text beyond it: place along the arc, length in mm. */
const LEADS = [0.35, 0.65, 0.2, 0.8].flatMap((t) => [10, 18, 28].map((length) => [t, length] as const))

/** Angles of one view. */
export function angleUnits(desk: Desk, owner: number, dimensions: readonly Dimension[]): Unit[] {
  return dimensions.flatMap((d): Unit[] => {
    if (d.measured.kind !== 'angle') return []
    const { arc } = d.measured
    const options =
      arc === undefined
        ? Array.from({ length: ARCS }, (_, k) => option(desk, owner, d, k))
        : arcOptions(desk, owner, d, arc.radius * desk.ink.views[owner]!.placed.scale, arc.side)
    return [
      {
        id: d.id,
        owner,
        dimensions: [d],
        rank: [2, d.value],
        ...obeying(options, d, desk.ink.views[owner]!.view),
        name: d.callout.lines
          .flat()
          .filter((p) => typeof p === 'string')
          .join(' '),
        ...(d.group ? { group: d.group.id } : {}),
      },
    ]
  })
}

/** How far a piece of an arc runs on into the next, mm: what crosses it at the joint, in the middle as a rule, is then seen. */
const JOINT = 0.2

/** The pieces of an arc. */
function bars(role: 'dimension' | 'tail', points: readonly Vec2[]): Bar[] {
  return points.slice(1).map((b, i) => {
    const a = points[i]!
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    const past = i + 2 < points.length ? JOINT / length : 0
    return bar(role, a, [b[0] + past * (b[0] - a[0]), b[1] + past * (b[1] - a[1])])
  })
}

/** Rows of a length along an arc on its open side; over the part where nothing else serves. */
function arcOptions(desk: Desk, owner: number, d: Dimension, r: number, side: 1 | -1): Option[] {
  const { first, pitch } = desk.figures
  return Array.from({ length: ARCS }, (_, k) => k).flatMap((k) => {
    const off = first + k * pitch
    const set = (radius: number, row: number, own: number): Option => ({
      row,
      own: own + WEIGHTS.rowDistance * k * pitch,
      members: once(() => [member(desk, owner, d, radius)]),
    })
    return [side, -side].flatMap((way, i) =>
      r + way * off > LEAST_RADIUS ? [set(r + way * off, k + 1, i * WEIGHTS.arcOverPart)] : [],
    )
  })
}

/**
 * The arc of the dimension line: that of the angle, or for a length along an arc of up to 90° as far as the extension
 * lines run parallel to the middle of it (ISO 129-1:2018, from memory; beyond that they are radial).
 */
function spread(sweep: number, from: number, arc: number | undefined, radius: number) {
  const lo = sweep >= 0 ? from : from + sweep
  const wide = Math.abs(sweep)
  const half = (arc ?? 0) * Math.sin(wide / 2)
  if (arc === undefined || wide > Math.PI / 2 + 1e-9 || half > 0.95 * radius) return { lo, wide }
  const turn = Math.asin(half / radius)
  return { lo: lo + wide / 2 - turn, wide: 2 * turn }
}

function option(desk: Desk, owner: number, d: Dimension, k: number): Option {
  // Where a leg is drawn only from some way on, at a hole on its circle, the arc stands beyond.
  const { scale } = desk.ink.views[owner]!.placed
  const { measured } = d
  const legs = measured.kind === 'angle' && measured.legsFrom ? measured.legsFrom * scale + PAST_LEG : 0
  const least = Math.max(LEAST_RADIUS, legs)
  const radius = least + k * desk.figures.pitch
  return {
    row: k + 1,
    own: WEIGHTS.rowDistance * (radius - least),
    members: once(() => [member(desk, owner, d, radius)]),
  }
}

function member(desk: Desk, owner: number, d: Dimension, radius: number): Member {
  const f = desk.figures
  const { placed } = desk.ink.views[owner]!
  if (d.measured.kind !== 'angle') throw new Error('not an angle')
  const { from, sweep, reach } = d.measured
  const vertex = onPaper(placed, d.measured.vertex)
  const arc = d.measured.arc === undefined ? undefined : d.measured.arc.radius * placed.scale
  const { lo, wide } = spread(sweep, from, arc, radius)
  const reaches = sweep >= 0 ? reach : [reach[1], reach[0]]
  const shapes: Shape[] = []
  if (arc !== undefined) {
    const start = Math.min(from, from + sweep)
    for (const [a, b] of [
      [start, lo],
      [start + Math.abs(sweep), lo + wide],
    ] as const) {
      const [p, q] = [along(vertex, polar(a), arc), along(vertex, polar(b), radius)]
      const length = Math.hypot(q[0] - p[0], q[1] - p[1])
      const way: Vec2 = [(q[0] - p[0]) / length, (q[1] - p[1]) / length]
      shapes.push(bar('extension', along(p, way, f.gap), along(q, way, f.overshoot)))
    }
  }
  for (const [i, a] of arc === undefined ? [lo, lo + wide].entries() : []) {
    const start = reaches[i]! * placed.scale + f.gap
    if (start > radius - 0.3) continue
    const foot = along(vertex, polar(a), start)
    if (desk.ink.runsAlong(owner, foot, along(vertex, polar(a), radius))) continue
    shapes.push(bar('extension', foot, along(vertex, polar(a), radius + f.overshoot)))
  }
  const block = calloutBlock(d, f)
  const onLeader = (bare: Drawn, from: Vec2, elbow: Vec2): Drawn => {
    const sx = elbow[0] >= from[0] ? 1 : -1
    const length = f.iso ? block.width + 1 : f.shoulder
    const end: Vec2 = [elbow[0] + sx * length, elbow[1]]
    const centre: Vec2 = f.iso
      ? [elbow[0] + (sx * length) / 2, elbow[1] + f.textGap + block.height / 2]
      : [end[0] + sx * (f.practice.leader.gap + block.width / 2), elbow[1] - (sx > 0 ? block.firstMid : block.lastMid)]
    const whole: Curve2 = { kind: 'arc', c: vertex, r: radius, from: lo, sweep: wide }
    const points = flattened(whole)
    return drawn(
      [
        textSlab(block, centre, 0),
        bar('leader', from, elbow),
        bar('shoulder', elbow, end),
        ...bare.shapes.filter(
          (s) => (s.shape === 'slab' && s.role !== 'text') || (s.shape === 'bar' && s.role === 'tail'),
        ),
        ...bars('dimension', points),
      ],
      [
        { kind: 'dimension', curve: whole },
        { kind: 'leader', curve: { kind: 'line', a: from, b: elbow } },
        { kind: 'leader', curve: { kind: 'line', a: elbow, b: end } },
      ],
      [{ block, centre, angle: 0, justify: sx > 0 ? 'start' : 'end' }],
    )
  }
  const alternatives: Alternative[] = []
  const A = f.arrow.length
  const turn = A / radius
  const mid = lo + wide / 2
  const halfGap = (at: number): number => {
    if (f.iso) return block.width / 2 / radius
    const way = turned(polar(at))
    return (
      (Math.min(block.width / 2 / Math.abs(way[0] || 1e-9), block.height / 2 / Math.abs(way[1] || 1e-9)) + f.textGap) /
      radius
    )
  }
  const set = (ends: 'in' | 'out', text: number, where: 'between' | 'past'): Drawn => {
    const own: Shape[] = []
    const strokes: Drawn['strokes'][number][] = []
    const arc = (a: number, b: number, role: 'dimension' | 'tail', seen = true) => {
      if ((b - a) * radius < 0.05) return
      const curve: Curve2 = { kind: 'arc', c: vertex, r: radius, from: a, sweep: b - a }
      const points = flattened(curve)
      own.push(...bars(role, points))
      if (seen) strokes.push({ kind: 'dimension', curve })
    }
    const g = halfGap(text)
    const head = (a: number, sign: number) => {
      // The head's axis is the chord of its own length, so that it sits on the arc.
      const tip = along(vertex, polar(a), radius)
      const tail = along(vertex, polar(a - sign * turn), radius)
      const length = Math.hypot(tip[0] - tail[0], tip[1] - tail[1])
      own.push(arrow(tip, [(tip[0] - tail[0]) / length, (tip[1] - tail[1]) / length], f))
    }
    if (ends === 'in') {
      head(lo, -1)
      head(lo + wide, 1)
    } else {
      head(lo, 1)
      head(lo + wide, -1)
    }
    if (where === 'between') {
      if (f.iso) arc(lo, lo + wide, 'dimension')
      else if (ends === 'in') {
        arc(lo, text - g, 'dimension')
        arc(text + g, lo + wide, 'dimension')
      } else arc(lo, lo + wide, 'dimension', false)
      if (ends === 'out') {
        arc(lo - turn - 2.5 / radius, lo, 'tail')
        arc(lo + wide, lo + wide + turn + 2.5 / radius, 'tail')
      }
    } else {
      arc(lo, lo + wide, 'dimension', f.iso)
      const past = text > lo ? text + (f.iso ? g : -g) : text - (f.iso ? g : -g)
      if (text > lo) {
        arc(lo + wide, past, 'tail')
        arc(lo - turn - 2.5 / radius, lo, 'tail')
      } else {
        arc(past, lo, 'tail')
        arc(lo + wide, lo + wide + turn + 2.5 / radius, 'tail')
      }
    }
    const tangent = turned(polar(text))
    const angle = f.iso ? readable(tangent) : 0
    let centre = along(vertex, polar(text), radius)
    if (f.iso) {
      const rad = (angle * Math.PI) / 180
      // Corners of a straight text above a curved line dip by its sagitta.
      const dip = radius - Math.sqrt(Math.max(0, radius ** 2 - (block.width / 2) ** 2))
      const up = turned([Math.cos(rad), Math.sin(rad)])
      const outward = up[0] * Math.cos(text) + up[1] * Math.sin(text) > 0
      centre = along(centre, up, f.textGap + block.height / 2 + (outward ? 0 : dip))
    }
    own.unshift(textSlab(block, centre, angle))
    return drawn(own, strokes, [{ block, centre, angle, justify: 'middle' }])
  }
  const g = halfGap(mid)
  const room = wide / 2 - g
  if (f.iso ? room > 0.5 / radius && wide > 2.5 * turn : room > turn + 1 / radius) {
    alternatives.push(new Later(0, () => set('in', mid, 'between')))
    for (const t of [0.3, 0.7, 0.25, 0.75, 0.2, 0.8]) {
      const at = lo + t * wide
      const left = Math.min(at - lo, lo + wide - at) - halfGap(at)
      if (left > (f.iso ? 0.5 / radius : turn + 1 / radius))
        alternatives.push(new Later(WEIGHTS.textShift, () => set('in', at, 'between')))
    }
  }
  if (room > 0.5 / radius && alternatives.length === 0)
    alternatives.push(new Later(WEIGHTS.arrowsOutside, () => set('out', mid, 'between')))
  // Two passes: the gap of level text depends on where it stands.
  for (const side of [1, -1]) {
    const edge = side > 0 ? lo + wide : lo
    let at = edge
    for (let i = 0; i < 4; i++) at = edge + side * (turn + 2 / radius + halfGap(at))
    alternatives.push(new Later(WEIGHTS.textOutside + (side > 0 ? 0 : 0.2), () => set('out', at, 'past')))
  }
  // Text on a leader from the arc, where nothing else leaves it clear.
  const bare = set(room > (f.iso ? 0.5 : turn + 1) / radius ? 'in' : 'out', mid, 'between')
  for (const [i, [t, length]] of LEADS.entries()) {
    const at = lo + t * wide
    const from = along(vertex, polar(at), radius)
    // Off the radius, so that the leader does not read as an extension line.
    const way = polar(at + (t < 0.5 ? -0.35 : 0.35))
    if (Math.min(Math.abs(way[0]), Math.abs(way[1])) < 0.15) continue
    alternatives.push(new Later(WEIGHTS.textOnLeader + 0.3 * i, () => onLeader(bare, from, along(from, way, length))))
  }
  return {
    dimension: d,
    tie: tieOf(d),
    fixed: drawn(shapes),
    alternatives: alternatives.sort((a, b) => a.own - b.own),
  }
}
