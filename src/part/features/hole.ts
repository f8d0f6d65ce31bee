import type { HoleFeature, Side } from '../../brief/brief.ts'
import type { Size } from '../../brief/size.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { along, scale } from '../../geometry/vec3.ts'
import { cylinder, turned } from '../../kernel/primitives.ts'
import { coaxialCut } from '../coaxial.ts'
import { radiusAt } from '../contour.ts'
import { faceWords, findRound, findWorkFace, markUnknown, plainName } from '../find-name.ts'
import { fitsFace, overlapping } from '../fit.ts'
import type { RoundFace, WorkFace } from '../model.ts'
import { type Ground, limitsAlong } from '../place/ground.ts'
import { isAround, placeMembers, tooMany } from '../place.ts'
import { addProfileCircle } from '../profile-holes.ts'
import { addedOnWay, circleOn, surfaceUnder } from '../relief.ts'
import { axisOf, oppositeOf, outwardOf } from '../sides.ts'
import type { MakeShape, Workshop } from '../workshop.ts'
import { type HoleShape, inUnit, type Member, nameWalls, stationsOf, WALLS } from './hole-shape.ts'
import { chooseHoleSizes } from './hole-sizes.ts'
import { throughWalls } from './hole-walls.ts'
import { addRadial } from './radial-holes.ts'

/** A worked place for a hole: the ground, how deep through goes, and the flat face where there is one. */
interface Worked {
  readonly ground: Ground
  readonly through: number
  readonly face?: WorkFace
  readonly round?: RoundFace
}

export function addHole(shop: Workshop, feature: HoleFeature): void {
  const worked = workedPlace(shop, feature)
  if (!worked) return
  if (worked.face && shop.contour && feature.placement.kind === 'axis' && !feature.placement.of) {
    const shape = shapeOf(shop, feature, worked.through)
    if (shape) addBore(shop, feature, worked.face, shape)
    return
  }
  if (tooMany(shop, feature.placement, feature.count)) return
  const saidBore = /^bores?\b/i.test(shop.brief.text.slice(feature.span.from))
  const id = shop.nameOf(saidBore && feature.label ? 'bore' : 'hole', feature)
  const placed = placeMembers(shop, worked.ground, feature.placement, id, {
    count: feature.count.value,
    mirror: feature.mirror,
    round: worked.round !== undefined && !worked.round.inside,
  })
  if (!placed) return
  if (worked.round && isAround(feature.placement)) {
    const { round, ground } = worked
    const [first] = membersOf(shop, feature, worked, placed.points, id)
    const shape = (through: number) => shapeOf(shop, feature, through)
    const fits = (r: number) => fitsRound(shop, round, placed.points, r, feature, id)
    if (first) addRadial(shop, feature, { id, first, side: ground.side, placed, shape, fits })
    return
  }
  if (saidBore) shop.saidBores.add(id)
  const outward = outwardOf[worked.ground.side]
  const standing = membersOf(shop, feature, worked, placed.points, id)
  const members = throughWalls(shop, feature, worked.ground.side, standing, id)
  if (!members) return
  const through = Math.min(...members.map((m) => m.through))
  if (!(through > 1e-9)) {
    shop.must('hole-off-part', feature.span, `${id} lies where nothing is left of the part.`, 'a place on the part')
    return
  }
  const shape = shapeOf(shop, feature, through)
  if (!shape) return
  const widest = Math.max(shape.r, shape.bore?.r ?? 0, shape.sink?.r ?? 0)
  if (worked.face && !fitsFace(shop, worked.face, placed.points, widest, feature.span, id)) return
  if (worked.round && !fitsRound(shop, worked.round, placed.points, shape.r, feature, id)) return
  const reaches = members.map((m) => reachOf(m, worked.ground.side, shape))
  const clash = overlapping(shop, id, axisOf[worked.ground.side], placed.points, shape.r, reaches)
  if (clash) {
    const own = placed.points.length > 1 ? `${id}.${clash.member + 1}` : id
    const left = placed.points.length > 1 ? ` All of ${id} are left out.` : ''
    const isSame = clash.apart < 1e-6
    const text = isSame
      ? `${own} stands in the place of ${clash.other}: the hole is stated twice.${left}`
      : `${own} overlaps ${clash.other}: their centres are ${inUnit(clash.apart, feature.diameter.unit)} apart.${left}`
    const between = `at least ${inUnit(clash.least, feature.diameter.unit)} between these centres`
    const least = isSame ? 'one statement, or another place' : between
    shop.must('holes-overlap', feature.span, text, least)
    return
  }

  const many = placed.points.length > 1
  const inward = scale(outward, -1)
  const names = placed.points.map((_, i) => (many ? `${id}.${i + 1}` : id))
  const whole = feature.depth.kind === 'through' && !feature.depth.oneWall
  const plain = whole && !shape.bore && !shape.sink
  const profile = plain && worked.face ? shop.profileOf(worked.face) : undefined
  if (worked.face) noteMouths(shop, feature, id, worked.face, members, shape)
  members.forEach(({ point: p, through, end }, i) => {
    const name = names[i]!
    shop.axis(`${name} axis`, p, outward)
    nameWalls(shop, name, p, inward, shape, end ?? through)
    if (profile) addProfileCircle(profile, p, shape.r, `${name} wall`)
    else {
      const stations = stationsOf(shape, through, end)
      const [top, bottom] = stations
      // a plain cylinder is made and cut in a fraction of the time of a turned section
      const make: MakeShape =
        stations.length === 2
          ? (oc) => cylinder(oc, along(p, inward, top![0]), inward, shape.r, bottom![0] - top![0])
          : (oc) => turned(oc, p, inward, stations)
      shop.steps.push({ kind: 'cut', feature: id, span: feature.span, make })
    }
  })
  const ids = names.map((n) => `${n} axis`)
  placed.choose(ids)
  chooseHoleSizes(shop, feature, id, names)
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'hole',
    outward,
    members: members.map(({ point }, i) => ({
      id: names[i]!,
      axes: [ids[i]!],
      faces: faces(...WALLS.map((w) => `${names[i]} ${w}`)),
      point,
    })),
    pattern: placed.pattern,
  }))
}

