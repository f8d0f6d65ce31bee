import { withAcceptances } from '../../../check/acceptances.ts'
import { type OcctKernel, openKernel } from '../../../kernel/open.ts'
import { mustChange } from '../../../sheet/must-change.ts'
import { Stopped } from '../../../views/exact/watch.ts'
import { writeStep } from '../../../write/step.ts'
import { compile, type Drawing, settled } from '../../compile.ts'
import { keptOpen } from '../../kept-open.ts'
import { checkedOf, printOf } from './checked.ts'
import { drawnOf } from './drawn.ts'
import { look } from './look.ts'
import type { Answer, Asked, Written } from './messages.ts'
import { pictureOf } from './solid-picture.ts'

const say = (answer: Answer, moved: Transferable[] = []) => self.postMessage(answer, { transfer: moved })
const opening = openKernel()
opening.then(
  () => say({ answer: 'ready' }),
  (fault: unknown) => say({ answer: 'failed', id: 0, text: `the geometry kernel did not start: ${wordsOf(fault)}` }),
)

/** Requests that came while another was at work, in order; older drawings and checks of the same part are dropped. */
let waiting: Asked[] = []
let busy = false
/** The last drawing, for the checker and for the hand. Its solid stays in the kernel until the next. */
let last: { readonly asked: Pick<Asked, 'text' | 'model'>; readonly drawing: Drawing } | undefined
/** Whether the checker sent the last sheet of a part back: the next is laid out so before the rules are asked. */
const sentBack = new Map<string, boolean>()
/** The newest text of each part that a sheet was asked of. */
const newest = new Map<string, string>()

self.onmessage = ({ data }: MessageEvent<Asked>) => {
  if (data.ask === 'look') {
    // How it was held before is of no interest any more.
    waiting = waiting.filter((w) => {
      if (w.ask === 'look') say({ answer: 'passed over', id: w.id })
      return w.ask !== 'look'
    })
  }
  if (data.ask === 'draw' || data.ask === 'check') {
    waiting = waiting.filter((w) => {
      const older = (w.ask === 'check' || w.ask === data.ask) && w.part === data.part
      if (older) say({ answer: 'passed over', id: w.id })
      return !older
    })
  }
  if (data.ask === 'draw') newest.set(data.part, data.text)
  else if (data.ask === 'check' && newest.has(data.part) && newest.get(data.part) !== data.text) {
    say({ answer: 'passed over', id: data.id })
    return
  }
  waiting.push(data)
  if (!busy) void work()
}

async function work(): Promise<void> {
  busy = true
  try {
    const kernel = await opening
    for (let next = take(); next; next = take()) {
      try {
        await answer(next, kernel)
      } catch (fault) {
        if (fault instanceof Stopped) say({ answer: 'passed over', id: next.id })
        else say({ answer: 'failed', id: next.id, text: wordsOf(fault) })
      }
      // Lets newer requests in before the next is begun.
      await new Promise((go) => setTimeout(go))
    }
  } catch {
    // Said when the kernel failed to open.
  }
  busy = false
}

/** The next request: sheets before everything else. */
function take(): Asked | undefined {
  const draw = waiting.findIndex((w) => w.ask === 'draw')
  return waiting.splice(Math.max(0, draw), 1)[0]
}

