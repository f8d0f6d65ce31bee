import type { Case } from './cases.ts'

/** A plate with a pattern of holes and a bore, two datums, and the frame in question. */
const plate = (frame: string, more = '') =>
  `plate     100 × 60 × 10
holes A   top: 4X ⌀9 THRU
          2 across 80 apart, centred; 2 up 40 apart, centred
bore      top: ⌀20 H7 THRU
          centred both ways
datum     A  bottom
datum     B  bore
${frame}${more}`
const inchPlate = (frame: string) =>
  `plate     4.00 × 3.00 × .50
holes A   top: 4X ⌀.281 THRU
          2 across 3.000 apart, centred; 2 up 2.000 apart, centred
bore      top: ⌀1.000 +.002 -.000 THRU
          centred both ways
datum     A  bottom
datum     B  bore
${frame}`
const shaft = (frame: string) =>
  `turned    axis left-right
          left    ⌀20 k6, 30 long
          body    ⌀30, 40 long
          right   ⌀20 k6, 30 long
datum     A  left
datum     B  right
datum     C  left face
${frame}`
const inchShaft = (frame: string) =>
  `turned    axis left-right
          seat    ⌀.7503/.7500, 1.50 long
          body    ⌀1.000, 2.50 long
${frame}`

const iso = (rule: string, bad: string, good: string): Case => ({ rule, on: 'iso', bad, good })
const asme = (rule: string, bad: string, good: string): Case => ({ rule, on: 'asme', bad, good })

const onPlate = (rule: string, bad: string, good: string) => iso(rule, plate(bad), plate(good))
const onInchPlate = (rule: string, bad: string, good: string) => asme(rule, inchPlate(bad), inchPlate(good))
const onShaft = (rule: string, bad: string, good: string) => iso(rule, shaft(bad), shaft(good))

const under = (first: string, second: string) => `${first}\n          ${second}`

