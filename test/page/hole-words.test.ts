import { CompletionContext } from '@codemirror/autocomplete'
import { EditorState } from '@codemirror/state'
import { describe, expect, it } from 'vitest'
import { completeBrief } from '../../src/app/page/slip/complete.ts'
import { readBrief } from '../../src/brief/read.ts'

const HEAD = 'part      Trial\nunits     mm\npractice  ISO, first angle\nplate     80 × 60 × 10\n'

/** Labels offered at the end of the text, best first. */
function offered(statement: string): string[] {
  const doc = HEAD + statement
  const state = EditorState.create({ doc })
  const found = completeBrief(() => readBrief(HEAD))(new CompletionContext(state, doc.length, true))
  return [...(found?.options ?? [])].sort((a, b) => (b.boost ?? 0) - (a.boost ?? 0)).map((o) => o.label)
}

describe('words of a hole, best first', () => {
  it.each([
    ['holes     ', 'top'],
    ['holes     top: 4X ', 'dia'],
    ['holes     top: 4X dia 9 ', 'THRU'],
    ['holes     top: ⌀9 ', 'THRU'],
    ['holes     top: 4X dia 9 THRU, ', 'cbore'],
    ['hole      top: dia 9, 4 deep, ', 'cbore'],
    ['holes     top: 4X dia 9 THRU\n          2 ', 'across'],
  ])('after %j comes %s', (statement, word) => {
    expect(offered(statement).slice(0, word === 'top' ? 6 : 1)).toContain(word)
  })

  it('are all words that the language reads', () => {
    const text = `${HEAD}holes     top: 2X dia 9 THRU, cbore dia 15, 5 deep\n          2 across 40 apart, centred; 30 from front\n`
    expect(readBrief(text).marks.filter((m) => m.weight === 'must change')).toEqual([])
  })
})
