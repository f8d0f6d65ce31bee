import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { onHeader } from '../check/subject.ts'

const root = new URL('../..', import.meta.url).pathname
const bin = join(root, 'bin/sheetwright')
let folder: string
let good: string
let bad: string

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sheetwright-check-'))
  good = join(folder, 'good.brief')
  bad = join(folder, 'bad, "too near".brief')
  const hole = (from: string) =>
    `block     80 × 50 × 30\nhole      top: ⌀12 THRU\n          ${from} from left; centred up`
  writeFileSync(good, onHeader('iso', hole('20')))
  writeFileSync(bad, onHeader('iso', `no approved\n${hole('7')}`))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function run(...args: string[]) {
  const done = spawnSync(process.execPath, [bin, 'check', ...args], { encoding: 'utf8', maxBuffer: 1 << 26 })
  return { code: done.status, out: done.stdout, err: done.stderr }
}

/** Cells of a CSV text by RFC 4180. */
function cells(csv: string): string[][] {
  const rows: string[][] = [[]]
  for (const found of csv.matchAll(/("(?:[^"]|"")*"|[^,\r\n]*)(,|\r\n|$)/g)) {
    const [whole, cell, end] = found
    if (whole === '') break
    rows[rows.length - 1]!.push(cell!.startsWith('"') ? cell!.slice(1, -1).replaceAll('""', '"') : cell!)
    if (end === '\r\n') rows.push([])
  }
  return rows.filter((r) => r.length > 1)
}

describe('check', () => {
  it('is silent and done on a good brief, and fails a build on one that must change', () => {
    const { code, out } = run(good)
    expect(code).toBe(0)
    expect(out).toContain('0 must change, 0 look again, 0 remark')
    const wrong = run(good, bad)
    expect(wrong.code).toBe(1)
    expect(wrong.out).toMatch(/must change: Hole 1 leaves 1 mm of material at the left/)
    expect(wrong.out).toMatch(/rule: hole-near-edge \(Machinery/)
    expect(wrong.out).toContain('or: accept    hole-near-edge at hole 1 (top: ⌀12 THRU) with 12 mm, 1 mm because …')
    expect(wrong.err).toBe('')
  })

  it('gives the same marks as JSON and as CSV', () => {
    const json = JSON.parse(run(good, bad, '--json').out) as Record<string, unknown>[]
    expect(json.map((m) => [m.rule, m.weight])).toEqual([
      ['hole-near-edge', 'must change'],
      ['approval-missing', 'remark'],
    ])
    const [heading, ...rows] = cells(run(good, bad, '--csv').out)
    expect(heading).toEqual(expect.arrayContaining(Object.keys(json[0]!)))
    for (const [i, row] of rows.entries())
      for (const [j, name] of heading!.entries()) expect(row[j], name).toBe(String(json[i]![name] ?? ''))
    expect(rows).toHaveLength(json.length)
    expect(rows[0]![0]).toBe(bad)
  })

  it('with --strict fails on what wants another look', () => {
    const wobbly = join(folder, 'wobbly.brief')
    writeFileSync(wobbly, onHeader('iso', 'note      Remove burrs as required.\nblock     80 × 50 × 30'))
    expect(run(wobbly).code).toBe(0)
    expect(run(wobbly, '--strict').code).toBe(1)
  })

  it('checks the others though one file is missing, and says so by the exit code', () => {
    const { code, out, err } = run(join(folder, 'absent.brief'), good)
    expect(code).toBe(3)
    expect(err).toMatch(/absent\.brief cannot be read/)
    expect(out).toContain('good.brief: 0 must change')
  })

  it('takes one form of output', () => {
    expect(run(good, '--json', '--csv').code).toBe(2)
  })
})
