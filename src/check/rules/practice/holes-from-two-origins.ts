import type { HoleFeature, Run } from '../../../brief/brief.ts'
import type { DrawingRule } from '../../rule.ts'

const opposite: Readonly<Record<string, string>> = {
  left: 'right',
  right: 'left',
  front: 'rear',
  rear: 'front',
  top: 'bottom',
  bottom: 'top',
}

export const rule: DrawingRule = {
  name: 'holes-from-two-origins',
  weight: 'look again',
  source: 'ASME Y14.5-2018, 4.1(f): sizes suit the function and add up little (from memory)',
  about:
    'Holes of one face that are located from opposite edges are apart by the tolerance of the whole length as well.',
  reads: 'drawing',
  check: ({ part }) => {
    const located = part.features.flatMap((f) =>
      f.feature?.kind === 'hole' ? runsOf(f.feature).map((run) => ({ run, id: f.id, side: f.outward.join() })) : [],
    )
    return located.flatMap(({ run, id, side }, i) => {
      if (run.anchor.kind !== 'from') return []
      const from = plain(run.anchor.from.text)
      const other = located
        .slice(0, i)
        .find(
          (o) => o.side === side && o.run.anchor.kind === 'from' && plain(o.run.anchor.from.text) === opposite[from],
        )
      if (other?.run.anchor.kind !== 'from') return []
      return [
        {
          text: `${id} is located from the ${from}, ${other.id} from the ${opposite[from]}: what is between them carries three tolerances.`,
          span: run.anchor.distance.span,
          expected: 'one origin for both, or the distance between them',
          feature: id,
          numbers: [run.anchor.distance.text, other.run.anchor.distance.text],
        },
      ]
    })
  },
}

const runsOf = (hole: HoleFeature): readonly Run[] => (hole.placement.kind === 'runs' ? hole.placement.runs : [])
const plain = (name: string) =>
  name
    .toLowerCase()
    .replace(/ (face|edge)$/, '')
    .trim()
