import type { Vec2, Vec3 } from '../../../geometry/vec.ts'

/** A pencil sketch: strokes through points of space, seen from the right, the front and above. */
export interface Sketch {
  readonly strokes: readonly (readonly Vec3[])[]
  /** Each stroke bounds a surface that hides what was drawn before it. */
  readonly opaque?: true
}

const [R2, R6] = [Math.SQRT1_2, 1 / Math.sqrt(6)]

/** Isometric view: x right, y to the rear, z up. Paper y runs down. */
export const isometric = ([x, y, z]: Vec3): Vec2 => [(x + y) * R2, -(-x + y + 2 * z) * R6]

type Profile = readonly (readonly [number, number])[]

const box = (l: number, w: number, h: number): Vec3[][] => [
  [
    [0, 0, 0],
    [l, 0, 0],
    [l, 0, h],
    [0, 0, h],
    [0, 0, 0],
  ],
  [
    [l, 0, 0],
    [l, w, 0],
    [l, w, h],
    [l, 0, h],
  ],
  [
    [0, 0, h],
    [0, w, h],
    [l, w, h],
  ],
]

/** A profile across the part run along its length; `edges` are the corners whose long edge is seen, `left` the far end's seen lines. */
const bar = (
  length: number,
  profile: Profile,
  edges: readonly number[],
  left: readonly (readonly number[])[],
): Vec3[][] => {
  const at = (x: number, i: number): Vec3 => [x, profile[i]![0], profile[i]![1]]
  return [
    [...profile.keys(), 0].map((i) => at(length, i)),
    ...edges.map((i) => [at(0, i), at(length, i)]),
    ...left.map((line) => line.map((i) => at(0, i))),
  ]
}

/** Angles from one to the other, in degrees, by steps of at most 3°: no corner is seen at the size of a window. */
const turn = (from: number, to: number, steps = Math.ceil(Math.abs(to - from) / 3)): number[] =>
  Array.from({ length: steps + 1 }, (_, i) => ((from + ((to - from) * i) / steps) * Math.PI) / 180)

/** Circle or arc across the x axis, in degrees from the rear. */
const acrossX = (x: number, y: number, z: number, r: number, from = 0, to = 360): Vec3[] =>
  turn(from, to).map((a) => [x, y + r * Math.cos(a), z + r * Math.sin(a)])
const acrossY = (x: number, y: number, z: number, r: number, from = 0, to = 360): Vec3[] =>
  turn(from, to).map((a) => [x + r * Math.cos(a), y, z + r * Math.sin(a)])
const flat = (x: number, y: number, z: number, r: number, from = 0, to = 360): Vec3[] =>
  turn(from, to).map((a) => [x + r * Math.cos(a), y + r * Math.sin(a), z])

/** A round length along x: its outline, then its right end, each hiding what lies behind it. */
const round = (from: number, to: number, r: number): Vec3[][] => [
  [...acrossX(from, 0, 0, r, 45, 225), ...acrossX(to, 0, 0, r, 225, 405), acrossX(from, 0, 0, r, 45, 46)[0]!],
  acrossX(to, 0, 0, r),
]

const L: Profile = [
  [0, 0],
  [5, 0],
  [5, 6],
  [4.2, 6],
  [4.2, 0.8],
  [0, 0.8],
]
const C: Profile = [
  [0, 0],
  [4, 0],
  [4, 6],
  [0, 6],
  [0, 5.3],
  [3.3, 5.3],
  [3.3, 0.7],
  [0, 0.7],
]
const T: Profile = [
  [2.2, 0],
  [2.9, 0],
  [2.9, 4.4],
  [5, 4.4],
  [5, 5.1],
  [0, 5.1],
  [0, 4.4],
  [2.2, 4.4],
]
const plate = box(9, 6, 1)

/** What the shop begins from. */
export const stockSketches = {
  plate: { strokes: box(9, 6, 0.7) },
  block: { strokes: box(6, 4.5, 4) },
  angle: { strokes: bar(7, L, [0, 5, 4, 3, 2], [[0, 5, 4, 3, 2]]) },
  channel: {
    strokes: bar(
      8,
      C,
      [0, 7, 4, 3, 2, 6],
      [
        [0, 7, 6],
        [4, 3, 2],
      ],
    ),
  },
  tee: {
    strokes: [
      ...bar(8, T, [0, 6, 5, 4], [[6, 5, 4]]),
      // The flange hides the upper part of this edge.
      [
        [0, 2.2, 0],
        [0, 2.2, 2.2],
      ],
    ],
  },
  'flat bar': { strokes: box(11, 2.6, 0.7) },
  'round bar': { strokes: round(0, 9, 1.5), opaque: true },
  tube: { strokes: [...round(0, 7, 2.2), acrossX(7, 0, 0, 1.5)], opaque: true },
  disc: {
    strokes: [
      acrossY(0, 0, 0, 3.4),
      acrossY(0, 1, 0, 3.4, -45, 135),
      [
        [2.404, 0, -2.404],
        [2.404, 1, -2.404],
      ],
      [
        [-2.404, 0, 2.404],
        [-2.404, 1, 2.404],
      ],
    ],
  },
  turned: { strokes: [...round(0, 3, 1.1), ...round(3, 4.2, 2), ...round(4.2, 9, 1.4)], opaque: true },
  outline: {
    strokes: [
      [
        [0, 0, 0],
        [7, 0, 0],
        [7, 0, 1.6],
        [2, 0, 6],
        [0, 0, 6],
        [0, 0, 0],
      ],
      [
        [7, 0, 0],
        [7, 0.8, 0],
        [7, 0.8, 1.6],
        [2, 0.8, 6],
        [0, 0.8, 6],
        [0, 0, 6],
      ],
      [
        [7, 0, 1.6],
        [7, 0.8, 1.6],
      ],
      [
        [2, 0, 6],
        [2, 0.8, 6],
      ],
    ],
  },
} as const satisfies Record<string, Sketch>

