import { type Characteristic, characteristics, type FrameRow } from '../../brief/frame/frame.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { add, distance, scale } from '../../geometry/vec3.ts'
import type { NamedFeature } from '../../part/named-feature.ts'
import type { Part } from '../../part/part.ts'
import type { Subject } from '../rule.ts'
import { type Element, elementsOf, footOn } from './elements.ts'
import { datumsOf, type HeldFrame, heldFrames } from './framed.ts'
import { type Free, freeOf, heldBy, turnAbout, turnsOf } from './freedoms.ts'

type Held = Pick<Subject, 'brief' | 'part'>

/** A datum compartment with the elements that its letters stand for. */
export interface DatumElements {
  readonly name: string
  readonly features: readonly NamedFeature[]
  readonly elements: readonly Element[]
}

/** The datums of a row in their order; undefined where a letter stands at no feature of the part. */
function datumElements(subject: Held, row: FrameRow): DatumElements[] | undefined {
  const known = datumsOf(subject)
  const all = row.datums.map(({ letters }): DatumElements | undefined => {
    const features = letters.flatMap((l) => known.find((d) => d.letter === l)?.feature ?? [])
    if (features.length < letters.length) return undefined
    const elements = features.flatMap((f) => elementsOf(subject.part, f))
    return elements.length === 0 ? undefined : { name: letters.join('-'), features, elements }
  })
  return all.every((d) => d !== undefined) ? all : undefined
}

/** A frame whose datums can be judged: its feature's elements and its first row's datums. */
export interface Located {
  readonly held: HeldFrame & { readonly feature: NamedFeature }
  readonly row: FrameRow
  readonly elements: readonly Element[]
  readonly datums: readonly DatumElements[]
}

/** Every row but the lower ones of composite frames, of frames whose characteristic passes. */
export function locatedBy(subject: Held, wanted: (characteristic: Characteristic) => boolean): Located[] {
  return heldFrames(subject).flatMap(({ said, feature }): Located[] => {
    const { frame } = said
    if (!feature || !wanted(frame.characteristic)) return []
    const elements = elementsOf(subject.part, feature)
    if (elements.length === 0) return []
    const rows = frame.stacking === 'composite' ? frame.rows.slice(0, 1) : frame.rows
    return rows.flatMap((row): Located[] => {
      const datums = datumElements(subject, row)
      return datums && datums.length > 0 ? [{ held: { said, feature }, row, elements, datums }] : []
    })
  })
}

export const isLocation = (c: Characteristic): boolean =>
  characteristics[c].family === 'location' || characteristics[c].family === 'runout'

/** Length that turns are weighed by, mm: half the part's longest way. */
export const sizeOf = ({ body }: Pick<Part, 'body'>): number => Math.max(1, distance(body.box.min, body.box.max) / 2)

/**
 * What the datums of a row leave free that its zones need. A round part may turn about its own axis: nothing on it says
 * where that turn begins.
 */
export function leftFree(part: Part, { held, row, elements, datums }: Located): ReturnType<typeof freeOf> {
  const size = sizeOf(part)
  const { characteristic } = held.said.frame
  const flat = held.feature.kind === 'plane'
  // A runout of a flat face needs it square to the axis only; a zone of width on a round says no direction of its own.
  const needed = elements.flatMap((e) =>
    flat && characteristics[characteristic].family === 'runout' ? turnsOf(e) : heldBy(e, size),
  )
  if (held.feature.kind === 'round' && row.zone === 'width' && characteristics[characteristic].family !== 'runout')
    return { all: true, free: [] }
  const all = datums.flatMap((d) => d.elements)
  const spin = part.axis ? [turnAbout(part.axis.direction)] : []
  return freeOf(needed, [...all.flatMap((e) => heldBy(e, size)), ...spin], centreOf(part, all), size)
}

/** On a datum axis where there is one, since the part turns about it; else the part's middle. */
function centreOf({ body }: Part, datums: readonly Element[]): Vec3 {
  const middle = scale(add(body.box.min, body.box.max), 0.5)
  const axis = datums.find((d) => d.kind === 'axis')
  return axis ? footOn(axis, middle) : middle
}

/** `moves left-right and turns`: a motion in words. */
export function motionWords(free: readonly Free[]): string {
  const shifts = free.filter((f) => f.kind === 'shift').map((f) => f.way)
  const turns = free.filter((f) => f.kind === 'turn').map((f) => f.way)
  const listed = (words: readonly string[]) => words.join(' and ')
  return listed([
    ...(shifts.length > 0 ? [`moving ${listed(shifts)}`] : []),
    ...(turns.length > 0 ? [`turning about the ${listed(turns)} direction`] : []),
  ])
}
