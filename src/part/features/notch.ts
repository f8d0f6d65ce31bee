import type { NotchFeature } from '../../brief/brief.ts'
import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { cutLoop, samplesOf } from '../cut-loop.ts'
import { faceWords, findOrigin, findWorkFace, markUnknown, type Origin } from '../find-name.ts'
import type { Profile, ProfileCurve, WorkFace } from '../model.ts'
import { type Ground, limitsAlong } from '../place/ground.ts'
import { placeMembers, tooMany } from '../place.ts'
import { addFace } from '../prism-stock.ts'
import { clearance, replaceStretch } from '../profile-edit.ts'
import { axisOf, endSides, faceAxes, outwardOf, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'
import { inUnit } from './hole-shape.ts'
import { endsRight, roundNamed } from './notch-end.ts'

/** A notch as cut: which edge it opens to, how it lies in the face's two coordinates. */
interface Cut {
  readonly name: string
  /** Coordinate of the edge, and which way is in. */
  readonly edge: number
  readonly edgeFace: string
  readonly inward: 1 | -1
  /** 0: the edge is met going across; 1: going up. */
  readonly level: 0 | 1
  /** Middle along the edge. */
  readonly middle: number
  readonly half: number
  readonly depth: number
}

/** A square or vee cut right through a face, open to one of its edges. */
export function addNotch(shop: Workshop, feature: NotchFeature): void {
  const face = findWorkFace(shop, feature.face)
  if (!face || face.radius !== undefined) {
    if (face) shop.must('wrong-stock', feature.span, 'A notch is cut on flat stock.', 'a slot, a flat or a groove')
    else if (!shop.marks.some((m) => m.span === feature.face.span)) {
      markUnknown(shop, feature.face, 'flat face', faceWords(shop))
    }
    return
  }
  if (tooMany(shop, feature.placement, feature.count)) return
  const { across, up } = faceAxes(axisOf[face.side])
  const edge = findOrigin(shop, feature.edge, [across, up])
  if (!edge) return
  const id = shop.nameOf('notch', feature)
  const half = feature.width.mm / 2
  const into = feature.into && roundNamed(shop, feature.into, axisOf[face.side])
  if (feature.into && !into) return
  const reach = into ? Math.abs(into.point[edge.axis] - edge.at) : notchDepth(feature)
  if (!roomFor(shop, feature, edge, reach)) return
  const level = edge.axis === across ? 0 : 1
  const run = level === 0 ? up : across
  const ground: Ground = {
    side: face.side,
    at: face.at,
    middle: [0, 0, 0],
    round: false,
    fixed: { axis: edge.axis, at: edge.at },
    half,
  }
  const placed = placeMembers(shop, ground, feature.placement, id, {
    count: feature.count.value,
    mirror: feature.mirror,
  })
  if (!placed) return
  const limits = limitsAlong(shop, run)
  const off = placed.points.find((p) => limits && (p[run] + half <= limits[0].at || p[run] - half >= limits[1].at))
  const over = placed.points.find(
    (p) => limits && (p[run] - half < limits[0].at + 1e-7 || p[run] + half > limits[1].at - 1e-7),
  )
  if (off || over) {
    const long = limits ? limits[1].at - limits[0].at : 0
    const { unit } = feature.width
    const figures = `it is ${feature.width.text} wide, and the edge is ${inUnit(long, unit)} long`
    const other = endSides[run]![1]
    shop.must(
      off ? 'notch-off-part' : 'breaks-edge',
      feature.span,
      off ? `${id} lies off the ${face.name}.` : `${id} runs out over the end of the edge: ${figures}.`,
      2 * half > long - 1e-7
        ? `a notch through another face: notch ${other}, ${feature.edge.text}`
        : 'a place along the edge; for a corner, a step',
    )
    return
  }
  const many = placed.points.length > 1
  const cuts = placed.points.map((p, i): Cut => {
    const opposite = Math.abs(p[edge.axis] - edge.at) > 1e-9
    const own = opposite ? oppositeEdge(shop, edge) : edge
    return {
      name: many ? `${id}.${i + 1}` : id,
      edge: own.at,
      edgeFace: own.id,
      inward: inwardOf(shop, own),
      level,
      middle: p[run],
      half,
      depth: into ? Math.abs(into.point[edge.axis] - own.at) : reach,
    }
  })
  if (!endsRight(shop, feature, cuts, { axis: axisOf[face.side], run, deep: edge.axis }, into)) return
  for (const cut of cuts) workCut(shop, feature, face, cut, id)
  const [lowSide, highSide] = endSides[run]!
  const walls = {
    low: cuts.map((c) => `${c.name} ${lowSide} side`),
    high: cuts.map((c) => `${c.name} ${highSide} side`),
  }
  for (const [i, cut] of cuts.entries()) addData(shop, feature, face, cut, run, [walls.low[i]!, walls.high[i]!])
  placed.choose(
    cuts.map((c) => `${c.name} middle`),
    { [run]: walls },
  )
  const sides = cuts.map((_, i) => [walls.low[i]!, walls.high[i]!] as const)
  chooseNotchSizes(shop, feature, id, cuts, run, edge.axis, sides)
  const outward = outwardOf[face.side]
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'notch',
    outward,
    members: cuts.map((cut, i) => ({
      id: cut.name,
      axes: [],
      faces: faces(walls.low[i]!, walls.high[i]!, `${cut.name} floor`),
      point: placed.points[i]!,
    })),
    pattern: placed.pattern,
  }))
}

