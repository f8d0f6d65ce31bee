import type { Callout } from '../dimension.ts'
import { withoutSignMarks } from './sign-ways.ts'

/** A callout as one line of text, for reports and messages: stacks as `upper/lower`, lines parted by a comma. */
export function plainText(callout: Callout): string {
  const lines = callout.lines.map((line) =>
    line.map((part) => (typeof part === 'string' ? part : `${part.stack[0]}/${part.stack[1]}`)).join(''),
  )
  return withoutSignMarks(lines.join(', '))
}
