import type { Brief } from '../../../brief/brief.ts'
import type { Size } from '../../../brief/size.ts'
import { ownDeviations, width } from '../../measure/deviation.ts'
import { quoted } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'bore-without-chamfer',
  weight: 'look again',
  source: 'common practice, no source',
  about: 'A close bore or shaft end is assembled over its edge: chamfered, or at least broken by the note on edges.',
  reads: 'brief',
  check: ({ brief }) => {
    const { stock, header } = brief
    if (header.edgeBreak || header.notes.some((n) => /\b(chamfer|edge|corner)s?\b/i.test(n.text))) return []
    if (brief.features.some((f) => f.kind === 'chamfer' && f.edges.some((e) => /bore|ends|edges/i.test(e.text))))
      return []
    const bores = brief.features.flatMap((f) => (f.kind === 'hole' && !f.thread ? [f.diameter] : []))
    const shafts =
      stock?.kind === 'turned' ? stock.steps.map((s) => s.diameter) : stock?.kind === 'bar' ? [stock.diameter] : []
    const tubes = stock?.kind === 'tube' && stock.inside ? [stock.inside] : []
    const close = [...shafts, ...tubes, ...bores].find((size) => {
      const own = ownDeviations(size)
      return own !== undefined && width(own) < 0.06
    })
    if (!close) return []
    return [
      {
        text: `⌀${quoted(close)} is a fit, and its edges are left as they come.`,
        span: close.span,
        expected: `${edgesOf(brief, close)}: ${header.units === 'inch' ? '.03' : '1'} × 45°, or the edges statement`,
        numbers: [quoted(close)],
      },
    ]
  },
}

/** The statement's beginning: a hole has edges of its own, and a round part ends. */
function edgesOf({ features, stock }: Brief, close: Size): string {
  const holes = features.filter((f) => f.kind === 'hole')
  const hole = holes.find((f) => f.diameter === close)
  if (!hole) return 'chamfer   ends'
  if (hole.label) return `chamfer   hole ${hole.label.text} edges`
  const isBore = stock?.kind === 'disc' || (holes.length === 1 && hole.placement.kind === 'axis')
  return isBore && holes.length === 1 ? 'chamfer   bore edges' : `chamfer   hole ${holes.indexOf(hole) + 1} edges`
}
