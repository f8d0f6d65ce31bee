import type { Hand } from '../../crew/crew.ts'
import type { Word } from '../../crew/share.ts'

/** A thread beside the engine's own that draws views. */
export function startHand(say: (word: Word) => void, fell: () => void): Hand {
  const worker = new Worker(new URL('./view.worker.ts', import.meta.url), { type: 'module' })
  worker.onmessage = ({ data }: MessageEvent<Word>) => say(data)
  worker.onerror = fell
  return { give: (share) => worker.postMessage(share), end: () => worker.terminate() }
}
