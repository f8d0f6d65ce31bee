import type { Vec2, Vec3 } from '../../geometry/vec.ts'
import type { Dimension, Statement } from '../../sizes/dimension.ts'
import type { Desk } from './form.ts'
import { onPaper } from './ink.ts'
import { turned } from './vec.ts'

/** So many other places of one size are tried, those furthest from its own in the pattern first. */
const MOST = 2
/** Points of the part nearer than this are one, mm. */
const SAME = 1e-6

/**
 * The other places at which a size that is said to hold for several (`2X`) may stand in its view: those in line with its
 * own along the size, where the view shows as much at its ends. Its statement is the same wherever it stands.
 */
export function alikePlaces(desk: Desk, owner: number, d: Dimension): Dimension[] {
  const m = d.measured
  if (m.kind !== 'linear' || m.open || d.signs) return []
  const stated = d.states?.filter((s): s is Distance => s.kind === 'distance' && s.also !== undefined) ?? []
  const [own] = stated
  if (!own?.also || stated.length > 1) return []
  const { view, placed } = desk.ink.views[owner]!
  const { right, up } = view.frame
  const flat = (p: Vec3): Vec2 => [on(p, right), on(p, up)]
  const across = turned(m.along)
  const shows = (p: Vec2) => desk.ink.atLine(owner, onPaper(placed, p))
  const moved = (p: Vec2, from: Vec3, to: Vec3): Vec2 | undefined => {
    const [a, b] = [flat(from), flat(to)]
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
    // The drawn point is level with the reach, and must be so at the other place.
    if (Math.abs(dx * across[0] + dy * across[1]) > SAME) return undefined
    if (Math.abs((p[0] - a[0]) * m.along[0] + (p[1] - a[1]) * m.along[1]) > SAME) return undefined
    const q: Vec2 = [p[0] + dx, p[1] + dy]
    return shows(p) && !shows(q) ? undefined : q
  }
  return own.also
    .toReversed()
    .flatMap((also): Dimension[] => {
      const [a, b] = [moved(m.a, own.from.at, also.from.at), moved(m.b, own.to.at, also.to.at)]
      return a && b ? [{ ...d, measured: { ...m, a, b } }] : []
    })
    .slice(0, MOST)
}

type Distance = Extract<Statement, { kind: 'distance' }>

const on = (p: Vec3, axis: Vec3) => p[0] * axis[0] + p[1] * axis[1] + p[2] * axis[2]
