import type { Stock } from './brief.ts'
import { characteristics } from './frame/frame.ts'
import { processWords, textureWords } from './geometric.ts'

/**
 * The words of the brief, as data: the reader checks spelling against them, the editor completes from them,
 * and part/ finds in the tables of names what it must be able to resolve.
 */

/** Statements whose rest is free text, kept as typed. */
export const textKeywords = [
  'part',
  'number',
  'revision',
  'material',
  'general',
  'coating',
  'texture',
  'note',
  'notes',
  'drawn',
  'checked',
  'approved',
  'firm',
  'document',
  'edges',
  'standard',
  'sheet',
  'scale',
  'accept',
] as const

/** Statements of a few fixed words. */
export const choiceKeywords = ['units', 'practice', 'decimal'] as const

/** What the shop starts from. */
export const stockKeywords = [
  'plate',
  'block',
  'angle',
  'channel',
  'tee',
  'flat bar',
  'round bar',
  'tube',
  'disc',
  'turned',
  'outline',
] as const

/** What is worked into it. Singular and plural read alike. */
export const featureKeywords = [
  'hole',
  'bore',
  'slot',
  'pocket',
  'step',
  'notch',
  'chamfer',
  'round',
  'fillet',
  'boss',
  'spigot',
  'groove',
  'flat',
  'keyseat',
] as const

/** Geometric tolerances: what datums are taken from, and the frames; what sizes must add up to. */
export const geometricKeywords = ['datum', 'frame', 'stack'] as const

/** Requests about the sheet. */
export const requestKeywords = ['views', 'section', 'pictorial', 'show', 'place', 'sizes'] as const

export type TextKeyword = (typeof textKeywords)[number]
export type ChoiceKeyword = (typeof choiceKeywords)[number]
export type StockKeyword = (typeof stockKeywords)[number]
export type FeatureKeyword = (typeof featureKeywords)[number]
export type GeometricKeyword = (typeof geometricKeywords)[number]
export type RequestKeyword = (typeof requestKeywords)[number]
export type Keyword = TextKeyword | ChoiceKeyword | StockKeyword | FeatureKeyword | GeometricKeyword | RequestKeyword

export const keywords: readonly Keyword[] = [
  ...textKeywords,
  ...choiceKeywords,
  ...stockKeywords,
  ...featureKeywords,
  ...geometricKeywords,
  ...requestKeywords,
]

/** Other spellings of a keyword, and the keyword they stand for. */
export const keywordSpellings: Readonly<Record<string, Keyword>> = {
  title: 'part',
  no: 'number',
  rev: 'revision',
  unit: 'units',
  finish: 'coating',
  edge: 'edges',
  angles: 'angle',
  bar: 'round bar',
  pipe: 'tube',
  disk: 'disc',
  holes: 'hole',
  bores: 'bore',
  slots: 'slot',
  pockets: 'pocket',
  steps: 'step',
  notches: 'notch',
  chamfers: 'chamfer',
  rounds: 'round',
  fillets: 'fillet',
  bosses: 'boss',
  spigots: 'spigot',
  grooves: 'groove',
  flats: 'flat',
  keyseats: 'keyseat',
  keyway: 'keyseat',
  keyways: 'keyseat',
  drill: 'hole',
  radius: 'round',
  datums: 'datum',
  stacks: 'stack',
  frames: 'frame',
  view: 'views',
  sections: 'section',
}

/** Words that may stand within each statement, beside names and numbers. */
const lieWords = ['left-right', 'front-rear', 'up-down'] as const
const sideWords = ['left', 'right', 'front', 'rear', 'top', 'bottom'] as const
const placementWords = [
  'across',
  'up',
  'apart',
  'centred',
  'both',
  'ways',
  'lowest',
  'highest',
  'leftmost',
  'rightmost',
  'frontmost',
  'rearmost',
  'centre',
  'centres',
  'lower',
  'upper',
  'side',
  'end',
  'from',
  'on',
  'axis',
  'of',
  'bolt',
  'circle',
  'equal',
  'one',
  'first',
  'at',
  "o'clock",
  'astride',
  'about',
  'and',
  'mirrored',
  ...lieWords,
] as const
const cutWords = ['THRU', 'deep', 'dia'] as const

export const phraseWords: Readonly<
  Record<StockKeyword | FeatureKeyword | GeometricKeyword | RequestKeyword | 'texture', readonly string[]>
