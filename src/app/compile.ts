import type { Brief } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import { readBrief } from '../brief/read.ts'
import { withAcceptances } from '../check/acceptances.ts'
import { checkDrawing } from '../check/check-drawing.ts'
import type { OcctKernel } from '../kernel/open.ts'
import { buildPart } from '../part/build.ts'
import type { Part } from '../part/part.ts'
import { layOut } from '../sheet/lay-out.ts'
import { mustChange } from '../sheet/must-change.ts'
import type { Sheet } from '../sheet/sheet.ts'
import { chooseSizes } from '../sizes/choose-sizes.ts'
import type { SizeSet } from '../sizes/dimension.ts'
import { drawViews, watchedProjector } from '../views/draw-views.ts'
import { Stopped } from '../views/exact/watch.ts'
import type { ViewSet } from '../views/view.ts'
import { withCauses } from './waiting.ts'

/** Everything a brief yields. Later values are absent where an earlier one could not be derived; `marks` says why. */
export interface Drawing {
  readonly brief: Brief
  readonly part?: Part
  readonly views?: ViewSet
  readonly sizes?: SizeSet
  readonly sheet?: Sheet
  /** The marks of all phases, in the order of the brief's text. */
  readonly marks: readonly Mark[]
  /** What the checker's rules find before the sheet is laid out; absent where nothing could be sized. */
  readonly found?: readonly Mark[]
  /** Milliseconds by phase, and of the rules that are asked before the sheet. */
  readonly times: Readonly<Record<Phase, number> & { readonly check?: number }>
}

export interface CompileOptions {
  /** Asked before each phase and while the views are drawn; true ends the work by `Stopped`, with nothing kept in the kernel. */
  readonly stop?: () => boolean
  /**
   * Lays the sheet out with the stamp, or without, before the rules are asked: `settled` asks them afterwards. Absent:
   * they are asked first.
   */
  readonly sentBack?: boolean | undefined
}

export type Phase = 'read' | 'build' | 'project' | 'size' | 'lay out'

/** Runs the phases from brief text to sheet. The solid stays in the kernel until `kernel.free(part.solid)`. */
export function compile(text: string, kernel: OcctKernel, options: CompileOptions = {}): Drawing {
  const { stop = () => false } = options
  const times: Record<Phase | 'check', number> = { read: 0, build: 0, project: 0, size: 0, check: 0, 'lay out': 0 }
  const timed = <T>(phase: Phase | 'check', run: () => T): T => {
    if (stop()) throw new Stopped()
    const start = performance.now()
    const value = run()
    times[phase] = performance.now() - start
    return value
  }
  const brief = timed('read', () => readBrief(text))
  if (!brief.stock) return { brief, marks: inOrder(brief.marks), times }
  const part = timed('build', () => buildPart(brief, kernel))
  if (part.body.faces.length === 0) return { brief, part, marks: allMarks(text, brief.marks, part.marks), times }
  try {
    const views = timed('project', () => drawViews(part, kernel, watchedProjector({ stop }, part.body)))
    const sizes = timed('size', () => chooseSizes(part, views))
    // Before the sheet: one that the rules send back is stamped, and must be laid out with the stamp.
    const found =
      options.sentBack === undefined ? timed('check', () => checkDrawing({ brief, part, views, sizes })) : undefined
    const sentBack = found ? isSentBack(brief, found) : options.sentBack === true
    const { sheet, marks } = timed('lay out', () => layOut(part, views, sizes, sentBack))
    return {
      brief,
      part,
      views,
      sizes,
      sheet,
      marks: allMarks(text, brief.marks, part.marks, views.marks, sizes.marks, marks),
      ...(found ? { found } : {}),
      times,
    }
  } catch (fault) {
    kernel.free(part.solid)
    throw fault
  }
}

const isSentBack = (brief: Brief, found: readonly Mark[]): boolean => mustChange(withAcceptances(brief, found))

/** The drawing once the rules have been asked: its sheet laid out again where it was `laid` with the wrong stamp. */
export function settled(drawing: Drawing, laid: boolean): { readonly drawing: Drawing; readonly sentBack: boolean } {
  const { brief, part, views, sizes } = drawing
  if (!part || !views || !sizes || drawing.found) return { drawing, sentBack: laid }
  const found = checkDrawing({ brief, part, views, sizes })
  const sentBack = isSentBack(brief, found)
  if (sentBack === laid) return { drawing: { ...drawing, found }, sentBack }
  const { sheet, marks } = layOut(part, views, sizes, sentBack)
  const all = allMarks(brief.text, brief.marks, part.marks, views.marks, sizes.marks, marks)
  return { drawing: { ...drawing, sheet, marks: all, found }, sentBack }
}

/** The marks of the phases, where one waits for another with its cause. */
const allMarks = (text: string, ...phases: readonly (readonly Mark[] | undefined)[]): Mark[] =>
  inOrder(
    withCauses(
      text,
      phases.flatMap((marks) => marks ?? []),
    ),
  )

/** By place in the brief; marks without a place last. Equal marks once. */
export function inOrder(marks: readonly Mark[]): Mark[] {
  const seen = new Set<string>()
  return marks
    .filter((mark) => {
      const key = `${mark.rule} ${mark.span?.from} ${mark.span?.to} ${mark.text}`
      return !seen.has(key) && seen.add(key)
    })
    .sort((a, b) => (a.span?.from ?? Infinity) - (b.span?.from ?? Infinity) || 0)
}
