/**
 * The stated cost of a placement (docs/placement.md). Units are arbitrary; what counts is the order: anything
 * `Infinity` is never drawn, a crossed dimension line costs more than a row further out, and so on down to taste.
 */
export const WEIGHTS = {
  /** A size left off the sheet. */
  unplaced: 400,
  /** A dimension line crossed by an extension line. */
  extensionOverDimension: 24,
  /** A dimension line crossed by a leader. */
  leaderOverDimension: 24,
  extensionOverExtension: 2,
  leaderOverExtension: 3,
  /** An extension line through an arrowhead of another size; it is broken there. */
  extensionOverArrow: 14,
  /** The same at the head of a leader, whose own line tells it apart. */
  extensionOverLeaderHead: 4,
  /** A leader's head beside an extension line, where it seems to point at that. */
  leaderHeadNearExtension: 2.5,
  /** An extension line over the arrow of a cutting-plane line. */
  extensionOverSectionArrow: 6,
  /** Lines of different sizes side by side closer than they can be told apart. */
  tooClose: 6,
  /** Leader parallel to a neighbouring line. */
  parallelLeader: 0.8,
  /** Texts on one level nearer than a letter's height, which read as one. */
  textsInLine: 4,
  /** Text that a line of another size all but touches. */
  textNearLine: 1,
  /** Text straight over the text of the next row. */
  notStaggered: 0.4,
  /** Sizes of one baseline or chain on different sides. */
  groupApart: 4,
  /** By line kind of the view: what a dimension line, an extension line, a leader crosses. */
  over: {
    dimension: { visible: 12, hidden: 5, centre: 2, other: 4 },
    extension: { visible: 1.6, hidden: 0.6, centre: 0.15, other: 0.8 },
    leader: { visible: 3, hidden: 1, centre: 0.6, other: 2.5 },
    shoulder: { visible: 8, hidden: 3, centre: 1, other: 5 },
    arrow: { visible: Infinity, hidden: 4, centre: 2, other: 4 },
  },
  /** A leader's head over the walls of a groove narrower than itself. */
  headInGroove: 2,
  /** An extension line or leader that runs on along a view line. */
  alongOutline: 6,
  /** An extension line or leader that runs on all but along a circle: which of the two does it belong to? */
  grazing: 5,
  /** An extension line just beside an edge that it does not belong to: the two read as one feature, a thread or a step. */
  besideEdge: 8,
  /** A shoulder on or just beside a parallel outline. */
  shoulderNearOutline: 20,
  /** A leader's elbow on an outline, or all but on it. */
  elbowAtOutline: 5,
  /** A leader over a corner of the outline, where it seems to point. */
  leaderOverCorner: 9,
  /** A dimension line nearer to a parallel outline than the first row's distance. */
  nearOutline: 40,
  /** Text within the view's outline: in a void open to one side, or over the part. */
  textInVoid: 0.6,
  textOverPart: 20,
  /** The same for a note on a leader, by its size: a letter beside what it means is soon told from the part. Per mm². */
  noteOverPart: 6,
  largeNoteOverPart: 0.1,
  /** Text that breaks a centre line. */
  textOverCentre: 1.5,
  /** A dimension line or leader over hatching. */
  overHatching: 4,
  /** Leader within 10° of the hatching it lies in. */
  alongHatching: 5,
  /** Per mm of a text outside its extension lines. */
  longTextOutside: 0.06,
  /** Per mm. */
  rowDistance: 0.15,
  extensionLength: 0.03,
  /** Of an extension line's length over the part: up to the last outline it crosses. */
  extensionOverPart: 0.06,
  /** Of what lies further over the part than the eye follows at a glance (`FAR`), besides. */
  farOverPart: 0.12,
  leaderLength: 0.08,
  /** Of what a leader is longer than the eye follows at a glance (`LONG`), besides. */
  longLeader: 0.12,
  /** A diameter's line through its own step; per mm nearer to the step's face than is easy to read. */
  acrossStep: 0.6,
  nearFace: 0.4,
  /** Its text in the line; past the edge; each step of the tail; on a shoulder. */
  textInStep: 0.8,
  textPastStep: 0.4,
  longTail: 0.5,
  bent: 0.6,
  /** A leader to the edge of the step. */
  leaderToStep: 9,
  /** Extension lines of a diameter that run on along another step of that diameter: it would seem to be that step's. */
  atAnotherStep: 60,
  /** A row measured from the feature instead of the view's outline. */
  innerRow: 1.2,
  /** Such a row over the part, where the feature does not see out on that side. */
  rowOverPart: 2,
  /** The same where it is not in a void of the part either. */
  rowOnPart: 16,
  /** A size of several features (`2X`) at another of them than the first. */
  atAnotherPlace: 1.5,
  /** Towards a view that shares the size; less than nothing, so that all costs stay positive it is charged to the others. */
  awayFromNeighbour: 1.5,
  belowOrLeft: 0.25,
  /** Text moved along its line, for each step. */
  textShift: 0.3,
  /** Text where the extension line of a longer size will want to pass. */
  textInTheWay: 0.8,
  arrowsOutside: 1.2,
  /** A length along an arc with its line on the part's own side. */
  arcOverPart: 12,
  textOutside: 2.5,
  /** Text on a leader to the dimension line, where neither inside nor outside has room along the line. */
  textOnLeader: 4,
  dot: 2,
  /** Leader angle other than 30°, 45°, 60°. */
  oddAngle: 0.5,
  /** A tag that stands nearer to another outline than to its own hole. */
  tagAstray: 12,
  leftwardLeader: 0.2,
  /** A radius of a slot's end shown from within: its leader comes in over the far side. */
  overFarSide: 8,
  /** A note to a circle drawn as a dimension line through its centre. */
  noteThrough: 3,
} as const