> = {
  datum: [],
  frame: [
    ...Object.keys(characteristics),
    'dia',
    'spherical',
    'MMC',
    'LMC',
    'RFS',
    'MMB',
    'LMB',
    'RMB',
    'MAX',
    'projected',
    'tangent plane',
    'free state',
    'unequal',
    'all around',
  ],
  stack: ['to', 'edge', 'min', 'max', 'worst case', 'root-sum-square', 'with bonus', ...lieWords],
  texture: ['Ra', 'Rz', 'µin', ...textureWords, ...processWords],
  plate: ['long', 'wide', 'thick', 'STK', 'face', ...sideWords],
  block: ['long', 'wide', 'high', 'STK'],
  angle: [
    'formed',
    'rolled',
    'machined',
    'STK',
    'thick',
    'inside',
    'toe',
    'R',
    'upright',
    'high',
    'at',
    'base',
    'toward',
    'length',
    'long',
    ...sideWords,
  ],
  channel: ['high', 'wide', 'thick', 'long', 'STK', 'axis', ...lieWords],
  tee: ['high', 'wide', 'thick', 'long', 'STK', 'axis', ...lieWords],
  'flat bar': ['wide', 'thick', 'long', 'STK', 'face', ...sideWords],
  'round bar': ['dia', 'long', 'STK', 'axis', ...lieWords],
  tube: ['outside', 'inside', 'wall', 'long', 'STK', 'axis', ...lieWords],
  disc: ['dia', 'thick', 'STK', 'outer', 'face', ...sideWords],
  turned: [
    'axis',
    'lengths',
    'from',
    'long',
    'to',
    'tapered',
    'toward',
    'large',
    'small',
    'end',
    'dia',
    ...lieWords,
    ...sideWords,
  ],
  outline: [
    'thick',
    'STK',
    'face',
    'up',
    'down',
    'to',
    'across',
    'slope',
    'at',
    'deg',
    'arc',
    'R',
    'long',
    'turning',
    'close',
    ...sideWords,
  ],
  hole: [
    ...placementWords,
    ...cutWords,
    'cbore',
    'csk',
    'spotface',
    'point',
    'flat',
    'bottom',
    'drill',
    'to',
    'one',
    'wall',
    'tapped',
    'UNC',
    'UNF',
  ],
  bore: [...placementWords, ...cutWords, 'cbore', 'csk', 'spotface', 'point', 'flat', 'bottom'],
  slot: [...placementWords, ...cutWords, 'wide', 'overall', 'long', 'way', 'open', 'to'],
  pocket: [...placementWords, ...cutWords, 'across', 'up', 'corners', 'R'],
  step: ['from', 'and', ...sideWords],
  notch: [...placementWords, 'square', 'vee', 'wide', 'deep', 'to', ...sideWords],
  chamfer: ['deg'],
  round: ['R'],
  fillet: ['R'],
  boss: [...placementWords, 'dia', 'high'],
  spigot: [...placementWords, 'dia', 'high'],
  groove: [...placementWords, 'wide', 'deep', 'bottom', 'dia'],
  flat: [...placementWords, 'across', 'long'],
  keyseat: [...placementWords, 'wide', 'deep', 'over', 'long'],
  views: ['section', 'half', 'full', 'through', 'as', 'pictorial', 'no', ...sideWords],
  section: ['half', 'full', 'through', 'as', ...sideWords],
  pictorial: ['no'],
  show: ['overall', 'length', 'width', 'height'],
  place: ['in', 'at', 'view', 'section', 'pictorial', 'row', 'above', 'below', 'across', 'up', ...sideWords],
  sizes: ['baseline', 'chain', 'ordinate', 'hole', 'table', 'of'],
}

/** The names that part/ resolves for one kind of stock. A name may carry the word face, edge or edges at its end. */
interface NameTable {
  /** Surfaces that can be worked or measured from. */
  readonly faces: readonly string[]
  /** Edges and corners for chamfers, rounds and fillets. */
  readonly edges: readonly string[]
  /** Axes and middle planes. */
  readonly axes: readonly string[]
}

const boxFaces = sideWords
/** The edge of two faces, both orders; a corner is the edge square to the large face. */
const boxEdges = [
  'top left edge',
  'top right edge',
  'top front edge',
  'top rear edge',
  'bottom left edge',
  'bottom right edge',
  'bottom front edge',
  'bottom rear edge',
  'front left edge',
  'front right edge',
  'rear left edge',
  'rear right edge',
  'top edges',
  'bottom edges',
  'left edges',
  'right edges',
  'front edges',
  'rear edges',
  'all edges',
] as const
const boxCorners = [
  'corners',
  'front left corner',
  'front right corner',
  'rear left corner',
  'rear right corner',
  'top left corner',
  'top right corner',
  'bottom left corner',
  'bottom right corner',
  'left corners',
  'right corners',
  'front corners',
  'rear corners',
  'top corners',
  'bottom corners',
] as const
const roundFaces = ['left face', 'right face', 'front face', 'rear face', 'top face', 'bottom face', 'outside'] as const
const roundEdges = [
  'ends',
  'outer edges',
  'left face outer edge',
  'right face outer edge',
  'front face outer edge',
  'rear face outer edge',
] as const

