import type { UnifiedSeries } from './unified-series.ts'

export type UnifiedClass = '1A' | '2A' | '3A' | '1B' | '2B' | '3B'

/** A unified inch thread, ASME B1.1. */
export interface UnifiedThread {
  readonly kind: 'unified'
  /** Size as the standard writes it: `#10`, `1/4`. */
  readonly size: string
  /** Basic major diameter, in. */
  readonly diameter: number
  readonly threadsPerInch: number
  readonly series: UnifiedSeries
  /** The series was written, not taken from the table. */
  readonly seriesTyped: boolean
  readonly class?: UnifiedClass
  readonly leftHand: boolean
}

/** Tolerance grade and position of one diameter of a metric thread. Capital: internal. */
export interface MetricGrade {
  readonly grade: number
  readonly position: 'G' | 'H' | 'e' | 'f' | 'g' | 'h'
}

/** Tolerance class of a metric thread: pitch diameter, then crest diameter (major of a screw, minor of a nut). */
export interface MetricClass {
  readonly text: string
  readonly internal: boolean
  readonly pitch: MetricGrade
  readonly crest: MetricGrade
}

/** A metric thread of ISO 261 with tolerances of ISO 965-1. */
export interface MetricThread {
  readonly kind: 'metric'
  /** Nominal diameter and pitch, mm. */
  readonly diameter: number
  readonly pitch: number
  readonly coarse: boolean
  /** The pitch was written. ISO 965-1 leaves it out for coarse threads; ASME B1.13M always writes it. */
  readonly pitchTyped: boolean
  readonly class?: MetricClass
  /** Second class of a pair such as 6H/6g. */
  readonly mate?: MetricClass
  readonly leftHand: boolean
}

export type Thread = UnifiedThread | MetricThread

/** The thread as a drawing states it. */
export function threadText(thread: Thread): string {
  const hand = thread.leftHand ? ' LH' : ''
  if (thread.kind === 'unified') {
    const size = thread.size.replace('#', '')
    return `${size}-${thread.threadsPerInch} ${thread.series}${thread.class ? `-${thread.class}` : ''}${hand}`
  }
  const pitch = thread.coarse && !thread.pitchTyped ? '' : `×${thread.pitch}`
  const classes = [thread.class, thread.mate].flatMap((each) => (each ? [each.text] : [])).join('/')
  return `M${thread.diameter}${pitch}${classes ? ` - ${classes}` : ''}${hand}`
}
