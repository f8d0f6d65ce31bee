import type { BlockStock, Brief, Feature, FlatStock, PlateStock, Side } from '../../brief/brief.ts'
import type { Size } from '../../brief/size.ts'
import { plainName } from '../find-name.ts'
import { startProfile } from '../prism-stock.ts'
import { polygon } from '../profile-edit.ts'
import { axisOf, endSides, faceAxes, SIDES, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'

/** Plate, flat bar or block: a rectangle thickened. Corner left, front, bottom at the origin. */
export function buildFlatStock(shop: Workshop, stock: PlateStock | FlatStock | BlockStock): void {
  const sizes = stock.kind === 'block' ? [stock.length, stock.width, stock.height] : spread(stock)
  const lengths = sizes.map((s) => s.mm)
  const large = stock.kind === 'block' ? thinnest(lengths) : axisOf[stock.face]
  if (large !== undefined) shop.largeAxis = large
  const axis = stock.kind === 'block' ? bestAxis(shop.brief, large) : axisOf[stock.face]
  const { across, up } = faceAxes(axis)
  const [w, h] = [lengths[across]!, lengths[up]!]
  const [low, high] = [endSides[across]!, endSides[up]!]
  startProfile(
    shop,
    axis,
    [0, lengths[axis]!],
    polygon(
      [
        [0, 0],
        [w, 0],
        [w, h],
        [0, h],
      ],
      [high[0], low[1], high[1], low[0]],
    ),
  )
  sizes.forEach((size, k) => {
    const [from, to] = endSides[k]!
    const thin = stock.kind !== 'block' && k === axis
    shop.choose({
      kind: thin ? 'thickness' : 'distance',
      size,
      from,
      to,
      direction: unitAxis[k as 0 | 1 | 2],
      span: size.span,
      group: 'stock',
    })
  })
  shop.imply('square', 'faces square to each other', SIDES)
}

/** Left-right, front-rear and up-down size of a plate or flat bar whose large face looks to a side. */
function spread(stock: PlateStock | FlatStock): [Size, Size, Size] {
  const { length, width, thickness } = stock
  switch (axisOf[stock.face]) {
    case 2:
      return [length, width, thickness]
    case 1:
      return [length, thickness, width]
    case 0:
      return [thickness, length, width]
  }
}

/** The axis of the one shortest size: the large face is square to it. */
function thinnest(lengths: readonly number[]): 0 | 1 | 2 | undefined {
  const least = Math.min(...lengths)
  const [first, ...others] = ([0, 1, 2] as const).filter((k) => lengths[k]! < least + 1e-9)
  return others.length > 0 ? undefined : first
}

/** The direction in which most features of a block can be part of one flat profile. */
function bestAxis(brief: Brief, large: 0 | 1 | 2 | undefined): 0 | 1 | 2 {
  const votes: [number, number, number] = [0, 0, 0]
  for (const f of brief.features) {
    const axis = throughAxis(f) ?? (areCorners(f) ? large : undefined)
    if (axis !== undefined) votes[axis] += Math.max(1, f.count.value)
  }
  const most = Math.max(...votes)
  // of equals: from the front, then the top, then the side
  return ([1, 2, 0] as const).find((k) => votes[k] === most) ?? 1
}

/** Whether the work is on corners that no side names: those of the large face. */
function areCorners(f: Feature): boolean {
  if (f.kind !== 'round' && f.kind !== 'chamfer' && f.kind !== 'fillet') return false
  return f.edges.some((e) => plainName(e.text) === 'corners')
}

function throughAxis(f: Feature): 0 | 1 | 2 | undefined {
  switch (f.kind) {
    case 'hole':
      return f.depth.kind === 'through' && !f.counterbore && !f.countersink && !f.spotface
        ? axisOfFace(f.face.text)
        : undefined
    case 'slot':
    case 'pocket':
      return f.depth.kind === 'through' ? axisOfFace(f.face.text) : undefined
    case 'notch':
      return axisOfFace(f.face.text)
    case 'step':
      return axisOfEdge(f.edge.text)
    case 'round':
    case 'fillet':
    case 'chamfer':
      return f.edges.length === 0 ? undefined : axisOfEdge(f.edges[0]!.text)
    default:
      return undefined
  }
}

function axisOfFace(text: string): 0 | 1 | 2 | undefined {
  const side = SIDES.find((s) => text.toLowerCase().split(/\W+/).includes(s))
  return side && axisOf[side]
}

/** The axis that an edge between two sides runs along. */
function axisOfEdge(text: string): 0 | 1 | 2 | undefined {
  const sides: Side[] = SIDES.filter((s) => text.toLowerCase().split(/\W+/).includes(s))
  const [a, b] = sides.map((s) => axisOf[s])
  if (a === undefined || b === undefined || a === b) return undefined
  return (3 - a - b) as 0 | 1 | 2
}