/**
 * Names by kind of stock. Besides these, everywhere: the part's own six sides; `bore`, `boss`, and labelled features
 * (`hole A`); for a bore `bore edges`, `bore left edge`; for a boss `boss end`, `boss end edge`, `boss foot` (or `root`); `axis`.
 * In a turned part every step's name is a surface, `<name> left face` and `<name> right face` are its shoulders,
 * `<name> left edge` and `<name> right edge` its outer edges, and `ends` both end edges of the part.
 */
export const stockNames: Readonly<Record<Stock['kind'], NameTable>> = {
  plate: { faces: boxFaces, edges: [...boxCorners, ...boxEdges], axes: [] },
  block: { faces: boxFaces, edges: [...boxCorners, ...boxEdges], axes: [] },
  flat: { faces: boxFaces, edges: [...boxCorners, ...boxEdges], axes: [] },
  angle: {
    // `upright` and `base` are the legs: worked from front or rear, from top or bottom.
    // `heel` is the outer corner: the upright's outer face when measuring along the base, the base's when along the upright.
    faces: ['upright', 'base', 'heel', 'toe', 'inside', ...sideWords],
    edges: [
      'upright, top corners',
      'upright, top left corner',
      'upright, top right corner',
      'base, toe corners',
      'base, toe left corner',
      'base, toe right corner',
      'inside corner',
      'heel edge',
    ],
    axes: [],
  },
  channel: { faces: ['web', 'flanges', 'upper flange', 'lower flange', ...sideWords], edges: ['corners'], axes: [] },
  tee: { faces: ['flange', 'stem', ...sideWords], edges: ['corners'], axes: [] },
  bar: { faces: roundFaces, edges: roundEdges, axes: ['axis'] },
  tube: {
    faces: [...roundFaces, 'inside', 'bore'],
    edges: [...roundEdges, 'bore edges', 'bore left edge', 'bore right edge'],
    axes: ['axis'],
  },
  disc: { faces: [...roundFaces, 'outer face', 'inner face', 'rim'], edges: roundEdges, axes: ['axis'] },
  turned: { faces: roundFaces, edges: roundEdges, axes: ['axis'] },
  outline: { faces: boxFaces, edges: [...boxCorners, 'all edges'], axes: [] },
}

/** Every single word that a name may be made of, beside the brief's own step names and labels. */
export const nameWords: readonly string[] = [
  ...new Set([
    ...Object.values(stockNames).flatMap((t) => [...t.faces, ...t.edges, ...t.axes].flatMap((n) => n.split(/[ ,]+/))),
    'face',
    'faces',
    'edge',
    'edges',
    'corner',
    'corners',
    'end',
    'ends',
    'side',
    'outer',
    'inner',
    'middle',
    'upper',
    'lower',
    'both',
    'all',
    'of',
    'bore',
    'boss',
    'spigot',
    'root',
    'foot',
    'hole',
    'holes',
    'slot',
    'slots',
    'pocket',
    'step',
    'notch',
    'groove',
    'flat',
    'keyseat',
    'vertical',
    'outline',
    'shoulder',
    'floor',
    'wall',
    'counterbore',
    'countersink',
    'overall',
    'length',
    'width',
    'height',
    'thickness',
    'depth',
    'diameter',
  ]),
]

const words = new Set(
  [...Object.values(phraseWords).flat(), ...nameWords, ...keywords, ...Object.keys(keywordSpellings)]
    .flatMap((phrase) => phrase.split(' '))
    .map((word) => word.toLowerCase()),
)

/** The words that begin a feature's statement, however spelt, each with its keyword. */
export const featureWords: ReadonlyMap<string, FeatureKeyword> = new Map(
  [...featureKeywords.map((k) => [k, k] as const), ...Object.entries(keywordSpellings)].flatMap(([word, keyword]) =>
    featureKeywords.flatMap((k) => (k === keyword ? [[word, k] as const] : [])),
  ),
)

/** Whether the word stands in some statement, or in the name of some face, edge or feature. */
export const isOfTheLanguage = (word: string): boolean => words.has(word.toLowerCase())

export const sides = sideWords
