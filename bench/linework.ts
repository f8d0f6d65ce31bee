// npm run bench:lines [largest]: exact line-work against the kernel's hidden-line algorithm, same process, same
// solids: the examples, an assembly, plates of holes up to `largest`, up to 64 copies of the assembly. Medians; the
// kernel's figure is its algorithm alone, without reading its result. Ours includes reading the body into the computing
// shape (done anew each time).
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readBrief } from '../src/brief/read.ts'
import type { Body } from '../src/kernel/body.ts'
import { kernelHiddenLines } from '../src/kernel/hidden-lines.ts'
import type { SolidKey } from '../src/kernel/kernel.ts'
import { openKernel } from '../src/kernel/open.ts'
import type { Region } from '../src/kernel/profile.ts'
import { shapes } from '../src/kernel/shapes.ts'
import { buildPart } from '../src/part/build.ts'
import { exactView } from '../src/views/exact/exact-view.ts'
import { moved, together } from '../test/views/exact/assembly.ts'
import { PRINCIPAL } from '../test/views/exact/random-solids.ts'

/** Bundled, as the program is when it is used: a loader that keeps names makes every small function dearer. */
const root = process.cwd()
const largest = Number(process.argv[2] ?? 1024)
const kernel = await openKernel()
const make = shapes(kernel)
const three = [PRINCIPAL.front, PRINCIPAL.top, PRINCIPAL.right]

/** Both sides are measured warm, ms of drawing beforehand: a drafter's session draws many views. */
const WARM = 2000

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!

/** Time of the processor in ms: what else the machine does hardly changes it. Collecting garbage counts. */
function cpu(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

function once(work: () => void): number {
  const start = cpu()
  work()
  return cpu() - start
}

let first = true

/** Rounds of the kernel's algorithm, three drawings of ours between each: other work on the machine slows both alike. */
function row(name: string, body: Body, solid: SolidKey | undefined, rounds: number): number {
  const draw = () => {
    const fresh = { ...body }
    for (const frame of three) exactView(fresh, frame)
  }
  const theirs = () => {
    for (const frame of three) kernelHiddenLines(kernel, solid!, frame.right, frame.toViewer)
  }
  if (first)
    console.log(`cold, the first of this process: ${once(draw).toFixed(0)} ours, ${once(theirs).toFixed(0)} kernel`)
  first = false
  for (const end = cpu() + WARM; cpu() < end; ) draw()
  const [ours, kernels]: [number[], number[]] = [[], []]
  for (let i = 0; i < rounds; i++) {
    for (let k = 0; k < 3; k++) ours.push(once(draw))
    if (solid !== undefined) kernels.push(once(theirs))
  }
  const a = median(ours)
  const b = solid === undefined ? Number.NaN : median(kernels)
  const show = (x: number) => (Number.isNaN(x) ? '-' : x.toFixed(1)).padStart(10)
  console.log(`${name.padEnd(26)}${String(body.faces.length).padStart(7)}${show(a)}${show(b)}${show(b / a)}`)
  return b / a
}

function plate(side: number): SolidKey {
  const size = 10 * side
  const holes: Region['holes'][number][] = []
  for (let i = 0; i < side; i++)
    for (let j = 0; j < side; j++)
      holes.push([{ kind: 'arc', c: [5 + 10 * i, 5 + 10 * j], r: 3, from: 0, sweep: 2 * Math.PI }])
  const corners = [
    [0, 0],
    [size, 0],
    [size, size],
    [0, size],
  ] as const
  const outer = corners.map((a, i) => ({ kind: 'line' as const, a, b: corners[(i + 1) % 4]! }))
  return make.prism({ outer, holes }, { origin: [0, 0, 0], right: [1, 0, 0], up: [0, 1, 0] }, [0, 0, 10])
}

console.log(`three views, ms of processor      faces      ours    kernel     ratio`)
const ratios: number[] = []
for (const file of readdirSync(join(root, 'examples')).filter((f) => f.endsWith('.brief'))) {
  const part = buildPart(readBrief(readFileSync(join(root, 'examples', file), 'utf8')), kernel)
  ratios.push(row(file, part.body, part.solid, 9))
}
console.log(`median ratio over the examples: ${median(ratios).toFixed(1)}`)
const as1 = kernel.readStep(readFileSync(join(root, 'test/data/as1-oc-214.stp'), 'utf8'))
row('as1-oc-214.stp', kernel.body(as1), as1, 1)
for (let side = 4; side * side <= largest; side *= 2) {
  const solid = plate(side)
  row(`plate of ${side * side} holes`, kernel.body(solid), side > 16 ? undefined : solid, 1)
}
// copies set out on a square grid, as far apart as the whole is long
const whole = kernel.body(as1)
const step = 1.1 * Math.max(...whole.box.max.map((x, i) => x - whole.box.min[i]!))
for (let side = 1; side <= 8; side *= 2) {
  const copies = Array.from({ length: side * side }, (_, i) =>
    moved(whole, [(i % side) * step, Math.floor(i / side) * step, 0]),
  )
  row(`${side * side} of as1-oc-214`, together(copies), undefined, 1)
}