export type StockName = keyof typeof stockSketches

/** What is worked into it, on a plate or a block. */
export const featureSketches: Readonly<Record<string, Sketch>> = {
  hole: { strokes: [...plate, flat(2.5, 3, 1, 0.9), flat(6.5, 3, 1, 0.9)] },
  bore: { strokes: [...plate, flat(4.5, 3, 1, 1.7)] },
  slot: {
    strokes: [...plate, [...flat(6, 3, 1, 0.8, -90, 90), ...flat(3, 3, 1, 0.8, 90, 270), [6, 2.2, 1]]],
  },
  pocket: {
    strokes: [
      ...plate,
      [
        [2, 1.5, 1],
        [7, 1.5, 1],
        [7, 4.5, 1],
        [2, 4.5, 1],
        [2, 1.5, 1],
      ],
      [
        [2, 4.5, 1],
        [2, 4.5, 0.4],
        [7, 4.5, 0.4],
      ],
    ],
  },
  boss: {
    strokes: [
      ...plate,
      flat(4.5, 3, 2.4, 1.5),
      [
        [3.44, 1.94, 1],
        [3.44, 1.94, 2.4],
      ],
      [
        [5.56, 4.06, 1],
        [5.56, 4.06, 2.4],
      ],
      flat(4.5, 3, 1, 1.5, -135, 45),
    ],
  },
  step: {
    strokes: [
      [
        [0, 0, 0],
        [7, 0, 0],
        [7, 0, 3.5],
        [3, 0, 3.5],
        [3, 0, 2],
        [0, 0, 2],
        [0, 0, 0],
      ],
      [
        [7, 0, 0],
        [7, 4, 0],
        [7, 4, 3.5],
        [7, 0, 3.5],
      ],
      [
        [7, 4, 3.5],
        [3, 4, 3.5],
        [3, 0, 3.5],
      ],
      [
        [0, 0, 2],
        [0, 4, 2],
        [3, 4, 2],
      ],
    ],
  },
  notch: {
    strokes: [
      [
        [0, 0, 0],
        [7, 0, 0],
        [7, 0, 3.5],
        [5, 0, 3.5],
        [3.5, 0, 2],
        [2, 0, 3.5],
        [0, 0, 3.5],
        [0, 0, 0],
      ],
      [
        [7, 0, 0],
        [7, 4, 0],
        [7, 4, 3.5],
        [7, 0, 3.5],
      ],
      [
        [7, 4, 3.5],
        [5, 4, 3.5],
        [5, 0, 3.5],
      ],
      [
        [0, 0, 3.5],
        [0, 4, 3.5],
        [2, 4, 3.5],
        [2, 0, 3.5],
      ],
      [
        [3.5, 0, 2],
        [3.5, 1.5, 2],
      ],
    ],
  },
  chamfer: {
    strokes: [
      [
        [0, 0, 0],
        [7, 0, 0],
        [7, 0, 2.6],
        [0, 0, 2.6],
        [0, 0, 0],
      ],
      [
        [7, 0, 0],
        [7, 4, 0],
        [7, 4, 3.5],
        [7, 0.9, 3.5],
        [7, 0, 2.6],
      ],
      [
        [0, 0, 2.6],
        [0, 0.9, 3.5],
        [7, 0.9, 3.5],
      ],
      [
        [0, 0.9, 3.5],
        [0, 4, 3.5],
        [7, 4, 3.5],
      ],
    ],
  },
  round: {
    strokes: [
      [
        [0, 0, 1],
        [0, 0, 0],
        [7.2, 0, 0],
      ],
      [[0, 0, 1], ...flat(7.2, 1.8, 1, 1.8, -90, 0), [9, 6, 1], [0, 6, 1], [0, 0, 1]],
      [...flat(7.2, 1.8, 0, 1.8, -90, 0), [9, 6, 0], [9, 6, 1]],
    ],
  },
}

export interface SketchPath {
  /** One path a stroke where strokes hide others, else a single one. */
  readonly paths: readonly string[]
  readonly box: readonly [x: number, y: number, width: number, height: number]
}

/** The sketch as path data on paper, with its bounds. */
export function sketchPath(sketch: Sketch): SketchPath {
  const lines = sketch.strokes.map((s) => s.map(isometric))
  const all = lines.flat()
  const drawn = lines.map((l) => `M${l.map(([u, v]) => `${u.toFixed(3)} ${v.toFixed(3)}`).join('L')}`)
  const [xs, ys] = [all.map((p) => p[0]), all.map((p) => p[1])]
  const [x, y] = [Math.min(...xs), Math.min(...ys)]
  return {
    paths: sketch.opaque ? drawn : [drawn.join('')],
    box: [x, y, Math.max(...xs) - x, Math.max(...ys) - y],
  }
}
