import type { HoleFeature, KeyseatFeature, Placement, SlotFeature } from '../../brief/brief.ts'
import type { Size } from '../../brief/size.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { cross } from '../../geometry/vec3.ts'
import type { PartFeature } from '../../part/part.ts'
import { axisLie, sideOfDirection } from '../../part/sides.ts'
import { axisAlong, SAME, sameLine } from '../recognise/borders.ts'
import type { FoundHole } from '../recognise/holes.ts'
import { circlesAmong, type FoundPattern, patternOf } from '../recognise/patterns.ts'
import type { Recognised } from '../recognise/recognise.ts'
import type { FoundSlot } from '../recognise/slots.ts'
import type { Wall } from '../recognise/walls.ts'
import { AXES, UNITS } from './data.ts'
import { fromBase, locate, NOWHERE, type PartDraft } from './part-draft.ts'

/** Equal members with their ids. */
export interface Group<T> {
  readonly id: string
  readonly members: readonly { readonly id: string; readonly axis: string; readonly of: T }[]
  readonly pattern: FoundPattern
}

export interface Groups {
  readonly bores: readonly Group<FoundHole>[]
  readonly holes: readonly Group<FoundHole>[]
  readonly slots: readonly Group<FoundSlot>[]
  readonly keyseats: readonly Group<FoundSlot>[]
  readonly bosses: readonly Group<Wall>[]
}

/** Equal holes and slots of one face together, named in the order found. */
export function groupsOf(found: Recognised): Groups {
  const { axis } = found
  const isBore = (h: FoundHole) => axis !== undefined && sameLine(h.line, axis)
  const isKeyseat = (s: FoundSlot) => axis !== undefined && Math.abs(dot(axis.direction, s.outward)) < 1e-9
  const lines = [...found.holes.map((h) => h.line), ...found.bosses.map((b) => b.line)]
  const pattern = (points: readonly Vec3[], outward: Vec3) => patternOf(points, outward, lines, axis)
  const holes = [...found.holes].sort((a, b) => inReadingOrder(a.mouth, b.mouth))
  const slots = [...found.slots].sort((a, b) => inReadingOrder(a.mouth, b.mouth))
  const bosses = found.bosses.filter((b) => b.kind === 'cylinder' && !(axis && sameLine(b.line, axis)))
  return {
    bores: grouped('bore', holes.filter(isBore), holeKey, () => ({ kind: 'single' })),
    holes: grouped(
      'hole',
      holes.filter((h) => !isBore(h)),
      holeKey,
      (set) =>
        pattern(
          set.map((h) => h.mouth),
          set[0]!.outward,
        ),
      (set) =>
        circlesAmong(
          set.map((h) => h.mouth),
          set[0]!.outward,
        ),
    ),
    slots: grouped(
      'slot',
      slots.filter((s) => !isKeyseat(s)),
      slotKey,
      (set) =>
        patternOf(
          set.map((s) => s.mouth),
          set[0]!.outward,
          [],
        ),
    ),
    keyseats: grouped('keyseat', slots.filter(isKeyseat), slotKey, () => ({ kind: 'single' })),
    bosses: grouped(
      'boss',
      bosses,
      (b) => `${number(b.radii[0])} ${number(b.from)} ${number(b.to)}`,
      (set) =>
        pattern(
          set.map((b) => b.line.point),
          set[0]!.line.direction,
        ),
    ),
  }
}

/** From the bottom up, from front to rear, from left to right. */
function inReadingOrder(a: Vec3, b: Vec3): number {
  for (const k of [2, 1, 0] as const) if (Math.abs(a[k] - b[k]) > SAME) return a[k] - b[k]
  return 0
}

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const number = (n: number | undefined): string => (n === undefined ? '-' : n.toFixed(4))

const holeKey = (h: FoundHole): string =>
  [
    ...h.outward,
    dot(h.mouth, h.outward),
    h.diameter,
    h.depth,
    h.point,
    h.counterbore?.diameter,
    h.counterbore?.depth,
    h.spotface?.diameter,
    h.spotface?.depth,
    h.countersink?.diameter,
    h.countersink?.angle,
    ...h.others.flatMap((o) => [o.diameter, o.depth]),
  ]
    .map(number)
    .join(' ')

