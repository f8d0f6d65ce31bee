// npm run bench: what a drafter waits for. Medians and spread, with memory; ratios against a baseline in the same run.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { cpus, tmpdir } from 'node:os'
import { join } from 'node:path'
import { compile, type Phase } from '../src/app/compile.ts'
import { openKernel } from '../src/kernel/open.ts'
import { holePlate } from './hole-plate.ts'

const root = new URL('..', import.meta.url).pathname
const bracket = readFileSync(join(root, 'examples/vent-bracket.brief'), 'utf8')

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)]!
}

const ms = (value: number) => value.toFixed(1).padStart(9)

console.log(`node ${process.version}, ${cpus().length} cores\n`)

console.log('cold: draw of the bracket, whole process, start to files (ms)')
const folder = mkdtempSync(join(tmpdir(), 'sheetwright-bench-'))
const bare: number[] = []
const cold: number[] = []
for (let i = 0; i < 7; i++) {
  let start = performance.now()
  spawnSync(process.execPath, ['-e', '0'])
  bare.push(performance.now() - start)
  start = performance.now()
  const run = spawnSync(process.execPath, [
    join(root, 'bin/sheetwright'),
    'draw',
    join(root, 'examples/vent-bracket.brief'),
    '--to',
    folder,
  ])
  cold.push(performance.now() - start)
  if (run.status !== 0) throw new Error(String(run.stderr))
}
rmSync(folder, { recursive: true })
console.log(
  `  median ${ms(median(cold))}   fastest ${ms(Math.min(...cold))}   bare node start ${ms(median(bare))}   (aim 1500)\n`,
)

const kernel = await openKernel()

function warm(name: string, text: string, aim: number, runs: number): void {
  const totals: number[] = []
  const phases: Partial<Record<Phase, number[]>> = {}
  for (let i = 0; i < runs + 3; i++) {
    const start = performance.now()
    const drawing = compile(text, kernel)
    const total = performance.now() - start
    if (!drawing.sheet) throw new Error(`${name}: no sheet`)
    kernel.free(drawing.part!.solid)
    if (i < 3) continue
    totals.push(total)
    for (const [phase, time] of Object.entries(drawing.times)) (phases[phase as Phase] ??= []).push(time)
  }
  const parts = Object.entries(phases).map(([phase, times]) => `${phase} ${median(times).toFixed(1)}`)
  console.log(
    `  ${name.padEnd(24)}${ms(median(totals))}   fastest ${ms(Math.min(...totals))}   (aim ${aim})   ${parts.join(', ')}`,
  )
}

console.log('warm: brief text to Sheet value in one running process (ms)')
warm('bracket', bracket, 60, 25)
warm('plate, 144 holes', holePlate(12, 12), 250, 9)
console.log(`\nmemory: ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB resident`)
