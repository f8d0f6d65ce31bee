import type { Feature } from '../../brief/brief.ts'
import type { Workshop } from '../workshop.ts'
import { addBoss } from './boss.ts'
import { addEdgeWork } from './edges.ts'
import { addFlat } from './flats.ts'
import { addGroove } from './groove.ts'
import { addHole } from './hole.ts'
import { addNotch } from './notch.ts'
import { addKeyseat } from './round-cuts.ts'
import { addPocket, addSlot } from './slot.ts'
import { addStep } from './step.ts'

/** Works one feature into the part, or marks why it cannot be. */
export function workFeature(shop: Workshop, feature: Feature): void {
  switch (feature.kind) {
    case 'hole':
      addHole(shop, feature)
      break
    case 'slot':
      addSlot(shop, feature)
      break
    case 'pocket':
      addPocket(shop, feature)
      break
    case 'step':
      addStep(shop, feature)
      break
    case 'notch':
      addNotch(shop, feature)
      break
    case 'chamfer':
    case 'round':
    case 'fillet':
      addEdgeWork(shop, feature)
      break
    case 'boss':
      addBoss(shop, feature)
      break
    case 'groove':
      addGroove(shop, feature)
      break
    case 'flat-cut':
      addFlat(shop, feature)
      break
    case 'keyseat':
      addKeyseat(shop, feature)
      break
  }
}
