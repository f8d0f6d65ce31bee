import type { Practice } from '../../brief/brief.ts'
import type { Characteristic } from '../../brief/frame/frame.ts'
import type { Mark, Weight } from '../../brief/mark.ts'
import type { Span } from '../../brief/span.ts'

/** What a frame stands on. Absent facts are not checked. */
export interface FrameContext {
  readonly practice: Practice
  /** Datum features of the drawing. */
  readonly datums: readonly { readonly letter: string; readonly featureOfSize?: boolean }[]
  /** The toleranced feature: with a size (hole, shaft, slot, tab), and round or not. */
  readonly feature?: { readonly ofSize: boolean; readonly round?: boolean }
}

/** A mark on a frame, with a mend when the text to write is known. */
export function frameMark(
  rule: string,
  weight: Weight,
  span: Span,
  text: string,
  expected: string,
  source: string,
  write?: string,
): Mark {
  return {
    rule,
    weight,
    text,
    expected,
    source,
    span,
    ...(write === undefined
      ? {}
      : { mends: [{ label: write === '' ? 'take it away' : `write ${write}`, span, text: write }] }),
  }
}

/** A characteristic at the head of a sentence. */
export function capital(characteristic: Characteristic): string {
  return characteristic[0]!.toUpperCase() + characteristic.slice(1)
}
