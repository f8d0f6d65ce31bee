import type { Mark } from '../../brief/mark.ts'
import { distance } from '../../geometry/vec3.ts'
import type { Part, PartFeature } from '../../part/part.ts'
import { plainText } from '../callout/plain-text.ts'
import type { Dimension, Statement } from '../dimension.ts'
import { framedSizes } from '../geometric/basic-sizes.ts'
import { ownerOf } from '../proof/level-words.ts'

const NEAR = 1e-5

/**
 * A basic size that also places a feature in line, or on the same bolt circle, which no frame holds: that one is left
 * without a tolerance of place
 * (ASME Y14.5-2018 7.4.1, ISO 5458, from memory). Each with the frame to write for it.
 */
export function basicMarks(part: Part, dimensions: readonly Dimension[]): Mark[] {
  const framed = framedSizes(part)
  const held = new Map(framed.flatMap(({ chosen, by }) => (chosen.group ? [[chosen.group, by] as const] : [])))
  const marks: Mark[] = []
  const told = new Set<string>()
  for (const { basic, states, feature, callout } of dimensions) {
    if (!basic) continue
    const placed = (states ?? []).flatMap((s) => placedBy(part, s))
    const own = part.features.filter((f) => f.id === feature)
    const owners = new Set([...own, ...placed])
    const holder = [...owners].find((f) => held.has(f.id))
    const by = holder && held.get(holder.id)
    for (const { id, feature: said } of owners) {
      if (!holder || !by || held.has(id) || told.has(id)) continue
      told.add(id)
      const statement = part.brief.text
        .slice(by.span.from, by.span.to)
        .replace(by.of.text, said ? nameIn(part, said) : id)
      marks.push({
        rule: 'basic-without-frame',
        weight: 'must change',
        text: `${plainText(callout)} is exact for ${holder.id}, which a frame holds, and places ${id} too, which none holds: ${id} has no tolerance of place.`,
        ...(said ? { span: said.span } : {}),
        expected: `\`${statement.replace(/\s+/g, ' ').trim()}\`${states?.some((s) => s.kind === 'bolt circle') ? '' : ', or places without the scheme, so that each has its own size'}`,
        source:
          'ASME Y14.5-2018 7.4.1, ISO 5458: a basic size says nothing of a feature that no frame holds (from memory)',
      })
    }
  }
  return marks
}

/** The features besides its own that a size's condition places. */
function placedBy(part: Part, said: Statement): PartFeature[] {
  if (said.kind === 'aligned') return said.reaches.flatMap((r) => ownerOf(part, r.name) ?? [])
  if (said.kind !== 'bolt circle') return []
  return part.features.filter(
    (f) =>
      f.pattern?.kind === 'bolt circle' &&
      f.members.some((m) => said.members.some((at) => distance(at, m.point) < NEAR)),
  )
}

/** A feature as the brief's own statement calls it: `holes B`. */
function nameIn({ brief }: Part, { span, label, kind }: NonNullable<PartFeature['feature']>): string {
  const word = /^\w+/.exec(brief.text.slice(span.from, span.to))?.[0] ?? kind
  return label ? `${word} ${label.text}` : word
}
