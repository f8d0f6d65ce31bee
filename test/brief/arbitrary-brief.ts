import fc from 'fast-check'
import type {
  Acceptance,
  Anchor,
  Brief,
  Depth,
  Feature,
  GeneralTolerance,
  Header,
  Lie,
  Mirror,
  Name,
  OneWall,
  OutlineMove,
  Placement,
  PlaceRequest,
  Run,
  SchemeRequest,
  ShowRequest,
  Side,
  Signature,
  Stock,
  Taper,
  TurnedStep,
  ViewName,
  ViewRequest,
  Words,
} from '../../src/brief/brief.ts'
import { type Characteristic, characteristics, type FrameRow } from '../../src/brief/frame/frame.ts'
import {
  type DatumFeature,
  type FaceTexture,
  type FrameStatement,
  lays,
  processWords,
} from '../../src/brief/geometric.ts'
import { parseNumber } from '../../src/brief/number.ts'
import type { Angle, Count, Num, Size, Tolerance, Unit } from '../../src/brief/size.ts'
import type { StackStatement } from '../../src/brief/stack.ts'
import { nominalSize } from '../../src/brief/thread.ts'

/** Random briefs that are well formed: every one prints, and reads back without a mark that must change. */

const span = { from: 0, to: 0 }
const words = (text: string): Words => ({ text, span })
const name = (text: string): Name => ({ text, span })
const count = (value: number): Count => ({ value, span })
/** Drops keys that are undefined, as the reader leaves them out. */
function tidy<T extends object>(value: { [K in keyof T]: T[K] | undefined }): T {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as T
}
const maybe = <T>(arb: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(arb, { nil: undefined })

const sides: readonly Side[] = ['left', 'right', 'front', 'rear', 'top', 'bottom']
const lies: readonly Lie[] = ['left-right', 'front-rear', 'up-down']
const side = fc.constantFrom(...sides)
const lie = fc.constantFrom(...lies)
const face = fc
  .constantFrom('left', 'right', 'front', 'rear', 'top', 'bottom', 'upright', 'base', 'bore', 'outer face')
  .map(name)
const datum = fc.constantFrom('left', 'bottom', 'heel', 'right face', 'bore', 'top').map(name)
const label = fc.constantFrom('A', 'B', 'C', 'D1').map(name)

const freeText = fc
  .array(
    fc.constantFrom(
      'steel',
      'No. 4',
      '1/2"',
      'Ra 3.2',
      'ASTM A36,',
      '#10',
      'a#b',
      '# 7',
      'µin',
      'dia',
      '(see note)',
      'Ø',
      '"',
      '±0.1',
      'rev',
      ';',
    ),
    {
      minLength: 1,
      maxLength: 6,
    },
  )
  .map((parts) => words(parts.join(' ')))

// ---------------------------------------------------------------- numbers

const wholeText = fc.integer({ min: 1, max: 900 }).map(String)
const decimalText = fc
  .tuple(
    fc.integer({ min: 0, max: 99 }),
    fc.integer({ min: 1, max: 9999 }),
    fc.integer({ min: 1, max: 4 }),
    fc.boolean(),
  )
  .map(
    ([a, b, n, zero]) =>
      `${a === 0 && !zero ? '' : a}.${String(b)
        .padStart(4, '0')
        .slice(4 - n)
        .replace(/^0+$/, '5')}`,
  )
const fractionText = fc.constantFrom('1/2', '3/8', '1-3/8', '5/16', '2-1/2', '17/64', '¾', '1½', '1 3/8')
const numberText = fc.oneof(wholeText, decimalText, fractionText)
const num = (text: string): Num => ({ ...parseNumber(text, 0)!, span })
const small = fc.constantFrom('.002', '.005', '0.1', '.01', '1/64', '0.025').map(num)
const deviation = fc.constantFrom('+.002', '+0.1', '+.000', '+0').map(num)
const lower = fc.constantFrom('-.001', '-0.2', '-.000').map(num)

const tolerance: fc.Arbitrary<Tolerance> = fc.oneof(
  small.map((value): Tolerance => ({ kind: 'plus-minus', value, span })),
  fc.tuple(deviation, lower).map(([upper, l]): Tolerance => ({ kind: 'unequal', upper, lower: l, span })),
  fc.constantFrom('H7', 'k6', 'f7', 'js9', 'n6', 'M7').map((symbol): Tolerance => ({ kind: 'fit', symbol, span })),
  fc.constantFrom('stock', 'max', 'min', 'basic', 'reference').map((kind) => ({ kind, span }) as Tolerance),
)

function sizeOf(unit: Unit, text: string, foreign: boolean, t: Tolerance | undefined, unknown: boolean): Size {
  const n = num(text)
  const own: Unit = foreign ? (unit === 'mm' ? 'inch' : 'mm') : unit
  return tidy<Size>({
    ...n,
    unit: own,
    unitTyped: foreign,
    mm: n.value * (own === 'inch' ? 25.4 : 1),
    tolerance: t,
    unknown: unknown ? true : undefined,
  })
}

const limits = (unit: Unit) =>
  fc
    .tuple(
      fc.constantFrom('.500', '1.2500', '12.02'),
      fc.constantFrom('.498', '1.2495', '11.98'),
      fc.boolean(),
      fc.boolean(),
    )
    .map(([a, b, swap, foreign]) => {
      const [first, second] = swap ? [num(b), num(a)] : [num(a), num(b)]
      const [upper, low] = first.value > second.value ? [first, second] : [second, first]
      return sizeOf(unit, first.text, foreign, { kind: 'limits', upper, lower: low, span }, false)
    })

const size = (unit: Unit): fc.Arbitrary<Size> =>
  fc.oneof(
    { weight: 6, arbitrary: numberText.map((text) => sizeOf(unit, text, false, undefined, false)) },
    {
      weight: 3,
      arbitrary: fc
        .tuple(
          numberText,
          fc.boolean(),
          maybe(tolerance),
          maybe(fc.constantFrom('envelope' as const, 'independent' as const)),
        )
        .map(([text, foreign, t, kind]) =>
          tidy<Size>({ ...sizeOf(unit, text, foreign, t, false), formRule: kind && { kind, span } }),
        ),
    },
    { weight: 1, arbitrary: limits(unit) },
    { weight: 1, arbitrary: wholeText.map((text) => sizeOf(unit, text, false, undefined, true)) },
  )

const angle: fc.Arbitrary<Angle> = fc
  .tuple(fc.constantFrom('45', '82', '90', '30.5', '118', '1/2'), maybe(small))
  .map(([text, plusMinus]) =>
    tidy<Angle>({ ...num(text), tolerance: plusMinus && { kind: 'plus-minus', value: plusMinus, span } }),
  )
/** Of a slope: below 90°, or its rate. */
const rate = (of: 'taper' | 'slope'): fc.Arbitrary<Angle> =>
  fc.constantFrom('1:10', '1:50', '.05:1', '3/4:12').map((text) => {
    const [rise, run] = text.split(':').map((n) => num(n).value)
    const radians = of === 'taper' ? 2 * Math.atan(rise! / run! / 2) : Math.atan(rise! / run!)
    return { text, value: (radians * 180) / Math.PI, form: 'whole', decimals: 0, span, rate: of }
  })
const leanAngle = fc.oneof(
  angle.filter((a) => a.value < 90),
  rate('slope'),
)

// ---------------------------------------------------------------- header

const signature: fc.Arbitrary<Signature> = fc
  .tuple(freeText, maybe(fc.constantFrom('2024-03-11', '11.3.2024', '3/11/24').map(words)))
  .map(([who, date]) => tidy<Signature>({ name: who, date }))

const general: fc.Arbitrary<GeneralTolerance> = fc.oneof(
  fc
    .tuple(fc.integer({ min: 1, max: 4 }), small)
    .map(([decimals, plusMinus]): GeneralTolerance => ({ kind: 'decimals', decimals, plusMinus, span })),
  fc
    .tuple(fc.constantFrom('fractions', 'whole', 'angles'), small)
    .map(([kind, plusMinus]) => ({ kind, plusMinus, span }) as GeneralTolerance),
  fc
    .constantFrom('ISO 2768-mK', 'ISO 8062-3 DCTG 9')
    .map((text): GeneralTolerance => ({ kind: 'standard', text, span })),
)

const header = (unit: Unit): fc.Arbitrary<Header> =>
  fc
    .record({
      part: maybe(freeText),
      number: maybe(freeText),
      revision: maybe(fc.constantFrom('A', 'B2', 'first issue').map(words)),
      projection: fc.constantFrom('third angle' as const, 'first angle' as const),
      practice: fc.constantFrom('ASME' as const, 'ISO' as const),
      material: maybe(freeText),
      general: fc.array(general, { maxLength: 4 }),
      coating: maybe(freeText),
      texture: maybe(freeText),
      notes: fc.array(freeText, { maxLength: 3 }),
      drawn: maybe(signature),
      checked: maybe(signature),
      approved: maybe(signature),
      firm: maybe(freeText),
      documentType: maybe(freeText),
      edgeBreak: maybe(freeText),
      standard: maybe(freeText),
      sheet: maybe(fc.constantFrom('A3', 'B').map(words)),
      scale: maybe(fc.constantFrom({ paper: 1, part: 2, span }, { paper: 2.5, part: 1, span })),
      decimalSign: maybe(fc.constant('.' as const)),
    })
    .map((h) => tidy<Header>({ ...h, units: unit }))

// ---------------------------------------------------------------- stock

const stock = (unit: Unit): fc.Arbitrary<Stock> => {
  const s = size(unit)
  const signed = fc
    .tuple(fc.constantFrom('', '-'), wholeText)
    .map(([sign, text]) => sizeOf(unit, sign + text, false, undefined, false))
  const move: fc.Arbitrary<OutlineMove> = fc.oneof(
    fc.record({
      kind: fc.constant('by' as const),
      way: fc.constantFrom('right' as const, 'left' as const, 'up' as const, 'down' as const),
      size: s,
      span: fc.constant(span),
    }),
    fc.record({ kind: fc.constant('to' as const), across: signed, up: signed, span: fc.constant(span) }),
    fc.record({
      kind: fc.constant('slope' as const),
      across: s,
      acrossWay: fc.constantFrom('right' as const, 'left' as const),
      up: s,
      upWay: fc.constantFrom('up' as const, 'down' as const),
      span: fc.constant(span),
    }),
    fc
      .tuple(fc.constantFrom('right', 'left'), fc.constantFrom('up', 'down'), fc.boolean(), s, leanAngle)
      .map(([level, plumb, first, size, angle]): OutlineMove => {
        const [way, toward] = first ? [level, plumb] : [plumb, level]
        return { kind: 'lean', way, size, toward, angle, span } as OutlineMove
      }),
    fc.record({
      kind: fc.constant('arc' as const),
      radius: s,
      across: signed,
      up: signed,
      turn: fc.constantFrom('left' as const, 'right' as const),
      span: fc.constant(span),
    }),
    fc.record({
      kind: fc.constant('arc by length' as const),
      radius: s,
      length: s,
      turn: fc.constantFrom('left' as const, 'right' as const),
      span: fc.constant(span),
    }),
  )
  const k = <T extends string>(kind: T) => ({ kind: fc.constant(kind), span: fc.constant(span) })
  const step = fc.record({
    diameter: s,
    endDiameter: maybe(s),
    taper: maybe(
      fc
        .record({
          rate: rate('taper'),
          given: fc.constantFrom('large' as const, 'small' as const),
          toward: maybe(side),
        })
        .map((t) => tidy<Taper>(t)),
    ),
    length: fc.record({ kind: fc.constantFrom('long' as const, 'to' as const), size: s }),
  })
  return fc.oneof(
    fc.record({ ...k('plate'), length: s, width: s, thickness: s, face: side }),
    fc.record({ ...k('block'), length: s, width: s, height: s }),
    fc.record({ ...k('channel'), height: s, width: s, thickness: s, length: s, lie }),
    fc.record({ ...k('tee'), height: s, width: s, thickness: s, length: s, lie }),
    fc.record({ ...k('flat'), width: s, thickness: s, length: s, face: side }),
    fc.record({ ...k('bar'), diameter: s, length: s, lie }),
    fc.record({ ...k('tube'), outside: s, inside: s, length: s, lie }),
    fc.record({ ...k('tube'), outside: s, wall: s, length: s, lie }),
    fc.record({ ...k('disc'), diameter: s, thickness: s, face: side }),
    fc
      .record({
        ...k('angle'),
        make: fc.constantFrom('rolled' as const, 'formed' as const, 'machined' as const),
        thickness: s,
        insideRadius: maybe(s),
        toeRadius: maybe(s),
        uprightHeight: s,
        uprightAt: fc.constantFrom('rear' as const, 'front' as const, 'left' as const, 'right' as const),
        baseDepth: s,
        length: s,
      })
      .map((a) => tidy<Stock>(a)),
    fc
      .tuple(lie, maybe(fc.constant(name('collar left face'))), fc.array(step, { minLength: 1, maxLength: 5 }))
      .map(([l, d, steps]): Stock => {
        const names = ['left', 'collar', 'body', 'step 4', 'nose']
        const named = steps.map((st, i): TurnedStep => tidy<TurnedStep>({ ...st, name: name(names[i]!), span }))
        // The datum names a step that is there.
        return tidy<Stock>({ kind: 'turned', lie: l, datum: steps.length > 1 ? d : undefined, steps: named, span })
      }),
    fc.tuple(s, side, fc.array(move, { minLength: 2, maxLength: 6 })).map(
      ([thickness, f, moves]): Stock => ({
        kind: 'outline',
        thickness,
        face: f,
        moves: [...moves, { kind: 'close', span }],
        span,
      }),
    ),
  )
}

// ---------------------------------------------------------------- placement

const which: fc.Arbitrary<Anchor['which']> = fc.constantFrom(
  'lowest',
  'highest',
  'leftmost',
  'rightmost',
  'frontmost',
  'rearmost',
  'all',
)

/** `left end`: the word of the wall that an anchor reaches. */
const walled = (a: Pick<Anchor, 'which'>, word: string | undefined): Pick<Anchor, 'wall'> =>
  word && a.which !== 'all' ? { wall: { word, span } } : {}

/** A notch says of every anchor but its middle that it reaches a wall. */
function saysWalls(f: Feature): Feature {
  if (f.kind !== 'notch' || f.placement.kind !== 'runs') return f
  const said = (anchor: Run['anchor']): Run['anchor'] =>
    anchor.kind === 'from' ? { ...anchor, ...walled(anchor, anchor.wall?.word ?? 'side') } : anchor
  const runs = f.placement.runs.map((run): Run => ({ ...run, anchor: said(run.anchor) }))
  return { ...f, placement: { ...f.placement, runs } }
}

interface Placing {
  readonly placement: Placement
  readonly made: number
}

const placing = (unit: Unit): fc.Arbitrary<Placing> => {
  const s = size(unit)
  const anchor = fc.oneof(
    fc.constant<Run['anchor']>({ kind: 'centred', span }),
    fc
      .record({ which, word: maybe(fc.constantFrom('side', 'end', 'wall', 'edge')), distance: s, from: datum })
      .map(({ word, ...a }): Run['anchor'] => ({ kind: 'from', ...a, ...walled(a, word), span })),
  )
  const grid = fc
    .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 6 }), s, s, anchor, anchor)
    .map(([m, n, p, q, a, b]): Placing => {
      const run = (way: Run['way'], c: number, pitch: Size, at: Run['anchor']): Run =>
        tidy<Run>({ count: count(c), way, pitch: c > 1 ? pitch : undefined, anchor: at, span })
      return { placement: { kind: 'runs', runs: [run('across', m, p, a), run('up', n, q, b)], span }, made: m * n }
    })
  /** A row whose direction is for part/ to find, and the distance across it. */
  const row = fc.tuple(fc.integer({ min: 1, max: 9 }), s, anchor, anchor).map(([n, pitch, a, b]): Placing => {
    const first = tidy<Run>({ count: count(n), pitch: n > 1 ? pitch : undefined, anchor: a, span })
    return { placement: { kind: 'runs', runs: [first, { count: count(1), anchor: b, span }], span }, made: n }
  })
  const circle = fc
    .tuple(
      s,
      fc.integer({ min: 1, max: 12 }),
      fc.constantFrom('clock', 'degrees', 'astride'),
      maybe(fc.constant(name('bore'))),
    )
    .map(([diameter, n, way, about]): Placing => {
      const first =
        way === 'clock'
          ? { degrees: (450 - 30 * n) % 360, text: `one at ${n} o'clock`, span }
          : way === 'degrees'
            ? { degrees: 22.5, text: 'first at 22.5°', span }
            : { degrees: (90 + 180 / n) % 360, text: 'astride', span }
      return {
        placement: tidy<Extract<Placement, { kind: 'bolt circle' }>>({
          kind: 'bolt circle',
          diameter,
          first,
          about,
          span,
        }),
        made: n,
      }
    })
  const points = fc.array(fc.record({ a: s, b: s, span: fc.constant(span) }), { minLength: 1, maxLength: 4 }).map(
    (list): Placing => ({
      placement: { kind: 'points', points: list, fromA: name('left'), fromB: name('bottom'), span },
      made: list.length,
    }),
  )
  const axis = maybe(fc.constant(name('bore'))).map(
    (of): Placing => ({ placement: tidy<Extract<Placement, { kind: 'axis' }>>({ kind: 'axis', of, span }), made: 1 }),
  )
  return fc.oneof(grid, row, circle, points, axis)
}

