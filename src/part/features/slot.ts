import type { PocketFeature, SlotFeature } from '../../brief/brief.ts'
import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { cutLoop, roundedRectangle, samplesOf, stadium } from '../cut-loop.ts'
import { faceWords, findOrigin, findWorkFace, markUnknown, type Origin } from '../find-name.ts'
import { fitsFace, loopFits } from '../fit.ts'
import type { ProfileCurve, WorkFace } from '../model.ts'
import type { ByAxis, Ground } from '../place/ground.ts'
import { halvesOf, type Reach, wallData } from '../place/wall-data.ts'
import { placeMembers, tooMany } from '../place.ts'
import { replaceStretch } from '../profile-edit.ts'
import { surfaceUnder } from '../relief.ts'
import { axisOf, faceAxes, lieAxis, outwardOf, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'
import { inUnit } from './hole-shape.ts'

/** Depth in mm (Infinity: through), or a mark and undefined. */
function cutDepth(shop: Workshop, feature: SlotFeature | PocketFeature, face: WorkFace): number | undefined {
  if (feature.depth.kind === 'through') return Infinity
  const { size } = feature.depth
  if (!(size.mm > 0)) {
    shop.must('size-zero', size.span, `A ${feature.kind} needs a depth greater than zero.`, 'a depth, or THRU')
    return undefined
  }
  if (size.mm >= face.depth - 1e-9) {
    shop.must(
      'too-deep',
      size.span,
      `A depth of ${size.text} goes through: the material is ${inUnit(face.depth, size.unit)} thick here.`,
      'THRU, or a smaller depth',
    )
    return undefined
  }
  return size.mm
}

/** The face at the height that the depth of one loop runs from: the highest material under it. */
function surfaceOf(
  shop: Workshop,
  feature: SlotFeature | PocketFeature,
  face: WorkFace,
  loop: readonly ProfileCurve[],
  depth: number,
  id: string,
): WorkFace {
  if (feature.depth.kind === 'through') return face
  const column = surfaceUnder(shop, face, { points: samplesOf(loop), r: 0 }, id, feature.span)
  if (depth >= column.thick - 1e-9) {
    const { size } = feature.depth
    shop.must(
      'too-deep',
      size.span,
      `A depth of ${size.text} goes through: the material is ${inUnit(column.thick, size.unit)} thick here.`,
      'THRU, or a smaller depth',
    )
  }
  return { ...face, at: column.at, depth: column.thick }
}

/** The ground that slots and pockets are placed on, by their middles or their walls. */
const groundOf = (face: WorkFace, reaches: ByAxis<Reach>): Ground => ({
  side: face.side,
  at: face.at,
  middle: [0, 0, 0],
  round: face.radius !== undefined,
  halves: halvesOf(reaches),
})

function flatFace(shop: Workshop, feature: SlotFeature | PocketFeature): WorkFace | undefined {
  const face = findWorkFace(shop, feature.face, feature.from)
  if (!face && !shop.marks.some((m) => m.span === feature.face.span)) {
    markUnknown(shop, feature.face, 'flat face', faceWords(shop))
  }
  return face
}

export function addSlot(shop: Workshop, feature: SlotFeature): void {
  const face = flatFace(shop, feature)
  if (!face || tooMany(shop, feature.placement, feature.count)) return
  const id = shop.nameOf('slot', feature)
  const { across, up } = faceAxes(axisOf[face.side])
  const open = feature.openTo && findOrigin(shop, feature.openTo, [across, up])
  if (feature.openTo && !open) return
  const long = open ? open.axis : lieAxis[feature.way]
  if (long !== across && long !== up) {
    shop.must(
      'wrong-direction',
      feature.span,
      `A slot on the ${face.name} cannot run ${feature.way}.`,
      'a long way that lies in the face',
    )
    return
  }
  const depth = cutDepth(shop, feature, face)
  if (depth === undefined) return
  const r = feature.width.mm / 2
  const overall = feature.measured === 'overall'
  const between = open
    ? overall
      ? feature.length.mm - r
      : feature.length.mm
    : overall
      ? feature.length.mm - 2 * r
      : feature.length.mm
  if (between < 1e-9) {
    shop.must(
      'slot-too-short',
      feature.length.span,
      `A slot ${feature.length.text} long is no longer than its width ${feature.width.text}.`,
      'a length greater than the width',
    )
    return
  }
  const inward = open ? inwardFrom(shop, open) : 1
  const fixed = open && { axis: open.axis, at: open.at + inward * between }
  const reaches: ByAxis<Reach> = {
    [long === across ? up : across]: { half: r, word: 'side' },
    ...(open ? {} : { [long]: { half: between / 2 + r, word: 'end' } }),
  }
  const ground: Ground = { ...groundOf(face, reaches), ...(fixed ? { fixed } : {}) }
  const placed = placeMembers(shop, ground, feature.placement, id, {
    count: feature.count.value,
    mirror: feature.mirror,
  })
  if (!placed) return
  const level = long === across ? 0 : 1
  const shift = (p: Vec3, by: number): Vec3 => {
    const q: [number, number, number] = [...p]
    q[long] += by
    return q
  }
  const ends = placed.points.flatMap((p) => (open ? [p] : [shift(p, -between / 2), shift(p, between / 2)]))
  if (!fitsFace(shop, face, ends, r, feature.span, id, open ? 1 : 2)) return

  const outward = outwardOf[face.side]
  const many = placed.points.length > 1
  const names = placed.points.map((_, i) => (many ? `${id}.${i + 1}` : id))
  placed.points.forEach((p, i) => {
    const name = names[i]!
    const c: Vec2 = [p[across], p[up]]
    shop.axis(`${name} axis`, p, outward)
    if (open) {
      cutOpen(shop, feature, face, name, id, c, level, open, inward, r, depth)
      return
    }
    shop.axis(`${name} end 1 axis`, shift(p, -between / 2), outward)
    shop.axis(`${name} end 2 axis`, shift(p, between / 2), outward)
    const loop = stadium(c, level, between / 2, r, `${name} wall`, `${name} end`)
    const ground = surfaceOf(shop, feature, face, loop, depth, id)
    cutLoop(shop, { feature: id, span: feature.span, face: ground, loop, depth, floor: `${name} floor`, clear: true })
  })
  const axes = (n: string) => (open ? [`${n} axis`] : [`${n} axis`, `${n} end 1 axis`, `${n} end 2 axis`])
  placed.choose(
    names.map((n) => `${n} axis`),
    wallData(shop, feature.placement, names, placed.points, reaches),
  )
  chooseSlotSizes(shop, feature, id, long === across ? up : across, long)
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'slot',
    outward,
    members: placed.points.map((point, i) => ({
      id: names[i]!,
      axes: axes(names[i]!),
      faces: faces(`${names[i]} wall`, `${names[i]} end`, `${names[i]} floor`),
      point,
    })),
    pattern: placed.pattern,
  }))
}

