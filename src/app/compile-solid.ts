import type { Brief } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { Body } from '../kernel/body.ts'
import type { OcctKernel } from '../kernel/open.ts'
import type { AssemblyItem, Part } from '../part/part.ts'
import { partFromAssembly, partFromSolid } from '../read/part-from-solid.ts'
import { readStepFile, type StepFile, stepPart } from '../read/step-file.ts'
import { layOut } from '../sheet/lay-out.ts'
import { chooseSizes } from '../sizes/choose-sizes.ts'
import type { SizeSet } from '../sizes/dimension.ts'
import { itemReferences } from '../sizes/item-references.ts'
import { drawViews, type ViewsWatch, watchedProjector } from '../views/draw-views.ts'
import { Stopped } from '../views/exact/watch.ts'
import { FRAMES, ISOMETRIC } from '../views/frames.ts'
import type { Projector } from '../views/projector.ts'
import type { ViewSet } from '../views/view.ts'
import type { Drawing, Phase } from './compile.ts'
import type { Crew } from './crew/crew.ts'
import { overlapMarks } from './overlaps.ts'
import { solidOf } from './solid-of.ts'

export interface SolidOptions {
  /** One part of an assembly, by its place from 1 or its product's name; absent: the whole. */
  readonly solid?: string
  /** Told before each phase, and while the file is read and the views are drawn. */
  readonly progress?: (what: string) => void
  /** Asked before each phase and while the views are drawn; true ends the work by `Stopped`, with nothing kept in the kernel. */
  readonly stop?: () => boolean
  /** Faces from which on a crew draws the views. */
  readonly many?: number
}

/** Runs the phases from the text of a STEP file to the sheet. The solid stays in the kernel until `kernel.free(part.solid)`. */
export function compileSolid(text: string, kernel: OcctKernel, options: SolidOptions = {}): Drawing {
  const read = partFromText(text, kernel, options)
  return 'part' in read ? drawn(read, kernel, options, ownViews(read.part, options)) : read.drawing
}

/** Likewise, with the views of a large solid drawn by a crew of threads ahead of their being asked for. */
export async function compileSolidTogether(
  text: string,
  kernel: OcctKernel,
  crew: Crew,
  options: SolidOptions = {},
): Promise<Drawing> {
  const read = partFromText(text, kernel, options, (file) => {
    // threads start while the kernel reads the faces
    if (file.placed.length >= SEVERAL || text.length >= LONG) crew.muster()
  })
  if (!('part' in read)) return read.drawing
  const { part, times } = read
  const start = performance.now()
  let project = ownViews(part, options)
  if (part.body.faces.length >= (options.many ?? MANY)) {
    try {
      project = await viewsTogether(part, crew, project, options)
    } catch (fault) {
      kernel.free(part.solid)
      throw fault
    }
  }
  const ahead = performance.now() - start
  const drawing = drawn(read, kernel, options, project)
  times.project += ahead
  return drawing
}

/** Solids in place, or characters of a file, from which on there may be `MANY` faces. */
const SEVERAL = 32
const LONG = 1_000_000
/** Faces from which on several threads are sooner done than one: below, they cost more to set to work than they save. */
const MANY = 5000

/** The views that an assembly's and most parts' sheets ask for; the one with most lines in sight first. */
const AHEAD = [ISOMETRIC, FRAMES.front, FRAMES.rear, FRAMES.top, FRAMES.right, FRAMES.left]

async function viewsTogether(part: Part, crew: Crew, own: Projector, { progress, stop }: SolidOptions) {
  progress?.('drawing the views')
  const views = await crew.draw(part.body, AHEAD, {
    ...(stop ? { stop } : {}),
    ...(progress ? { progress: (share) => progress(`drawing the views, ${Math.floor(100 * share)} %`) } : {}),
  })
  const project: Projector = (solid, body, frame) =>
    (body === part.body ? views[AHEAD.indexOf(frame)] : undefined) ?? own(solid, body, frame)
  return project
}

/** A part read from a file, and what is to be said of the file. */
interface ReadPart {
  readonly file: StepFile
  readonly part: Part
  readonly marks: readonly Mark[]
  readonly times: Record<Phase, number>
}

type Timed = <T>(phase: Phase, what: string, run: () => T) => T

function timing(times: Record<Phase, number>, { progress, stop }: SolidOptions): Timed {
  return (phase, what, run) => {
    if (stop?.()) throw new Stopped()
    progress?.(what)
    const start = performance.now()
    const value = run()
    times[phase] += performance.now() - start
    return value
  }
}

