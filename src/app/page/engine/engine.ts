import type { Answer, Asked, Checked, Drawn, Held, ModelAsked, Seen, SolidPicture, Written } from './messages.ts'

/** Kernel memory above which a fresh worker takes over, in bytes: what the kernel once took it never gives back. */
const MOST_MEMORY = 700 * 2 ** 20
/**
 * Milliseconds without a word after which a worker is given up. A first drawing waits for the kernel too, and the kernel
 * reads a whole model without a word.
 */
const PATIENCE = { opening: 60_000, answering: 20_000, reading: 600_000 }

/**
 * Milliseconds that work nobody waits for any more may go on. The worker looks at its flag every few microseconds, but
 * within a call of the kernel it cannot, nor where the page shares no memory with it: then it is started anew.
 */
const GRACE = { superseded: 1500, stopped: 400 }
/** Milliseconds without a sheet after which a drawing is not ended for a newer one at once: quick writing shows sheets too. */
const UNSEEN = 500

export type EngineState = 'opening' | 'ready' | 'at work' | 'restarting'

interface Pending {
  readonly asked: Asked
  readonly resolve: (answer: Answer) => void
  readonly reject: (fault: Error) => void
  readonly tell?: (words: string) => void
  tries: number
}

/** A newer drawing of the same part was asked for before this one was done. */
export class Superseded extends Error {}

/** The work was ended because somebody said so. */
export class Ended extends Error {}

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
  /** Work that nobody waits for and the worker has not given up yet. */
  readonly #ending = new Map<number, ReturnType<typeof setTimeout>>()
  /** When each part last had a sheet. */
  readonly #seen = new Map<string, number>()
  readonly #start: () => Worker
  readonly #tell: (state: EngineState) => void

  constructor(start: () => Worker, tell: (state: EngineState) => void) {
    this.#start = start
    this.#tell = tell
    this.#worker = this.#open()
    tell('opening')
  }

  /**
   * Rejects with `Superseded` when a newer text of the same part was asked for: that ends the drawing of the older one.
   * With `model` the text is a STEP file's. `tell` hears what is done just now.
   */
  async draw(part: string, text: string, model?: ModelAsked, tell?: (words: string) => void): Promise<Drawn> {
    this.#supersede(part)
    this.#lookAway()
    const answer = await this.#ask({ ask: 'draw', part, ...this.#work(text, model) }, tell)
    if (answer.answer !== 'drawn') throw new Error('the engine gave another answer than was asked')
    this.#seen.set(part, performance.now())
    this.#memory = answer.memory
    this.#renewWhenIdle()
    return answer.drawn
  }

  /** What the checker says; rejects with `Superseded` when a newer text of the same part was asked about. */
  async check(part: string, text: string, print: boolean, model?: ModelAsked): Promise<Checked> {
    const answer = await this.#ask({ ask: 'check', part, print, ...this.#work(text, model) })
    if (answer.answer !== 'checked') throw new Error('the engine gave another answer than was asked')
    return answer.checked
  }

  async write(text: string, kind: Written, model?: ModelAsked): Promise<Uint8Array<ArrayBuffer>> {
    const answer = await this.#ask({ ask: 'write', kind, ...this.#work(text, model) })
    if (answer.answer !== 'written') throw new Error('the engine gave another answer than was asked')
    return answer.bytes
  }

  async solid(text: string, model?: ModelAsked): Promise<SolidPicture> {
    const answer = await this.#ask({ ask: 'solid', ...this.#work(text, model) })
    if (answer.answer !== 'solid') throw new Error('the engine gave another answer than was asked')
    return answer.solid
  }

  /** What is seen of the solid as it is held; rejects with `Superseded` when it was asked again since. */
  async look(text: string, held: Held, model?: ModelAsked): Promise<Seen> {
    this.#lookAway()
    const answer = await this.#ask({ ask: 'look', held, ...this.#work(text, model) })
    if (answer.answer !== 'seen') throw new Error('the engine gave another answer than was asked')
    return answer.seen
  }

  /** A brief begun from a STEP file, or one of its parts. */
  async begin(text: string, name: string, model: ModelAsked): Promise<{ text?: string; sentence: string }> {
    const answer = await this.#ask({ ask: 'begin', name, ...this.#work(text, model) })
    if (answer.answer !== 'begun') throw new Error('the engine gave another answer than was asked')
    return answer
  }

  /** Ends whatever is drawn or checked of a part, at once; who waits for it is told by `Ended`. */
  stop(part: string): void {
    for (const { asked } of [...this.#pending.values()])
      if ('part' in asked && asked.part === part) this.#end(asked.id, new Ended(), GRACE.stopped)
    this.#watch()
  }

  close(): void {
    clearTimeout(this.#timer)
    this.#forget()
    this.#worker.terminate()
  }

  #work(text: string, model?: ModelAsked) {
    return {
      id: this.#next++,
      text,
      ...(model ? { model } : {}),
      ...(typeof SharedArrayBuffer === 'undefined' ? {} : { flag: new Int32Array(new SharedArrayBuffer(4)) }),
    }
  }

  /** A newer text of the part has come: the drawings of older ones end, at once or soon. */
  #supersede(part: string): void {
    const older = [...this.#pending.values()].filter(({ asked }) => asked.ask === 'draw' && asked.part === part)
    if (older.length === 0) return
    const end = () => {
      for (const { asked } of older) this.#end(asked.id, new Superseded(), GRACE.superseded)
    }
    if (performance.now() - (this.#seen.get(part) ?? Number.NEGATIVE_INFINITY) < UNSEEN) end()
    else setTimeout(end, UNSEEN)
  }

  #end(id: number, why: Error, grace: number): void {
    const one = this.#pending.get(id)
    if (!one) return
    this.#pending.delete(id)
    if (one.asked.flag) Atomics.store(one.asked.flag, 0, 1)
    this.#ending.set(
      id,
      setTimeout(() => this.#restart(true), grace),
    )
    one.reject(why)
  }

  /** Nobody waits for what is looked at just now: the worker ends it when it next looks at its flag. */
  #lookAway(): void {
    for (const { asked } of this.#pending.values())
      if (asked.ask === 'look' && asked.flag) Atomics.store(asked.flag, 0, 1)
  }

  #forget(): void {
    for (const timer of this.#ending.values()) clearTimeout(timer)
    this.#ending.clear()
  }

  #ask(asked: Asked, tell?: (words: string) => void): Promise<Answer> {
    return new Promise((resolve, reject) => {
      this.#pending.set(asked.id, { asked, resolve, reject, tries: 1, ...(tell ? { tell } : {}) })
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
    else if (answer.answer === 'at work') this.#pending.get(answer.id)?.tell?.(answer.words)
    else {
      clearTimeout(this.#ending.get(answer.id))
      this.#ending.delete(answer.id)
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
    const model = [...this.#pending.values()].some(({ asked }) => asked.model)
    const patience = model ? PATIENCE.reading : this.#ready ? PATIENCE.answering : PATIENCE.opening
    this.#timer = setTimeout(() => this.#restart(), patience)
  }

  /** `asked`: nobody's fault, and so not counted against what waits. */
  #restart(asked = false): void {
    this.#worker.terminate()
    this.#forget()
    this.#tell('restarting')
    this.#memory = 0
    this.#worker = this.#open()
    for (const [id, one] of this.#pending) {
      if (!asked && one.tries++ > 1) {
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
