import { mkdir, readFile, rename, stat, unlink, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'

/** A brief is a page of text; anything larger is a mistake and is not read whole. */
const MOST_BYTES = 4 * 1024 * 1024

/** A file that could not be read or written, in words for the person at the keyboard. */
export class FileFault extends Error {}

/** Text of a brief, from a file or (`-`) from standard input. */
export async function readText(path: string): Promise<string> {
  const bytes = path === '-' ? await readStandardInput() : await readLimited(path)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    const utf16 = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)
    throw new FileFault(
      `${nameOf(path)} is not UTF-8 text${utf16 ? ' (it looks like UTF-16)' : ''}. Save the brief as UTF-8 and try again.`,
    )
  }
}

export const nameOf = (path: string): string => (path === '-' ? 'standard input' : path)

async function readLimited(path: string): Promise<Uint8Array> {
  try {
    const about = await stat(path)
    if (about.isDirectory()) throw new FileFault(`${path} is a folder. Name the brief inside it.`)
    if (about.size > MOST_BYTES)
      throw new FileFault(`${path} is ${about.size} bytes: too large to be a brief (at most ${MOST_BYTES}).`)
    return await readFile(path)
  } catch (fault) {
    if (fault instanceof FileFault) throw fault
    throw new FileFault(`${path} cannot be read: ${reason(fault)}.`)
  }
}

async function readStandardInput(): Promise<Uint8Array> {
  const pieces: Buffer[] = []
  let size = 0
  for await (const piece of process.stdin) {
    size += piece.length
    if (size > MOST_BYTES)
      throw new FileFault(`standard input is too large to be a brief (at most ${MOST_BYTES} bytes).`)
    pieces.push(piece)
  }
  return Buffer.concat(pieces)
}

/** Writes beside, then renames: a reader sees the old file or the new one, never half of one. */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const beside = join(dirname(path), `.${process.pid}-${path.split(/[\\/]/).pop()}.part`)
  try {
    await mkdir(dirname(path), { recursive: true })
    await writeFile(beside, content)
    await rename(beside, path)
  } catch (fault) {
    await unlink(beside).catch(() => {})
    throw new FileFault(`${path} cannot be written: ${reason(fault)}.`)
  }
}

function reason(fault: unknown): string {
  const code = (fault as NodeJS.ErrnoException).code
  const known: Record<string, string> = {
    ENOENT: 'no such file',
    EACCES: 'no permission',
    EISDIR: 'it is a folder',
    ENOTDIR: 'a part of the path is not a folder',
    ENOSPC: 'the disk is full',
    EROFS: 'the disk is read-only',
    EEXIST: 'something of that name is in the way',
  }
  return (code && known[code]) || (fault instanceof Error ? fault.message : String(fault))
}
