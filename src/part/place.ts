import type { Mirror, Placement, Run, Side } from '../brief/brief.ts'
import type { Span } from '../brief/span.ts'
import type { Vec3 } from '../geometry/vec.ts'
import { add, scale } from '../geometry/vec3.ts'
import { axisDatum, findOrigin, markUnknown, type Origin, plainName } from './find-name.ts'
import type { PartFeature } from './part.ts'
import { axisOf, endSides, faceAxes, facing, lieAxis, outwardOf, unitAxis } from './sides.ts'
import type { Workshop } from './workshop.ts'

/** The flat ground that members are placed on. */
export interface Ground {
  readonly side: Side
  readonly at: number
  /** The middle of the face as it stands, used where nothing says where. */
  readonly middle: Vec3
  /** Round faces: members may sit about the part's axis. */
  readonly round: boolean
  /** The place along this axis is given already: an open slot's edge, a notch's. */
  readonly fixed?: { readonly axis: 0 | 1 | 2; readonly at: number }
  /** Half the width of a cut whose outer words (`lower side`, `left end`) mean its wall. */
  readonly half?: number
}

/** Data of the members' low and high walls, where distances may reach those. */
export interface Walls {
  readonly low: readonly string[]
  readonly high: readonly string[]
}

export interface Placed {
  /** Centres on the worked face. */
  readonly points: readonly Vec3[]
  readonly pattern: NonNullable<PartFeature['pattern']>
  /** Records sizes and conditions once the members' axes (or middle planes) have ids; same order as `points`. */
  readonly choose: (ids: readonly string[], walls?: Walls) => void
}

/** More members than this are refused. */
const MOST_MEMBERS = 5000

/** The lowest and highest plane of the part along an axis of space. */
export function limitsAlong(shop: Workshop, axis: 0 | 1 | 2): readonly [Origin, Origin] | undefined {
  const found = endSides[axis]!.map((side): Origin | undefined => {
    const face = shop.faces.find((f) => f.name === side || f.name === `${side} face`)
    return face && { id: face.name, axis, at: face.at }
  })
  const [low, high] = found
  return low && high ? [low, high] : undefined
}

/** What `centred` refers to along an axis: the middle, and the two planes it lies between (none: the axis itself). */
function centreAlong(shop: Workshop, ground: Ground, axis: 0 | 1 | 2): { at: number; between: string[] } {
  if (shop.contour && axis !== shop.contour.axis) return { at: 0, between: ['axis'] }
  const limits = limitsAlong(shop, axis)
  if (!limits) return { at: ground.middle[axis], between: [] }
  const [low, high] = limits
  return { at: (low.at + high.at) / 2, between: [low.id, high.id] }
}

/** Finds where the members sit. Undefined (and a mark) where that cannot be said. */
export function placeMembers(
  shop: Workshop,
  ground: Ground,
  placement: Placement,
  id: string,
  copies: { readonly count: number; readonly mirror?: Mirror | undefined },
): Placed | undefined {
  const { count, mirror } = copies
  const placed = (() => {
    switch (placement.kind) {
      case 'runs':
        return placeRuns(shop, ground, placement.runs, id, placement.span)
      case 'bolt circle':
        return placeCircle(shop, ground, placement, id, mirror ? Math.ceil(count / 2) : count)
      case 'points':
        return placePoints(shop, ground, placement, id)
      case 'axis':
        return placeOnAxis(shop, ground, placement, id)
    }
  })()
  if (!placed) return undefined
  const full = mirror ? mirrored(shop, ground, placed, mirror) : placed
  shop.members += full.points.length
  if (shop.members > MOST_MEMBERS) {
    shop.must(
      'too-many',
      placement.span,
      `The part would have more than ${MOST_MEMBERS} holes, slots and the like.`,
      'fewer members',
    )
    return undefined
  }
  return full
}

function countOf(placement: Placement): number {
  if (placement.kind === 'runs') return placement.runs.reduce((n, r) => n * Math.max(1, r.count.value), 1)
  return placement.kind === 'points' ? placement.points.length : 1
}

/** Whether the members asked for are more than can be built; marked at once, before any list of them is made. */
export function tooMany(shop: Workshop, placement: Placement, count: { value: number; span: Span }): boolean {
  const asked = Math.max(countOf(placement), placement.kind === 'bolt circle' ? count.value : 1)
  if (asked + shop.members <= MOST_MEMBERS) return false
  shop.must(
    'too-many',
    count.span,
    `${asked} members are more than a drawing can show; the most is ${MOST_MEMBERS}.`,
    'fewer members',
  )
  return true
}

interface Along {
  readonly run: Run
  readonly axis: 0 | 1 | 2
  readonly origin?: Origin
}

