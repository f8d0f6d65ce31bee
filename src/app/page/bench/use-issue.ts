import { useState } from 'react'
import type { Sheet } from '../../../sheet/sheet.ts'
import type { Engine } from '../engine/engine.ts'
import type { ExportKind } from './routing-slip.tsx'
import { download, pngOf } from './save-file.ts'
import { nameFor } from './use-saving.ts'

const TYPES: Readonly<Record<ExportKind, string>> = {
  pdf: 'application/pdf',
  svg: 'image/svg+xml',
  step: 'model/step',
  check: 'application/pdf',
  png: 'image/png',
}

/** Writes the brief's files into the browser's downloads. */
export function useIssue(
  engine: Engine,
  text: string | undefined,
  sheet: Sheet | undefined,
  /** The notice that a file is written. */
  written: (name: string) => string,
  tell: (text: string) => void,
) {
  const [busy, setBusy] = useState<ExportKind>()
  const onIssue = async (kind: ExportKind) => {
    if (text === undefined) return
    setBusy(kind)
    try {
      const bytes = await engine.write(text, kind === 'png' ? 'svg' : kind)
      const name = nameFor(text).replace(/\.brief$/, kind === 'check' ? '-check.pdf' : `.${kind}`)
      if (kind === 'png') {
        if (!sheet) throw new Error('there is no sheet')
        download(name, await pngOf(bytes, sheet.width, sheet.height), TYPES.png)
      } else download(name, bytes, TYPES[kind])
      tell(written(name))
    } catch (fault) {
      tell(`Nothing was written: ${fault instanceof Error ? fault.message : String(fault)}.`)
    } finally {
      setBusy(undefined)
    }
  }
  return { busy, onIssue }
}
