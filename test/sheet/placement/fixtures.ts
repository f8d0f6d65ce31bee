import type { Curve2 } from '../../../src/geometry/curve2.ts'
import type { Box2 } from '../../../src/geometry/evaluate.ts'
import type { Vec2 } from '../../../src/geometry/vec.ts'
import type { PlacedView, Sheet, SheetItem } from '../../../src/sheet/sheet.ts'
import type { CalloutPart, Dimension, HoleTable, Measured, SizeSet } from '../../../src/sizes/dimension.ts'
import type { LineKind, View, ViewLine } from '../../../src/views/view.ts'

/** Hand-made views and sizes: placement is tried on its own, without a solid behind it. */

export function seg(a: Vec2, b: Vec2, kind: LineKind = 'visible', overrun = 0): ViewLine {
  return { curve: { kind: 'line', a, b }, kind, sources: [], ...(overrun ? { overrun: [overrun, overrun] } : {}) }
}

export function polygon(...points: Vec2[]): ViewLine[] {
  return points.map((p, i) => seg(p, points[(i + 1) % points.length]!))
}

export function rect(x: number, y: number, w: number, h: number): ViewLine[] {
  return polygon([x, y], [x + w, y], [x + w, y + h], [x, y + h])
}

export function circle(c: Vec2, r: number, kind: LineKind = 'visible'): ViewLine {
  return { curve: { kind: 'arc', c, r, from: 0, sweep: 2 * Math.PI }, kind, sources: [] }
}

/** A hole seen along its axis, with its centre lines (3 mm past the circle on paper). */
export function hole(c: Vec2, r: number): ViewLine[] {
  return [
    circle(c, r),
    seg([c[0] - r, c[1]], [c[0] + r, c[1]], 'centre', 3),
    seg([c[0], c[1] - r], [c[0], c[1] + r], 'centre', 3),
  ]
}

/** A hole seen from the side: two hidden lines and the axis. */
export function bore(x: number, y0: number, y1: number, r: number): ViewLine[] {
  return [
    seg([x - r, y0], [x - r, y1], 'hidden'),
    seg([x + r, y0], [x + r, y1], 'hidden'),
    seg([x, y0], [x, y1], 'centre', 3),
  ]
}

const frame = { right: [1, 0, 0], up: [0, 0, 1], toViewer: [0, -1, 0] } as const

export function view(id: string, lines: ViewLine[], box: Box2): View {
  return { id, kind: 'principal', frame, lines, hatched: [], cuttingPlanes: [], box }
}

export function place(view: View, origin: Vec2, scale = 1): { view: View; placed: PlacedView } {
  return { view, placed: { id: view.id, origin, scale, box: view.box } }
}

let serial = 0

export function size(
  viewId: string,
  measured: Measured,
  text: string | readonly CalloutPart[] | readonly string[][],
  more: Partial<Dimension> = {},
): Dimension {
  const lines: CalloutPart[][] =
    typeof text === 'string'
      ? [[text]]
      : Array.isArray(text[0])
        ? (text as string[][]).map((l) => [...l])
        : [[...(text as readonly CalloutPart[])]]
  return {
    id: `d${serial++}`,
    view: viewId,
    measured,
    callout: { lines },
    value: 0,
    reference: false,
    basic: false,
    direction: '',
    ...more,
  }
}

export const across = (v: string, a: Vec2, b: Vec2, text: string | CalloutPart[], more: Partial<Dimension> = {}) =>
  size(v, { kind: 'linear', a, b, along: [1, 0] }, text, more)
export const upward = (v: string, a: Vec2, b: Vec2, text: string | CalloutPart[], more: Partial<Dimension> = {}) =>
  size(v, { kind: 'linear', a, b, along: [0, 1] }, text, more)
export const note = (
  v: string,
  centres: Vec2[],
  radius: number,
  text: string | string[][],
  more: Partial<Dimension> = {},
) => size(v, { kind: 'leader', targets: centres.map((centre) => ({ kind: 'circle', centre, radius })) }, text, more)

export function sizeSet(dimensions: Dimension[], tables: HoleTable[] = []): SizeSet {
  return {
    dimensions,
    tables,
    notes: [],
    proof: { complete: true, sizes: 0, implied: 0, freedoms: 0, missing: [], repeated: [], sentence: '' },
    marks: [],
  }
}

/** A bare sheet of the views and the placed sizes. */
export function sheetOf(
  views: readonly { view: View; placed: PlacedView }[],
  items: readonly SheetItem[],
  width: number,
  height: number,
): Sheet {
  const strokes = views.flatMap(({ view: v, placed: p }) =>
    v.lines.map((l): SheetItem => {
      const curve = onSheet(l.curve, p, l.overrun)
      return { item: 'stroke', kind: l.kind, curve, width: l.kind === 'visible' ? 0.6 : 0.3, tie: { view: v.id } }
    }),
  )
  return {
    format: 'A3',
    width,
    height,
    scale: '1:1',
    items: [...strokes, ...items],
    views: views.map((v) => v.placed),
    title: '',
    about: {},
  }
}