/** Remembers where the hole opens into flat faces; a countersunk mouth has its cone already. */
function noteMouths(
  shop: Workshop,
  feature: HoleFeature,
  hole: string,
  face: WorkFace,
  members: readonly Member[],
  { r, depth, bore, sink }: HoleShape,
): void {
  const { placement, depth: said } = feature
  const isBore = placement.kind === 'axis' && !placement.of
  const out = outwardOf[face.side]
  for (const { point, through, end } of members) {
    const isPlain = !bore && !sink && depth === Infinity && Math.abs(through - face.depth) < 1e-9
    const own = { hole, isBore, face, isPlain }
    const deep = bore?.depth ?? Math.min(through, depth)
    if (!sink) shop.mouths.push({ ...own, at: point, out, r: bore?.r ?? r, deep, isFar: false })
    if (said.kind !== 'through' || said.oneWall || end !== undefined) continue
    const at = along(point, scale(out, -1), through)
    const below = through - (bore?.depth ?? sink?.depth ?? 0)
    shop.mouths.push({ ...own, at, out: outwardOf[oppositeOf[face.side]], r, deep: below, isFar: true })
  }
}

/** Holes in the `flanges` of a channel go through both of them: the length of that, mm. */
function throughBoth(shop: Workshop, feature: HoleFeature): number | undefined {
  const { stock } = shop.brief
  const both = plainName(feature.face.text) === 'flanges' && feature.depth.kind === 'through'
  return both && stock?.kind === 'channel' ? stock.height.mm : undefined
}

/** A through hole in the side of an outline goes through everything along its way, as in a block. */
function throughAll(shop: Workshop, feature: HoleFeature, face: WorkFace): number {
  if (shop.brief.stock?.kind !== 'outline' || face.cap || feature.depth.kind !== 'through') return face.depth
  const limits = limitsAlong(shop, axisOf[face.side])
  return limits ? limits[1].at - limits[0].at : face.depth
}

/** Lowest and highest coordinate that a hole reaches along its axis. */
function reachOf({ point, through, end }: Member, side: Side, shape: HoleShape): readonly [number, number] {
  const axis = axisOf[side]
  const deep = end ?? Math.min(through, shape.depth)
  const far = point[axis] - outwardOf[side][axis] * deep
  return [Math.min(point[axis], far), Math.max(point[axis], far)]
}

