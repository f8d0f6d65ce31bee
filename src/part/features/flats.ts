import type { FlatFeature, Side } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { add, cross, scale } from '../../geometry/vec3.ts'
import { box, rotated } from '../../kernel/primitives.ts'
import { release } from '../../kernel/scope.ts'
import { findOrigin } from '../find-name.ts'
import type { RoundFace } from '../model.ts'
import { axisOf, endSides, oppositeOf, outwardOf, unitAxis } from '../sides.ts'
import { turnedAbout } from '../turned-about.ts'
import type { Workshop } from '../workshop.ts'
import { locate, type Stretch } from './along-axis.ts'
import { stretchFrom } from './groove.ts'
import { inUnit } from './hole-shape.ts'
import { surfaceOf } from './round-cuts.ts'

/** Flats milled on round stock: one to the opposite surface, or two, four or six across opposite ones. */
export function addFlat(shop: Workshop, feature: FlatFeature): void {
  const side = feature.side ?? (shop.contour?.axis === 2 ? 'front' : 'top')
  const round = surfaceOf(shop, feature.face, side, 'flat')
  if (!round) return
  const contour = shop.contour!
  const id = shop.nameOf('flat', feature)
  const n = feature.count.value
  const level = n > 1 ? feature.across.mm / 2 : feature.across.mm - round.r
  if (!cutsSurface(shop, feature, round, level)) return
  const stretch = stretchOf(shop, feature, round, id)
  if (!stretch || !surfaceStands(shop, feature, round, stretch, side, id)) return

  const z = unitAxis[contour.axis]
  const turns = Array.from({ length: n }, (_, i) => (360 * i) / n)
  const outwards = turns.map((turn) => turnedAbout(outwardOf[side], z, turn))
  const names = turns.map((_, i) => (n > 1 ? `${id}.${i + 1}` : id))
  turns.forEach((turn, i) => {
    cutFlat(shop, feature, { side, level, stretch, turn, outward: outwards[i]!, name: names[i]!, id })
  })
  const opposite = oppositeOf[side]
  const from =
    n > 1
      ? names[n / 2]!
      : shop.plane(`${round.name} ${opposite}`, scale(outwardOf[opposite], round.r), outwardOf[opposite])
  const { across, length, anchor } = feature
  const direction = unitAxis[axisOf[side]]
  shop.choose({ kind: 'distance', size: across, from, to: names[0]!, direction, span: across.span, group: id })
  if (n > 1) shop.imply('centred', 'flats evenly about the axis', [...names, 'axis'])
  if (length) {
    const [low, high] = endSides[contour.axis]!
    shop.plane(`${id} ${low} end`, scale(z, stretch.from), scale(z, -1))
    shop.plane(`${id} ${high} end`, scale(z, stretch.to), z)
    shop.middle(`${id} middle`, scale(z, (stretch.from + stretch.to) / 2), z, [`${id} ${low} end`, `${id} ${high} end`])
    shop.choose({ kind: 'length', size: length, of: id, direction: z, span: length.span, group: id })
    if (anchor && stretch.origin) locate(shop, id, stretch, anchor.distance, z, [low, high])
  }
  shop.flats.push({ id, feature, round, side, from: stretch.from, to: stretch.to })
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'flat-cut',
    outward: outwardOf[side],
    members: names.map((name, i) => ({
      id: name,
      axes: [],
      faces: faces(name, ...endSides[contour.axis]!.map((s) => `${name} ${s} end`)),
      point: add(scale(z, (stretch.from + stretch.to) / 2), scale(outwards[i]!, level)),
    })),
    pattern: { kind: 'single' },
  }))
}

/** A flat must take some of the surface. Several may meet in sharp corners, as on hexagon bar: that is said. */
function cutsSurface(shop: Workshop, feature: FlatFeature, round: RoundFace, level: number): boolean {
  const { across, count } = feature
  if (level >= round.r - 1e-9 || level <= -round.r + 1e-9) {
    const text = `A flat ${across.text} across does not cut the ${round.name}.`
    shop.must('flat-off-part', across.span, text, 'a size less than its diameter')
    return false
  }
  const corner = level / Math.cos(Math.PI / count.value)
  if (count.value > 2 && corner <= round.r + 1e-9) {
    const wide = inUnit(2 * corner, across.unit)
    shop.mark(
      'look again',
      'flat-corners-sharp',
      across.span,
      `${count.value} flats ${across.text} across meet in sharp corners, ${wide} apart: where they run, nothing round is left of the ${round.name}.`,
      `a diameter of the ${round.name} below ${wide} where its corners are to stay round`,
    )
  }
  return true
}

