import type { Sheet } from '../../src/sheet/sheet.ts'
import { crowdedCase } from './crowded-case.ts'
import { datumCases } from './datum-cases.ts'
import { formCases, moreFormCases } from './form-cases.ts'
import { frameCases } from './frame-cases.ts'
import { shaftThreadCases, threadCases } from './thread-cases.ts'
import { titleCases } from './title-cases.ts'

/** A part that must raise the rule, and its near twin that must not: `practice | bad | good`. */
export interface Case {
  readonly rule: string
  readonly on: 'iso' | 'asme'
  readonly bad: string
  readonly good: string
  /** What is done to the bad one's sheet by hand, where no brief brings the fault about. */
  readonly spoilt?: { readonly words: string; readonly by: (sheet: Sheet) => Sheet }
}

const block = 'block     80 × 50 × 30'
const plate = 'plate     100 × 60 × 4'
const formed = (t: string, r: string, rest = '', material = 'steel sheet, EN 10130 DC01') =>
  `material  ${material}\nangle     formed, ${t} STK, inside R ${r}\n          upright 60 high, at rear; base 40 toward front; length 80${rest}`
const at = '\n          20 from left; centred up'
const shaft = (rows: string) => `turned    axis left-right\n${rows}`

const iso = (rule: string, bad: string, good: string): Case => ({ rule, on: 'iso', bad, good })
const asme = (rule: string, bad: string, good: string): Case => ({ rule, on: 'asme', bad, good })

const completeness: readonly Case[] = [
  iso('material-missing', `no material\n${block}`, block),
  iso('material-without-grade', `material  steel\n${block}`, `material  steel S235JR\n${block}`),
  iso('number-missing', `no number\n${block}`, block),
  iso('title-missing', `no part\n${block}`, block),
  iso('drawn-missing', `no drawn\n${block}`, block),
  iso('approval-missing', `no approved\n${block}`, block),
  iso('date-missing', `checked   P. Quillfeather\n${block}`, block),
  iso('owner-missing', `no firm\n${block}`, block),
  iso('revision-missing', `number    TP-0003\n${block}`, block),
  iso('general-tolerance-missing', `no general\n${block}`, `no general\nblock     80 ±0.2 × 50 ±0.2 × 30 ±0.2`),
  asme(
    'angle-tolerance-missing',
    'general   .XX ±.01   .XXX ±.005\nblock     3.00 × 2.00 × 1.00\nchamfer   top left edge: .12 × 30°',
    'general   .XX ±.01   .XXX ±.005   angles ±1°\nblock     3.00 × 2.00 × 1.00\nchamfer   top left edge: .12 × 30°',
  ),
  iso('texture-missing', `no texture\n${block}`, block),
  iso('edge-note-missing', `no edges\n${block}`, `no edges\nnote      Remove burrs.\n${block}`),
  asme(
    'thread-class-missing',
    'block     3.00 × 2.00 × .75\nhole      top: 1/4-20 UNC THRU\n          centred both ways',
    'block     3.00 × 2.00 × .75\nhole      top: 1/4-20 UNC-2B THRU\n          centred both ways',
  ),
  iso('standard-missing', `no standard\n${block}`, block),
  iso('standard-against-practice', `standard  ASME Y14.5-2018\n${block}`, block),
  iso(
    'coating-against-material',
    `coating   anodized, natural\n${block}`,
    `coating   anodized, natural\nmaterial  aluminium EN AW-6082-T6\n${block}`,
  ),
  iso(
    'steel-without-coating',
    `no coating\nmaterial  S235JR EN 10025-2\n${block}`,
    `material  S235JR EN 10025-2\n${block}`,
  ),
  iso(
    'hardness-missing',
    `material  42CrMo4 EN ISO 683-2, quenched and tempered\n${block}`,
    `material  42CrMo4 EN ISO 683-2, quenched and tempered, 28-32 HRC\n${block}`,
  ),
  iso(
    'steel-will-not-harden',
    `material  S235JR EN 10025-2, hardened 50 HRC\n${block}`,
    `material  C15E EN ISO 683-3, case hardened 58 HRC\n${block}`,
  ),
  iso(
    'coating-on-fits',
    `coating   zinc plated ISO 2081\n${block}\nhole      top: ⌀20 H7 THRU${at}`,
    `coating   zinc plated ISO 2081\nnote      Sizes apply after coating.\n${block}\nhole      top: ⌀20 H7 THRU${at}`,
  ),
  iso(
    'units-note',
    `note      All dimensions are in inches.\n${block}`,
    `note      All dimensions are in millimetres.\n${block}`,
  ),
  iso('signature-order', `checked   P. Quillfeather, 2024-01-07\n${block}`, block),
  iso('checked-by-own-hand', `checked   I. Vasperg, 2024-02-07\n${block}`, block),
  iso(
    'feature-repeated',
    `${block}\nchamfer   top edges: 4X 1 × 45°\nchamfer   top edges: 4X 1 × 45°`,
    `${block}\nchamfer   top edges: 4X 1 × 45°\nchamfer   bottom edges: 4X 1 × 45°`,
  ),
  iso('general-class-unknown', `general   ISO 2768-q\n${block}`, block),
  iso('withdrawn-standard', `general   ISO 2768-mK\n${block}`, block),
]

