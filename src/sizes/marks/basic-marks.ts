import type { Mark } from '../../brief/mark.ts'
import type { Part } from '../../part/part.ts'
import { plainText } from '../callout/plain-text.ts'
import type { Dimension } from '../dimension.ts'
import { framedSizes } from '../geometric/basic-sizes.ts'
import { ownerOf } from '../proof/level-words.ts'

/**
 * A basic size that also places a feature in line which no frame holds: that one is left without a tolerance of place
 * (ASME Y14.5-2018 7.4.1, ISO 5458, from memory). Each with the frame to write for it.
 */
export function basicMarks(part: Part, dimensions: readonly Dimension[]): Mark[] {
  const framed = framedSizes(part)
  const held = new Map(framed.flatMap(({ chosen, by }) => (chosen.group ? [[chosen.group, by] as const] : [])))
  const marks: Mark[] = []
  const told = new Set<string>()
  for (const { basic, states, feature, callout } of dimensions) {
    if (!basic) continue
    const placed = (states ?? []).flatMap((s) =>
      s.kind === 'aligned' ? s.reaches.flatMap((r) => ownerOf(part, r.name) ?? []) : [],
    )
    const own = part.features.filter((f) => f.id === feature)
    const owners = new Set([...own, ...placed])
    const holder = [...owners].find((f) => held.has(f.id))
    const by = holder && held.get(holder.id)
    for (const { id, feature: said } of owners) {
      if (!holder || !by || held.has(id) || told.has(id)) continue
      told.add(id)
      const statement = part.brief.text.slice(by.span.from, by.span.to).replace(holder.id, id)
      marks.push({
        rule: 'basic-without-frame',
        weight: 'must change',
        text: `${plainText(callout)} is exact for ${holder.id}, which a frame holds, and places ${id} too, which none holds: ${id} has no tolerance of place.`,
        ...(said ? { span: said.span } : {}),
        expected: `\`${statement.replace(/\s+/g, ' ').trim()}\`, or places without the scheme, so that each has its own size`,
        source:
          'ASME Y14.5-2018 7.4.1, ISO 5458: a basic size says nothing of a feature that no frame holds (from memory)',
      })
    }
  }
  return marks
}