/** Members with a depth stand on the highest material under them; a plain through hole has no surface to count from. */
function membersOf(
  shop: Workshop,
  feature: HoleFeature,
  { face, through, round, ground }: Worked,
  points: readonly Vec3[],
  id: string,
): Member[] {
  const { counterbore, countersink, spotface, depth } = feature
  const wide = [feature, counterbore, countersink, spotface?.depth && spotface].map((s) => (s ? s.diameter.mm / 2 : 0))
  if (!face) {
    const on = (p: Vec3) => (round ? onRound(shop, round, ground.side, p, Math.max(...wide)) : p)
    return points.map((p) => ({ point: on(p), through }))
  }
  const axis = axisOf[face.side]
  const out = outwardOf[face.side][axis]
  if (depth.kind === 'through' && Math.max(...wide.slice(1)) === 0) {
    return points.map((p) => {
      const { before, beyond } = addedOnWay(shop, face, circleOn(face, p, wide[0]!), through)
      const point: [number, number, number] = [...p]
      point[axis] += out * before
      return { point, through: before + through + (depth.oneWall ? 0 : beyond) }
    })
  }
  return points.map((p) => {
    const circle = circleOn(face, p, Math.max(...wide))
    const column = surfaceUnder(shop, face, circle, id, feature.span)
    const point: [number, number, number] = [...p]
    point[axis] = column.at
    const thick = throughBoth(shop, feature) ?? column.thick
    const { beyond } = addedOnWay(shop, face, circle, through)
    if (depth.kind === 'blind' || beyond === 0) return { point, through: thick }
    return { point, through: Math.max(thick, out * (column.at - face.at) + through + beyond) }
  })
}

/** On a taper a hole of radius r stands on the highest material under it, as on a flat face. */
function onRound(shop: Workshop, round: RoundFace, side: Side, point: Vec3, r: number): Vec3 {
  const { axis, outer } = shop.contour!
  const piece = outer.find((p) => p.name === round.name)
  if (round.inside || !piece || piece.r0 === piece.r1) return point
  const within = (h: number) => Math.min(piece.h1, Math.max(piece.h0, h))
  const high = Math.max(radiusAt(piece, within(point[axis] - r)), radiusAt(piece, within(point[axis] + r)))
  const placed: [number, number, number] = [...point]
  placed[axisOf[side]] = outwardOf[side][axisOf[side]] * high
  return placed
}

function workedPlace(shop: Workshop, feature: HoleFeature): Worked | undefined {
  const round = feature.from ? findRound(shop, feature.face) : undefined
  if (round && shop.contour && feature.from && axisOf[feature.from] !== shop.contour.axis) {
    const side = feature.from
    const at = outwardOf[side][axisOf[side]] * round.r
    const middle = scale(outwardOf[side], round.r)
    return { ground: { side, at, middle, round: true }, through: 2 * round.r, round }
  }
  const face = findWorkFace(shop, feature.face, feature.from)
  if (face) {
    const ground: Ground = { side: face.side, at: face.at, middle: [0, 0, 0], round: face.radius !== undefined }
    return { ground, through: throughBoth(shop, feature) ?? throughAll(shop, feature, face), face }
  }
  if (!round && findRound(shop, feature.face)) {
    shop.must(
      'side-missing',
      feature.face.span,
      `From which side is the ${feature.face.text} drilled?`,
      `${feature.face.text}, from top`,
    )
    return undefined
  }
  if (!shop.marks.some((m) => m.span === feature.face.span)) markUnknown(shop, feature.face, 'face', faceWords(shop))
  return undefined
}

/** A blind hole as deep as the part is a through hole: one mark, with THRU in place of the depth. */
function markAsDeep(shop: Workshop, size: Size, through: number): void {
  const { text } = shop.brief
  const before = /(?:↧|\b(?:deep|depth|dp))\s*$/i.exec(text.slice(0, size.span.from))?.[0] ?? ''
  const after = before ? '' : (/^\s*(?:deep|depth|dp)\b/i.exec(text.slice(size.span.to))?.[0] ?? '')
  shop.marks.push({
    rule: 'drill-point-through',
    weight: 'must change',
    text: `A depth of ${size.text} is that of the part (${inUnit(through, size.unit)} here): the drill comes out on the far side.`,
    span: size.span,
    expected: 'THRU: the depth is that of the part',
    ...(before || after
      ? {
          mends: [
            {
              label: 'write THRU',
              span: { from: size.span.from - before.length, to: size.span.to + after.length },
              text: 'THRU',
            },
          ],
        }
      : {}),
  })
}

