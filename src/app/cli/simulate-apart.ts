import { Worker } from 'node:worker_threads'
import type { Outcome, Task, Word } from './stack-worker.ts'

/** Simulates in a thread of its own, so that an interrupt ends the program at once. */
export function simulateApart(task: Task, progress: (done: number) => void): Promise<Outcome> {
  // Beside this file, under its own name, whether built or not.
  const file = new URL(import.meta.url.endsWith('.ts') ? './stack-worker.ts' : './stack-worker.js', import.meta.url)
  return new Promise((resolve, reject) => {
    const worker = new Worker(file, { workerData: task })
    worker.on('message', (word: Word) => {
      if ('done' in word) progress(word.done)
      else resolve(word.outcome)
    })
    worker.on('error', reject)
    worker.on('exit', () => reject(new Error('the simulation ended without a result')))
  })
}
