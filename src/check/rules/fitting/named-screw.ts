import type { HoleFeature } from '../../../brief/brief.ts'
import { said } from '../../measure/said.ts'
import {
  clearancesOf,
  counterboreOf,
  countersinkOf,
  holesFor,
  type NamedScrew,
  screwsNamed,
} from '../../measure/screw.ts'
import type { BriefRule, Finding } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'named-screw',
  weight: 'must change',
  source: 'ISO 273:1979; ASME B18.2.8-1999; ISO 4762, ASME B18.3 for the heads (from memory)',
  about: 'Where a note names the screw, the hole clears it and the counterbore or countersink takes its head.',
  reads: 'brief',
  check: ({ brief }) => {
    const holes = brief.features.flatMap((f): HoleFeature[] => (f.kind === 'hole' ? [f] : []))
    return screwsNamed(brief.header.notes).flatMap((named) =>
      holesFor(named, holes).flatMap((hole) => against(named, hole)),
    )
  },
}

function against({ screw, head }: NamedScrew, hole: HoleFeature): Finding[] {
  const { diameter, counterbore, countersink } = hole
  const mm = (v: number) => (screw.unit === 'inch' ? 25.4 * v : v)
  const [close, , loose] = clearancesOf(screw)
  const out: Finding[] = []
  if (close && diameter.mm < mm(close.min) - 0.02) {
    out.push({
      text: `⌀${diameter.text} does not clear ${screw.name}.`,
      span: diameter.span,
      expected: `⌀${said(mm(clearancesOf(screw)[1]!.min), diameter.unit)}`,
      numbers: [screw.name, diameter.text],
    })
  } else if (loose && diameter.mm > mm(loose.max) + 0.02) {
    out.push({
      weight: 'look again',
      text: `⌀${diameter.text} is more than a loose hole for ${screw.name}.`,
      span: diameter.span,
      expected: `⌀${said(mm(clearancesOf(screw)[1]!.min), diameter.unit)}`,
      numbers: [screw.name, diameter.text],
    })
  }
  const socket = head === 'socket' ? counterboreOf(screw) : undefined
  if (
    socket &&
    counterbore &&
    (counterbore.diameter.mm < socket.head + 0.1 || counterbore.depth.mm < socket.high - 0.02)
  ) {
    const wide = counterbore.diameter.mm < socket.head + 0.1
    const size = wide ? counterbore.diameter : counterbore.depth
    out.push({
      text: `The head of ${screw.name}, ⌀${said(socket.head, size.unit)} × ${said(socket.high, size.unit)}, does not go into the counterbore.`,
      span: size.span,
      expected: `⌴ ⌀${said(socket.bore, size.unit)} ↧ ${said(socket.high, size.unit)}`,
      numbers: [screw.name, counterbore.diameter.text, counterbore.depth.text],
    })
  }
  const flat = head === 'flat' ? countersinkOf(screw) : undefined
  if (flat && countersink && countersink.diameter.mm < 0.9 * flat.wide) {
    out.push({
      text: `The flat head of ${screw.name}, ⌀${said(flat.wide, countersink.diameter.unit)}, stands proud.`,
      span: countersink.diameter.span,
      expected: `⌵ ⌀${said(flat.wide, countersink.diameter.unit)}`,
      numbers: [screw.name, countersink.diameter.text],
    })
  }
  return out
}