function inwardFrom(shop: Workshop, open: Origin): 1 | -1 {
  const face = shop.faces.find((f) => f.name === open.id)
  return face && outwardOf[face.side][open.axis] > 0 ? -1 : 1
}

function cutOpen(
  shop: Workshop,
  feature: SlotFeature,
  face: WorkFace,
  name: string,
  id: string,
  c: Vec2,
  level: 0 | 1,
  open: Origin,
  inward: 1 | -1,
  r: number,
  depth: number,
): void {
  const wall = `${name} wall`
  const end = `${name} end`
  // in loop order along the edge the slot is entered on one side and left on the other
  const at = (along: number, side: number): Vec2 => (level === 0 ? [along, c[1] + side * r] : [c[0] + side * r, along])
  const path = (from: Vec2, to: Vec2): ProfileCurve[] => {
    const k = level === 0 ? 1 : 0
    const side = Math.sign(from[k] - c[k])
    const [p, q] = [at(c[level], side), at(c[level], -side)]
    const start = Math.atan2(p[1] - c[1], p[0] - c[0])
    const toward: Vec2 = level === 0 ? [inward, 0] : [0, inward]
    // turn through the point furthest in
    const left = -(p[1] - c[1]) * toward[0] + (p[0] - c[0]) * toward[1]
    const sweep = left > 0 ? Math.PI : -Math.PI
    return [
      { curve: { kind: 'line', a: from, b: p }, face: wall },
      { curve: { kind: 'arc', c, r, from: start, sweep }, face: end },
      { curve: { kind: 'line', a: q, b: to }, face: wall },
    ]
  }
  const profile = depth === Infinity ? shop.profileOf(face) : undefined
  if (profile) {
    const curves = replaceStretch(profile.curves, open.id, at(open.at, -1), at(open.at, 1), path)
    const clear = !profile.holes.some((hole) =>
      samplesOf(hole).some((s) => {
        const across = Math.abs(s[level === 0 ? 1 : 0] - c[level === 0 ? 1 : 0])
        const along = (s[level] - open.at) * inward
        return across <= r && along >= 0 && along <= Math.abs(c[level] - open.at) + r
      }),
    )
    if (curves && clear) {
      profile.curves = curves
      return
    }
  }
  const out = open.at - inward
  const [from, to] = [at(out, -1), at(out, 1)]
  const loop = [...path(from, to), { curve: { kind: 'line' as const, a: to, b: from }, face: '' }]
  const ground = surfaceOf(shop, feature, face, loop, depth, id)
  cutLoop(shop, { feature: id, span: feature.span, face: ground, loop, depth, floor: `${name} floor`, clear: false })
}

