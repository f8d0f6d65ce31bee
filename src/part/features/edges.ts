import type { EdgeFeature, Name } from '../../brief/brief.ts'
import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { add, cross, dot, scale, unit } from '../../geometry/vec3.ts'
import { chamferEdges, type EdgeChamfer, type EdgePlace, roundEdges } from '../../kernel/edge-work.ts'
import { halfSection } from '../contour.ts'
import { edgeCutter } from '../edge-cutter.ts'
import { edgeWords, findEdges } from '../find-edges.ts'
import { markUnknown, plainName } from '../find-name.ts'
import type { StockEdge } from '../model.ts'
import { type CornerResult, chamferCorner, counterClockwise, isInsideCorner, roundCorner } from '../profile-edit.ts'
import { outwardOf, SIDES, squareUp, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'
import { isAtBoss } from './boss-edges.ts'
import { addMouthWork, findMouths, mouthWords } from './hole-edges.ts'
import { inUnit } from './hole-shape.ts'

/** Set-backs of a chamfer, mm: along the first named face (or the axis), and along the other. */
type Backs = readonly [number, number]

/** Chamfers, rounds and fillets: in the flat profile or half section where they can be, else by the kernel. */
export function addEdgeWork(shop: Workshop, feature: EdgeFeature): void {
  const isMouths = feature.edges.some((name) => findMouths(shop, name))
  const edges = isMouths ? [] : gather(shop, feature)
  if (!edges) return
  const back = backsOf(shop, feature)
  if (!back) return
  if (isMouths && addMouthWork(shop, feature, back)) return
  const id = shop.nameOf(feature.kind, feature)
  // what a notch left of one edge is still one
  const lines = [...new Set(edges.map(lineOf))]
  if (feature.count.value !== 1 && feature.count.value !== lines.length) {
    shop.mark(
      'look again',
      'count-differs',
      feature.count.span,
      `${feature.count.value}X is written, but “${feature.edges.map((e) => e.text).join(' and ')}” are ${lines.length} ${lines.length === 1 ? 'edge' : 'edges'}.`,
      `${lines.length}X, or the names of ${feature.count.value} edges`,
    )
  }
  const names = edges.map((e) => (lines.length > 1 ? `${id}.${lines.indexOf(lineOf(e)) + 1}` : id))
  const left: { edge: StockEdge; name: string }[] = []
  let done = 0
  edges.forEach((edge, i) => {
    const name = names[i]!
    const state = edge.contourCorner
      ? inContour(shop, feature, edge.contourCorner, back, name)
      : inProfile(shop, feature, edge, back, name)
    if (state === 'done') done++
    else if (state === 'solid') left.push({ edge, name })
  })
  if (left.length > 0) done += onSolid(shop, feature, id, left, back)
  if (done === 0) return
  record(shop, feature, id, edges, names)
}

/** Told apart by its faces where it is the line in which two flat ones meet. */
const lineOf = (e: StockEdge): string =>
  e.line ? `along ${e.axis} of ${e.faces.join(' and ')}` : `at ${e.contourCorner ?? e.profileCorner}`

function gather(shop: Workshop, feature: EdgeFeature): StockEdge[] | undefined {
  const names = feature.edges
  const all: StockEdge[] = []
  let scope = ''
  for (const name of names) {
    // a leg named alone goes with the names after it: `upright, top corners`
    if (shop.aliases.has('upright') && /^(upright|base)$/.test(plainName(name.text)) && names.length > 1) {
      scope = `${name.text} `
      continue
    }
    if (isAtBoss(shop, feature, name)) return undefined
    const found = findEdges(shop, { ...name, text: scope + name.text }).filter(
      (e) => plainName(name.text) !== 'corners' || isInside(shop, e) === (feature.kind === 'fillet'),
    )
    if (found.length === 0 && plainName(name.text) === 'corners' && feature.kind !== 'chamfer') {
      markOtherCorners(shop, feature, name)
      return undefined
    }
    if (found.length === 0) {
      markUnknown(shop, name, 'edge or corner', [...edgeWords(shop), ...mouthWords(shop)])
      return undefined
    }
    for (const e of found) if (!all.some((o) => sameEdge(o, e))) all.push(e)
  }
  return all
}

/** `fillet corners` where all corners are outside ones, and `round corners` where all are inside. */
function markOtherCorners(shop: Workshop, feature: EdgeFeature, name: Name): void {
  const isFillet = feature.kind === 'fillet'
  const write = isFillet ? 'round' : 'fillet'
  const { from } = feature.span
  const keyword = /^\w+/.exec(shop.brief.text.slice(from))?.[0] ?? feature.kind
  shop.marks.push({
    rule: 'unknown-name',
    weight: 'must change',
    text: `This part has no ${isFillet ? 'inside' : 'outside'} corners: a ${feature.kind} stands at ${isFillet ? 'inside' : 'outside'} ones only.`,
    span: name.span,
    expected: `${write} in place of ${feature.kind}, or the names of edges`,
    mends: [{ label: `make it a ${write}`, span: { from, to: from + keyword.length }, text: write }],
  })
}

const isInside = (shop: Workshop, e: StockEdge): boolean =>
  e.profileCorner !== undefined &&
  shop.profile !== undefined &&
  isInsideCorner(shop.profile.curves, e.profileCorner) === true

const sameEdge = (a: StockEdge, b: StockEdge) =>
  a.faces[0] === b.faces[0] &&
  a.faces[1] === b.faces[1] &&
  String(a.contourCorner ?? a.line) === String(b.contourCorner ?? b.line)

function backsOf(shop: Workshop, feature: EdgeFeature): Backs | undefined {
  const a = feature.size.mm
  if (feature.kind !== 'chamfer') return [a, a]
  if (feature.leg) return [a, feature.leg.mm]
  const degrees = feature.angle?.value ?? 45
  if (!(degrees > 0 && degrees < 90)) {
    shop.must('angle-out-of-range', feature.angle!.span, 'A chamfer angle is between 0° and 90°.', '45°')
    return undefined
  }
  return degrees === 45 ? [a, a] : [a, a * Math.tan((degrees * Math.PI) / 180)]
}

type State = 'done' | 'solid' | 'refused'

function refuse(shop: Workshop, feature: EdgeFeature, room: number): State {
  const text =
    feature.kind === 'chamfer'
      ? `The chamfer ${feature.size.text} has no room: ${inUnit(room, feature.size.unit)} is left there.`
      : `The radius ${feature.size.text} is too large: ${inUnit(room, feature.size.unit)} is the most that fits there.`
  // one number, one mark, however many edges it does not fit
  const said = shop.marks.some((m) => m.rule === 'radius-too-large' && m.span === feature.size.span)
  if (!said) shop.must('radius-too-large', feature.size.span, text, `at most ${inUnit(room, feature.size.unit)}`)
  return 'refused'
}

function inProfile(shop: Workshop, feature: EdgeFeature, edge: StockEdge, back: Backs, name: string): State {
  const profile = edge.profile ?? (shop.legsWorked() ? undefined : shop.profile)
  if (!profile || !edge.profileCorner || shop.steps.some((s) => s.kind !== 'cut')) return 'solid'
  if (endsOf(edge).some((p) => shop.roundedEnds.has(p))) return 'solid'
  const inside = isInsideCorner(profile.curves, edge.profileCorner)
  if (inside === undefined) return 'solid'
  sayKind(shop, feature, inside)
  const first = firstFace(feature, edge)
  const result: CornerResult =
    feature.kind === 'chamfer'
      ? chamferCorner(profile.curves, edge.profileCorner, (face) => (face === first ? back[0] : back[1]), name)
      : roundCorner(profile.curves, edge.profileCorner, feature.size.mm, name)
  if (!result) return 'solid'
  if (!('curves' in result)) return refuse(shop, feature, result.room)
  profile.curves = result.curves
  return 'done'
}

/** A round at an inside corner and a fillet at an outside one are made, and said once a statement. */
function sayKind(shop: Workshop, feature: EdgeFeature, isInside: boolean | undefined): void {
  if (isInside === undefined || feature.kind !== (isInside ? 'round' : 'fillet')) return
  const [rule, text, expected] = isInside
    ? ['fillet-not-round', 'An inside corner is filled, not rounded: a fillet.', 'fillet']
    : ['round-not-fillet', 'An outside edge is rounded, not filled: a round.', 'round, or the name of an inside corner']
  if (!shop.marks.some((m) => m.rule === rule && m.span === feature.span))
    shop.mark(isInside ? 'remark' : 'look again', rule, feature.span, text, expected)
}

/** The face along which the chamfer's first number is measured: the one the brief names first. */
function firstFace(feature: EdgeFeature, edge: StockEdge): string {
  const words = plainName(feature.edges.map((e) => e.text).join(' ')).split(' ')
  const place = (face: string) => {
    const i = words.indexOf(face)
    return i < 0 ? Number.POSITIVE_INFINITY : i
  }
  return place(edge.faces[1]) < place(edge.faces[0]) ? edge.faces[1] : edge.faces[0]
}

function inContour(shop: Workshop, feature: EdgeFeature, at: Vec2, back: Backs, name: string): State {
  const contour = shop.contour!
  if (contour.corners.some((c) => Math.hypot(c.at[0] - at[0], c.at[1] - at[1]) < 1e-9)) {
    shop.must('worked-twice', feature.span, 'This edge is chamfered or rounded already.', 'one statement for one edge')
    return 'refused'
  }
  sayKind(shop, feature, isInsideCorner(counterClockwise(halfSection(contour)), at))
  const byAngle = feature.kind === 'chamfer' && !feature.leg
  contour.corners.push({
    kind: feature.kind,
    at,
    back,
    ...(byAngle ? { byAngle } : {}),
    face: name,
    span: feature.span,
  })
  return 'done'
}

/** Work on edges of the solid that no flat profile can carry. Returns how many edges were taken on. */
function onSolid(
  shop: Workshop,
  feature: EdgeFeature,
  id: string,
  work: readonly { readonly edge: StockEdge; readonly name: string }[],
  back: Backs,
): number {
  const r = feature.size.mm
  const chamfers: EdgeChamfer[] = []
  const places: EdgePlace[] = []
  let cut = 0
  for (const { edge, name } of work) {
    const [n0, n1] = edge.faces.map((f) => normalOf(shop, f))
    if (!edge.line || !n0 || !n1) {
      const text = `The edge between ${edge.faces.join(' and ')} cannot be worked.`
      shop.must('cannot-build', feature.span, text, 'a straight edge')
      continue
    }
    const first = firstFace(feature, edge)
    const normals: readonly [Vec3, Vec3] = first === edge.faces[1] ? [n1, n0] : [n0, n1]
    nameEdgeFace(shop, feature, name, edge.line, normals, back, r)
    if (feature.kind !== 'fillet' && canBeCut(shop, feature, edge, normals, work)) {
      const cutter = {
        kind: feature.kind,
        line: edge.line,
        free: edge.free ?? [false, false],
        lean: edge.lean ?? [0, 0],
        normals,
        back,
      } as const
      shop.steps.push({ kind: 'cut', feature: id, span: feature.span, make: (oc) => edgeCutter(oc, cutter) })
      cut++
      continue
    }
    const place: EdgePlace = { kind: 'line', a: edge.line[0], b: edge.line[1] }
    places.push(place)
    chamfers.push({ place, first: { back: back[0], point: edge.line[0], normal: normals[0] }, second: back[1] })
  }
  if (feature.kind !== 'chamfer') for (const { edge } of work) for (const p of endsOf(edge)) shop.roundedEnds.add(p)
  if (places.length > 0) {
    shop.steps.push({
      kind: 'edges',
      feature: id,
      span: feature.span,
      work: (oc, solid) =>
        feature.kind === 'chamfer' ? chamferEdges(oc, solid, chamfers) : roundEdges(oc, solid, places, r),
    })
  }
  return places.length + cut
}

/**
 * Whether a straight cutter along the edge gives the exact shape: two square faces, an outside edge whose ends are
 * not carried on smoothly, and for rounds no other rounded edge that meets it.
 */
function canBeCut(
  shop: Workshop,
  feature: EdgeFeature,
  edge: StockEdge,
  normals: readonly [Vec3, Vec3],
  work: readonly { readonly edge: StockEdge }[],
): boolean {
  if (endsOf(edge).some((p) => shop.roundedEnds.has(p))) return false
  if (edge.goesOn || Math.abs(dot(normals[0], normals[1])) > 1e-9) return false
  const profile = edge.profile ?? shop.profile
  if (edge.profileCorner && profile && isInsideCorner(profile.curves, edge.profileCorner) !== false) return false
  if (feature.kind === 'chamfer') return true
  return !work.some(({ edge: o }) => o !== edge && endsOf(o).some((p) => endsOf(edge).includes(p)))
}

/** The ends of an edge, told apart to a nanometre. */
const endsOf = (e: StockEdge): string[] =>
  (e.line ?? []).map((p) => p.map((v) => (Math.round(v * 1e6) / 1e6 || 0).toString()).join())

function normalOf(shop: Workshop, face: string): Vec3 | undefined {
  const datum = shop.data.get(face)
  if (datum?.kind === 'plane') return datum.normal
  const side = SIDES.find((s) => s === face)
  return side && outwardOf[side]
}

/** The plane of a chamfer or the cylinder of a round between two flat faces. */
function nameEdgeFace(
  shop: Workshop,
  feature: EdgeFeature,
  name: string,
  line: readonly [Vec3, Vec3],
  normals: readonly [Vec3, Vec3],
  back: Backs,
  r: number,
): void {
  const [n0, n1] = normals
  const along = unit(add(line[1], scale(line[0], -1)))
  // direction within each face away from the edge, into the material
  const into = (own: Vec3, other: Vec3): Vec3 => unit(add(scale(other, -1), scale(own, dot(own, other))))
  // at an inside corner the faces lie the other way from the edge
  const way = feature.kind === 'fillet' ? -1 : 1
  const [t0, t1] = [scale(into(n0, n1), way), scale(into(n1, n0), way)]
  if (feature.kind === 'chamfer') {
    const p = add(line[0], scale(t0, back[0]))
    const q = add(line[0], scale(t1, back[1]))
    const across = unit(add(q, scale(p, -1)))
    const z = cross(along, across)
    shop.surfaces.push({ name, surface: { kind: 'plane', axes: { origin: p, x: along, y: across, z } } })
    return
  }
  // tangent to both faces: the centre lies r inside each
  const half = Math.acos(Math.max(-1, Math.min(1, dot(t0, t1)))) / 2
  const bisector = unit(add(t0, t1))
  const origin = add(line[0], scale(bisector, r / Math.sin(half)))
  const axes = { origin, x: n0, y: cross(along, n0), z: along }
  shop.surfaces.push({ name, surface: { kind: 'cylinder', axes, r } })
}

function record(
  shop: Workshop,
  feature: EdgeFeature,
  id: string,
  edges: readonly StockEdge[],
  names: readonly string[],
): void {
  const { size, kind } = feature
  const distinct = [...new Set(names)]
  shop.edgeWork.push({ id, kind, size: size.mm })
  if (kind === 'chamfer') {
    shop.choose((faces) => ({
      kind: 'chamfer',
      size,
      ...(feature.angle ? { angle: feature.angle } : {}),
      ...(feature.leg ? { leg: feature.leg } : {}),
      edges: [],
      faces: faces(...distinct),
      count: distinct.length,
      span: size.span,
      group: id,
    }))
  } else {
    shop.choose((faces) => ({
      kind: 'radius',
      size,
      of: id,
      faces: faces(...distinct),
      count: distinct.filter((name) => faces(name).length > 0).length || distinct.length,
      span: size.span,
      group: id,
    }))
    shop.imply('tangent', `${id} tangent to the faces beside it`, names)
  }
  const outward = outwardFor(shop, edges[0]!)
  shop.features.push((faces) => ({
    id,
    feature,
    kind,
    outward,
    members: distinct.map((name) => ({
      id: name,
      axes: [],
      faces: faces(name),
      point: middleOf(shop, edges[names.indexOf(name)]!),
    })),
  }))
}

function outwardFor(shop: Workshop, edge: StockEdge): Vec3 {
  if (shop.contour) return unitAxis[shop.contour.axis]
  return edge.profileCorner && shop.profile ? unitAxis[shop.profile.axis] : (normalOf(shop, edge.faces[0]) ?? [0, 0, 1])
}

function middleOf(shop: Workshop, edge: StockEdge): Vec3 {
  if (edge.contourCorner && shop.contour) {
    const [h, r] = edge.contourCorner
    return add(scale(unitAxis[shop.contour.axis], h), scale(squareUp(shop.contour.axis), r))
  }
  const [a, b] = edge.line ?? [
    [0, 0, 0],
    [0, 0, 0],
  ]
  return scale(add(a, b), 0.5)
}
