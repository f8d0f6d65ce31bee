import type { HoleFeature, Side } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { add, along, cross, dot, scale, sub } from '../../geometry/vec3.ts'
import { turned } from '../../kernel/primitives.ts'
import { overlapping } from '../fit.ts'
import type { Placed } from '../place/ground.ts'
import { axisOf, outwardOf, SIDES, unitAxis } from '../sides.ts'
import { turnedAbout } from '../turned-about.ts'
import { openingsAlong, wayIn } from '../way.ts'
import type { Workshop } from '../workshop.ts'
import { type HoleShape, inUnit, type Member, nameWalls, stationsOf, WALLS } from './hole-shape.ts'
import { chooseHoleSizes } from './hole-sizes.ts'
import { throughWalls } from './hole-walls.ts'

/** A ring of holes by its first member. */
interface Ring {
  readonly id: string
  readonly first: Member
  /** Where the first is worked from. */
  readonly side: Side
  readonly placed: Placed
  /** Radii and depths for a thickness of material; undefined (and a mark) where they cannot be. */
  readonly shape: (through: number) => HoleShape | undefined
  /** Whether a hole of that radius stays on the surface; marks one that does not. */
  readonly fits: (r: number) => boolean
}

/** Holes equally spaced round a turned surface, each pointing at the axis and through its own wall alone. */
export function addRadial(shop: Workshop, feature: HoleFeature, ring: Ring): void {
  const { id, side, placed } = ring
  const { axis } = shop.contour!
  const n = feature.count.value
  const z = unitAxis[axis]
  const foot = scale(z, ring.first.point[axis])
  if (Math.abs(dot(sub(ring.first.point, foot), cross(z, outwardOf[side]))) > 1e-9 || feature.mirror) {
    const text = `${id} is spaced round the axis, so each of its holes points at it: one place along the axis is all they need.`
    shop.must('located-twice', feature.placement.span, text, 'one distance along the axis, and equally spaced')
    return
  }
  const ended = endOf(shop, feature, ring)
  if (!ended) return
  const shape = ring.shape(ended.through)
  if (!shape || !ring.fits(shape.r) || !standApart(shop, feature, ring, shape, ended)) return
  const names = Array.from({ length: n }, (_, i) => `${id}.${i + 1}`)
  const outwards = names.map((_, i) => turnedAbout(outwardOf[side], z, (360 * i) / n))
  const r = dot(sub(ring.first.point, foot), outwardOf[side])
  const points = outwards.map((out) => add(foot, scale(out, r)))
  const deep = ended.end ?? Math.min(ended.through, shape.depth)
  if (overlapsOther(shop, feature, id, points, outwards, shape.r, deep)) return
  names.forEach((name, i) => {
    const [at, out] = [points[i]!, outwards[i]!]
    const inward = scale(out, -1)
    shop.axis(`${name} axis`, at, out)
    nameWalls(shop, name, at, inward, shape, ended.end ?? ended.through)
    const stations = stationsOf(shape, ended.through, ended.end)
    shop.steps.push({
      kind: 'cut',
      feature: id,
      span: feature.span,
      make: (oc) => turned(oc, at, inward, stations),
    })
  })
  const ids = names.map((name) => `${name} axis`)
  placed.choose(ids.slice(0, 1))
  shop.imply('equally spaced', `${id} equally spaced round the axis`, ids)
  chooseHoleSizes(shop, feature, id, names)
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'hole',
    outward: outwardOf[side],
    members: names.map((name, i) => ({
      id: name,
      axes: [ids[i]!],
      faces: faces(...WALLS.map((wall) => `${name} ${wall}`)),
      point: points[i]!,
      outward: outwards[i]!,
    })),
    pattern: { kind: 'points' },
  }))
}

/** The first member with its wall: `THRU` goes through one wall, as the others stand opposite or beside it. */
function endOf(shop: Workshop, feature: HoleFeature, { id, side, first }: Ring): Member | undefined {
  const { depth } = feature
  if (depth.kind === 'through' && !depth.oneWall && openingsAlong(shop, wayIn(first.point, side)).length === 0) {
    shop.must(
      'nothing-behind',
      depth.span,
      `${id} meets no bore: holes THRU a solid round would run into one another at the axis.`,
      'a depth; the bore, stated above this line; or one statement a direction, each THRU',
    )
    return undefined
  }
  const oneWall = depth.kind === 'through' ? { ...depth, oneWall: depth.oneWall ?? { span: depth.span } } : depth
  return throughWalls(shop, { ...feature, depth: oneWall }, side, [first], id)?.[0]
}

/** Neighbours must leave material between them where they are nearest one another: at the bore or at their bottom. */
function standApart(shop: Workshop, feature: HoleFeature, ring: Ring, shape: HoleShape, { through, point }: Member) {
  const n = feature.count.value
  const { axis } = shop.contour!
  const out = outwardOf[ring.side]
  const outside = dot(sub(point, scale(unitAxis[axis], point[axis])), out)
  const chord = (radius: number) => 2 * radius * Math.sin(Math.PI / n)
  const widest = Math.max(shape.r, shape.bore?.r ?? 0, shape.sink?.r ?? 0)
  const bottom = outside - Math.min(through, shape.depth)
  // side walls of two that are n-th of a turn apart meet where half their angle reaches r
  const nearest = n === 2 ? outside + bottom : chord(Math.max(0, bottom))
  const apart = Math.min(nearest, chord(outside) - 2 * (widest - shape.r))
  if (n === 2 ? bottom > 1e-9 : apart > 2 * shape.r + 1e-6) return true
  const { unit } = feature.diameter
  shop.must(
    'holes-overlap',
    feature.count.span,
    `${n} holes ⌀${feature.diameter.text} do not stand clear of one another round ${ring.id}: their middles are ${inUnit(Math.max(0, apart), unit)} apart where they are nearest.`,
    'fewer holes, smaller ones, or a smaller depth',
  )
  return false
}

/** Marks a hole of the ring that cuts an earlier one of the same direction; notes those that run along an axis of space. */
function overlapsOther(
  shop: Workshop,
  feature: HoleFeature,
  id: string,
  points: readonly Vec3[],
  outwards: readonly Vec3[],
  r: number,
  deep: number,
): boolean {
  return points.some((at, i) => {
    const side = SIDES.find((s) => dot(outwardOf[s], outwards[i]!) > 1 - 1e-12)
    if (!side) return false
    const k = axisOf[side]
    const far = along(at, outwards[i]!, -deep)[k]
    const reach = [Math.min(at[k], far), Math.max(at[k], far)] as const
    const clash = overlapping(shop, `${id}.${i + 1}`, k, [at], r, [reach])
    if (!clash) return false
    const apart = inUnit(clash.apart, feature.diameter.unit)
    const text = `${id}.${i + 1} overlaps ${clash.other}: their centres are ${apart} apart. All of ${id} are left out.`
    shop.must('holes-overlap', feature.span, text, 'another place along the axis')
    return true
  })
}