async function answer(asked: Asked, kernel: OcctKernel): Promise<void> {
  const { id } = asked
  const known = last && isOf(last.asked, asked) ? last.drawing : undefined
  if (asked.ask === 'check' && known) {
    const laid = sentBack.get(asked.part) ?? false
    const done = asked.model ? { drawing: known, sentBack: laid } : settled(known, laid)
    sentBack.set(asked.part, done.sentBack)
    if (last) last = { ...last, drawing: done.drawing }
    const drawn = done.sentBack === laid ? {} : { drawn: drawnOf(done.drawing, known.times['lay out']) }
    say({ answer: 'checked', id, checked: { ...checkedOf(done.drawing, asked.print), ...drawn } })
    return
  }
  // a sheet that is there already needs no solid
  if (asked.ask === 'write' && asked.kind !== 'step' && asked.model && known) {
    const bytes = await written(asked.kind, known, kernel)
    say({ answer: 'written', id, bytes }, [bytes.buffer])
    return
  }
  if (asked.ask === 'solid' || asked.ask === 'look') {
    const { part } = known ?? (await keep(asked, kernel))
    if (asked.ask === 'solid') {
      const solid = pictureOf(part, kernel)
      say({ answer: 'solid', id, solid }, [solid.corners.buffer, solid.faces.buffer] as Transferable[])
    } else if (part && part.body.faces.length > 0) {
      say({ answer: 'seen', id, seen: look(part, kernel, asked.held, stopOf(asked)) })
    } else throw new Error('there is no solid to look at yet')
    return
  }
  if (asked.ask === 'begin') {
    const { beginBrief } = await import('../../begin.ts')
    const { text, sentence, marks } = beginBrief(asked.text, asked.name, kernel, asked.model?.solid)
    const why = marks.find((m) => m.weight === 'must change')?.text
    say({ answer: 'begun', id, ...(text === undefined ? { sentence: why ?? sentence } : { text, sentence }) })
    return
  }
  const start = performance.now()
  const drawing = await keep(asked, kernel)
  if (asked.ask === 'draw' && drawing.found)
    sentBack.set(asked.part, mustChange(withAcceptances(drawing.brief, drawing.found)))
  switch (asked.ask) {
    case 'check':
      say({ answer: 'checked', id, checked: checkedOf(drawing, asked.print) })
      break
    case 'draw':
      say({ answer: 'drawn', id, drawn: drawnOf(drawing, performance.now() - start), memory: kernel.memory() })
      break
    case 'write': {
      const bytes = await written(asked.kind, drawing, kernel)
      say({ answer: 'written', id, bytes }, [bytes.buffer])
      break
    }
  }
}

/** Makes the drawing and keeps it, and its solid, in the place of the last. */
async function keep(asked: Asked, kernel: OcctKernel): Promise<Drawing> {
  const drawing = await drawingOf(asked, kernel)
  if (last?.drawing.part) kernel.free(last.drawing.part.solid)
  last = { asked: { text: asked.text, ...(asked.model ? { model: asked.model } : {}) }, drawing }
  return drawing
}

const isOf = (one: Pick<Asked, 'text' | 'model'>, other: Asked): boolean =>
  one.text === other.text && !one.model === !other.model && one.model?.solid === other.model?.solid

const stopOf = ({ flag }: Asked) => (flag ? () => Atomics.load(flag, 0) !== 0 : () => false)

async function drawingOf(asked: Asked, kernel: OcctKernel): Promise<Drawing> {
  const { id, text, model } = asked
  const stop = stopOf(asked)
  if (!model)
    return compile(text, kernel, { stop, sentBack: asked.ask === 'draw' ? sentBack.get(asked.part) : undefined })
  // What reads solids is fetched when the first model comes.
  const { drawModel } = await import('./draw-model.ts')
  return drawModel(text, kernel, { ...model, stop }, (words) => say({ answer: 'at work', id, words }))
}

async function written(kind: Written, drawing: Drawing, kernel: OcctKernel): Promise<Uint8Array<ArrayBuffer>> {
  if (kind === 'step') {
    if (!drawing.part || drawing.part.body.faces.length === 0) throw new Error('there is no solid to write yet')
    return new TextEncoder().encode(writeStep(drawing.part, kernel, keptOpen(drawing)))
  }
  if (!drawing.sheet) throw new Error('there is no sheet to write yet')
  if (kind === 'svg') {
    const { writeSvg } = await import('../../../write/svg.ts')
    return new TextEncoder().encode(writeSvg(drawing.sheet))
  }
  const sheet = kind === 'check' ? printOf(drawing) : drawing.sheet
  if (!sheet) throw new Error('there is no check print yet')
  const { writePdf } = await import('../../../write/pdf.ts')
  return Uint8Array.from(await writePdf(sheet))
}

function wordsOf(fault: unknown): string {
  return fault instanceof Error ? fault.message : String(fault)
}
