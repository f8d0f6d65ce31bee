import type { OcctKernel } from '../../kernel/open.ts'
import type { Drawing } from '../compile.ts'
import { printReport, reportOn } from '../report.ts'
import { inBriefUnits, type ReportInUnits } from '../report-units.ts'
import { readArguments } from './arguments.ts'
import type { Console } from './console.ts'
import { eachBrief } from './each-brief.ts'
import type { ExitCode } from './exit-codes.ts'
import { nameOf } from './files.ts'

/** `report`: what each brief comes to, as text or JSON on standard output. */
export function report(args: readonly string[], console: Console) {
  const { files, options } = readArguments('report', args, { json: 'flag', solid: 'text' })
  return async (kernel: OcctKernel): Promise<ExitCode> => {
    const reports: ({ file: string } & ReportInUnits)[] = []
    const tell = async (file: string, drawing: Drawing) => {
      const made = reportOn(drawing)
      if (options.json) reports.push({ file: nameOf(file), ...inBriefUnits(made) })
      else console.out((files.length > 1 ? `== ${nameOf(file)}\n` : '') + printReport(made))
    }
    const solid = typeof options.solid === 'string' ? options.solid : undefined
    const code = await eachBrief(files, kernel, console, tell, solid)
    if (options.json) console.out(`${JSON.stringify(files.length === 1 ? (reports[0] ?? null) : reports, null, 2)}\n`)
    return code
  }
}
