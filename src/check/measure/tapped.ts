import type { Brief, HoleFeature } from '../../brief/brief.ts'
import { readThread } from '../../tolerance/threads/read-thread.ts'
import type { Thread } from '../../tolerance/threads/thread.ts'

/** A tapped hole whose designation is understood. */
export interface Tapped {
  readonly hole: HoleFeature
  readonly thread: Thread
  /** Nominal diameter and pitch, mm. */
  readonly diameter: number
  readonly pitch: number
}

export function tappedIn(brief: Brief): Tapped[] {
  return brief.features.flatMap((hole): Tapped[] => {
    const read = hole.kind === 'hole' && hole.thread ? readThread(hole.thread.text) : undefined
    if (hole.kind !== 'hole' || !read?.ok) return []
    const thread = read.value
    return [
      thread.kind === 'metric'
        ? { hole, thread, diameter: thread.diameter, pitch: thread.pitch }
        : { hole, thread, diameter: 25.4 * thread.diameter, pitch: 25.4 / thread.threadsPerInch },
    ]
  })
}
