import type { Anchor, GrooveFeature } from '../../brief/brief.ts'
import { scale } from '../../geometry/vec3.ts'
import { limitsOf } from '../contour.ts'
import { cutLoop } from '../cut-loop.ts'
import { faceWords, findOrigin, findRound, findWorkFace, markUnknown, type Origin } from '../find-name.ts'
import type { ContourPiece, ProfileCurve, RoundFace } from '../model.ts'
import { limitsAlong } from '../place/ground.ts'
import { axisOf, endSides, faceAxes, outwardOf, squareUp, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'
import { inUnit } from './hole-shape.ts'

const LOW = ['lowest', 'leftmost', 'frontmost']

/** Where a cut of some length lies along an axis, from an anchor to its middle or one of its ends. */
export function stretchFrom(
  anchor: Anchor,
  origin: Origin,
  middle: number,
  length: number,
): { readonly from: number; readonly to: number; readonly reached: 'low' | 'high' | 'middle' } {
  const inward = middle >= origin.at ? 1 : -1
  const at = origin.at + inward * anchor.distance.mm
  if (anchor.which === 'all') return { from: at - length / 2, to: at + length / 2, reached: 'middle' }
  return LOW.includes(anchor.which)
    ? { from: at, to: at + length, reached: 'low' }
    : { from: at - length, to: at, reached: 'high' }
}

export function addGroove(shop: Workshop, feature: GrooveFeature): void {
  const round = shop.contour && findRound(shop, feature.face)
  if (round) turnedGroove(shop, feature, round)
  else straightGroove(shop, feature)
}

const isTaper = (shop: Workshop, round: RoundFace): boolean =>
  shop.contour!.outer.some((piece) => piece.name === round.name && Math.abs(piece.r0 - piece.r1) > 1e-9)

function turnedGroove(shop: Workshop, feature: GrooveFeature, round: RoundFace): void {
  const contour = shop.contour!
  const origin = findOrigin(shop, feature.anchor.from, [contour.axis])
  if (!origin) return
  const id = shop.nameOf('groove', feature)
  const r = feature.bottom
    ? feature.bottom.mm / 2
    : round.inside
      ? round.r + (feature.depth?.mm ?? 0)
      : round.r - (feature.depth?.mm ?? 0)
  const at = feature.bottom?.span ?? feature.depth?.span ?? feature.span
  if (feature.depth && isTaper(shop, round)) {
    const text = `The ${round.name} is tapered: how deep ${id} is differs along it.`
    shop.must('groove-depth', at, text, 'the diameter of its bottom: bottom ⌀…')
    return
  }
  if (round.inside ? r <= round.r + 1e-9 : r >= round.r - 1e-9 || r <= 0) {
    shop.must(
      'groove-depth',
      at,
      `The bottom of ${id} is not ${round.inside ? 'outside' : 'inside'} the ${round.name} ⌀${inUnit(2 * round.r, shop.brief.header.units)}.`,
      round.inside ? 'a larger bottom diameter' : 'a smaller bottom diameter, greater than zero',
    )
    return
  }
  const place = stretchFrom(feature.anchor, origin, (round.from + round.to) / 2, feature.width.mm)
  const [start, end] = limitsOf(contour)
  const [lo, hi] = round.inside ? [start, end] : [round.from, round.to]
  if (place.from < lo - 1e-9 || place.to > hi + 1e-9) {
    shop.must('groove-off-part', feature.span, `${id} runs off the ${round.name}.`, 'a place on the surface')
    return
  }
  const piece: ContourPiece = { name: id, h0: place.from, h1: place.to, r0: r, r1: r, groove: true }
  if (round.inside) contour.bores.push(piece)
  else contour.grooves.push(piece)
  const [low, high] = endSides[contour.axis]!
  const z = unitAxis[contour.axis]
  // the low side of the groove looks toward greater heights
  const own = { low: `${id} ${low} side`, high: `${id} ${high} side`, middle: `${id} middle` }
  const shoulder = feature.anchor.distance.mm === 0 && place.reached !== 'middle'
  const sides = shoulder ? { ...own, [place.reached]: origin.id } : own
  shop.plane(sides.low, scale(z, place.from), z)
  shop.plane(sides.high, scale(z, place.to), scale(z, -1))
  shop.middle(sides.middle, scale(z, (place.from + place.to) / 2), z, [sides.low, sides.high])
  shop.choose({ kind: 'width', size: feature.width, of: id, direction: z, span: feature.width.span, group: id })
  if (feature.bottom) {
    const size = feature.bottom
    shop.choose((faces) => ({ kind: 'diameter', size, of: id, faces: faces(id), count: 1, span: size.span, group: id }))
  } else if (feature.depth) {
    const [from, to] = round.inside ? [round.name, id] : [id, round.name]
    const { depth: size } = feature
    shop.choose({ kind: 'thickness', size, from, to, direction: squareUp(contour.axis), span: size.span, group: id })
  }
  const { distance } = feature.anchor
  if (shoulder) shop.imply('aligned', `${id} begins at ${origin.id}`, [id, origin.id])
  else
    shop.choose({
      kind: 'distance',
      size: distance,
      from: origin.id,
      to: sides[place.reached],
      direction: z,
      span: distance.span,
      group: id,
    })
  shop.imply('coaxial', `${id} on the axis`, [id, 'axis'])
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'groove',
    outward: z,
    members: [
      { id, axes: ['axis'], faces: faces(id, sides.low, sides.high), point: scale(z, (place.from + place.to) / 2) },
    ],
    pattern: { kind: 'single' },
  }))
}

