import type { Part } from '../part/part.ts'
import type { ViewSet } from '../views/view.ts'
import { type Context, contextOf } from './choose/context.ts'
import { settle } from './choose/draft.ts'
import { draftsOf } from './choose/drafts.ts'
import { onceEach } from './choose/once.ts'
import { withWords } from './choose/said.ts'
import { shownDrafts } from './choose/shown.ts'
import type { Dimension, SizeSet } from './dimension.ts'
import { type NoteStatement, prove } from './proof/prove.ts'

/**
 * The sizes of the sheet: the brief's own numbers as chosen, each once and in the view that shows its feature true,
 * with callout, tolerance and the proof that they fix the solid exactly once.
 */
export function chooseSizes(part: Part, views: ViewSet): SizeSet {
  const context = contextOf(part, views)
  const drafts = [...onceEach(context, withWords(context, draftsOf(context))), ...shownDrafts(context)]
  const noted = thicknessNotes(context)
  const dimensions: Dimension[] = drafts.flatMap((draft) => {
    if (noted.some((n) => n.draft === draft.id)) return []
    const settled = settle(context, draft)
    return settled ? [settled] : []
  })
  const proof = prove(part, dimensions, { views, model: context.model, notes: noted })
  return { dimensions, tables: [], notes: [], proof, marks: context.marks }
}

/** A thickness that the sheet gives as a note stands in no view. */
function thicknessNotes(context: Context): (NoteStatement & { draft: string })[] {
  if (!context.thicknessNote) return []
  const chosen = context.part.chosen.find((c) => c.kind === 'thickness')
  if (chosen?.kind !== 'thickness') return []
  const [a, b] = [context.data.get(chosen.from), context.data.get(chosen.to)]
  if (!a || !b) return []
  const reach = (d: typeof a) => ({ at: d.point, name: d.name })
  return [
    {
      id: 'thickness note',
      text: context.thicknessNote,
      draft: `${chosen.group ?? 'stock'}/thickness/${chosen.from} to ${chosen.to}`,
      span: chosen.span,
      states: [{ kind: 'distance', direction: chosen.direction, from: reach(a), to: reach(b) }],
    },
  ]
}
