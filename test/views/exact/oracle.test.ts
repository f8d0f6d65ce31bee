import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { readBrief } from '../../../src/brief/read.ts'
import { subShapes } from '../../../src/kernel/occt.ts'
import { type OcctKernel, openKernel } from '../../../src/kernel/open.ts'
import { scoped } from '../../../src/kernel/scope.ts'
import { buildPart } from '../../../src/part/build.ts'
import { exactView } from '../../../src/views/exact/exact-view.ts'
import { compared, judged, meshOf } from './compared.ts'
import { type Mesh, Sight } from './mesh-arbiter.ts'
import { frameAlong, PRINCIPAL } from './random-solids.ts'

// Reference: the kernel's own exact hidden-line algorithm (covered lengths, 1e-6 of the part). Where the two differ, a
// dense ray test through the kernel's triangulation decides.

/** Triangles of the ray test lie no further than this from the surface, mm. */
const SAG = 0.005

let kernel: OcctKernel

beforeAll(async () => {
  kernel = await openKernel()
})

const root = join(import.meta.dirname, '../../..')
const examples = readdirSync(join(root, 'examples')).filter((f) => f.endsWith('.brief'))

describe('the exact view against the kernel on the examples', () => {
  it.each(examples)('%s, principal and two odd directions', (file) => {
    const part = buildPart(readBrief(readFileSync(join(root, 'examples', file), 'utf8')), kernel)
    let mesh: Mesh | undefined
    const frames = { ...PRINCIPAL, odd: frameAlong([0.3, -0.8, 0.45]), low: frameAlong([-0.62, 0.33, -0.21]) }
    for (const [name, frame] of Object.entries(frames)) {
      const c = compared(kernel, part.solid, part.body, frame, {
        mesh: () => (mesh ??= meshOf(kernel, part.solid, SAG)),
      })
      expect(c.against, `${name}: lengths differ by ${c.difference} mm`).toEqual([])
    }
  })
})

describe('an assembly from a STEP file', () => {
  it('draws all of as1 as the ray test sees it', () => {
    const text = readFileSync(join(root, 'test/data/as1-oc-214.stp'), 'utf8')
    const solid = kernel.readStep(text)
    const body = kernel.body(solid)
    // known of the file: 18 solids with 160 faces
    expect(body.faces).toHaveLength(160)
    const mesh = meshOf(kernel, solid, SAG)
    for (const frame of [PRINCIPAL.front, PRINCIPAL.right, PRINCIPAL.top, frameAlong([1, -1, 1])]) {
      const view = exactView(body, frame)
      // the file holds its cylinders and circles as splines only
      expect(view.curves.filter((c) => c.curve.kind === 'spline')).toEqual([])
      const { against, places } = judged(view, new Sight(mesh, frame))
      expect(places).toBeGreaterThan(300)
      expect(against).toEqual([])
    }
  })
  it('draws each of its parts by itself as the ray test sees it', () => {
    const { oc } = kernel
    const whole = kernel.readStep(readFileSync(join(root, 'test/data/as1-oc-214.stp'), 'utf8'))
    const solids = scoped((own) =>
      subShapes(oc, own, kernel.shapeOf(whole), 'TopAbs_SOLID').map((s) => kernel.keep(oc.TopoDS.Solid(s))),
    )
    // known of the file: a plate, 2 brackets, a rod, 8 nuts and 6 bolts
    expect(solids).toHaveLength(18)
    const distinct = new Map(solids.map((s) => [kernel.properties(s).volume.toFixed(2), s]))
    expect(distinct.size).toBe(5)
    for (const solid of distinct.values()) {
      const body = kernel.body(solid)
      const mesh = meshOf(kernel, solid, SAG)
      for (const frame of [PRINCIPAL.front, frameAlong([1, -1, 1]), frameAlong([0.3, -0.8, 0.45])]) {
        const { against, places } = judged(exactView(body, frame), new Sight(mesh, frame))
        expect(places).toBeGreaterThan(20)
        expect(against).toEqual([])
      }
    }
  })
})