function directRuns(shop: Workshop, ground: Ground, runs: readonly Run[]): Along[] | undefined {
  const { across, up } = faceAxes(axisOf[ground.side])
  const result: (Along | { run: Run; axis?: undefined })[] = []
  for (const run of runs) {
    const way = run.way === 'across' ? across : run.way === 'up' ? up : undefined
    if (run.anchor.kind === 'centred') {
      result.push(way === undefined ? { run } : { run, axis: way })
      continue
    }
    const origin = findOrigin(shop, run.anchor.from, [across, up], way)
    if (!origin) return undefined
    result.push({ run, axis: origin.axis, origin })
  }
  const taken = result.flatMap((r) => (r.axis === undefined ? [] : [r.axis]))
  if (ground.fixed) taken.push(ground.fixed.axis)
  const free = [across, up].filter((a) => !taken.includes(a))
  return result.map((r): Along => {
    if (r.axis !== undefined) return r
    return { run: r.run, axis: free.shift() ?? across }
  })
}

const LOW = ['lowest', 'leftmost', 'frontmost']
const WORDS = ['left-right', 'front-rear', 'up-down']

function placeRuns(shop: Workshop, ground: Ground, runs: readonly Run[], id: string, span: Span): Placed | undefined {
  const directed = directRuns(shop, ground, runs)
  if (!directed) return undefined
  const normal = axisOf[ground.side]
  const { across, up } = faceAxes(normal)
  const lines: { positions: number[]; along?: Along; reference: number }[] = []
  for (const axis of [across, up]) {
    const [first, second] = directed.filter((d) => d.axis === axis)
    if (first && second) {
      const [said, again] = [first, second].map(({ run }) => shop.brief.text.slice(run.span.from, run.span.to))
      for (const { run } of [second, first]) {
        const text = `${id} is located ${WORDS[axis]} twice: ${said}, and ${again}.`
        shop.must('located-twice', run.span, text, 'one location in each direction')
      }
    }
    if (!first && ground.fixed?.axis === axis) {
      lines.push({ positions: [ground.fixed.at], reference: 0 })
      continue
    }
    if (!first) {
      shop.must(
        'not-located',
        span,
        `${id} is not located ${WORDS[axis]}; it is shown in the middle.`,
        `centred ${axis === across ? 'across' : 'up'}, or a distance from ${endSides[axis]![0]}`,
      )
      lines.push({ positions: [centreAlong(shop, ground, axis).at], reference: 0 })
      continue
    }
    const line = positionsOf(shop, ground, first, id)
    if (!line) return undefined
    lines.push({ ...line, along: first })
  }
  const [xs, ys] = [lines[0]!, lines[1]!]
  const points: Vec3[] = []
  for (const y of ys.positions) {
    for (const x of xs.positions) {
      const p: [number, number, number] = [0, 0, 0]
      p[normal] = ground.at
      p[across] = x
      p[up] = y
      points.push(p)
    }
  }
  const [nx, ny] = [xs.positions.length, ys.positions.length]
  const kind = nx > 1 && ny > 1 ? 'grid' : nx > 1 || ny > 1 ? 'row' : 'single'
  const choose = (ids: readonly string[], walls?: Walls) => {
    const row = ids.slice(0, nx)
    const column = Array.from({ length: ny }, (_, j) => ids[j * nx]!)
    chooseRun(shop, ground, xs, row, id, walls)
    chooseRun(shop, ground, ys, column, id, walls)
    if (nx > 1) shop.imply('aligned', `${id} in line ${WORDS[across]}`, ids)
    if (ny > 1) shop.imply('aligned', `${id} in line ${WORDS[up]}`, ids)
  }
  return { points, pattern: { kind }, choose }
}

function positionsOf(
  shop: Workshop,
  ground: Ground,
  along: Along,
  id: string,
): { positions: number[]; reference: number } | undefined {
  const { run, axis } = along
  const n = Math.max(1, run.count.value)
  const pitch = run.pitch?.mm ?? 0
  if (n > 1 && pitch <= 0) {
    shop.must(
      'pitch-missing',
      run.pitch?.span ?? run.span,
      `${n} of ${id} in a row need a distance apart greater than zero.`,
      'a distance and the word apart',
    )
    return undefined
  }
  const list = (start: number) => Array.from({ length: n }, (_, i) => start + i * pitch)
  if (run.anchor.kind === 'centred') {
    return { positions: list(centreAlong(shop, ground, axis).at - ((n - 1) * pitch) / 2), reference: 0 }
  }
  const { which, distance } = run.anchor
  const origin = along.origin!
  const inward = centreAlong(shop, ground, axis).at >= origin.at ? 1 : -1
  const low = which === 'all' ? inward > 0 : LOW.includes(which)
  const wall = which === 'all' ? 0 : (ground.half ?? 0)
  const at = origin.at + inward * distance.mm + (low ? wall : -wall)
  return low ? { positions: list(at), reference: 0 } : { positions: list(at - (n - 1) * pitch), reference: n - 1 }
}

