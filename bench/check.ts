// The checker: time of all rules on the examples, and how many of 300 faults put into good briefs it catches.
// `npx tsx bench/check.ts [count] [seed]`
import { readdirSync, readFileSync } from 'node:fs'
import { compile } from '../src/app/compile.ts'
import { checkDrawing } from '../src/check/check-drawing.ts'
import { openKernel } from '../src/kernel/open.ts'
import { baseOf, catches } from '../test/check/catch.ts'
import { drawingSaid } from '../test/check/drawing-said.ts'
import { type Mutation, mutate, randomFrom } from '../test/check/mutate.ts'
import { slip } from '../test/check/mutate-text.ts'

const [count, seed] = [Number(process.argv[2] ?? 300), Number(process.argv[3] ?? 1)]
/** Share of the faults that must be caught. */
const wanted = 0.95
const kernel = await openKernel()
const files = readdirSync('examples').filter((f) => f.endsWith('.brief'))

const processor = () => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}
for (const file of ['vent-bracket.brief', 'base-plate.brief']) {
  const drawing = compile(readFileSync(`examples/${file}`, 'utf8'), kernel)
  // A part is measured once and the figures kept; a fresh copy is what a changed brief gives.
  const fresh = () => structuredClone({ ...drawing, times: undefined })
  for (let i = 0; i < 5; i++) checkDrawing(fresh())
  const runs = Array.from({ length: 15 }, () => {
    const copy = fresh()
    const [wall, cpu] = [performance.now(), processor()]
    checkDrawing(copy)
    return { wall: performance.now() - wall, cpu: processor() - cpu }
  })
  const least = (what: 'wall' | 'cpu') => Math.min(...runs.map((r) => r[what])).toFixed(1)
  console.log(`${file.padEnd(22)} all rules: best wall ${least('wall')} ms, processor ${least('cpu')} ms (aim 20 ms)`)
  if (drawing.part) kernel.free(drawing.part.solid)
}

const texts = new Map(files.map((f) => [f, readFileSync(`examples/${f}`, 'utf8')]))
const bases = new Map(files.map((f) => [f, baseOf(texts.get(f)!, kernel)]))

/** Puts in `count` faults, one after another into each example, and prints how many of each kind are caught. */
function putIn(
  name: string,
  fault: (text: string, random: () => number) => Mutation | undefined,
  counts: (file: string, mutation: Mutation) => boolean,
) {
  const random = randomFrom(seed)
  const tally = new Map<string, { made: number; caught: number }>()
  const missed: string[] = []
  let [made, idle] = [0, 0]
  for (let i = 0; made < count; i++) {
    const file = files[i % files.length]!
    const mutation = fault(texts.get(file)!, random)
    if (!mutation) continue
    if (!counts(file, mutation)) {
      idle++
      continue
    }
    made++
    const row = tally.get(mutation.kind) ?? { made: 0, caught: 0 }
    tally.set(mutation.kind, row)
    row.made++
    if (catches(mutation, bases.get(file)!, kernel)) row.caught++
    else missed.push(`${file}: ${mutation.kind}: ${mutation.change}`)
  }
  for (const [kind, row] of [...tally].sort()) console.log(`${kind.padEnd(32)} ${row.caught} of ${row.made}`)
  for (const line of missed) console.log(`  missed  ${line}`)
  const share = (made - missed.length) / made
  console.log(
    `${name}, ${tally.size} kinds: caught ${made - missed.length} of ${made}: ${(100 * share).toFixed(1)} % (seed ${seed}${idle > 0 ? `, ${idle} that change nothing left out` : ''})`,
  )
  return share
}

const share = putIn('faults', mutate, () => true)
if (share < wanted) process.exitCode = 1
// Slips of the pen: what is another size, but as possible, no sheet can give away. The share is told, not aimed at.
const said = new Map(files.map((f) => [f, drawingSaid(texts.get(f)!, kernel)]))
putIn('slips', slip, (file, { text }) => drawingSaid(text, kernel) !== said.get(file))
