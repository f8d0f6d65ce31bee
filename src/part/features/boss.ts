import type { BossFeature } from '../../brief/brief.ts'
import { scale } from '../../geometry/vec3.ts'
import { squareTo } from '../../kernel/evaluate3.ts'
import { cylinder } from '../../kernel/primitives.ts'
import { coaxialBoss } from '../coaxial.ts'
import { faceWords, findWorkFace, markUnknown } from '../find-name.ts'
import { fitsFace } from '../fit.ts'
import { placeMembers, tooMany } from '../place.ts'
import { addFace } from '../prism-stock.ts'
import { addRelief } from '../relief.ts'
import { axisOf, faceAxes, outwardOf, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'

/** A round boss standing on a flat face. */
export function addBoss(shop: Workshop, feature: BossFeature): void {
  const face = findWorkFace(shop, feature.face, feature.from)
  if (!face) {
    if (!shop.marks.some((m) => m.span === feature.face.span))
      markUnknown(shop, feature.face, 'flat face', faceWords(shop))
    return
  }
  const numbered = shop.nameOf('boss', feature)
  const id = numbered === 'boss 1' ? 'boss' : numbered
  if (shop.contour && feature.placement.kind === 'axis' && !feature.placement.of) {
    if (coaxialBoss(shop, feature, id, face)) return
  }
  if (tooMany(shop, feature.placement, feature.count)) return
  const ground = { side: face.side, at: face.at, middle: [0, 0, 0] as const, round: face.radius !== undefined }
  const placed = placeMembers(shop, ground, feature.placement, id, {
    count: feature.count.value,
    mirror: feature.mirror,
  })
  if (!placed) return
  const r = feature.diameter.mm / 2
  if (!fitsFace(shop, face, placed.points, r, feature.span, id)) return
  const outward = outwardOf[face.side]
  const out = outward[axisOf[face.side]]
  const h = feature.height.mm
  const names = placed.points.map((_, i) => (placed.points.length > 1 ? `${id}.${i + 1}` : id))
  const x = squareTo(outward)
  const { across, up } = faceAxes(axisOf[face.side])
  placed.points.forEach((p, i) => {
    const name = names[i]!
    shop.axis(`${name} axis`, p, outward)
    const end = [0, 1, 2].map((k) => p[k]! + outward[k]! * h) as unknown as typeof p
    const axes = { origin: p, x, y: x, z: outward }
    shop.surfaces.push({ name: `${name} wall`, surface: { kind: 'cylinder', axes, r } })
    const within = {
      min: end.map((v) => v - r - 1e-6) as unknown as typeof p,
      max: end.map((v) => v + r + 1e-6) as unknown as typeof p,
    }
    shop.surfaces.push({ name: `${name} end`, surface: { kind: 'plane', axes: { ...axes, origin: end } }, within })
    shop.steps.push({ kind: 'fuse', feature: id, span: feature.span, make: (oc) => cylinder(oc, p, outward, r, h) })
    const c = [p[across], p[up]] as const
    const border = [{ kind: 'arc' as const, c, r, from: 0, sweep: 2 * Math.PI }]
    addRelief(shop, id, axisOf[face.side], border, [face.at, face.at + out * h], true)
    addFace(shop, {
      name: `${name} end`,
      side: face.side,
      at: face.at + out * h,
      min: [p[across] - r, p[up] - r],
      max: [p[across] + r, p[up] + r],
      radius: r,
      depth: face.depth + h,
    })
  })
  placed.choose(names.map((n) => `${n} axis`))
  shop.choose((faces) => ({
    kind: 'diameter',
    size: feature.diameter,
    of: id,
    faces: faces(...names.map((n) => `${n} wall`)),
    count: names.length,
    span: feature.diameter.span,
    group: id,
  }))
  shop.choose({
    kind: 'distance',
    size: feature.height,
    from: face.name,
    to: `${names[0]} end`,
    direction: scale(unitAxis[axisOf[face.side]], 1),
    span: feature.height.span,
    group: id,
  })
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'boss',
    outward,
    members: placed.points.map((point, i) => ({
      id: names[i]!,
      axes: [`${names[i]} axis`],
      faces: faces(`${names[i]} wall`, `${names[i]} end`),
      point,
    })),
    pattern: placed.pattern,
  }))
}
