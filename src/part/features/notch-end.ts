import type { Name, NotchFeature } from '../../brief/brief.ts'
import { plainName } from '../find-name.ts'
import { roundsCalled } from '../round-called.ts'
import type { RoundCut, Workshop } from '../workshop.ts'

/** Axes of the part's space: of the worked face, along the notch's edge, and inward from it. */
interface Ways {
  readonly axis: 0 | 1 | 2
  readonly run: 0 | 1 | 2
  readonly deep: 0 | 1 | 2
}

/** What of a cut notch says where its end lies. */
interface End {
  readonly name: string
  readonly edge: number
  readonly inward: 1 | -1
  readonly middle: number
  readonly half: number
  readonly depth: number
}

/** The round hole through the worked face that the brief calls so. Leaves a mark where there is none. */
export function roundNamed(shop: Workshop, name: Name, axis: 0 | 1 | 2): RoundCut | undefined {
  const text = plainName(name.text)
  const along = shop.roundCuts.filter((c) => c.axis === axis)
  const [found, more] = roundsCalled(shop, text, along)
  if (found && !more) return found
  const ids = [...new Set(along.map((c) => c.name))]
  shop.must(
    'unknown-name',
    name.span,
    found
      ? `“${name.text}” could be any of ${ids.join(', ')}.`
      : `No hole called “${name.text}” goes into the same face and is stated before the notch.`,
    found || ids.length > 0 ? ids.slice(0, 6).join(', ') : 'the bore first, and the notch after it',
  )
  return undefined
}

/** Whether the notch ends where its words say: in the hole that it goes to, or at a floor. Leaves a mark where not. */
export function endsRight(
  shop: Workshop,
  feature: NotchFeature,
  ends: readonly End[],
  { axis, run, deep }: Ways,
  into: RoundCut | undefined,
): boolean {
  for (const end of ends) {
    const floor = end.edge + end.inward * end.depth
    const inside = (c: RoundCut) =>
      [-1, 1].every((s) => Math.hypot(end.middle + s * end.half - c.point[run], floor - c.point[deep]) < c.r - 1e-9)
    if (into && !inside(into)) {
      const text = `${end.name} passes ${into.name} at its side: it would not end in it.`
      shop.must('notch-misses', feature.into!.span, text, 'a place in line with the hole, or a depth')
      return false
    }
    const open = !into && feature.shape === 'square' && shop.roundCuts.find((c) => c.axis === axis && inside(c))
    if (open) {
      const text = `${end.name} ends in ${open.name}, where its depth has no floor.`
      shop.must(
        'notch-without-floor',
        feature.depth!.span,
        text,
        `to ${shop.saidBores.has(open.feature) ? 'bore' : open.name} in place of the depth`,
      )
      return false
    }
  }
  return true
}