/** Where the flats lie along the axis; marks what is missing. */
function stretchOf(shop: Workshop, feature: FlatFeature, round: RoundFace, id: string): Stretch | undefined {
  const { length, anchor } = feature
  if (!length) return { from: round.from, to: round.to, reached: 'middle' }
  if (!anchor) {
    const text = `${id} is not located along the axis.`
    shop.must('not-located', feature.span, text, 'an end and a distance from a face')
    return undefined
  }
  const origin = findOrigin(shop, anchor.from, [shop.contour!.axis])
  if (!origin) return undefined
  const place = stretchFrom(anchor, origin, (round.from + round.to) / 2, length.mm)
  if (place.from >= round.from - 1e-9 && place.to <= round.to + 1e-9) return { ...place, origin }
  shop.must('flat-off-part', feature.span, `${id} runs off the ${round.name}.`, 'a place on the surface')
  return undefined
}

/** The surface that a single flat is given from must not be cut away by another flat. */
function surfaceStands(
  shop: Workshop,
  feature: FlatFeature,
  round: RoundFace,
  stretch: Stretch,
  side: Side,
  id: string,
): boolean {
  const other = shop.flats.find(
    (f) => f.round.name === round.name && f.side === oppositeOf[side] && f.from < stretch.to && f.to > stretch.from,
  )
  if (!other || feature.count.value > 1 || other.feature.count.value > 1) return true
  const long = feature.length ? `, ${feature.length.text} long` : ''
  shop.must(
    'flats-opposite',
    feature.span,
    `${id} stands opposite ${other.id}, and each cuts away the surface that the other is given from.`,
    `one statement for both, given across them: flats ${feature.face.text}, ${other.side} and ${side}: ${feature.across.text} across${long}`,
  )
  return false
}

interface Flat {
  readonly side: Side
  readonly level: number
  readonly stretch: Stretch
  /** Degrees about the axis from the side. */
  readonly turn: number
  readonly outward: Vec3
  readonly name: string
  readonly id: string
}

function cutFlat(shop: Workshop, feature: FlatFeature, flat: Flat): void {
  const { side, level, stretch, turn, outward, name } = flat
  const contour = shop.contour!
  const normal = axisOf[side]
  const wide = (3 - normal - contour.axis) as 0 | 1 | 2
  const out = outwardOf[side][normal]
  // a fillet at a shoulder stands out further than the surface that the flat is worked on
  const largest = Math.max(...contour.outer.flatMap((piece) => [piece.r0, piece.r1]))
  const reach = largest + 1
  const min: [number, number, number] = [0, 0, 0]
  const max: [number, number, number] = [0, 0, 0]
  // a flat over the whole surface ends where the surface does, in the open or against a shoulder
  min[contour.axis] = stretch.from
  max[contour.axis] = stretch.to
  min[wide] = -reach
  max[wide] = reach
  min[normal] = Math.min(out * level, out * reach)
  max[normal] = Math.max(out * level, out * reach)
  const [a, b]: [Vec3, Vec3] = [min, max]
  const z = unitAxis[contour.axis]
  shop.steps.push({
    kind: 'cut',
    feature: flat.id,
    span: feature.span,
    make: (oc) => {
      const straight = box(oc, a, b)
      if (turn === 0) return straight
      const result = rotated(oc, straight, [0, 0, 0], z, turn)
      release(straight)
      return result
    },
  })
  const origin = scale(outward, level)
  shop.plane(name, origin, outward)
  const [low, high] = endSides[contour.axis]!
  // the segment that was cut away, turned: neighbours' segments do not lie within its bounds
  const half = Math.sqrt(largest ** 2 - level ** 2)
  const sideways = cross(outward, z)
  const corners = [level, largest].flatMap((r) =>
    [-half, half].flatMap((w) =>
      [stretch.from, stretch.to].map((h) => add(add(scale(outward, r), scale(sideways, w)), scale(z, h))),
    ),
  )
  const bound = (k: 0 | 1 | 2, pick: typeof Math.min, by: number) => pick(...corners.map((p) => p[k])) + by
  const within: { min: Vec3; max: Vec3 } = {
    min: [bound(0, Math.min, -1e-6), bound(1, Math.min, -1e-6), bound(2, Math.min, -1e-6)],
    max: [bound(0, Math.max, 1e-6), bound(1, Math.max, 1e-6), bound(2, Math.max, 1e-6)],
  }
  const plane = (what: string, at: Vec3, n: Vec3, x: Vec3) =>
    shop.surfaces.push({
      name: what,
      surface: { kind: 'plane', axes: { origin: at, x, y: cross(n, x), z: n } },
      within,
    })
  plane(name, origin, outward, z)
  if (feature.length) {
    plane(`${name} ${low} end`, scale(z, stretch.from), z, sideways)
    plane(`${name} ${high} end`, scale(z, stretch.to), z, sideways)
  }
}
