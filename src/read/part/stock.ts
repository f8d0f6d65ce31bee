import type { Size } from '../../brief/size.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { axisAlong, outwardOfPlane, SAME, sameLine } from '../recognise/borders.ts'
import type { Wall } from '../recognise/walls.ts'
import { AXES, type Axis, UNITS } from './data.ts'
import { fromBase, type PartDraft } from './part-draft.ts'

/** Overall sizes: between the outer planes, in brackets where the part ends in something round. Gives the flat part's thickness. */
export function overall(draft: PartDraft): readonly (Size | undefined)[] {
  const { body, found, levels, listing, data, chosen } = draft
  const turned = found.axis && axisAlong(found.axis.direction)
  return AXES.map((k) => {
    if (turned !== undefined && k !== turned) return undefined
    const ends = (['min', 'max'] as const).map((end, i) => {
      const at = body.box[end][k]
      const level = levels[k].find((l) => Math.abs(l.at - at) < SAME)
      if (level) return { id: level.id, plane: true }
      const id = `${i === 0 ? 'low' : 'high'} end ${'xyz'[k]}`
      const normal = UNITS[k].map((c) => (i === 0 ? -c : c)) as unknown as Vec3
      data.push({ id, kind: 'plane', name: id, point: body.box[end], normal })
      return { id, plane: false }
    })
    const [a, b] = [ends[0]!, ends[1]!]
    const measured = listing.size(`${a.id} to ${b.id}`, body.box.max[k] - body.box.min[k])
    const whole = a.plane && b.plane
    const size: Size = whole ? measured : { ...measured, tolerance: { kind: 'reference', span: measured.span } }
    const kind = found.flat === k ? 'thickness' : 'distance'
    chosen.push({ kind, size, from: a.id, to: b.id, direction: UNITS[k], span: size.span, group: 'stock' })
    return size
  })
}

/** All other plane faces square to an axis of the part, each from the base. Floors of holes and slots have their depths. */
export function steps(draft: PartDraft): void {
  const { found, levels, bases, body } = draft
  const called = new Set([
    ...found.holes.filter((h) => h.others.length === 0).flatMap((h) => h.faces),
    ...found.slots.flatMap((s) => s.faces),
  ])
  for (const k of AXES) {
    for (const level of levels[k]) {
      const isEnd = [body.box.min[k], body.box.max[k]].some((at) => Math.abs(level.at - at) < SAME)
      const overall = bases[k]?.id !== 'axis' && isEnd
      if (overall || level.id === bases[k]?.id || level.faces.every((f) => called.has(f))) continue
      const at: [number, number, number] = [0, 0, 0]
      at[k] = level.at
      fromBase(draft, 'stock', { axis: level.id, at }, k)
    }
  }
}

/** Diameters about the axis of a turned part, equal ones once. */
export function turnedDiameters(draft: PartDraft): void {
  const { found, features, chosen, listing } = draft
  const { axis } = found
  if (!axis) return
  const on = (wall: Wall) => sameLine(wall.line, axis)
  const sets: Wall[][] = []
  for (const wall of [...found.bosses, ...found.hollows].filter((w) => w.kind === 'cylinder' && on(w))) {
    const home = sets.find((s) => s[0]!.inside === wall.inside && Math.abs(s[0]!.radii[0] - wall.radii[0]) < SAME)
    if (home) home.push(wall)
    else sets.push([wall])
  }
  sets.forEach((set, i) => {
    const id = `diameter ${i + 1}`
    const faces = set.flatMap((w) => w.faces)
    const size = listing.size(id, 2 * set[0]!.radii[0])
    features.push({
      id,
      kind: 'step-diameter',
      outward: axis.direction,
      members: set.map((w, n) => ({
        id: set.length > 1 ? `${id}.${n + 1}` : id,
        axes: ['axis'],
        faces: w.faces,
        point: pointAt(w),
      })),
    })
    chosen.push({
      kind: 'diameter',
      size,
      of: id,
      faces,
      count: set.length,
      span: size.span,
      group: 'stock',
    })
  })
  tapers(
    draft,
    found.bosses.filter((w) => w.kind === 'cone' && on(w)),
  )
}

const pointAt = (wall: Wall): Vec3 => {
  const { point, direction } = wall.line
  const at = (wall.from + wall.to) / 2
  return [point[0] + at * direction[0], point[1] + at * direction[1], point[2] + at * direction[2]]
}

/** Diameters of a taper where it meets a plane. */
function tapers(draft: PartDraft, cones: readonly Wall[]): void {
  const { body, found, chosen, listing, features } = draft
  cones.forEach((wall, i) => {
    const id = `taper ${i + 1}`
    const near = wall.faces.flatMap((f) => found.beside.get(f) ?? []).map((n) => body.faces[n.face]!)
    features.push({
      id,
      kind: 'step-diameter',
      outward: wall.line.direction,
      members: [{ id, axes: ['axis'], faces: wall.faces, point: pointAt(wall) }],
    })
    ;[wall.from, wall.to].forEach((at, end) => {
      const plane = near.some((f) => {
        const normal = outwardOfPlane(f)
        if (!normal || f.surface.kind !== 'plane') return false
        const { origin } = f.surface.axes
        const d = wall.line.direction
        return Math.abs(origin[0] * d[0] + origin[1] * d[1] + origin[2] * d[2] - at) < SAME
      })
      if (!plane || wall.radii[end]! < SAME) return
      const size = listing.size(`${id} ${end === 0 ? 'low' : 'high'} end`, 2 * wall.radii[end]!)
      chosen.push({ kind: 'diameter', size, of: id, faces: wall.faces, count: 1, span: size.span, group: 'stock' })
    })
  })
}

/**
 * Faces that no feature covers, in connected sets, so that the choice of views sees what they ask for. The outer planes
 * are seen in any view.
 */
export function plainSteps(draft: PartDraft): void {
  const { body, found, levels, features } = draft
  const covered = new Set(features.flatMap((f) => f.members.flatMap((m) => m.faces)))
  for (const k of AXES) for (const l of levels[k]) if (isOuter(draft, k, l.at)) for (const f of l.faces) covered.add(f)
  let count = 0
  for (const face of body.faces) {
    if (covered.has(face.id)) continue
    const set: number[] = []
    const queue = [face.id]
    covered.add(face.id)
    while (queue.length > 0) {
      const id = queue.pop()!
      set.push(id)
      for (const n of found.beside.get(id) ?? []) {
        if (covered.has(n.face)) continue
        covered.add(n.face)
        queue.push(n.face)
      }
    }
    count++
    const id = `step ${count}`
    features.push({
      id,
      kind: 'step',
      outward: outwardOfPlane(face) ?? [0, 0, 1],
      members: [{ id, axes: [], faces: set, point: body.box.min }],
    })
  }
}

const isOuter = ({ body }: PartDraft, k: Axis, at: number): boolean =>
  Math.abs(at - body.box.min[k]) < SAME || Math.abs(at - body.box.max[k]) < SAME