const placed = (unit: Unit) =>
  fc
    .record({
      at: placing(unit),
      mirror: maybe(lie.map((across): Mirror => ({ across, span }))),
      face,
      from: maybe(side),
      label: maybe(label),
    })
    .map((p) => {
      const isMirrored = p.mirror && p.at.placement.kind !== 'bolt circle'
      return {
        face: p.face,
        from: p.from,
        label: p.label,
        placement: p.at.placement,
        mirror: isMirrored ? p.mirror : undefined,
        count: count(p.at.made * (isMirrored ? 2 : 1)),
        span,
      }
    })

// ---------------------------------------------------------------- features

const feature = (unit: Unit): fc.Arbitrary<Feature> => {
  const s = size(unit)
  const p = placed(unit)
  const through: Depth = { kind: 'through', span }
  const depth = fc.oneof(
    fc.constant(through),
    s.map((d): Depth => ({ kind: 'blind', size: d })),
  )
  const oneWall = maybe(fc.constant(name('bore'))).map(
    (into): Depth => ({ kind: 'through', oneWall: tidy<OneWall>({ into, span }), span }),
  )
  const anchor: fc.Arbitrary<Anchor> = fc.record({ which, distance: s, from: datum })
  const k = <T extends string>(kind: T) => ({
    kind: fc.constant(kind),
    span: fc.constant(span),
    label: maybe(label),
    count: fc.integer({ min: 1, max: 4 }).map(count),
  })
  const hole = fc
    .tuple(
      p,
      s,
      fc.oneof(depth, oneWall),
      fc.record({
        point: maybe(
          fc.oneof(angle, fc.constant<Angle>({ text: '180', value: 180, form: 'whole', decimals: 0, span })),
        ),
        counterbore: maybe(fc.record({ diameter: s, depth: s })),
        countersink: maybe(fc.record({ diameter: s, angle })),
        spotface: maybe(
          fc.tuple(s, maybe(s)).map(([diameter, d]) => tidy<{ diameter: Size; depth?: Size }>({ diameter, depth: d })),
        ),
      }),
    )
    .map(([q, diameter, d, more]): Feature => tidy<Feature>({ kind: 'hole', ...q, diameter, depth: d, ...more }))
  const tapped = fc
    .tuple(
      p,
      fc.constantFrom('M8', 'M10 × 1.25-6H', '1/4-20 UNC-2B', '#10-32 UNF', 'M6x1'),
      maybe(s),
      fc.oneof(depth, oneWall),
      maybe(s),
    )
    .map(([q, text, drill, d, threadDepth]): Feature => {
      const thread = words(text)
      const diameter = drill ?? { ...nominalSize(thread, unit)!, span }
      return tidy<Feature>({
        kind: 'hole',
        ...q,
        thread,
        diameter,
        depth: d,
        threadDepth: drill ? threadDepth : undefined,
      })
    })
  const slot = fc
    .tuple(
      p,
      s,
      s,
      fc.constantFrom('overall' as const, 'centres' as const),
      depth,
      lie,
      maybe(fc.constantFrom('left', 'top', 'rear').map(name)),
    )
    .map(
      ([q, width, length, measured, d, way, openTo]): Feature =>
        tidy<Feature>({ kind: 'slot', ...q, width, length, measured, depth: d, way, openTo }),
    )
  const pocket = fc
    .tuple(p, s, s, depth, maybe(s))
    .map(
      ([q, across, up, d, cornerRadius]): Feature =>
        tidy<Feature>({ kind: 'pocket', ...q, across, up, depth: d, cornerRadius }),
    )
  const boss = fc
    .tuple(p, s, s)
    .map(([q, diameter, height]): Feature => tidy<Feature>({ kind: 'boss', ...q, diameter, height }))
  const notch = fc.tuple(p, s, s, angle, fc.boolean(), side).map(([q, width, d, a, vee, edge]): Feature => {
    const { from: _from, ...rest } = q
    return tidy<Feature>({
      kind: 'notch',
      ...rest,
      edge: name(edge),
      shape: vee ? 'vee' : 'square',
      width,
      depth: vee ? undefined : d,
      angle: vee ? a : undefined,
    })
  })
  const edge = fc
    .record({
      ...k('chamfer'),
      edges: fc.array(fc.constantFrom('ends', 'upright, top corners', 'top left edge', 'bore edges').map(name), {
        minLength: 1,
        maxLength: 3,
      }),
      size: s,
    })
    .chain((f) =>
      fc.oneof(
        angle.map((a) => ({ ...f, angle: a })),
        s.map((leg) => ({ ...f, leg })),
        fc.constantFrom('round' as const, 'fillet' as const).map((kind) => ({ ...f, kind })),
      ),
    )
    .map((f): Feature => tidy<Feature>(f as Feature))
  const step = fc
    .record({
      ...k('step'),
      edge: fc.constantFrom('top left', 'bottom front edge').map(name),
      cuts: fc.array(fc.record({ size: s, from: datum }), { minLength: 2, maxLength: 2 }),
    })
    .map((f): Feature => tidy<Feature>(f))
  const groove = fc
    .record({ ...k('groove'), face: datum, width: s, bottom: s, anchor })
    .map((f): Feature => tidy<Feature>(f))
  const straight = fc
    .record({ ...k('groove'), face: datum, width: s, depth: s, anchor })
    .map((f): Feature => tidy<Feature>(f))
  const keyseat = fc
    .record({ ...k('keyseat'), face: datum, side, width: s, depth: s, length: s, anchor })
    .map((f): Feature => tidy<Feature>(f))
  const inBore = fc
    .record({
      ...k('keyseat'),
      face: fc.constantFrom('bore', 'inside').map(name),
      side,
      width: s,
      size: s,
      deep: fc.boolean(),
    })
    .map(({ size, deep, ...f }): Feature => tidy<Feature>({ ...f, ...(deep ? { depth: size } : { over: size }) }))
  const flat = fc
    .record({
      ...k('flat-cut'),
      count: fc.constantFrom(1, 2, 4, 6).map(count),
      face: datum,
      side: maybe(side),
      across: s,
      length: maybe(s),
      anchor: maybe(anchor),
    })
    // a single flat says its side
    .map((f): Feature => tidy<Feature>({ ...f, side: f.side ?? (f.count.value === 1 ? 'top' : undefined) }))
  return fc
    .oneof(hole, tapped, slot, pocket, boss, notch, edge, step, groove, straight, keyseat, inBore, flat)
    .map(saysWalls)
}

