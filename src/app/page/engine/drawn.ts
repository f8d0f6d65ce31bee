import { withAcceptances } from '../../../check/acceptances.ts'
import type { Drawing } from '../../compile.ts'
import { type FeatureWords, featureWords } from './feature-words.ts'
import type { Drawn, PartLink } from './messages.ts'

/** What the page needs of a drawing, without what only the engine can hold. */
export function drawnOf(drawing: Drawing, took: number): Drawn {
  const { brief, part, views, sizes, sheet, marks } = drawing
  const body = part && part.body.faces.length > 0 ? part.body : undefined
  const words = part && featureWords(part)
  return {
    brief,
    // Whether an acceptance is idle shows only when the checker has been round.
    marks: withAcceptances(brief, marks).filter((m) => m.rule !== 'acceptance-idle'),
    ...(sheet ? { sheet } : {}),
    dimensions: sizes?.dimensions ?? [],
    ...(sizes ? { proof: sizes.proof } : {}),
    features: body && part ? linksOf(part, words!) : [],
    faceNames: body && words ? body.faces.map((f) => (f.name ? words.ofFace(f.name) : '')) : [],
    edges: body ? body.edges.map((e) => ({ faces: e.faces, smooth: e.smooth })) : [],
    reasons: views?.reasons ?? [],
    sections: (views?.views ?? []).flatMap(({ kind, id, side }) =>
      kind === 'section' && side ? [{ view: id, side }] : [],
    ),
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

function linksOf(part: NonNullable<Drawing['part']>, words: FeatureWords): PartLink[] {
  const worked = part.features.map(
    (f): PartLink => ({
      id: f.id,
      kind: f.kind,
      words: words.of(f.id),
      faces: f.members.flatMap((m) => m.faces),
      ...(f.feature ? { span: f.feature.span } : {}),
    }),
  )
  const taken = new Set(worked.flatMap((f) => f.faces))
  const stock = part.brief.stock
  if (!stock) return worked
  const rest = part.body.faces.filter((f) => !taken.has(f.id)).map((f) => f.id)
  return [...worked, { id: 'stock', kind: 'stock', words: 'the stock', faces: rest, span: stock.span }]
}
