import type { Span } from '../../brief/span.ts'
import type { Part } from '../../part/part.ts'
import type { ViewSet } from '../../views/view.ts'
import { plainText } from '../callout/plain-text.ts'
import type { Dimension, HoleTable, Proof, Statement } from '../dimension.ts'
import { judge } from './judge.ts'
import { levelWords } from './level-words.ts'
import { makingOf } from './making.ts'
import { type Model, modelOf } from './model.ts'
import { freeFormWords, missingWords, repeatedWords } from './words.ts'

/** A size said in a note instead of at a dimension: `10 THK`. */
export interface NoteStatement {
  readonly id: string
  readonly text: string
  readonly states: readonly Statement[]
  readonly span?: Span
}

export interface ProofOptions {
  readonly tables?: readonly HoleTable[]
  readonly notes?: readonly NoteStatement[]
  /** Names the view in which a missing size would stand. */
  readonly views?: ViewSet
  /** The solid's unknowns, where they are at hand already. */
  readonly model?: Model
}

/**
 * Holds the sizes against the solid itself. Every surface of the body is an element to be fixed: planes (3 freedoms),
 * cylinders (5), cones (6), spheres (4), tori (7), less 3 for the place and 2 or 3 for the turning of the part as a
 * whole. Sizes and implied conditions must each fix one freedom that nothing else fixes, and leave none.
 */
export function prove(part: Part, dimensions: readonly Dimension[], options: ProofOptions = {}): Proof {
  const model = options.model ?? modelOf(part.body, makingOf(part))
  const rows = (options.tables ?? []).flatMap((table) =>
    table.rows.map((row) => ({ id: `${table.view}/${row.tag}`, states: row.states ?? [], reference: false })),
  )
  const notes = (options.notes ?? []).map((note) => ({ ...note, reference: false }))
  const judgement = judge(model, [...dimensions, ...rows, ...notes])
  const byId = new Map(dimensions.map((d) => [d.id, d]))
  const text = (id: string): string => {
    const dimension = byId.get(id)
    return dimension ? plainText(dimension.callout) : (notes.find((n) => n.id === id)?.text ?? `table row ${id}`)
  }
  const missing: Proof['missing'][number][] = [
    ...(part.body.faces.length === 0 ? [{ text: 'there is no solid to prove sizes on' }] : []),
    ...judgement.loose.map((set) => missingWords(part, model, set, options.views)),
    ...freeFormWords(part, model),
  ]
  const repeated = new Map<string, Proof['repeated'][number]>()
  for (const { equation, with: earlier } of judgement.repeated) {
    const id = judgement.equations[equation]!.dimension!
    const others = [...new Set(earlier.flatMap((e) => judgement.equations[e]?.dimension ?? []))].filter((o) => o !== id)
    const span = byId.get(id)?.span
    repeated.set(id, {
      text: repeatedWords(text(id), others.map(text)),
      dimensions: [id, ...others],
      ...(span ? { span } : {}),
    })
  }
  for (const { dimension, text: why } of judgement.astray) {
    const span = byId.get(dimension)?.span
    repeated.set(`${dimension}/astray`, {
      text: `${text(dimension)}: ${why}`,
      dimensions: [dimension],
      astray: true,
      ...(span ? { span } : {}),
    })
  }
  const implied = [...judgement.conditions.values()].reduce((sum, n) => sum + n, 0)
  const { sizes } = judgement
  const levels = levelWords(part, dimensions)
  const complete = missing.length === 0 && repeated.size === 0
  return {
    complete,
    sizes,
    implied,
    freedoms: model.freedoms,
    conditions: [...judgement.conditions].map(([kind, count]) => ({ kind, count })),
    ...(levels.length > 0 ? { levels } : {}),
    missing,
    repeated: [...repeated.values()],
    sentence: complete
      ? `complete: ${count(sizes, 'size')} and ${count(implied, 'implied condition')} fix ${count(model.freedoms, 'freedom')}`
      : `not complete: ${count(sizes, 'size')} and ${count(implied, 'implied condition')} fix ${sizes + implied} of ${count(model.freedoms, 'freedom')}; ${missing.length} missing, ${repeated.size} too many`,
  }
}

const count = (n: number, word: string): string => `${n} ${word}${n === 1 ? '' : 's'}`
