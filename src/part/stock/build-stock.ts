import type { Stock } from '../../brief/brief.ts'
import type { Workshop } from '../workshop.ts'
import { buildAngle } from './angle.ts'
import { buildFlatStock } from './flat.ts'
import { buildOutline } from './outline.ts'
import { buildBar, buildDisc, buildTube, buildTurned } from './round.ts'
import { buildSection } from './section.ts'

/** Sets up the stock in the workshop. False (and a mark) where its sizes leave nothing to work. */
export function buildStock(shop: Workshop, stock: Stock): boolean {
  switch (stock.kind) {
    case 'plate':
    case 'block':
    case 'flat':
      buildFlatStock(shop, stock)
      return true
    case 'angle':
      return buildAngle(shop, stock)
    case 'channel':
    case 'tee':
      return buildSection(shop, stock)
    case 'outline':
      return buildOutline(shop, stock)
    case 'bar':
      buildBar(shop, stock)
      return true
    case 'tube':
      return buildTube(shop, stock)
    case 'disc':
      buildDisc(shop, stock)
      return true
    case 'turned':
      return buildTurned(shop, stock)
  }
}
