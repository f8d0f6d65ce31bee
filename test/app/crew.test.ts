import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import { build } from 'esbuild'
import { afterEach, beforeAll, describe, expect, it } from 'vitest'
import { viewCrew } from '../../src/app/cli/view-hands.ts'
import { compileSolid, compileSolidTogether } from '../../src/app/compile-solid.ts'
import { Crew } from '../../src/app/crew/crew.ts'
import { help, newBoard, type Share, shareDone, takeView, type Word } from '../../src/app/crew/share.ts'
import type { Body } from '../../src/kernel/body.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { shapes } from '../../src/kernel/shapes.ts'
import { exactView } from '../../src/views/exact/exact-view.ts'
import { packBody, unpackBody } from '../../src/views/exact/packed-body.ts'
import { Stopped } from '../../src/views/exact/watch.ts'
import { FRAMES, ISOMETRIC } from '../../src/views/frames.ts'
import type { ExactView } from '../../src/views/view.ts'
import { moved, together } from '../views/exact/assembly.ts'
import { randomSolid } from '../views/exact/random-solids.ts'
import { growingRound } from '../views/exact/spline-solids.ts'

// The public translator round-robin part "as1" (source: test/data/README.md).
const as1 = readFileSync(new URL('../data/as1-oc-214.stp', import.meta.url), 'utf8')
const FOUR = [ISOMETRIC, FRAMES.front, FRAMES.top, FRAMES.left]

let kernel: OcctKernel
let whole: Body
beforeAll(async () => {
  kernel = await openKernel()
  whole = kernel.body(kernel.readStep(as1))
})

let crew: Crew | undefined
afterEach(() => crew?.close())

describe('a packed body', () => {
  it('comes back number by number: planes, quadrics, tori, splines', () => {
    const make = shapes(kernel)
    const bodies = [whole, kernel.body(growingRound(kernel, [30, 20, 10], 2, 5))]
    for (const seed of [1, 2, 3, 4, 5, 6, 7, 8])
      bodies.push(kernel.body(randomSolid(make, seed, ['box', 'cylinder', 'cone', 'sphere', 'torus'])!.solid))
    const kinds = new Set(bodies.flatMap((b) => b.faces.map((f) => f.surface.kind)))
    expect([...kinds].sort()).toEqual(['cone', 'cylinder', 'plane', 'sphere', 'spline', 'torus'])
    for (const body of bodies) {
      const plain = {
        ...body,
        faces: body.faces.map(({ name: _, ...f }) => f),
        edges: body.edges.map(({ name: _, ...e }) => e),
      }
      expect(unpackBody(packBody(body))).toEqual(plain)
    }
  })

  it('says so when numbers are missing', () => {
    expect(() => unpackBody(packBody(whole).slice(0, -1))).toThrow('ends too early')
  })
})

describe('a crew', () => {
  it('draws in another thread what its own draws, byte by byte', async () => {
    const body = together([whole, moved(whole, [400, 0, 0])])
    const share: Share = { id: 1, body: packBody(body), frames: FOUR, board: newBoard(FOUR.length) }
    const file = fileURLToPath(new URL('../../src/app/cli/view-worker.ts', import.meta.url))
    const { outputFiles } = await build({
      entryPoints: [file],
      bundle: true,
      platform: 'node',
      format: 'cjs',
      write: false,
    })
    const worker = new Worker(outputFiles[0]!.text, { eval: true })
    const views: ExactView[] = []
    try {
      worker.postMessage(share)
      await new Promise<void>((done, fault) => {
        worker.on('error', fault)
        worker.on('message', (word: Word) => {
          if (!('view' in word)) return fault(new Error(JSON.stringify(word)))
          views[word.at] = word.view
          if (views.filter(Boolean).length === FOUR.length) done()
        })
      })
    } finally {
      await worker.terminate()
    }
    expect(JSON.stringify(views)).toBe(JSON.stringify(FOUR.map((frame) => exactView(body, frame))))
    expect(shareDone(share)).toBe(1)
  })

  it('comes to the same however much the threads of this machine do of it', async () => {
    crew = viewCrew(2)
    const alone = JSON.stringify(FOUR.map((frame) => exactView(whole, frame)))
    for (let i = 0; i < 3; i++) expect(JSON.stringify(await crew.draw({ ...whole }, FOUR))).toBe(alone)
  })

  it('puts in their places what the others have drawn', async () => {
    const taken: number[] = []
    crew = new Crew(
      (say) => ({
        give: (share) => {
          const at = takeView(share)!
          taken.push(at)
          setTimeout(() => say({ id: share.id, at, view: exactView(whole, share.frames[at]!) }))
        },
        end: () => {},
      }),
      2,
    )
    expect(await crew.draw(whole, FOUR)).toEqual(FOUR.map((frame) => exactView(whole, frame)))
    expect(taken).toEqual([0, 1])
  })

  it('draws itself what a thread that fell had begun', async () => {
    crew = new Crew(
      (_say, fell) => ({
        give: (given) => {
          takeView(given)
          setTimeout(fell)
        },
        end: () => {},
      }),
      1,
    )
    expect(await crew.draw(whole, FOUR)).toEqual(FOUR.map((frame) => exactView(whole, frame)))
  })

  it('tells how much of all views is done, never back, to the end', async () => {
    crew = viewCrew(1)
    const said: number[] = []
    await crew.draw({ ...whole }, FOUR, { progress: (share) => said.push(share) })
    expect(said.length).toBeGreaterThan(10)
    expect(said).toEqual([...said].sort((a, b) => a - b))
    expect(said.at(-1)).toBe(1)
  })

  it('stops every thread at once', async () => {
    let given: Share | undefined
    crew = new Crew(() => ({ give: (share) => (given = share), end: () => {} }), 1)
    let asked = 0
    const drawing = crew.draw({ ...whole }, FOUR, { stop: () => ++asked >= 3 })
    await expect(drawing).rejects.toBeInstanceOf(Stopped)
    expect(asked).toBe(3)
    // who still holds the board ends each of the three views left at its first look
    const late: Word[] = []
    help(given!, (word) => late.push(word))
    expect(late).toEqual([1, 2, 3].map((at) => ({ id: given!.id, at, stopped: true })))
  })
})

describe('a solid drawn by a crew', () => {
  it('gives the same sheet as one thread', async () => {
    crew = viewCrew(1)
    const alone = compileSolid(as1, kernel)
    const together = await compileSolidTogether(as1, kernel, crew, { many: 1 })
    expect(JSON.stringify(together.sheet)).toBe(JSON.stringify(alone.sheet))
    for (const drawing of [alone, together]) kernel.free(drawing.part!.solid)
  })

  it('ends where it is asked to, and keeps nothing in the kernel', async () => {
    crew = viewCrew(1)
    const before = kernel.kept()
    let left = 10
    await expect(compileSolidTogether(as1, kernel, crew, { many: 1, stop: () => --left <= 0 })).rejects.toThrow(Stopped)
    expect(kernel.kept()).toBe(before)
  })
})
