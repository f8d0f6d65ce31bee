import type { Body } from '../../kernel/body.ts'
import { exactView } from '../../views/exact/exact-view.ts'
import { packBody } from '../../views/exact/packed-body.ts'
import { Stopped } from '../../views/exact/watch.ts'
import type { ExactView, Frame } from '../../views/view.ts'
import { isStopped, newBoard, type Share, shareDone, stopAll, takeView, tellDone, type Word } from './share.ts'

/** A thread that draws views: Node's or a page's. */
export interface Hand {
  readonly give: (share: Share) => void
  readonly end: () => void
}

/** Starts a thread. It says each word it has, and once that it fell. */
export type StartHand = (say: (word: Word) => void, fell: () => void) => Hand

export interface CrewWatch {
  /** Asked all the time; true ends every thread's drawing by `Stopped`. */
  readonly stop?: () => boolean
  /** Share of all views together, 0 to 1, never back. */
  readonly progress?: (share: number) => void
}

/** Milliseconds between two looks at the board while others draw. */
const LOOK = 25

interface Work {
  readonly share: Share
  readonly views: (ExactView | undefined)[]
  /** Views that were given back undrawn. */
  readonly back: Set<number>
  readonly settled: () => void
}

/**
 * Draws the views of a body over several threads, the caller's own among them: each takes the next view not begun. The
 * body lies in memory they share. Views come out as one thread would draw them, number by number.
 */
export class Crew {
  #hands: Hand[] = []
  #work: Work | undefined
  #next = 1
  readonly #start: StartHand
  readonly #size: number

  /** `size`: threads beside the caller's own. */
  constructor(start: StartHand, size: number) {
    this.#start = start
    this.#size = size
  }

  /** Starts the threads, so that they are there when the work is. */
  muster(): void {
    while (this.#hands.length < this.#size) {
      const hand = this.#start(
        (word) => this.#hear(word),
        () => this.#lose(hand),
      )
      this.#hands.push(hand)
    }
  }

  /** Ends all threads. */
  close(): void {
    for (const hand of this.#hands) hand.end()
    this.#hands = []
  }

  async draw(body: Body, frames: readonly Frame[], { stop, progress }: CrewWatch = {}): Promise<ExactView[]> {
    this.muster()
    const board = newBoard(frames.length)
    const share: Share = { id: this.#next++, body: packBody(body), frames, board }
    let settle = () => {}
    const work: Work = { share, views: frames.map(() => undefined), back: new Set(), settled: () => settle() }
    this.#work = work
    for (const hand of this.#hands) hand.give(share)
    let told = -1
    const look = () => {
      const done = shareDone(share)
      if (done > told) progress?.(done)
      told = Math.max(told, done)
      if (stop?.()) stopAll(board)
    }
    try {
      for (let at = takeView(share); at !== undefined; at = takeView(share)) work.views[at] = own(body, share, at, look)
      while (work.views.some((view, i) => !view && !work.back.has(i))) {
        look()
        if (isStopped(board)) throw new Stopped()
        await new Promise<void>((resolve) => {
          const timer = setTimeout(resolve, LOOK)
          settle = () => {
            clearTimeout(timer)
            resolve()
          }
        })
      }
      // what a thread that fell had begun
      for (const at of work.back) work.views[at] ??= own(body, share, at, look)
      look()
      return work.views as ExactView[]
    } finally {
      stopAll(board)
      this.#work = undefined
    }
  }

  #hear(word: Word): void {
    const work = this.#work
    if (!work || work.share.id !== word.id) return
    if ('view' in word) work.views[word.at] = word.view
    else work.back.add(word.at)
    work.settled()
  }

  /** Which views a fallen thread had begun nobody knows: all that are open are drawn again. */
  #lose(hand: Hand): void {
    this.#hands = this.#hands.filter((h) => h !== hand)
    const work = this.#work
    if (!work) return
    work.views.forEach((view, at) => {
      if (!view) work.back.add(at)
    })
    work.settled()
  }
}

function own(body: Body, { frames, board }: Share, at: number, look: () => void): ExactView {
  return exactView(body, frames[at]!, {
    stop: () => isStopped(board),
    progress: (done, total) => {
      tellDone(board, at, done, total)
      look()
    },
  })
}
