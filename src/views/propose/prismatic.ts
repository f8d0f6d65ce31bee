import type { Side } from '../../brief/brief.ts'
import type { Size } from '../../brief/size.ts'
import { dot } from '../../geometry/vec3.ts'
import type { Part } from '../../part/part.ts'
import { type Axis, axisOf, FRAMES } from '../frames.ts'
import { isBlind } from './blind.ts'
import { judgeFront } from './front.ts'
import type { Sight, ViewPlan } from './plan.ts'
import { sideView } from './side-view.ts'
import { nameOf, type Want, wantsOf } from './wants.ts'
import { capital, listed } from './words.ts'

/** Views of a part that is not turned: one for a flat part, else the front and the fewest others. */
export function proposePrismatic(part: Part, sight: Sight): ViewPlan {
  const wants = wantsOf(part)
  return proposeFlat(part, wants) ?? proposeSeveral(part, wants, sight)
}

function proposeFlat(part: Part, wants: readonly Want[]): ViewPlan | undefined {
  const { flat } = part
  if (!flat || !saidInNote(flat.thickness)) return undefined
  const side = facedSide(part, flat.side)
  const axis = axisOf[side]
  if (isLong(part, axis)) return undefined
  if (!wants.every((w) => w.along.length === 0 || w.along.includes(axis))) return undefined
  return {
    views: [{ kind: 'principal', side }],
    reasons: [`One view: the part is flat, every feature shows true from the ${side}, the thickness stands in a note.`],
    thicknessNote: thicknessNote(part, flat.thickness),
  }
}

/** A thickness with a tolerance of its own is measured: it stands at an edge view and not in a note. */
const saidInNote = ({ tolerance }: Size): boolean => tolerance === undefined || tolerance.kind === 'stock'

/** Longer along the axis than its profile is wide: a bar of that profile, whose length needs a view (common practice, no source). */
function isLong(part: Part, axis: Axis): boolean {
  const { min, max } = part.body.box
  const extent = { x: max[0] - min[0], y: max[1] - min[1], z: max[2] - min[2] }
  const across = (['x', 'y', 'z'] as const).filter((a) => a !== axis)
  return extent[axis] > Math.min(...across.map((a) => extent[a])) + 1e-6
}

/** The large face's side as the brief names it; of two that show the same the front or the top. */
function facedSide(part: Part, side: Side): Side {
  const stock = part.brief.stock
  if (stock && 'face' in stock && axisOf[stock.face] === axisOf[side]) return stock.face
  return side === 'rear' ? 'front' : side === 'bottom' ? 'top' : side
}

/** `.188 THK`, `1/4 STK` (ASME custom); `t = 8` (ISO 129-1, from memory). */
function thicknessNote(part: Part, size: Size): string {
  const digits = `${size.text}${size.unitTyped ? ` ${size.unit}` : ''}`
  if (part.brief.header.practice === 'ISO') return `t = ${digits}`
  return `${digits} ${size.tolerance?.kind === 'stock' ? 'STK' : 'THK'}`
}

function proposeSeveral(part: Part, wants: readonly Want[], sight: Sight): ViewPlan {
  const candidates: readonly (readonly Axis[])[] = [
    ['y', 'z'],
    ['y', 'x'],
    ['y', 'x', 'z'],
  ]
  const serves = (axes: readonly Axis[]) =>
    wants.every((w) => w.along.length === 0 || w.along.some((a) => axes.includes(a)))
  const fitting = candidates.filter(serves)
  const fewest = Math.min(...fitting.map((c) => c.length))
  const best = fitting.filter((c) => c.length === fewest)
  const sideways = sideView(part, sight)
  const sidesOf = (axes: readonly Axis[]): Side[] => [
    'front',
    ...(axes.includes('z') ? (['top'] as const) : []),
    ...(axes.includes('x') ? [sideways.side] : []),
  ]
  const reasons: string[] = []
  let chosen = sidesOf(best[0]!)
  if (best.length > 1) {
    const [top, side] = [sight.hiddenLength('top'), sight.hiddenLength(sideways.side)]
    if (side < top - 1e-6) chosen = sidesOf(['y', 'x'])
    reasons.push(`Two views tell the part; the ${chosen[1]} is the one with fewer hidden lines.`)
  }
  for (const side of chosen.slice(1)) {
    const shows = wants.filter((w) => w.along.length > 0 && w.along.every((a) => a === axisOf[side])).map((w) => w.what)
    const why = shows.length > 0 ? `shows ${listed(shows)} in true shape` : 'gives the third extent'
    reasons.push(`${capital(side)}: ${why}.`)
  }
  if (chosen.includes(sideways.side)) reasons.push(sideways.reason)
  const more = unseen(part, chosen, sight)
  reasons.push(...more.map(({ side, what }) => `${capital(side)}: shows ${listed(what)}, hidden in the other views.`))
  const aside = fitting.find((c) => !c.includes('z'))
  const front = judgeFront(part, wants, sight, chosen, aside && sidesOf(aside))
  return {
    views: [...chosen, ...more.map((m) => m.side)].map((side) => ({ kind: 'principal', side })),
    reasons: [front.reason, ...reasons],
    marks: front.marks,
  }
}

const OPPOSITE: Readonly<Record<Side, Side>> = {
  front: 'rear',
  rear: 'front',
  top: 'bottom',
  bottom: 'top',
  left: 'right',
  right: 'left',
}

/** Sides from which alone a feature is seen that is worked from there: a view each, for no size stands at a hidden line. */
function unseen(part: Part, chosen: readonly Side[], sight: Sight): { readonly side: Side; readonly what: string[] }[] {
  return chosen.flatMap((side) => {
    const behind = OPPOSITE[side]
    if (chosen.includes(behind)) return []
    const { toViewer } = FRAMES[behind]
    const hidden = part.features.filter((f) => {
      if (!WORKED.has(f.kind) || dot(f.outward, toViewer) < 1 - 1e-9) return false
      const faces = f.members.flatMap((m) => m.faces)
      if (faces.length === 0) return false
      // a hole that goes through is seen from both sides, its counterbore or countersink from one
      const sunk = faces.filter((id) => SUNK.test(part.body.faces[id]?.name ?? ''))
      if (sunk.length > 0 && !sight.showsAlone(side, sunk) && sight.showsAlone(behind, sunk)) return true
      if (sight.showsAlone(side, faces)) return false
      // where another like it stands opposite, their lines are one in both views
      return sight.showsAlone(behind, faces) || (isBlind(part, f) && sight.shows(behind, faces))
    })
    return hidden.length > 0 ? [{ side: behind, what: hidden.map(nameOf) }] : []
  })
}

/** Faces by which a hole is wider at the side that it is worked from. */
const SUNK = / (?:counterbore wall|countersink)$/

/** Features that show their true shape from the side they are worked from. */
const WORKED: ReadonlySet<string> = new Set(['hole', 'slot', 'pocket', 'boss', 'bore', 'keyseat'])