function notchDepth(feature: NotchFeature): number {
  if (feature.depth) return feature.depth.mm
  // a vee by its angle: half the width over the tangent of half the angle
  return feature.width.mm / 2 / Math.tan(((feature.angle?.value ?? 90) * Math.PI) / 360)
}

function roomFor(shop: Workshop, feature: NotchFeature, edge: Origin, depth: number): boolean {
  if (feature.shape === 'square' && !feature.depth && !feature.into) {
    shop.must('size-missing', feature.span, 'How deep is the notch?', 'a depth')
    return false
  }
  const limits = limitsAlong(shop, edge.axis)
  if (limits && depth >= limits[1].at - limits[0].at - 1e-9) {
    const at = feature.depth?.span ?? feature.width.span
    shop.must('too-deep', at, 'The notch cuts the part through.', 'a smaller depth')
    return false
  }
  return true
}

function inwardOf(shop: Workshop, edge: Origin): 1 | -1 {
  const face = shop.faces.find((f) => f.name === edge.id)
  return face && outwardOf[face.side][edge.axis] > 0 ? -1 : 1
}

function oppositeEdge(shop: Workshop, edge: Origin): Origin {
  const [low, high] = limitsAlong(shop, edge.axis)!
  return Math.abs(low.at - edge.at) < 1e-9 ? high : low
}

/** Coordinates in the face of a point so far along the edge and so far in from it. */
function at(cut: Cut, along: number, deep: number): Vec2 {
  const d = cut.edge + cut.inward * deep
  return cut.level === 0 ? [d, along] : [along, d]
}

function workCut(shop: Workshop, feature: NotchFeature, face: WorkFace, cut: Cut, id: string): void {
  const run = faceAxes(axisOf[face.side])[cut.level === 0 ? 'up' : 'across']
  const [lowSide, highSide] = endSides[run]!
  const wallOf = (along: number) => `${cut.name} ${along < cut.middle ? lowSide : highSide} side`
  const path = (from: Vec2, to: Vec2): ProfileCurve[] => {
    const k = cut.level === 0 ? 1 : 0
    const [s, e] = [from[k], to[k]]
    if (feature.shape === 'vee') {
      const tip = at(cut, cut.middle, cut.depth)
      return [
        { curve: { kind: 'line', a: from, b: tip }, face: wallOf(s) },
        { curve: { kind: 'line', a: tip, b: to }, face: wallOf(e) },
      ]
    }
    const [p, q] = [at(cut, s, cut.depth), at(cut, e, cut.depth)]
    return [
      { curve: { kind: 'line', a: from, b: p }, face: wallOf(s) },
      { curve: { kind: 'line', a: p, b: q }, face: `${cut.name} floor` },
      { curve: { kind: 'line', a: q, b: to }, face: wallOf(e) },
    ]
  }
  const [lo, hi] = [cut.middle - cut.half, cut.middle + cut.half]
  const profile = shop.profileOf(face)
  if (profile) {
    const curves = replaceStretch(profile.curves, cut.edgeFace, at(cut, lo, 0), at(cut, hi, 0), path)
    if (curves && clearOfProfile(profile, cut, curves)) {
      profile.curves = curves
      return
    }
  }
  // cut from the solid: begin outside; a vee's sides go on at their slope
  const clear = 1
  const grow = feature.shape === 'vee' ? (cut.half / cut.depth) * clear : 0
  const [from, to] = [at(cut, lo - grow, -clear), at(cut, hi + grow, -clear)]
  const loop = [...path(from, to), { curve: { kind: 'line' as const, a: to, b: from }, face: '' }]
  cutLoop(shop, {
    feature: id,
    span: feature.span,
    face,
    loop,
    depth: Infinity,
    floor: '',
    clear: false,
  })
}