// ---------------------------------------------------------------- requests

const views: fc.Arbitrary<ViewRequest[]> = fc.uniqueArray(
  fc.oneof(
    side.map((s): ViewRequest => ({ kind: 'view', side: s, span })),
    fc
      .tuple(
        fc.constantFrom('A', 'B', 'C'),
        fc.constantFrom('full' as const, 'half' as const),
        maybe(fc.constant(name('bore'))),
        maybe(side),
      )
      .map(
        ([letter, extent, through, as]): ViewRequest =>
          tidy<Extract<ViewRequest, { kind: 'section' }>>({ kind: 'section', letter, extent, through, as, span }),
      ),
    fc.constantFrom('pictorial' as const, 'no pictorial' as const).map((kind): ViewRequest => ({ kind, span })),
  ),
  { minLength: 1, maxLength: 5, selector: (v) => (v.kind === 'section' ? v.letter : JSON.stringify(v)) },
)
const viewName: fc.Arbitrary<ViewName> = fc.oneof(
  side,
  fc.constantFrom('pictorial' as const, 'section A-A' as const, 'section K-K' as const),
)
const place = (unit: Unit): fc.Arbitrary<PlaceRequest> =>
  fc.oneof(
    fc
      .record({
        kind: fc.constant('size' as const),
        size: size(unit).map((s) => words(s.text === '1 3/8' ? '1.38' : s.text)),
        view: maybe(viewName),
        row: maybe(fc.constantFrom('1', '2').map(num)),
        side: maybe(side),
        span: fc.constant(span),
      })
      .map((r) => tidy<PlaceRequest>(r)),
    fc.record({
      kind: fc.constant('view' as const),
      view: viewName,
      across: fc.constantFrom('40', '-12.5').map(num),
      up: fc.constantFrom('0', '20').map(num),
      span: fc.constant(span),
    }),
  )
