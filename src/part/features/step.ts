import type { Side, StepFeature } from '../../brief/brief.ts'
import type { Size } from '../../brief/size.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { box } from '../../kernel/primitives.ts'
import { findOrigin, markUnknown, plainName } from '../find-name.ts'
import { limitsAlong } from '../place/ground.ts'
import { addFace } from '../prism-stock.ts'
import { cornersOf, stepCorner } from '../profile-edit.ts'
import { addRelief, rectangle } from '../relief.ts'
import { axisOf, faceAxes, outwardOf, SIDES, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'

/** One cut of a step: so far in from a side. */
interface Cut {
  readonly side: Side
  readonly size: Size
  readonly from: string
  readonly at: number
  readonly axis: 0 | 1 | 2
}

/** Material off along a whole edge, measured from the edge's two faces. */
export function addStep(shop: Workshop, feature: StepFeature): void {
  if (shop.contour) {
    shop.must(
      'wrong-stock',
      feature.span,
      'A step is cut on flat stock; turned stock has steps of its own.',
      'a turned step',
    )
    return
  }
  const id = shop.nameOf('step', feature)
  const words = plainName(feature.edge.text).split(' ')
  const sides = SIDES.filter((s) => words.includes(s))
  const [a, b] = sides
  if (!a || !b || axisOf[a] === axisOf[b]) {
    markUnknown(shop, feature.edge, 'edge', ['top left', 'top right', 'front left', 'front right'])
    return
  }
  const cuts = readCuts(shop, feature, [a, b])
  if (!cuts) return
  const along = (3 - axisOf[a] - axisOf[b]) as 0 | 1 | 2
  const [low, high] = limitsAlong(shop, along) ?? []
  if (!low || !high) return
  const name = (side: Side) => `${id} ${side}`
  const min: [number, number, number] = [0, 0, 0]
  const max: [number, number, number] = [0, 0, 0]
  min[along] = low.at - 1
  max[along] = high.at + 1
  for (const c of cuts) {
    const out = outwardOf[c.side][c.axis]
    const [p, q] = [c.at + out, c.at - out * c.size.mm]
    min[c.axis] = Math.min(p, q)
    max[c.axis] = Math.max(p, q)
  }
  const [from, to]: [Vec3, Vec3] = [min, max]
  for (const axis of [0, 1, 2] as const) {
    const { across, up } = faceAxes(axis)
    const border = rectangle([from[across], from[up]], [to[across], to[up]])
    addRelief(shop, id, axis, border, [from[axis], to[axis]])
  }
  if (!inProfileWorked(shop, cuts, name)) {
    shop.steps.push({ kind: 'cut', feature: id, span: feature.span, make: (oc) => box(oc, from, to) })
    for (const c of cuts) nameStepFace(shop, name(c.side), c, from, to)
  }
  for (const c of cuts) {
    const other = cuts.find((o) => o !== c)!
    addStepFace(shop, name(c.side), c, other, [low.at, high.at])
    shop.choose({
      kind: 'distance',
      size: c.size,
      from: c.from,
      to: name(c.side),
      direction: unitAxis[c.axis],
      span: c.size.span,
      group: id,
    })
  }
  const point: [number, number, number] = [0, 0, 0]
  point[along] = (low.at + high.at) / 2
  for (const c of cuts) point[c.axis] = c.at
  const outward = outwardOf[cuts[1]!.side]
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'step',
    outward,
    members: [{ id, axes: [], faces: faces(...cuts.map((c) => name(c.side))), point }],
    pattern: { kind: 'single' },
  }))
}

