import { dot } from '../../geometry/vec3.ts'
import type { NamedFeature } from '../../part/named-feature.ts'
import { deviationsOf } from '../measure/deviation.ts'
import type { Obstacle } from './ends.ts'
import type { Sized, SizeLink } from './links.ts'
import { isObstacle, type Run, runOf } from './stack-up.ts'

/** One of two parts that meet, its file's name beside its sizes. */
export interface Side {
  readonly drawing: Sized
  readonly file: string
}

/**
 * The loop through two parts that meet. The last stack of the first part runs from the outer end to where they meet, that
 * of the second from there to its outer end. Faces meet outward normal against outward normal; a round stands in a round
 * with its play, the second part lying as it is drawn. The length is positive as drawn.
 */
export function joined(first: Side, second: Side): Run | Obstacle {
  const [a, b] = [first, second].map(({ drawing }) => {
    const index = (drawing.part.brief.stacks?.length ?? 0) - 1
    return { ...runOf(drawing, index), ends: drawing.part.named?.stacks[index] }
  })
  const failed = [a!, b!].find(({ run }) => isObstacle(run))
  if (failed) return failed.run as Obstacle
  const [runA, runB] = [a!.run as Run, b!.run as Run]
  const [mateA, mateB] = [a!.ends?.[1], b!.ends?.[0]]
  if (!mateA || !mateB) return { text: 'The two parts do not meet.', expected: 'a face or a round of each' }
  const ways = signs(runA, runB, mateA, mateB)
  if (isObstacle(ways)) return ways
  const play = mateA.kind === 'round' && mateB.kind === 'round' ? playOf(first, second, mateA, mateB) : undefined
  if (play && isObstacle(play)) return play
  const nominal = ways[0] * runA.nominal + ways[1] * runB.nominal
  const turn = nominal < -1e-9 ? -1 : 1
  const from = (side: Side, run: Run, way: number): SizeLink[] =>
    run.links.map((l) => ({ ...l, name: `${l.name} (${side.file})`, sensitivity: turn * way * l.sensitivity }))
  return {
    links: [...from(first, runA, ways[0]), ...(play ? [play] : []), ...from(second, runB, ways[1])],
    assumed: [...new Set([...runA.assumed, ...runB.assumed])],
    oblique: runA.oblique || runB.oblique,
    ends: { ...runA.ends, aside: 0 },
    nominal: turn * nominal,
    unit: runA.unit,
  }
}

/** +1 or −1 for each part: whether its length counts along the common way or against it. */
function signs(a: Run, b: Run, mateA: NamedFeature, mateB: NamedFeature): readonly [number, number] | Obstacle {
  if (mateA.kind === 'plane' && mateB.kind === 'plane')
    return [Math.sign(dot(a.ends.direction, mateA.direction)), -Math.sign(dot(b.ends.direction, mateB.direction))]
  if (mateA.kind === 'round' && mateB.kind === 'round') {
    const along = dot(a.ends.direction, b.ends.direction)
    if (Math.abs(along) > 1 - 1e-7) return [1, Math.sign(along)]
    return { text: 'The two lengths do not run the same way.', expected: 'the same direction in both parts' }
  }
  return {
    text: `${mateA.id} and ${mateB.id} cannot meet.`,
    expected: 'two flat faces, or a round in a round',
  }
}

/** How far a pin may stand off the middle of its hole, to either side: half of the loosest clearance. */
function playOf(first: Side, second: Side, mateA: NamedFeature, mateB: NamedFeature): SizeLink | Obstacle {
  const [hole, pin] = mateA.internal ? ([mateA, mateB] as const) : ([mateB, mateA] as const)
  const [holeSide, pinSide] = mateA.internal ? [first, second] : [second, first]
  const span = (side: Side, of: NamedFeature) => {
    const d = of.size && deviationsOf(of.size, side.drawing.part.brief.header)
    return of.size && d ? { max: of.size.mm + d.upper, min: of.size.mm + d.lower } : undefined
  }
  const [h, p] = [span(holeSide, hole), span(pinSide, pin)]
  if (!hole.internal || pin.internal || !h || !p)
    return { text: `${hole.id} and ${pin.id} are no hole and pin with known limits.`, expected: 'a hole and a pin' }
  const half = Math.max(0, (h.max - p.min) / 2)
  return {
    name: `play of ${pin.id} in ${hole.id}`,
    nominal: 0,
    upper: half,
    lower: -half,
    sensitivity: 1,
    distribution: 'uniform',
    of: 'play',
    unit: 'mm',
  }
}
