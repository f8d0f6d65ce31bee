import { bad, good, type Outcome } from '../../brief/outcome.ts'
import type { Span } from '../../brief/span.ts'
import { nearestNumber } from '../nearest.ts'
import { coarsePitches, metricDiameters, pitchesOf } from './metric-series.ts'
import type { MetricClass, MetricGrade, MetricThread } from './thread.ts'

// ISO 965-1: grades of each diameter.
const legalGrades = {
  internal: { pitch: [4, 5, 6, 7, 8], crest: [4, 5, 6, 7, 8] },
  external: { pitch: [3, 4, 5, 6, 7, 8, 9], crest: [4, 6, 8] },
} as const

/** Reads `M diameter × pitch - class LH`; pitch, class and hand may be left out. */
export function readMetric(text: string): Outcome<MetricThread> {
  const parts =
    /^\s*M\s*(\d+(?:[.,]\d+)?)\s*(?:[x×X*]\s*(\d+(?:[.,]\d+)?|[.,]\d+))?\s*(?:-?\s*(\d[A-Za-z](?:\d[A-Za-z])?(?:\s*\/\s*\d[A-Za-z](?:\d[A-Za-z])?)?))?\s*(?:-?\s*(LH|RH))?\s*$/i.exec(
      text,
    )
  if (!parts) {
    return bad({
      text: `"${text.trim()}" does not read as a metric thread.`,
      expected: 'M diameter × pitch - class, such as M8×1 - 6H',
    })
  }
  const [, diameterText, pitchText, classText, hand] = parts as unknown as [string, string, ...(string | undefined)[]]
  const place = (part: string): Span => ({ from: text.indexOf(part), to: text.indexOf(part) + part.length })
  const diameter = Number(diameterText.replace(',', '.'))
  const pitches = pitchesOf(diameter)
  if (pitches.length === 0) {
    const near = nearestNumber(diameter, metricDiameters)!
    return bad({
      text: `ISO 261 has no M${diameterText}.`,
      expected: `M${near}, the nearest`,
      instead: `M${near}`,
      span: { from: text.search(/m/i), to: place(diameterText).to },
    })
  }
  const coarse = coarsePitches.get(diameter)
  const pitch = pitchText === undefined ? coarse : Number(pitchText.replace(',', '.'))
  if (pitch === undefined) {
    return bad({
      text: `M${diameter} has no coarse pitch.`,
      expected: pitches.map((each) => `M${diameter}×${each}`).join(', '),
      instead: `M${diameter}×${pitches[0]}`,
    })
  }
  if (!pitches.includes(pitch)) {
    const near = nearestNumber(pitch, pitches)!
    return bad({
      text: `ISO 261 gives M${diameter} no pitch of ${pitchText}.`,
      expected: `a pitch of ${pitches.join(', ')}`,
      instead: String(near),
      span: place(pitchText!),
    })
  }
  const classes = classText?.split('/').map((each) => readClass(each.trim())) ?? []
  for (const each of classes) if (!each.ok) return bad({ ...each.problem, span: place(classText!) })
  const [first, second] = classes.flatMap((each) => (each.ok ? [each.value] : []))
  return good({
    kind: 'metric',
    diameter,
    pitch,
    coarse: pitch === coarse,
    pitchTyped: pitchText !== undefined,
    ...(first ? { class: first } : {}),
    ...(second ? { mate: second } : {}),
    leftHand: hand?.toUpperCase() === 'LH',
  })
}

/** Reads a tolerance class such as `6H`, `6g`, `5g6g`; the first grade is for the pitch diameter, the second for the crest. */
export function readClass(text: string): Outcome<MetricClass> {
  const cells = [...text.matchAll(/(\d)([A-Za-z])/g)].map(([, grade, position]) => ({
    grade: Number(grade),
    position: position!,
  }))
  const [pitch, crest = pitch] = cells
  if (!pitch || !crest || cells.length > 2) {
    return bad({ text: `"${text}" is not a thread tolerance class.`, expected: '6H for a hole, 6g for a screw' })
  }
  const internal = /[A-Z]/.test(pitch.position)
  const letters = internal ? 'GH' : 'efgh'
  for (const each of [pitch, crest]) {
    if (!letters.includes(each.position)) {
      return bad({
        text: `ISO 965-1 has no position "${each.position}" ${internal ? 'in a hole' : 'on a screw'}.`,
        expected: internal ? 'G or H' : 'e, f, g or h',
        instead: internal ? '6H' : '6g',
      })
    }
  }
  const legal = internal ? legalGrades.internal : legalGrades.external
  for (const [cell, allowed, what] of [
    [pitch, legal.pitch, 'pitch diameter'],
    [crest, legal.crest, internal ? 'minor diameter' : 'major diameter'],
  ] as const) {
    if (!(allowed as readonly number[]).includes(cell.grade)) {
      const near = nearestNumber(cell.grade, allowed)!
      return bad({
        text: `ISO 965-1 has no grade ${cell.grade} for the ${what} of a ${internal ? 'hole' : 'screw'}.`,
        expected: `grade ${allowed.join(', ')}`,
        instead:
          cells.length === 1 && what === 'pitch diameter' ? `${near}${cell.position}` : correct(pitch, crest, near),
      })
    }
  }
  return good({ text, internal, pitch: pitch as MetricGrade, crest: crest as MetricGrade })
}

/** 5g stands for both diameters; where the crest has no grade 5, both are written: 5g6g. */
function correct(pitch: { grade: number; position: string }, crest: { position: string }, crestGrade: number): string {
  return `${pitch.grade}${pitch.position}${crestGrade}${crest.position}`
}