const practice: readonly Case[] = [
  iso(
    'note-repeated',
    `note      Oil before packing.\nnote      Oil before packing\n${block}`,
    `note      Oil before packing.\nnote      Pack in pairs.\n${block}`,
  ),
  iso('note-vague', `note      Remove burrs as required.\n${block}`, `note      Remove burrs.\n${block}`),
  iso('inch-with-iso', 'units     inch\nblock     3 × 2 × 1', block),
  asme(
    'projection-unusual',
    'practice  ASME, first angle\nblock     3.00 × 2.00 × 1.00',
    'block     3.00 × 2.00 × 1.00',
  ),
  iso('fraction-on-metric', 'block     80-1/2 × 50 × 30', 'block     80.5 × 50 × 30'),
  iso('decimals-differ', 'block     80.000 ±0.1 × 50 × 30', 'block     80.0 ±0.1 × 50 ±0.05 × 30 +0.2/0'),
  asme('decimals-differ', 'block     3.00 ±.005 × 2.00 × 1.00', 'block     3.000 ±.005 × 2.00 +.01/-.02 × 1 1/2 ±1/64'),
  iso('decimals-differ', 'block     80 +0.1/-0.05 × 50 × 30', 'block     80 +0.10/-0.05 × 50 × 30'),
  iso('needless-decimals', 'block     80.125 × 50 × 30', 'block     80.125 ±0.005 × 50 × 30'),
  iso(
    'holes-from-two-origins',
    `${block}\nhole      top: ⌀9 THRU\n          20 from left; centred up\nhole      top: ⌀9 THRU\n          20 from right; centred up`,
    `${block}\nhole      top: ⌀9 THRU\n          20 from left; centred up\nhole      top: ⌀9 THRU\n          60 from left; centred up`,
  ),
  iso(
    'small-on-paper',
    `scale     1:10\nsheet     A4\nblock     800 × 500 × 300\nhole      top: ⌀8 ↧ 20${at}`,
    `scale     1:5\nsheet     A2\nblock     800 × 500 × 300\nhole      top: ⌀8 ↧ 20${at}`,
  ),
  iso(
    'pitches-accumulate',
    'plate     240 × 60 × 8\nholes     top: 8X ⌀9 THRU\n          8 across 25 apart, leftmost 30 from left; centred up',
    'plate     240 × 60 × 8\nholes     top: 8X ⌀9 THRU\n          8 across 25 apart, leftmost 30 from left; centred up\nsizes     baseline',
  ),
  iso(
    'basic-without-frame',
    `${block}\nhole      top: ⌀9 THRU\n          20 BASIC from left; centred up`,
    `note      Hole position ⌀0.2 to A, B, C.\n${block}\nhole      top: ⌀9 THRU\n          20 BASIC from left; centred up`,
  ),
  iso('reference-toleranced', `${block}\nshow      overall 80 ±0.1`, `${block}\nshow      overall (80)`),
]

