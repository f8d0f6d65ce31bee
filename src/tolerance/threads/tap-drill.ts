import { type Drill, drillNamed, nearestDrill } from './drills.ts'
import type { Thread } from './thread.ts'

/** The drill before the tap. */
export interface TapDrill {
  /** Shop name: `#7`, `F`, `27/64`, or mm. */
  readonly name: string
  /** Inches for unified, mm for metric threads. */
  readonly diameter: number
  /** From the table of the series, or by rule where the table has none. */
  readonly by: 'table' | 'rule'
}

// Recommended tap drills for about 75 % of thread, Machinery's Handbook, from memory.
const unified: Readonly<Record<string, string>> = Object.fromEntries(
  `#1-64 #53|#2-56 #50|#3-48 #47|#4-40 #43|#5-40 #38|#6-32 #36|#8-32 #29|#10-24 #25|#12-24 #16|1/4-20 #7|5/16-18 F|3/8-16 5/16|
   7/16-14 U|1/2-13 27/64|9/16-12 31/64|5/8-11 17/32|3/4-10 21/32|7/8-9 49/64|1-8 7/8|1-1/8-7 63/64|1-1/4-7 1-7/64|1-3/8-6 1-7/32|
   1-1/2-6 1-11/32|1-3/4-5 1-9/16|2-4.5 1-25/32|
   #0-80 3/64|#1-72 #53|#2-64 #50|#3-56 #45|#4-48 #42|#5-44 #37|#6-40 #33|#8-36 #29|#10-32 #21|#12-28 #14|1/4-28 #3|5/16-24 I|
   3/8-24 Q|7/16-20 25/64|1/2-20 29/64|9/16-18 33/64|5/8-18 37/64|3/4-16 11/16|7/8-14 13/16|1-12 59/64|1-1/8-12 1-3/64|
   1-1/4-12 1-11/64|1-3/8-12 1-19/64|1-1/2-12 1-27/64`
    .split('|')
    .map((pair) => pair.trim().split(' ') as [string, string]),
)

// ISO 2306, coarse pitch, mm, from memory.
const coarse: ReadonlyMap<number, number> = new Map(
  `1:.75 1.1:.85 1.2:.95 1.4:1.1 1.6:1.25 1.8:1.45 2:1.6 2.2:1.75 2.5:2.05 3:2.5 3.5:2.9 4:3.3 4.5:3.7 5:4.2 6:5 7:6 8:6.8 9:7.8
   10:8.5 11:9.5 12:10.2 14:12 16:14 18:15.5 20:17.5 22:19.5 24:21 27:24 30:26.5 33:29.5 36:32 39:35 42:37.5 45:40.5 48:43 52:47
   56:50.5 60:54.5 64:58 68:62`
    .split(/\s+/)
    .map((pair) => pair.split(':').map(Number) as [number, number]),
)

/**
 * Drill before tapping. Unified series outside the table: the drill nearest to 75 % of thread, D − 0.9743 P.
 * Metric fine pitches: D − P to the tenth (to the twentieth below 3 mm), as ISO 2306 rounds it.
 */
export function tapDrill(thread: Thread): TapDrill {
  if (thread.kind === 'unified') {
    const drill = drillNamed(unified[`${thread.size}-${thread.threadsPerInch}`] ?? '')
    if (drill) return { ...drill, by: 'table' }
    const nearest: Drill = nearestDrill(thread.diameter - 0.974279 / thread.threadsPerInch)
    return { ...nearest, by: 'rule' }
  }
  const tabled = thread.coarse ? coarse.get(thread.diameter) : undefined
  if (tabled !== undefined) return { name: `${tabled} mm`, diameter: tabled, by: 'table' }
  const exact = thread.diameter - thread.pitch
  const diameter = exact < 3 ? Math.round(exact * 20) / 20 : halfToEven(exact * 10) / 10
  return { name: `${diameter} mm`, diameter, by: 'rule' }
}

function halfToEven(value: number): number {
  const whole = Math.floor(value)
  return Math.abs(value - whole - 0.5) < 1e-9 ? whole + (whole % 2) : Math.round(value)
}