function shapeOf(shop: Workshop, feature: HoleFeature, through: number): HoleShape | undefined {
  const r = feature.diameter.mm / 2
  if (!(r > 0)) {
    shop.must('size-zero', feature.diameter.span, 'A hole needs a diameter greater than zero.', 'a diameter')
    return undefined
  }
  let depth = Infinity
  let point = 0
  if (feature.depth.kind === 'blind') {
    const { size } = feature.depth
    depth = size.mm
    if (!(depth > 0)) {
      shop.must('size-zero', size.span, 'A blind hole needs a depth greater than zero.', 'a depth, or THRU')
      return undefined
    }
    const angle = feature.point?.value ?? 118
    if (!(angle > 0 && angle <= 180)) {
      shop.must('angle-out-of-range', feature.point!.span, 'A drill point is between 0° and 180°.', '118°')
      return undefined
    }
    point = angle === 180 ? 0 : r / Math.tan((angle * Math.PI) / 360)
    if (depth > through + 1e-9) {
      shop.must(
        'too-deep',
        size.span,
        `A depth of ${size.text} goes through: the material is ${inUnit(through, size.unit)} thick here.`,
        'THRU, or a smaller depth',
      )
      return undefined
    }
    if (depth > through - 1e-9 && point > 0) markAsDeep(shop, size, through)
    else if (depth + point > through - 1e-9 && point > 0) {
      shop.mark(
        'look again',
        'drill-point-through',
        size.span,
        `The drill point breaks through the far side (${inUnit(through, size.unit)} of material).`,
        'a smaller depth, or a flat bottom',
      )
    }
  }
  const { counterbore, countersink, spotface } = feature
  if (counterbore && !largerThan(shop, counterbore.diameter, r, 'counterbore', 'counterbore-small')) return undefined
  if (countersink && !largerThan(shop, countersink.diameter, r, 'countersink', 'countersink-small')) return undefined
  if (spotface && !largerThan(shop, spotface.diameter, r, 'spotface', 'counterbore-small')) return undefined
  const shape: HoleShape = { r, depth, point }
  if (counterbore) {
    const deep = counterbore.depth.mm
    if (!(deep > 0) || deep >= Math.min(through, depth) - 1e-9) {
      shop.must(
        'too-deep',
        counterbore.depth.span,
        `A counterbore ${counterbore.depth.text} deep leaves no hole below it.`,
        'a depth less than the hole',
      )
      return undefined
    }
    return { ...shape, bore: { r: counterbore.diameter.mm / 2, depth: deep } }
  }
  if (countersink) {
    const angle = countersink.angle.value
    if (!(angle > 0 && angle < 180)) {
      shop.must('angle-out-of-range', countersink.angle.span, 'A countersink is between 0° and 180°.', '90° or 82°')
      return undefined
    }
    const halfAngle = (angle * Math.PI) / 360
    const wide = countersink.diameter.mm / 2
    const deep = (wide - r) / Math.tan(halfAngle)
    if (deep > Math.min(through, depth)) {
      shop.must(
        'too-deep',
        countersink.diameter.span,
        'The countersink is deeper than the material.',
        'a smaller countersink',
      )
      return undefined
    }
    return { ...shape, sink: { r: wide, depth: deep, halfAngle } }
  }
  // a spotface without a depth only cleans the surface up: nothing to model
  if (spotface?.depth) return { ...shape, bore: { r: spotface.diameter.mm / 2, depth: spotface.depth.mm } }
  return shape
}

function largerThan(shop: Workshop, size: HoleFeature['diameter'], r: number, word: string, rule: string): boolean {
  if (size.mm / 2 > r + 1e-9) return true
  shop.must(rule, size.span, `The ${word} ⌀${size.text} is not larger than its hole.`, 'a larger diameter')
  return false
}

function fitsRound(
  shop: Workshop,
  round: RoundFace,
  points: readonly Vec3[],
  r: number,
  feature: HoleFeature,
  id: string,
): boolean {
  const axis = shop.contour!.axis
  if (r >= round.r) {
    shop.must(
      'hole-too-large',
      feature.diameter.span,
      `${id} is wider than the ${round.name} it is drilled into.`,
      'a smaller hole',
    )
    return false
  }
  const off = points.find((p) => p[axis] - r < round.from - 1e-9 || p[axis] + r > round.to + 1e-9)
  if (!off) return true
  shop.must('hole-off-part', feature.span, `${id} runs off the ${round.name}.`, 'a place on the surface')
  return false
}

/** A hole on the axis of a turned part belongs to its half section. */
function addBore(shop: Workshop, feature: HoleFeature, face: WorkFace, shape: HoleShape): void {
  const id = shop.features.length > 0 && shop.data.has('bore axis') ? shop.nameOf('bore', feature) : boreName(feature)
  coaxialCut(shop, feature, id, face, shape)
}

function boreName(feature: HoleFeature): string {
  return feature.label ? `bore ${feature.label.text}` : 'bore'
}
