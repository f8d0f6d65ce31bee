import type { Angle } from '../../brief/size.ts'
import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { add, cross, dot, norm, scale, sub, unit } from '../../geometry/vec3.ts'
import { angleCallout, diameterCallout, withLine } from '../callout/shapes.ts'
import type { Statement } from '../dimension.ts'
import { axisIndex } from '../proof/elements.ts'
import { type Context, mooringOf } from './context.ts'
import type { Draft, Showing } from './draft.ts'
import { type Chosen, oneOf } from './kinds.ts'
import { showAngle } from './show.ts'
import type { Sight } from './sight.ts'

/** Bolt circles: one size for all that share centre and diameter, with their spacing said or plain to see. */
export function boltCircleDrafts(
  context: Context,
  all: readonly Chosen<'bolt circle'>[],
  notes: Map<string, Draft>,
): Draft[] {
  const sets = new Map<string, Chosen<'bolt circle'>[]>()
  for (const one of all) {
    const key = `${one.of}/${one.size.mm.toFixed(5)}/${one.size.text}`
    sets.set(key, [...(sets.get(key) ?? []), one])
  }
  const drafts: Draft[] = []
  for (const set of sets.values()) {
    const first = set[0]!
    const feature = context.features.get(first.group ?? '')
    const pattern = feature?.pattern
    const axisAt = mooringOf(context, first.of, [1, 0, 0])?.at
    const centre = pattern?.kind === 'bolt circle' ? pattern.centre : axisAt
    const axis = pattern?.kind === 'bolt circle' ? pattern.normal : feature?.outward
    if (!centre || !axis) continue
    const places = (one: Chosen<'bolt circle'>) =>
      one.members.flatMap((m) => {
        const at = mooringOf(context, m, axis)?.at
        return at ? [at] : []
      })
    const members = set.flatMap(places)
    const states: Statement[] = [{ kind: 'bolt circle', centre, axis, members }]
    for (const one of set) {
      const own = places(one)
      if (own.length < 2) continue
      const spaced: Statement = { kind: 'equally spaced', centre, axis, members: own }
      const { habit } = context.writing
      const facing = context.sights.some((s) => s.facing(axis))
      const word = facing ? habit.equallySpaced : habit.equallySpacedUnseen
      const note = notes.get(one.group ?? '')
      // Two opposite holes on a centre line show it; others are said to be evenly spaced where the practice says so.
      const plain = own.length === 2 && own.every((p) => onCentreLine(p, centre, axis))
      if (word && note && !plain) {
        notes.set(one.group!, { ...note, callout: withLine(note.callout, word), states: [...note.states, spaced] })
      } else states.push(spaced)
    }
    drafts.push({
      id: `${first.group}/bolt circle`,
      callout: diameterCallout(first.size, context.writing),
      value: first.size.mm,
      size: first.size,
      direction: 'diameter',
      states,
      shows: (sight: Sight) => {
        if (!sight.facing(axis)) return acrossProfile(sight, centre, axis, first.size.mm / 2, members)
        const seen = members.some((m) => sight.circles(sight.flat(m)).some((c) => c.visible))
        const measured = { kind: 'diameter', centre: sight.flat(centre), radius: first.size.mm / 2 } as const
        return { score: (seen ? 80 : -40) - 2 * sight.order, measured }
      },
      span: first.span,
      ...(first.group ? { feature: first.group } : {}),
    })
    for (const one of set) {
      const own = places(one)
      if (own.length === 0 || own.some((p) => onCentreLine(p, centre, axis))) continue
      const said = oneOf(
        context.part.chosen.filter((c) => c.kind === 'angle' && c.group === one.group && one.members.includes(c.to)),
        'angle',
      )
      drafts.push(polarDraft(context, one, centre, axis, own[0]!, said?.angle))
    }
  }
  return drafts
}

/** Where no view shows the circle, its diameter stands across the axis, between centre lines of the section. */
function acrossProfile(
  sight: Sight,
  centre: Vec3,
  axis: Vec3,
  r: number,
  members: readonly Vec3[],
): Showing | undefined {
  const way = sight.inPlane(axis)
  if (!way) return undefined
  const along: Vec2 = Math.abs(way[0]) > Math.abs(way[1]) ? [0, 1] : [1, 0]
  const c = sight.flat(centre)
  const end = (side: number): Vec2 => [c[0] + side * r * along[0], c[1] + side * r * along[1]]
  // Only where the section or view passes through one of the holes is the circle's radius seen true.
  const through = members.some((m) => {
    const p = sight.flat(m)
    return Math.abs(Math.hypot(p[0] - c[0], p[1] - c[1]) - r) < 1e-4
  })
  if (!through) return undefined
  return { score: 10 - 2 * sight.order, measured: { kind: 'linear', a: end(-1), b: end(1), along } }
}

function onCentreLine(p: Vec3, centre: Vec3, axis: Vec3): boolean {
  const k = axisIndex(axis)
  return ([0, 1, 2] as const).some((i) => i !== k && Math.abs(p[i] - centre[i]) < 1e-5)
}

