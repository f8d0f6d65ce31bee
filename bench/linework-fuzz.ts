// tsx bench/linework-fuzz.ts N [first] [kinds]: our line-work against the kernel's on N seeded random solids, three
// views each. Where covered lengths differ by more than 1e-6 of the part, a dense ray test on the kernel's triangulation
// says which is right; what it has against ours is printed with the seed, to be kept as a test.
import { openKernel } from '../src/kernel/open.ts'
import { shapes } from '../src/kernel/shapes.ts'
import { compared, meshOf, sizeOf } from '../test/views/exact/compared.ts'
import type { Mesh } from '../test/views/exact/mesh-arbiter.ts'
import { frameAlong, PRINCIPAL, randomSolid, seeded } from '../test/views/exact/random-solids.ts'

const count = Number(process.argv[2] ?? 100)
const first = Number(process.argv[3] ?? 0)
const kinds = (process.argv[4] ?? 'box,cylinder,cone,sphere').split(',')
/** The kernel's memory only grows: start it anew from time to time. */
const RENEW = 200

let kernel = await openKernel()
const total = { views: 0, equal: 0, oursRight: 0, oursWrong: 0, noSolid: 0, ours: 0 }
for (let i = 0; i < count; i++) {
  const seed = first + i
  if (i % RENEW === RENEW - 1) kernel = await openKernel()
  const made = randomSolid(shapes(kernel), seed, kinds)
  const body = made && kernel.body(made.solid)
  if (!made || body?.faces.length === 0) {
    total.noSolid++
    continue
  }
  const random = seeded(seed + 1e6)
  const names = Object.keys(PRINCIPAL) as (keyof typeof PRINCIPAL)[]
  const principal = names[seed % 6]!
  const frames = {
    [principal]: PRINCIPAL[principal],
    isometric: frameAlong([1, -1, 1]),
    odd: frameAlong([random() - 0.5, random() - 0.5, random() - 0.5]),
  }
  let mesh: Mesh | undefined
  for (const [name, frame] of Object.entries(frames)) {
    const c = compared(kernel, made.solid, body!, frame, () => (mesh ??= meshOf(kernel, made.solid, 0.004)))
    total.views++
    total.ours += c.ours
    if (c.difference <= 1e-6 * sizeOf(body!)) total.equal++
    else if (c.against.length === 0) total.oursRight++
    else {
      total.oursWrong++
      console.log(
        `seed ${seed} ${name}: ${c.difference.toExponential(2)} mm, ${c.against.length}/${c.places}: ${c.against[0]}`,
      )
    }
  }
  kernel.free(made.solid)
}
console.log(
  `${total.views} views: ${total.equal} equal to the kernel's to 1e-6 of the part; ` +
    `${total.oursRight} differ and the ray test finds nothing against ours; ${total.oursWrong} to be looked at; ` +
    `${total.noSolid} seeds without a solid; ours took ${(total.ours / Math.max(1, total.views)).toFixed(1)} ms a view`,
)