function chooseRun(
  shop: Workshop,
  ground: Ground,
  line: { readonly along?: Along; readonly reference: number },
  ids: readonly string[],
  id: string,
  walls?: Walls,
): void {
  const { along, reference } = line
  if (!along) return
  const { run, axis, origin } = along
  const direction = unitAxis[axis]
  if (run.pitch && ids.length > 1) {
    shop.choose({ kind: 'pitch', size: run.pitch, members: ids, direction, span: run.pitch.span, group: id })
    if (ids.length > 2) shop.imply('equally spaced', `${id} equally spaced ${WORDS[axis]}`, ids)
  }
  if (run.anchor.kind === 'centred') {
    const { between } = centreAlong(shop, ground, axis)
    const ends = ids.length > 1 ? [ids[0]!, ids[ids.length - 1]!] : [ids[0]!]
    shop.imply('centred', `${id} centred ${WORDS[axis]}`, [...ends, ...between])
    return
  }
  const { which, distance: size } = run.anchor
  const wall = which === 'all' || !walls ? undefined : (LOW.includes(which) ? walls.low : walls.high)[reference]
  shop.choose({
    kind: 'distance',
    size,
    from: origin!.id,
    to: wall ?? ids[reference]!,
    direction,
    span: size.span,
    group: id,
  })
}

function placeCircle(
  shop: Workshop,
  ground: Ground,
  placement: Extract<Placement, { kind: 'bolt circle' }>,
  id: string,
  n: number,
): Placed | undefined {
  const normal = axisOf[ground.side]
  const { right, up } = facing[ground.side]
  let centre = centreOf(shop, ground)
  let of = shop.contour ? 'axis' : `${id} circle axis`
  if (placement.about) {
    const found = axisDatum(shop, plainName(placement.about.text))
    if (!found) {
      markUnknown(shop, placement.about, 'axis', [...shop.data.keys()])
      return undefined
    }
    const p: [number, number, number] = [...found.point]
    p[normal] = ground.at
    centre = p
    of = found.id
  } else if (!shop.contour) {
    shop.axis(of, centre, outwardOf[ground.side])
    const { across, up: upAxis } = faceAxes(normal)
    for (const axis of [across, upAxis]) {
      const { between } = centreAlong(shop, ground, axis)
      shop.imply('centred', `bolt circle centred ${WORDS[axis]}`, [of, ...between])
    }
  }
  if (placement.diameter.mm <= 0) {
    shop.must('size-zero', placement.diameter.span, 'A bolt circle needs a diameter greater than zero.', 'a diameter')
    return undefined
  }
  if (!placement.first) {
    shop.must(
      'first-missing',
      placement.span,
      `Where the first of ${id} sits on the bolt circle is not said; taken at 12 o'clock.`,
      "one at 12 o'clock, first at 0°, or astride",
    )
  }
  const start = placement.first?.degrees ?? 90
  const radius = placement.diameter.mm / 2
  const points = Array.from({ length: n }, (_, i) => {
    const [c, s] = exactDirection(start + (360 * i) / n)
    return add(centre, add(scale(right, radius * c), scale(up, radius * s)))
  })
  const choose = (ids: readonly string[]) => {
    const { diameter, first } = placement
    shop.choose({ kind: 'bolt circle', size: diameter, of, members: ids, span: diameter.span, group: id })
    if (n > 1) shop.imply('equally spaced', `${id} equally spaced on the bolt circle`, ids)
    if (!first) return
    if (Number.isInteger(start / 90) || /o.?clock|astride/i.test(first.text)) {
      shop.imply('aligned', `${id}: ${first.text}`, [ids[0]!, of])
      return
    }
    const level = shop.plane(`${of} level`, centre, up)
    const text = /[\d.]+/.exec(first.text)?.[0] ?? String(start)
    const decimals = text.split('.')[1]?.length ?? 0
    shop.choose({
      kind: 'angle',
      angle: { text, value: start, form: decimals > 0 ? 'decimal' : 'whole', decimals, span: first.span },
      from: level,
      to: ids[0]!,
      span: first.span,
      group: id,
    })
  }
  return { points, pattern: { kind: 'bolt circle', centre, radius, normal: outwardOf[ground.side] }, choose }
}

/** Cosine and sine with exact zeros and ones at quarter turns. */
function exactDirection(degrees: number): [number, number] {
  const a = ((degrees % 360) + 360) % 360
  if (a === 0) return [1, 0]
  if (a === 90) return [0, 1]
  if (a === 180) return [-1, 0]
  if (a === 270) return [0, -1]
  const r = (a * Math.PI) / 180
  return [Math.cos(r), Math.sin(r)]
}

