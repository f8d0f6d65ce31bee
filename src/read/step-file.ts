import type { Mark } from '../brief/mark.ts'
import type { Unit } from '../brief/size.ts'
import type { SolidKey } from '../kernel/kernel.ts'
import { KernelError } from '../kernel/occt.ts'
import type { OcctKernel, StepModel } from '../kernel/open.ts'
import type { StepProgress } from '../kernel/step-model.ts'
import { type FaceFault, FaceFaults } from './part21/face-faults.ts'
import { type Records, recordsOf } from './part21/records.ts'
import { type Structure, structureOf } from './part21/structure.ts'

/** One part of a STEP file, in the axes of its own product. */
export interface StepPart {
  /** Its product's name, with a number where two bodies would have the same. */
  readonly name: string
  readonly solid: SolidKey
  /** How often it stands in the whole. */
  readonly count: number
  /** False: an open shell, without a volume. */
  readonly closed: boolean
}

/** A STEP file as read. All solids are in the kernel's keeping: `freeStepFile` gives them back. */
export interface StepFile {
  /** Name of the assembly, or of the only part. */
  readonly name: string
  /** Unit of length that the file was written in; the solids are in millimetres. */
  readonly unit: Unit
  readonly whole: SolidKey
  readonly parts: readonly StepPart[]
  /** For each solid in place, in the order of the file's structure: its index in `parts`. */
  readonly placed: readonly number[]
}

export interface ReadStep {
  /** Absent where nothing could be read; `marks` says why. */
  readonly file?: StepFile
  readonly marks: readonly Mark[]
}

const SOURCE = 'ISO 10303-21'
const must = (rule: string, text: string, expected: string): Mark => ({
  rule,
  weight: 'must change',
  text,
  expected,
  source: SOURCE,
})

/** True for a text that says of itself that it is a STEP file. */
export const looksLikeStep = (text: string): boolean => /^\s*(?:\/\*[\s\S]*?\*\/\s*)?ISO-10303-21\s*;/.test(text)

/**
 * Reads a STEP file (AP203, AP214, AP242): all its bodies, their products' names, its unit. Never throws on what the
 * text holds: what could not be read is named in a mark and left out.
 */
export function readStepFile(text: string, kernel: OcctKernel, progress?: StepProgress): ReadStep {
  if (!looksLikeStep(text)) {
    const begins = text
      .trimStart()
      .slice(0, 24)
      .replace(/[^\x20-\x7e]/g, '·')
    const found = text.trim() === '' ? 'The file is empty' : `The file begins with “${begins}”`
    return { marks: [must('not-step', `${found}; it is no STEP file.`, 'a file that begins with ISO-10303-21;')] }
  }
  const records = recordsOf(text)
  const marks: Mark[] = []
  const whole = /END-ISO-10303-21\s*;/.test(text)
  if (!whole) marks.push(cutOff(text, records))
  const structure = structureOf(records)
  const faults = faultsOf(structure, records)
  const sound = without(faults, records, whole ? text : `${text.slice(0, records.end)}\nENDSEC;\nEND-ISO-10303-21;\n`)
  let model: StepModel
  try {
    model = kernel.readStepModel(sound, structure.bodies, progress)
  } catch (fault) {
    if (!(fault instanceof KernelError)) throw fault
    return { marks: [...marks, noSolid(records, structure, fault.message)] }
  }
  const file = fileOf(model, structure)
  marks.push(...losses(model, structure, file, faults))
  return { file, marks }
}

/** Gives all solids of the file back to the kernel. */
export function freeStepFile(file: StepFile, kernel: OcctKernel): void {
  for (const part of file.parts) kernel.free(part.solid)
  kernel.free(file.whole)
}

type Faults = ReadonlyMap<number, FaceFault>

function faultsOf(structure: Structure, records: Records): Faults {
  const faces = new FaceFaults(records)
  return new Map(
    structure.bodies.flatMap((body) =>
      body.faces.flatMap(({ id }): [number, FaceFault][] => {
        const fault = faces.of(id)
        return fault ? [[id, fault]] : []
      }),
    ),
  )
}

/** The text with nothing left of faces that cannot be drawn: the kernel would draw some without end. */
function without(faults: Faults, records: Records, text: string): string {
  const spans = [...faults].flatMap(([id, { lost }]) => {
    const span = lost ? records.spanOf(id) : undefined
    return span ? [span] : []
  })
  let out = ''
  let at = 0
  for (const [from, to] of spans.sort((a, b) => a[0] - b[0])) {
    out += `${text.slice(at, from)}ADVANCED_FACE('',(),$,.T.)`
    at = to
  }
  return out + text.slice(at)
}

function cutOff(text: string, records: Records): Mark {
  const line = text.slice(0, records.end).split('\n').length
  return must(
    'step-cut-off',
    `The file is cut off: it ends in line ${line} of its data, after ${records.ids.length} records. What stands before is drawn as far as it goes.`,
    'the whole file, to END-ISO-10303-21;',
  )
}

