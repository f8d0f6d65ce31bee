/** Stands for the reason in a statement that would accept a mark. */
export const REASON = '…'
