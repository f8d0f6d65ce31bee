// npm run bench:crew [most]: six views of 1 to `most` copies of as1 by one thread and by a crew of one thread for each
// processor, in turn, ms of the clock: the first time in a process of its own, and the median of five later times. On
// Linux also the time of the processor that the busiest two threads had: what the clock would show on a machine with
// nothing else to do cannot be less.
import { execFileSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { viewCrew } from '../src/app/cli/view-hands.ts'
import { openKernel } from '../src/kernel/open.ts'
import { exactView } from '../src/views/exact/exact-view.ts'
import { FRAMES, ISOMETRIC } from '../src/views/frames.ts'
import { moved, together } from '../test/views/exact/assembly.ts'

const SIX = [ISOMETRIC, FRAMES.front, FRAMES.rear, FRAMES.top, FRAMES.right, FRAMES.left]
const TASKS = '/proc/self/task'

const [how, copies] = process.argv.slice(2)
if (how === 'alone' || how === 'crew') await measure(how, Number(copies))
else {
  console.log('copies  faces   one thread: first later busiest     crew: first later busiest')
  for (let n = 1; n <= Number(how ?? 64); n *= 4) {
    const run = (kind: string) =>
      JSON.parse(
        execFileSync(process.execPath, [fileURLToPath(import.meta.url), kind, String(n)], { encoding: 'utf8' }),
      )
    const [a, b] = [run('alone'), run('crew')]
    const show = (r: { first: number; later: number; busiest: string }) =>
      `${String(r.first).padStart(18)}${String(r.later).padStart(6)}  ${r.busiest}`
    console.log(`${String(n).padStart(6)}${String(a.faces).padStart(7)}${show(a)}${show(b)}`)
  }
}

async function measure(kind: 'alone' | 'crew', n: number): Promise<void> {
  const kernel = await openKernel()
  const whole = kernel.body(kernel.readStep(readFileSync(join(process.cwd(), 'test/data/as1-oc-214.stp'), 'utf8')))
  const step = 1.1 * Math.max(...whole.box.max.map((x, i) => x - whole.box.min[i]!))
  const side = Math.ceil(Math.sqrt(n))
  const body = together(
    Array.from({ length: n }, (_, i) => moved(whole, [(i % side) * step, Math.floor(i / side) * step, 0])),
  )
  const crew = viewCrew()
  if (kind === 'crew') {
    // as when the kernel reads a file
    crew.muster()
    await new Promise((go) => setTimeout(go, 500))
  }
  const once = async () => {
    const fresh = { ...body }
    const start = performance.now()
    if (kind === 'crew') await crew.draw(fresh, SIX)
    else for (const frame of SIX) exactView(fresh, frame)
    return performance.now() - start
  }
  const before = threads()
  const first = await once()
  const busiest = [...threads()]
    .map(([id, ms]) => ms - (before.get(id) ?? 0))
    .sort((a, b) => b - a)
    .slice(0, 2)
    .map((ms) => ms.toFixed(0))
    .join('+')
  const later: number[] = []
  for (let i = 0; i < 5; i++) later.push(await once())
  later.sort((a, b) => a - b)
  crew.close()
  console.log(
    JSON.stringify({ faces: body.faces.length, first: Math.round(first), later: Math.round(later[2]!), busiest }),
  )
}

/** Time of the processor that each thread has had, ms. */
function threads(): Map<string, number> {
  if (!existsSync(TASKS)) return new Map()
  return new Map(
    readdirSync(TASKS).map((id) => [
      id,
      Number(readFileSync(join(TASKS, id, 'schedstat'), 'utf8').split(' ')[0]) / 1e6,
    ]),
  )
}
