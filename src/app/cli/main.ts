import { readFile } from 'node:fs/promises'
import { UsageFault } from './arguments.ts'
import { type Console, openConsole } from './console.ts'
import { EXIT, type ExitCode } from './exit-codes.ts'
import { COMMAND_HELP, EXIT_HELP, HELP } from './help.ts'

/** Each command is loaded when it is asked for: none waits for another's libraries. */
const JOBS = {
  draw: async () => (await import('./draw.ts')).draw,
  report: async () => (await import('./report.ts')).report,
  check: async () => (await import('./check.ts')).check,
  stack: async () => (await import('./stack.ts')).stack,
  begin: async () => (await import('./begin.ts')).begin,
}

const COMMANDS = ['begin', 'draw', 'report', 'check', 'stack', 'tidy', 'open', 'help']

/** The command line. Arguments without the program's name; returns the exit code. */
export async function main(args: readonly string[]): Promise<ExitCode> {
  const console = openConsole()
  process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
    // The reader of a pipe went away: nobody is left to tell.
    if (fault.code === 'EPIPE') process.exit(EXIT.done)
    throw fault
  })
  try {
    return await run(args, console)
  } catch (fault) {
    if (fault instanceof UsageFault) {
      console.say(`${fault.message}\nTry: sheetwright help`)
      return EXIT.usage
    }
    console.say(`a fault of the program's own: ${fault instanceof Error ? fault.message : String(fault)}`)
    if (process.env.SHEETWRIGHT_TRACE && fault instanceof Error) console.say(fault.stack ?? '')
    return EXIT.fault
  }
}

async function run(args: readonly string[], console: Console): Promise<ExitCode> {
  const [command, ...rest] = args
  const asksHelp = rest.includes('--help') || rest.includes('-h')
  switch (command) {
    case undefined:
    case 'help':
    case '--help':
    case '-h': {
      const topic = rest.find((word) => !word.startsWith('-'))
      if (topic !== undefined && COMMAND_HELP[topic] === undefined) throw unknownCommand(topic)
      console.out(topic === undefined ? `${HELP}\n${EXIT_HELP}` : `${COMMAND_HELP[topic]!}\n${EXIT_HELP}`)
      return command === undefined ? EXIT.usage : EXIT.done
    }
    case '--version': {
      const about = JSON.parse(await readFile(new URL('../package.json', import.meta.url), 'utf8')) as {
        version: string
      }
      console.out(`${about.version}\n`)
      return EXIT.done
    }
    case 'begin':
    case 'draw':
    case 'report':
    case 'check':
    case 'stack': {
      if (asksHelp) return run(['help', command], console)
      const job = (await JOBS[command]())(rest, console)
      const { openKernel } = await import('../../kernel/open.ts')
      return job(await openKernel())
    }
    case 'tidy':
      return asksHelp ? run(['help', 'tidy'], console) : (await import('./tidy.ts')).tidy(rest, console)
    case 'open':
      return asksHelp ? run(['help', 'open'], console) : (await import('./open.ts')).open(rest, console)
    default:
      throw unknownCommand(command)
  }
}

function unknownCommand(word: string): UsageFault {
  return new UsageFault(`${word} is not a command. The commands are ${COMMANDS.join(', ')}.`)
}