const scheme: fc.Arbitrary<SchemeRequest> = fc
  .record({
    scheme: fc.constantFrom('baseline' as const, 'chain' as const, 'ordinate' as const, 'hole table' as const),
    of: maybe(fc.constant(name('holes A'))),
    span: fc.constant(span),
  })
  .map((r) => tidy<SchemeRequest>(r))
const shown = (unit: Unit): fc.Arbitrary<ShowRequest> =>
  fc
    .record({
      what: fc.constantFrom('overall', 'overall length').map(name),
      size: maybe(size(unit)),
      span: fc.constant(span),
    })
    .map((r) => tidy<ShowRequest>(r))

const acceptance: fc.Arbitrary<Acceptance> = fc
  .record({
    rule: fc.constantFrom('hole-near-edge', 'thin-wall', 'fit-uncommon').map(words),
    at: maybe(fc.constantFrom('hole 1', 'hole A', 'bore', 'material').map(words)),
    numbers: maybe(
      fc.array(fc.constantFrom('1.2 mm', '.093 in', '40 n6', '5,5', '⌀9'), { minLength: 1, maxLength: 3 }),
    ),
    because: fc
      .constantFrom('the web carries no load', 'as the customer asks, see note # 4', 'of “old” tools')
      .map(words),
    span: fc.constant(span),
  })
  .map((r) => tidy<Acceptance>(r))

