import { dot } from '../../geometry/vec3.ts'
import type { Body } from '../../kernel/body.ts'
import { axisLie, endSides } from '../../part/sides.ts'
import type { Groups } from '../part/round-features.ts'
import { axisAlong, SAME, sameLine } from '../recognise/borders.ts'
import type { Recognised } from '../recognise/recognise.ts'
import { type Wall, wallsOf } from '../recognise/walls.ts'
import type { StockWords } from './prism.ts'
import { statement, type Wording } from './wording.ts'

/** A step of a turned part, its broken edges filled up: places along the axis, mm. */
interface Step {
  readonly name: string
  from: number
  to: number
  readonly radii: readonly [number, number]
  readonly faces: number[]
}

const NAMES = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth']

/** `round bar` or `turned` with what breaks its outer edges; undefined where the outside is not a row of steps. */
export function turnedWords(body: Body, found: Recognised, groups: Groups, words: Wording): StockWords | undefined {
  const { axis } = found
  const k = axis && axisAlong(axis.direction)
  if (!axis || k === undefined) return undefined
  const walls = wallsOf(body).filter((w) => !w.inside && sameLine(w.line, axis))
  const broken = new Set(found.chamfers.flatMap((c) => c.faces))
  const plain = walls
    .filter((w) => (w.kind === 'cylinder' || w.kind === 'cone') && !w.faces.some((f) => broken.has(f)))
    .sort((a, b) => a.from - b.from)
  const outside = plain.filter((w) => found.bosses.some((b) => b.faces.some((f) => w.faces.includes(f))))
  if (outside.length === 0 || outside.length > NAMES.length) return undefined
  const steps = outside.map(
    (w, i): Step => ({ name: NAMES[i]!, from: w.from, to: w.to, radii: w.radii, faces: [...w.faces] }),
  )
  const lines: string[] = []
  const faces = new Set<number>()
  const [low, high] = endSides[k]!
  const boreEdges: string[] = []
  const say = (edge: string, what: string, of: readonly number[], to = lines) => {
    to.push(statement(what.startsWith('R') ? 'round' : 'chamfer', `${edge}: ${what}`))
    for (const f of of) faces.add(f)
  }
  const cones = wallsOf(body).filter((w) => !w.inside && sameLine(w.line, axis) && w.faces.some((f) => broken.has(f)))
  for (const cone of cones) {
    const chamfer = found.chamfers.find((c) => c.faces.some((f) => cone.faces.includes(f)))!
    const rising = cone.radii[1] > cone.radii[0]
    // a cone that widens along the axis breaks the low edge of the step behind it
    const step = steps.find((s) => Math.abs((rising ? s.from : s.to) - (rising ? cone.to : cone.from)) < SAME)
    if (!step) continue
    if (rising) step.from = cone.from
    else step.to = cone.to
    say(
      edgeName(step, steps, rising ? low : high, low, high),
      chamferText(chamfer.leg, chamfer.angle, words),
      cone.faces,
    )
  }
  for (const cone of wallsOf(body).filter((w) => w.inside && sameLine(w.line, axis))) {
    const chamfer = found.chamfers.find((c) => c.faces.some((f) => cone.faces.includes(f)))
    if (!chamfer) continue
    const end = [low, high].find(
      (_, i) => Math.abs((i === 0 ? cone.from : cone.to) - (i === 0 ? body.box.min : body.box.max)[k]) < SAME,
    )
    if (end) say(`bore ${end} edge`, chamferText(chamfer.leg, chamfer.angle, words), cone.faces, boreEdges)
  }
  for (const { kind, radius, places } of found.blends) {
    for (const place of places) {
      const ring = ringOf(body, place.faces, axis.direction)
      if (!ring || !sameLine(place.line, axis)) continue
      const before = steps.find((s) => Math.abs(s.to - ring.from) < SAME)
      const after = steps.find((s) => Math.abs(s.from - ring.to) < SAME)
      if (kind === 'round') {
        const step = before && (!after || before.radii[1] > after.radii[0]) ? before : after
        if (!step) continue
        if (step === before) step.to = ring.to
        else step.from = ring.from
        say(edgeName(step, steps, step === before ? high : low, low, high), `R${words.length(radius)}`, place.faces)
      } else {
        const step = before && (!after || before.radii[1] < after.radii[0]) ? before : after
        if (!step) continue
        if (step === before) step.to = ring.to
        else step.from = ring.from
        lines.push(statement('fillet', `${step.name} ${step === before ? high : low} edge: R${words.length(radius)}`))
        for (const f of place.faces) faces.add(f)
      }
    }
  }
  for (const s of steps) for (const f of s.faces) faces.add(f)
  for (const face of body.faces) if (isShoulder(face, k)) faces.add(face.id)
  const single = steps.length === 1 && Math.abs(steps[0]!.radii[0] - steps[0]!.radii[1]) < SAME
  const only = steps[0]!
  const length = words.length(only.to - only.from)
  const bore = single ? plainBore(groups) : undefined
  for (const f of bore?.faces ?? []) faces.add(f)
  const stock = bore
    ? statement(
        'tube',
        `⌀${words.length(2 * only.radii[0])} outside, ⌀${words.length(bore.diameter)} inside, ${length} long, axis ${axisLie[k]}`,
      )
    : single
      ? statement('round bar', `⌀${words.length(2 * only.radii[0])}, ${length} long, axis ${axisLie[k]}`)
      : statement('turned', `axis ${axisLie[k]}`, ...steps.map((s) => stepLine(s, words)))
  return {
    lines: [stock, ...lines],
    after: boreEdges,
    faces,
    nameOf: (face) => steps.find((s) => s.faces.includes(face))?.name,
  }
}