function partFromText(
  text: string,
  kernel: OcctKernel,
  options: SolidOptions,
  read: (file: StepFile) => void = () => {},
): ReadPart | { drawing: Drawing } {
  const times: Record<Phase, number> = { read: 0, build: 0, project: 0, size: 0, 'lay out': 0 }
  const timed = timing(times, options)
  const { file, marks } = timed('read', 'reading', () =>
    readStepFile(text, kernel, (done, of) => options.progress?.(`reading, ${done} of ${of}`)),
  )
  if (!file) return { drawing: { brief: NO_BRIEF, marks, times } }
  read(file)
  let part: Part | undefined
  try {
    const made = timed('build', 'recognising features', () => partOf(file, marks, kernel, options))
    if ('rule' in made) return { drawing: { brief: NO_BRIEF, marks: [...marks, made], times } }
    part = made
    return { file, part, marks, times }
  } finally {
    for (const { solid } of file.parts) if (solid !== part?.solid) kernel.free(solid)
    if (file.whole !== part?.solid) kernel.free(file.whole)
  }
}

function drawn(read: ReadPart, kernel: OcctKernel, options: SolidOptions, project: Projector): Drawing {
  try {
    return sheetOf(read, kernel, options, project)
  } catch (fault) {
    kernel.free(read.part.solid)
    throw fault
  }
}

function sheetOf(
  { file, part: made, marks, times }: ReadPart,
  kernel: OcctKernel,
  options: SolidOptions,
  project: Projector,
): Drawing {
  const timed = timing(times, options)
  const views = timed('project', 'drawing the views', () => drawViews(made, kernel, project))
  const single = options.solid !== undefined || file.placed.length === 1
  const { part, sizes } = timed('size', 'choosing sizes', () =>
    single ? independent(made, views) : { part: made, sizes: overallOnly(made, views) },
  )
  const damaged = marks.some((mark) => mark.weight === 'must change')
  const proven = damaged ? unproven(sizes) : sizes
  const laid = timed('lay out', 'laying out the sheet', () => layOut(part, views, proven))
  return {
    brief: part.brief,
    part,
    views,
    sizes: proven,
    sheet: laid.sheet,
    marks: [
      ...part.marks,
      ...(single ? [] : [contentsOf(file)]),
      ...ownMarks([...(views.marks ?? []), ...sizes.marks, ...laid.marks]),
    ],
    times,
  }
}

function ownViews(part: Part, { progress, stop }: SolidOptions): Projector {
  const watch: ViewsWatch = {
    ...(stop ? { stop } : {}),
    ...(progress
      ? { progress: (view, share) => progress(`drawing the ${view} view, ${Math.floor(100 * share)} %`) }
      : {}),
  }
  return watchedProjector(watch, part.body)
}

const NO_BRIEF: Brief = {
  text: '',
  header: { units: 'mm', practice: 'ISO', projection: 'first angle', general: [], notes: [] },
  features: [],
  shows: [],
  places: [],
  schemes: [],
  marks: [],
}

/** What an assembly is made of, and how to draw one part of it. */
function contentsOf(file: StepFile): Mark {
  const parts = file.parts.map((p) => (p.count > 1 ? `${p.count} × ${p.name}` : p.name))
  return {
    rule: 'assembly',
    weight: 'remark',
    text: `${file.name} holds ${file.placed.length} solids: ${parts.join(', ')}. Draw one with --solid and its name.`,
  }
}

/** Sizes of a solid with faces missing prove nothing. */
function unproven(sizes: SizeSet): SizeSet {
  const sentence = 'not complete: the file could not be read whole'
  return { ...sizes, proof: { ...sizes.proof, complete: false, sentence } }
}

const notThere = (text: string): Mark => ({ rule: 'no-such-solid', weight: 'must change', text })

/** Nothing that is made reaches so far, mm: such a solid has a face without an end, or a place that is no number. */
const FAR = 1e9

/** What stands in the way of drawing it at all. */
function notDrawable(name: string, { faces, box }: Body): Mark | undefined {
  const reach = Math.max(...[...box.min, ...box.max].map(Math.abs))
  const fault = faces.length === 0 ? 'has no faces' : reach <= FAR ? undefined : 'reaches further than any part does'
  return fault === undefined
    ? undefined
    : {
        rule: 'no-solid',
        weight: 'must change',
        text: `${name} ${fault}; nothing of it can be drawn.`,
        expected: 'a file with solids: save it again from where it was made as AP203, AP214 or AP242 with solid bodies',
        source: 'ISO 10303-42',
      }
}

