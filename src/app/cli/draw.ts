import { basename, dirname, join, resolve } from 'node:path'
import type { OcctKernel } from '../../kernel/open.ts'
import { writeStep } from '../../write/step.ts'
import { writeSvg } from '../../write/svg.ts'
import { judged } from '../checked.ts'
import type { Drawing } from '../compile.ts'
import { fileNameOf, notADevice } from '../file-name.ts'
import { keptOpen } from '../kept-open.ts'
import { printReport, reportOn } from '../report.ts'
import { readArguments, UsageFault } from './arguments.ts'
import type { Console } from './console.ts'
import { eachBrief } from './each-brief.ts'
import type { ExitCode } from './exit-codes.ts'
import { isStepName, writeTogether } from './files.ts'

const KINDS = ['pdf', 'svg', 'step', 'txt'] as const
type Kind = (typeof KINDS)[number]

/** `draw`: sheet and solid of each brief as files. */
export function draw(args: readonly string[], console: Console) {
  const { files, options } = readArguments('draw', args, { to: 'text', only: 'text', solid: 'text', quiet: 'flag' })
  const kinds = readKinds(options.only)
  const solid = typeof options.solid === 'string' ? options.solid : undefined
  // its libraries load while the kernel starts
  if (kinds.includes('pdf')) void import('../../write/pdf.ts')
  const names = distinctNames(files, typeof options.to === 'string' ? options.to : undefined, solid)
  return (kernel: OcctKernel): Promise<ExitCode> => {
    const write = async (file: string, drawing: Drawing) => {
      const base = names.get(file)!(drawing)
      const made: { path: string; content: string | Uint8Array }[] = []
      for (const kind of kinds) {
        // the model is there already, and is never written over
        if (kind === 'step' && isStepName(file) && (!options.only || resolve(`${base}.step`) === resolve(file)))
          continue
        const content = await contentOf(kind, drawing, kernel)
        if (content === undefined) continue
        made.push({ path: `${base}.${kind}`, content })
      }
      await writeTogether(made)
      const written = made.map(({ path }) => path.slice(base.length))
      if (options.quiet) return
      console.say(written.length === 0 ? `${file}: nothing could be drawn.` : summary(base, written, drawing))
    }
    return eachBrief(files, kernel, console, write, solid)
  }
}

function readKinds(only: string | boolean | undefined): readonly Kind[] {
  if (typeof only !== 'string') return KINDS
  const asked = only.split(',').map((k) => k.trim().toLowerCase())
  const wrong = asked.find((k) => !KINDS.some((kind) => kind === k))
  if (wrong !== undefined) throw new UsageFault(`draw: --only ${wrong}: expected some of ${KINDS.join(',')}.`)
  return KINDS.filter((kind) => asked.includes(kind))
}

/** Path without ending for each file's output; two briefs that would write the same file are refused. */
function distinctNames(
  files: readonly string[],
  to: string | undefined,
  solid: string | undefined,
): Map<string, (drawing: Drawing) => string> {
  const names = new Map<string, (drawing: Drawing) => string>()
  const taken = new Map<string, string>()
  for (const file of files) {
    if (file === '-') {
      names.set(file, (drawing) =>
        join(to ?? '.', fileNameOf(drawing.brief.header.number?.text ?? drawing.brief.header.part?.text ?? 'drawing')),
      )
      continue
    }
    const plain = basename(file).replace(/\.brief$/i, '')
    const stem = notADevice(isStepName(plain) ? plain.replace(/\.[^.]*$/, '') : plain)
    const base = join(to ?? dirname(file), solid === undefined ? stem : `${stem}-${fileNameOf(solid)}`)
    const other = taken.get(base)
    if (other !== undefined)
      throw new UsageFault(`draw: ${other} and ${file} would both write ${base}.pdf. Draw them into different folders.`)
    taken.set(base, file)
    names.set(file, () => base)
  }
  return names
}

async function contentOf(kind: Kind, drawing: Drawing, kernel: OcctKernel): Promise<string | Uint8Array | undefined> {
  switch (kind) {
    case 'pdf':
      return drawing.sheet && (await import('../../write/pdf.ts')).writePdf(drawing.sheet)
    case 'svg':
      return drawing.sheet && writeSvg(drawing.sheet)
    case 'step':
      return drawing.part && drawing.part.body.faces.length > 0
        ? writeStep(drawing.part, kernel, keptOpen(drawing))
        : undefined
    case 'txt':
      return printReport(reportOn(drawing))
  }
}

function summary(base: string, written: readonly string[], drawing: Drawing): string {
  const { sheet, views, sizes } = drawing
  const [first, ...rest] = keptOpen(drawing)
  const open = first === undefined ? [] : [`preliminary: ${first}`, ...rest]
  const leftOff = drawing.marks.some((m) => m.rule === 'no-room-for-size')
  const told = !sizes?.proof.complete ? 'not complete' : leftOff ? 'not all on the sheet' : 'complete'
  const facts = [
    ...open,
    sheet ? `${sheet.format} ${sheet.scale}` : 'no sheet',
    views ? `${views.views.length} views` : undefined,
    sizes ? `${sizes.dimensions.length} sizes, ${told}` : undefined,
    judged(drawing).length === 1 ? '1 mark' : `${judged(drawing).length} marks`,
  ]
  return `${base}${written.join(' ')}  (${facts.filter(Boolean).join('; ')})`
}