/** The one hole of a tube. */
function plainBore({ bores }: Groups) {
  const hole = bores.length === 1 ? bores[0]!.members[0]!.of : undefined
  const plain = hole && hole.depth === undefined && !hole.counterbore && !hole.spotface && !hole.countersink
  return plain && hole.others.length === 0 ? hole : undefined
}

/** A plane face square to the axis: an end or a shoulder, which the steps' lengths place. */
const isShoulder = (face: Body['faces'][number], k: 0 | 1 | 2): boolean =>
  face.surface.kind === 'plane' && axisAlong(face.surface.axes.z) === k

function stepLine({ name, from, to, radii }: Step, words: Wording): string {
  const [a, b] = radii.map((r) => words.length(2 * r))
  const tapered = Math.abs(radii[0] - radii[1]) < SAME ? '' : ` tapered to ⌀${b}`
  return `${name.padEnd(8)} ⌀${a}${tapered}, ${words.length(to - from)} long`
}

function edgeName(step: Step, steps: readonly Step[], side: string, low: string, high: string): string {
  if (side === low && step === steps[0]) return `${low} face outer edge`
  if (side === high && step === steps.at(-1)) return `${high} face outer edge`
  return `${step.name} ${side} edge`
}

const chamferText = (leg: number, angle: number, words: Wording): string =>
  `${words.length(leg)} × ${words.angle(angle)}°`

/** Where a torus between two steps begins and ends along the axis. */
function ringOf(body: Body, faces: readonly number[], direction: Wall['line']['direction']) {
  const face = body.faces[faces[0]!]!
  if (face.surface.kind !== 'torus') return undefined
  const at = face.loops.flat().flatMap(({ edge }) => {
    const { curve } = body.edges[edge]!
    return curve.kind === 'circle' && Math.abs(dot(curve.axes.z, direction)) > 1 - 1e-9
      ? [dot(curve.axes.origin, direction)]
      : []
  })
  return at.length < 2 ? undefined : { from: Math.min(...at), to: Math.max(...at) }
}
