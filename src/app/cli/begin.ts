import { stat } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import type { OcctKernel } from '../../kernel/open.ts'
import { beginBrief } from '../begin.ts'
import { fileNameOf, notADevice } from '../file-name.ts'
import { readArguments } from './arguments.ts'
import type { Console } from './console.ts'
import { EXIT, type ExitCode, worse } from './exit-codes.ts'
import { FileFault, nameOf, readSource, writeTogether } from './files.ts'

/** `begin`: the first lines of a brief, from a solid model. */
export function begin(args: readonly string[], console: Console) {
  const { files, options } = readArguments('begin', args, { to: 'text', solid: 'text', print: 'flag' })
  return async (kernel: OcctKernel): Promise<ExitCode> => {
    let code: ExitCode = EXIT.done
    for (const file of files) {
      try {
        const source = await readSource(file)
        if (source.kind === 'brief') throw new FileFault(`${nameOf(file)} is a brief already, or no solid model.`)
        console.progress(`${nameOf(file)}: recognising features`)
        const solid = typeof options.solid === 'string' ? options.solid : undefined
        const begun = beginBrief(source.text, file === '-' ? 'a model' : basename(file), kernel, solid)
        for (const mark of begun.marks) console.mark(nameOf(file), '', mark)
        if (begun.text === undefined) code = worse(code, EXIT.marks)
        else if (options.print) console.out(begun.text)
        else {
          const path = pathFor(file, typeof options.to === 'string' ? options.to : undefined, solid)
          await keepWhatStands(path)
          await writeTogether([{ path, content: begun.text }])
          console.say(`${path}: ${begun.sentence}`)
        }
      } catch (fault) {
        if (!(fault instanceof FileFault)) throw fault
        console.say(fault.message)
        code = worse(code, EXIT.file)
      }
    }
    return code
  }
}

function pathFor(file: string, to: string | undefined, solid: string | undefined): string {
  const stem = file === '-' ? 'part' : notADevice(basename(file).replace(/\.[^.]*$/, ''))
  const name = solid === undefined ? stem : `${stem}-${fileNameOf(solid)}`
  return join(to ?? (file === '-' ? '.' : dirname(file)), `${name}.brief`)
}

/** A brief that a drafter may have gone on with is never written over. */
async function keepWhatStands(path: string): Promise<void> {
  const there = await stat(path).catch(() => undefined)
  if (there)
    throw new FileFault(
      `${path} is there already and is left as it is. Name another folder with --to, or see it with --print.`,
    )
}
