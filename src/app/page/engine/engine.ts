import type { Answer, Asked, Checked, Drawn, SolidPicture, Written } from './messages.ts'

/** Kernel memory above which a fresh worker takes over, in bytes: what the kernel once took it never gives back. */
const MOST_MEMORY = 700 * 2 ** 20
/** Milliseconds without an answer after which a worker is given up. A first drawing waits for the kernel too. */
const PATIENCE = { opening: 60_000, answering: 20_000 }

export type EngineState = 'opening' | 'ready' | 'at work' | 'restarting'

interface Pending {
  readonly asked: Asked
  readonly resolve: (answer: Answer) => void
  readonly reject: (fault: Error) => void
  tries: number
}

/** A newer drawing of the same part was asked for before this one was begun. */
export class Superseded extends Error {}

/**
 * The engine in its worker. Requests survive a worker that dies, hangs or has grown too large: a new one is started
 * and what is still unanswered is asked again, once.
 */
export class Engine {
  #worker: Worker
  #ready = false
  #next = 1
  #memory = 0
  #timer: ReturnType<typeof setTimeout> | undefined
  readonly #pending = new Map<number, Pending>()
  readonly #start: () => Worker
  readonly #tell: (state: EngineState) => void

  constructor(start: () => Worker, tell: (state: EngineState) => void) {
    this.#start = start
    this.#tell = tell
    this.#worker = this.#open()
    tell('opening')
  }

  /** Rejects with `Superseded` when a newer text of the same part was asked for. */
  async draw(part: string, text: string): Promise<Drawn> {
    const answer = await this.#ask({ ask: 'draw', id: this.#next++, part, text })
    if (answer.answer !== 'drawn') throw new Error('the engine gave another answer than was asked')
    this.#memory = answer.memory
    this.#renewWhenIdle()
    return answer.drawn
  }

  /** What the checker says; rejects with `Superseded` when a newer text of the same part was asked about. */
  async check(part: string, text: string, print: boolean): Promise<Checked> {
    const answer = await this.#ask({ ask: 'check', id: this.#next++, part, text, print })
    if (answer.answer !== 'checked') throw new Error('the engine gave another answer than was asked')
    return answer.checked
  }

  async write(text: string, kind: Written): Promise<Uint8Array<ArrayBuffer>> {
    const answer = await this.#ask({ ask: 'write', id: this.#next++, text, kind })
    if (answer.answer !== 'written') throw new Error('the engine gave another answer than was asked')
    return answer.bytes
  }

  async solid(text: string): Promise<SolidPicture> {
    const answer = await this.#ask({ ask: 'solid', id: this.#next++, text })
    if (answer.answer !== 'solid') throw new Error('the engine gave another answer than was asked')
    return answer.solid
  }

  close(): void {
    clearTimeout(this.#timer)
    this.#worker.terminate()
  }

  #ask(asked: Asked): Promise<Answer> {
    return new Promise((resolve, reject) => {
      this.#pending.set(asked.id, { asked, resolve, reject, tries: 1 })
      this.#worker.postMessage(asked)
      this.#watch()
    })
  }

  #open(): Worker {
    const worker = this.#start()
    worker.onmessage = ({ data }: MessageEvent<Answer>) => this.#hear(data)
    worker.onerror = () => this.#restart()
    this.#ready = false
    return worker
  }

  #hear(answer: Answer): void {
    if (answer.answer === 'ready') this.#ready = true
    else {
      const one = this.#pending.get(answer.id)
      this.#pending.delete(answer.id)
      if (answer.answer === 'passed over') one?.reject(new Superseded())
      else if (answer.answer === 'failed') {
        if (answer.id === 0) for (const all of this.#pending.values()) all.reject(new Error(answer.text))
        else one?.reject(new Error(answer.text))
      } else one?.resolve(answer)
    }
    this.#watch()
  }

  /** Waits on for the next answer; gives the worker up when none comes. */
  #watch(): void {
    clearTimeout(this.#timer)
    this.#tell(this.#ready ? (this.#pending.size > 0 ? 'at work' : 'ready') : 'opening')
    if (this.#pending.size === 0 && this.#ready) return
    this.#timer = setTimeout(() => this.#restart(), this.#ready ? PATIENCE.answering : PATIENCE.opening)
  }

  #restart(): void {
    this.#worker.terminate()
    this.#tell('restarting')
    this.#memory = 0
    this.#worker = this.#open()
    for (const [id, one] of this.#pending) {
      if (one.tries++ > 1) {
        this.#pending.delete(id)
        one.reject(new Error('the engine was restarted twice over this brief and gave no answer'))
      } else this.#worker.postMessage(one.asked)
    }
    this.#watch()
  }

  #renewWhenIdle(): void {
    if (this.#memory > MOST_MEMORY && this.#pending.size === 0) this.#restart()
  }
}
