import { withAcceptances } from '../../../check/acceptances.ts'
import type { Drawing } from '../../compile.ts'
import type { Drawn, PartLink } from './messages.ts'

/** What the page needs of a drawing, without what only the engine can hold. */
export function drawnOf(drawing: Drawing, took: number): Drawn {
  const { brief, part, views, sizes, sheet, marks } = drawing
  const body = part && part.body.faces.length > 0 ? part.body : undefined
  return {
    brief,
    // Whether an acceptance is idle shows only when the checker has been round.
    marks: withAcceptances(brief, marks).filter((m) => m.rule !== 'acceptance-idle'),
    ...(sheet ? { sheet } : {}),
    dimensions: sizes?.dimensions ?? [],
    ...(sizes ? { proof: sizes.proof } : {}),
    features: body && part ? linksOf(part) : [],
    faceNames: body ? body.faces.map((f) => f.name ?? '') : [],
    edges: body ? body.edges.map((e) => ({ faces: e.faces, smooth: e.smooth })) : [],
    reasons: views?.reasons ?? [],
    ...(part?.items ? { items: part.items.map(({ name, quantity }) => ({ name, quantity })) } : {}),
    ...(body && part
      ? {
          weight: {
            volume: part.properties.volume,
            ...(part.properties.mass !== undefined ? { mass: part.properties.mass } : {}),
          },
        }
      : {}),
    took,
  }
}

function linksOf(part: NonNullable<Drawing['part']>): PartLink[] {
  const worked = part.features.map(
    (f): PartLink => ({
      id: f.id,
      kind: f.kind,
      faces: f.members.flatMap((m) => m.faces),
      ...(f.feature ? { span: f.feature.span } : {}),
    }),
  )
  const taken = new Set(worked.flatMap((f) => f.faces))
  const stock = part.brief.stock
  if (!stock) return worked
  const rest = part.body.faces.filter((f) => !taken.has(f.id)).map((f) => f.id)
  return [...worked, { id: 'stock', kind: 'stock', faces: rest, span: stock.span }]
}