function readCuts(shop: Workshop, feature: StepFeature, sides: readonly [Side, Side]): [Cut, Cut] | undefined {
  const found: Cut[] = []
  for (const side of sides) {
    const axis = axisOf[side]
    let missing = true
    for (const cut of feature.cuts) {
      if (!plainName(cut.from.text).split(' ').includes(side)) continue
      missing = false
      const origin = findOrigin(shop, cut.from, [axis])
      if (!origin) return undefined
      const limits = limitsAlong(shop, axis)
      if (!(cut.size.mm > 0)) {
        shop.must('size-zero', cut.size.span, 'A step needs two sizes greater than zero.', 'a size greater than zero')
        return undefined
      }
      if (limits && cut.size.mm >= limits[1].at - limits[0].at - 1e-9) {
        shop.must('too-deep', cut.size.span, `A step ${cut.size.text} from ${side} leaves nothing.`, 'a smaller step')
        return undefined
      }
      found.push({ side, size: cut.size, from: origin.id, at: origin.at, axis })
      break
    }
    if (missing) {
      shop.must(
        'size-missing',
        feature.span,
        `How far from ${side} does the step go?`,
        `a size from ${sides[0]}, and a size from ${sides[1]}`,
      )
      return undefined
    }
  }
  const [a, b] = found
  return a && b ? [a, b] : undefined
}

/** Cuts the step in the flat profile where the edge is one of its corners. */
function inProfileWorked(shop: Workshop, cuts: readonly [Cut, Cut], name: (side: Side) => string): boolean {
  const { profile } = shop
  if (!profile || shop.legsWorked() || shop.steps.some((s) => s.kind !== 'cut')) return false
  const corner = cornersOf(profile.curves).find(
    ({ faces }) => faces.includes(cuts[0].from) && faces.includes(cuts[1].from),
  )
  if (!corner) return false
  // nothing else of the profile may be in the way
  const reach = (level: 0 | 1) => {
    const axis = level === 0 ? faceAxes(profile.axis).across : faceAxes(profile.axis).up
    return cuts.find((c) => c.axis === axis)!.size.mm
  }
  const inWay = profile.holes.some((hole) =>
    hole.some(({ curve }) => {
      const [c, r] = curve.kind === 'arc' ? [curve.c, curve.r] : curve.kind === 'line' ? [curve.a, 0] : [corner.at, 0]
      return Math.abs(c[0] - corner.at[0]) - r < reach(0) && Math.abs(c[1] - corner.at[1]) - r < reach(1)
    }),
  )
  if (inWay) return false
  const sizeFrom = (face: string) => cuts.find((c) => c.from === face)!.size.mm
  const parallel = (face: string) => name(cuts.find((c) => c.from === face)!.side)
  const result = stepCorner(profile.curves, corner.at, sizeFrom, parallel)
  if (!result || !('curves' in result)) return false
  profile.curves = result.curves
  return true
}

function levelOf(c: Cut): number {
  return c.at - outwardOf[c.side][c.axis] * c.size.mm
}

function nameStepFace(shop: Workshop, name: string, c: Cut, min: Vec3, max: Vec3): void {
  const origin: [number, number, number] = [0, 0, 0]
  origin[c.axis] = levelOf(c)
  const { across, up } = faceAxes(c.axis)
  const axes = { origin, x: unitAxis[across], y: unitAxis[up], z: unitAxis[c.axis] }
  shop.surfaces.push({ name, surface: { kind: 'plane', axes }, within: { min, max } })
}

/** The new face can be worked and measured from. */
function addStepFace(shop: Workshop, name: string, c: Cut, other: Cut, along: readonly [number, number]): void {
  const { across, up } = faceAxes(c.axis)
  const limits = limitsAlong(shop, c.axis)
  const bounds = (axis: 0 | 1 | 2): readonly [number, number] => {
    if (axis !== other.axis) return along
    const inner = levelOf(other)
    return [Math.min(inner, other.at), Math.max(inner, other.at)]
  }
  const [a, b] = [bounds(across), bounds(up)]
  const at = levelOf(c)
  const far = outwardOf[c.side][c.axis] > 0 ? limits![0].at : limits![1].at
  addFace(shop, { name, side: c.side, at, min: [a[0], b[0]], max: [a[1], b[1]], depth: Math.abs(at - far) })
}
