// Medians of brief to solid, warm, with where the time goes. Wall time and processor time: the second holds on a busy machine.
import { readFileSync } from 'node:fs'
import { readBrief } from '../src/brief/read.ts'
import { openKernel } from '../src/kernel/open.ts'
import { readBody } from '../src/kernel/read-body.ts'
import { assemble } from '../src/part/assemble.ts'
import { buildPart } from '../src/part/build.ts'
import { workFeature } from '../src/part/features/work-feature.ts'
import { buildStock } from '../src/part/stock/build-stock.ts'
import { Workshop } from '../src/part/workshop.ts'
import { holePlate } from './hole-plate.ts'

const kernel = await openKernel()
const processor = () => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

function time(name: string, work: () => void): void {
  for (let i = 0; i < 20; i++) work()
  const wall: number[] = []
  const cpu: number[] = []
  for (let i = 0; i < 25; i++) {
    const [t, c] = [performance.now(), processor()]
    work()
    wall.push(performance.now() - t)
    cpu.push(processor() - c)
  }
  const median = (list: number[]) =>
    list
      .sort((a, b) => a - b)
      [list.length >> 1]!.toFixed(1)
      .padStart(8)
  console.log(`  ${name.padEnd(24)} wall ${median(wall)} ms   processor ${median(cpu)} ms`)
}

function measure(name: string, text: string, aim: number): void {
  const brief = readBrief(text)
  console.log(`${name} (aim for the solid: ${aim} ms)`)
  const worked = () => {
    const shop = new Workshop(brief)
    buildStock(shop, brief.stock!)
    for (const feature of brief.features) workFeature(shop, feature)
    return shop
  }
  time('placing and sizes', () => worked())
  time('solid', () => assemble(worked(), kernel.oc)!.delete())
  const part = buildPart(brief, kernel)
  const shape = kernel.shapeOf(part.solid)
  time('boundary as numbers', () => readBody(kernel.oc, shape))
  time('volume and centroid', () => kernel.properties(part.solid))
  time('part, all together', () => kernel.free(buildPart(brief, kernel).solid))
  kernel.free(part.solid)
}

measure('vent bracket', readFileSync(new URL('../examples/vent-bracket.brief', import.meta.url), 'utf8'), 25)
measure('plate of 144 holes', holePlate(12, 12), 30)
console.log(`kernel memory ${(kernel.memory() / 1e6).toFixed(0)} MB`)
