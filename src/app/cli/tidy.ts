import { printBrief } from '../../brief/print.ts'
import { readBrief } from '../../brief/read.ts'
import { readArguments, UsageFault } from './arguments.ts'
import type { Console } from './console.ts'
import { EXIT, type ExitCode, worse } from './exit-codes.ts'
import { FileFault, nameOf, readText, writeTogether } from './files.ts'

/** `tidy`: each brief in canonical form. A brief with words that cannot be read is left as it is. */
export async function tidy(args: readonly string[], console: Console): Promise<ExitCode> {
  const { files, options } = readArguments('tidy', args, { write: 'flag', check: 'flag' })
  if (options.write && options.check) throw new UsageFault('tidy: --write and --check exclude each other.')
  if (options.write && files.includes('-')) throw new UsageFault('tidy: --write needs a file; standard input has none.')
  let code: ExitCode = EXIT.done
  for (const file of files) {
    try {
      const text = await readText(file)
      const brief = readBrief(text)
      for (const mark of brief.marks) console.mark(nameOf(file), text, mark)
      if (brief.marks.some((mark) => mark.weight === 'must change')) {
        console.say(`${nameOf(file)}: not tidied, so that nothing that was not understood is lost.`)
        code = worse(code, EXIT.marks)
        continue
      }
      const tidied = printBrief(brief)
      if (options.check) {
        if (tidied !== text) {
          console.say(`${nameOf(file)}: not tidy.`)
          code = worse(code, EXIT.marks)
        }
      } else if (options.write) {
        if (tidied !== text) await writeTogether([{ path: file, content: tidied }])
      } else console.out(tidied)
    } catch (fault) {
      if (!(fault instanceof FileFault)) throw fault
      console.say(fault.message)
      code = worse(code, EXIT.file)
    }
  }
  return code
}