const slotKey = (s: FoundSlot): string =>
  [...s.outward, dot(s.mouth, s.outward), ...s.way.map(Math.abs), s.width, s.length, s.depth, s.open ? 1 : 0]
    .map(number)
    .join(' ')

function grouped<T>(
  word: string,
  all: readonly T[],
  keyOf: (one: T) => string,
  patternOfSet: (set: readonly T[]) => FoundPattern,
  apart: (set: readonly T[]) => readonly (readonly number[])[] = (set) => [set.map((_, i) => i)],
): Group<T>[] {
  const alike = new Map<string, T[]>()
  for (const one of all) {
    const key = keyOf(one)
    const set = alike.get(key)
    if (set) set.push(one)
    else alike.set(key, [one])
  }
  const sets = [...alike.values()].flatMap((set): { set: readonly T[]; pattern: FoundPattern }[] => {
    const pattern = patternOfSet(set)
    const parts = pattern.kind === 'points' ? apart(set) : []
    if (parts.length < 2) return [{ set, pattern }]
    return parts.map((part) => {
      const own = part.map((i) => set[i]!)
      return { set: own, pattern: patternOfSet(own) }
    })
  })
  const only = word === 'bore' && sets.length === 1
  return sets.map(({ set, pattern }, i) => {
    const id = only ? word : `${word} ${i + 1}`
    const members = set.map((of, n) => {
      const own = set.length > 1 ? `${id}.${n + 1}` : id
      return { id: own, axis: `${own} axis`, of }
    })
    return { id, members, pattern }
  })
}

/** Data of all axes, before anything is placed from them. */
export function axisData(draft: PartDraft, groups: Groups): void {
  const { data } = draft
  const put = (id: string, point: Vec3, direction: Vec3, faces?: readonly number[]) => {
    data.push({ id, kind: 'axis', name: id, point, direction, ...(faces ? { faces } : {}) })
  }
  for (const { members } of [...groups.bores, ...groups.holes])
    for (const { axis, of } of members) put(axis, of.mouth, of.outward, of.walls)
  for (const { members } of [...groups.slots, ...groups.keyseats]) {
    for (const { id, axis, of } of members) {
      put(axis, of.open ? of.ends[0]! : of.mouth, of.outward)
      if (!of.open) for (const [n, end] of of.ends.entries()) put(`${id} end ${n + 1} axis`, end, of.outward)
    }
  }
  for (const { members } of groups.bosses)
    for (const { axis, of } of members) put(axis, of.line.point, of.line.direction, of.faces)
}

const PLACEMENT: Placement = { kind: 'runs', runs: [], span: NOWHERE }

const partPattern = (pattern: FoundPattern, outward: Vec3): NonNullable<PartFeature['pattern']> => {
  if (pattern.kind !== 'bolt circle') return { kind: pattern.kind }
  if (!pattern.equal) return { kind: 'points' }
  return { kind: 'bolt circle', centre: pattern.centre, radius: pattern.radius, normal: outward }
}

/** Holes and bores: feature, note and position. */
export function holeFeatures(draft: PartDraft, groups: Groups): void {
  for (const group of groups.bores) holeFeature(draft, group, 'bore')
  for (const group of groups.holes) holeFeature(draft, group, 'hole')
}

