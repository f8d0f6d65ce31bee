import type { Feature } from '../../brief/brief.ts'
import type { Workshop } from '../workshop.ts'
import { addBoss } from './boss.ts'
import { addEdgeWork } from './edges.ts'
import { addGroove } from './groove.ts'
import { addHole } from './hole.ts'
import { addNotch } from './notch.ts'
import { addFlat, addKeyseat } from './round-cuts.ts'
import { addPocket, addSlot } from './slot.ts'
import { addStep } from './step.ts'

/** Works one feature into the part, or marks why it cannot be. */
export function workFeature(shop: Workshop, feature: Feature): void {
  switch (feature.kind) {
    case 'hole':
      return addHole(shop, feature)
    case 'slot':
      return addSlot(shop, feature)
    case 'pocket':
      return addPocket(shop, feature)
    case 'step':
      return addStep(shop, feature)
    case 'notch':
      return addNotch(shop, feature)
    case 'chamfer':
    case 'round':
    case 'fillet':
      return addEdgeWork(shop, feature)
    case 'boss':
      return addBoss(shop, feature)
    case 'groove':
      return addGroove(shop, feature)
    case 'flat-cut':
      return addFlat(shop, feature)
    case 'keyseat':
      return addKeyseat(shop, feature)
  }
}
