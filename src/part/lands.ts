import type { Vec2 } from '../geometry/vec.ts'
import type { WorkFace } from './model.ts'
import type { Workshop } from './workshop.ts'

/** The flat faces that lie in one plane with a face and look the same way, itself first: the two lands beside a slot. */
export const landsOf = (shop: Workshop, face: WorkFace): readonly WorkFace[] => [
  face,
  ...shop.faces.filter((f) => f !== face && f.side === face.side && Math.abs(f.at - face.at) < 1e-9),
]

/** The one of these lands that a point stands on, by its two coordinates across and up; the face itself where none holds it. */
export const landUnder = (shop: Workshop, face: WorkFace, [a, b]: Vec2): WorkFace =>
  landsOf(shop, face).find((f) => a > f.min[0] && a < f.max[0] && b > f.min[1] && b < f.max[1]) ?? face
