import type { Brief, Header, Side } from '../../src/brief/brief.ts'
import type { Curve2 } from '../../src/geometry/curve2.ts'
import type { Vec2, Vec3 } from '../../src/geometry/vec.ts'
import type { Part } from '../../src/part/part.ts'
import type { LineKind, View, ViewLine, ViewSet } from '../../src/views/view.ts'

export const words = (text: string) => ({ text, span: { from: 0, to: text.length } })
const num = (text: string) => ({
  text,
  value: Number(text.replace(/^\./, '0.')),
  form: 'decimal' as const,
  decimals: 2,
  span: { from: 0, to: text.length },
})

export const ascHeader: Header = {
  part: words('Vent motor bracket'),
  number: words('GH-214'),
  revision: words('A'),
  units: 'inch',
  practice: 'ASME',
  projection: 'third angle',
  material: words('Carbon steel, hot rolled, ASTM A36'),
  general: [
    { kind: 'fractions', plusMinus: num('1/64'), span: { from: 0, to: 1 } },
    { kind: 'decimals', decimals: 2, plusMinus: num('.01'), span: { from: 0, to: 1 } },
    { kind: 'decimals', decimals: 3, plusMinus: num('.005'), span: { from: 0, to: 1 } },
    { kind: 'angles', plusMinus: num('1/2'), span: { from: 0, to: 1 } },
  ],
  coating: words('Zinc plate, clear, ASTM B633 SC2'),
  texture: words('125 µin'),
  edgeBreak: words('.015 MAX'),
  standard: words('ASME Y14.5-2018'),
  notes: [words('Remove all burrs.'), words('Stock thickness .188 is governed by the mill, not by the title block.')],
  drawn: { name: words('M. Harrow'), date: words('2024-03-11') },
  checked: { name: words('T. Okafor'), date: words('2024-03-12') },
  firm: words('Calder Forge & Fan Works'),
  documentType: words('Detail drawing'),
}

export const isoHeader: Header = {
  part: words('Bearing cover'),
  number: words('K-1071'),
  revision: words('B'),
  units: 'mm',
  practice: 'ISO',
  projection: 'first angle',
  material: words('EN-GJL-250'),
  general: [{ kind: 'standard', text: 'ISO 2768-mK', span: { from: 0, to: 1 } }],
  texture: words('Ra 3.2'),
  edgeBreak: words('ISO 13715 −0.3'),
  notes: [words('Seal groove free from scratches.')],
  drawn: { name: words('E. Lindqvist'), date: words('2024-05-02') },
  approved: { name: words('P. Moreau'), date: words('2024-05-03') },
  firm: words('Norrvik Pumpverk'),
}

export function partWith(header: Header, mass?: number): Part {
  const brief: Brief = {
    text: '',
    header,
    features: [],
    shows: [],
    places: [],
    schemes: [],
    marks: [],
  }
  return {
    brief,
    solid: 0,
    body: { faces: [], edges: [], box: { min: [0, 0, 0], max: [1, 1, 1] } },
    data: [],
    features: [],
    chosen: [],
    implied: [],
    properties: { volume: 1, area: 1, centroid: [0, 0, 0], ...(mass === undefined ? {} : { mass }) },
    marks: [],
  } as unknown as Part
}

const frames: Record<Side, { right: Vec3; up: Vec3; toViewer: Vec3 }> = {
  front: { right: [1, 0, 0], up: [0, 0, 1], toViewer: [0, -1, 0] },
  rear: { right: [-1, 0, 0], up: [0, 0, 1], toViewer: [0, 1, 0] },
  top: { right: [1, 0, 0], up: [0, 1, 0], toViewer: [0, 0, 1] },
  bottom: { right: [1, 0, 0], up: [0, -1, 0], toViewer: [0, 0, -1] },
  right: { right: [0, 1, 0], up: [0, 0, 1], toViewer: [1, 0, 0] },
  left: { right: [0, -1, 0], up: [0, 0, 1], toViewer: [-1, 0, 0] },
}

const viewLine = (kind: LineKind, curve: Curve2, more: Partial<ViewLine> = {}): ViewLine => ({
  kind,
  curve,
  sources: [],
  ...more,
})
const segment = (kind: LineKind, a: Vec2, b: Vec2, more: Partial<ViewLine> = {}) =>
  viewLine(kind, { kind: 'line', a, b }, more)
const circle = (kind: LineKind, c: Vec2, r: number) =>
  viewLine(kind, { kind: 'arc', c, r, from: 0, sweep: 2 * Math.PI })
const rectangle = (x0: number, y0: number, x1: number, y1: number): ViewLine[] => [
  segment('visible', [x0, y0], [x1, y0]),
  segment('visible', [x1, y0], [x1, y1]),
  segment('visible', [x1, y1], [x0, y1]),
  segment('visible', [x0, y1], [x0, y0]),
]

