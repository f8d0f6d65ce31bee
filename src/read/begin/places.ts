import type { Side } from '../../brief/brief.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { dot, sub } from '../../geometry/vec3.ts'
import type { Body } from '../../kernel/body.ts'
import { axisOf, faceAxes, facing } from '../../part/sides.ts'
import { SAME } from '../recognise/borders.ts'
import type { FoundPattern } from '../recognise/patterns.ts'
import type { Wording } from './wording.ts'

/** Words for the low end of each axis: the side counted from, and the member nearest to it. */
const LOW = [
  { side: 'left', member: 'leftmost' },
  { side: 'front', member: 'frontmost' },
  { side: 'bottom', member: 'lowest' },
] as const

/** What a place may be counted from. */
export interface Ground {
  readonly body: Body
  readonly words: Wording
  /** A name for the axis that stands at a bolt circle's centre; undefined where none does. */
  readonly centreName: (centre: Vec3, outward: Vec3) => string | undefined
  /** The part's own axis, where it is turned. */
  readonly onAxis: (at: Vec3, outward: Vec3) => boolean
}

/**
 * Where the members of a feature stand, as one line of a brief. Distances run from the left, front and bottom sides;
 * what stands in the middle to SAME is said to be centred. `held` axes need no place: an open slot has its own.
 */
export function placeLine(
  ground: Ground,
  side: Side,
  members: readonly Vec3[],
  outward: Vec3,
  pattern: FoundPattern,
  held?: 0 | 1 | 2,
): string {
  const { words } = ground
  const [first] = members
  if (!first) return ''
  if (members.length === 1 && ground.onAxis(first, outward)) return 'on axis'
  const axis = axisOf[side]
  const { across, up } = faceAxes(axis)
  const ways = ([across, up] as const).filter((k) => k !== held)
  if (pattern.kind === 'bolt circle' && pattern.equal) {
    const circle = circleLine(ground, side, members, outward, pattern)
    if (circle) return circle
  }
  const middle = (k: 0 | 1 | 2, from: number, to: number) => {
    const { min, max } = ground.body.box
    return Math.abs(from + to - min[k] - max[k]) < 2 * SAME
  }
  const word = (k: 0 | 1 | 2) => (k === across ? 'across' : 'up')
  const from = (k: 0 | 1 | 2, at: number) => `${words.length(at - ground.body.box.min[k])} from ${LOW[k].side}`
  const run = (k: 0 | 1 | 2, count: number, pitch: number, low: number) => {
    const place = middle(k, low, low + (count - 1) * pitch) ? 'centred' : `${LOW[k].member} ${from(k, low)}`
    return `${count} ${word(k)} ${words.length(pitch)} apart, ${place}`
  }
  const single = (k: 0 | 1 | 2) => (middle(k, first[k], first[k]) ? `centred ${word(k)}` : from(k, first[k]))
  const lowest = (k: 0 | 1 | 2, of: readonly number[]) => Math.min(...of.map((i) => members[i]![k]))
  switch (pattern.kind) {
    case 'row': {
      const k = ways.find((i) => Math.abs(pattern.direction[i]) > 0.5)
      if (k === undefined) break
      const others = ways.filter((i) => i !== k).map(single)
      return [run(k, pattern.members.length, pattern.pitch, lowest(k, pattern.members)), ...others].join('; ')
    }
    case 'grid': {
      const runs = [pattern.across, pattern.up].map((r) => {
        const k = ways.find((i) => Math.abs(r.direction[i]) > 0.5)
        return k === undefined ? '' : run(k, r.members.length, r.pitch, lowest(k, r.members))
      })
      return runs.join('; ')
    }
    case 'single': {
      if (members.length > 1) break
      if (ways.length === 2 && ways.every((k) => middle(k, first[k], first[k]))) return 'centred both ways'
      return ways.map(single).join('; ')
    }
    default:
  }
  const { min } = ground.body.box
  const points = members.map((m) => ways.map((k) => words.length(m[k] - min[k])).join(', '))
  return `at ${points.join('; ')}; from ${ways.map((k) => LOW[k].side).join(' and ')}`
}

/** A bolt circle about the part's axis or about something with a name. */
function circleLine(
  ground: Ground,
  side: Side,
  members: readonly Vec3[],
  outward: Vec3,
  pattern: Extract<FoundPattern, { kind: 'bolt circle' }>,
): string | undefined {
  const { words } = ground
  const about = ground.onAxis(pattern.centre, outward) ? '' : ground.centreName(pattern.centre, outward)
  if (about === undefined) return undefined
  const { right, up } = facing[side]
  const degrees = members.map((m) => {
    const d = sub(m, pattern.centre)
    const angle = (Math.atan2(dot(d, up), dot(d, right)) * 180) / Math.PI
    return angle < -1e-9 ? angle + 360 : Math.abs(angle)
  })
  const first = Math.min(...degrees)
  const atTop = degrees.some((a) => Math.abs(a - 90) < 1e-9)
  const start = atTop ? "one at 12 o'clock" : `first at ${words.angle(first)}°`
  const equal = members.length > 1 ? ', equal' : ''
  return `on ⌀${words.length(2 * pattern.radius)} bolt circle${about ? ` about ${about}` : ''}${equal}, ${start}`
}
