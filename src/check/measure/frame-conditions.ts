import { type Characteristic, characteristics } from '../../brief/frame/frame.ts'
import type { Num, Unit } from '../../brief/size.ts'
import {
  type Boundaries,
  bonusTolerance,
  boundaries,
  type TolerancedFeature,
} from '../../tolerance/fasteners/boundaries.ts'
import type { Subject } from '../rule.ts'
import { deviationsOf } from './deviation.ts'
import { type HeldFrame, heldFrames } from './framed.ts'

/** What one row of a frame comes to, mm. */
export interface FrameCondition {
  readonly feature: string
  readonly characteristic: Characteristic
  /** As stated. */
  readonly tolerance: number
  readonly zone: 'width' | 'diameter' | 'spherical diameter'
  readonly material: 'M' | 'L' | 'S'
  readonly datums: readonly string[]
  /** Limits of the feature's size; absent for surfaces, and where no tolerance is known. */
  readonly limits?: { readonly max: number; readonly min: number }
  /** The most that a departure from the material condition adds; 0 without one. */
  readonly bonus?: number
  readonly boundaries?: Boundaries
}

export const lengthOf = (num: Num, unit: Unit): number => num.value * (unit === 'inch' ? 25.4 : 1)

/** Every row of every frame with its bonus and the boundaries that follow, ASME Y14.5-2018 section 5, ISO 2692. */
export function frameConditions(subject: Pick<Subject, 'brief' | 'part'>): FrameCondition[] {
  return heldFrames(subject).flatMap((held) => conditionsOf(held, subject))
}

/** The most that the first row of a frame may gain by its feature's departure from the material condition, mm. */
export const bonusOf = (held: HeldFrame, subject: Pick<Subject, 'brief'>): number =>
  conditionsOf(held, subject)[0]?.bonus ?? 0

function conditionsOf({ said, feature }: HeldFrame, { brief }: Pick<Subject, 'brief'>): FrameCondition[] {
  const { header } = brief
  const limits = feature?.threaded ? undefined : feature?.size && limitsOf(feature.size)
  const { family } = characteristics[said.frame.characteristic]
  return said.frame.rows.map((row): FrameCondition => {
    // Boundaries are of axes and middle planes; the form and the runout of a surface have none.
    const derived = family === 'orientation' || family === 'location' || row.zone !== 'width' || row.material
    const toleranced: TolerancedFeature | undefined =
      !derived || !limits
        ? undefined
        : {
            of: feature?.internal ? 'hole' : 'shaft',
            ...limits,
            tolerance: lengthOf(row.value, header.units),
            modifier: row.material ?? 'S',
            ...(row.most ? { most: lengthOf(row.most, header.units) } : {}),
          }
    const least =
      toleranced && (toleranced.of === 'hole') === (toleranced.modifier === 'M') ? toleranced.max : toleranced?.min
    return {
      feature: feature?.id ?? said.of.text,
      characteristic: said.frame.characteristic,
      tolerance: lengthOf(row.value, header.units),
      zone: row.zone,
      material: row.material ?? 'S',
      datums: row.datums.map((d) => d.letters.join('-') + (d.material ? `(${d.material})` : '')),
      ...(limits ? { limits } : {}),
      ...(toleranced && least !== undefined
        ? { bonus: bonusTolerance(toleranced, least), boundaries: boundaries(toleranced) }
        : {}),
    }
  })

  function limitsOf(size: NonNullable<NonNullable<HeldFrame['feature']>['size']>) {
    const d = deviationsOf(size, header)
    return d && { max: size.mm + d.upper, min: size.mm + d.lower }
  }
}
