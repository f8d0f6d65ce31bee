import type { Mark } from '../brief/mark.ts'
import { readBrief } from '../brief/read.ts'
import type { OcctKernel } from '../kernel/open.ts'
import { buildPart } from '../part/build.ts'
import type { Part } from '../part/part.ts'
import { type Beginning, beginnings } from '../read/begin/begin-brief.ts'
import type { ReadSolid } from '../read/part-from-solid.ts'
import { freeStepFile, readStepFile, stepPart } from '../read/step-file.ts'
import { solidOf } from './solid-of.ts'

/** A brief begun from a solid model. */
export interface Begun {
  /** Absent where the file holds no solid that was asked for. */
  readonly text?: string
  /** The brief builds a part of the model's volume, surface, overall size and centre of gravity. */
  readonly same: boolean
  /** How the part that the brief builds compares with the model. */
  readonly sentence: string
  readonly marks: readonly Mark[]
}

/** Relative difference up to which two figures are the same: what rounded digits of a file lose. */
const ALIKE = 1e-6

/**
 * A brief that builds the solid of a STEP file again, or comes as near as the program can describe it. `from` is the
 * file's name for the brief's first line. Of several solids `solid` names one.
 */
export function beginBrief(text: string, from: string, kernel: OcctKernel, solid?: string): Begun {
  const nothing = (marks: readonly Mark[]): Begun => ({ same: false, sentence: 'Nothing to begin from.', marks })
  const { file, marks } = readStepFile(text, kernel)
  if (!file) return nothing(marks)
  try {
    const one = solid === undefined ? (file.parts.length === 1 ? file.parts[0]! : SEVERAL) : stepPart(file, solid)
    if (typeof one === 'string') {
      const names = file.parts.map((p) => p.name).join(', ')
      const text =
        one === SEVERAL ? `${file.name} holds ${file.parts.length} parts, and a brief is for one: ${names}.` : one
      return nothing([
        ...marks,
        { rule: 'no-such-solid', weight: 'must change', text, expected: '--solid and its name' },
      ])
    }
    const read = solidOf(file, one, marks, kernel)
    if (read.body.faces.length === 0)
      return nothing([...marks, { rule: 'no-solid', weight: 'must change', text: `${one.name} has no faces.` }])
    return { ...nearest(read, from, kernel), marks }
  } finally {
    freeStepFile(file, kernel)
  }
}

const SEVERAL = 'several'

/** Tries the briefs that may make the solid, the fullest first. */
function nearest(read: ReadSolid, from: string, kernel: OcctKernel): Omit<Begun, 'marks'> {
  let best: { made: Beginning; off: number; volume: number } | undefined
  for (const made of beginnings(read)) {
    const part = buildPart(readBrief(made.text), kernel)
    const off = apart(read, part)
    if (part.body.faces.length > 0) kernel.free(part.solid)
    if (!best || off < best.off) best = { made, off, volume: part.properties.volume }
    if (off <= ALIKE) break
  }
  const { made, off, volume } = best!
  const same = off <= ALIKE
  const share = ((100 * (volume - read.properties.volume)) / read.properties.volume).toFixed(2)
  const unsaid = same ? [] : made.undescribed
  const sentence = same
    ? 'It builds the model again: volume, surface, overall size and centre of gravity agree to a millionth.'
    : `It does not build the whole model yet: its volume is ${share.startsWith('-') ? share.slice(1) : share} % ${share.startsWith('-') ? 'too small' : 'too large'}, and ${unsaid.length === 1 ? '1 face is' : `${unsaid.length} faces are`} in no statement.`
  return { text: commented(made, read, from, same ? [] : unsaid), same, sentence }
}

/** Most faces listed one by one. */
const LISTED = 12

function commented({ text }: Beginning, read: ReadSolid, from: string, unsaid: readonly number[]): string {
  const { body, unit } = read
  const inUnit = (mm: number) => String(Number((unit === 'inch' ? mm / 25.4 : mm).toFixed(unit === 'inch' ? 3 : 2)))
  const lines = [
    `# Begun from ${from}: sizes as measured. Still to say: number, material, general tolerances, edges, names and dates,`,
    '# and which sizes matter and how closely.',
    ...unsaid.slice(0, LISTED).map((id) => {
      const { kind } = body.faces[id]!.surface
      const at = placeOf(read, id).map(
        (c, k) => `${inUnit(c - body.box.min[k]!)} from ${['left', 'front', 'bottom'][k]}`,
      )
      return `# Not said yet: a ${kind === 'spline' ? 'free-form' : kind} face about ${at.join(', ')}.`
    }),
    ...(unsaid.length > LISTED ? [`# Not said yet: ${unsaid.length - LISTED} more faces.`] : []),
  ]
  return `${lines.join('\n')}\n\n${text}`
}

/** The middle of a face's border. */
function placeOf({ body }: ReadSolid, id: number): readonly number[] {
  const ends = body.faces[id]!.loops.flat().flatMap(({ edge }) => {
    const { curve } = body.edges[edge]!
    return curve.kind === 'line' ? [curve.a, curve.b] : curve.kind === 'spline' ? curve.poles : [curve.axes.origin]
  })
  if (ends.length === 0) return body.box.min
  return [0, 1, 2].map((k) => (Math.min(...ends.map((p) => p[k]!)) + Math.max(...ends.map((p) => p[k]!))) / 2)
}

/** The largest relative difference of volume, surface, overall size and centre of gravity. */
function apart(read: ReadSolid, part: Part): number {
  if (part.body.faces.length === 0) return Number.POSITIVE_INFINITY
  const { properties: a, body } = read
  const { properties: b } = part
  const size = Math.hypot(...body.box.max.map((m, k) => m - body.box.min[k]!))
  const offs = [
    Math.abs(a.volume - b.volume) / a.volume,
    Math.abs(a.area - b.area) / a.area,
    ...[0, 1, 2].map((k) => {
      const [own, other] = [body.box.min[k]!, part.body.box.min[k]!]
      const extent = Math.abs(body.box.max[k]! - own - (part.body.box.max[k]! - other))
      const centre = Math.abs(a.centroid[k]! - own - (b.centroid[k]! - other))
      return Math.max(extent, centre) / size
    }),
  ]
  return Math.max(...offs)
}
