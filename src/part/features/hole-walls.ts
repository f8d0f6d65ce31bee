import type { HoleFeature, OneWall, Side } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { add, scale } from '../../geometry/vec3.ts'
import { bothCalled, plainName } from '../find-name.ts'
import { axisOf, faceAxes, unitAxis } from '../sides.ts'
import { type Opening, openingsAlong, wayIn } from '../way.ts'
import type { Workshop } from '../workshop.ts'
import { inUnit, type Member } from './hole-shape.ts'

/**
 * The members with the wall that each goes through: of a hole through one wall up to the open space behind it. Marks a
 * depth that ends in open space, and a wall with nothing behind it; undefined where the hole cannot be.
 */
export function throughWalls(
  shop: Workshop,
  feature: HoleFeature,
  side: Side,
  members: readonly Member[],
  id: string,
): readonly Member[] | undefined {
  const { depth } = feature
  const r = feature.diameter.mm / 2
  if (depth.kind === 'blind') return endsOpen(shop, feature, side, members, id) ? undefined : members
  const { oneWall } = depth
  if (!oneWall) return members
  const found = members.map((m) => openingsAlong(shop, wayIn(m.point, side)).find((o) => o.from < m.through))
  if (found.some((o) => !o)) {
    const behind = oneWall.into ? `the ${oneWall.into.text}` : 'open space'
    shop.must(
      'nothing-behind',
      oneWall.span,
      `${id} meets no open space behind its wall${oneWall.into ? `: ${behind} does not lie on its way, or is stated after it` : ''}.`,
      'THRU, a depth, or the statement of what lies behind the wall above this one',
    )
    return undefined
  }
  const opened = found as readonly Opening[]
  const other = oneWall.into && opened.find((o) => !isNamed(shop, oneWall, o))
  if (other) {
    shop.must(
      'other-behind',
      oneWall.into!.span,
      `${id} meets ${nameOf(shop, other)} first, not the ${oneWall.into!.text}.`,
      writeOf(shop, other),
    )
    return undefined
  }
  const ended = members.map((m, i): Member => {
    const { from, to } = opened[i]!
    return { ...m, through: from, end: (from + to) / 2 }
  })
  if (ended.every((m) => inOpen(shop, side, r, m.point, m.end!))) return ended
  shop.must(
    'hole-too-large',
    feature.diameter.span,
    `${id} is wider than ${nameOf(shop, opened[0]!)} that it breaks into, so it would mark the wall behind.`,
    'a smaller hole, or THRU',
  )
  return undefined
}

/** Whether a depth ends wholly in open space, so that no bottom is left for it to be measured to. */
function endsOpen(shop: Workshop, feature: HoleFeature, side: Side, members: readonly Member[], id: string): boolean {
  if (feature.depth.kind !== 'blind') return false
  const { size } = feature.depth
  const r = feature.diameter.mm / 2
  for (const m of members) {
    const opening = openingAt(shop, side, m.point, size.mm)
    if (!opening || !inOpen(shop, side, r, m.point, size.mm)) continue
    const wall = inUnit(opening.from, size.unit)
    const what = nameOf(shop, opening)
    shop.must(
      'breaks-into',
      size.span,
      `A depth of ${size.text} breaks into ${what}: the wall there is ${wall} thick${members.length > 1 ? ` (${id})` : ''}.`,
      `${writeOf(shop, opening)} in place of the depth, or a depth less than ${wall}`,
    )
    return true
  }
  return false
}

const openingAt = (shop: Workshop, side: Side, from: Vec3, depth: number): Opening | undefined =>
  openingsAlong(shop, wayIn(from, side)).find((o) => depth > o.from - 1e-7 && depth < o.to + 1e-7)

/** Whether the whole width of a hole is in open space at a depth. */
function inOpen(shop: Workshop, side: Side, r: number, from: Vec3, depth: number): boolean {
  const { across, up } = faceAxes(axisOf[side])
  const rim = [across, up].flatMap((k) => [r, -r].map((by) => scale(unitAxis[k], by)))
  return rim.every((by) => openingAt(shop, side, add(from, by), depth))
}

const nameOf = (shop: Workshop, { name }: Opening): string =>
  name === '' ? 'the gap of the outline' : writable(shop, name) ? `the ${name}` : name

const writeOf = (shop: Workshop, { name }: Opening): string =>
  name !== '' && writable(shop, name) ? `THRU to ${isBore(shop, name) ? 'bore' : name}` : 'THRU one wall'

/** Names that a brief can use: `bore`, a label's, or the only one of its kind. */
function writable(shop: Workshop, name: string): boolean {
  return (
    name === 'bore' ||
    isBore(shop, name) ||
    shop.brief.features.some((f) => f.label && name.endsWith(` ${f.label.text.trim()}`))
  )
}

/** The one hole of the part that the brief calls a bore. */
const isBore = (shop: Workshop, name: string): boolean => shop.saidBores.size === 1 && shop.saidBores.has(name)

/** `bore`, `hole A`, or the kind alone. */
function isNamed(shop: Workshop, { into }: OneWall, { name }: Opening): boolean {
  const said = plainName(into!.text)
  const own = name.toLowerCase().replace(/\.\d+$/, '')
  if (bothCalled(said).includes(own) || own.replace(/ \d+$/, '') === said || own.startsWith(`${said} `)) return true
  if (said === 'bore' && shop.saidBores.has(own)) return true
  // the inside of a tube, the gap of an outline and the like go by what the drafter calls them
  return name === '' || (own === 'bore' && shop.brief.stock?.kind === 'tube' && said === 'inside')
}
