import { createHash } from 'node:crypto'
import { readdir, readFile, realpath, rename, stat, unlink, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { isDeviceName } from '../file-name.ts'

/** A brief is a page of text; anything larger is refused. */
export const MOST_BYTES = 4 * 1024 * 1024

/** One brief of the desk's folder. */
export interface Listed {
  readonly name: string
  readonly bytes: number
  /** ISO 8601, as the file system has it. */
  readonly modified: string
}

/** A brief with the tag that its next saving must name. */
export interface Stored {
  readonly text: string
  readonly tag: string
}

export type Saving =
  | { readonly kind: 'saved'; readonly tag: string }
  /** Someone else wrote the file since it was read; `tag` is what stands there now, absent where nothing does. */
  | { readonly kind: 'changed'; readonly tag?: string }

/** True for the plain name of a brief: no folder, no hidden file, nothing a file system would read otherwise. */
export function isBriefName(name: string): boolean {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be in a name
  const plain = /^[^./\\:*?"<>|\u0000-\u001f][^/\\:*?"<>|\u0000-\u001f]*\.brief$/i.test(name)
  return name.length <= 200 && plain && !isDeviceName(name)
}

const tagOf = (bytes: Uint8Array): string => `"${createHash('sha256').update(bytes).digest('hex').slice(0, 32)}"`

/** Briefs of the folder by name; files that are no briefs are not seen. */
export async function listBriefs(folder: string): Promise<Listed[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => [])
  const found: Listed[] = []
  for (const entry of entries) {
    if (!entry.isFile() || !isBriefName(entry.name)) continue
    const about = await stat(join(folder, entry.name)).catch(() => undefined)
    if (about && about.size <= MOST_BYTES) {
      found.push({ name: entry.name, bytes: about.size, modified: about.mtime.toISOString() })
    }
  }
  return found.sort((a, b) => a.name.localeCompare(b.name))
}

/** The brief, or undefined where there is none that may be read. A link that leads out of the folder is not followed. */
export async function readStored(folder: string, name: string): Promise<Stored | undefined> {
  const path = await pathOf(folder, name)
  if (!path) return undefined
  try {
    if ((await stat(path)).size > MOST_BYTES) return undefined
    const bytes = await readFile(path)
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), tag: tagOf(bytes) }
  } catch {
    return undefined
  }
}

/**
 * Writes beside, then renames. `expected` is the tag of what the writer last saw, undefined for a new file: where the
 * file is something else by now, nothing is written. Throws when the file system refuses.
 */
export async function saveStored(
  folder: string,
  name: string,
  text: Uint8Array,
  expected: string | undefined,
): Promise<Saving> {
  const path = await pathOf(folder, name)
  const now = path ? tagOf(await readFile(path)) : undefined
  if (now !== expected) return now === undefined ? { kind: 'changed' } : { kind: 'changed', tag: now }
  const target = path ?? join(folder, name)
  const beside = join(dirname(target), `.${process.pid}-${name}.part`)
  try {
    await writeFile(beside, text)
    await rename(beside, target)
  } catch (fault) {
    await unlink(beside).catch(() => {})
    throw fault
  }
  return { kind: 'saved', tag: tagOf(text) }
}

/** Real path of an existing brief inside the folder. */
async function pathOf(folder: string, name: string): Promise<string | undefined> {
  if (!isBriefName(name)) return undefined
  try {
    const [home, path] = await Promise.all([realpath(folder), realpath(join(folder, name))])
    return dirname(path) === home ? path : undefined
  } catch {
    return undefined
  }
}