function partOf(
  file: StepFile,
  marks: readonly Mark[],
  kernel: OcctKernel,
  { solid: asked, stop }: SolidOptions,
): Part | Mark {
  const one = asked === undefined ? (file.placed.length === 1 ? file.parts[0]! : undefined) : stepPart(file, asked)
  if (typeof one === 'string') return notThere(one)
  const { name, solid } = one ?? { name: file.name, solid: file.whole }
  const hindrance = notDrawable(name, kernel.body(solid))
  if (hindrance) return hindrance
  const read = solidOf(file, { name, solid }, marks, kernel)
  if (one) return partFromSolid(read)
  const items = itemsOf(file, read.body.faces.length, kernel)
  return partFromAssembly({ ...read, marks: [...marks, ...overlapMarks(read.body, items, file.unit, stop)] }, items)
}

/** The parts list. The whole has its faces in the order of its placed solids; open shells may stand elsewhere in it. */
function itemsOf(file: StepFile, all: number, kernel: OcctKernel): AssemblyItem[] {
  const sizes = file.parts.map((part) => kernel.body(part.solid).faces.length)
  let next = 0
  const placed = file.placed.map((part) => {
    const from = next
    next += sizes[part]!
    return { part, faces: Array.from({ length: sizes[part]! }, (_, i) => from + i) }
  })
  const told = next === all && file.parts.every((part) => part.closed)
  return file.parts.map(({ name, count }, i) => ({
    name,
    quantity: count,
    instances: told ? placed.flatMap(({ part, faces }) => (part === i ? [faces] : [])) : [],
  }))
}

/** Measured sizes that fix nothing new are left out, until each fixes something. */
function independent(first: Part, views: ViewSet): { part: Part; sizes: SizeSet } {
  let part = first
  let sizes = chooseSizes(part, views)
  for (let round = 0; round < 4; round++) {
    const idle = new Set(
      sizes.proof.repeated.flatMap(({ dimensions }) => {
        const spans = dimensions.map((id) => sizes.dimensions.find((d) => d.id === id)?.span?.from)
        return spans.filter((from) => part.chosen.some((c) => c.span.from === from && canGo(c)))[0] ?? []
      }),
    )
    if (idle.size === 0) break
    part = { ...part, chosen: part.chosen.filter((c) => !(idle.has(c.span.from) && canGo(c))) }
    sizes = chooseSizes(part, views)
  }
  return { part, sizes }
}

/** A number of a hole's or slot's note belongs to its note. */
const canGo = (chosen: Part['chosen'][number]): boolean =>
  !('role' in chosen && chosen.role) && !['width', 'length', 'depth', 'bolt circle'].includes(chosen.kind)

/** An assembly is drawn with its overall sizes; its parts are sized on sheets of their own. */
function overallOnly(part: Part, views: ViewSet): SizeSet {
  const bare = { ...part, body: { ...part.body, faces: [], edges: [] } }
  const { dimensions } = chooseSizes(bare, views)
  const references = itemReferences(part.items ?? [], views)
  return {
    dimensions,
    tables: [],
    ...(references.length > 0 ? { annotations: references } : {}),
    notes: [],
    marks: [],
    proof: {
      complete: false,
      sizes: dimensions.length,
      implied: 0,
      freedoms: 0,
      missing: [],
      repeated: [],
      sentence: 'not complete: an assembly with its overall sizes; its parts are sized one by one',
    },
  }
}

/** Most marks of one rule that are listed one by one. */
const LISTED = 6

/**
 * Marks about a brief that is not there are left out: every size is measured, none has a tolerance, and no place in a
 * text can be pointed at. Long lists end in a count.
 */
function ownMarks(marks: readonly Mark[]): Mark[] {
  const idle = new Set(['no-tolerance-class', 'size-derived'])
  const seen = new Map<string, number>()
  const kept: Mark[] = []
  for (const { span: _, mends: __, ...mark } of marks.filter((m) => !idle.has(m.rule))) {
    if (kept.some((k) => k.rule === mark.rule && k.text === mark.text)) continue
    const n = (seen.get(mark.rule) ?? 0) + 1
    seen.set(mark.rule, n)
    if (n <= LISTED) kept.push(mark)
  }
  for (const [rule, n] of seen) {
    if (n <= LISTED) continue
    const weight = kept.find((k) => k.rule === rule)!.weight
    kept.push({ rule, weight, text: `${n - LISTED} more marks of the rule ${rule}.` })
  }
  return kept
}
