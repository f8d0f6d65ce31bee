import type { Mark } from '../../brief/mark.ts'
import type { OcctKernel } from '../../kernel/open.ts'
import { judged } from '../checked.ts'
import { compile, type Drawing } from '../compile.ts'
import { compileSolidTogether } from '../compile-solid.ts'
import { UsageFault } from './arguments.ts'
import type { Console } from './console.ts'
import { EXIT, type ExitCode, worse } from './exit-codes.ts'
import { FileFault, nameOf, readSource } from './files.ts'
import { viewCrew } from './view-hands.ts'

/**
 * Compiles each brief or solid model in turn and hands it to `use`; a failing file does not stop the others.
 * The solid is freed after `use`. `solid` picks one part of a model.
 * The marks of the phases and the rules are shown and decide about the code, unless `failing` says after `use` which marks do.
 */
export async function eachBrief(
  files: readonly string[],
  kernel: OcctKernel,
  console: Console,
  use: (file: string, drawing: Drawing) => Promise<void>,
  solid?: string,
  failing?: () => readonly Mark[],
): Promise<ExitCode> {
  let code: ExitCode = EXIT.done
  const crew = viewCrew()
  for (const [i, file] of files.entries()) {
    if (files.length > 1) console.progress(`${i + 1} of ${files.length}: ${nameOf(file)}`)
    try {
      const source = await readSource(file)
      if (source.kind === 'brief' && solid !== undefined)
        throw new UsageFault(`--solid picks a part of a solid model; ${nameOf(file)} is a brief.`)
      const drawing =
        source.kind === 'brief'
          ? compile(source.text, kernel)
          : await compileSolidTogether(source.text, kernel, crew, {
              ...(solid === undefined ? {} : { solid }),
              progress: (what) => console.progress(`${nameOf(file)}: ${what}`),
            })
      try {
        const open = failing ? [] : judged(drawing).filter((mark) => mark.accepted === undefined)
        for (const mark of open) console.mark(nameOf(file), drawing.brief.text, mark)
        await use(file, drawing)
        const faults = failing?.() ?? open.filter((mark) => mark.weight === 'must change')
        if (faults.length > 0) code = worse(code, EXIT.marks)
      } finally {
        if (drawing.part) kernel.free(drawing.part.solid)
      }
    } catch (fault) {
      if (fault instanceof UsageFault) throw fault
      if (fault instanceof FileFault) {
        console.say(fault.message)
        code = worse(code, EXIT.file)
      } else {
        console.say(
          `${nameOf(file)}: a fault of the program's own: ${fault instanceof Error ? fault.message : String(fault)}. Please report it with the brief.`,
        )
        if (process.env.SHEETWRIGHT_TRACE) console.say(fault instanceof Error ? (fault.stack ?? '') : String(fault))
        code = worse(code, EXIT.fault)
      }
    }
  }
  crew.close()
  return code
}
