import type { Body } from '../kernel/body.ts'
import type { Datum } from './part.ts'
import type { FaceIds, Workshop } from './workshop.ts'

/** The data of the part with the body's faces they stand for. */
export function nameDatumFaces(shop: Workshop, body: Body, ids: FaceIds): Datum[] {
  return [...shop.data.values()].map((d): Datum => {
    if (d.kind === 'plane') {
      const [face] = ids(d.id).filter((id) => body.faces[id]?.surface.kind === 'plane')
      return face === undefined ? d : { ...d, face }
    }
    if (d.kind === 'axis') {
      const of = d.id.replace(/ axis$/, '')
      const faces = ids(`${of} wall`, of).filter((id) => body.faces[id]?.surface.kind !== 'plane')
      return faces.length === 0 ? d : { ...d, faces }
    }
    return d
  })
}