function holeFeature(draft: PartDraft, group: Group<FoundHole>, kind: 'hole' | 'bore'): void {
  const { listing, features, chosen } = draft
  const { id, members, pattern } = group
  const first = members[0]!.of
  const all = members.map((m) => m.of)
  const sized = (what: string, mm: number): Size => listing.size(`${id} ${what}`, mm)
  const diameter = sized('diameter', first.diameter)
  const depth = first.depth === undefined ? undefined : sized('depth', first.depth)
  const point = first.point === undefined ? undefined : pointAngle(draft, id, first.point)
  const bored = (step: FoundHole['counterbore'], what: string) =>
    step && { diameter: sized(`${what} diameter`, step.diameter), depth: sized(`${what} depth`, step.depth) }
  const counterbore = bored(first.counterbore, 'counterbore')
  const spotface = bored(first.spotface, 'spotface')
  const countersink = first.countersink && {
    diameter: sized('countersink diameter', first.countersink.diameter),
    angle: listing.angle(`${id} countersink angle`, first.countersink.angle),
  }
  const feature: HoleFeature = {
    kind: 'hole',
    span: NOWHERE,
    count: listing.count(members.length),
    face: { text: sideOfDirection(first.outward), span: NOWHERE },
    placement: PLACEMENT,
    diameter,
    depth: depth ? { kind: 'blind', size: depth } : { kind: 'through', span: NOWHERE },
    ...(point ? { point } : {}),
    ...(counterbore ? { counterbore } : {}),
    ...(spotface ? { spotface } : {}),
    ...(countersink ? { countersink } : {}),
  }
  features.push({
    id,
    feature,
    kind,
    outward: first.outward,
    members: members.map((m) => ({ id: m.id, axes: [m.axis], faces: m.of.faces, point: m.of.mouth })),
    pattern: partPattern(pattern, first.outward),
  })
  if (kind === 'hole') locate(draft, id, placed(members), first.outward, pattern)
  const count = members.length
  const say = (size: Size, faces: readonly number[], role: 'hole' | 'counterbore' | 'countersink') =>
    chosen.push({ kind: 'diameter', size, of: id, faces, count, span: size.span, group: id, role })
  say(
    diameter,
    all.flatMap((h) => h.walls),
    'hole',
  )
  if (depth) chosen.push({ kind: 'depth', size: depth, of: id, span: depth.span, group: id, role: 'hole' })
  if (point && point.value !== 180)
    chosen.push({
      kind: 'angle',
      angle: point,
      from: members[0]!.axis,
      to: members[0]!.axis,
      span: point.span,
      group: id,
      role: 'drill point',
    })
  for (const [said, of] of [
    [counterbore, 'counterbore'],
    [spotface, 'spotface'],
  ] as const) {
    if (!said) continue
    say(
      said.diameter,
      all.flatMap((h) => h[of]?.faces ?? []),
      'counterbore',
    )
    chosen.push({ kind: 'depth', size: said.depth, of: id, span: said.depth.span, group: id, role: 'counterbore' })
  }
  if (countersink) {
    say(
      countersink.diameter,
      all.flatMap((h) => h.countersink?.faces ?? []),
      'countersink',
    )
    chosen.push({
      kind: 'angle',
      angle: countersink.angle,
      from: members[0]!.axis,
      to: members[0]!.axis,
      span: countersink.angle.span,
      group: id,
      role: 'countersink',
    })
  }
  first.others.forEach((step, n) => {
    const size = sized(`step ${n + 1} diameter`, step.diameter)
    const faces = all.flatMap((h) => h.others[n]?.faces ?? [])
    chosen.push({ kind: 'diameter', size, of: `${id} step ${n + 1}`, faces, count, span: size.span, group: 'stock' })
  })
}

/** Customary drill points go without a number. */
const CUSTOMARY = 118

function pointAngle(draft: PartDraft, id: string, degrees: number) {
  return Math.abs(degrees - CUSTOMARY) < 1e-6 ? undefined : draft.listing.angle(`${id} point`, degrees)
}

const placed = (members: Group<FoundHole>['members']) => members.map((m) => ({ axis: m.axis, at: m.of.mouth }))

/** Slots: feature, note and position. Those that run along no axis of the part get their centre lines only. */
export function slotFeatures(draft: PartDraft, groups: Groups): void {
  for (const group of groups.slots) slotFeature(draft, group)
  for (const group of groups.keyseats) keyseatFeature(draft, group)
}

