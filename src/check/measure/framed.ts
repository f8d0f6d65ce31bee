import type { FrameStatement } from '../../brief/geometric.ts'
import type { Mark } from '../../brief/mark.ts'
import type { Size } from '../../brief/size.ts'
import type { NamedFeature } from '../../part/named-feature.ts'
import { framedSizes } from '../../sizes/geometric/basic-sizes.ts'
import { borderOf } from '../../sizes/geometric/border.ts'
import { checkFrame } from '../../tolerance/frame/check-frame.ts'
import type { Finding, Subject } from '../rule.ts'
import type { Deviations } from './deviation.ts'
import { once } from './once.ts'

type Held = Pick<Subject, 'brief' | 'part'>

/** A frame of the brief with the feature that it holds, where the part has it. */
export interface HeldFrame {
  readonly said: FrameStatement
  readonly feature: NamedFeature | undefined
}

export const heldFrames = ({ brief, part }: Held): HeldFrame[] =>
  (brief.frames ?? []).map((said, i) => ({ said, feature: part.named?.frames[i] }))

/** The drawing's datums: letter, and the feature they are taken from. */
export function datumsOf({
  brief,
  part,
}: Held): { readonly letter: string; readonly feature: NamedFeature | undefined }[] {
  return (brief.datums ?? []).map(({ letter }, i) => ({ letter: letter.text, feature: part.named?.datums[i] }))
}

const judged = once((part: Subject['part']): readonly Mark[] => {
  const { brief } = part
  const datums = datumsOf({ brief, part }).map(({ letter, feature }) => ({
    letter,
    ...(feature ? { featureOfSize: feature.kind !== 'plane' } : {}),
  }))
  return heldFrames({ brief, part }).flatMap(({ said, feature }) =>
    checkFrame(said.frame, {
      practice: brief.header.practice,
      datums,
      ...(feature ? { feature: { ofSize: feature.kind !== 'plane', round: feature.kind === 'round' } } : {}),
    }).map((mark) => (feature?.feature ? { ...mark, feature: feature.feature } : mark)),
  )
})

/** What the grammar of frames finds under the name of one rule. */
export function frameFindings({ part }: Held, rule: string): Finding[] {
  return judged(part).flatMap(({ rule: name, source: _source, ...found }) => (name === rule ? [found] : []))
}

/** Half the zone to either side, mm, for a size that a frame makes basic; the whole one between two sides of a border that a profile goes all around. Undefined for others. */
export function framedDeviations(part: Subject['part'], size: Size): Deviations | undefined {
  const framed = size.tolerance ? undefined : framedSizes(part).find((f) => f.size === size)
  if (!framed) return undefined
  const zone = framed.by.frame.rows[0]!.value.value * (part.brief.header.units === 'inch' ? 25.4 : 1)
  const either = framed.by.allAround && framed.chosen.kind !== 'radius' ? zone : zone / 2
  return { upper: either, lower: -either }
}

/** The frames that locate their feature by basic sizes: its faces, and the width of the zone in mm. */
export function framedBy(
  part: Subject['part'],
): (HeldFrame & { readonly faces: readonly number[]; readonly id: string; readonly zone: number })[] {
  const located = new Set(framedSizes(part).flatMap((f) => (f.size.tolerance ? [] : [f.by])))
  return heldFrames({ brief: part.brief, part }).flatMap(({ said, feature }) => {
    if (!feature || !located.has(said)) return []
    const zone = said.frame.rows[0]!.value.value * (part.brief.header.units === 'inch' ? 25.4 : 1)
    const border = borderOf(part, said, feature)
    return [{ said, feature, faces: border ?? feature.faces, id: feature.id, zone }]
  })
}
