import { createStore, del, entries, get, set } from 'idb-keyval'

/** A solid model as it lies on the shelf. */
export interface KeptModel {
  readonly id: string
  readonly name: string
  /** Characters of its file. */
  readonly size: number
  /** Milliseconds since 1970. */
  readonly touched: number
}

/** Characters of one model, and of all together, that this browser keeps: 64 and 256 million. */
export const MOST_OF_ONE = 64_000_000
export const MOST_OF_ALL = 256_000_000

const about = createStore('sheetwright models', 'models')
const texts = createStore('sheetwright model texts', 'texts')
/** Which model lies on the bench. */
const LYING = 'sheetwright model'

/** Models that are kept, the last touched first; none where the browser keeps nothing. */
export async function listModels(): Promise<KeptModel[]> {
  try {
    const found = (await entries<string, KeptModel>(about)).map(([, model]) => model)
    return found.sort((a, b) => b.touched - a.touched)
  } catch {
    return []
  }
}

/** Which models give way to one of the size, the longest untouched first. */
export function giveWay(kept: readonly KeptModel[], size: number): readonly KeptModel[] {
  const gone: KeptModel[] = []
  let sum = kept.reduce((all, model) => all + model.size, size)
  for (const model of [...kept].sort((a, b) => a.touched - b.touched)) {
    if (sum <= MOST_OF_ALL) break
    gone.push(model)
    sum -= model.size
  }
  return gone
}

/** Keeps a model; undefined where it is too large or the browser keeps nothing. One of the same name gives way to it. */
export async function keepModel(name: string, text: string): Promise<KeptModel | undefined> {
  if (text.length > MOST_OF_ONE) return undefined
  try {
    const kept = await listModels()
    const same = kept.filter((model) => model.name === name)
    for (const { id } of [
      ...same,
      ...giveWay(
        kept.filter((m) => !same.includes(m)),
        text.length,
      ),
    ])
      await throwModel(id)
    const model = { id: crypto.randomUUID(), name, size: text.length, touched: Date.now() }
    await set(model.id, text, texts)
    await set(model.id, model, about)
    return model
  } catch {
    return undefined
  }
}

/** The text of a kept model; undefined where it is gone. */
export async function takeModel(id: string): Promise<{ readonly name: string; readonly text: string } | undefined> {
  try {
    const [model, text] = await Promise.all([get<KeptModel>(id, about), get<string>(id, texts)])
    if (!model || text === undefined) return undefined
    await set(id, { ...model, touched: Date.now() }, about)
    return { name: model.name, text }
  } catch {
    return undefined
  }
}

export async function throwModel(id: string): Promise<void> {
  await del(id, about)
  await del(id, texts)
}

/** Notes which model lies on the bench; without one none does. */
export function layDown(id: string | undefined): void {
  try {
    if (id) localStorage.setItem(LYING, id)
    else localStorage.removeItem(LYING)
  } catch {
    // Forbidden: after reloading the bench has no model.
  }
}

export function lying(): string | undefined {
  try {
    return localStorage.getItem(LYING) ?? undefined
  } catch {
    return undefined
  }
}
