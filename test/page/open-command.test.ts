import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, afterEach, expect, it } from 'vitest'

const running: ChildProcess[] = []
const folder = mkdtempSync(join(tmpdir(), 'sheetwright-open-'))
afterEach(() => {
  for (const child of running.splice(0)) child.kill('SIGKILL')
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** Starts the command; `first` is the first line it prints, `end` its exit code and what it said. */
function open(...args: string[]) {
  const child = spawn(resolve('bin/sheetwright'), ['open', ...args, '--no-browser'], { cwd: folder })
  running.push(child)
  let said = ''
  child.stderr.on('data', (piece) => (said += String(piece)))
  const first = new Promise<string>((done) => child.stdout.once('data', (piece) => done(String(piece).trim())))
  const end = new Promise<{ code: number | null; said: string }>((done) =>
    child.on('exit', (code) => done({ code, said })),
  )
  return { child, first, end }
}

it('opens a brief, prints its address and stops at Ctrl-C', async () => {
  writeFileSync(join(folder, 'a.brief'), 'part  A\n')
  const { child, first, end } = open('a.brief', '--port', '0')
  const address = await first
  expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/)
  expect(await (await fetch(address)).text()).toContain('<title>Sheetwright</title>')
  expect(await (await fetch(`${address}api/desk`)).json()).toMatchObject({ open: 'a.brief' })
  child.kill('SIGINT')
  expect((await end).code).toBe(0)
})

it('asks for a token beyond this machine', async () => {
  const { first } = open('--host', '0.0.0.0', '--port', '0')
  const address = new URL((await first).replace('0.0.0.0', '127.0.0.1'))
  expect(address.searchParams.get('token')).toMatch(/^[\w-]{20,}$/)
  expect((await fetch(address, { redirect: 'manual' })).status).toBe(302)
  expect((await fetch(new URL('/', address))).status).toBe(403)
})

it.each([
  [['missing.brief'], 3, 'no such file'],
  [['--port', 'high'], 2, 'a number from 0 to 65535'],
  [['--host', '0.0.0.0', '--token', 'short'], 2, 'at least 12'],
  [['--loud'], 2, 'It takes --port'],
] as const)('says what is wrong with %j', async (args, code, words) => {
  const ended = await open(...args).end
  expect(ended.said).toContain(words)
  expect(ended.code).toBe(code)
})
