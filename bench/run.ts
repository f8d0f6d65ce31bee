// npm run bench: what a drafter waits for. Medians, fastest, processor time and memory, and ratios to a baseline that runs
// in between: figures of different machines and loads can then be held against each other.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { cpus, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import { compile, type Phase } from '../src/app/compile.ts'
import { openKernel } from '../src/kernel/open.ts'
import { placeDimensions } from '../src/sheet/placement/place-dimensions.ts'
import { writeStep } from '../src/write/step.ts'
import { field, plateOfHoles } from '../test/sheet/placement/fixtures.ts'
import { holePlate } from './hole-plate.ts'

const root = new URL('..', import.meta.url).pathname
const bracketFile = join(root, 'examples/vent-bracket.brief')
const bracket = readFileSync(bracketFile, 'utf8')

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)]!
}

const load = () => loadavg()[0]!.toFixed(1)
const ms = (value: number) => value.toFixed(1).padStart(8)

/** One line: wall-clock times, what the processor did meanwhile, and the ratio to the baseline. */
function tell(
  name: string,
  aim: number,
  wall: readonly number[],
  cpu: readonly number[],
  base: readonly number[],
): void {
  console.log(
    `  ${name.padEnd(22)} median${ms(median(wall))}  fastest${ms(Math.min(...wall))}  processor${ms(median(cpu))}` +
      `  of baseline${ms(median(wall) / median(base))}  (aim ${aim})`,
  )
}

console.log(`node ${process.version}, ${cpus().length} processors, load ${load()}\n`)
const folder = mkdtempSync(join(tmpdir(), 'sheetwright-bench-'))

/** Tells the bench, on its way out, what the process has used. */
const USED = `data:text/javascript,${encodeURIComponent(`import { writeSync } from 'node:fs'
process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage()
  writeSync(3, JSON.stringify([(userCPUTime + systemCPUTime) / 1000, maxRSS / 1024]))
})`)}`

function run(args: readonly string[]): { wall: number; cpu: number; memory: number } {
  const start = performance.now()
  const { status, stderr, output } = spawnSync(process.execPath, ['--import', USED, ...args], {
    stdio: ['ignore', 'pipe', 'pipe', 'pipe'],
    encoding: 'utf8',
  })
  const wall = performance.now() - start
  if (status !== 0) throw new Error(stderr)
  const [cpu, memory] = JSON.parse(output[3]!) as [number, number]
  return { wall, cpu, memory }
}

function cold(name: string, file: string, aim: number, rounds: number): void {
  const [bare, drawn]: ReturnType<typeof run>[][] = [[], []]
  for (let i = 0; i < rounds; i++) {
    bare!.push(run(['-e', '0']))
    drawn!.push(run([join(root, 'bin/sheetwright'), 'draw', file, '--to', folder, '--quiet']))
  }
  const all = (runs: ReturnType<typeof run>[], what: 'wall' | 'cpu' | 'memory') => runs.map((r) => r[what])
  tell(name, aim, all(drawn!, 'wall'), all(drawn!, 'cpu'), all(bare!, 'wall'))
  console.log(`  ${''.padEnd(22)} ${median(all(drawn!, 'memory')).toFixed(0)} MB at most`)
}

console.log('cold: draw, whole process, start to files (ms); baseline: a bare start of node')
cold('bracket', bracketFile, 1500, 7)
rmSync(folder, { recursive: true })

/** The same sum each time: whatever slows the machine slows it too. */
function baseline(): number {
  const start = performance.now()
  let seed = 1
  const numbers = Array.from({ length: 30_000 }, () => {
    seed = (seed * 48271) % 0x7fffffff
    return seed
  })
  numbers.sort((a, b) => a - b)
  return performance.now() - start
}

const WARMING = 8

function warm(name: string, aim: number, rounds: number, once: () => Partial<Record<Phase, number>>): void {
  const [wall, cpu, base]: number[][] = [[], [], []]
  const phases = new Map<string, number[]>()
  for (let i = 0; i < rounds + WARMING; i++) {
    const still = baseline()
    const used = process.cpuUsage()
    const start = performance.now()
    const times = once()
    const total = performance.now() - start
    const { user, system } = process.cpuUsage(used)
    if (i < WARMING) continue
    base!.push(still)
    wall!.push(total)
    cpu!.push((user + system) / 1000)
    for (const [phase, time] of Object.entries(times)) phases.set(phase, [...(phases.get(phase) ?? []), time])
  }
  tell(name, aim, wall!, cpu!, base!)
  const parts = [...phases].map(([phase, all]) => `${phase} ${median(all).toFixed(1)}/${Math.min(...all).toFixed(1)}`)
  if (parts.length > 0) console.log(`  ${''.padEnd(22)} ${parts.join(', ')} (median/fastest)`)
}

const kernel = await openKernel()
const sheetOf = (text: string) => () => {
  const { part, sheet, times } = compile(text, kernel)
  if (!part || !sheet) throw new Error('no sheet')
  kernel.free(part.solid)
  return times
}

console.log(`\nwarm: brief text to Sheet value in one process (ms); baseline: sorting 30 000 numbers; load ${load()}`)
warm('bracket, with sizes', 100, 25, sheetOf(bracket))
warm('plate, 144 holes', 250, 9, sheetOf(holePlate(12, 12)))

console.log(`\nsizes and placement alone (ms); load ${load()}`)
const plate = plateOfHoles(40, 'ASME')
const request = { ...plate, obstacles: [], bounds: field(plate.width, plate.height) }
warm('40 holes, 40 notes', 400, 9, () => {
  if (placeDimensions(request).unplaced.length > 0) throw new Error('a note was left off')
  return {}
})

console.log('\nmemory')
const [before, held] = [kernel.memory(), kernel.kept()]
const ROUNDS = 50
for (let i = 0; i < ROUNDS; i++) {
  const { part } = compile(bracket, kernel)
  writeStep(part!, kernel)
  kernel.free(part!.solid)
}
console.log(
  `  kernel ${(before / 1e6).toFixed(1)} MB, after ${ROUNDS} more brackets with STEP ${(kernel.memory() / 1e6).toFixed(1)} MB,` +
    ` solids left behind ${kernel.kept() - held}`,
)
console.log(
  `  whole process ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB resident; load ${load()} at the end`,
)
