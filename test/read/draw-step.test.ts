import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { main } from '../../src/app/cli/main.ts'

const source = new URL('../data/as1-oc-214.stp', import.meta.url)

let folder: string
let model: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sheetwright-step-'))
  model = join(folder, 'as1.step')
  copyFileSync(source, model)
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('draw a solid model', () => {
  it('writes sheet and report beside it and leaves the model as it is', async () => {
    expect(await main(['draw', model, '--solid', 'rod', '--quiet'])).toBe(0)
    expect(readdirSync(folder).sort()).toEqual(['as1-rod.pdf', 'as1-rod.svg', 'as1-rod.txt', 'as1.step'])
    expect(await main(['draw', model, '--only', 'step,txt', '--quiet'])).toBe(0)
    expect(readFileSync(model).equals(readFileSync(source))).toBe(true)
    expect(readFileSync(join(folder, 'as1-rod.txt'), 'utf8')).toMatch(/sizes +complete: 2 sizes/)
  })

  it('writes one part as a model of its own where that is asked for', async () => {
    const to = join(folder, 'parts')
    expect(await main(['draw', model, '--solid', 'nut', '--only', 'step', '--to', to, '--quiet'])).toBe(0)
    expect(readFileSync(join(to, 'as1-nut.step'), 'utf8')).toMatch(/^ISO-10303-21;/)
  })

  it.each([
    ['empty', '', /^\S+: must change: The file is empty; it is no STEP file\.\n {2}expected: a file that begins with/],
    ['noise', '\u0001\u0002 noise', /^\S+: must change: The file begins with “·· noise”; it is no STEP file\.\n/],
  ])('says of a file that is %s only what is wrong with it, and writes no sheet', async (name, text, words) => {
    const [broken, to] = [join(folder, `${name}.step`), join(folder, name)]
    writeFileSync(broken, text)
    const write = vi.spyOn(process.stderr, 'write').mockReturnValue(true)
    const code = await main(['draw', broken, '--to', to, '--quiet'])
    const said = write.mock.calls.map(([line]) => String(line)).join('')
    write.mockRestore()
    rmSync(broken)
    expect(code).toBe(1)
    expect(said).toMatch(words)
    expect(said.match(/^\S+: /gm)).toHaveLength(1)
    expect(readdirSync(to)).toEqual([`${name}.txt`])
  })

  it('says with its exit code what went wrong', async () => {
    expect(await main(['draw', model, '--solid', 'washer', '--to', folder, '--quiet'])).toBe(1)
    expect(await main(['draw', join(folder, 'none.step'), '--quiet'])).toBe(3)
    const brief = new URL('../../examples/gusset.brief', import.meta.url).pathname
    expect(await main(['draw', brief, '--solid', '1', '--to', folder, '--quiet'])).toBe(2)
  })
})
