import type { Placement } from '../../brief/brief.ts'
import { add, scale } from '../../geometry/vec3.ts'
import { axisDatum, markNoAxis, plainName } from '../find-name.ts'
import { axisOf, faceAxes, facing, outwardOf } from '../sides.ts'
import type { Workshop } from '../workshop.ts'
import { centreAlong, centreOf, type Ground, type Placed, WORDS } from './ground.ts'

/** Members on a bolt circle, about the part's axis, a named one, or the middle of the face. */
export function placeCircle(
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
      markNoAxis(shop, placement.about)
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
  if (!placement.first && !shop.isTold('first-hole-not-said', placement.span)) {
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
    // As typed: `22.5`, `22,5` or `22-1/2`.
    const text = /(\S*\d)°/.exec(first.text)?.[1] ?? String(start)
    const decimals = /[.,](\d+)/.exec(text)?.[1]?.length ?? 0
    const form = text.includes('/') ? 'fraction' : decimals > 0 ? 'decimal' : 'whole'
    shop.choose({
      kind: 'angle',
      angle: { text, value: start, form, decimals, span: first.span },
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