function slotFeature(draft: PartDraft, group: Group<FoundSlot>): void {
  const { listing, features, chosen } = draft
  const { id, members, pattern } = group
  const first = members[0]!.of
  const [k, out] = [axisAlong(first.way), axisAlong(first.outward)]
  const made = {
    id,
    kind: 'slot' as const,
    outward: first.outward,
    members: members.map((m) => ({
      id: m.id,
      axes: [m.axis, ...(m.of.open ? [] : [`${m.id} end 1 axis`, `${m.id} end 2 axis`])],
      faces: m.of.faces,
      point: m.of.open ? m.of.ends[0]! : m.of.mouth,
    })),
    pattern: partPattern(pattern, first.outward),
  }
  if (k === undefined || out === undefined) {
    features.push(made)
    return
  }
  const across = UNITS[AXES.find((i) => i !== k && i !== out)!]
  const width = listing.size(`${id} width`, first.width)
  const length = listing.size(`${id} length`, first.length)
  const depth = first.depth === undefined ? undefined : listing.size(`${id} depth`, first.depth)
  const feature: SlotFeature = {
    kind: 'slot',
    span: NOWHERE,
    count: listing.count(members.length),
    face: { text: sideOfDirection(first.outward), span: NOWHERE },
    placement: PLACEMENT,
    width,
    length,
    measured: 'overall',
    depth: depth ? { kind: 'blind', size: depth } : { kind: 'through', span: NOWHERE },
    way: axisLie[k],
    ...(first.open ? { openTo: { text: sideOfDirection(first.way), span: NOWHERE } } : {}),
  }
  features.push({ ...made, feature })
  const spots = members.map((m) => ({ axis: m.axis, at: m.of.open ? m.of.ends[0]! : m.of.mouth }))
  // an open slot's length runs from the edge already
  locate(draft, id, spots, first.outward, pattern, first.open ? AXES.filter((i) => i !== k) : AXES)
  chosen.push({ kind: 'width', size: width, of: id, direction: across, span: width.span, group: id })
  chosen.push({
    kind: 'length',
    size: length,
    of: id,
    direction: UNITS[k],
    measured: 'overall',
    span: length.span,
    group: id,
  })
  if (depth) chosen.push({ kind: 'depth', size: depth, of: id, span: depth.span, group: id })
}

function keyseatFeature(draft: PartDraft, group: Group<FoundSlot>): void {
  const { listing, features, chosen } = draft
  const { id, members } = group
  const { of, axis } = members[0]!
  const k = axisAlong(of.way)
  if (k === undefined || of.depth === undefined || axisAlong(of.outward) === undefined) {
    slotFeature(draft, group)
    return
  }
  const width = listing.size(`${id} width`, of.width)
  const depth = listing.size(`${id} depth`, of.depth)
  const length = listing.size(`${id} length`, of.length)
  const feature: KeyseatFeature = {
    kind: 'keyseat',
    span: NOWHERE,
    count: listing.count(members.length),
    face: { text: 'body', span: NOWHERE },
    side: sideOfDirection(of.outward),
    width,
    depth,
    length,
    anchor: { which: 'all', distance: length, from: { text: 'left', span: NOWHERE } },
  }
  features.push({
    id,
    feature,
    kind: 'keyseat',
    outward: of.outward,
    members: members.map((m) => ({
      id: m.id,
      axes: [m.axis, ...(m.of.open ? [] : [`${m.id} end 1 axis`, `${m.id} end 2 axis`])],
      faces: m.of.faces,
      point: m.of.mouth,
    })),
    pattern: { kind: 'single' },
  })
  const across = cross(of.way, of.outward).map(Math.abs) as unknown as Vec3
  chosen.push({ kind: 'width', size: width, of: id, direction: across, span: width.span, group: id })
  chosen.push({ kind: 'depth', size: depth, of: id, span: depth.span, group: id })
  chosen.push({
    kind: 'length',
    size: length,
    of: id,
    direction: UNITS[k],
    measured: 'overall',
    span: length.span,
    group: id,
  })
  fromBase(draft, id, { axis, at: of.open ? of.ends[0]! : of.mouth }, k)
}

/** Round bosses that stand off the axis of the part. */
export function bossFeatures(draft: PartDraft, groups: Groups): void {
  const { listing, features, chosen } = draft
  for (const { id, members, pattern } of groups.bosses) {
    const first = members[0]!.of
    const { direction } = first.line
    const size = listing.size(`${id} diameter`, 2 * first.radii[0])
    features.push({
      id,
      kind: 'boss',
      outward: direction,
      members: members.map((m) => ({ id: m.id, axes: [m.axis], faces: m.of.faces, point: m.of.line.point })),
      pattern: partPattern(pattern, direction),
    })
    const faces = members.flatMap((m) => m.of.faces)
    chosen.push({ kind: 'diameter', size, of: id, faces, count: members.length, span: size.span, group: id })
    const spots = members.map((m) => ({ axis: m.axis, at: m.of.line.point }))
    locate(draft, id, spots, direction, pattern)
  }
}
