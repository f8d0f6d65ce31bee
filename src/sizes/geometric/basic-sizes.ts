import { characteristics } from '../../brief/frame/frame.ts'
import type { FrameStatement } from '../../brief/geometric.ts'
import type { Angle, Size } from '../../brief/size.ts'
import type { NamedFeature } from '../../part/named-feature.ts'
import type { ChosenSize, Part } from '../../part/part.ts'
import { borderOf, shapesBorder } from './border.ts'

/** A number that a frame makes theoretically exact, and the frame. */
export interface BasicSize {
  readonly size: Size | Angle
  readonly by: FrameStatement
  /** What the size reaches. */
  readonly chosen: ChosenSize
}

type Framed = Pick<Part, 'brief' | 'named' | 'chosen' | 'body' | 'features' | 'data'>

/**
 * The sizes that frames make theoretically exact: those that locate a feature held in position, that shape or locate
 * a feature held by a profile to datums, that shape the border a profile goes all around, and the angle of a face held in
 * angularity (ASME Y14.5-2018 7.4.1, 11.3 and clause 11, all around; ISO 1101:2017 clause 11, from memory).
 */
export function framedSizes(part: Framed): BasicSize[] {
  return (part.brief.frames ?? []).flatMap((by, i) => {
    const feature = part.named?.frames[i]
    if (!feature) return []
    const border = borderOf(part, by, feature)
    const held = (c: ChosenSize) => (border ? shapesBorder(part, border, feature.direction, c) : isHeld(by, feature, c))
    return part.chosen.filter(held).map((chosen) => ({ size: numberOf(chosen), by, chosen }))
  })
}

/** Those of them that carry no tolerance of their own, and so stand boxed. */
export function basicSizes(part: Framed): ReadonlySet<Size | Angle> {
  return new Set(framedSizes(part).flatMap(({ size }) => (size.tolerance ? [] : [size])))
}

const numberOf = (c: ChosenSize): Size | Angle => (c.kind === 'angle' ? c.angle : c.size)

function isHeld({ frame }: FrameStatement, feature: NamedFeature, chosen: ChosenSize): boolean {
  const { family } = characteristics[frame.characteristic]
  const own = feature.feature !== undefined && chosen.group === feature.feature
  const reaches = 'from' in chosen && (chosen.from === feature.id || chosen.to === feature.id)
  if (frame.characteristic === 'position') return own && locates(chosen)
  if (family === 'profile') return frame.rows.some((r) => r.datums.length > 0) && (own || reaches)
  if (frame.characteristic === 'angularity') return chosen.kind === 'angle' && (own || reaches)
  return false
}

function locates(chosen: ChosenSize): boolean {
  if (chosen.kind === 'angle') return chosen.role === undefined
  return chosen.kind === 'distance' || chosen.kind === 'pitch' || chosen.kind === 'bolt circle'
}
