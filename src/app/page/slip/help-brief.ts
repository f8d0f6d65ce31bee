import type { Span } from '../../../brief/span.ts'
import type { Keyword } from '../../../brief/vocabulary.ts'
import { type StatementHelp, statementHelp } from './help.ts'
import { GROUNDS } from './help-grounds.ts'

/** The example of an explanation as a whole brief, and where the statement itself stands in it. */
export function helpBrief(keyword: Keyword): { readonly text: string; readonly span: Span } {
  const { example, on }: StatementHelp = statementHelp[keyword]
  const own = /^[a-z]+(?: bar)?/.exec(example)![0]
  const units = /\bSTK\b|[^\d]\.\d/.test(example) ? 'inch' : 'mm'
  const ground: readonly string[] = on
    ? GROUNDS[on]
    : units === 'inch'
      ? ['units     inch', 'practice  ASME', 'general   .XX ±.01   .XXX ±.005']
      : ['units     mm', 'practice  ISO, first angle', 'general   ISO 2768-m']
  const lines = ground.filter((line) => !line.startsWith(`${own} `) || !/^(?:units|practice|general)/.test(own))
  const before = `${lines.join('\n')}\n`
  return { text: `${before}${example}\n`, span: { from: before.length, to: before.length + example.length } }
}
