import { createStore, del, entries, get, set } from 'idb-keyval'
import type { Drawn } from '../engine/messages.ts'
import { withPlainLineEnds } from './line-ends.ts'

/** Where a brief came from, and with it where saving puts it. */
export type Home =
  | { readonly kind: 'shelf' }
  | { readonly kind: 'desk'; readonly name: string; readonly tag?: string }
  | { readonly kind: 'file'; readonly name: string; readonly handle: FileSystemFileHandle }

/** A brief as it lies on the shelf: kept in this browser at every keystroke, whatever becomes of the page. */
export interface Kept {
  readonly id: string
  readonly text: string
  readonly home: Home
  /** The text as it was last saved to its home; absent: never. */
  readonly saved?: string
  /** The text that its signatures stand for; absent: nothing was changed since it was laid out. */
  readonly signed?: string
  /** Milliseconds since 1970. */
  readonly touched: number
  /** Lies open on the bench. */
  readonly open: boolean
}

const store = createStore('sheetwright', 'briefs')
/** Last drawing of each brief, to lay out before the engine is ready. */
const drawings = createStore('sheetwright drawings', 'drawings')
/** Beside the database, which answers late, the text being written is put here at once. */
const SCRATCH = 'sheetwright writing'

const valid = (value: unknown): value is Kept =>
  typeof value === 'object' && value !== null && 'id' in value && 'text' in value && typeof value.text === 'string'

/** All briefs, the last touched first. What was being written when the page was lost is among them. */
export async function takeStock(): Promise<Kept[]> {
  let found: Kept[] = []
  try {
    found = (await entries(store)).map(([, value]) => value as unknown).filter(valid)
  } catch {
    // No database in this browser's mode: the scratch alone must do.
  }
  const last = readScratch()
  if (last) {
    const stored = found.find((k) => k.id === last.id)
    if (stored && stored.text !== last.text && last.touched >= stored.touched) {
      found = found.map((k) => (k.id === last.id ? { ...k, text: last.text, touched: last.touched } : k))
    } else if (!stored) found.push({ ...last, home: { kind: 'shelf' }, open: true })
  }
  return found
    .map((k) => ({
      ...k,
      text: withPlainLineEnds(k.text),
      ...(k.saved === undefined ? {} : { saved: withPlainLineEnds(k.saved) }),
      ...(k.signed === undefined ? {} : { signed: withPlainLineEnds(k.signed) }),
    }))
    .sort((a, b) => b.touched - a.touched)
}

/** Keeps the brief; the text itself is safe when this returns, the rest a moment later. */
export function keep(brief: Kept): Promise<void> {
  try {
    localStorage.setItem(SCRATCH, JSON.stringify({ id: brief.id, text: brief.text, touched: brief.touched }))
  } catch {
    // Full or forbidden: the database is the second chance.
  }
  return set(brief.id, brief, store)
}

export function letGo(id: string): Promise<void> {
  if (readScratch()?.id === id) localStorage.removeItem(SCRATCH)
  void del(id, drawings).catch(() => {})
  return del(id, store)
}

/** Drawings of another build of the program are not taken. */
const EDITION = 2

export function keepDrawing(id: string, drawn: Drawn): Promise<void> {
  return set(id, { edition: EDITION, drawn }, drawings).catch(() => {})
}

/** The last drawing of the brief, if it is of this very text. */
export async function takeDrawing(id: string, text: string): Promise<Drawn | undefined> {
  try {
    const found = await get<{ edition: number; drawn: Drawn }>(id, drawings)
    return found?.edition === EDITION && found.drawn.brief.text === text ? found.drawn : undefined
  } catch {
    return undefined
  }
}

function readScratch(): { id: string; text: string; touched: number } | undefined {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(SCRATCH) ?? 'null')
    if (typeof found !== 'object' || found === null) return undefined
    const { id, text, touched } = found as Record<string, unknown>
    return typeof id === 'string' && typeof text === 'string' && typeof touched === 'number'
      ? { id, text, touched }
      : undefined
  } catch {
    return undefined
  }
}
