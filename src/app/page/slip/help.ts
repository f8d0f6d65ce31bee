import type { Keyword } from '../../../brief/vocabulary.ts'
import type { Ground } from './help-grounds.ts'

/** What a statement means, for the one who writes it. */
export interface StatementHelp {
  /** A few words beside the keyword in a list. */
  readonly short: string
  readonly text: string
  readonly example: string
  /** The part that the example's picture is drawn on; absent: it is a stock itself. */
  readonly on?: Ground
}

export const statementHelp: Readonly<Record<Keyword, StatementHelp>> = {
  part: {
    short: 'title',
    text: 'The part’s name, the title of the drawing.',
    example: 'part      Vent motor bracket',
    on: 'block',
  },
  number: {
    short: 'drawing number',
    text: 'The drawing number, with the revision beside it.',
    example: 'number    VB-1042   rev B',
    on: 'block',
  },
  revision: { short: 'revision', text: 'The revision letter.', example: 'revision  B', on: 'block' },
  units: {
    short: 'inch or mm',
    text: 'The unit of every number without one beside it.',
    example: 'units     inch',
    on: 'block',
  },
  practice: {
    short: 'ASME or ISO',
    text: 'The drafting practice: line widths, dashes, words and signs follow it. ASME is third angle; ISO is first angle unless third is said.',
    example: 'practice  ISO, first angle',
    on: 'block',
  },
  decimal: { short: 'comma or point', text: 'Lets 5,5 be one number.', example: 'decimal   comma', on: 'block' },
  material: {
    short: 'title block',
    text: 'Material with specification and condition.',
    example: 'material  steel EN 10025 S235JR',
    on: 'block',
  },
  general: {
    short: 'tolerances',
    text: 'General tolerances: by decimals, fractions, angles, or a standard’s class.',
    example: 'general   ISO 2768-m',
    on: 'block',
  },
  coating: {
    short: 'title block',
    text: 'Coating or finish of the whole part.',
    example: 'coating   zinc plated ISO 2081 Fe/Zn 8/C',
    on: 'block',
  },
  texture: {
    short: 'title block, or one surface',
    text: 'General surface texture; with a surface and a colon, that of the surface: machined or not, its lay, how it is made.',
    example: 'texture   top: Ra 0.8, machined, ground',
    on: 'block',
  },
  edges: {
    short: 'title block',
    text: 'How edges are broken.',
    example: 'edges     edges broken 0.2 to 0.5',
    on: 'block',
  },
  note: {
    short: 'on the sheet',
    text: 'One note; the sheet numbers them.',
    example: 'note      Form with the grain across the bend.',
    on: 'block',
  },
  notes: {
    short: 'on the sheet',
    text: 'Several notes, one a line.',
    example: 'notes     1. Made in pairs.',
    on: 'block',
  },
  drawn: {
    short: 'name, date',
    text: 'Who drew it, and the date as typed.',
    example: 'drawn     I. Vasperg, 2024-02-05',
    on: 'block',
  },
  checked: {
    short: 'name, date',
    text: 'Who checked it, and the date as typed.',
    example: 'checked   P. Quillfeather, 2024-02-07',
    on: 'block',
  },
  approved: {
    short: 'name, date',
    text: 'Who approved it, and the date as typed.',
    example: 'approved  S. Orbanek, 2024-02-08',
    on: 'block',
  },
  firm: { short: 'title block', text: 'The firm.', example: 'firm      Tarnholt Air & Pack Works', on: 'block' },
  document: { short: 'title block', text: 'The type of document.', example: 'document  Detail drawing', on: 'block' },
  standard: {
    short: 'title block',
    text: 'The governing standard.',
    example: 'standard  ASME Y14.5-2018',
    on: 'block',
  },
  sheet: {
    short: 'format',
    text: 'The sheet’s format, where it must be a certain one.',
    example: 'sheet     A3',
    on: 'block',
  },
  scale: {
    short: 'paper : part',
    text: 'The scale, where it must be a certain one.',
    example: 'scale     1:2',
    on: 'block',
  },
  plate: {
    short: 'made from',
    text: 'Length × width × thickness. Lies flat, or stands with face front.',
    example: 'plate     8.00 × 5.00 × 1/4 STK',
  },
  block: {
    short: 'made from',
    text: 'Long (left-right) × wide (front-rear) × high (up-down).',
    example: 'block     70 × 50 × 50',
  },
  angle: {
    short: 'made from',
    text: 'Formed, rolled or machined; thickness; inside radius; upright, base and length.',
    example:
      'angle     formed, .188 STK, inside R .19\n          upright 3.50 high, at rear; base 2.25 toward front; length 3.00',
  },
  channel: {
    short: 'made from',
    text: 'Web height × flange width × thickness, and the length.',
    example: 'channel   80 high × 45 wide × 6 thick, 200 long',
  },
  tee: {
    short: 'made from',
    text: 'Stem height × flange width × thickness, and the length.',
    example: 'tee       50 high × 50 wide × 6 thick, 120 long',
  },
  'flat bar': {
    short: 'made from',
    text: 'Width × thickness, and the length.',
    example: 'flat bar  1-1/2 STK × 1/4 STK, 8 long',
  },
  'round bar': {
    short: 'made from',
    text: 'Diameter and length.',
    example: 'round bar ⌀25 h9, 120 long, axis left-right',
  },
  tube: {
    short: 'made from',
    text: 'Outside, and inside or wall, and the length.',
    example: 'tube      ⌀62 outside, ⌀45 inside, 12 long',
  },
  disc: {
    short: 'made from',
    text: 'Diameter × thickness, and where the outer face looks.',
    example: 'disc      ⌀140 × 16, outer face front',
  },
  turned: {
    short: 'made from',
    text: 'One step a line, from left to right: name, diameter, and its own length or its right end; tapered to another diameter, or by its rate: tapered 1:10.',
    example: 'turned    axis left-right\n          left    ⌀20 k6, 28 long\n          right   ⌀16, to 92',
  },
  outline: {
    short: 'made from',
    text: 'A closed outline by moves × thickness: right 120, slope left 100 up at 1:20, arc R 20 to a point or 40 long, close.',
    example: 'outline   8 thick, face front\n          right 120; up 20; slope left 100 up 100; left 20; close',
  },
  hole: {
    short: 'worked into it',
    text: 'The face, a diameter, THRU or a depth; then how many across and up, how far apart, from where.',
    example: 'holes     upright, from front: 2X ⌀.281 THRU\n          2 across 1.500 apart, centred; 1.50 from bottom',
    on: 'angle',
  },
  bore: {
    short: 'worked into it',
    text: 'One hole on the axis of a face.',
    example: 'bore      front: ⌀35 H7 THRU',
    on: 'disc',
  },
  slot: {
    short: 'worked into it',
    text: 'Width × length overall, through or a depth, and the long way.',
    example: 'slot      top: 11 × 40 overall THRU, long way left-right\n          centred both ways',
    on: 'block',
  },
  pocket: {
    short: 'worked into it',
    text: 'Across × up, a depth, and the corners’ radius.',
    example: 'pocket    top: 60 × 40 ↧ 10, corners R 6\n          centred both ways',
    on: 'block',
  },
  step: {
    short: 'worked into it',
    text: 'Material off along a whole edge, measured from its two faces.',
    example: 'step      top left: 30 from left, 12 from top',
    on: 'block',
  },
  notch: {
    short: 'worked into it',
    text: 'Right through from an edge: square or vee. A slit may run out: to bore.',
    example: 'notch     front, top: vee, 36 wide, 90°\n          centred',
    on: 'block',
  },
  chamfer: {
    short: 'along edges',
    text: 'Edges by name, a leg and an angle or two legs.',
    example: 'chamfer   bottom rear edge: 3 × 45°',
    on: 'block',
  },
  round: {
    short: 'along edges',
    text: 'Outside corners made round.',
    example: 'round     upright, top corners: 2X R.50',
    on: 'angle',
  },
  fillet: {
    short: 'along edges',
    text: 'Inside corners filled.',
    example: 'fillet    inside corner: R.25',
    on: 'sharp angle',
  },
  boss: {
    short: 'added',
    text: 'A round boss on a face.',
    example: 'boss      top: ⌀30 × 8 high\n          centred both ways',
    on: 'block',
  },
  spigot: {
    short: 'added',
    text: 'A boss on the axis of the face.',
    example: 'spigot    rear: ⌀90 f7 × 6 high',
    on: 'disc',
  },
  groove: {
    short: 'worked into it',
    text: 'Round a turned surface: width, bottom diameter, where a wall sits.',
    example: 'groove    body: 2.2 wide, bottom ⌀20\n          right side 4 from body right face',
    on: 'shaft',
  },
  flat: {
    short: 'worked into it',
    text: 'A flat on a round surface.',
    example: 'flat      nose, top: 14 across, 20 long\n          right end 4 from nose right face',
    on: 'shaft',
  },
  keyseat: {
    short: 'worked into it',
    text: 'Width × depth × length, and where an end sits.',
    example: 'keyseat   body, front: 6 wide × 3.5 deep × 22 long\n          left end 4 from collar right face',
    on: 'shaft',
  },
  datum: {
    short: 'at a feature',
    text: 'A letter for the feature that a datum is taken from: a face, or a hole, shaft or width.',
    example: 'datum     A  bottom',
    on: 'block',
  },
  frame: {
    short: 'at a feature',
    text: 'A geometric tolerance of one feature, with the symbols or in words. Datum letters follow the value; MMC, LMC, projected, all around may be said.',
    example: 'frame     holes A: position dia 0.2 MMC A',
    on: 'block',
  },
  stack: {
    short: 'what sizes add up to',
    text: 'What lies between two faces or axes, and the limits it must keep to, by the worst case unless root-sum-square is said. The program finds the sizes that lead from one to the other.',
    example: 'stack     web: hole A edge to left, min 4',
    on: 'block',
  },
  views: {
    short: 'on the sheet',
    text: 'Which views; without it the program proposes them.',
    example: 'views     front, top; section A-A through hole A as right; pictorial',
    on: 'block',
  },
  section: {
    short: 'on the sheet',
    text: 'A section by its letter.',
    example: 'section   A-A through hole A',
    on: 'viewed block',
  },
  pictorial: { short: 'on the sheet', text: 'Asks for the pictorial.', example: 'pictorial', on: 'block' },
  show: { short: 'on the sheet', text: 'Asks for a reference size.', example: 'show      overall (120)', on: 'shaft' },
  sizes: {
    short: 'on the sheet',
    text: 'How sizes are given: baseline, chain, ordinate, hole table.',
    example: 'sizes     baseline of holes A',
    on: 'block',
  },
  place: {
    short: 'on the sheet',
    text: 'Holds a size, a view, a section or the pictorial at a place.',
    example: 'place     80 in top view, row 2, above',
    on: 'block',
  },
  accept: {
    short: 'a mark that stands',
    text: 'Says why a mark of the checker stands as it is: the rule, what it is at, its figures, and the reason. It wakes when a figure changes.',
    example: 'accept    hole-near-edge at hole 1 with 1 mm because the web carries no load',
    on: 'block',
  },
}
