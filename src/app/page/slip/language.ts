import { HighlightStyle, LanguageSupport, LRLanguage, syntaxHighlighting } from '@codemirror/language'
import { styleTags, tags } from '@lezer/highlight'
import { parser } from '../../../brief/grammar.js'

const language = LRLanguage.define({
  name: 'brief',
  parser: parser.configure({
    props: [
      styleTags({
        'Keyword TextKeyword': tags.keyword,
        Text: tags.string,
        'Number Count Radius': tags.number,
        'Diameter Depth Counterbore Countersink PlusMinus Degree Times': tags.operator,
        Unknown: tags.invalid,
        Comment: tags.comment,
      }),
    ],
  }),
  languageData: { commentTokens: { line: '#' } },
})

/** Ink of the slip: words by weight and slant, not by colour, so that red and blue stay the pencils' own. */
const ink = HighlightStyle.define([
  { tag: tags.keyword, fontWeight: '700' },
  { tag: tags.comment, fontStyle: 'italic', color: 'var(--faded)' },
  { tag: tags.string, color: 'var(--ink-soft)' },
  { tag: tags.invalid, fontWeight: '700' },
])

export const briefLanguage = (): LanguageSupport => new LanguageSupport(language, [syntaxHighlighting(ink)])
