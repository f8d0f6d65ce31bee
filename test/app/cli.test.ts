import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const root = new URL('../..', import.meta.url).pathname
const bin = join(root, 'bin/sheetwright')
const bracket = join(root, 'examples/vent-bracket.brief')
let folder: string

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sheetwright-cli-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** Exit code of an ended process as a shell gives it: 128 and the signal's number (POSIX.1-2017, Shell 2.8.2; SIGINT is 2). */
const endOf = (child: ChildProcess): Promise<number | null> =>
  new Promise((resolve) => child.on('exit', (code, signal) => resolve(signal === 'SIGINT' ? 130 : code)))

function run(args: string[], input?: string | Uint8Array) {
  const done = spawnSync(process.execPath, [bin, ...args], { input, encoding: 'utf8', maxBuffer: 1 << 26 })
  return { code: done.status, out: done.stdout, err: done.stderr }
}

/** A message for a person never shows the inside of the program. */
function expectNoStack(text: string) {
  expect(text).not.toMatch(/\n\s+at .*:\d+/)
}

describe('draw', () => {
  it('writes sheet, solid and report beside each other and nothing else', () => {
    const to = join(folder, 'one')
    const { code, err } = run(['draw', bracket, '--to', to])
    expect(err).not.toMatch(/must change/)
    expect(code).toBe(0)
    expect(readdirSync(to).sort()).toEqual([
      'vent-bracket.pdf',
      'vent-bracket.step',
      'vent-bracket.svg',
      'vent-bracket.txt',
    ])
  })

  it('gives the same bytes for the same brief', () => {
    const [a, b] = ['same-a', 'same-b'].map((name) => join(folder, name))
    run(['draw', bracket, '--to', a!])
    run(['draw', bracket, '--to', b!])
    for (const file of readdirSync(a!))
      expect(readFileSync(join(a!, file)).equals(readFileSync(join(b!, file))), file).toBe(true)
  })

  it('draws the good files though one is missing, one is noise and one is not text', () => {
    const to = join(folder, 'many')
    const noise = join(folder, 'noise.brief')
    const utf16 = join(folder, 'utf16.brief')
    writeFileSync(noise, 'qwx ]] 77 ⌀⌀ %% plate\n')
    writeFileSync(utf16, Buffer.from('\ufeffpart Clip\n', 'utf16le'))
    const { code, err } = run(['draw', join(folder, 'absent.brief'), noise, utf16, bracket, '--to', to])
    expect(code).toBe(3)
    expect(err).toMatch(/absent\.brief cannot be read: no such file/)
    expect(err).toMatch(/utf16\.brief is not UTF-8 text \(it looks like UTF-16\)/)
    expect(err).toMatch(/noise\.brief: line 1, column 1: must change/)
    expectNoStack(err)
    expect(readdirSync(to)).toContain('vent-bracket.pdf')
  })

  it('reads a brief from standard input and names it by its number', () => {
    const to = join(folder, 'stdin')
    const { code } = run(['draw', '-', '--to', to, '--only', 'svg'], readFileSync(bracket))
    expect(code).toBe(0)
    expect(readdirSync(to)).toHaveLength(1)
    expect(readdirSync(to)[0]).toMatch(/\.svg$/)
  })

  it('refuses two briefs that would write the same file', () => {
    const twin = join(folder, 'twin')
    cpSync(bracket, join(twin, 'vent-bracket.brief'))
    const { code, err } = run(['draw', bracket, join(twin, 'vent-bracket.brief'), '--to', folder])
    expect(code).toBe(2)
    expect(err).toMatch(/would both write/)
  })

  it('leaves no half-written file where it cannot write', () => {
    const blocked = join(folder, 'blocked')
    writeFileSync(blocked, 'a file where a folder should be')
    const { code, err } = run(['draw', bracket, '--to', blocked])
    expect(code).toBe(3)
    expect(err).toMatch(/cannot be written/)
    expectNoStack(err)
    expect(readFileSync(blocked, 'utf8')).toBe('a file where a folder should be')
  })

  it('answers ten megabytes of noise at once', () => {
    const noise = Buffer.alloc(10 * 1024 * 1024, 'plate ⌀ 4X ~~ \n')
    const { code, err } = run(['draw', '-', '--to', folder], noise)
    expect(code).toBe(3)
    expect(err).toMatch(/too large to be a brief/)
  })

  it('stops from the keyboard with nothing half-written', async () => {
    const to = join(folder, 'stopped')
    const copies = Array.from({ length: 40 }, (_, i) => {
      const copy = join(folder, 'copies', `copy-${i}.brief`)
      cpSync(bracket, copy)
      return copy
    })
    const child = spawn(process.execPath, [bin, 'draw', ...copies, '--to', to], { stdio: ['ignore', 'ignore', 'pipe'] })
    child.stderr.once('data', () => child.kill('SIGINT'))
    expect(await endOf(child)).toBe(130)
    const files = readdirSync(to)
    expect(files.filter((f) => f.endsWith('.part'))).toEqual([])
    expect(files.length).toBeLessThan(160)
    expect(files.length % 4).toBe(0)
  })
})