const letter = fc.constantFrom('A', 'B', 'C', 'X', 'R', 'AA')
const held = fc.constantFrom('holes A', 'bore', 'top', 'right face', 'boss end').map(name)
const datumFeature: fc.Arbitrary<DatumFeature> = fc.record({
  letter: letter.map(words),
  of: held,
  span: fc.constant(span),
})
const frameRow: fc.Arbitrary<FrameRow> = fc
  .record({
    zone: fc.constantFrom('width' as const, 'diameter' as const, 'spherical diameter' as const),
    value: fc.constantFrom('.005', '0.2', '1', '0,05').map(num),
    material: maybe(fc.constantFrom('M' as const, 'L' as const)),
    most: maybe(fc.constant(num('.03'))),
    projected: maybe(maybe(fc.constant(num('12'))).map((height) => tidy({ height, span }))),
    freeState: fc.boolean(),
    tangentPlane: fc.boolean(),
    unequal: maybe(fc.constantFrom('U' as const, 'UZ' as const).map((form) => ({ form, value: num('0.1'), span }))),
    combined: maybe(fc.constantFrom('CZ' as const, 'SZ' as const)),
    datums: fc.array(
      fc
        .record({
          letters: fc.array(letter, { minLength: 1, maxLength: 2 }),
          material: maybe(fc.constantFrom('M' as const, 'L' as const)),
          span: fc.constant(span),
        })
        .map((r) => tidy<FrameRow['datums'][number]>(r)),
      { maxLength: 3 },
    ),
    span: fc.constant(span),
  })
  .map((r) => tidy<FrameRow>(r))