function centreOf(shop: Workshop, ground: Ground): Vec3 {
  const normal = axisOf[ground.side]
  const p: [number, number, number] = [0, 0, 0]
  const { across, up } = faceAxes(normal)
  p[normal] = ground.at
  for (const axis of [across, up]) p[axis] = centreAlong(shop, ground, axis).at
  return p
}

function placePoints(
  shop: Workshop,
  ground: Ground,
  placement: Extract<Placement, { kind: 'points' }>,
  id: string,
): Placed | undefined {
  const normal = axisOf[ground.side]
  const { across, up } = faceAxes(normal)
  const a = findOrigin(shop, placement.fromA, [across, up])
  const b =
    a &&
    findOrigin(
      shop,
      placement.fromB,
      [across, up].filter((k) => k !== a.axis),
    )
  if (!a || !b) return undefined
  const coordinate = (o: Origin, distance: number) =>
    o.at + (centreAlong(shop, ground, o.axis).at >= o.at ? distance : -distance)
  const points = placement.points.map((q) => {
    const p: [number, number, number] = [0, 0, 0]
    p[normal] = ground.at
    p[a.axis] = coordinate(a, q.a.mm)
    p[b.axis] = coordinate(b, q.b.mm)
    return p
  })
  const choose = (ids: readonly string[]) => {
    for (const [origin, key] of [
      [a, 'a'],
      [b, 'b'],
    ] as const) {
      const met = new Map<string, string>()
      placement.points.forEach((q, i) => {
        const size = q[key]
        const before = met.get(size.text)
        // the same number from the same face again puts two members in line
        if (before) {
          shop.imply('aligned', `${id} in line`, [before, ids[i]!])
          return
        }
        met.set(size.text, ids[i]!)
        shop.choose({
          kind: 'distance',
          size,
          from: origin.id,
          to: ids[i]!,
          direction: unitAxis[origin.axis],
          span: size.span,
          group: id,
        })
      })
    }
  }
  return { points, pattern: { kind: points.length > 1 ? 'points' : 'single' }, choose }
}

function placeOnAxis(
  shop: Workshop,
  ground: Ground,
  placement: Extract<Placement, { kind: 'axis' }>,
  id: string,
): Placed | undefined {
  const normal = axisOf[ground.side]
  if (placement.of && plainName(placement.of.text) !== 'axis') {
    const found = axisDatum(shop, plainName(placement.of.text))
    if (!found) {
      markUnknown(shop, placement.of, 'axis', [...shop.data.keys()])
      return undefined
    }
    const p: [number, number, number] = [...found.point]
    p[normal] = ground.at
    return {
      points: [p],
      pattern: { kind: 'single' },
      choose: (ids) => shop.imply('coaxial', `${id} on the axis of ${placement.of!.text}`, [ids[0]!, found.id]),
    }
  }
  const point = centreOf(shop, ground)
  const choose = (ids: readonly string[]) => {
    if (shop.contour) {
      if (ids[0] !== 'axis') shop.imply('coaxial', `${id} on the axis`, [ids[0]!, 'axis'])
      return
    }
    const { across, up } = faceAxes(normal)
    for (const axis of [across, up]) {
      const { between } = centreAlong(shop, ground, axis)
      shop.imply('centred', `${id} centred ${WORDS[axis]}`, [ids[0]!, ...between])
    }
  }
  return { points: [point], pattern: { kind: 'single' }, choose }
}

function mirrored(shop: Workshop, ground: Ground, placed: Placed, mirror: Mirror): Placed {
  const axis = lieAxis[mirror.across]
  if (axis === axisOf[ground.side]) {
    shop.must(
      'wrong-direction',
      mirror.span,
      `A feature on the ${ground.side} cannot be mirrored ${mirror.across} on the same face.`,
      'a direction in the face',
    )
    return placed
  }
  const { at, between } = centreAlong(shop, ground, axis)
  const n = placed.points.length
  const others = placed.points.map((p): Vec3 => {
    const q: [number, number, number] = [...p]
    q[axis] = 2 * at - p[axis]
    return q
  })
  return {
    points: [...placed.points, ...others],
    pattern: placed.pattern.kind === 'bolt circle' ? placed.pattern : { kind: n > 1 ? 'points' : 'row' },
    choose: (ids, walls) => {
      placed.choose(ids.slice(0, n), walls)
      for (let i = 0; i < n; i++) {
        shop.imply('centred', `mirrored ${mirror.across}`, [ids[i]!, ids[i + n]!, ...between])
        shop.imply('aligned', `mirrored ${mirror.across}`, [ids[i]!, ids[i + n]!])
      }
    },
  }
}
