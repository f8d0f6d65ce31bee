import type { Feature } from '../../brief/brief.ts'
import type { Workshop } from '../workshop.ts'
import { addHole } from './hole.ts'

/** Works one feature into the part, or marks why it cannot be. */
export function workFeature(shop: Workshop, feature: Feature): void {
  switch (feature.kind) {
    case 'hole':
      addHole(shop, feature)
      return
  }
}
