import { bad, type Outcome } from '../../brief/outcome.ts'
import { readMetric } from './read-metric.ts'
import { readUnified } from './read-unified.ts'
import type { Thread } from './thread.ts'

/**
 * Reads a thread designation: `1/4-20 UNC-2B`, `#10-32 UNF-3A LH`, `M6`, `M8×1 - 6H`, `M10x1.5-5g6g`.
 * Spans of problems are places in `text`.
 */
export function readThread(text: string): Outcome<Thread> {
  if (/^\s*M\s*\d/i.test(text)) return readMetric(text)
  if (/^\s*(#|\d|\.)/.test(text)) return readUnified(text)
  return bad({
    text: `"${text.trim()}" is not a thread designation that is known here.`,
    expected: 'a unified thread such as 1/4-20 UNC-2B or a metric thread such as M6 or M8×1 - 6H',
  })
}
