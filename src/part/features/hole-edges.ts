import type { EdgeFeature, Name } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { along, scale } from '../../geometry/vec3.ts'
import { squareTo } from '../../kernel/evaluate3.ts'
import { turned } from '../../kernel/primitives.ts'
import { bothCalled, plainName } from '../find-name.ts'
import { fitsFace } from '../fit.ts'
import type { Mouth } from '../model.ts'
import { circleOn, columnUnder } from '../relief.ts'
import { axisOf, outwardOf, SIDES } from '../sides.ts'
import type { Workshop } from '../workshop.ts'
import { inUnit } from './hole-shape.ts'

/**
 * The circles that a name such as `hole A edges`, `hole 1 front edge`, `bore edges` means: where holes on flat faces
 * open, at both ends of one that goes through. Undefined: the name is not about holes.
 */
export function findMouths(shop: Workshop, name: Name): readonly Mouth[] | undefined {
  const text = plainName(name.text)
  const said = /^(hole|bore)s?( .*)?$/.exec(text)
  const rest = said?.[2]?.trim().split(' ') ?? []
  if (!said || !/^edges?$/.test(rest.at(-1) ?? '')) return undefined
  const words = rest.slice(0, -1).filter((w) => w !== 'face')
  const side = SIDES.find((s) => words.includes(s))
  const own = words.filter((w) => w !== side).join(' ')
  const named = shop.mouths.filter((m) =>
    own === '' ? said[1] !== 'bore' || m.isBore : bothCalled(m.hole.toLowerCase()).includes(`hole ${own}`),
  )
  const holes = new Set(named.map((m) => m.hole))
  // without a label or number only where one hole can be meant
  if (holes.size !== 1) return undefined
  const found = side ? named.filter((m) => m.out === outwardOf[side]) : named
  return found.length > 0 ? found : undefined
}

/** Names of edges of holes worth offering. */
export const mouthWords = (shop: Workshop): string[] => [...new Set(shop.mouths.map((m) => `${m.hole} edges`))]

/**
 * Chamfers at the mouths of holes: the leg along the hole's axis, the angle to it, as at a turned edge. True where the
 * statement was about holes, made or marked.
 */
export function addMouthWork(shop: Workshop, feature: EdgeFeature, backs: readonly [number, number]): boolean {
  const found = feature.edges.map((name) => findMouths(shop, name))
  if (!found.some((m) => m)) return false
  const mouths = [...new Set(found.flatMap((m) => m ?? []))]
  if (feature.kind !== 'chamfer' || found.some((m) => !m)) {
    const text =
      feature.kind === 'chamfer'
        ? 'Edges of holes and edges of the part are two statements.'
        : `The edge of a hole is chamfered; a ${feature.kind} there is not made.`
    shop.must('cannot-build', feature.span, text, `chamfer ${mouths[0]!.hole} edges: 1 × 45°`)
    return true
  }
  const [axial, radial] = backs
  const shallow = mouths.find((m) => axial >= m.deep - 1e-9)
  if (shallow) {
    const text = `The chamfer ${feature.size.text} has no room: ${shallow.hole} is ${inUnit(shallow.deep, feature.size.unit)} deep there.`
    shop.must('radius-too-large', feature.size.span, text, `less than ${inUnit(shallow.deep, feature.size.unit)}`)
    return true
  }
  if (mouths.some((m) => shop.mouthWork.has(m))) {
    shop.must('worked-twice', feature.span, 'This edge is chamfered already.', 'one statement for one edge')
    return true
  }
  const id = shop.nameOf('chamfer', feature)
  if (mouths.some((m) => !m.isFar && !fitsFace(shop, m.face, [m.at], m.r + radial, feature.span, id))) return true
  const places = mouths.map((m) => openAt(shop, m, m.r + radial * (1 + CLEAR)))
  const crossed = places.find((p) => typeof p === 'string')
  if (typeof crossed === 'string') {
    const text = `The chamfer would stand half in ${crossed}.`
    shop.must('two-levels', feature.span, text, `a place clear of the wall of ${crossed}, or a smaller chamfer`)
    return true
  }
  if (feature.count.value !== 1 && feature.count.value !== mouths.length) {
    const text = `${feature.count.value}X is written, but ${feature.edges.map((e) => e.text).join(' and ')} are ${mouths.length}.`
    shop.mark('look again', 'count-differs', feature.count.span, text, `${mouths.length}X`)
  }
  const names = mouths.map((_, i) => (mouths.length > 1 ? `${id}.${i + 1}` : id))
  mouths.forEach((mouth, i) => {
    shop.mouthWork.add(mouth)
    sink(shop, id, names[i]!, feature, { ...mouth, at: places[i] as Vec3 }, axial, radial)
  })
  shop.choose((faces) => ({
    kind: 'chamfer',
    size: feature.size,
    ...(feature.angle ? { angle: feature.angle } : {}),
    ...(feature.leg ? { leg: feature.leg } : {}),
    edges: [],
    faces: faces(...names),
    count: names.filter((name) => faces(name).length > 0).length || mouths.length,
    span: feature.size.span,
    group: id,
  }))
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'chamfer',
    outward: mouths[0]!.out,
    members: mouths.map((m, i) => ({ id: names[i]!, axes: [], faces: faces(names[i]!), point: m.at })),
  }))
  return true
}

/** How far the cutter begins above the mouth, as a share of the leg. */
const CLEAR = 0.25

/** Where the hole opens now: what was worked before may have moved it. The name of the feature whose wall is in the way, if any. */
function openAt(shop: Workshop, { at, face, isFar, isPlain }: Mouth, r: number): Vec3 | string {
  if (!isPlain) return at
  const column = columnUnder(shop.reliefs, face, circleOn(face, at, r))
  if (column.crossed) return column.crossed
  const axis = axisOf[face.side]
  const moved: [number, number, number] = [...at]
  moved[axis] = isFar ? column.at - outwardOf[face.side][axis] * column.thick : column.at
  return moved
}

/** Cuts one mouth wider by a cone. */
function sink(
  shop: Workshop,
  id: string,
  name: string,
  feature: EdgeFeature,
  { at, out, r }: Mouth,
  axial: number,
  radial: number,
): void {
  const inward = scale(out, -1)
  const clear = CLEAR * axial
  const wide = r + radial
  shop.steps.push({
    kind: 'cut',
    feature: id,
    span: feature.span,
    make: (oc) =>
      turned(oc, at, inward, [
        [-clear, wide + (radial * clear) / axial],
        [axial, r],
      ]),
  })
  const x = squareTo(out)
  const corner = (by: number, deep: number): Vec3 => {
    const p = along(at, inward, deep)
    return [p[0] + by, p[1] + by, p[2] + by]
  }
  const [a, b] = [corner(0, 0), corner(0, axial)]
  const reach = wide + 1e-6
  shop.surfaces.push({
    name,
    surface: { kind: 'cone', axes: { origin: at, x, y: x, z: out }, r: wide, halfAngle: Math.atan(radial / axial) },
    within: {
      min: [Math.min(a[0], b[0]) - reach, Math.min(a[1], b[1]) - reach, Math.min(a[2], b[2]) - reach],
      max: [Math.max(a[0], b[0]) + reach, Math.max(a[1], b[1]) + reach, Math.max(a[2], b[2]) + reach],
    },
  })
}