const making: readonly Case[] = [
  iso(
    'hole-near-edge',
    `${block}\nhole      top: ⌀12 THRU\n          7 from left; centred up`,
    `${block}\nhole      top: ⌀12 THRU\n          8 from left; centred up`,
  ),
  iso(
    'wall-between-holes',
    `${block}\nholes     top: 2X ⌀12 THRU\n          13 apart, centred; centred up`,
    `${block}\nholes     top: 2X ⌀12 THRU\n          14 apart, centred; centred up`,
  ),
  iso(
    'sheet-hole-near-edge',
    `${plate}\nhole      top: ⌀9 THRU\n          8 from left; centred up`,
    `${plate}\nhole      top: ⌀9 THRU\n          9 from left; centred up`,
  ),
  iso(
    'hole-near-bend',
    formed('3', '3', '\nhole      base, from top: ⌀6.6 THRU\n          centred across; 15 from heel'),
    formed('3', '3', '\nhole      base, from top: ⌀6.6 THRU\n          centred across; 16 from heel'),
  ),
  iso(
    'hole-under-sheet-thickness',
    `${plate}\nhole      top: ⌀3.5 THRU\n          20 from left; centred up`,
    `${plate}\nhole      top: ⌀4 THRU\n          20 from left; centred up`,
  ),
  iso(
    'deep-hole',
    `block     80 × 50 × 66\nhole      top: ⌀6 THRU${at}`,
    `block     80 × 50 × 58\nhole      top: ⌀6 THRU${at}`,
  ),
  // 0.15 of ⌀10 is 1.5: a bound by rule of thumb (common practice, no source) is not failed by a hundredth.
  iso(
    'hole-near-edge',
    `${block}\nhole      top: ⌀10 THRU\n          6.45 from left; centred up`,
    `${block}\nhole      top: ⌀10 THRU\n          6.49 from left; centred up`,
  ),
  // 0.15 of ⌀.250 is .0375: so much stands between the holes at a pitch of .2875, whatever its last binary digit.
  asme(
    'wall-between-holes',
    'block     3.00 × 2.00 × 1.00\nholes     top: 2X ⌀.250 THRU\n          .286 apart, centred; centred up',
    'block     3.00 × 2.00 × 1.00\nholes     top: 2X ⌀.250 THRU\n          .2875 apart, centred; centred up',
  ),
  iso('odd-drill-size', `${block}\nhole      top: ⌀8.13 THRU${at}`, `${block}\nhole      top: ⌀8.1 THRU${at}`),
  // A fit is reamed or bored to its size; over 13 mm the drill of a size is no longer picked off the rack.
  iso('odd-drill-size', `${block}\nhole      top: ⌀12.13 THRU${at}`, `${block}\nhole      top: ⌀13.13 THRU${at}`),
  asme(
    'odd-drill-size',
    'block     3.00 × 2.00 × 1.00\nhole      top: ⌀.400 THRU\n          .75 from left; centred up',
    'turned    axis left-right\n          body    ⌀1.00, 2.00 long\nbore      left face: ⌀.400 THRU',
  ),
  iso(
    'tap-drill',
    `${block}\nhole      top: M8 ↧ 16, drill ⌀7.4 ↧ 21${at}`,
    `${block}\nhole      top: M8 ↧ 16, drill ⌀6.8 ↧ 21${at}`,
  ),
  iso(
    'tap-runout',
    `${block}\nhole      top: M8 ↧ 16, drill ⌀6.8 ↧ 18${at}`,
    `${block}\nhole      top: M8 ↧ 16, drill ⌀6.8 ↧ 20${at}`,
  ),
  iso(
    'tap-drill-depth-missing',
    `${block}\nhole      top: M8 ↧ 16${at}`,
    `${block}\nhole      top: M8 ↧ 16, drill ⌀6.8 ↧ 21${at}`,
  ),
  iso(
    'thread-short',
    `block     80 × 50 × 8\nhole      top: M12 THRU${at}`,
    `block     80 × 50 × 10\nhole      top: M12 THRU${at}`,
  ),
  iso(
    'thread-deep',
    `${block}\nhole      top: M6 ↧ 20, drill ⌀5 ↧ 25${at}`,
    `${block}\nhole      top: M6 ↧ 18, drill ⌀5 ↧ 22${at}`,
  ),
  iso('thread-unknown', `${block}\nhole      top: M8×1.1 THRU${at}`, `${block}\nhole      top: M8×1 THRU${at}`),
  iso('thread-uncommon', `${block}\nhole      top: M7 THRU${at}`, `${block}\nhole      top: M6 THRU${at}`),
  iso('flat-bottom', `${block}\nhole      top: ⌀8 ↧ 20, flat bottom${at}`, `${block}\nhole      top: ⌀8 ↧ 20${at}`),
  iso(
    'pocket-corner-sharp',
    `${block}\npocket    top: 40 × 20 ↧ 10\n          centred both ways`,
    `${block}\npocket    top: 40 × 20 ↧ 10, corners R 4\n          centred both ways`,
  ),
  iso(
    'pocket-corner-tight',
    `${block}\npocket    top: 40 × 20 ↧ 22, corners R 2\n          centred both ways`,
    `${block}\npocket    top: 40 × 20 ↧ 20, corners R 2\n          centred both ways`,
  ),
  iso(
    'pocket-floor-thin',
    `${block}\npocket    top: 40 × 20 ↧ 29.2, corners R 4\n          centred both ways`,
    `${block}\npocket    top: 40 × 20 ↧ 28, corners R 4\n          centred both ways`,
  ),
  iso(
    'slot-narrow',
    `${block}\nslot      top: 5 × 30 overall THRU, long way left-right\n          centred both ways`,
    `${block}\nslot      top: 6 × 30 overall THRU, long way left-right\n          centred both ways`,
  ),
  iso(
    'notch-narrow',
    `${block}\nnotch     front, top: square, 2 wide, 18 deep\n          centred`,
    `${block}\nnotch     front, top: square, 2 wide, 16 deep\n          centred`,
  ),
  iso(
    'drill-on-slope',
    `${block}\nchamfer   top right edge: 20 × 45°\nhole      right: ⌀6 THRU\n          centred across; 14 from bottom`,
    `${block}\nchamfer   top right edge: 10 × 45°\nhole      right: ⌀6 THRU\n          centred across; 14 from bottom`,
  ),
  iso(
    'drill-breaks-sideways',
    `${block}\nnotch     front, top: square, 10 wide, 10 deep\n          centred\nhole      top: ⌀8 THRU\n          32 from left; centred up`,
    `${block}\nnotch     front, top: square, 10 wide, 10 deep\n          centred\nhole      top: ⌀8 THRU\n          20 from left; centred up`,
  ),
  iso(
    'tool-blocked',
    'channel   60 high × 45 wide × 8 thick, 100 long, axis left-right\nhole      lower flange, from top: ⌀9 THRU, ⌴ ⌀15 ↧ 4\n          centred across; 14 from front',
    'channel   60 high × 45 wide × 8 thick, 100 long, axis left-right\nhole      lower flange, from bottom: ⌀9 THRU, ⌴ ⌀15 ↧ 4\n          centred across; 14 from front',
  ),
  iso(
    'thin-wall',
    'tube      ⌀40 outside, wall 0.6, 30 long, axis left-right',
    'tube      ⌀40 outside, wall 1, 30 long, axis left-right',
  ),
  iso(
    'thin-floor',
    `${block}\nhole      top: ⌀8 ↧ 29.3, flat bottom${at}`,
    `${block}\nhole      top: ⌀8 ↧ 28, flat bottom${at}`,
  ),
  iso(
    'shoulder-undercut',
    shaft('          seat    ⌀30 k6, 20 long\n          collar  ⌀40, 10 long\nchamfer   left face outer edge: 1 × 45°'),
    shaft(
      '          seat    ⌀30 k6, 20 long\n          collar  ⌀40, 10 long\nchamfer   left face outer edge: 1 × 45°\nnote      Undercut DIN 509-F 0.6 × 0.3 at the seat.',
    ),
  ),
  iso(
    'press-fit-lead',
    shaft('          seat    ⌀30 p6, 20 long\n          collar  ⌀40, 10 long'),
    shaft('          seat    ⌀30 p6, 20 long\n          collar  ⌀40, 10 long\nchamfer   left face outer edge: 2 × 15°'),
  ),
  iso(
    'bore-without-chamfer',
    'no edges\ndisc      ⌀80 × 20, outer face front\nbore      front: ⌀30 H7 THRU',
    'no edges\nnote      Remove burrs.\ndisc      ⌀80 × 20, outer face front\nbore      front: ⌀30 H7 THRU\nchamfer   bore edges: 2X 1 × 45°',
  ),
  iso(
    'knife-edge',
    'outline   8 thick, face front\n          right 100; slope left 100 up 40; close',
    'outline   8 thick, face front\n          right 100; slope left 60 up 40; left 40; close',
  ),
  iso(
    'hole-beside-centre',
    'outline   40 thick, face front\n          right 80; up 55; arc R 40 to 0 across, 55 up, turning left; close\nbore      front: ⌀40 THRU',
    'outline   40 thick, face front\n          right 80; up 55; arc R 40 to 0 across, 55 up, turning left; close\nbore      front: ⌀40 THRU\n          on axis of side 1',
  ),
  iso(
    'countersink-through',
    `${plate}\nhole      top: ⌀6.6 THRU, ⌵ ⌀14.4 × 90°${at}`,
    `plate     100 × 60 × 5\nhole      top: ⌀6.6 THRU, ⌵ ⌀14.4 × 90°${at}`,
  ),
  iso(
    'counterbore-ledge',
    `${block}\nhole      top: ⌀14 THRU, ⌴ ⌀16 ↧ 9${at}`,
    `${block}\nhole      top: ⌀14 THRU, ⌴ ⌀17 ↧ 9${at}`,
  ),
  iso('bend-radius', formed('4', '2'), formed('4', '4')),
  iso(
    'flange-short',
    'material  steel sheet, EN 10130 DC01\nangle     formed, 3 STK, inside R 3\n          upright 60 high, at rear; base 11 toward front; length 80',
    'material  steel sheet, EN 10130 DC01\nangle     formed, 3 STK, inside R 3\n          upright 60 high, at rear; base 12 toward front; length 80',
  ),
  iso(
    'groove-near-end',
    shaft(
      '          body    ⌀30, 60 long\ngroove    body: 1.6 H13 wide, bottom ⌀28.6 h11\n          right side 2 from right face',
    ),
    shaft(
      '          body    ⌀30, 60 long\ngroove    body: 1.6 H13 wide, bottom ⌀28.6 h11\n          right side 2.5 from right face',
    ),
  ),
  iso('slender-turning', 'round bar ⌀10, 160 long, axis left-right', 'round bar ⌀10, 140 long, axis left-right'),
]

