import { readFileSync } from 'node:fs'
import { buildParserFile } from '@lezer/generator'
import { describe, expect, it } from 'vitest'
import { parser } from '../../src/brief/grammar.js'

describe('the grammar', () => {
  it('is the one that the parser was generated from', () => {
    const source = readFileSync('src/brief/brief.grammar', 'utf8')
    const built = buildParserFile(source, { fileName: 'src/brief/brief.grammar', moduleStyle: 'es' })
    expect(readFileSync('src/brief/grammar.js', 'utf8').trim()).toBe(built.parser.trim())
    expect(readFileSync('src/brief/grammar.terms.js', 'utf8').trim()).toBe(built.terms.trim())
  })

  it('parts a brief into statements, clauses and their pieces', () => {
    const text = 'part  A # b\nhole top: 4X ⌀.281\n  centred\n'
    const names: string[] = []
    parser.parse(text).iterate({ enter: (node) => void names.push(node.name) })
    expect(names.join(' ')).toBe(
      'Brief TextStatement TextKeyword Text Comment Statement Keyword Clause Word Colon Count Diameter Number Continue Clause Word',
    )
  })
})
