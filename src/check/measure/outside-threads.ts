import type { Brief, Lie, TurnedStep, Words } from '../../brief/brief.ts'
import { readThread } from '../../tolerance/threads/read-thread.ts'
import type { Thread } from '../../tolerance/threads/thread.ts'

/** A designation where the brief writes it, and whether it is cut on a shaft. */
export interface WrittenThread {
  readonly words: Words
  readonly outside: boolean
}

/** Every thread that the brief names, of holes and of turned steps, in the order written. */
export function threadsWritten({ stock, features }: Brief): WrittenThread[] {
  const outside =
    stock?.kind === 'turned' ? stock.steps.flatMap((s) => (s.thread ? [{ words: s.thread, outside: true }] : [])) : []
  const inside = features.flatMap((f) => (f.kind === 'hole' && f.thread ? [{ words: f.thread, outside: false }] : []))
  return [...outside, ...inside]
}

/** A turned step with a thread whose designation is understood. */
export interface OutsideThread {
  readonly step: TurnedStep
  readonly words: Words
  readonly thread: Thread
  /** Nominal diameter and pitch, mm. */
  readonly diameter: number
  readonly pitch: number
  /** The part's words for the step's ends, in the order of the steps: left and right, or bottom and top. */
  readonly ends: readonly [string, string]
  /** Neighbours of the step from left to right; absent at the part's ends. */
  readonly before?: TurnedStep
  readonly after?: TurnedStep
}

const ENDS: Readonly<Record<Lie, readonly [string, string]>> = {
  'left-right': ['left', 'right'],
  'front-rear': ['front', 'rear'],
  'up-down': ['bottom', 'top'],
}

export function outsideThreads({ stock }: Brief): OutsideThread[] {
  if (stock?.kind !== 'turned') return []
  return stock.steps.flatMap((step, i): OutsideThread[] => {
    const read = step.thread && readThread(step.thread.text)
    if (!step.thread || !read?.ok) return []
    const { value: thread } = read
    const [before, after] = [stock.steps[i - 1], stock.steps[i + 1]]
    return [
      {
        step,
        words: step.thread,
        ends: ENDS[stock.lie],
        thread,
        ...(thread.kind === 'metric'
          ? { diameter: thread.diameter, pitch: thread.pitch }
          : { diameter: 25.4 * thread.diameter, pitch: 25.4 / thread.threadsPerInch }),
        ...(before ? { before } : {}),
        ...(after ? { after } : {}),
      },
    ]
  })
}

/** Neighbours that rise above the thread, so that a die or a tool runs up against them. */
export const shouldersOf = ({ before, after, diameter }: OutsideThread): TurnedStep[] =>
  [before, after].filter((n): n is TurnedStep => n !== undefined && n.diameter.mm > diameter + 1e-6)

/** Diameter at the root of a screw thread of the basic profile, mm: d − 1.2269 P (ISO 965-1, ISO 68-1: H/6 rounded root). */
export const rootOf = ({ diameter, pitch }: Pick<OutsideThread, 'diameter' | 'pitch'>): number =>
  diameter - 1.22687 * pitch
