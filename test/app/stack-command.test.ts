import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'

const root = new URL('../..', import.meta.url).pathname
const plate = join(root, 'examples/base-plate.brief')
let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sheetwright-stack-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function run(...args: string[]) {
  const done = spawnSync(process.execPath, [join(root, 'bin/sheetwright'), 'stack', ...args], { encoding: 'utf8' })
  return { code: done.status, out: done.stdout, err: done.stderr }
}

it('shows each size with its line, the three ways of adding up and the chart', () => {
  const { code, out } = run(plate, '--between', 'hole A edge', 'left', '--min', '12', '--to', folder)
  expect(code).toBe(0)
  // By hand, see test/check/stack.test.ts.
  expect(out).toMatch(/19 {2}240 +240 +\+0\.5 +-0\.5 +\+0\.5/)
  expect(out).toMatch(/worst case +12\.4 to 13\.6/)
  expect(out).toMatch(/asked +min 12: keeps by worst case/)
  const chart = readFileSync(join(folder, 'base-plate-between.svg'), 'utf8')
  expect(chart).toMatch(/worst 12\.4/)
  expect(chart.match(/class="grey"/g)!.length).toBeGreaterThan(20)
})

it('simulates in step with the closed form, the same for a seed, and ends with 1 where the limits are not kept', () => {
  const asked = [plate, '--between', 'hole A edge', 'left', '--min', '12.8', '--json', '--seed', '7']
  const [one, two] = [run(...asked), run(...asked)]
  expect(one.code).toBe(1)
  expect(one.out).toBe(two.out)
  const [stack] = JSON.parse(one.out)
  expect(stack.simulated.samples).toBe(1_000_000)
  // Normal law with each limit at three deviations: s = √(0.25² + 0.25² + 0.1²)/3; Φ(−0.2/s) = Φ(−1.6330) = 0.05123 (normal tables).
  const s = Math.hypot(0.25, 0.25, 0.1) / 3
  expect(stack.simulated.deviation).toBeCloseTo(s, 3)
  expect(Math.abs(stack.simulated.below - 0.05124)).toBeLessThan(0.001)
})

it('adds up what the brief states, and reports it', () => {
  const file = join(folder, 'stated.brief')
  writeFileSync(file, `${readFileSync(plate, 'utf8')}\nstack     web: hole A edge to left, min 12\n`)
  expect(run(file).out).toMatch(/^web: hole A edge to left, left-right, mm/)
  const report = spawnSync(process.execPath, [join(root, 'bin/sheetwright'), 'report', file], { encoding: 'utf8' })
  expect(report.stdout).toMatch(/stack +web: hole A edge to left, 13 mm; worst case 12\.4 mm to 13\.6 mm.*keeps/)
})

it.each([
  [['--between', 'left'], 2, /takes two faces/],
  [['--between', 'left', 'right', '--samples', 'many'], 2, /expected a whole number/],
  [['--with', 'other.brief', '--between', 'left', 'right'], 2, /go together/],
  [[], 2, /states no stack/],
  [['--between', 'left', 'lefft'], 1, /did you mean “left”/],
  [['--between', 'left', 'top'], 1, /do not say along which way/],
])('%j is answered in words', (args, code, words) => {
  const { code: ended, err } = run(plate, ...(args as string[]))
  expect(ended).toBe(code)
  expect(err).toMatch(words as RegExp)
  expect(err).not.toMatch(/\n\s+at .*:\d+/)
})