/** The first hole's angle from the nearest centre line, typed or worked out where the brief says `astride`. */
function polarDraft(
  context: Context,
  one: Chosen<'bolt circle'>,
  centre: Vec3,
  axis: Vec3,
  member: Vec3,
  said: Angle | undefined,
): Draft {
  const out = unit(sub(member, centre))
  const level = ([0, 1, 2] as const).flatMap((i): Vec3[] => {
    if (axisIndex(axis) === i) return []
    const e: [number, number, number] = [0, 0, 0]
    e[i] = Math.sign(out[i]) || 1
    return [e]
  })
  const degrees = (v: Vec3) => (Math.acos(Math.min(1, Math.max(-1, dot(v, out)))) * 180) / Math.PI
  const from =
    level.find((v) => said && Math.abs(degrees(v) - said.value) < 1e-6) ??
    level.reduce((a, b) => (degrees(b) < degrees(a) ? b : a))
  const value = said && Math.abs(degrees(from) - said.value) < 1e-6 ? said.value : degrees(from)
  const text = said && value === said.value ? said.text : String(Math.round(value * 1000) / 1000)
  const span = said?.span ?? one.span
  const decimals = /[.,](\d+)/.exec(text)?.[1]?.length ?? 0
  const angle: Angle = { text, value, form: decimals > 0 ? 'decimal' : 'whole', decimals, span }
  return {
    id: `${one.group}/first angle`,
    callout: angleCallout(angle, context.writing),
    value,
    angle,
    leg: one.size.mm / 2,
    direction: 'angle',
    states: [{ kind: 'polar', centre, axis, member }],
    shows: showPolar(centre, from, out, one.size.mm / 2),
    span,
    ...(one.group ? { feature: one.group } : {}),
    ...(said ? {} : { derived: true }),
    // The angle locates the holes as the circle does: what holds the one to position makes both exact.
    ...(context.basic.has(one.size) ? { basic: true } : {}),
  }
}

/** The angle of a hole on its circle: from the centre line as far as that is drawn, to the mark at the hole. */
function showPolar(centre: Vec3, from: Vec3, out: Vec3, r: number): Draft['shows'] {
  return (sight) => {
    const way = sight.inPlane(from)
    const level = way ? sight.centreLine(sight.flat(centre), way) : 0
    const showing = showAngle(centre, from, out, [level > 0 ? level : r, r])(sight)
    if (showing?.measured.kind !== 'angle') return showing
    return { ...showing, measured: { ...showing.measured, legsFrom: r } }
  }
}

/** An angle between two plane faces of a feature's first member, and between those of the others like them. */
export function angleDraft(context: Context, chosen: Chosen<'angle'>): Draft | undefined {
  const [a, b] = [chosen.from, chosen.to].map((id) => mooringOf(context, id, [0, 0, 0]))
  const [f, g] = [a?.faces[0], b?.faces[0]]
  if (!a?.normal || !b?.normal || f === undefined || g === undefined) return undefined
  const line = cross(a.normal, b.normal)
  if (norm(line) < 1e-9) return undefined
  const along = unit(line)
  const vertex = meeting(a.at, a.normal, b.at, b.normal, along)
  const legs = [f, g].map((face) => {
    const out = sub(middleOf(context, face) ?? vertex, vertex)
    return sub(out, scale(along, dot(out, along)))
  })
  const [other, v] = [legs[0]!, legs[1]!]
  // an outline's slope is said from the way that it goes: where the faces make the other angle, one leg is drawn on
  const between = (Math.acos(Math.max(-1, Math.min(1, dot(unit(other), unit(v))))) * 180) / Math.PI
  const isSaid = Math.abs(between - chosen.angle.value) <= Math.abs(180 - between - chosen.angle.value)
  const u = isSaid ? other : scale(other, -1)
  const also = atOthers(context, chosen)
  return {
    id: `${chosen.group ?? 'stock'}/angle/${chosen.from} to ${chosen.to}`,
    callout: angleCallout(chosen.angle, context.writing, also.length + 1),
    value: chosen.angle.value,
    angle: chosen.angle,
    leg: Math.min(norm(u), norm(v)) * 2,
    direction: 'angle',
    states: [{ kind: 'angle', faces: [f, g], ...(also.length > 0 ? { also } : {}) }],
    // a leg drawn on has no line of the part under it
    shows: showAngle(vertex, unit(u), unit(v), [isSaid ? norm(u) * 2 : 0, norm(v) * 2]),
    span: chosen.span,
    ...(chosen.group && context.features.has(chosen.group) ? { feature: chosen.group } : {}),
  }
}

/** The two faces of each other member that are named as the first one's are: `notch 1.2 left side`. */
function atOthers(context: Context, { from, to, group }: Chosen<'angle'>): (readonly [number, number])[] {
  const [first, ...others] = context.features.get(group ?? '')?.members ?? []
  if (!first || ![from, to].every((id) => id.startsWith(`${first.id} `))) return []
  return others.flatMap(({ id }) => {
    const [a, b] = [from, to].map((own) => mooringOf(context, id + own.slice(first.id.length), [0, 0, 0])?.faces[0])
    return a === undefined || b === undefined ? [] : [[a, b] as const]
  })
}

/** A point common to both planes, nearest to the first one's point. */
function meeting(p: Vec3, n: Vec3, q: Vec3, m: Vec3, along: Vec3): Vec3 {
  // Within the first plane, square to the common line.
  const way = unit(cross(along, n))
  const gap = dot(sub(q, p), m)
  return add(p, scale(way, gap / dot(way, m)))
}

function middleOf(context: Context, face: number): Vec3 | undefined {
  const points = context.part.body.edges.flatMap(({ curve, faces }): Vec3[] => {
    if (!faces.includes(face)) return []
    return curve.kind === 'line' ? [curve.a, curve.b] : curve.kind === 'circle' ? [curve.axes.origin] : []
  })
  if (points.length === 0) return undefined
  const sum = points.reduce((a, b) => add(a, b))
  return scale(sum, 1 / points.length)
}