/** A straight groove runs right across the face, square to the direction it is located in. */
function straightGroove(shop: Workshop, feature: GrooveFeature): void {
  const face = findWorkFace(shop, feature.face)
  if (!face || face.radius !== undefined) {
    if (!shop.marks.some((m) => m.span === feature.face.span))
      markUnknown(shop, feature.face, 'surface', faceWords(shop))
    return
  }
  if (!feature.depth) {
    shop.must('size-missing', feature.span, 'A straight groove needs a depth.', 'a depth')
    return
  }
  const id = shop.nameOf('groove', feature)
  const { across, up } = faceAxes(axisOf[face.side])
  const origin = findOrigin(shop, feature.anchor.from, [across, up])
  if (!origin) return
  const limits = limitsAlong(shop, origin.axis)
  const middle = limits ? (limits[0].at + limits[1].at) / 2 : 0
  const place = stretchFrom(feature.anchor, origin, middle, feature.width.mm)
  if (feature.depth.mm >= face.depth - 1e-9) {
    shop.must('too-deep', feature.depth.span, `${id} cuts the part through.`, 'a smaller depth')
    return
  }
  const k = origin.axis === across ? 0 : 1
  if (place.from < face.min[k] + 1e-9 || place.to > face.max[k] - 1e-9) {
    shop.must('groove-off-part', feature.span, `${id} runs off the ${face.name}.`, 'a place on the face')
    return
  }
  const other = k === 0 ? 1 : 0
  const [a, b] = [face.min[other] - 1, face.max[other] + 1]
  const corner = (u: number, v: number): readonly [number, number] => (k === 0 ? [u, v] : [v, u])
  const [low, high] = endSides[origin.axis]!
  const sides = { low: `${id} ${low} side`, high: `${id} ${high} side`, middle: `${id} middle` }
  const points = [corner(place.from, a), corner(place.to, a), corner(place.to, b), corner(place.from, b)]
  const names = ['', sides.high, '', sides.low]
  const loop = points.map(
    (p, i): ProfileCurve => ({ curve: { kind: 'line', a: p, b: points[(i + 1) % 4]! }, face: names[i]! }),
  )
  cutLoop(shop, {
    feature: id,
    span: feature.span,
    face,
    loop,
    depth: feature.depth.mm,
    floor: `${id} floor`,
    clear: false,
  })
  const z = unitAxis[origin.axis]
  shop.plane(sides.low, scale(z, place.from), z)
  shop.plane(sides.high, scale(z, place.to), scale(z, -1))
  shop.middle(sides.middle, scale(z, (place.from + place.to) / 2), z, [sides.low, sides.high])
  const n = unitAxis[axisOf[face.side]]
  const out = outwardOf[face.side][axisOf[face.side]]
  shop.plane(`${id} floor`, scale(n, face.at - out * feature.depth.mm), outwardOf[face.side])
  shop.choose({ kind: 'width', size: feature.width, of: id, direction: z, span: feature.width.span, group: id })
  shop.choose({
    kind: 'distance',
    size: feature.depth,
    from: face.name,
    to: `${id} floor`,
    direction: n,
    span: feature.depth.span,
    group: id,
  })
  const { distance } = feature.anchor
  shop.choose({
    kind: 'distance',
    size: distance,
    from: origin.id,
    to: sides[place.reached],
    direction: z,
    span: distance.span,
    group: id,
  })
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'groove',
    outward: outwardOf[face.side],
    members: [
      {
        id,
        axes: [],
        faces: faces(sides.low, sides.high, `${id} floor`),
        point: scale(z, (place.from + place.to) / 2),
      },
    ],
    pattern: { kind: 'single' },
  }))
}
