// npm run fuzz N [first] [kinds]: our line-work against the kernel's on N seeded random solids, three
// views each; N may be thousands. Where covered lengths differ by more than 1e-6 of the part, lines of sight through the
// recipe of the solid, in closed form, say which is right; what they have against ours is printed with the seed, to be
// kept as a test. A solid that the kernel made wrong (lines of sight meet other faces than the recipe's, its edges stray
// from its faces, or the kernel itself finds it invalid) is counted apart.
import { openKernel } from '../src/kernel/open.ts'
import { shapes } from '../src/kernel/shapes.ts'
import { exactView } from '../src/views/exact/exact-view.ts'
import { compared, meshOf, shareWrong, sizeOf } from '../test/views/exact/compared.ts'
import { flaws } from '../test/views/exact/flaws.ts'
import { frameAlong, PRINCIPAL, randomSolid, seeded } from '../test/views/exact/random-solids.ts'

const count = Number(process.argv[2] ?? 100)
const first = Number(process.argv[3] ?? 0)
const kinds = (process.argv[4] ?? 'box,cylinder,cone,sphere').split(',')
/** The kernel's memory only grows: start it anew from time to time. */
const RENEW = 200
/** Share of lines of sight on which a solid must differ from its recipe to be called wrong; right ones differ on none. */
const WRONG = 1e-3
/** Triangles lie no further than this from the surface, mm. */
const SAG = 0.005
/** Edges further from their faces, and loops open by more, make a solid wrong too, mm: the lines of sight pass as near. */
const STRAY = 1e-3

let kernel = await openKernel()
const total = { views: 0, equal: 0, oursRight: 0, oursWrong: 0, noSolid: 0, wrongSolid: 0, ours: 0 }
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
  const complaints: string[] = []
  for (const [name, frame] of Object.entries(frames)) {
    const start = performance.now()
    const view = exactView(body!, frame)
    total.ours += performance.now() - start
    const c = compared(kernel, made.solid, body!, frame, { recipe: made.recipe }, view)
    total.views++
    if (c.difference <= 1e-6 * sizeOf(body!)) total.equal++
    else if (c.against.length === 0) total.oursRight++
    else
      complaints.push(`${name}: ${c.difference.toExponential(2)} mm, ${c.against.length}/${c.places}: ${c.against[0]}`)
  }
  if (complaints.length > 0) {
    const off = shareWrong(meshOf(kernel, made.solid, SAG), made.recipe, frames.odd!)
    const valid = new kernel.oc.BRepCheck_Analyzer(kernel.shapeOf(made.solid), true, false).IsValid()
    const faults = flaws(body!, STRAY)
    if (off > WRONG) faults.push(`${(100 * off).toFixed(2)} % of the lines of sight meet another solid`)
    if (!valid) faults.push('the kernel finds it invalid')
    if (faults.length > 0) {
      console.log(`seed ${seed} is a wrong solid: ${faults.join('; ')}`)
      total.wrongSolid++
      total.views -= complaints.length
    } else {
      total.oursWrong += complaints.length
      for (const c of complaints) console.log(`seed ${seed} ${c}`)
    }
  }
  kernel.free(made.solid)
}
console.log(
  `${total.views} views: ${total.equal} equal to the kernel's to 1e-6 of the part; ` +
    `${total.oursRight} differ and the ray test finds nothing against ours; ${total.oursWrong} to be looked at; ` +
    `${total.noSolid} seeds without a solid, ${total.wrongSolid} whose solid is wrong; ` +
    `ours took ${(total.ours / Math.max(1, total.views)).toFixed(1)} ms a view`,
)
