import type { BossFeature, HoleFeature } from '../brief/brief.ts'
import { scale } from '../geometry/vec3.ts'
import { limitsOf, radiusAt } from './contour.ts'
import { type HoleShape, nameWalls, WALLS } from './features/hole-shape.ts'
import { chooseHoleSizes } from './features/hole-sizes.ts'
import type { ContourPiece, WorkFace } from './model.ts'
import { addRelief } from './relief.ts'
import { endSides, outwardOf, unitAxis } from './sides.ts'
import { addEnd } from './stock/round.ts'
import type { Workshop } from './workshop.ts'

/** A hole on the axis of a turned part: pieces of the inside of its half section. */
export function coaxialCut(shop: Workshop, feature: HoleFeature, id: string, face: WorkFace, shape: HoleShape): void {
  const contour = shop.contour!
  const high = face.side === endSides[contour.axis]![1]
  const inward = high ? -1 : 1
  const piece = (name: string, from: number, to: number, rFrom: number, rTo: number): ContourPiece => {
    const [a, b] = [face.at + inward * from, face.at + inward * to]
    return high ? { name, h0: b, h1: a, r0: rTo, r1: rFrom } : { name, h0: a, h1: b, r0: rFrom, r1: rTo }
  }
  const [start, end] = limitsOf(contour)
  const far = shape.depth === Infinity ? Math.max(face.at - start, end - face.at) + 1 : shape.depth
  const pieces = [
    shape.depth === Infinity
      ? { name: `${id} wall`, h0: -Infinity, h1: Infinity, r0: shape.r, r1: shape.r }
      : piece(`${id} wall`, -1, far, shape.r, shape.r),
  ]
  if (shape.point > 0) pieces.push(piece(`${id} drill point`, far, far + shape.point, shape.r, 0))
  if (shape.bore) pieces.push(piece(`${id} counterbore wall`, -1, shape.bore.depth, shape.bore.r, shape.bore.r))
  if (shape.sink) pieces.push(piece(`${id} countersink`, 0, shape.sink.depth, shape.sink.r, shape.r))
  if (pieces.some((p) => contour.outer.some((o) => !isWithin(p, o)))) {
    shop.must(
      'bore-too-large',
      feature.diameter.span,
      `The bore ⌀${feature.diameter.text} is not smaller than the outside it goes through.`,
      'a bore less than the outside diameter',
    )
    return
  }
  contour.bores.push(...pieces)
  const outward = outwardOf[face.side]
  const at = scale(unitAxis[contour.axis], face.at)
  shop.axis(`${id} axis`, at, outward)
  nameWalls(shop, id, at, scale(outward, -1), shape, 2 * (end - start))
  shop.rounds.push({ name: id, r: shape.r, from: start, to: end, inside: true })
  shop.imply('coaxial', `${id} on the axis of the outside`, [`${id} axis`, 'axis'])
  chooseHoleSizes(shop, feature, id, [id])
  shop.members += 1
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'bore',
    outward,
    members: [
      {
        id,
        axes: ['axis'],
        faces: faces(...WALLS.map((w) => `${id} ${w}`)),
        point: at,
      },
    ],
    pattern: { kind: 'single' },
  }))
}

/** Whether the inside stays smaller than the outside at both ends of the stretch that they share; both are straight. */
function isWithin(inner: ContourPiece, outer: ContourPiece): boolean {
  const [a, b] = [Math.max(inner.h0, outer.h0), Math.min(inner.h1, outer.h1)]
  return b <= a || [a, b].every((h) => radiusAt(inner, h) < radiusAt(outer, h) - 1e-9)
}

/** A boss on the axis of a turned part lengthens the outside of its half section. False where it is not at an end. */
export function coaxialBoss(shop: Workshop, feature: BossFeature, id: string, face: WorkFace): boolean {
  const contour = shop.contour!
  const [start, end] = limitsOf(contour)
  const high = face.side === endSides[contour.axis]![1]
  if (Math.abs(face.at - (high ? end : start)) > 1e-9) return false
  const r = feature.diameter.mm / 2
  const h = feature.height.mm
  const neighbour = high ? contour.outer[contour.outer.length - 1]! : contour.outer[0]!
  if (r >= (high ? neighbour.r1 : neighbour.r0) - 1e-9) {
    shop.must(
      'boss-too-large',
      feature.diameter.span,
      `The boss ⌀${feature.diameter.text} is not smaller than the face it stands on.`,
      'a diameter less than the face',
    )
    return true
  }
  const piece: ContourPiece = high
    ? { name: id, h0: end, h1: end + h, r0: r, r1: r }
    : { name: id, h0: start - h, h1: start, r0: r, r1: r }
  contour.outer = high ? [...contour.outer, piece] : [piece, ...contour.outer]
  const border = [{ kind: 'arc' as const, c: [0, 0] as const, r, from: 0, sweep: 2 * Math.PI }]
  addRelief(shop, id, contour.axis, border, [piece.h0, piece.h1], true)
  const side = face.side
  addEnd(shop, contour, `${id} end`, side, high ? end + h : start - h, r)
  shop.rounds.push({ name: id, r, from: piece.h0, to: piece.h1, inside: false })
  shop.imply('coaxial', `${id} on the axis`, [id, 'axis'])
  shop.choose((faces) => ({
    kind: 'diameter',
    size: feature.diameter,
    of: id,
    faces: faces(id),
    count: 1,
    span: feature.diameter.span,
    group: id,
  }))
  shop.choose({
    kind: 'distance',
    size: feature.height,
    from: face.name,
    to: `${id} end`,
    direction: unitAxis[contour.axis],
    span: feature.height.span,
    group: id,
  })
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'boss',
    outward: outwardOf[side],
    members: [{ id, axes: ['axis'], faces: faces(id, `${id} end`), point: scale(unitAxis[contour.axis], face.at) }],
    pattern: { kind: 'single' },
  }))
  return true
}
