/** Briefs that between them carry every kind of callout, by practice: worked from a block, turned, and cut from plate. */
export const calloutSheets = {
  'ISO block': `part      Callout block
number    CB-1            rev A
units     mm
practice  ISO, first angle
material  S355J2 EN 10025-2
general   ISO 2768-mK
texture   Ra 3.2
edges     edges broken 0.2 to 0.5
drawn     I. Vasperg, 2024-02-05
firm      Tarnholt Air & Pack Works

block     240 × 150 × 40 ±0.1
holes A   top: 4X ⌀9 THRU, ⌴ ⌀15 ↧ 9
          2 across 210 apart, centred; 2 up 120 apart, centred
holes B   top: 2X ⌀6.6 THRU, ⌵ ⌀12.4 × 90°
          2 across 60 apart, leftmost 90 from left; 125 from front
hole C    top: ⌀12 H7 ↧ 20, flat bottom
          60 from left; 120 from front
hole D    top: M8 - 6H ↧ 16, drill ⌀6.8 ↧ 21
          60 from left; 80 from front
hole E    top: ⌀11 THRU, spotface ⌀24 ↧ 1
          60 from left; 35 from front
hole F    top: G1/4 THRU, drill ⌀11.8
          105 from left; 30 from front
hole G    top: ⌀20 +0.1 0 THRU
          120 ±0.05 from left; 80 from front
hole H    top: ⌀16.05/16.00 THRU
          150 from left; 30 from front
slots J   top: 2X 11 × 40 overall THRU, long way front-rear
          2 across 30 apart, leftmost 175 from left; 90 from front
pocket    top: 40 × 24 ↧ 6, corners R 5
          190 from left; 35 from front
chamfer   front left corner: 8 × 30°
round     front right corner and rear right corner: 2X R10
`,
  'ISO shaft': `part      Callout shaft
number    CT-1            rev A
units     mm
practice  ISO, first angle
material  C45E EN ISO 683-1
general   ISO 2768-mK
texture   Ra 1.6
edges     edges broken 0.2 to 0.5
drawn     I. Vasperg, 2024-02-05
firm      Tarnholt Air & Pack Works

turned    axis left-right
          screw   M20 × 1.5 - 6g, 30 long
          square  ⌀30, 30 long
          collar  ⌀50 0 -0.1, 12 ±0.1 long
          seat    ⌀35 k6, 40 long
          cone    ⌀30 tapered 1:10, 50 long
          stem    ⌀18 h9, 30 long
groove    screw: 3 wide, bottom ⌀17.5
          right side at square left face
flats     square: 4X 24 across, 20 long
          right end at collar left face
keyseat   seat, front: 10 P9 wide × 5 deep × 28 long
          left end 6 from collar right face
groove    seat: 3 wide, 0.5 deep
          left side at collar right face
round     right end outer edge: R9
chamfer   left end outer edge: 1.5 × 45°
show      overall (192)
`,
  'ISO plate': `part      Callout strap
number    CP-1            rev A
units     mm
practice  ISO, first angle
decimal   comma
material  S235JR EN 10025-2
general   ISO 2768-mK
texture   Ra 6,3
edges     edges broken 0,2 to 0,5
drawn     I. Vasperg, 2024-02-05
firm      Tarnholt Air & Pack Works

outline   12 thick, face front
          right 120; up 30; arc R 60, 50 long, turning left; to 0 across, 95 up; close
bore      front: ⌀10,5 THRU
`,
  'ASME block': `part      Callout block
number    CB-2            rev A
units     inch
practice  ASME
material  carbon steel ASTM A36
general   fractions ±1/64   .XX ±.01   .XXX ±.005   angles ±1/2°
texture   125 µin
edges     break sharp edges .005-.015
drawn     I. Vasperg, 2024-02-05
firm      Tarnholt Air & Pack Works

block     9.00 × 6.00 × 1-1/2
holes A   top: 4X ⌀.281 THRU, ⌴ ⌀.500 ↧ .281
          2 across 8.00 apart, centred; 2 up 5.00 apart, centred
holes B   top: 2X ⌀.281 THRU, ⌵ ⌀.53 × 82°
          2 across 2.50 apart, leftmost 3.50 from left; 5.00 from front
hole C    top: ⌀.5005/.5000 ↧ .75, flat bottom
          2.25 from left; 4.75 from front
hole D    top: 3/8-16 UNC-2B ↧ .75, drill ⌀.312 ↧ 1.00
          2.25 from left; 3.25 from front
hole E    top: ⌀.406 THRU, spotface ⌀.88
          2.25 from left; 1.25 from front
hole F    top: 1/4-18 NPT THRU, drill ⌀.438
          4.00 from left; 1.25 from front
hole G    top: ⌀.750 +.002 -.000 THRU
          4.50 ±.005 from left; 3.25 from front
hole H    top: M10 - 6H THRU
          5.50 from left; 1.25 from front
slots J   top: 2X .406 × 1.50 overall THRU, long way front-rear
          2 across 1.25 apart, leftmost 6.50 from left; 3.50 from front
pocket    top: 1.50 × .88 ↧ .25, corners R .19
          7.00 from left; 1.25 from front
chamfer   front left corner: .31 × 30°
round     front right corner and rear right corner: 2X R.38
`,
  'ASME shaft': `part      Callout shaft
number    CT-2            rev A
units     inch
practice  ASME
material  4140 ASTM A29
general   fractions ±1/64   .XX ±.01   .XXX ±.005   angles ±1/2°
texture   63 µin
edges     break sharp edges .005-.015
drawn     I. Vasperg, 2024-02-05
firm      Tarnholt Air & Pack Works

turned    axis left-right
          screw   3/4-16 UNF-2A, 1.25 long
          square  ⌀1.250, 1.25 long
          collar  ⌀2.00, .50 long
          seat    ⌀1.3760/1.3755, 1.75 long
          cone    ⌀1.250 tapered .1:1, 2.00 long
          stem    ⌀.750, 1.25 long
groove    screw: .12 wide, bottom ⌀.62
          right side at square left face
flats     square: 4X 1.00 across, .75 long
          right end at collar left face
keyseat   seat, front: .376/.375 wide × .188 deep × 1.00 long
          left end .25 from collar right face
groove    seat: .12 wide, .02 deep
          left side at collar right face
round     right end outer edge: R.375
chamfer   left end outer edge: .06 × 45°
show      overall (8.00)
`,
  'ASME plate': `part      Callout strap
number    CP-2            rev A
units     inch
practice  ASME
material  carbon steel ASTM A36
general   fractions ±1/64   .XX ±.01   .XXX ±.005   angles ±1/2°
texture   125 µin
edges     break sharp edges .005-.015
drawn     I. Vasperg, 2024-02-05
firm      Tarnholt Air & Pack Works

outline   .50 thick, face front
          right 5.00; up 1.25; arc R 2.50, 2.00 long, turning left; to 0 across, 3.75 up; close
bore      front: ⌀.406 THRU
`,
} as const
