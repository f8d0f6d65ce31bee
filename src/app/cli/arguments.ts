import { parseArgs } from 'node:util'

/** A command line that cannot be followed, in words. */
export class UsageFault extends Error {}

export type Options = Readonly<Record<string, string | boolean | undefined>>

/** Splits a command's arguments into files and options. Throws UsageFault. */
export function readArguments(
  command: string,
  args: readonly string[],
  known: Readonly<Record<string, 'text' | 'flag'>>,
): { files: string[]; options: Options } {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      strict: true,
      options: Object.fromEntries(
        Object.entries(known).map(([name, kind]) => [name, { type: kind === 'text' ? 'string' : 'boolean' } as const]),
      ),
    })
    if (positionals.length === 0) throw new UsageFault(`${command}: name a brief, or - for standard input.`)
    if (positionals.filter((p) => p === '-').length > 1)
      throw new UsageFault(`${command}: standard input (-) can be read once.`)
    return { files: positionals, options: values as Options }
  } catch (fault) {
    if (fault instanceof UsageFault) throw fault
    const code = (fault as NodeJS.ErrnoException).code
    if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION' || code === 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE') {
      const options = Object.keys(known).map((name) => `--${name}`)
      throw new UsageFault(`${command}: ${firstSentence(fault)} It takes ${options.join(', ') || 'no option'}.`)
    }
    throw fault
  }
}

function firstSentence(fault: unknown): string {
  const text = fault instanceof Error ? fault.message : String(fault)
  return `${text.split(/[.\n]/)[0]!}.`
}
