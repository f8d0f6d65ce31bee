import { exactView } from '../../views/exact/exact-view.ts'
import { unpackBody } from '../../views/exact/packed-body.ts'
import { Stopped } from '../../views/exact/watch.ts'
import type { ExactView, Frame } from '../../views/view.ts'

/** The views of one body, to be drawn by whichever thread comes first. Numbers and board lie in shared memory. */
export interface Share {
  readonly id: number
  readonly body: Float64Array<SharedArrayBuffer>
  readonly frames: readonly Frame[]
  readonly board: Int32Array<SharedArrayBuffer>
}

/** What a thread comes back with, view by view. */
export type Word =
  | { readonly id: number; readonly at: number; readonly view: ExactView }
  | { readonly id: number; readonly at: number; readonly stopped: true }
  | { readonly id: number; readonly at: number; readonly fault: string }

/** The board's places: the next view to be begun, whether all are to stop, and of each view the parts done in 1/1000. */
const NEXT = 0
const STOP = 1
const FIRST = 2
const WHOLE = 1000

export const newBoard = (views: number): Int32Array<SharedArrayBuffer> =>
  new Int32Array(new SharedArrayBuffer(4 * (FIRST + views)))

/** Takes a view nobody has begun; undefined when none is left. */
export function takeView({ board, frames }: Pick<Share, 'board' | 'frames'>): number | undefined {
  const at = Atomics.add(board, NEXT, 1)
  return at < frames.length ? at : undefined
}

export const stopAll = (board: Int32Array): void => {
  Atomics.store(board, STOP, 1)
}

export const isStopped = (board: Int32Array): boolean => Atomics.load(board, STOP) === 1

export const tellDone = (board: Int32Array, at: number, done: number, total: number): void => {
  Atomics.store(board, FIRST + at, total > 0 ? Math.floor((WHOLE * done) / total) : WHOLE)
}

/** How much of all the views is done, 0 to 1. */
export function shareDone({ board, frames }: Pick<Share, 'board' | 'frames'>): number {
  let sum = 0
  for (let i = 0; i < frames.length; i++) sum += Atomics.load(board, FIRST + i)
  return sum / (WHOLE * frames.length)
}

/** A helping thread's part: views as long as there are any. */
export function help(share: Share, say: (word: Word) => void): void {
  const { id, frames, board } = share
  let body: ReturnType<typeof unpackBody> | undefined
  for (let at = takeView(share); at !== undefined; at = takeView(share)) {
    const place = at
    try {
      body ??= unpackBody(share.body)
      const view = exactView(body, frames[place]!, {
        stop: () => isStopped(board),
        progress: (done, total) => tellDone(board, place, done, total),
      })
      say({ id, at, view })
    } catch (fault) {
      if (fault instanceof Stopped) say({ id, at, stopped: true })
      else say({ id, at, fault: fault instanceof Error ? fault.message : String(fault) })
    }
  }
}
