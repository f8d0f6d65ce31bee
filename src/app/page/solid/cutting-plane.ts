import type { Side } from '../../../brief/brief.ts'
import type { Unit } from '../../../brief/size.ts'
import type { Vec3 } from '../../../geometry/vec.ts'
import type { Frame } from '../../../views/view.ts'
import type { HandAxis, HandCut } from '../engine/messages.ts'

/** A cutting plane brought in from a side of the part. */
export interface PlaneInHand {
  readonly side: Side
  /** mm from the part's outermost point on that side; 0: it cuts nothing. */
  readonly depth: number
}

interface Box {
  readonly min: Vec3
  readonly max: Vec3
}

const axisOf = (side: Side): 0 | 1 | 2 =>
  side === 'left' || side === 'right' ? 0 : side === 'top' || side === 'bottom' ? 2 : 1
const signOf = (side: Side): 1 | -1 => (side === 'right' || side === 'rear' || side === 'top' ? 1 : -1)

/** How far the plane can be brought in, mm. */
export const depthOf = (side: Side, { min, max }: Box): number => max[axisOf(side)] - min[axisOf(side)]

/** Where the plane stands along its direction, mm. */
export function standingAt({ side, depth }: PlaneInHand, { min, max }: Box): number {
  const k = axisOf(side)
  return signOf(side) > 0 ? max[k] - depth : min[k] + depth
}

/** What is cut; undefined where the plane does not reach the material, or has gone through all of it. */
export function cutBy(plane: PlaneInHand, box: Box): HandCut | undefined {
  if (plane.depth <= 0 || plane.depth >= depthOf(plane.side, box)) return undefined
  return { side: plane.side, at: standingAt(plane, box) }
}

/** Brought to a depth within the part. */
export function broughtTo(plane: PlaneInHand, depth: number, box: Box): PlaneInHand {
  return { ...plane, depth: Math.min(depthOf(plane.side, box), Math.max(0, depth)) }
}

/** The next way to lay the plane: of the sides that face the viewer, in turn. It cuts nothing at first. */
export function laidAnew({ side }: PlaneInHand, { toViewer }: Frame): PlaneInHand {
  const sides: Side[] = [
    toViewer[1] > 0 ? 'rear' : 'front',
    toViewer[0] < 0 ? 'left' : 'right',
    toViewer[2] < 0 ? 'bottom' : 'top',
  ]
  const now = sides.findIndex((s) => axisOf(s) === axisOf(side))
  return { side: sides[(now + 1) % 3]!, depth: 0 }
}

/** Depths at which the plane goes through an axis or the middle of the part, each with its name; outermost first. */
export function stations(
  side: Side,
  box: Box,
  axes: readonly HandAxis[],
): readonly { readonly depth: number; readonly name: string }[] {
  const k = axisOf(side)
  const edge = signOf(side) > 0 ? box.max[k] : box.min[k]
  const depth = (at: number) => Math.abs(edge - at)
  const found = axes.flatMap(({ words, point, direction }) =>
    Math.abs(direction[k]) < 1e-9 ? [{ depth: depth(point[k]), name: words }] : [],
  )
  const middle = { depth: depthOf(side, box) / 2, name: 'the middle' }
  const all = [...found, middle].sort((a, b) => a.depth - b.depth)
  // One place, one station; an axis is named before the middle.
  const out: { depth: number; name: string }[] = []
  for (const one of all) {
    const last = out.at(-1)
    if (!last || one.depth - last.depth > 1e-6) out.push({ ...one })
    else if (last.name === middle.name) last.name = one.name
    else if (one.name !== middle.name && !last.name.split(' and ').includes(one.name)) last.name += ` and ${one.name}`
  }
  return out.filter((s) => s.depth > 1e-6 && s.depth < depthOf(side, box) - 1e-6)
}

/** A round step for an arrow: about a fiftieth of the way, in the units of the sheet; mm. */
export function stepOf(side: Side, box: Box, unit: Unit): number {
  const mm = unit === 'inch' ? 25.4 : 1
  const rough = depthOf(side, box) / 50 / mm
  const power = 10 ** Math.floor(Math.log10(rough))
  return mm * power * ([1, 2, 5, 10].find((m) => m * power >= rough * 0.999) ?? 10)
}

const FROM: Readonly<Record<Side, string>> = {
  front: 'behind the front',
  rear: 'before the rear',
  left: 'from the left',
  right: 'from the right',
  top: 'below the top',
  bottom: 'above the bottom',
}

/** What the plane does, for the reader. */
export function planeWords(plane: PlaneInHand, box: Box, axes: readonly HandAxis[], unit: Unit): string {
  const { side, depth } = plane
  if (!cutBy(plane, box)) return `Not cut; A–A lies at the ${side}`
  const at = stations(side, box, axes).find((s) => Math.abs(s.depth - depth) < 1e-6)
  const through = at ? ` through ${at.name},` : ''
  return `Cut${through} ${length(depth, unit)} ${FROM[side]}`
}

/** Two decimals of an inch without a leading zero, one of a millimetre: for looking, no size of the part. */
function length(mm: number, unit: Unit): string {
  return unit === 'inch' ? `${(mm / 25.4).toFixed(2).replace(/^0\./, '.')} in` : `${Number(mm.toFixed(1))} mm`
}
