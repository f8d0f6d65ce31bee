import { useCallback } from 'react'
import { readBrief } from '../../../brief/read.ts'
import { looksLikeStep } from '../../../read/step-file.ts'
import { fileNameOf } from '../../file-name.ts'
import { putBrief } from '../shelf/desk-client.ts'
import type { Home, Kept } from '../shelf/shelf.ts'
import type { Ask } from './asking-slip.tsx'
import { download, nameRefusal } from './save-file.ts'
import type { Briefs } from './use-briefs.ts'

/** The browser's own file access, where it has it. */
interface FileWindow {
  showOpenFilePicker?: (options?: unknown) => Promise<FileSystemFileHandle[]>
  showSaveFilePicker?: (options?: unknown) => Promise<FileSystemFileHandle>
}

const TYPES = [{ description: 'Brief', accept: { 'text/plain': ['.brief'] } }]
const MODELS = { description: 'Solid model', accept: { 'model/step': ['.step', '.stp', '.p21'] } }
const BOTH = { description: 'Brief or solid model', accept: { ...TYPES[0]!.accept, ...MODELS.accept } }
const isModel = (name: string, text: string) => /\.(?:step|stp|p21)$/i.test(name) || looksLikeStep(text)
const stopped = (fault: unknown) => fault instanceof DOMException && fault.name === 'AbortError'

/** A file name for a brief that has none: its drawing number, else its title. */
export function nameFor(text: string): string {
  const { header } = readBrief(text)
  return `${fileNameOf(header.number?.text ?? header.part?.text ?? 'untitled')}.brief`
}

const briefName = (written: string): string => (/\.brief$/i.test(written) ? written : `${written}.brief`)

/** `bracket.brief` → `bracket-2.brief` → `bracket-3.brief`. */
function anotherName(name: string): string {
  const [, stem, count] = /^(.*?)(?:-(\d{1,3}))?\.brief$/i.exec(name) ?? [undefined, name, undefined]
  return `${stem}-${Number(count ?? 1) + 1}.brief`
}

/** Saving and opening: to the server's folder, to a file of the browser's choosing, or as a download. What turns out to be a model goes to `openModel`. */
export function useSaving(
  briefs: Briefs,
  tell: (text: string) => void,
  ask: Ask,
  openModel: (name: string, text: string) => void,
) {
  const { desk, settle, refreshDesk, begin } = briefs

  /** Saves under the name, or asks for another as long as what lies there is another file. */
  const toDesk = useCallback(
    async (brief: Kept, first: string, tag: string | undefined) => {
      for (let name = first, known = tag; ; known = undefined) {
        const put = await putBrief(name, brief.text, known)
        if (put.kind === 'saved') {
          settle(brief.id, { kind: 'desk', name, tag: put.tag }, brief.text)
          tell(`Saved as ${name}.`)
          refreshDesk()
          return
        }
        if (put.kind !== 'changed') return tell(`${name} was not saved: ${put.text.replace(/\.$/, '')}.`)
        const other = await ask({
          title: 'Save under another name',
          words: known
            ? `${name} was changed by someone else since it was opened, and is not written over.`
            : `There is a ${name} in the folder already, and it is not written over.`,
          line: { name: 'File name', text: anotherName(name) },
          refuse: nameRefusal,
          yes: 'Save',
        })
        if (!other) return tell(`${name} was not saved: someone else has changed the file there.`)
        name = briefName(other)
      }
    },
    [settle, tell, refreshDesk, ask],
  )

  const save = useCallback(
    async (brief: Kept) => {
      const { home } = brief
      try {
        if (home.kind === 'desk') return await toDesk(brief, home.name, home.tag)
        if (home.kind === 'file') {
          const stream = await home.handle.createWritable()
          await stream.write(brief.text)
          await stream.close()
          settle(brief.id, home, brief.text)
          return tell(`Saved as ${home.name}.`)
        }
        const name = nameFor(brief.text)
        if (desk) {
          const asked = await ask({
            title: 'Save the brief',
            words: `It is written into the folder ${desk.folder}.`,
            line: { name: 'File name', text: name },
            refuse: nameRefusal,
            yes: 'Save',
          })
          return asked ? await toDesk(brief, briefName(asked), undefined) : undefined
        }
        const { showSaveFilePicker } = window as FileWindow
        if (showSaveFilePicker) {
          const handle = await showSaveFilePicker.call(window, { suggestedName: name, types: TYPES })
          const stream = await handle.createWritable()
          await stream.write(brief.text)
          await stream.close()
          settle(brief.id, { kind: 'file', name: handle.name, handle }, brief.text)
          return tell(`Saved as ${handle.name}.`)
        }
        download(name, brief.text, 'text/plain')
        settle(brief.id, home, brief.text)
      } catch (fault) {
        if (!stopped(fault)) tell(`Not saved: ${fault instanceof Error ? fault.message : String(fault)}.`)
      }
      return undefined
    },
    [desk, settle, tell, toDesk, ask],
  )

  /** Opens a file: a brief, or a solid model; with `models` only these are offered. */
  const openFile = useCallback(
    async (models = false) => {
      const take = (name: string, text: string, home?: Home) => {
        if (isModel(name, text)) openModel(name, text)
        else begin(text, home, home && text)
      }
      try {
        const { showOpenFilePicker } = window as FileWindow
        if (showOpenFilePicker) {
          const [handle] = await showOpenFilePicker.call(window, { types: [models ? MODELS : BOTH] })
          if (!handle) return
          const text = await (await handle.getFile()).text()
          take(handle.name, text, { kind: 'file', name: handle.name, handle })
          return
        }
        const input = document.createElement('input')
        input.type = 'file'
        input.accept = models ? '.step,.stp,.p21' : '.brief,.step,.stp,.p21,text/plain'
        input.onchange = () => {
          const file = input.files?.[0]
          void file?.text().then((text) => take(file.name, text))
        }
        input.click()
      } catch (fault) {
        if (!stopped(fault)) tell(`The file was not opened: ${fault instanceof Error ? fault.message : String(fault)}.`)
      }
    },
    [begin, tell, openModel],
  )

  return { save, openFile }
}
