import type { Brief } from '../brief/brief.ts'
import { frameText } from '../brief/frame/frame.ts'
import { locate } from '../brief/locate.ts'
import type { Mark } from '../brief/mark.ts'
import type { Span } from '../brief/span.ts'
import { envelopesOf } from '../check/measure/form-rule.ts'
import { type FrameCondition, frameConditions } from '../check/measure/frame-conditions.ts'
import { quoted } from '../check/measure/said.ts'
import { isObstacle, type StackUp, stacksOf } from '../check/stack/stack-up.ts'
import type { Part } from '../part/part.ts'
import { withoutSignMarks } from '../sizes/callout/sign-ways.ts'
import type { Dimension } from '../sizes/dimension.ts'
import { describeViews } from '../views/describe.ts'
import { judged } from './checked.ts'
import type { Drawing } from './compile.ts'

/** What the sheet holds and what was found, as plain data. Lengths in mm, volume in mm³, mass in kg, whatever `units` the brief has. */
export interface Report {
  readonly part: string | undefined
  readonly number: string | undefined
  readonly revision: string | undefined
  readonly units: 'inch' | 'mm'
  readonly practice: 'ASME' | 'ISO'
  readonly solid?: {
    readonly volume: number
    readonly area: number
    readonly centreOfGravity: readonly [number, number, number]
    readonly overall: readonly [number, number, number]
    readonly mass: number | undefined
    readonly density: { readonly gPerCm3: number; readonly source: string } | undefined
  }
  readonly sheet?: { readonly format: string; readonly width: number; readonly height: number; readonly scale: string }
  readonly views: ReturnType<typeof describeViews>
  readonly reasons: readonly string[]
  readonly sizes: readonly {
    readonly text: string
    readonly value: number
    readonly tolerance: Dimension['tolerance'] | undefined
    readonly direction: string
    readonly view: string
    readonly reference: boolean
    /** Theoretically exact: boxed, without a tolerance of its own. */
    readonly basic: boolean
    readonly line: number | undefined
  }[]
  /** Datum letters and what they are taken from. */
  readonly datums: readonly { readonly letter: string; readonly feature: string; readonly line: number | undefined }[]
  /** Geometric tolerances, one entry a row of a frame, lengths in mm. */
  /** Features whose size carries Ⓔ: the size of perfect form, and the form left at least material; mm. */
  readonly envelopes: readonly {
    readonly feature: string
    readonly size: string
    readonly at: number
    readonly form: number
    readonly line: number | undefined
  }[]
  readonly frames: readonly (FrameCondition & { readonly text: string; readonly line: number | undefined })[]
  /** What the brief asks sizes to add up to, lengths in mm; `problem` where nothing could be added up. */
  readonly stacks: readonly {
    readonly name: string
    readonly from: string
    readonly to: string
    readonly line: number | undefined
    readonly problem?: string
    readonly way?: string
    readonly nominal?: number
    readonly worstCase?: StackUp['result']['worstCase']
    readonly rootSumSquare?: StackUp['result']['rootSumSquare']
    readonly wanted?: StackUp['wanted']
    readonly method?: StackUp['method']
    readonly keeps?: boolean
    readonly notes?: readonly string[]
  }[]
  readonly proof?: {
    readonly complete: boolean
    readonly sentence: string
    readonly sizes: number
    readonly implied: number
    readonly freedoms: number
    /** Features that share one size because they are drawn in line. */
    readonly levels: readonly string[]
    readonly missing: readonly string[]
    readonly repeated: readonly string[]
  }
  readonly marks: readonly {
    readonly rule: string
    readonly weight: Mark['weight']
    readonly text: string
    readonly expected: string | undefined
    readonly source: string | undefined
    readonly line: number | undefined
    readonly column: number | undefined
    /** Why it was accepted as it is. */
    readonly accepted: string | undefined
  }[]
}

