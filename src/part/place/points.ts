import type { Placement } from '../../brief/brief.ts'
import { axisDatum, findOrigin, markNoAxis, type Origin, plainName } from '../find-name.ts'
import { axisOf, faceAxes, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'
import { centreAlong, centreOf, type Ground, type Placed, WORDS } from './ground.ts'

/** Members at coordinates from two edges. */
export function placePoints(
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

/** One member on an axis. */
export function placeOnAxis(
  shop: Workshop,
  ground: Ground,
  placement: Extract<Placement, { kind: 'axis' }>,
  id: string,
): Placed | undefined {
  const normal = axisOf[ground.side]
  if (placement.of && plainName(placement.of.text) !== 'axis') {
    const found = axisDatum(shop, plainName(placement.of.text))
    if (!found) {
      markNoAxis(shop, placement.of)
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
