// Placement of sizes by itself: time, sizes left off, crossings, and the audit's count over made-up parts. Run with tsx.
import { auditSizes } from '../src/sheet/placement/audit.ts'
import { placeDimensions } from '../src/sheet/placement/place-dimensions.ts'
import { roomFor } from '../src/sheet/placement/room-for.ts'
import { bracket, field, plateOfHoles, shaft, sheetOf } from '../test/sheet/placement/fixtures.ts'
import { randomSheet } from '../test/sheet/placement/random-sheet.ts'

type Case = Pick<ReturnType<typeof bracket>, 'views' | 'sizes' | 'practice' | 'width' | 'height'>

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!
}

function timed(run: () => unknown, times: number): { middle: number; fastest: number } {
  const all: number[] = []
  for (let i = 0; i < times; i++) {
    const start = performance.now()
    run()
    all.push(performance.now() - start)
  }
  return { middle: median(all), fastest: Math.min(...all) }
}

const place = (c: Case) => placeDimensions({ ...c, obstacles: [], bounds: field(c.width, c.height) })
const cases: readonly (readonly [name: string, c: Case, aim: number | undefined])[] = [
  ['bracket, ASME', bracket('ASME'), 40],
  ['bracket, ISO', bracket('ISO'), 40],
  ['stepped shaft, ASME', shaft('ASME'), 40],
  ['40 holes, hole table', plateOfHoles(40, 'ISO', true), 400],
  ['40 holes, 40 notes', plateOfHoles(40, 'ASME'), 400],
]

console.log('placement of sizes, warm (ms)')
for (const [name, c, aim] of cases) {
  const result = place(c)
  const audit = auditSizes(sheetOf(c.views, result.items, c.width, c.height), c.practice)
  const t = timed(() => place(c), 15)
  const views = { views: c.views.map((v) => v.view), reasons: [] }
  const room = timed(() => roomFor(c.sizes, views, c.views[0]!.placed.scale, c.practice), 15)
  console.log(
    `  ${name.padEnd(22)} median ${t.middle.toFixed(1).padStart(7)}  fastest ${t.fastest.toFixed(1).padStart(7)}  (aim ${aim})` +
      `  room ${room.fastest.toFixed(1).padStart(6)}  sizes ${c.sizes.dimensions.length}, left off ${result.unplaced.length},` +
      ` crossings ${audit.dimensionLineCrossings}`,
  )
}

const count = Number(process.argv[2] ?? 200)
const sum = { sizes: 0, 'left off': 0 }
const faults: Record<string, number> = {}
const start = performance.now()
for (let seed = 0; seed < count; seed++) {
  const c = randomSheet(seed)
  const result = place(c)
  sum.sizes += c.sizes.dimensions.length
  sum['left off'] += result.unplaced.length
  const { findings, ...counts } = auditSizes(sheetOf(c.views, result.items, c.width, c.height), c.practice)
  for (const [what, n] of Object.entries(counts)) faults[what] = (faults[what] ?? 0) + n
}
console.log(`\n${count} made-up parts, ${((performance.now() - start) / count).toFixed(1)} ms each with audit`)
for (const [what, n] of Object.entries({ ...sum, ...faults })) console.log(`  ${what.padEnd(24)} ${n}`)
