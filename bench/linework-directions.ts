// tsx bench/linework-directions.ts [N] [first]: our line-work against the kernel's on every example in the six principal
// and N seeded random directions. Where covered lengths differ by more than 1e-6 of the part, a dense ray test through
// the kernel's triangulation says what it has against ours.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readBrief } from '../src/brief/read.ts'
import { openKernel } from '../src/kernel/open.ts'
import { buildPart } from '../src/part/build.ts'
import { exactView } from '../src/views/exact/exact-view.ts'
import { compared, sizeOf } from '../test/views/exact/compared.ts'
import { type Mesh, meshOf } from '../test/views/exact/mesh-arbiter.ts'
import { frameAlong, PRINCIPAL, seeded } from '../test/views/exact/random-solids.ts'

const count = Number(process.argv[2] ?? 20)
const random = seeded(Number(process.argv[3] ?? 1))
/** Triangles lie no further than this from the surface, mm. */
const SAG = 0.005

const root = join(import.meta.dirname, '..')
const total = { views: 0, equal: 0, oursRight: 0, oursWrong: 0 }
for (const file of readdirSync(join(root, 'examples')).filter((f) => f.endsWith('.brief'))) {
  // the kernel's memory only grows
  const kernel = await openKernel()
  const { solid, body } = buildPart(readBrief(readFileSync(join(root, 'examples', file), 'utf8')), kernel)
  let mesh: Mesh | undefined
  const odd = Array.from({ length: count }, (_, i) => {
    const direction = [random() - 0.5, random() - 0.5, random() - 0.5] as const
    return [`odd ${i} (${direction.map((x) => x.toFixed(4))})`, frameAlong(direction)] as const
  })
  for (const [name, frame] of [...Object.entries(PRINCIPAL), ...odd]) {
    const c = compared(
      kernel,
      solid,
      body,
      frame,
      { mesh: () => (mesh ??= meshOf(kernel, solid, SAG)) },
      exactView(body, frame),
    )
    total.views++
    if (c.difference <= 1e-6 * sizeOf(body)) total.equal++
    else if (c.against.length === 0) total.oursRight++
    else {
      total.oursWrong++
      console.log(
        `${file} ${name}: ${c.difference.toExponential(2)} mm, ${c.against.length}/${c.places}: ${c.against[0]}`,
      )
    }
  }
}
console.log(
  `${total.views} views: ${total.equal} equal to the kernel's to 1e-6 of the part; ` +
    `${total.oursRight} differ and the ray test finds nothing against ours; ${total.oursWrong} to be looked at`,
)
