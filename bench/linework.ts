// tsx bench/linework.ts [largest]: exact line-work against the kernel's hidden-line algorithm, same process, same
// solids. Medians; the kernel's figure is its algorithm alone, without reading its result. Ours includes reading the body
// into the computing shape (done anew each time).
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readBrief } from '../src/brief/read.ts'
import { kernelHiddenLines } from '../src/kernel/hidden-lines.ts'
import type { SolidKey } from '../src/kernel/kernel.ts'
import { openKernel } from '../src/kernel/open.ts'
import type { Region } from '../src/kernel/profile.ts'
import { shapes } from '../src/kernel/shapes.ts'
import { buildPart } from '../src/part/build.ts'
import { exactView } from '../src/views/exact/exact-view.ts'
import { PRINCIPAL } from '../test/views/exact/random-solids.ts'

const root = join(import.meta.dirname, '..')
const largest = Number(process.argv[2] ?? 1024)
const kernel = await openKernel()
const make = shapes(kernel)
const three = [PRINCIPAL.front, PRINCIPAL.top, PRINCIPAL.right]

const WARM = 10

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!

function timed(work: () => void, runs: number): number {
  const all: number[] = []
  for (let i = 0; i < runs; i++) {
    const start = performance.now()
    work()
    all.push(performance.now() - start)
  }
  return median(all)
}

function row(name: string, solid: SolidKey, runs: number, kernelRuns: number): number {
  const body = kernel.body(solid)
  const draw = () => {
    const fresh = { ...body }
    for (const frame of three) exactView(fresh, frame)
  }
  // both sides are measured warm: a drafter's session draws many views
  for (let i = 0; i < WARM && body.faces.length < 500; i++) draw()
  const ours = timed(draw, runs)
  const theirs =
    kernelRuns === 0
      ? Number.NaN
      : timed(() => {
          for (const frame of three) kernelHiddenLines(kernel, solid, frame.right, frame.toViewer)
        }, kernelRuns)
  const ratio = theirs / ours
  const show = (x: number) => (Number.isNaN(x) ? '-' : x.toFixed(1)).padStart(10)
  console.log(`${name.padEnd(26)}${String(body.faces.length).padStart(7)}${show(ours)}${show(theirs)}${show(ratio)}`)
  return ratio
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

console.log(`three views, ms${' '.repeat(11)}      faces      ours    kernel     ratio`)
const ratios: number[] = []
for (const file of readdirSync(join(root, 'examples')).filter((f) => f.endsWith('.brief'))) {
  const part = buildPart(readBrief(readFileSync(join(root, 'examples', file), 'utf8')), kernel)
  ratios.push(row(file, part.solid, 15, 5))
}
console.log(`median ratio over the examples: ${median(ratios).toFixed(1)}`)
row('as1-oc-214.stp', kernel.readStep(readFileSync(join(root, 'test/data/as1-oc-214.stp'), 'utf8')), 5, 1)
for (let side = 4; side * side <= largest; side *= 2)
  row(`plate of ${side * side} holes`, plate(side), side > 16 ? 3 : 5, side > 16 ? 0 : 1)
