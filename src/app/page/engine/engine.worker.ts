import { pointOnCurve } from '../../../kernel/evaluate3.ts'
import { meshOf } from '../../../kernel/mesh.ts'
import { type OcctKernel, openKernel } from '../../../kernel/open.ts'
import { writeStep } from '../../../write/step.ts'
import { compile, type Drawing } from '../../compile.ts'
import { drawnOf } from './drawn.ts'
import type { Answer, Asked, SolidPicture } from './messages.ts'

const say = (answer: Answer, moved: Transferable[] = []) => self.postMessage(answer, { transfer: moved })
const opening = openKernel()
opening.then(
  () => say({ answer: 'ready' }),
  (fault: unknown) => say({ answer: 'failed', id: 0, text: `the geometry kernel did not start: ${wordsOf(fault)}` }),
)

/** Requests that came while another was at work, in order; an older drawing of the same part is dropped. */
let waiting: Asked[] = []
let busy = false

self.onmessage = ({ data }: MessageEvent<Asked>) => {
  if (data.ask === 'draw') {
    waiting = waiting.filter((w) => {
      const older = w.ask === 'draw' && w.part === data.part
      if (older) say({ answer: 'passed over', id: w.id })
      return !older
    })
  }
  waiting.push(data)
  if (!busy) void work()
}

async function work(): Promise<void> {
  busy = true
  try {
    const kernel = await opening
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      try {
        await answer(next, kernel)
      } catch (fault) {
        say({ answer: 'failed', id: next.id, text: wordsOf(fault) })
      }
      // Lets newer requests in before the next is begun.
      await new Promise((go) => setTimeout(go))
    }
  } catch {
    // Said when the kernel failed to open.
  }
  busy = false
}

async function answer(asked: Asked, kernel: OcctKernel): Promise<void> {
  const { id, text } = asked
  const start = performance.now()
  const drawing = compile(text, kernel)
  try {
    switch (asked.ask) {
      case 'draw':
        say({ answer: 'drawn', id, drawn: drawnOf(drawing, performance.now() - start), memory: kernel.memory() })
        break
      case 'write': {
        const bytes = await written(asked.kind, drawing, kernel)
        say({ answer: 'written', id, bytes }, [bytes.buffer])
        break
      }
      case 'solid': {
        const solid = pictureOf(drawing, kernel)
        say({ answer: 'solid', id, solid }, [solid.corners.buffer, solid.faces.buffer] as Transferable[])
        break
      }
    }
  } finally {
    if (drawing.part) kernel.free(drawing.part.solid)
  }
}

async function written(
  kind: 'pdf' | 'svg' | 'step',
  drawing: Drawing,
  kernel: OcctKernel,
): Promise<Uint8Array<ArrayBuffer>> {
  if (kind === 'step') {
    if (!drawing.part || drawing.part.body.faces.length === 0) throw new Error('there is no solid to write yet')
    return new TextEncoder().encode(writeStep(drawing.part, kernel))
  }
  if (!drawing.sheet) throw new Error('there is no sheet to write yet')
  if (kind === 'svg') {
    const { writeSvg } = await import('../../../write/svg.ts')
    return new TextEncoder().encode(writeSvg(drawing.sheet))
  }
  const { writePdf } = await import('../../../write/pdf.ts')
  return Uint8Array.from(await writePdf(drawing.sheet))
}

function pictureOf(drawing: Drawing, kernel: OcctKernel): SolidPicture {
  const { part } = drawing
  if (!part || part.body.faces.length === 0) throw new Error('there is no solid to look at yet')
  const { body } = part
  const size = Math.hypot(...body.box.max.map((c, i) => c - body.box.min[i]!))
  return {
    ...meshOf(kernel, part.solid, size / 2000),
    edges: body.edges
      .filter((e) => !e.seam)
      .map((e) => {
        const steps = e.curve.kind === 'line' ? 1 : 48
        const points = new Float32Array(3 * (steps + 1))
        for (let i = 0; i <= steps; i++) points.set(pointOnCurve(e.curve, i / steps), 3 * i)
        return { id: e.id, points, smooth: e.smooth }
      }),
    box: body.box,
  }
}

function wordsOf(fault: unknown): string {
  return fault instanceof Error ? fault.message : String(fault)
}
