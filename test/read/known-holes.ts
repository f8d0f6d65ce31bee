import { readFileSync } from 'node:fs'
import { readBrief } from '../../src/brief/read.ts'
import type { OcctKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import type { Part } from '../../src/part/part.ts'

export const EXAMPLES = [
  'base-plate',
  'clevis',
  'cover',
  'flanged-bushing',
  'gusset',
  'sensor-mount',
  'slotted-strap',
  'spacer-ring',
  'stepped-shaft',
  't-nut',
  'v-block',
  'vent-bracket',
] as const

export function examplePart(name: string, kernel: OcctKernel): Part {
  const text = readFileSync(new URL(`../../examples/${name}.brief`, import.meta.url), 'utf8')
  return buildPart(readBrief(text), kernel)
}

const round = (n: number): string => {
  const text = n.toFixed(4)
  return Number(text) === 0 ? '0.0000' : text
}

/** A hole in words that do not depend on the end it is seen from, to a tenth of a micrometre: `⌀9.0000 through; counterbore ⌀15.0000 deep 9.0000; on line (…) along (…)`. */
export function holeWords(hole: {
  readonly diameter: number
  readonly depth?: number | undefined
  readonly counterbore?: { readonly diameter: number; readonly depth: number } | undefined
  readonly countersink?: { readonly diameter: number; readonly angle: number } | undefined
  readonly point: readonly number[]
  readonly direction: readonly number[]
}): string {
  const k = hole.direction.findIndex((c) => Math.abs(c) > 1 - 1e-9)
  const place = hole.point.map((c, i) => (i === k ? '-' : round(c)))
  const { counterbore, countersink } = hole
  return [
    `⌀${round(hole.diameter)} ${hole.depth === undefined ? 'through' : `deep ${round(hole.depth)}`}`,
    ...(counterbore ? [`counterbore ⌀${round(counterbore.diameter)} deep ${round(counterbore.depth)}`] : []),
    ...(countersink ? [`countersink ⌀${round(countersink.diameter)} × ${round(countersink.angle)}°`] : []),
    `at ${place.join(' ')}`,
  ].join('; ')
}

/** The holes that a brief says, from its own numbers and the places worked out from it. The bore of a tube is one. */
export function knownHoles(part: Part): string[] {
  const said = part.features.flatMap((f) => {
    const { feature } = f
    if (feature?.kind !== 'hole') return []
    return f.members.map((m) =>
      holeWords({
        diameter: feature.diameter.mm,
        depth: feature.depth.kind === 'blind' ? feature.depth.size.mm : undefined,
        counterbore: feature.counterbore && {
          diameter: feature.counterbore.diameter.mm,
          depth: feature.counterbore.depth.mm,
        },
        countersink: feature.countersink && {
          diameter: feature.countersink.diameter.mm,
          angle: feature.countersink.angle.value,
        },
        point: m.point,
        direction: f.outward,
      }),
    )
  })
  const { stock } = part.brief
  const tube =
    stock?.kind === 'tube' && stock.inside
      ? [holeWords({ diameter: stock.inside.mm, point: part.axis!.point, direction: part.axis!.direction })]
      : []
  return [...said, ...tube].sort()
}