describe('draw an assembly', () => {
  const model = join(root, 'test/data/as1-oc-214.stp')

  // Wherever it is: the kernel loading, the file being read, lines being drawn, files being written.
  it('stops from the keyboard at any time, with nothing half-written', async () => {
    const start = performance.now()
    run(['draw', model, '--to', join(folder, 'assembly-whole'), '--quiet'])
    const whole = performance.now() - start
    const ends: (number | null)[] = []
    for (let sixth = 0; sixth < 6; sixth++) {
      const to = join(folder, `assembly-${sixth}`)
      const child = spawn(process.execPath, [bin, 'draw', model, '--to', to], { stdio: ['ignore', 'ignore', 'pipe'] })
      let err = ''
      child.stderr.on('data', (piece) => {
        err += piece
      })
      setTimeout(() => child.kill('SIGINT'), Math.max(50, (sixth / 6) * whole))
      const end = await endOf(child)
      expectNoStack(err)
      const files = existsSync(to) ? readdirSync(to) : []
      expect(files.filter((f) => f.endsWith('.part'))).toEqual([])
      // sheet twice and report: the model itself is not written again
      if (end === 0) expect(files.length).toBe(3)
      else expect([0, 3]).toContain(files.length)
      ends.push(end)
    }
    expect(ends.filter((end) => end !== 0 && end !== 130)).toEqual([])
    expect(ends.slice(0, 2)).toEqual([130, 130])
  }, 60_000)

  it('says nothing of its progress where nobody watches', () => {
    const { err } = run(['draw', model, '--to', join(folder, 'quiet'), '--quiet', '--only', 'txt'])
    expect(err).not.toMatch(/\r|%|reading/)
  })
})

describe('report', () => {
  it('gives one object as JSON for one brief and a list for several', () => {
    const one = JSON.parse(run(['report', bracket, '--json']).out)
    expect(one).toMatchObject({ units: 'inch', practice: 'ASME' })
    expect(one.solid.volume).toBeGreaterThan(0)
    expect(one.views.length).toBeGreaterThanOrEqual(3)
    const two = JSON.parse(run(['report', bracket, join(root, 'examples/base-plate.brief'), '--json']).out)
    expect(two.map((r: { file: string }) => r.file)).toEqual([bracket, join(root, 'examples/base-plate.brief')])
  })

  it('prints the same facts for a person', () => {
    const { out, code } = run(['report', bracket])
    expect(code).toBe(0)
    expect(out).toMatch(/^overall +\d+\.\d{3} in × /m)
    expect(out).toMatch(/^mass +\d/m)
  })
})

describe('tidy', () => {
  it('prints a canonical form that is its own canonical form', () => {
    const first = run(['tidy', bracket])
    expect(first.code).toBe(0)
    expect(run(['tidy', '-'], first.out).out).toBe(first.out)
  })

  it('leaves a brief alone that it does not understand', () => {
    const file = join(folder, 'odd.brief')
    writeFileSync(file, 'part Clip\nfrobnicate 12\n')
    const { code } = run(['tidy', '--write', file])
    expect(code).toBe(1)
    expect(readFileSync(file, 'utf8')).toBe('part Clip\nfrobnicate 12\n')
  })
})

describe('begin', () => {
  it('writes a brief from a model that draws, and never over one that is there', () => {
    const [to, out] = [join(folder, 'begun'), join(folder, 'begun-out')]
    expect(run(['draw', bracket, '--to', to, '--only', 'step']).code).toBe(0)
    const model = join(to, 'vent-bracket.step')
    const first = run(['begin', model])
    expect(first).toMatchObject({ code: 0, out: '' })
    expect(first.err).toMatch(/vent-bracket\.brief: It builds the model again/)
    const brief = join(to, 'vent-bracket.brief')
    expect(run(['draw', brief, '--to', out]).err).toMatch(/14 sizes, complete/)

    writeFileSync(brief, 'part  Mine\n')
    const again = run(['begin', model])
    expect(again.code).toBe(3)
    expect(again.err).toMatch(/is there already and is left as it is/)
    expect(readFileSync(brief, 'utf8')).toBe('part  Mine\n')
    expect(run(['begin', model, '--print']).out).toMatch(/^# Begun from vent-bracket\.step/)
  })

  it('says so of a file that is no model', () => {
    const { code, err } = run(['begin', bracket])
    expect(code).toBe(3)
    expect(err).toMatch(/is a brief already, or no solid model/)
    expectNoStack(err)
  })
})

describe('the command line itself', () => {
  it('teaches', () => {
    expect(run(['--help'])).toMatchObject({ code: 0 })
    expect(run(['--help']).out).toMatch(/sheetwright draw BRIEF/)
    expect(run(['draw', '--help']).out).toMatch(/--to FOLDER/)
    expect(run(['help', 'report']).out).toMatch(/Exit codes/)
  })

  it('shows in its help a brief that draws', () => {
    const sample = run(['--help'])
      .out.split('\n')
      .filter((line) => /^ {2}(part|number|units|practice|material|general|plate|holes| {8})/.test(line))
    const { code, err } = run(['report', '-'], sample.map((line) => line.slice(2)).join('\n'))
    expect(err).not.toMatch(/must change/)
    expect(code).toBe(0)
  })

  it.each([
    [['drw', 'x'], /drw is not a command/],
    [['draw'], /name a brief/],
    [['draw', '--onto', 'x', 'y'], /It takes --to, --only, --solid, --quiet/],
    [['draw', bracket, '--only', 'gif'], /expected some of pdf,svg,step,txt/],
    [['report', '-', '-'], /read once/],
    [[], /sheetwright draw/],
  ])('refuses %j with exit code 2', (args, message) => {
    const { code, err, out } = run(args as string[])
    expect(code).toBe(2)
    expect(err + out).toMatch(message)
    expectNoStack(err)
  })
})