const stackStatement: fc.Arbitrary<StackStatement> = fc
  .record({
    name: fc.constantFrom('web', 'lid seat', 'Gap under the cover').map(words),
    from: face,
    to: datum,
    along: maybe(lie),
    min: maybe(fc.constantFrom('0', '.5', '-1', '2.50')),
    max: maybe(fc.constantFrom('3', '12.5')),
    method: fc.constantFrom<StackStatement['method']>('worst case', 'root-sum-square'),
    bonus: maybe(fc.constant(true as const)),
  })
  .map(({ min, max, ...rest }) =>
    tidy<StackStatement>({ ...rest, min: min && parseNumber(min, 0), max: max && parseNumber(max, 0), span }),
  )

const frameStatement: fc.Arbitrary<FrameStatement> = fc
  .record({
    of: held,
    characteristic: fc.constantFrom(...(Object.keys(characteristics) as Characteristic[])),
    rows: fc.array(frameRow, { minLength: 1, maxLength: 3 }),
    composite: fc.boolean(),
    allAround: maybe(fc.constant(true as const)),
  })
  .map(({ of, characteristic, rows, composite, allAround }) => {
    const stacking = rows.length === 1 ? 'single' : composite ? 'composite' : 'segments'
    return tidy<FrameStatement>({ of, frame: { characteristic, rows, stacking, span }, allAround, span })
  })