export function reportOn(drawing: Drawing): Report {
  const { brief, part, views, sizes, sheet } = drawing
  // a solid that was read has no text whose lines could be named
  const written = !part || brief.stock !== undefined
  const place = (mark: { span?: { from: number } | undefined }) =>
    mark.span && written ? locate(brief.text, mark.span.from) : undefined
  const built = part && part.body.faces.length > 0 ? part : undefined
  return {
    part: brief.header.part?.text,
    number: brief.header.number?.text,
    revision: brief.header.revision?.text,
    units: brief.header.units,
    practice: brief.header.practice,
    ...(built
      ? {
          solid: {
            volume: built.properties.volume,
            area: built.properties.area,
            centreOfGravity: fromCorner(built.properties.centroid, built.body.box.min),
            overall: overall(built.body.box),
            mass: built.properties.mass,
            density: built.properties.density,
          },
        }
      : {}),
    ...(sheet ? { sheet: { format: sheet.format, width: sheet.width, height: sheet.height, scale: sheet.scale } } : {}),
    views: views ? describeViews(views) : [],
    reasons: views?.reasons ?? [],
    sizes: [
      ...(sizes?.noted ?? []).map(({ span, ...noted }) => ({
        ...noted,
        reference: false,
        basic: false,
        line: place({ span })?.line,
      })),
      ...(sizes?.dimensions ?? []).map((d) => ({
        text: calloutText(d),
        value: d.value,
        tolerance: d.tolerance,
        direction: d.direction,
        view: d.view,
        reference: d.reference,
        basic: d.basic,
        line: place(d)?.line,
      })),
    ],
    datums: (brief.datums ?? []).map((d, i) => ({
      letter: d.letter.text,
      feature: part?.named?.datums[i]?.id ?? d.of.text,
      line: place(d)?.line,
    })),
    envelopes: (part ? envelopesOf(part) : []).map(({ feature, size, at, form }) => ({
      feature,
      size: quoted(size),
      at: Number(at.toFixed(6)),
      form: Number(form.toFixed(6)),
      line: place(size)?.line,
    })),
    frames: part ? framesIn({ brief, part }, (f) => place(f)?.line) : [],
    stacks: part && sizes ? stacksIn({ part, sizes }, (s) => place(s)?.line) : [],
    ...(sizes
      ? {
          proof: {
            complete: sizes.proof.complete,
            sentence: sizes.proof.sentence,
            sizes: sizes.proof.sizes,
            implied: sizes.proof.implied,
            freedoms: sizes.proof.freedoms,
            levels: sizes.proof.levels ?? [],
            missing: sizes.proof.missing.map((m) => m.text),
            repeated: sizes.proof.repeated.map((m) => m.text),
          },
        }
      : {}),
    marks: judged(drawing).map((mark) => ({
      rule: mark.rule,
      weight: mark.weight,
      text: mark.text,
      expected: mark.expected,
      source: mark.source,
      line: place(mark)?.line,
      column: place(mark)?.column,
      accepted: mark.accepted,
    })),
  }
}

function framesIn(
  subject: { readonly brief: Brief; readonly part: Part },
  lineOf: (said: { readonly span: Span }) => number | undefined,
): Report['frames'] {
  const conditions = frameConditions(subject)
  const rows = (subject.brief.frames ?? []).flatMap((said) =>
    frameText(said.frame)
      .split('\n')
      .map((text, i) => ({ text, said, row: said.frame.rows[i]! })),
  )
  return conditions.map((c, i) => ({ ...c, text: rows[i]!.text, line: lineOf(rows[i]!.row) }))
}

function stacksIn(
  drawing: Parameters<typeof stacksOf>[0],
  lineOf: (said: { readonly span: Span }) => number | undefined,
): Report['stacks'] {
  return stacksOf(drawing).map(({ said, up }) => {
    const own = { name: said.name.text, from: said.from.text, to: said.to.text, line: lineOf(said) }
    if (isObstacle(up)) return { ...own, problem: up.text }
    const { way, wanted, method, keeps, notes, result } = up
    const { nominal, worstCase, rootSumSquare } = result
    return { ...own, way, nominal, worstCase, rootSumSquare, wanted, method, keeps, notes }
  })
}

/** A callout on one line, its stacked tolerances written one after the other. */
function calloutText(dimension: Dimension): string {
  const lines = dimension.callout.lines.map((line) =>
    line.map((p) => (typeof p === 'string' ? p : `${p.stack[0]}/${p.stack[1]}`)).join(''),
  )
  return withoutSignMarks(lines.join(' '))
}

/** Counted from the left, front and bottom of the part. */
function fromCorner(point: readonly number[], corner: readonly number[]): [number, number, number] {
  return [point[0]! - corner[0]!, point[1]! - corner[1]!, point[2]! - corner[2]!]
}

function overall(box: { min: readonly number[]; max: readonly number[] }): [number, number, number] {
  return [box.max[0]! - box.min[0]!, box.max[1]! - box.min[1]!, box.max[2]! - box.min[2]!]
}

const INCH = 25.4
const POUND = 0.45359237