function onSheet(c: Curve2, p: PlacedView, overrun: readonly [number, number] | undefined): Curve2 {
  const at = (q: Vec2): Vec2 => [p.origin[0] + q[0] * p.scale, p.origin[1] + q[1] * p.scale]
  if (c.kind === 'line') {
    const [a, b] = [at(c.a), at(c.b)]
    if (!overrun) return { kind: 'line', a, b }
    const l = Math.hypot(b[0] - a[0], b[1] - a[1])
    const u: Vec2 = [(b[0] - a[0]) / l, (b[1] - a[1]) / l]
    return {
      kind: 'line',
      a: [a[0] - u[0] * overrun[0], a[1] - u[1] * overrun[0]],
      b: [b[0] + u[0] * overrun[1], b[1] + u[1] * overrun[1]],
    }
  }
  if (c.kind === 'arc') return { ...c, c: at(c.c), r: c.r * p.scale }
  throw new Error('fixtures are made of lines and arcs')
}

/** An angle bracket in three views, third angle, 60 × 50 × 70 mm, with four holes in the upright and two slots in the base. */
export function bracket(practice: 'ASME' | 'ISO') {
  const dia = '⌀'
  const x = practice === 'ASME' ? 'X ' : '× '
  const t = 5
  const holes: Vec2[] = [
    [15, 35],
    [45, 35],
    [15, 60],
    [45, 60],
  ]
  const R = 10
  const front = view(
    'front',
    [
      seg([0, 0], [60, 0]),
      seg([60, 0], [60, 70 - R]),
      seg([60 - R, 70], [R, 70]),
      seg([0, 70 - R], [0, 0]),
      { curve: { kind: 'arc', c: [60 - R, 70 - R], r: R, from: 0, sweep: Math.PI / 2 }, kind: 'visible', sources: [] },
      {
        curve: { kind: 'arc', c: [R, 70 - R], r: R, from: Math.PI / 2, sweep: Math.PI / 2 },
        kind: 'visible',
        sources: [],
      },
      seg([0, t], [60, t]),
      ...holes.flatMap((c) => hole(c, 3.5)),
    ],
    { min: [0, 0], max: [60, 70] },
  )
  const right = view(
    'right',
    [
      ...polygon([0, 0], [50, 0], [50, 70], [50 - t, 70], [50 - t, t], [0, t]),
      seg([45, 35], [50, 35], 'centre', 3),
      seg([45, 60], [50, 60], 'centre', 3),
      seg([45, 31.5], [50, 31.5], 'hidden'),
      seg([45, 38.5], [50, 38.5], 'hidden'),
      seg([45, 56.5], [50, 56.5], 'hidden'),
      seg([45, 63.5], [50, 63.5], 'hidden'),
    ],
    { min: [0, 0], max: [50, 70] },
  )
  const slot = (cx: number): ViewLine[] => [
    seg([cx - 4, 15], [cx - 4, 25]),
    seg([cx + 4, 15], [cx + 4, 25]),
    { curve: { kind: 'arc', c: [cx, 25], r: 4, from: 0, sweep: Math.PI }, kind: 'visible', sources: [] },
    { curve: { kind: 'arc', c: [cx, 15], r: 4, from: Math.PI, sweep: Math.PI }, kind: 'visible', sources: [] },
    seg([cx, 11], [cx, 29], 'centre', 3),
    seg([cx - 4, 20], [cx + 4, 20], 'centre', 3),
  ]
  const top = view('top', [...rect(0, 0, 60, 50), seg([0, 45], [60, 45]), ...slot(18), ...slot(42)], {
    min: [0, 0],
    max: [60, 50],
  })
  const views = [place(front, [90, 60]), place(right, [220, 60]), place(top, [90, 190])]
  const f = 'front'
  const dimensions = [
    across(f, [0, 0], [60, 0], '60'),
    across(f, [15, 60], [45, 60], '30'),
    across(f, [0, 0], [15, 35], '15'),
    upward(f, [0, 0], [15, 35], '35'),
    upward(f, [15, 35], [15, 60], '25'),
    upward(f, [60, 0], [60, 70], '70'),
    note(f, holes, 3.5, `4${x}${dia}7 THRU`),
    size(f, { kind: 'radius', centre: [50, 60], radius: 10, from: 0, sweep: Math.PI / 2 }, `2${x}R10`),
    across('right', [0, 0], [50, 0], '50'),
    across('right', [45, 70], [50, 70], '5'),
    upward('right', [0, 0], [0, 5], '5'),
    across('top', [18, 20], [42, 20], '24'),
    across('top', [0, 0], [18, 20], '18'),
    upward('top', [60, 0], [42, 20], '20'),
    across('top', [14, 20], [22, 20], '8'),
    upward('top', [18, 11], [18, 29], ['18', { stack: ['+0.2', '0'] }]),
    size('right', { kind: 'leader', targets: [{ kind: 'point', at: [47.5, 0], normal: [0, -1] }] }, [
      ['HEEL SHARP'],
      ['OR R0.5 MAX'],
    ]),
    upward('top', [0, 0], [0, 50], '(50)', { reference: true }),
    upward('right', [50, 35], [50, 0], '35', { basic: true }),
  ]
  return { views, sizes: sizeSet(dimensions), practice, width: 420, height: 297 }
}

