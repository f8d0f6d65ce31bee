import type { Rule } from '../rule.ts'
import { rule as angleToleranceMissing } from './completeness/angle-tolerance-missing.ts'
import { rule as approvalMissing } from './completeness/approval-missing.ts'
import { rule as checkedByOwnHand } from './completeness/checked-by-own-hand.ts'
import { rule as coatingAgainstMaterial } from './completeness/coating-against-material.ts'
import { rule as coatingOnFits } from './completeness/coating-on-fits.ts'
import { rule as dateImpossible } from './completeness/date-impossible.ts'
import { rule as dateMissing } from './completeness/date-missing.ts'
import { rule as drawnMissing } from './completeness/drawn-missing.ts'
import { rule as edgeBreakOdd } from './completeness/edge-break-odd.ts'
import { rule as edgeNoteMissing } from './completeness/edge-note-missing.ts'
import { rule as featureRepeated } from './completeness/feature-repeated.ts'
import { rule as generalClassUnknown } from './completeness/general-class-unknown.ts'
import { rule as generalToleranceMissing } from './completeness/general-tolerance-missing.ts'
import { rule as gradeUnknown } from './completeness/grade-unknown.ts'
import { rule as hardnessMissing } from './completeness/hardness-missing.ts'
import { rule as materialMissing } from './completeness/material-missing.ts'
import { rule as materialWithoutGrade } from './completeness/material-without-grade.ts'
import { rule as numberMissing } from './completeness/number-missing.ts'
import { rule as ownerMissing } from './completeness/owner-missing.ts'
import { rule as revisionMissing } from './completeness/revision-missing.ts'
import { rule as signatureOrder } from './completeness/signature-order.ts'
import { rule as standardAgainstPractice } from './completeness/standard-against-practice.ts'
import { rule as standardMissing } from './completeness/standard-missing.ts'
import { rule as standardNumberOdd } from './completeness/standard-number-odd.ts'
import { rule as steelWillNotHarden } from './completeness/steel-will-not-harden.ts'
import { rule as steelWithoutCoating } from './completeness/steel-without-coating.ts'
import { rule as textureMissing } from './completeness/texture-missing.ts'
import { rule as threadClassMissing } from './completeness/thread-class-missing.ts'
import { rule as titleMissing } from './completeness/title-missing.ts'
import { rule as unitsNote } from './completeness/units-note.ts'
import { rule as withdrawnStandard } from './completeness/withdrawn-standard.ts'
import { rule as counterboreShallow } from './fitting/counterbore-shallow.ts'
import { rule as counterboreUnderHead } from './fitting/counterbore-under-head.ts'
import { rule as countersinkAngle } from './fitting/countersink-angle.ts'
import { rule as countersinkUnderHead } from './fitting/countersink-under-head.ts'
import { rule as dowelDistance } from './fitting/dowel-distance.ts'
import { rule as fitUncommon } from './fitting/fit-uncommon.ts'
import { rule as fitUnknown } from './fitting/fit-unknown.ts'
import { rule as fixedFastener } from './fitting/fixed-fastener.ts'
import { rule as keySize } from './fitting/key-size.ts'
import { rule as keyWidthUntoleranced } from './fitting/key-width-untoleranced.ts'
import { rule as namedScrew } from './fitting/named-screw.ts'
import { rule as patternClearance } from './fitting/pattern-clearance.ts'
import { rule as ringGroove } from './fitting/ring-groove.ts'
import { rule as allAroundNotProfile } from './frames/all-around-not-profile.ts'
import { rule as basicFromElsewhere } from './frames/basic-from-elsewhere.ts'
import { rule as combinedZoneOfIso } from './frames/combined-zone-of-iso.ts'
import { rule as compositeDatumOrder } from './frames/composite-datum-order.ts'
import { rule as compositeNotAllowed } from './frames/composite-not-allowed.ts'
import { rule as compositeNotFiner } from './frames/composite-not-finer.ts'
import { rule as compositeOfAsme } from './frames/composite-of-asme.ts'
import { rule as datumFeatureTwice } from './frames/datum-feature-twice.ts'
import { rule as datumForbidden } from './frames/datum-forbidden.ts'
import { rule as datumIdle } from './frames/datum-idle.ts'
import { rule as datumLetter } from './frames/datum-letter.ts'
import { rule as datumLetterRepeated } from './frames/datum-letter-repeated.ts'
import { rule as datumMaterialNeedsSize } from './frames/datum-material-needs-size.ts'
import { rule as datumMissing } from './frames/datum-missing.ts'
import { rule as datumOnItself } from './frames/datum-on-itself.ts'
import { rule as datumOrderDiffers } from './frames/datum-order-differs.ts'
import { rule as datumTwice } from './frames/datum-twice.ts'
import { rule as datumUnknown } from './frames/datum-unknown.ts'
import { rule as datumUnstable } from './frames/datum-unstable.ts'
import { rule as datumUnused } from './frames/datum-unused.ts'
import { rule as datumsLeaveFree } from './frames/datums-leave-free.ts'
import { rule as formWiderThanSize } from './frames/form-wider-than-size.ts'
import { rule as lineDirectionOpen } from './frames/line-direction-open.ts'
import { rule as materialNeedsSize } from './frames/material-needs-size.ts'
import { rule as materialNotAllowed } from './frames/material-not-allowed.ts'
import { rule as maxWithoutBonus } from './frames/max-without-bonus.ts'
import { rule as orientationNotSo } from './frames/orientation-not-so.ts'
import { rule as positionOfSurface } from './frames/position-of-surface.ts'
import { rule as positionWithoutBasic } from './frames/position-without-basic.ts'
import { rule as projectionHeight } from './frames/projection-height.ts'
import { rule as projectionNotAllowed } from './frames/projection-not-allowed.ts'
import { rule as refinementCoarser } from './frames/refinement-coarser.ts'
import { rule as roundZoneOfSurface } from './frames/round-zone-of-surface.ts'
import { rule as roundnessOfFlat } from './frames/roundness-of-flat.ts'
import { rule as runoutDatumMaterial } from './frames/runout-datum-material.ts'
import { rule as runoutWithoutAxis } from './frames/runout-without-axis.ts'
import { rule as tangentPlaneNotAllowed } from './frames/tangent-plane-not-allowed.ts'
import { rule as textureAsGeneral } from './frames/texture-as-general.ts'
import { rule as tooManyDatums } from './frames/too-many-datums.ts'
import { rule as unequalNotAllowed } from './frames/unequal-not-allowed.ts'
import { rule as unequalOfOtherPractice } from './frames/unequal-of-other-practice.ts'
import { rule as unequalOutOfZone } from './frames/unequal-out-of-zone.ts'
import { rule as withdrawnCharacteristic } from './frames/withdrawn-characteristic.ts'
import { rule as zeroTolerance } from './frames/zero-tolerance.ts'
import { rule as zoneMustBeRound } from './frames/zone-must-be-round.ts'
import { rule as zoneNotRound } from './frames/zone-not-round.ts'
import { rule as zoneNotSpherical } from './frames/zone-not-spherical.ts'
import { rule as zoneWiderThanGeneral } from './frames/zone-wider-than-general.ts'
import { rule as heavyPart } from './handling/heavy-part.ts'
import { rule as liftingPoint } from './handling/lifting-point.ts'
import { rule as massUnknown } from './handling/mass-unknown.ts'
import { rule as sharpPlateCorners } from './handling/sharp-plate-corners.ts'
import { rule as bendRadius } from './making/bend-radius.ts'
import { rule as boreWithoutChamfer } from './making/bore-without-chamfer.ts'
import { rule as counterboreLedge } from './making/counterbore-ledge.ts'
import { rule as countersinkThrough } from './making/countersink-through.ts'
import { rule as deepHole } from './making/deep-hole.ts'
import { rule as drillBreaksSideways } from './making/drill-breaks-sideways.ts'
import { rule as drillOnSlope } from './making/drill-on-slope.ts'
import { rule as flangeShort } from './making/flange-short.ts'
import { rule as flatBottom } from './making/flat-bottom.ts'
import { rule as grooveNearEnd } from './making/groove-near-end.ts'
import { rule as holeBesideCentre } from './making/hole-beside-centre.ts'
import { rule as holeNearBend } from './making/hole-near-bend.ts'
import { rule as holeNearEdge } from './making/hole-near-edge.ts'
import { rule as holeUnderSheetThickness } from './making/hole-under-sheet-thickness.ts'
import { rule as knifeEdge } from './making/knife-edge.ts'
import { rule as notchNarrow } from './making/notch-narrow.ts'
import { rule as oddDrillSize } from './making/odd-drill-size.ts'
import { rule as pocketCornerSharp } from './making/pocket-corner-sharp.ts'
import { rule as pocketCornerTight } from './making/pocket-corner-tight.ts'
import { rule as pocketFloorThin } from './making/pocket-floor-thin.ts'
import { rule as pressFitLead } from './making/press-fit-lead.ts'
import { rule as sheetHoleNearEdge } from './making/sheet-hole-near-edge.ts'
import { rule as shoulderUndercut } from './making/shoulder-undercut.ts'
import { rule as slenderTurning } from './making/slender-turning.ts'
import { rule as slotNarrow } from './making/slot-narrow.ts'
import { rule as tapDrill } from './making/tap-drill.ts'
import { rule as tapDrillDepthMissing } from './making/tap-drill-depth-missing.ts'
import { rule as tapRunout } from './making/tap-runout.ts'
import { rule as thinFloor } from './making/thin-floor.ts'
import { rule as thinWall } from './making/thin-wall.ts'
import { rule as threadDeep } from './making/thread-deep.ts'
import { rule as threadShort } from './making/thread-short.ts'
import { rule as threadUncommon } from './making/thread-uncommon.ts'
import { rule as threadUndercut } from './making/thread-undercut.ts'
import { rule as threadUndercutSmall } from './making/thread-undercut-small.ts'
import { rule as threadUnknown } from './making/thread-unknown.ts'
import { rule as threadWithoutChamfer } from './making/thread-without-chamfer.ts'
import { rule as toolBlocked } from './making/tool-blocked.ts'
import { rule as wallBetweenHoles } from './making/wall-between-holes.ts'
import { rule as basicWithoutFrame } from './practice/basic-without-frame.ts'
import { rule as decimalsDiffer } from './practice/decimals-differ.ts'
import { rule as fractionOnMetric } from './practice/fraction-on-metric.ts'
import { rule as holesFromTwoOrigins } from './practice/holes-from-two-origins.ts'
import { rule as inchWithIso } from './practice/inch-with-iso.ts'
import { rule as needlessDecimals } from './practice/needless-decimals.ts'
import { rule as noteRepeated } from './practice/note-repeated.ts'
import { rule as noteVague } from './practice/note-vague.ts'
import { rule as pitchesAccumulate } from './practice/pitches-accumulate.ts'
import { rule as pointLost } from './practice/point-lost.ts'
import { rule as projectionUnusual } from './practice/projection-unusual.ts'
import { rule as referenceToleranced } from './practice/reference-toleranced.ts'
import { rule as sizesCrowded } from './practice/sizes-crowded.ts'
import { rule as smallOnPaper } from './practice/small-on-paper.ts'
import { rule as textureOdd } from './practice/texture-odd.ts'
import { rule as envelopeNeedless } from './tolerances/envelope-needless.ts'
import { rule as envelopeOfNoSize } from './tolerances/envelope-of-no-size.ts'
import { rule as finerThanProcess } from './tolerances/finer-than-process.ts'
import { rule as generalOutOfStep } from './tolerances/general-out-of-step.ts'
import { rule as grindingNotSaid } from './tolerances/grinding-not-said.ts'
import { rule as roughForTolerance } from './tolerances/rough-for-tolerance.ts'
import { rule as stackOpen } from './tolerances/stack-open.ts'
import { rule as stackOutOfLimits } from './tolerances/stack-out-of-limits.ts'
import { rule as stackVanishes } from './tolerances/stack-vanishes.ts'
import { rule as stockSizeOdd } from './tolerances/stock-size-odd.ts'
import { rule as widerThanGeneral } from './tolerances/wider-than-general.ts'

