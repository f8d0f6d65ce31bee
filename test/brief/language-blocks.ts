import { readFileSync } from 'node:fs'

/** One runnable example of the language reference, complete with the stock that it is read on. */
export interface LanguageBlock {
  /** Section it stands in, and its line in the file. */
  readonly title: string
  readonly text: string
}

/** Every fenced `brief` block of docs/language.md; a fragment is put after the frame that it names. */
export function languageBlocks(): LanguageBlock[] {
  const lines = readFileSync('docs/language.md', 'utf8').split('\n')
  const frames = new Map<string, string>()
  const out: LanguageBlock[] = []
  let section = ''
  for (let i = 0; i < lines.length; i++) {
    const line = lines[i]!
    const heading = /^#+ (.*)/.exec(line)
    if (heading) section = heading[1]!
    const fence = /^```brief(?: (frame|on)=(\w+))?$/.exec(line)
    if (!fence) continue
    const end = lines.indexOf('```', i)
    const text = `${lines.slice(i + 1, end).join('\n')}\n`
    const frame = fence[1] === 'on' ? frames.get(fence[2]!) : ''
    if (frame === undefined) throw new Error(`line ${i + 1}: there is no frame ${fence[2]}`)
    if (fence[1] === 'frame') frames.set(fence[2]!, text)
    out.push({ title: `${section}, line ${i + 1}`, text: frame + text })
    i = end
  }
  return out
}
