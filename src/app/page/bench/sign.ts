import type { Mend } from '../../../brief/mark.ts'
import type { PageMark } from '../engine/messages.ts'
import type { Ask } from './asking-slip.tsx'
import { signWords } from './standing.ts'

interface Signing {
  readonly marks: readonly PageMark[]
  readonly onMend: (mend: Mend) => boolean
  readonly onSign: (name: string, date: string) => void
}

/** Asks the checker for name and date, takes lapsed signatures off, and signs. */
export async function signAsChecker(ask: Ask, { marks, onMend, onSign }: Signing): Promise<void> {
  const said = await ask({
    title: 'Sign as its checker',
    words: signWords(marks),
    line: { name: 'Name', text: '' },
    below: { name: 'Date', text: new Date().toLocaleDateString('sv') },
    yes: 'Sign',
  })
  const [name, date] = said?.split('\n') ?? []
  const lapsed = marks.find((m) => m.rule === 'signature-lapsed')?.mends?.[0]
  if (name && date && (!lapsed || onMend(lapsed))) onSign(name, date)
}
