import { spawn } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import { existsSync } from 'node:fs'
import { stat } from 'node:fs/promises'
import { basename, dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { isBriefName } from '../server/desk.ts'
import { isLoopback } from '../server/guard.ts'
import { listen } from '../server/page-server.ts'
import { UsageFault } from './arguments.ts'
import type { Console } from './console.ts'
import { EXIT, type ExitCode } from './exit-codes.ts'

const FIRST_PORT = 4180
const MOST_TRIES = 20

interface OpenArguments {
  readonly file: string | undefined
  readonly port: number | undefined
  readonly host: string
  readonly token: string | undefined
  readonly browser: boolean
}

/** `open`: the page, served until it is stopped from the keyboard. */
export async function open(args: readonly string[], console: Console): Promise<ExitCode> {
  const asked = readOpenArguments(args)
  const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))
  const page = here('./page')
  if (!existsSync(`${page}/index.html`)) {
    console.say('The page is not built yet. In the repository, run: npm run build')
    return EXIT.file
  }
  const brief = asked.file === undefined ? undefined : resolve(asked.file)
  if (brief !== undefined) {
    const about = await stat(brief).catch(() => undefined)
    if (!about?.isFile()) {
      console.say(`${asked.file} cannot be opened: ${about ? 'it is no file' : 'no such file'}.`)
      return EXIT.file
    }
    if (!isBriefName(basename(brief))) throw new UsageFault(`open: ${asked.file}: a brief's name ends in .brief.`)
  }
  const token = asked.token ?? (isLoopback(asked.host) ? undefined : randomBytes(18).toString('base64url'))
  const options = {
    page,
    folder: brief ? dirname(brief) : process.cwd(),
    ...(brief ? { open: basename(brief) } : {}),
    examples: here('../examples'),
    host: asked.host,
    ...(token ? { token } : {}),
  }
  const server = await firstFree(asked.port, (port) => listen(options, port))
  if (!server) {
    console.say(`No free port was found${asked.port ? `: ${asked.port} is taken` : ''}. Choose one with --port.`)
    return EXIT.file
  }
  const name = asked.host.includes(':') ? `[${asked.host}]` : asked.host
  const address = `http://${name}:${server.port}/${token ? `?token=${token}` : ''}`
  console.out(`${address}\n`)
  console.say('Stop with Ctrl-C.')
  if (asked.browser) openBrowser(address)
  await new Promise<void>((done) => {
    process.once('SIGINT', () => done())
    process.once('SIGTERM', () => done())
  })
  await server.close()
  return EXIT.done
}

function readOpenArguments(args: readonly string[]): OpenArguments {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        port: { type: 'string' },
        host: { type: 'string' },
        token: { type: 'string' },
        'no-browser': { type: 'boolean' },
      },
    })
    if (positionals.length > 1) throw new UsageFault('open: name one brief, or none.')
    const port = values.port === undefined ? undefined : Number(values.port)
    if (port !== undefined && !(Number.isInteger(port) && port >= 0 && port <= 65535)) {
      throw new UsageFault(`open: --port ${values.port}: expected a number from 0 to 65535.`)
    }
    if (values.token !== undefined && !/^[\w-]{12,}$/.test(values.token)) {
      throw new UsageFault('open: --token: expected at least 12 letters, digits, dashes or underscores.')
    }
    return {
      file: positionals[0],
      port,
      host: values.host ?? '127.0.0.1',
      token: values.token,
      browser: !values['no-browser'],
    }
  } catch (fault) {
    if (fault instanceof UsageFault) throw fault
    throw new UsageFault(
      `open: ${fault instanceof Error ? fault.message.split('. ')[0] : 'unreadable'}. It takes --port, --host, --token, --no-browser.`,
    )
  }
}

/** The asked port, or the first free one from the usual on. */
async function firstFree<T>(port: number | undefined, start: (port: number) => Promise<T>): Promise<T | undefined> {
  const tries = port === undefined ? Array.from({ length: MOST_TRIES }, (_, i) => FIRST_PORT + i) : [port]
  for (const one of tries) {
    try {
      return await start(one)
    } catch (fault) {
      if ((fault as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw fault
    }
  }
  return undefined
}

/** Asks the desktop for its browser; where there is none, the printed address is enough. */
function openBrowser(address: string): void {
  const desktop = process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY
  if (desktop) return
  const [command, ...first] =
    process.platform === 'darwin' ? ['open'] : process.platform === 'win32' ? ['cmd', '/c', 'start', ''] : ['xdg-open']
  const child = spawn(command!, [...first, address], { stdio: 'ignore', detached: true })
  child.on('error', () => {})
  child.unref()
}
