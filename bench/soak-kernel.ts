// 500 rounds of building the bracket, cutting it and writing it as STEP: the kernel holds no more memory at the end than after the first twenty.
import { readFileSync } from 'node:fs'
import { readBrief } from '../src/brief/read.ts'
import { openKernel } from '../src/kernel/open.ts'
import { buildPart } from '../src/part/build.ts'
import { writeStep } from '../src/write/step.ts'

const kernel = await openKernel()
const brief = readBrief(readFileSync(new URL('../examples/vent-bracket.brief', import.meta.url), 'utf8'))
const BUILDS = 500
let warm = 0
for (let i = 1; i <= BUILDS; i++) {
  const part = buildPart(brief, kernel)
  const half = kernel.cut(part.solid, [{ point: [38.1, 0, 0], normal: [1, 0, 0] }], 'intersection')
  kernel.free(half.solid)
  if (writeStep(part, kernel).length < 1000) throw new Error('no STEP text')
  kernel.free(part.solid)
  if (i === 20) warm = kernel.memory()
  if (i % 50 === 0) console.log(`${String(i).padStart(4)} builds  ${(kernel.memory() / 1e6).toFixed(1)} MB`)
}
const each = (kernel.memory() - warm) / (BUILDS - 20) / 1e3
console.log(`${each.toFixed(0)} kB lost a round (memory grows in large steps)`)
process.exitCode = kernel.memory() === warm ? 0 : 1
