import type { Case } from './cases.ts'

/** Degrees of freedom: a plane holds two turns and a shift, an axis two turns and two shifts (ASME Y14.5-2018 section 7, ISO 5459). */
const plate = (more: string) => `plate     100 × 60 × 10
holes A   top: 4X ⌀9 THRU
          2 across 60 apart, leftmost 20 from left; 2 up 40 apart, lowest 10 from front
bore      top: ⌀20 H7 THRU
          50 from left; 30 from front
${more}`
const shaft = (more: string) => `turned    axis left-right
          left    ⌀20 k6, 30 long
          collar  ⌀60, 8 long
          right   ⌀20 k6, 30 long
${more}`

const bearing = (place: string) => `outline   40 thick, face front
          right 120; up 15; left 30; up 45; arc R 30 to 30 across, 60 up, turning left; down 45; left 30; close
bore      front: ⌀25 H7 THRU
          ${place}
datum     A  bottom
datum     B  left
frame     bore: position dia 0.05 A B`

const iso = (rule: string, bad: string, good: string): Case => ({ rule, on: 'iso', bad, good })

export const datumCases: readonly Case[] = [
  iso(
    'basic-from-elsewhere',
    plate('datum     A  bottom\ndatum     B  right\ndatum     C  rear\nframe     holes A: position dia 0.3 A B C'),
    plate('datum     A  bottom\ndatum     B  left\ndatum     C  front\nframe     holes A: position dia 0.3 A B C'),
  ),
  // The arc's axis is 15 + 45 from the bottom, by sizes with tolerances of their own.
  iso('basic-from-elsewhere', bearing('on axis of side 3'), bearing('60 from left; 60 from bottom')),
  iso(
    'datum-feature-twice',
    plate('datum     A  bottom\ndatum     B  bottom\nframe     top: parallelism 0.1 A'),
    plate('datum     A  bottom\ndatum     B  left\nframe     top: parallelism 0.1 A'),
  ),
  iso(
    'datum-idle',
    plate('datum     A  bottom\ndatum     B  top\nframe     bore: perpendicularity dia 0.1 A B'),
    plate('datum     A  bottom\ndatum     B  left\nframe     bore: perpendicularity dia 0.1 A B'),
  ),
  iso(
    'datum-order-differs',
    plate(
      'datum     A  bottom\ndatum     B  left\ndatum     C  front\nframe     holes A: position dia 0.3 A B C\nframe     bore: position dia 0.1 A C B',
    ),
    plate(
      'datum     A  bottom\ndatum     B  left\ndatum     C  front\nframe     holes A: position dia 0.3 A B C\nframe     bore: position dia 0.1 A B C',
    ),
  ),
  iso(
    'datum-unstable',
    shaft('datum     A  left face\nframe     collar left face: parallelism 0.1 A').replace('⌀60', '⌀70'),
    shaft('datum     A  collar left face\nframe     left face: parallelism 0.1 A').replace('⌀60', '⌀70'),
  ),
  iso(
    'datums-leave-free',
    plate('datum     A  bottom\ndatum     B  left\nframe     holes A: position dia 0.3 A B'),
    plate('datum     A  bottom\ndatum     B  left\ndatum     C  front\nframe     holes A: position dia 0.3 A B C'),
  ),
  // The middle plane of a vee is square to the bottom: a plane holds two turns and one shift, none of them this one.
  iso(
    'datums-leave-free',
    'block     80 × 45 × 40\nnotch     front, top: vee, 40 wide, 90°\n          centred\ndatum     A  bottom\nframe     notch: symmetry 0.05 A',
    'block     80 × 45 × 40\nnotch     front, top: vee, 40 wide, 90°\n          centred\ndatum     A  length\nframe     notch: symmetry 0.05 A',
  ),
  iso('line-direction-open', plate('frame     top: straightness 0.05'), plate('frame     top: flatness 0.05')),
  iso(
    'orientation-not-so',
    plate('datum     A  bottom\nframe     top: perpendicularity 0.1 A'),
    plate('datum     A  bottom\nframe     left: perpendicularity 0.1 A'),
  ),
  // ISO 2768-1 class m: 60 is held to ±0.3, which comes to ⌀0.85 (2√2 × 0.3).
  iso(
    'zone-wider-than-general',
    plate('datum     A  bottom\ndatum     B  left\ndatum     C  front\nframe     holes A: position dia 0.9 A B C'),
    plate('datum     A  bottom\ndatum     B  left\ndatum     C  front\nframe     holes A: position dia 0.8 A B C'),
  ),
]
