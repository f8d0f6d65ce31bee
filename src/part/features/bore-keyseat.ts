import type { KeyseatFeature } from '../../brief/brief.ts'
import type { Size } from '../../brief/size.ts'
import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import { along, cross, scale } from '../../geometry/vec3.ts'
import { box } from '../../kernel/primitives.ts'
import { findOrigin } from '../find-name.ts'
import { axisOf, endSides, faceAxes, oppositeOf, outwardOf, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'
import { locate, type Stretch } from './along-axis.ts'
import type { Bore } from './bore-of.ts'
import { stretchFrom } from './groove.ts'
import { inUnit } from './hole-shape.ts'

/**
 * A keyseat in a bore, as a broach cuts it: flat walls and bottom, right through the bore unless a length is given. On
 * the sheet it has its width and the size from its bottom to the opposite side of the bore, which is what can be
 * measured (common practice, no source).
 */
export function addBoreKeyseat(shop: Workshop, feature: KeyseatFeature, bore: Bore): void {
  const { side, width } = feature
  const { axis, centre } = bore
  const z = unitAxis[axis]
  if (axisOf[side] === axis) {
    const across = ['left', 'right', 'front', 'rear', 'top', 'bottom'].filter((s) => axisOf[s as typeof side] !== axis)
    const text = `The bore runs toward the ${side}; a keyseat is cut in the bore's wall.`
    shop.must('wrong-side', feature.face.span, text, across.join(', '))
    return
  }
  const id = shop.nameOf('keyseat', feature)
  const level = bottomOf(shop, feature, bore, id)
  if (level === undefined) return
  const stretch = stretchOf(shop, feature, bore, id)
  if (!stretch) return
  const { across: first, up: second } = faceAxes(axis)
  const normal = axisOf[side]
  const outward = outwardOf[side]
  const corners = [-1, 1].map((by): Vec2 => {
    const p: [number, number, number] = [0, 0, 0]
    p[normal] = outward[normal] * level
    p[3 - normal - axis] = (by * width.mm) / 2
    return [p[first], p[second]]
  })
  if (!bore.holds(corners, stretch.from, stretch.to)) {
    shop.must('keyseat-off-part', feature.span, `${id} breaks out of the hub.`, 'a smaller keyseat, or a larger hub')
    return
  }

  const [low, high] = endSides[axis]!
  const [start, end] = bore.ends
  const wide = (3 - normal - axis) as 0 | 1 | 2
  const openLow = stretch.from <= start + 1e-9
  const openHigh = stretch.to >= end - 1e-9
  const min: [number, number, number] = [0, 0, 0]
  const max: [number, number, number] = [0, 0, 0]
  min[axis] = stretch.from - (openLow ? 1 : 0)
  max[axis] = stretch.to + (openHigh ? 1 : 0)
  min[wide] = centre[wide] - width.mm / 2
  max[wide] = centre[wide] + width.mm / 2
  min[normal] = centre[normal] + Math.min(0, outward[normal] * level)
  max[normal] = centre[normal] + Math.max(0, outward[normal] * level)
  const [a, b]: [Vec3, Vec3] = [min, max]
  shop.steps.push({ kind: 'cut', feature: id, span: feature.span, make: (oc) => box(oc, a, b) })

  const across = unitAxis[wide]
  const near = { min: [a[0] - 1e-6, a[1] - 1e-6, a[2] - 1e-6], max: [b[0] + 1e-6, b[1] + 1e-6, b[2] + 1e-6] } as const
  const plane = (what: string, at: Vec3, n: Vec3, x: Vec3) =>
    shop.surfaces.push({
      name: `${id} ${what}`,
      surface: { kind: 'plane', axes: { origin: at, x, y: cross(n, x), z: n } },
      within: near,
    })
  for (const by of [-1, 1]) plane('wall', along(centre, across, (by * width.mm) / 2), across, z)
  plane('floor', along(centre, outward, level), outward, z)
  if (!openLow) plane(`${low} end`, along(centre, z, stretch.from), z, across)
  if (!openHigh) plane(`${high} end`, along(centre, z, stretch.to), z, across)

  const far = oppositeOf[side]
  const from = shop.plane(`${bore.name} ${far}`, along(centre, outwardOf[far], bore.r), outwardOf[far])
  const floor = shop.plane(`${id} floor`, along(centre, outward, level), outward)
  shop.choose({ kind: 'width', size: width, of: id, direction: across, span: width.span, group: id })
  const size = feature.over ?? overBore(feature.depth!, bore, level)
  shop.choose({ kind: 'distance', size, from, to: floor, direction: outward, span: size.span, group: id })
  const { length, anchor } = feature
  if (length && anchor) {
    shop.plane(`${id} ${low} end`, along(centre, z, stretch.from), scale(z, -1))
    shop.plane(`${id} ${high} end`, along(centre, z, stretch.to), z)
    shop.middle(`${id} middle`, along(centre, z, (stretch.from + stretch.to) / 2), z, [
      `${id} ${low} end`,
      `${id} ${high} end`,
    ])
    const once = openLow !== openHigh && anchor.distance.mm === 0
    shop.choose(
      once
        ? // open at one end: the length runs from the face to the other
          {
            kind: 'distance',
            size: length,
            from: stretch.origin!.id,
            to: `${id} ${openLow ? high : low} end`,
            direction: z,
            span: length.span,
            group: id,
          }
        : { kind: 'length', size: length, of: id, direction: z, span: length.span, group: id },
    )
    if (!once) locate(shop, id, stretch, anchor.distance, z, [low, high])
  }
  shop.imply('centred', `${id} evenly about the axis`, [id, bore.axisId])
  const seenFrom = outwardOf[openHigh && !openLow ? high : low]
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'keyseat',
    // what is open at an end is seen from there in true shape
    outward: openLow || openHigh ? seenFrom : outward,
    members: [
      {
        id,
        axes: [],
        faces: faces(`${id} wall`, `${id} floor`, `${id} ${low} end`, `${id} ${high} end`),
        point: along(along(centre, z, (stretch.from + stretch.to) / 2), outward, bore.r),
      },
    ],
    pattern: { kind: 'single' },
  }))
}

