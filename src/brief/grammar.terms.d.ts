/** Node types that the tokens of `brief.grammar` give; generated beside `grammar.js` by `npm run grammar`. */
export declare const Keyword: number
export declare const TextKeyword: number
export declare const Continue: number
export declare const Text: number
export declare const Comment: number
