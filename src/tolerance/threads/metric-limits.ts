import { bad, good, type Outcome } from '../../brief/outcome.ts'
import { positions, threadTolerance } from './metric-tolerances.ts'
import { readClass } from './read-metric.ts'
import type { MetricClass, MetricThread } from './thread.ts'
import type { ExternalLimits, InternalLimits } from './unified-limits.ts'

/**
 * The class that holds where none is written (ISO 965-1): 6H and 6g, up to M1.4 5H and 6h.
 */
export function usualClass(thread: MetricThread, of: 'hole' | 'screw'): MetricClass {
  const small = thread.diameter <= 1.4
  const read = readClass(of === 'hole' ? (small ? '5H' : '6H') : small ? '6h' : '6g')
  if (!read.ok) throw new Error('the usual classes are legal')
  return read.value
}

/**
 * Limits of size of a metric thread, mm, by ISO 965-1 with basic diameters of ISO 724
 * (d2 = d − 0,6495 P, d1 = d − 1,0825 P). `minorMax` of a screw is d1 less the fundamental deviation.
 */
export function metricLimits(
  thread: MetricThread,
  wanted: MetricClass | undefined = thread.class,
): Outcome<ExternalLimits | InternalLimits> {
  if (!wanted)
    return bad({ text: `M${thread.diameter} has no tolerance class.`, expected: '6H for a hole or 6g for a screw' })
  const { diameter: d, pitch: p } = thread
  const pitchBasic = round3(d - 0.64951905 * p)
  const minorBasic = round3(d - 1.08253175 * p)
  const pitchWidth = threadTolerance(wanted.internal ? 'hole pitch' : 'screw pitch', wanted.pitch.grade, d, p)
  const crestWidth = threadTolerance(wanted.internal ? 'hole minor' : 'screw major', wanted.crest.grade, d, p)
  const shift = (position: MetricClass['pitch']['position']) =>
    position === 'h' || position === 'H' ? 0 : positions[position].get(p)
  const pitchShift = shift(wanted.pitch.position)
  const crestShift = shift(wanted.crest.position)
  if (pitchWidth === undefined || crestWidth === undefined || pitchShift === undefined || crestShift === undefined) {
    return bad({
      text: `ISO 965-1 gives no ${wanted.text} for M${d}×${p}.`,
      expected: `${usualClass(thread, wanted.internal ? 'hole' : 'screw').text}`,
    })
  }
  if (wanted.internal) {
    const minor = round3(minorBasic + crestShift / 1000)
    const pitch = round3(pitchBasic + pitchShift / 1000)
    return good({
      of: 'hole',
      minor: { min: minor, max: round3(minor + crestWidth / 1000) },
      pitch: { min: pitch, max: round3(pitch + pitchWidth / 1000) },
      majorMin: round3(d + crestShift / 1000),
    })
  }
  const major = round3(d - crestShift / 1000)
  const pitch = round3(pitchBasic - pitchShift / 1000)
  return good({
    of: 'screw',
    allowance: pitchShift / 1000,
    major: { max: major, min: round3(major - crestWidth / 1000) },
    pitch: { max: pitch, min: round3(pitch - pitchWidth / 1000) },
    minorMax: round3(minorBasic - pitchShift / 1000),
  })
}

function round3(value: number): number {
  return Math.round(value * 1e3 + 1e-6) / 1e3
}
