import { availableParallelism } from 'node:os'
import { Worker } from 'node:worker_threads'
import { Crew, type Hand } from '../crew/crew.ts'
import type { Word } from '../crew/share.ts'

/** A thread for each processor that is not the caller's own. */
export const viewCrew = (size = availableParallelism() - 1): Crew => new Crew(startHand, size)

function startHand(say: (word: Word) => void, fell: () => void): Hand {
  // beside this file, under its own name, whether built or not
  const file = new URL(import.meta.url.endsWith('.ts') ? './view-worker.ts' : './view-worker.js', import.meta.url)
  const worker = new Worker(file)
  // who waits for its word keeps the program running
  worker.unref()
  worker.on('message', say)
  worker.on('error', fell)
  worker.on('exit', fell)
  return { give: (share) => worker.postMessage(share), end: () => void worker.terminate() }
}
