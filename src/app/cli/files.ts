import { mkdir, readFile, rename, stat, unlink, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { looksLikeStep } from '../../read/step-file.ts'

/** A brief is a page of text; anything larger is a mistake and is not read whole. */
const MOST_BYTES = 4 * 1024 * 1024

/** A solid model of an assembly may be long; beyond this the kernel's memory would not hold it. */
const MOST_STEP_BYTES = 256 * 1024 * 1024

/** A file that could not be read or written, in words for the person at the keyboard. */
export class FileFault extends Error {}

/** What a command was given to draw. */
export interface Source {
  readonly kind: 'brief' | 'step'
  readonly text: string
}

/** True for a name that a solid model would have. */
export const isStepName = (path: string): boolean => /\.(?:step|stp|p21)$/i.test(path)

/** A brief or a solid model, told apart by the file's name or, from standard input, by how it begins. */
export async function readSource(path: string): Promise<Source> {
  if (isStepName(path)) return { kind: 'step', text: await readStep(path) }
  const text = path === '-' ? decoded(path, await readStandardInput()) : await readText(path)
  return { kind: looksLikeStep(text) ? 'step' : 'brief', text }
}

/** ISO 10303-21 is written in plain letters; others turn up in names, as UTF-8 or in an older code. */
async function readStep(path: string): Promise<string> {
  const bytes = await readLimited(path, MOST_STEP_BYTES, 'a solid model')
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

/** Text of a brief, from a file or (`-`) from standard input. */
export async function readText(path: string): Promise<string> {
  return decoded(path, path === '-' ? await readStandardInput() : await readLimited(path, MOST_BYTES, 'a brief'))
}

function decoded(path: string, bytes: Uint8Array): string {
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

async function readLimited(path: string, most: number, what: string): Promise<Uint8Array> {
  try {
    const about = await stat(path)
    if (about.isDirectory()) throw new FileFault(`${path} is a folder. Name the brief inside it.`)
    if (about.size > most)
      throw new FileFault(`${path} is ${about.size} bytes: too large to be ${what} (at most ${most}).`)
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
    pieces.push(piece)
    const isStep = looksLikeStep(pieces[0]!.subarray(0, 200).toString('latin1'))
    const most = isStep ? MOST_STEP_BYTES : MOST_BYTES
    if (size > most)
      throw new FileFault(
        `standard input is too large to be ${isStep ? 'a solid model' : 'a brief'} (at most ${most} bytes).`,
      )
  }
  return Buffer.concat(pieces)
}

/**
 * Writes the files of one drawing; an interrupt from the keyboard meanwhile ends the program when all of them stand. At
 * any other time an interrupt ends it at once: nothing is open then that could be left half-written.
 */
export async function writeTogether(files: readonly { path: string; content: string | Uint8Array }[]): Promise<void> {
  let interrupted = false
  const onInterrupt = () => {
    interrupted = true
  }
  process.on('SIGINT', onInterrupt)
  try {
    for (const { path, content } of files) await writeWhole(path, content)
  } finally {
    process.off('SIGINT', onInterrupt)
    // whoever started the program sees the same end as at any other time
    if (interrupted) process.kill(process.pid, 'SIGINT')
  }
}

/** Writes beside, then renames: a reader sees the old file or the new one, never half of one. */
async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
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
