import type { Callout } from '../dimension.ts'

/** A callout as one line of text, for reports and messages: stacks as `upper/lower`, lines parted by a comma. */
export function plainText(callout: Callout): string {
  return callout.lines
    .map((line) => line.map((part) => (typeof part === 'string' ? part : `${part.stack[0]}/${part.stack[1]}`)).join(''))
    .join(', ')
}