const fitting: readonly Case[] = [
  iso('fit-unknown', `${block}\nhole      top: ⌀20 K12 THRU${at}`, `${block}\nhole      top: ⌀20 H7 THRU${at}`),
  iso('fit-uncommon', `${block}\nhole      top: ⌀20 V7 THRU${at}`, `${block}\nhole      top: ⌀20 H8 THRU${at}`),
  iso(
    'key-size',
    shaft(
      '          body    ⌀30, 60 long\nkeyseat   body, front: 7 P9 wide × 4 deep × 22 long\n          left end 10 from left face',
    ),
    shaft(
      '          body    ⌀30, 60 long\nkeyseat   body, front: 8 P9 wide × 4 deep × 22 long\n          left end 10 from left face',
    ),
  ),
  iso(
    'key-width-untoleranced',
    shaft(
      '          body    ⌀30, 60 long\nkeyseat   body, front: 8 wide × 4 deep × 22 long\n          left end 10 from left face',
    ),
    shaft(
      '          body    ⌀30, 60 long\nkeyseat   body, front: 8 P9 wide × 4 deep × 22 long\n          left end 10 from left face',
    ),
  ),
  iso(
    'ring-groove',
    shaft(
      '          body    ⌀30, 60 long\ngroove    body: 1.6 H13 wide, bottom ⌀28\n          right side 6 from right face',
    ),
    shaft(
      '          body    ⌀30, 60 long\ngroove    body: 1.6 H13 wide, bottom ⌀28.6 h11\n          right side 6 from right face',
    ),
  ),
  iso(
    'counterbore-under-head',
    `${block}\nhole      top: ⌀9 THRU, ⌴ ⌀13 ↧ 9${at}`,
    `${block}\nhole      top: ⌀9 THRU, ⌴ ⌀15 ↧ 9${at}`,
  ),
  iso(
    'counterbore-shallow',
    `${block}\nhole      top: ⌀9 THRU, ⌴ ⌀15 ↧ 6${at}`,
    `${block}\nhole      top: ⌀9 THRU, ⌴ ⌀15 ↧ 8.5${at}`,
  ),
  iso(
    'countersink-angle',
    `${block}\nhole      top: ⌀6.6 THRU, ⌵ ⌀13.4 × 82°${at}`,
    `${block}\nhole      top: ⌀6.6 THRU, ⌵ ⌀13.4 × 90°${at}`,
  ),
  iso(
    'countersink-under-head',
    `${block}\nhole      top: ⌀6.6 THRU, ⌵ ⌀10 × 90°${at}`,
    `${block}\nhole      top: ⌀6.6 THRU, ⌵ ⌀13 × 90°${at}`,
  ),
  iso(
    'named-screw',
    `note      Holes A for M8 screws.\n${block}\nhole A    top: ⌀8.2 THRU${at}`,
    `note      Holes A for M8 screws.\n${block}\nhole A    top: ⌀9 THRU${at}`,
  ),
  iso(
    'pattern-clearance',
    'general   ISO 2768-v\nplate     400 × 60 × 8\nholes     top: 2X ⌀5.5 THRU\n          200 apart, centred; centred up',
    'general   ISO 2768-m\nplate     400 × 60 × 8\nholes     top: 2X ⌀5.5 THRU\n          200 apart, centred; centred up',
  ),
  iso(
    'dowel-distance',
    `${block}\nholes     top: 2X ⌀8 H7 THRU\n          50 apart, centred; centred up`,
    `${block}\nholes     top: 2X ⌀8 H7 THRU\n          50 ±0.02 apart, centred; centred up`,
  ),
]