export const frameCases: readonly Case[] = [
  onPlate(
    'all-around-not-profile',
    'frame     top: parallelism 0.1 A, all around',
    'frame     top: profile 0.1 A, all around',
  ),
  onInchPlate('combined-zone-of-iso', 'frame     top: flatness .010 CZ', 'frame     top: flatness .010'),
  onInchPlate(
    'composite-datum-order',
    under('frame     holes A: position dia .020 A B', 'dia .010 B'),
    under('frame     holes A: position dia .020 A B', 'dia .010 A'),
  ),
  onInchPlate(
    'composite-not-allowed',
    under('frame     top: parallelism .020 A', '.010 A'),
    under('frame     top: parallelism .020 A', 'parallelism .010 A'),
  ),
  onInchPlate(
    'composite-not-finer',
    under('frame     holes A: position dia .020 A B', 'dia .020 A'),
    under('frame     holes A: position dia .020 A B', 'dia .010 A'),
  ),
  onPlate(
    'composite-of-asme',
    under('frame     holes A: ⌖ ⌀0.5 A B', '⌀0.2 A'),
    under('frame     holes A: ⌖ ⌀0.5 A B', '⌖ ⌀0.2 A'),
  ),
  onPlate('datum-forbidden', 'frame     top: flatness 0.05 A', 'frame     top: flatness 0.05'),
  onPlate(
    'datum-letter',
    'datum     I  top\nframe     bore: perpendicularity dia 0.1 I',
    'datum     D  top\nframe     bore: perpendicularity dia 0.1 D',
  ),
  onPlate('datum-letter-repeated', 'datum     A  top', 'datum     D  top'),
  onPlate(
    'datum-material-needs-size',
    'frame     holes A: position dia 0.2 MMC A MMB B',
    'frame     holes A: position dia 0.2 MMC A B MMB',
  ),
  onPlate('datum-missing', 'frame     top: parallelism 0.1', 'frame     top: parallelism 0.1 A'),
  onPlate(
    'datum-on-itself',
    'frame     bore: perpendicularity dia 0.1 B',
    'frame     bore: perpendicularity dia 0.1 A',
  ),
  onPlate('datum-twice', 'frame     holes A: position dia 0.2 A B A', 'frame     holes A: position dia 0.2 A B'),
  onPlate('datum-unknown', 'frame     top: parallelism 0.1 D', 'frame     top: parallelism 0.1 A'),
  onPlate('datum-unused', 'frame     top: parallelism 0.1 A', 'frame     holes A: position dia 0.3 A B'),
  asme(
    'form-wider-than-size',
    inchShaft('frame     seat: cylindricity .0005'),
    inchShaft('frame     seat: cylindricity .0001'),
  ),
  onPlate('material-needs-size', 'frame     top: flatness 0.05 MMC', 'frame     top: flatness 0.05'),
  onShaft('material-not-allowed', 'frame     body: circularity 0.02 MMC', 'frame     body: circularity 0.02'),
  onPlate(
    'max-without-bonus',
    'frame     holes A: position dia 0.2 0.5 MAX A B',
    'frame     holes A: position dia 0.2 MMC 0.5 MAX A B',
  ),
  onInchPlate('position-of-surface', 'frame     top: position .010 A', 'frame     top: profile .010 A'),
  iso(
    'position-without-basic',
    plate('frame     holes A: position dia 0.2 A B').replace('80 apart', '80 ±0.1 apart'),
    plate('frame     holes A: position dia 0.2 A B'),
  ),
  onPlate(
    'projection-height',
    'frame     holes A: position dia 0.2 projected A B',
    'frame     holes A: position dia 0.2 projected 12 A B',
  ),
  onPlate('projection-not-allowed', 'frame     top: flatness 0.05 projected 12', 'frame     top: flatness 0.05'),
  onPlate(
    'refinement-coarser',
    'frame     top: parallelism 0.1 A\nframe     top: flatness 0.2',
    'frame     top: parallelism 0.1 A\nframe     top: flatness 0.05',
  ),
  onPlate('round-zone-of-surface', 'frame     top: parallelism dia 0.1 A', 'frame     top: parallelism 0.1 A'),
  onPlate('roundness-of-flat', 'frame     top: circularity 0.05', 'frame     top: flatness 0.05'),
  onShaft('runout-datum-material', 'frame     body: total runout 0.02 A MMB', 'frame     body: total runout 0.02 A'),
  onShaft('runout-without-axis', 'frame     body: total runout 0.02 C', 'frame     body: total runout 0.02 A-B'),
  onPlate(
    'tangent-plane-not-allowed',
    'frame     top: flatness 0.05 tangent plane',
    'frame     top: parallelism 0.05 tangent plane A',
  ),
  onPlate('texture-as-general', 'texture   top: Ra 1.6', 'texture   top: Ra 0.8'),
  onShaft('too-many-datums', 'frame     body: total runout 0.02 A B C', 'frame     body: total runout 0.02 A-B C'),
  onPlate('unequal-not-allowed', 'frame     top: parallelism 0.1 UZ 0.05 A', 'frame     top: profile 0.1 UZ 0.05 A'),
  onPlate(
    'unequal-of-other-practice',
    'frame     top: profile 0.1 unequal 0.02 A',
    'frame     top: profile 0.1 UZ 0.02 A',
  ),
  onInchPlate(
    'unequal-out-of-zone',
    'frame     top: profile .010 unequal .020 A',
    'frame     top: profile .010 unequal .005 A',
  ),
  onInchPlate(
    'withdrawn-characteristic',
    'frame     holes A: symmetry .010 B',
    'frame     holes A: position dia .010 A B',
  ),
  onPlate('zero-tolerance', 'frame     holes A: position dia 0 A B', 'frame     holes A: position dia 0 MMC A B'),
  onShaft('zone-must-be-round', 'frame     body: coaxiality 0.05 A-B', 'frame     body: coaxiality dia 0.05 A-B'),
  onPlate('zone-not-round', 'frame     top: flatness dia 0.05', 'frame     top: flatness 0.05'),
  onPlate(
    'zone-not-spherical',
    'frame     bore: perpendicularity spherical dia 0.1 A',
    'frame     bore: perpendicularity dia 0.1 A',
  ),
]
