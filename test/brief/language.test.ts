import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { formatMark } from '../../src/brief/format-mark.ts'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'
import { keywords } from '../../src/brief/vocabulary.ts'
import { withoutPlaces } from '../../src/brief/without-places.ts'
import { languageBlocks } from './language-blocks.ts'

const blocks = languageBlocks()

describe('the language reference', () => {
  it.each(blocks.map((b) => [b.title, b.text]))('%s reads without a mark, and prints as the same', (_title, text) => {
    const brief = readBrief(text)
    expect(brief.marks.map((m) => formatMark(text, m))).toEqual([])
    expect(withoutPlaces(readBrief(printBrief(brief)))).toEqual(withoutPlaces(brief))
  })

  it('has a section and an example for every statement', () => {
    const reference = readFileSync('docs/language.md', 'utf8')
    const headings = [...reference.matchAll(/^## (.*)$/gm)].flatMap((m) => m[1]!.split(', '))
    for (const keyword of keywords) expect(headings).toContain(keyword)
    const used = new Set(blocks.flatMap((b) => [...b.text.matchAll(/^(flat bar|round bar|\w+)/gm)].map((m) => m[1]!)))
    for (const keyword of keywords) {
      // Two keywords are other ways of writing what `number` and `views` say.
      if (['revision', 'section', 'pictorial'].includes(keyword)) continue
      expect(used.has(keyword) || used.has(`${keyword}s`) || used.has(`${keyword}es`), keyword).toBe(true)
    }
  })
})