const handling: readonly Case[] = [
  iso('heavy-part', 'block     300 × 200 × 60', 'block     240 × 200 × 60'),
  iso(
    'lifting-point',
    'block     400 × 300 × 60',
    'block     400 × 300 × 60\nhole      top: M12 ↧ 24, drill ⌀10.2 ↧ 30\n          centred both ways',
  ),
  iso('mass-unknown', `material  fibre board FB-200\n${block}`, block),
  iso('sharp-plate-corners', `no edges\n${plate}`, `no edges\n${plate}\nround     corners: 4X R5`),
]

const tolerances: readonly Case[] = [
  iso(
    'finer-than-process',
    'note      Cut by plasma.\nplate     100 ±0.2 × 60 × 8',
    'note      Cut by plasma.\nplate     100 ±0.8 × 60 × 8',
  ),
  iso(
    'rough-for-tolerance',
    `texture   Ra 6.3\n${block}\nhole      top: ⌀20 H7 THRU${at}`,
    `texture   Ra 1.6\n${block}\nhole      top: ⌀20 H7 THRU${at}`,
  ),
  // A symbol holds for its own surface, the title block for all others (ISO 21920-1, ISO 1302, from memory).
  iso(
    'rough-for-tolerance',
    `texture   Ra 6.3\n${block}\nhole A    top: ⌀20 H7 THRU${at}\ntexture   bottom: Ra 0.4, ground`,
    `texture   Ra 6.3\n${block}\nhole A    top: ⌀20 H7 THRU${at}\ntexture   hole A: Ra 1.6, bored`,
  ),
  iso(
    'grinding-not-said',
    `${block} ±0.004\nhole A    top: ⌀20 H7 THRU${at}\ntexture   hole A: Ra 0.4, honed`,
    `${block} ±0.004\ntexture   top: Ra 0.4, ground\ntexture   bottom: Ra 0.4, ground`,
  ),
  iso('wider-than-general', 'block     80 ±0.5 × 50 × 30', 'block     80 ±0.1 × 50 × 30'),
  iso(
    'grinding-not-said',
    'block     80 × 50 × 30 ±0.004',
    'note      Top and bottom ground.\nblock     80 × 50 × 30 ±0.004',
  ),
  // M6 in a normal hole ⌀6.6 (ISO 273) leaves 0.6 for both parts; ISO 2768-1 class c holds 50 to ±0.8, class m to ±0.3.
  iso(
    'fixed-fastener',
    `general   ISO 2768-c\n${block}\nholes     top: 4X M6 ↧ 12, drill ⌀5 ↧ 16\n          2 across 50 apart, centred; 2 up 35 apart, centred`,
    `general   ISO 2768-m\n${block}\nholes     top: 4X M6 ↧ 12, drill ⌀5 ↧ 16\n          2 across 50 apart, centred; 2 up 35 apart, centred`,
  ),
  iso(
    'stack-out-of-limits',
    `${block}\nhole A    top: ⌀10 THRU\n          10 from left; centred up\nstack     web: hole A edge to left, min 4.8`,
    `${block}\nhole A    top: ⌀10 H11 THRU\n          10 ±0.05 from left; centred up\nstack     web: hole A edge to left, min 4.8`,
  ),
  iso(
    'stack-open',
    'plate     80 × 50 × 30 STK\nstack     height: bottom to top',
    'plate     80 × 50 × 30 ±0.3\nstack     height: bottom to top',
  ),
  iso(
    'stack-vanishes',
    shaft('          left    ⌀20, 30 long\n          collar  ⌀30, to 30.4\n          right   ⌀20, to 60').replace(
      'axis left-right',
      'axis left-right; lengths from left face',
    ),
    shaft('          left    ⌀20, 30 long\n          collar  ⌀30, to 34\n          right   ⌀20, to 60').replace(
      'axis left-right',
      'axis left-right; lengths from left face',
    ),
  ),
  iso('stock-size-odd', 'plate     100 × 60 × 5.3 STK', 'plate     100 × 60 × 5 STK'),
]

export const cases: readonly Case[] = [
  ...completeness,
  ...titleCases,
  ...practice,
  crowdedCase,
  ...making,
  ...threadCases,
  ...fitting,
  ...frameCases,
  ...datumCases,
  ...handling,
  ...tolerances,
  ...formCases,
  ...moreFormCases,
  ...shaftThreadCases,
]
