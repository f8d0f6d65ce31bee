import type { HoleFeature } from '../../brief/brief.ts'
import type { Workshop } from '../workshop.ts'

/** Diameters, depths and angles of a hole callout, each once for all its members. */
export function chooseHoleSizes(shop: Workshop, feature: HoleFeature, id: string, members: readonly string[]): void {
  const count = members.length
  const faceNames = (what: string) => members.map((m) => `${m} ${what}`)
  const diameter = (size: HoleFeature['diameter'], role: 'hole' | 'counterbore' | 'countersink', what: string) =>
    shop.choose((faces) => ({
      kind: 'diameter',
      size,
      of: id,
      faces: faces(...faceNames(what)),
      count,
      span: size.span,
      group: id,
      role,
    }))
  diameter(feature.diameter, 'hole', 'wall')
  if (feature.depth.kind === 'blind') {
    const { size } = feature.depth
    shop.choose({ kind: 'depth', size, of: id, span: size.span, group: id, role: 'hole' })
  }
  const bore = feature.counterbore ?? feature.spotface
  if (bore) {
    if (bore.depth || feature.counterbore) diameter(bore.diameter, 'counterbore', 'counterbore wall')
    if (bore.depth) {
      shop.choose({ kind: 'depth', size: bore.depth, of: id, span: bore.depth.span, group: id, role: 'counterbore' })
    }
    shop.imply('coaxial', 'counterbore on the axis of its hole', [`${members[0]} axis`])
  }
  if (feature.countersink) {
    const { diameter: wide, angle } = feature.countersink
    diameter(wide, 'countersink', 'countersink')
    const at = `${members[0]} axis`
    shop.choose({ kind: 'angle', angle, from: at, to: at, span: angle.span, group: id, role: 'countersink' })
    shop.imply('coaxial', 'countersink on the axis of its hole', [at])
  }
  if (feature.depth.kind === 'blind' && feature.point) {
    const at = `${members[0]} axis`
    const angle = feature.point
    shop.choose({ kind: 'angle', angle, from: at, to: at, span: angle.span, group: id, role: 'drill point' })
  }
}
