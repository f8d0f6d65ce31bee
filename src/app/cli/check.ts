import { basename, join } from 'node:path'
import { formatMark } from '../../brief/format-mark.ts'
import { locate } from '../../brief/locate.ts'
import type { Mark, Weight } from '../../brief/mark.ts'
import { acceptanceOf } from '../../check/acceptances.ts'
import { checkPrint } from '../../check/print/check-print.ts'
import type { OcctKernel } from '../../kernel/open.ts'
import { checked } from '../checked.ts'
import type { Drawing } from '../compile.ts'
import { readArguments, UsageFault } from './arguments.ts'
import type { Console } from './console.ts'
import { eachBrief } from './each-brief.ts'
import type { ExitCode } from './exit-codes.ts'
import { nameOf, writeTogether } from './files.ts'

const WEIGHTS: readonly Weight[] = ['must change', 'look again', 'remark']

/** One mark as plain data, for other tools. */
interface Row {
  readonly file: string
  readonly line: number | undefined
  readonly column: number | undefined
  readonly weight: Weight
  readonly rule: string
  readonly text: string
  readonly expected: string | undefined
  readonly source: string | undefined
  readonly feature: string | undefined
  readonly accepted: string | undefined
  /** The statement that would accept it. */
  readonly accept: string | undefined
}

const COLUMNS: readonly (keyof Row)[] = [
  'file',
  'line',
  'column',
  'weight',
  'rule',
  'text',
  'expected',
  'source',
  'feature',
  'accepted',
  'accept',
]

/** `check`: the marks of every phase and rule for each brief, and an exit code that a build server can go by. */
export function check(args: readonly string[], console: Console) {
  const { files, options } = readArguments('check', args, { json: 'flag', csv: 'flag', strict: 'flag', to: 'text' })
  if (options.json && options.csv) throw new UsageFault('check: --json or --csv, not both.')
  return async (kernel: OcctKernel): Promise<ExitCode> => {
    const rows: Row[] = []
    let marks: readonly Mark[] = []
    const code = await eachBrief(
      files,
      kernel,
      console,
      async (file, drawing) => {
        marks = checked(drawing)
        if (typeof options.to === 'string') await writePrint(options.to, file, drawing, marks, console)
        if (options.json || options.csv) rows.push(...marks.map((m) => rowOf(nameOf(file), drawing, m)))
        else console.out(printed(nameOf(file), drawing, marks))
      },
      undefined,
      () => marks.filter((m) => m.weight === 'must change' || (options.strict && m.weight === 'look again')),
    )
    if (options.json) console.out(`${JSON.stringify(rows, null, 2)}\n`)
    if (options.csv) console.out(asCsv(rows))
    return code
  }
}

/** The check print beside the others in the folder: `NAME-check.pdf`. */
async function writePrint(to: string, file: string, drawing: Drawing, marks: readonly Mark[], console: Console) {
  const { brief, part, sheet, sizes } = drawing
  if (!part || !sheet || !sizes) {
    console.say(`${nameOf(file)}: no sheet could be drawn, and so there is no check print.`)
    return
  }
  const name = file === '-' ? 'drawing' : basename(file).replace(/\.[^.]*$/, '')
  const { writePdf } = await import('../../write/pdf.ts')
  const content = await writePdf(checkPrint({ brief, part, sheet, sizes }, marks))
  await writeTogether([{ path: join(to, `${name}-check.pdf`), content }])
}

function rowOf(file: string, { brief }: Drawing, mark: Mark): Row {
  const place = mark.span && locate(brief.text, mark.span.from)
  return {
    file,
    line: place?.line,
    column: place?.column,
    weight: mark.weight,
    rule: mark.rule,
    text: mark.text,
    expected: mark.expected,
    source: mark.source,
    feature: mark.feature,
    accepted: mark.accepted,
    accept: mark.accepted === undefined ? acceptanceOf(mark, brief, '…') : undefined,
  }
}

function printed(file: string, { brief }: Drawing, marks: readonly Mark[]): string {
  const open = marks.filter((m) => m.accepted === undefined)
  const count = WEIGHTS.map((w) => `${open.filter((m) => m.weight === w).length} ${w}`)
  const accepted = marks.length - open.length
  const rows = [`${file}: ${count.join(', ')}${accepted > 0 ? `, ${accepted} accepted` : ''}`]
  for (const mark of marks) {
    rows.push('', formatMark(brief.text, mark), `  rule: ${mark.rule}${mark.source ? ` (${mark.source})` : ''}`)
    if (mark.accepted !== undefined) rows.push(`  accepted because ${mark.accepted}`)
    else {
      const statement = acceptanceOf(mark, brief, '…')
      if (statement) rows.push(`  or: ${statement}`)
    }
  }
  return `${rows.join('\n')}\n\n`
}

/** RFC 4180: a cell with a comma, a quotation mark or a line end stands in quotation marks. */
function asCsv(rows: readonly Row[]): string {
  const cell = (value: string | number | undefined) => {
    const text = value === undefined ? '' : String(value)
    // A spreadsheet would take these for formulas.
    const safe = /^[=+\-@]/.test(text) ? `'${text}` : text
    return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
  }
  return `${[COLUMNS.join(','), ...rows.map((row) => COLUMNS.map((c) => cell(row[c])).join(','))].join('\r\n')}\r\n`
}
