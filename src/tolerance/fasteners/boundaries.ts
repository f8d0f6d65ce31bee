// ASME Y14.5-2018 section 5 and ISO 2692: boundaries of a toleranced feature of size.

export type MaterialModifier = 'M' | 'L' | 'S'

/** A feature of size with a geometric tolerance on its axis or centre plane. M and L stand for MMC and LMC, S for regardless of size. */
export interface TolerancedFeature {
  readonly of: 'hole' | 'shaft'
  /** Limits of size. */
  readonly max: number
  readonly min: number
  /** Geometric tolerance as stated in the frame. */
  readonly tolerance: number
  readonly modifier: MaterialModifier
  /** Greatest tolerance that a MAX in the frame allows. */
  readonly most?: number
}

/** Size at maximum material: the smallest hole, the largest shaft. */
function maximumMaterial(feature: TolerancedFeature): number {
  return feature.of === 'hole' ? feature.min : feature.max
}

/** Size at least material. */
function leastMaterial(feature: TolerancedFeature): number {
  return feature.of === 'hole' ? feature.max : feature.min
}

/** Bonus tolerance of a feature made to `actual` size: what it departs from the stated material condition; none for S. */
export function bonusTolerance(feature: TolerancedFeature, actual: number): number {
  if (feature.modifier === 'S') return 0
  const from = feature.modifier === 'M' ? maximumMaterial(feature) : leastMaterial(feature)
  const bonus = Math.abs(actual - from)
  return feature.most === undefined ? bonus : Math.max(0, Math.min(bonus, feature.most - feature.tolerance))
}

/** Stated tolerance plus bonus at an actual size. */
export function totalTolerance(feature: TolerancedFeature, actual: number): number {
  return feature.tolerance + bonusTolerance(feature, actual)
}

/** Inner and outer boundary of a feature, and the one of them that is a constant virtual condition. */
export interface Boundaries {
  readonly inner: number
  readonly outer: number
  /** Constant boundary: inner of a hole at M, outer of a shaft at M, the other way round at L; undefined for S. */
  readonly virtualCondition: number | undefined
  /** The far boundary, reached with the whole bonus; undefined for S. */
  readonly resultantCondition: number | undefined
}

/** Boundaries from the worst of size and geometric tolerance. */
export function boundaries(feature: TolerancedFeature): Boundaries {
  const mmc = maximumMaterial(feature)
  const lmc = leastMaterial(feature)
  const sign = feature.of === 'hole' ? -1 : 1
  // Towards the mating part at maximum material, away from it at least material.
  const near = mmc + sign * totalTolerance(feature, mmc)
  const far = lmc - sign * totalTolerance(feature, lmc)
  const [inner, outer] = feature.of === 'hole' ? [near, far] : [far, near]
  if (feature.modifier === 'S') return { inner, outer, virtualCondition: undefined, resultantCondition: undefined }
  return feature.modifier === 'M'
    ? { inner, outer, virtualCondition: near, resultantCondition: far }
    : { inner, outer, virtualCondition: far, resultantCondition: near }
}

/** Envelope of perfect form at maximum material: required by ASME Y14.5 Rule #1; under ISO 8015 only where Ⓔ or ISO 14405 says so. */
function envelope(feature: Pick<TolerancedFeature, 'of' | 'max' | 'min'>): number {
  return feature.of === 'hole' ? feature.min : feature.max
}

/** Greatest form deviation that the envelope leaves a feature made to `actual` size. */
export function formWithinEnvelope(feature: Pick<TolerancedFeature, 'of' | 'max' | 'min'>, actual: number): number {
  return Math.abs(actual - envelope(feature))
}

/** Spare room between a hole and a shaft pattern at their virtual conditions, both at M; negative when the worst parts bind. */
export function matingClearance(hole: TolerancedFeature, shaft: TolerancedFeature): number {
  return boundaries(hole).inner - boundaries(shaft).outer
}