/** Distance of the bottom from the axis, mm; marks sizes that cannot be. */
function bottomOf(shop: Workshop, feature: KeyseatFeature, bore: Bore, id: string): number | undefined {
  const { width, depth, over } = feature
  const wide = inUnit(2 * bore.r, width.unit)
  if (width.mm >= 2 * bore.r) {
    shop.must('keyseat-too-large', width.span, `${id} is wider than the bore of ${wide}.`, 'a smaller keyseat')
    return undefined
  }
  const level = over ? over.mm - bore.r : bore.r + (depth?.mm ?? 0)
  if (level > bore.r + 1e-9) return level
  const text = `${over!.text} over the bore leaves ${id} no depth: the bore is ${wide}.`
  shop.must('keyseat-too-small', over!.span, text, `more than ${wide}, or a depth: 3.3 deep`)
  return undefined
}

/** Where it runs: through the length of the bore, or so far from a face. */
function stretchOf(shop: Workshop, feature: KeyseatFeature, bore: Bore, id: string): Stretch | undefined {
  const { from, to } = bore
  const { length, anchor } = feature
  if (!length || !anchor) return { from, to, reached: 'middle' }
  const origin = findOrigin(shop, anchor.from, [bore.axis])
  if (!origin) return undefined
  const place = stretchFrom(anchor, origin, (from + to) / 2, length.mm)
  if (place.from >= from - 1e-9 && place.to <= to + 1e-9) return { ...place, origin }
  shop.must('keyseat-off-part', feature.span, `${id} runs out of the bore.`, 'a place in the bore')
  return undefined
}

/** The size over bore and keyseat that a depth comes to, in the depth's unit and places, with its tolerance. */
function overBore(depth: Size, bore: Bore, level: number): Size {
  const value = (bore.r + level) / (depth.unit === 'inch' ? 25.4 : 1)
  const decimals = depth.form === 'decimal' ? depth.decimals : depth.unit === 'inch' ? 3 : 1
  const text = value.toFixed(decimals)
  return {
    ...depth,
    text: depth.unit === 'inch' ? text.replace(/^0/, '') : text,
    value,
    form: 'decimal',
    decimals,
    mm: bore.r + level,
  }
}
