import { useCallback } from 'react'
import { readBrief } from '../../../brief/read.ts'
import { putBrief } from '../shelf/desk-client.ts'
import type { Kept } from '../shelf/shelf.ts'
import { download, fileNameOf } from './save-file.ts'
import type { Briefs } from './use-briefs.ts'

/** The browser's own file access, where it has it. */
interface FileWindow {
  showOpenFilePicker?: (options?: unknown) => Promise<FileSystemFileHandle[]>
  showSaveFilePicker?: (options?: unknown) => Promise<FileSystemFileHandle>
}

const TYPES = [{ description: 'Brief', accept: { 'text/plain': ['.brief'] } }]
const stopped = (fault: unknown) => fault instanceof DOMException && fault.name === 'AbortError'

/** A file name for a brief that has none: its drawing number, else its title. */
export function nameFor(text: string): string {
  const { header } = readBrief(text)
  return `${fileNameOf(header.number?.text ?? header.part?.text ?? 'untitled')}.brief`
}

/** Saving and opening: to the server's folder, to a file of the browser's choosing, or as a download. */
export function useSaving(briefs: Briefs, tell: (text: string) => void) {
  const { desk, settle, refreshDesk, begin } = briefs

  const toDesk = useCallback(
    async (brief: Kept, name: string, tag: string | undefined) => {
      const put = await putBrief(name, brief.text, tag)
      if (put.kind === 'saved') {
        settle(brief.id, { kind: 'desk', name, tag: put.tag }, brief.text)
        tell(`Saved as ${name}.`)
        refreshDesk()
      } else if (put.kind === 'changed') {
        tell(`${name} was not saved: the file there is another by now. Save under another name, or open it anew.`)
      } else tell(`${name} was not saved: ${put.text}.`)
    },
    [settle, tell, refreshDesk],
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
          const asked = prompt(`Save in the folder ${desk.folder} as`, name)
          if (!asked) return undefined
          return await toDesk(brief, /\.brief$/i.test(asked) ? asked : `${asked}.brief`, undefined)
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
    [desk, settle, tell, toDesk],
  )

  const openFile = useCallback(async () => {
    try {
      const { showOpenFilePicker } = window as FileWindow
      if (showOpenFilePicker) {
        const [handle] = await showOpenFilePicker.call(window, { types: TYPES })
        if (!handle) return
        const text = await (await handle.getFile()).text()
        begin(text, { kind: 'file', name: handle.name, handle }, text)
        return
      }
      const input = document.createElement('input')
      input.type = 'file'
      input.accept = '.brief,text/plain'
      input.onchange = () => void input.files?.[0]?.text().then((text) => begin(text))
      input.click()
    } catch (fault) {
      if (!stopped(fault)) tell(`The file was not opened: ${fault instanceof Error ? fault.message : String(fault)}.`)
    }
  }, [begin, tell])

  return { save, openFile }
}
