import type { Run } from '../../brief/brief.ts'
import type { Span } from '../../brief/span.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { findOrigin, type Origin } from '../find-name.ts'
import { axisOf, endSides, faceAxes, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'
import { centreAlong, type Ground, type Placed, type Walls, WORDS } from './ground.ts'

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

/** Members in a row or grid, each direction from an edge or centred. */
export function placeRuns(
  shop: Workshop,
  ground: Ground,
  runs: readonly Run[],
  id: string,
  span: Span,
  around = false,
): Placed | undefined {
  const directed = directRuns(shop, ground, runs)
  if (!directed) return undefined
  const normal = axisOf[ground.side]
  const { across, up } = faceAxes(normal)
  const lines: { positions: number[]; along?: Along; reference: number }[] = []
  const onAxis: (0 | 1 | 2)[] = []
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
    // across a round surface a hole points at the axis unless another place is said
    if (!first && ground.round && shop.contour && axis !== shop.contour.axis && normal !== shop.contour.axis) {
      lines.push({ positions: [0], reference: 0 })
      onAxis.push(axis)
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
    // a ring of holes says by its words that each points at the axis
    for (const axis of around ? [] : onAxis) shop.imply('centred', `${id} centred ${WORDS[axis]}`, [ids[0]!, 'axis'])
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
    // a figure that is missing from the text is marked there
    if (!run.pitch && shop.isTold('missing-size', run.span)) return undefined
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
  const { which, wall: said, distance } = run.anchor
  const half = ground.half ?? (said ? ground.halves?.[axis] : 0)
  if (half === undefined && said) {
    shop.must(
      'no-such-wall',
      said.span,
      `The distance of ${id} counts to its middle; it has no ${said.word} of its own here.`,
      `${distance.text} from ${run.anchor.from.text}, to its middle`,
    )
    return undefined
  }
  const origin = along.origin!
  const inward = centreAlong(shop, ground, axis).at >= origin.at ? 1 : -1
  const low = which === 'all' ? inward > 0 : LOW.includes(which)
  const wall = which === 'all' ? 0 : (half ?? 0)
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
  const { which, wall: said, distance: size } = run.anchor
  const own = ground.halves && !said ? undefined : walls?.[axis]
  const wall = which === 'all' ? undefined : own?.[LOW.includes(which) ? 'low' : 'high'][reference]
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
