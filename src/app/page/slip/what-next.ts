import type { Extension } from '@codemirror/state'
import {
  Decoration,
  type DecorationSet,
  type EditorView,
  ViewPlugin,
  type ViewUpdate,
  WidgetType,
} from '@codemirror/view'
import { featureKeywords, stockKeywords } from '../../../brief/vocabulary.ts'

const begins = (words: readonly string[]) => new RegExp(`^(?:${words.join('|')})(?:s|es)?\\b`, 'im')
const saysStock = begins(stockKeywords)
const saysFeature = begins(featureKeywords)

/** What usually comes next on an empty line. */
export function nextWords(text: string): string {
  if (!saysStock.test(text)) return 'plate, block, angle, turned …'
  return saysFeature.test(text) ? 'hole, slot, note, datum …' : 'hole, slot, round, chamfer …'
}

class Hint extends WidgetType {
  readonly words: string

  constructor(words: string) {
    super()
    this.words = words
  }

  override eq(other: Hint): boolean {
    return other.words === this.words
  }

  override toDOM(): HTMLElement {
    const dom = document.createElement('span')
    dom.className = 'what-next'
    // Shown by the style sheet: it is no text of the brief's.
    dom.dataset.words = `${this.words}  Ctrl-Space shows all`
    return dom
  }
}

/** On the empty line that is written on: words that may begin it, to be written over. */
export function whatNext(): Extension {
  const hintOf = (view: EditorView): DecorationSet => {
    const { main } = view.state.selection
    const line = view.state.doc.lineAt(main.head)
    if (!view.hasFocus || !main.empty || line.length > 0) return Decoration.none
    return Decoration.set(
      Decoration.widget({ widget: new Hint(nextWords(view.state.doc.toString())), side: 1 }).range(line.from),
    )
  }
  return ViewPlugin.fromClass(
    class {
      hint: DecorationSet

      constructor(view: EditorView) {
        this.hint = hintOf(view)
      }

      update(update: ViewUpdate): void {
        if (update.docChanged || update.selectionSet || update.focusChanged) this.hint = hintOf(update.view)
      }
    },
    { decorations: (plugin) => plugin.hint },
  )
}