export function principal(side: Side, w: readonly [number, number, number, number], lines: readonly ViewLine[]): View {
  return {
    id: side,
    kind: 'principal',
    side,
    frame: frames[side],
    lines: [...rectangle(...w), ...lines],
    hatched: [],
    cuttingPlanes: [],
    box: { min: [w[0], w[1]], max: [w[2], w[3]] },
  }
}

/** Isometric box, edges only. */
function pictorialBox(l: number, w: number, h: number): View {
  const to = ([x, y, z]: Vec3): Vec2 => [(x + y) * Math.cos(Math.PI / 6), (y - x) * 0.5 + z]
  const c: Vec3[] = [
    [0, 0, 0],
    [l, 0, 0],
    [l, w, 0],
    [0, w, 0],
    [0, 0, h],
    [l, 0, h],
    [l, w, h],
    [0, w, h],
  ]
  const edges = [
    [0, 1],
    [1, 2],
    [0, 4],
    [1, 5],
    [2, 6],
    [4, 5],
    [5, 6],
    [6, 7],
    [7, 4],
  ] as const
  const p = c.map(to)
  return {
    id: 'pictorial',
    kind: 'pictorial',
    frame: frames.front,
    lines: edges.map(([a, b]) => segment('visible', p[a]!, p[b]!)),
    hatched: [],
    cuttingPlanes: [],
    box: {
      min: [Math.min(...p.map((q) => q[0])), Math.min(...p.map((q) => q[1]))],
      max: [Math.max(...p.map((q) => q[0])), Math.max(...p.map((q) => q[1]))],
    },
  }
}

/** Three views of a block with a hole, and its pictorial. */
export function blockViews(l: number, w: number, h: number, r = Math.min(l, w) / 8): ViewSet {
  const [cx, cy] = [l / 2, w / 2]
  return {
    views: [
      principal(
        'front',
        [0, 0, l, h],
        [
          segment('hidden', [cx - r, 0], [cx - r, h], { ends: ['corner', 'corner'] }),
          segment('hidden', [cx + r, 0], [cx + r, h], { ends: ['corner', 'corner'] }),
          segment('centre', [cx, 0], [cx, h], { overrun: [3, 3] }),
        ],
      ),
      principal(
        'top',
        [0, 0, l, w],
        [
          circle('visible', [cx, cy], r),
          segment('centre', [cx - r, cy], [cx + r, cy], { overrun: [3, 3], cross: [[cx, cy]] }),
          segment('centre', [cx, cy - r], [cx, cy + r], { overrun: [3, 3], cross: [[cx, cy]] }),
        ],
      ),
      principal(
        'right',
        [0, 0, w, h],
        [
          segment('hidden', [cy - r, 0], [cy - r, h], { ends: ['corner', 'corner'] }),
          segment('hidden', [cy + r, 0], [cy + r, h], { ends: ['corner', 'corner'] }),
          segment('centre', [cy, 0], [cy, h], { overrun: [3, 3] }),
        ],
      ),
      pictorialBox(l, w, h),
    ],
    reasons: [],
  }
}

/** A cover: circular view with a cutting plane, and its full section. */
export function coverViews(d: number, t: number, bore: number, label = 'A-A'): ViewSet {
  const [R, b] = [d / 2, bore / 2]
  const front: View = {
    id: 'front',
    kind: 'principal',
    side: 'front',
    frame: frames.front,
    lines: [
      circle('visible', [0, 0], R),
      circle('visible', [0, 0], b),
      segment('centre', [-R, 0], [R, 0], { overrun: [3, 3], cross: [[0, 0]] }),
    ],
    hatched: [],
    cuttingPlanes: [
      {
        letter: 'A',
        path: [
          [0, -R],
          [0, R],
        ],
        sight: [-1, 0],
      },
    ],
    box: { min: [-R, -R], max: [R, R] },
  }
  const loop = (y0: number, y1: number): Curve2[] => [
    { kind: 'line', a: [0, y0], b: [t, y0] },
    { kind: 'line', a: [t, y0], b: [t, y1] },
    { kind: 'line', a: [t, y1], b: [0, y1] },
    { kind: 'line', a: [0, y1], b: [0, y0] },
  ]
  const section: View = {
    id: `section ${label}`,
    kind: 'section',
    side: 'right',
    frame: frames.right,
    lines: [
      ...rectangle(0, -R, t, R),
      segment('visible', [0, b], [t, b]),
      segment('visible', [0, -b], [t, -b]),
      segment('centre', [0, 0], [t, 0], { overrun: [3, 3] }),
    ],
    hatched: [[loop(b, R)], [loop(-R, -b)]],
    label,
    cuttingPlanes: [],
    box: { min: [0, -R], max: [t, R] },
  }
  return { views: [front, section], reasons: [] }
}