const faceTexture: fc.Arbitrary<FaceTexture> = fc
  .record({
    of: held,
    parameter: fc.constantFrom('Ra' as const, 'Rz' as const),
    value: fc.constantFrom('0.8', '6.3', '32', '1,6').map(num),
    unit: fc.constantFrom('µm' as const, 'µin' as const),
    removal: fc.constantFrom('any' as const, 'required' as const, 'prohibited' as const),
    lay: maybe(fc.constantFrom(...lays)),
    process: maybe(fc.constantFrom(...processWords).map(words)),
    span: fc.constant(span),
  })
  .map((r) => tidy<FaceTexture>(r))

export const arbitraryBrief: fc.Arbitrary<Brief> = fc.constantFrom<Unit>('inch', 'mm').chain((unit) =>
  fc
    .record({
      text: fc.constant(''),
      header: header(unit),
      stock: stock(unit),
      features: fc.array(feature(unit), { maxLength: 4 }),
      views: maybe(views),
      shows: fc.array(shown(unit), { maxLength: 2 }),
      places: fc.array(place(unit), { maxLength: 2 }),
      schemes: fc.array(scheme, { maxLength: 2 }),
      acceptances: maybe(fc.array(acceptance, { minLength: 1, maxLength: 2 })),
      datums: maybe(fc.array(datumFeature, { minLength: 1, maxLength: 2 })),
      frames: maybe(fc.array(frameStatement, { minLength: 1, maxLength: 2 })),
      stacks: maybe(fc.array(stackStatement, { minLength: 1, maxLength: 2 })),
      textures: maybe(fc.array(faceTexture, { minLength: 1, maxLength: 2 })),
      comments: fc.constant([]),
      marks: fc.constant([]),
    })
    .map((b) => tidy<Brief>(b)),
)
