import { parentPort, workerData } from 'node:worker_threads'
import type { Link } from '../../tolerance/stack/link.ts'
import { type Simulation, simulate } from '../../tolerance/stack/simulate.ts'
import type { Requirement } from '../../tolerance/stack/stack.ts'

/** What the simulating thread is given; the length as drawn is the sum of the links and `shift`. */
export interface Task {
  readonly links: readonly Link[]
  readonly shift: number
  readonly samples: number
  readonly seed: number
  readonly wanted: Requirement
}

/** What it comes back with. `low` and `high` hold 99.73 % of the results between them. */
export type Outcome = Omit<Simulation, 'quantile' | 'results'> & { readonly low: number; readonly high: number }

export type Word = { readonly done: number } | { readonly outcome: Outcome }

const { links, shift, samples, seed, wanted } = workerData as Task
const say = (word: Word) => parentPort!.postMessage(word)
const moved = (limit: number | undefined, key: 'min' | 'max') => (limit === undefined ? {} : { [key]: limit - shift })
const {
  quantile,
  results: _,
  ...made
} = simulate(links, {
  samples,
  seed,
  requirement: { ...moved(wanted.min, 'min'), ...moved(wanted.max, 'max') },
  progress: (done) => say({ done }),
})
const { histogram } = made
say({
  outcome: {
    ...made,
    mean: made.mean + shift,
    min: made.min + shift,
    max: made.max + shift,
    histogram: { ...histogram, from: histogram.from + shift, to: histogram.to + shift },
    low: quantile(0.00135) + shift,
    high: quantile(0.99865) + shift,
  },
})