/** Whether neither holes nor the rest of the outline are in the way of the notch. */
function clearOfProfile(profile: Profile, cut: Cut, curves: readonly ProfileCurve[]): boolean {
  const corners = [
    at(cut, cut.middle - cut.half, cut.depth),
    at(cut, cut.middle + cut.half, cut.depth),
    at(cut, cut.middle, cut.depth),
  ]
  const outline = profile.curves.map((c) => c.curve)
  if (!corners.every((p) => clearance(outline, p).inside)) return false
  const next = curves.map((c) => c.curve)
  return profile.holes.every((hole) => samplesOf(hole).every((p) => clearance(next, p).inside))
}

function addData(
  shop: Workshop,
  feature: NotchFeature,
  face: WorkFace,
  cut: Cut,
  run: 0 | 1 | 2,
  walls: readonly [string, string],
): void {
  const axis = axisOf[face.side]
  const edgeAxis = cut.level === 0 ? faceAxes(axis).across : faceAxes(axis).up
  const point: [number, number, number] = [0, 0, 0]
  point[axis] = face.at
  point[run] = cut.middle
  point[edgeAxis] = cut.edge
  shop.middle(`${cut.name} middle`, point, unitAxis[run], [walls[0], walls[1]])
  const [lowSide, highSide] = endSides[run]!
  const through: readonly [number, number] = [
    Math.min(face.at, face.at - outwardOf[face.side][axis] * face.depth),
    Math.max(face.at, face.at - outwardOf[face.side][axis] * face.depth),
  ]
  const deep: readonly [number, number] = [
    Math.min(cut.edge, cut.edge + cut.inward * cut.depth),
    Math.max(cut.edge, cut.edge + cut.inward * cut.depth),
  ]
  if (feature.shape === 'vee') {
    for (const [i, name] of walls.entries()) {
      const sign = i === 0 ? 1 : -1
      const n: [number, number, number] = [0, 0, 0]
      n[run] = sign * cut.depth
      n[edgeAxis] = -cut.inward * cut.half
      const l = Math.hypot(cut.depth, cut.half)
      const p: [number, number, number] = [...point]
      p[run] = cut.middle - sign * cut.half
      shop.plane(name, p, [n[0] / l, n[1] / l, n[2] / l])
    }
    return
  }
  const flat = (name: string, side: WorkFace['side'], level: number, spans: Record<0 | 1 | 2, readonly number[]>) => {
    const own = axisOf[side]
    const { across, up } = faceAxes(own)
    const [a, b] = [spans[across], spans[up]]
    const limits = limitsAlong(shop, own)
    const far = limits ? limits[outwardOf[side][own] > 0 ? 0 : 1].at : level
    addFace(shop, { name, side, at: level, min: [a[0]!, b[0]!], max: [a[1]!, b[1]!], depth: Math.abs(level - far) })
  }
  const spans = (): Record<0 | 1 | 2, readonly number[]> => {
    const s: Record<0 | 1 | 2, readonly number[]> = { 0: [], 1: [], 2: [] }
    s[axis] = through
    s[run] = [cut.middle - cut.half, cut.middle + cut.half]
    s[edgeAxis] = deep
    return s
  }
  // the low wall looks toward the high side of the part
  flat(walls[0], highSide, cut.middle - cut.half, spans())
  flat(walls[1], lowSide, cut.middle + cut.half, spans())
  if (feature.into) return
  const floorSide = endSides[edgeAxis]![cut.inward > 0 ? 0 : 1]
  flat(`${cut.name} floor`, floorSide, cut.edge + cut.inward * cut.depth, spans())
}

function chooseNotchSizes(
  shop: Workshop,
  feature: NotchFeature,
  id: string,
  cuts: readonly Cut[],
  run: 0 | 1 | 2,
  deep: 0 | 1 | 2,
  sides: readonly (readonly [string, string])[],
): void {
  const { width, depth, angle } = feature
  const walls = sides[0]!
  const direction: Vec3 = unitAxis[run]
  shop.choose({ kind: 'width', size: width, of: id, direction, span: width.span, group: id })
  if (feature.shape === 'vee') {
    for (const pair of sides) shop.imply('equal', 'sides of the vee at equal angles', pair)
    if (angle) shop.choose({ kind: 'angle', angle, from: walls[0], to: walls[1], span: angle.span, group: id })
    // how far the vee reaches in from its edge, along the worked face
    else if (depth)
      shop.choose({ kind: 'length', size: depth, of: id, direction: unitAxis[deep], span: depth.span, group: id })
    return
  }
  if (depth) {
    const first = cuts[0]!
    shop.choose({
      kind: 'distance',
      size: depth,
      from: first.edgeFace,
      to: `${first.name} floor`,
      direction: unitAxis[deep],
      span: depth.span,
      group: id,
    })
  }
  const floor = feature.into ? [] : [`${cuts[0]!.name} floor`]
  shop.imply('square', 'notch square to its edge', [...walls, ...floor])
}
