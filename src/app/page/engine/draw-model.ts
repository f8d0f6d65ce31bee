import type { OcctKernel } from '../../../kernel/open.ts'
import type { Drawing } from '../../compile.ts'
import { compileSolid, compileSolidTogether, type SolidOptions } from '../../compile-solid.ts'
import { Crew } from '../../crew/crew.ts'
import { startHand } from './hand.ts'

/** Threads for large models, where the page may share memory with them. */
const crew =
  typeof SharedArrayBuffer === 'undefined'
    ? undefined
    : new Crew(startHand, Math.min(4, navigator.hardwareConcurrency - 1))

/** Milliseconds between two words about a request at work. */
const PAUSE = 100

/** The drawing of a solid model; what it is at is said by `say`, not too often. */
export async function drawModel(
  text: string,
  kernel: OcctKernel,
  options: SolidOptions,
  say: (words: string) => void,
): Promise<Drawing> {
  let told = Number.NEGATIVE_INFINITY
  const progress = (words: string) => {
    const now = performance.now()
    if (now - told < PAUSE) return
    told = now
    say(words)
  }
  const watched = { ...options, progress }
  return crew ? compileSolidTogether(text, kernel, crew, watched) : compileSolid(text, kernel, watched)
}
