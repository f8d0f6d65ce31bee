import type { Kept } from './shelf.ts'

/** The page's other tabs in this browser: each tells the others what it kept. */
export interface OtherTabs {
  readonly tell: (brief: Kept) => void
  readonly close: () => void
}

/** `hear` is called with every brief that another tab kept, in the order in which it was. */
export function otherTabs(hear: (brief: Kept) => void): OtherTabs {
  const channel = new BroadcastChannel('sheetwright briefs')
  channel.onmessage = ({ data }: MessageEvent<Kept>) => hear(data)
  return { tell: (brief) => channel.postMessage(brief), close: () => channel.close() }
}
