import { StateEffect, StateField } from '@codemirror/state'
import { Decoration, type DecorationSet, EditorView } from '@codemirror/view'
import type { Span } from '../../../brief/span.ts'

/** Words to light, and the statement they stand in. */
export interface LitWords {
  readonly words: readonly Span[]
  readonly statement?: Span
}

export const setLitWords = StateEffect.define<LitWords>()

const word = Decoration.mark({ class: 'lit-word' })
const statement = Decoration.mark({ class: 'lit-statement' })

/** Lit stretches of the brief; they go where the text moves, and out at the next light. */
export const litWords = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(lit, transaction) {
    let next = lit.map(transaction.changes)
    for (const effect of transaction.effects) {
      if (!effect.is(setLitWords)) continue
      const end = transaction.newDoc.length
      const ranges = [
        ...(effect.value.statement ? [{ span: effect.value.statement, as: statement }] : []),
        ...effect.value.words.map((span) => ({ span, as: word })),
      ]
        .map(({ span, as }) => ({ from: Math.min(span.from, end), to: Math.min(span.to, end), as }))
        .filter((r) => r.from < r.to)
      next = Decoration.set(
        ranges.map((r) => r.as.range(r.from, r.to)),
        true,
      )
    }
    return next
  },
  provide: (field) => EditorView.decorations.from(field),
})