/** A plate with `n` different holes in columns and rows: a note for each, running sizes from the lower left corner. */
export function plateOfHoles(n: number, practice: 'ASME' | 'ISO', tags = false) {
  const columns = Math.ceil(Math.sqrt(n * 1.6))
  const rows = Math.ceil(n / columns)
  const pitch = 24
  const w = (columns + 1) * pitch
  const h = (rows + 1) * pitch
  const lines: ViewLine[] = rect(0, 0, w, h)
  const dimensions: Dimension[] = [across('top', [0, 0], [w, 0], String(w)), upward('top', [0, 0], [0, h], String(h))]
  const tagged: HoleTable['rows'][number][] = []
  const run = (c: Vec2, axis: 0 | 1) =>
    size('top', { kind: 'ordinate', datum: [0, 0], point: c, along: axis === 0 ? [1, 0] : [0, 1] }, String(c[axis]), {
      group: { id: axis === 0 ? 'x' : 'y', scheme: 'ordinate' },
    })
  for (let i = 0; i < n; i++) {
    const [column, row] = [i % columns, Math.floor(i / columns)]
    const c: Vec2 = [(column + 1) * pitch, (row + 1) * pitch]
    const r = 2 + (i % 9) * 0.4
    lines.push(...hole(c, r))
    const text = `⌀${(2 * r + i * 0.01).toFixed(2)} THRU`
    if (tags) {
      tagged.push({
        tag: `${String.fromCharCode(65 + column)}${row + 1}`,
        x: String(c[0]),
        y: String(c[1]),
        size: { lines: [[text]] },
        at: c,
        feature: `hole ${i}`,
      })
      continue
    }
    dimensions.push(note('top', [c], r, text))
    if (row === 0) dimensions.push(run(c, 0))
    if (column === 0) dimensions.push(run(c, 1))
  }
  const top = view('top', lines, { min: [0, 0], max: [w, h] })
  const tables = tags ? [{ view: 'top', origin: [0, 0] as Vec2, rows: tagged }] : []
  return { views: [place(top, [120, 120])], sizes: sizeSet(dimensions, tables), practice, width: 594, height: 420 }
}

/** A stepped shaft, axis level, with a keyseat and a chamfer: diameters in the profile, lengths as a chain and a baseline. */
export function shaft(practice: 'ASME' | 'ISO') {
  const steps: [length: number, d: number][] = [
    [28, 20],
    [6, 28],
    [30, 22],
    [3, 18],
    [25, 16],
  ]
  const lines: ViewLine[] = []
  let x = 0
  const v = 'front'
  const dimensions: Dimension[] = []
  let last = 0
  for (const [i, [l, d]] of steps.entries()) {
    const r = d / 2
    lines.push(seg([x, r], [x + l, r]), seg([x, -r], [x + l, -r]))
    const m = Math.max(last, r)
    lines.push(seg([x, -m], [x, m]))
    last = r
    dimensions.push(upward(v, [x + l / 2, -r], [x + l / 2, r], i === 0 ? ['⌀20 k6'] : `⌀${d}`))
    x += l
  }
  lines.push(seg([x, -last], [x, last]), seg([0, 0], [x, 0], 'centre', 3))
  lines.push(seg([x, 5], [x - 4.68, 8]))
  dimensions.push(
    across(v, [0, -10], [28, -10], '28'),
    across(v, [28, -14], [34, -14], '6'),
    across(v, [28, -14], [64, -11], '36', { group: { id: 'l', scheme: 'baseline' } }),
    across(v, [28, -14], [92, -8], '64', { group: { id: 'l', scheme: 'baseline' } }),
    across(v, [64, -9], [67, -9], '3'),
    across(v, [0, -10], [92, -8], '(92)', { reference: true }),
    size(v, { kind: 'angle', vertex: [99.8, 0], from: Math.PI - 0.57, sweep: 0.57, reach: [14.8, 5] }, '32.7°'),
  )
  return {
    views: [place(view(v, lines, { min: [0, -14], max: [92, 14] }), [80, 120], 2)],
    sizes: sizeSet(dimensions),
    practice,
    width: 420,
    height: 297,
  }
}

export function field(width: number, height: number): Box2 {
  return { min: [10, 10], max: [width - 10, height - 10] }
}
