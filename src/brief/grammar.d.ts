import type { LRParser } from '@lezer/lr'

/** Generated from `brief.grammar` by `npm run grammar`. */
export declare const parser: LRParser
