import type { Size } from '../../../brief/size.ts'
import { dot } from '../../../geometry/vec3.ts'
import type { Part } from '../../../part/part.ts'
import { fromLimits, type Link } from '../../../tolerance/stack/link.ts'
import { findLoop, type Located } from '../../../tolerance/stack/loop.ts'
import { stack } from '../../../tolerance/stack/stack.ts'
import { deviationsOf } from '../../measure/deviation.ts'
import { framedDeviations } from '../../measure/framed.ts'
import { said } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'

interface Stated extends Located {
  readonly size: Size
  readonly direction: string
}

export const rule: DrawingRule = {
  name: 'stack-vanishes',
  weight: 'must change',
  source: 'ASME Y14.5-2018, 4.4, accumulation of tolerances; worst case by the loop of sizes',
  about:
    'What lies between two faces that are sized from elsewhere may come out as nothing, or turned inside out, though every size is within its limits.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const sizes = stated(part)
    return neighbours(part).flatMap(({ from, to, gap, name }) => {
      const loop = findLoop(sizes, from, to)
      if (!loop.ok || loop.value.steps.length < 2) return []
      const links = loop.value.steps.flatMap(({ size }): Link[] => {
        const d = framedDeviations(part, size.size) ?? deviationsOf(size.size, brief.header)
        return d ? [fromLimits(size.size.text, size.size.mm + d.upper, size.size.mm + d.lower)] : []
      })
      if (links.length < loop.value.steps.length) return []
      const worst = stack(links).worstCase
      const spread = worst.max - worst.min
      if (gap - spread / 2 > 1e-9) return []
      const last = loop.value.steps[loop.value.steps.length - 1]!.size.size
      return [
        {
          text: `${name} is ${said(gap, last.unit)} on paper, but the sizes that leave it over may stray by ${said(spread / 2, last.unit)}: it can vanish.`,
          span: last.span,
          expected: `a size across it, or closer tolerances at ${loop.value.steps.map((s) => s.size.size.text).join(', ')}`,
          numbers: loop.value.steps.map((s) => s.size.size.text),
        },
      ]
    })
  },
}

/** Distances between plane data, as links of a loop. */
function stated(part: Part): Stated[] {
  return part.chosen.flatMap((c, i): Stated[] =>
    c.kind === 'distance' || c.kind === 'thickness'
      ? [{ id: String(i), from: c.from, to: c.to, size: c.size, direction: c.direction.join() }]
      : [],
  )
}

/** Plane faces next to one another along each axis, with material or a cut between them. */
function neighbours(part: Part): { from: string; to: string; gap: number; name: string }[] {
  const planes = part.data.flatMap((d) => (d.kind === 'plane' ? [d] : []))
  return (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).flatMap((axis) => {
    const along = planes
      .filter((p) => Math.abs(dot(p.normal, axis)) > 1 - 1e-9)
      .map((p) => ({ id: p.id, name: p.name, at: dot(p.point, axis) }))
      .sort((a, b) => a.at - b.at)
    return along.flatMap((p, i) => {
      const next = along[i + 1]
      const gap = next ? next.at - p.at : 0
      if (!next || gap < 1e-6) return []
      return [{ from: p.id, to: next.id, gap, name: `Between ${p.name} and ${next.name}` }]
    })
  })
}