/** A group of rules, in the order in which a checker goes through a sheet. */
export interface RuleGroup {
  readonly name: string
  readonly rules: readonly Rule[]
}

export const ruleGroups: readonly RuleGroup[] = [
  {
    name: 'completeness and contradiction',
    rules: [
      angleToleranceMissing,
      approvalMissing,
      checkedByOwnHand,
      coatingAgainstMaterial,
      coatingOnFits,
      dateImpossible,
      dateMissing,
      drawnMissing,
      edgeBreakOdd,
      edgeNoteMissing,
      featureRepeated,
      generalClassUnknown,
      generalToleranceMissing,
      gradeUnknown,
      hardnessMissing,
      materialMissing,
      materialWithoutGrade,
      numberMissing,
      ownerMissing,
      revisionMissing,
      signatureOrder,
      standardAgainstPractice,
      standardMissing,
      standardNumberOdd,
      steelWillNotHarden,
      steelWithoutCoating,
      textureMissing,
      threadClassMissing,
      titleMissing,
      unitsNote,
      withdrawnStandard,
    ],
  },
  {
    name: 'drafting practice',
    rules: [
      basicWithoutFrame,
      decimalsDiffer,
      fractionOnMetric,
      holesFromTwoOrigins,
      inchWithIso,
      needlessDecimals,
      noteRepeated,
      noteVague,
      pitchesAccumulate,
      pointLost,
      projectionUnusual,
      referenceToleranced,
      sizesCrowded,
      smallOnPaper,
      textureOdd,
    ],
  },
  {
    name: 'making it',
    rules: [
      bendRadius,
      boreWithoutChamfer,
      counterboreLedge,
      countersinkThrough,
      deepHole,
      drillBreaksSideways,
      drillOnSlope,
      flangeShort,
      flatBottom,
      grooveNearEnd,
      holeBesideCentre,
      holeNearBend,
      holeNearEdge,
      holeUnderSheetThickness,
      knifeEdge,
      notchNarrow,
      oddDrillSize,
      pocketCornerSharp,
      pocketCornerTight,
      pocketFloorThin,
      pressFitLead,
      sheetHoleNearEdge,
      shoulderUndercut,
      slenderTurning,
      slotNarrow,
      tapDrill,
      tapDrillDepthMissing,
      tapRunout,
      thinFloor,
      thinWall,
      threadDeep,
      threadShort,
      threadUncommon,
      threadUndercut,
      threadUndercutSmall,
      threadUnknown,
      threadWithoutChamfer,
      toolBlocked,
      wallBetweenHoles,
    ],
  },
  {
    name: 'fitting together',
    rules: [
      counterboreShallow,
      counterboreUnderHead,
      countersinkAngle,
      countersinkUnderHead,
      dowelDistance,
      fitUncommon,
      fitUnknown,
      fixedFastener,
      keySize,
      keyWidthUntoleranced,
      namedScrew,
      patternClearance,
      ringGroove,
    ],
  },
  {
    name: 'frames and datums',
    rules: [
      allAroundNotProfile,
      basicFromElsewhere,
      combinedZoneOfIso,
      compositeDatumOrder,
      compositeNotAllowed,
      compositeNotFiner,
      compositeOfAsme,
      datumFeatureTwice,
      datumForbidden,
      datumIdle,
      datumLetter,
      datumLetterRepeated,
      datumMaterialNeedsSize,
      datumMissing,
      datumOnItself,
      datumOrderDiffers,
      datumsLeaveFree,
      datumTwice,
      datumUnknown,
      datumUnstable,
      datumUnused,
      formWiderThanSize,
      lineDirectionOpen,
      materialNeedsSize,
      materialNotAllowed,
      maxWithoutBonus,
      orientationNotSo,
      positionOfSurface,
      positionWithoutBasic,
      projectionHeight,
      projectionNotAllowed,
      refinementCoarser,
      roundnessOfFlat,
      roundZoneOfSurface,
      runoutDatumMaterial,
      runoutWithoutAxis,
      tangentPlaneNotAllowed,
      textureAsGeneral,
      tooManyDatums,
      unequalNotAllowed,
      unequalOfOtherPractice,
      unequalOutOfZone,
      withdrawnCharacteristic,
      zeroTolerance,
      zoneMustBeRound,
      zoneNotRound,
      zoneNotSpherical,
      zoneWiderThanGeneral,
    ],
  },
  { name: 'handling', rules: [heavyPart, liftingPoint, massUnknown, sharpPlateCorners] },
  {
    name: 'tolerances',
    rules: [
      envelopeNeedless,
      envelopeOfNoSize,
      finerThanProcess,
      generalOutOfStep,
      grindingNotSaid,
      roughForTolerance,
      stackOpen,
      stackOutOfLimits,
      stackVanishes,
      stockSizeOdd,
      widerThanGeneral,
    ],
  },
]

/** Every rule, each a file of its own. */
export const rules: readonly Rule[] = ruleGroups.flatMap((g) => g.rules)