function noSolid(records: Records, structure: Structure, reason: string): Mark {
  const expected = 'a file with solids: save it again from where it was made as AP203, AP214 or AP242 with solid bodies'
  if (records.ids.length === 0) return must('no-solid', 'The file has no data records.', expected)
  if (structure.bodies.length > 0) {
    const [first] = structure.bodies
    const more = structure.bodies.length > 1 ? ` and ${structure.bodies.length - 1} more` : ''
    return must('no-solid', `${structure.describe(first!.id)}${more} cannot be read: ${reason}.`, expected)
  }
  const kinds = [
    ['TESSELLATED_SOLID', 'triangles only'],
    ['TESSELLATED_SHELL', 'triangles only'],
    ['GEOMETRIC_CURVE_SET', 'curves only'],
    ['GEOMETRICALLY_BOUNDED_WIREFRAME_SHAPE_REPRESENTATION', 'curves only'],
    ['GEOMETRIC_SET', 'loose surfaces and curves only'],
    ['PRODUCT', 'products without a shape'],
  ] as const
  const holds = kinds.find(([name]) => records.named(name).length > 0)?.[1] ?? `${records.ids.length} records`
  return must('no-solid', `The file holds no solid: ${holds}.`, expected)
}

function fileOf(model: StepModel, structure: Structure): StepFile {
  const names = model.bodies.map(({ id }, i) => {
    const product = id === undefined ? undefined : structure.productOf(id)
    return product ?? (model.bodies.length === 1 ? structure.root : undefined) ?? `solid ${i + 1}`
  })
  const parts = model.bodies.map(({ solid, count, closed }, i): StepPart => {
    const same = names.filter((n) => n === names[i])
    const nth = names.slice(0, i + 1).filter((n) => n === names[i]).length
    return { name: same.length > 1 ? `${names[i]} (${nth})` : names[i]!, solid, count, closed }
  })
  const name = model.placed.length === 1 ? parts[0]!.name : (structure.root ?? 'assembly')
  return { name, unit: structure.unit, whole: model.whole, parts, placed: model.placed }
}

/** Named one by one up to this many; the rest is counted. */
const NAMED = 5

function losses(model: StepModel, structure: Structure, file: StepFile, faults: Faults): Mark[] {
  const marks: Mark[] = []
  const told = (id: number) => {
    const fault = faults.get(id)
    return structure.describe(id) + (fault ? ` (${fault.text})` : '')
  }
  const list = (ids: readonly number[]) =>
    ids.slice(0, NAMED).map(told).join('; ') + (ids.length > NAMED ? `; and ${ids.length - NAMED} more` : '')
  if (model.lost.length > 0)
    marks.push(must('body-not-read', `Not read and not drawn: ${list(model.lost)}.`, 'a file with these bodies whole'))
  model.bodies.forEach(({ id, lost, closed }, i) => {
    const { name } = file.parts[i]!
    const faces = structure.bodies.find((b) => b.id === id)?.faces.map((f) => f.id) ?? []
    const torn = faces.filter((face) => faults.get(face)?.lost === false && !lost.includes(face))
    if (torn.length > 0)
      marks.push({
        rule: 'face-border',
        weight: 'look again',
        text: `${name}: ${torn.length === 1 ? '1 face is' : `${torn.length} faces are`} drawn as well as may be: ${list(torn)}.`,
        expected: 'a file in which the border of each face runs round once and closes',
        source: 'ISO 10303-42',
      })
    if (lost.length > 0) {
      const missing = lost.length === 1 ? '1 face' : `${lost.length} faces`
      marks.push(
        must(
          'face-not-read',
          `${name}: ${missing} could not be read and ${lost.length === 1 ? 'is' : 'are'} missing from the drawing: ${list(lost)}.`,
          'a file with these faces whole',
        ),
      )
    } else if (!closed) {
      marks.push(
        must(
          'open-shell',
          `${name} is an open shell, no solid: it has no volume, and what is hidden is drawn as it may.`,
          'a closed solid',
        ),
      )
    }
  })
  return marks
}

/** The part that a number (its place in the whole, from 1) or a product's name asks for; else what could be asked for. */
export function stepPart(file: StepFile, asked: string): StepPart | string {
  const plain = (s: string) => s.trim().toLowerCase()
  const named = file.parts.find((p) => plain(p.name) === plain(asked))
  if (named) return named
  const n = /^\d+$/.test(asked.trim()) ? Number(asked) : Number.NaN
  const place = file.placed[n - 1]
  if (place !== undefined) return file.parts[place]!
  const names = file.parts.map((p) => (p.count > 1 ? `${p.name} (${p.count} of it)` : p.name))
  const numbers = file.placed.length === 1 ? '1' : `a number from 1 to ${file.placed.length}`
  return `There is no solid ${asked} in ${file.name}: expected ${numbers}, or one of ${names.join(', ')}.`
}