/** The report as a person reads it, in the units of the brief. */
export function printReport(report: Report): string {
  const inch = report.units === 'inch'
  const length = (mm: number) => (inch ? `${(mm / INCH).toFixed(3)} in` : `${trimmed(mm, 3)} mm`)
  const lines: string[] = []
  const say = (label: string, value: string | undefined) => {
    if (value !== undefined) lines.push(`${label.padEnd(18)}${value}`)
  }
  say('part', report.part)
  say('number', report.number && report.revision ? `${report.number}  revision ${report.revision}` : report.number)
  say('practice', `${report.practice}, ${report.units}`)
  if (report.solid) {
    const { solid } = report
    say('overall', `${solid.overall.map(length).join(' × ')}  (left-right × front-rear × up-down)`)
    say('volume', inch ? `${(solid.volume / INCH ** 3).toFixed(4)} in³` : `${trimmed(solid.volume / 1000, 4)} cm³`)
    say('surface', inch ? `${(solid.area / INCH ** 2).toFixed(3)} in²` : `${trimmed(solid.area / 100, 3)} cm²`)
    say('centre of gravity', `${solid.centreOfGravity.map(length).join(', ')}  (from left, front, bottom)`)
    if (solid.mass === undefined) say('mass', 'not known: the material has no density in the table')
    else {
      const mass = inch ? `${(solid.mass / POUND).toFixed(3)} lb` : `${trimmed(solid.mass, 4)} kg`
      say('mass', `${mass}  (density ${solid.density!.gPerCm3} g/cm³, ${solid.density!.source})`)
    }
  }
  if (report.sheet) say('sheet', `${report.sheet.format}, scale ${report.sheet.scale}`)
  for (const view of report.views) {
    const line = (kind: string, of: { count: number; length: number }) => `${of.count} ${kind} (${length(of.length)})`
    say(
      'view',
      `${view.id}: ${line('visible', view.visible)}, ${line('hidden', view.hidden)}, ${line('centre', view.centre)}`,
    )
  }
  for (const reason of report.reasons) say('why', reason)
  if (report.proof) {
    say('sizes', report.proof.sentence)
    for (const size of report.sizes) {
      say('  size', `${size.text}  (${size.view} view${size.line === undefined ? '' : `, line ${size.line}`})`)
    }
    for (const d of report.datums)
      say('  datum', `${d.letter}, ${d.feature}${d.line === undefined ? '' : `  (line ${d.line})`}`)
    for (const e of report.envelopes)
      say(
        '  envelope',
        `${e.size}  ${e.feature}: perfect form at ${length(e.at)}, up to ${length(e.form)} out of true at least material${e.line === undefined ? '' : `  (line ${e.line})`}`,
      )
    for (const f of report.frames) say('  frame', frameLine(f, length))
    for (const s of report.stacks) say('  stack', stackLine(s, length))
    for (const level of report.proof.levels) say('  implied', level)
    for (const missing of report.proof.missing) say('  missing', missing)
    for (const repeated of report.proof.repeated) say('  repeated', repeated)
  }
  say('marks', report.marks.length === 0 ? 'none' : undefined)
  for (const mark of report.marks) {
    const at = mark.line === undefined ? '' : `line ${mark.line}, column ${mark.column}: `
    if (mark.accepted !== undefined) say('accepted', `${at}${mark.text} Accepted because ${mark.accepted}`)
    else say('mark', `${mark.weight}: ${at}${mark.text}${mark.expected ? ` Expected ${mark.expected}.` : ''}`)
  }
  return `${lines.join('\n')}\n`
}

/** `⌖ ⌀0.2 Ⓜ A B  hole A: bonus up to 0.36 mm, virtual condition 8.8 mm`. */
function frameLine(f: Report['frames'][number], length: (mm: number) => string): string {
  const { virtualCondition } = f.boundaries ?? {}
  const more = [
    ...(f.material !== 'S' && f.bonus !== undefined ? [`bonus up to ${length(f.bonus)}`] : []),
    ...(virtualCondition === undefined ? [] : [`virtual condition ${length(virtualCondition)}`]),
  ]
  const line = f.line === undefined ? '' : `  (line ${f.line})`
  return `${f.text}  ${f.feature}${more.length > 0 ? `: ${more.join(', ')}` : ''}${line}`
}

/** `web: hole A edge to left, 13 mm; worst case 12.4 mm to 13.6 mm, root-sum-square …; asked min 12 mm, keeps`. */
function stackLine(s: Report['stacks'][number], length: (mm: number) => string): string {
  const line = s.line === undefined ? '' : `  (line ${s.line})`
  if (s.nominal === undefined || !s.worstCase || !s.rootSumSquare || !s.wanted)
    return `${s.name}: ${s.problem ?? 'not added up'}${line}`
  const range = ({ min, max }: { readonly min: number; readonly max: number }) => `${length(min)} to ${length(max)}`
  const asked = [
    ...(s.wanted.min === undefined ? [] : [`min ${length(s.wanted.min)}`]),
    ...(s.wanted.max === undefined ? [] : [`max ${length(s.wanted.max)}`]),
  ]
  const kept =
    asked.length > 0 ? `; asked ${asked.join(', ')}, ${s.keeps ? 'keeps' : 'does not keep'} by ${s.method}` : ''
  return `${s.name}: ${s.from} to ${s.to}, ${length(s.nominal)}; worst case ${range(s.worstCase)}, root-sum-square ${range(s.rootSumSquare)}${kept}${line}`
}

function trimmed(value: number, digits: number): string {
  return String(Number(value.toFixed(digits)))
}