function chooseSlotSizes(shop: Workshop, feature: SlotFeature, id: string, wide: 0 | 1 | 2, long: 0 | 1 | 2): void {
  const { width, length, measured, depth } = feature
  shop.choose({ kind: 'width', size: width, of: id, direction: unitAxis[wide], span: width.span, group: id })
  shop.choose({
    kind: 'length',
    size: length,
    of: id,
    direction: unitAxis[long],
    measured,
    span: length.span,
    group: id,
  })
  if (depth.kind === 'blind') {
    shop.choose({ kind: 'depth', size: depth.size, of: id, span: depth.size.span, group: id })
  }
  shop.imply('tangent', 'round ends tangent to the sides', [id])
}

export function addPocket(shop: Workshop, feature: PocketFeature): void {
  const face = flatFace(shop, feature)
  if (!face || tooMany(shop, feature.placement, feature.count)) return
  const id = shop.nameOf('pocket', feature)
  const depth = cutDepth(shop, feature, face)
  if (depth === undefined) return
  const [w, h, r] = [feature.across.mm, feature.up.mm, feature.cornerRadius?.mm ?? 0]
  if (r > Math.min(w, h) / 2 + 1e-9) {
    shop.must(
      'radius-too-large',
      feature.cornerRadius!.span,
      `A corner radius of ${feature.cornerRadius!.text} does not fit the pocket.`,
      'at most half the shorter side',
    )
    return
  }
  if (r > Math.max(w, h) / 2 - 1e-9) {
    const deep = feature.depth.kind === 'blind' ? `↧ ${feature.depth.size.text}, flat bottom` : 'THRU'
    shop.must(
      'radius-too-large',
      feature.cornerRadius!.span,
      'With corners of half its sides a pocket is a round hole.',
      `hole ${feature.face.text}: ⌀${feature.across.text} ${deep}`,
    )
    return
  }
  const { across, up } = faceAxes(axisOf[face.side])
  const reaches: ByAxis<Reach> = {
    [across]: { half: w / 2, word: h - 2 * r < 1e-9 ? 'end' : 'side' },
    [up]: { half: h / 2, word: w - 2 * r < 1e-9 ? 'end' : 'side' },
  }
  const ground = groundOf(face, reaches)
  const placed = placeMembers(shop, ground, feature.placement, id, {
    count: feature.count.value,
    mirror: feature.mirror,
  })
  if (!placed) return
  const loops = placed.points.map((p) => roundedRectangle([p[across], p[up]], w, h, r, `${id} wall`, `${id} corner`))
  const profile = shop.profileOf(face) ?? (face.cap ? shop.profile : undefined)
  const onFace = (loop: ProfileCurve[]) =>
    profile
      ? loopFits(profile, samplesOf(loop))
      : samplesOf(loop).every(
          (q) => q[0] > face.min[0] && q[0] < face.max[0] && q[1] > face.min[1] && q[1] < face.max[1],
        )
  if (!loops.every(onFace)) {
    shop.must('breaks-edge', feature.span, `${id} breaks out of the edge of the ${face.name}.`, 'a notch or a step')
    return
  }
  const names = placed.points.map((_, i) => (placed.points.length > 1 ? `${id}.${i + 1}` : id))
  const outward = outwardOf[face.side]
  placed.points.forEach((p, i) => {
    const name = names[i]!
    shop.axis(`${name} axis`, p, outward)
    const loop = loops[i]!.map((c) => ({ ...c, face: c.face.replace(id, name) }))
    const ground = surfaceOf(shop, feature, face, loop, depth, id)
    cutLoop(shop, { feature: id, span: feature.span, face: ground, loop, depth, floor: `${name} floor`, clear: true })
  })
  placed.choose(
    names.map((n) => `${n} axis`),
    wallData(shop, feature.placement, names, placed.points, reaches),
  )
  const size = (kind: 'width' | 'length', s: typeof feature.across, axis: 0 | 1 | 2) =>
    shop.choose({ kind, size: s, of: id, direction: unitAxis[axis], span: s.span, group: id })
  size('width', feature.across, across)
  size('length', feature.up, up)
  if (feature.depth.kind === 'blind') {
    const { size: deep } = feature.depth
    shop.choose({ kind: 'depth', size: deep, of: id, span: deep.span, group: id })
  }
  if (feature.cornerRadius) {
    const radius = feature.cornerRadius
    shop.choose((faces) => ({
      kind: 'radius',
      size: radius,
      of: id,
      faces: faces(...names.map((n) => `${n} corner`)),
      count: 4 * names.length,
      span: radius.span,
      group: id,
    }))
  }
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'pocket',
    outward,
    members: placed.points.map((point, i) => ({
      id: names[i]!,
      axes: [],
      faces: faces(`${names[i]} wall`, `${names[i]} corner`, `${names[i]} floor`),
      point,
    })),
    pattern: placed.pattern,
  }))
}
